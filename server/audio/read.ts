/** Any recording as a stream of mono 16 kHz samples, however long, without holding it whole. */
import { createReadStream } from 'node:fs';
import type { Readable } from 'node:stream';
import { RATE } from '../speech/engine.ts';
import { AudioError } from './audioError.ts';
import type { Bytes } from './bytes.ts';
import { bytesOf } from './bytes.ts';
import type { CompressedFormat } from './compressed.ts';
import { readCompressed } from './compressed.ts';
import type { Decoded, Notice } from './decoded.ts';
import type { Resampler } from './resample.ts';
import { resampler } from './resample.ts';
import { readWav } from './wav.ts';

export type ReadHint = {
  /** Called for what a person should know about a recording that could be read (clipped, cut short). */
  readonly onNotice?: (notice: Notice) => void;
};

/** Below this everywhere (-80 dB of full scale) a whole recording is called silent: a muted microphone. */
const SILENT = 1e-4;
/** Share of samples at full scale above which a recording is called clipped. */
const CLIPPED = 0.001;

/**
 * @param source a file's path, or its bytes as a stream
 * @yields mono samples at 16 kHz, in stretches of any length
 * @throws AudioError: missing, empty, not-audio, unsupported, truncated, damaged; `silent` only after the last stretch
 */
export async function* readRecording(source: string | Readable, hint: ReadHint = {}): AsyncGenerator<Float32Array> {
  const notice = hint.onNotice ?? (() => undefined);
  const bytes = bytesOf(typeof source === 'string' ? fileBytes(source) : source);
  let resample: Resampler | undefined,
    rate = 0,
    loudest = 0,
    full = 0,
    count = 0;
  for await (const piece of decoded(bytes, notice)) {
    const mono = mixed(piece);
    if (mono.length === 0) continue;
    if (resample !== undefined && piece.rate !== rate) yield resample.flush();
    if (resample === undefined || piece.rate !== rate) resample = resamplerFrom(piece.rate);
    rate = piece.rate;
    for (let i = 0; i < mono.length; i += 1) {
      const size = Math.abs(mono[i] as number);
      if (size > loudest) loudest = size;
      if (size >= 0.999) full += 1;
    }
    count += mono.length;
    const samples = resample.push(mono);
    if (samples.length > 0) yield samples;
  }
  if (resample === undefined) throw new AudioError('empty', 'This file holds no sound. Check the recorder, and copy the file again.');
  const tail = resample.flush();
  if (tail.length > 0) yield tail;
  if (loudest < SILENT) throw new AudioError('silent', 'This recording is silent from beginning to end. Check that the microphone was on.');
  if (full > count * CLIPPED)
    notice({ code: 'clipped', message: 'The recording is too loud and clipped in places; words may be misheard.' });
}

async function* fileBytes(path: string): AsyncGenerator<Uint8Array> {
  try {
    // Small pieces, so that decoding one never holds the event loop for long.
    yield* createReadStream(path, { highWaterMark: 32 * 1024 });
  } catch (cause) {
    const { code } = cause as NodeJS.ErrnoException;
    const why =
      code === 'ENOENT'
        ? 'There is no such file'
        : code === 'EISDIR'
          ? 'This is a folder, not a file'
          : `The file cannot be read (${code ?? 'unknown error'})`;
    throw new AudioError('missing', `${why}: ${path}`, { cause });
  }
}

async function* decoded(bytes: Bytes, notice: (notice: Notice) => void): AsyncGenerator<Decoded> {
  const head = Buffer.from(await bytes.peek(4096));
  if (head.length === 0) throw new AudioError('empty', 'This file is empty. Copy it again from the recorder.');
  const format = formatOf(head);
  if (format === 'WAV') yield* readWav(bytes, notice);
  else yield* readCompressed(format, bytes, notice);
}

/** Tells formats by their first bytes; a file's name is not trusted. */
function formatOf(head: Buffer): 'WAV' | CompressedFormat {
  const starts = (text: string, at = 0) => head.toString('latin1', at, at + text.length) === text;
  if ((starts('RIFF') || starts('RF64')) && starts('WAVE', 8)) return 'WAV';
  if (starts('fLaC')) return 'FLAC';
  if (starts('OggS')) {
    if (head.includes('OpusHead')) return 'Ogg Opus';
    if (head.includes('\x01vorbis')) return 'Ogg Vorbis';
    if (head.includes('\x7fFLAC')) return 'FLAC';
    throw unsupported('an Ogg file whose sound is neither Vorbis, Opus nor FLAC');
  }
  if (starts('ftyp', 4)) throw unsupported('a phone recording in an MP4 container (M4A, AAC)');
  if (starts('#!AMR')) throw unsupported('a phone recording in AMR');
  if (starts('caff')) throw unsupported('a Core Audio file');
  if (starts('FORM')) throw unsupported('an AIFF file');
  if (starts('\x1a\x45\xdf\xa3')) throw unsupported('a WebM or Matroska file');
  if (starts('ID3')) return 'MP3';
  // Frame sync of MPEG audio: layer bits 00 there mean AAC (ADTS).
  if (head.length >= 4 && head[0] === 0xff && ((head[1] ?? 0) & 0xe0) === 0xe0) {
    if (((head[1] ?? 0) & 0x06) === 0) throw unsupported('AAC sound');
    return 'MP3';
  }
  throw new AudioError(
    'not-audio',
    'This file is not a sound recording that can be read here. WAV, FLAC, Ogg (Vorbis or Opus) and MP3 are.',
  );
}

const unsupported = (what: string): AudioError =>
  new AudioError(
    'unsupported',
    `This is ${what}, which is not decoded here. Open it on the page instead, where the browser decodes it, or save it as WAV, FLAC, MP3 or Ogg.`,
  );

function resamplerFrom(rate: number): Resampler {
  if (!Number.isInteger(rate) || rate < 2_000 || rate > 768_000)
    throw new AudioError(
      'damaged',
      `This recording claims a sample rate of ${rate} Hz, which cannot be right. Copy it again from the recorder.`,
    );
  return resampler(rate, RATE);
}

/** The mean of the channels; numbers that are none become silence. */
function mixed({ channelData }: Decoded): Float32Array {
  const [first, ...others] = channelData;
  if (first === undefined) return new Float32Array(0);
  return first.map((sample, i) => {
    const sum = others.reduce((total, channel) => total + (channel[i] as number), sample);
    return Number.isFinite(sum) ? sum / channelData.length : 0;
  });
}
