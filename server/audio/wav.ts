/**
 * WAV: reading any plain one as a stream, and writing mono 16-bit ones.
 * Layout: IBM and Microsoft, "Multimedia Programming Interface and Data Specifications 1.0", 1991; RF64: EBU Tech 3306.
 */
import { RATE } from '../speech/engine.ts';
import { AudioError } from './audioError.ts';
import type { Bytes } from './bytes.ts';
import type { Decoded, Notice } from './decoded.ts';

const PCM = 1,
  FLOAT = 3,
  EXTENSIBLE = 0xfffe;
/** What a recorder writes when it does not know the length yet. */
const UNKNOWN = 0xffff_ffff;
const STRETCH_FRAMES = 16_384;

type Format = {
  readonly channels: number;
  readonly rate: number;
  readonly frame: number;
  readonly sample: (data: DataView, at: number) => number;
};

export async function* readWav(bytes: Bytes, notice: (notice: Notice) => void): AsyncGenerator<Decoded> {
  await bytes.skip(12);
  const { format, size } = await header(bytes);
  for (let left = size; left > 0;) {
    const data = await bytes.take(Math.min(left, STRETCH_FRAMES * format.frame));
    if (data.length < Math.min(left, format.frame)) {
      if (size !== Infinity) notice({ code: 'truncated', message: 'The file ends before its header says; what is there was read.' });
      return;
    }
    left -= data.length;
    yield frames(format, view(data));
  }
}

/** Walks the chunks up to the sound. */
async function header(bytes: Bytes): Promise<{ format: Format; size: number }> {
  for (let format: Format | undefined; ;) {
    const head = view(await bytes.take(8));
    if (head.byteLength < 8) throw cutOff();
    const id = head.getUint32(0),
      size = head.getUint32(4, true);
    if (id === chunk('data')) {
      if (format === undefined)
        throw new AudioError('damaged', 'This WAV file does not say how its sound is stored. Copy it again from the recorder.');
      return { format, size: size === UNKNOWN || size === 0 ? Infinity : size };
    }
    if (id === chunk('fmt ')) {
      const fields = view(await bytes.take(size + (size % 2)));
      if (fields.byteLength < size) throw cutOff();
      format = formatOf(fields);
    } else await bytes.skip(size + (size % 2));
  }
}

const cutOff = (): AudioError =>
  new AudioError('truncated', 'This WAV file ends before its sound begins. Copy it again from the recorder.');
const chunk = (name: string): number => Buffer.from(name, 'latin1').readUInt32BE(0);
const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function formatOf(head: DataView): Format {
  if (head.byteLength < 16) throw new AudioError('damaged', 'The header of this WAV file is too short. Copy it again from the recorder.');
  const tag = head.getUint16(0, true),
    channels = head.getUint16(2, true),
    rate = head.getUint32(4, true),
    bits = head.getUint16(14, true);
  const kind = tag === EXTENSIBLE && head.byteLength >= 26 ? head.getUint16(24, true) : tag;
  const sample = kind === PCM ? INTEGER[bits] : kind === FLOAT ? REAL[bits] : undefined;
  if (sample === undefined)
    throw new AudioError(
      'unsupported',
      `This WAV file keeps its sound in a way that is not read here (format ${kind}, ${bits} bits). Save it as 16-bit PCM.`,
    );
  if (channels < 1 || channels > 64)
    throw new AudioError('damaged', `This WAV file claims ${channels} channels. Copy it again from the recorder.`);
  return { channels, rate, frame: (channels * bits) / 8, sample };
}

const INTEGER: Readonly<Record<number, Format['sample']>> = {
  8: (data, at) => (data.getUint8(at) - 128) / 128,
  16: (data, at) => data.getInt16(at, true) / 32_768,
  24: (data, at) => (data.getInt8(at + 2) * 65_536 + data.getUint16(at, true)) / 8_388_608,
  32: (data, at) => data.getInt32(at, true) / 2_147_483_648,
};
const REAL: Readonly<Record<number, Format['sample']>> = {
  32: (data, at) => data.getFloat32(at, true),
  64: (data, at) => data.getFloat64(at, true),
};

function frames({ channels, rate, frame, sample }: Format, data: DataView): Decoded {
  const count = Math.floor(data.byteLength / frame),
    width = frame / channels;
  const channelData = Array.from({ length: channels }, (_, channel) =>
    Float32Array.from({ length: count }, (_unused, i) => sample(data, i * frame + channel * width)),
  );
  return { channelData, rate };
}

/** @returns a mono 16-bit WAV of samples in -1 to 1, at 16 kHz unless said otherwise */
export function toWav(samples: Float32Array, rate = RATE): Buffer {
  const wav = Buffer.alloc(44 + 2 * samples.length);
  wav.write('RIFF', 0, 'latin1');
  wav.writeUInt32LE(36 + 2 * samples.length, 4);
  wav.write('WAVEfmt ', 8, 'latin1');
  wav.writeUInt32LE(16, 16);
  wav.writeUInt16LE(PCM, 20);
  wav.writeUInt16LE(1, 22);
  wav.writeUInt32LE(rate, 24);
  wav.writeUInt32LE(2 * rate, 28);
  wav.writeUInt16LE(2, 32);
  wav.writeUInt16LE(16, 34);
  wav.write('data', 36, 'latin1');
  wav.writeUInt32LE(2 * samples.length, 40);
  samples.forEach((sample, i) => wav.writeInt16LE(to16(sample), 44 + 2 * i));
  return wav;
}

/** A sample in -1 to 1 as a 16-bit number; what is louder is clipped, what is no number is silence. */
export const to16 = (sample: number): number => Math.max(-32_768, Math.min(32_767, Math.round(sample * 32_768))) || 0;
