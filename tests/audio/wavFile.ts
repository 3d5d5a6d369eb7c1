/** WAV files of any kind, written by hand from the published layout, as a check on the reader that shares no code with it. */
export type WavKind = {
  readonly rate: number;
  readonly channels: number;
  readonly bits: number;
  readonly float?: boolean;
  readonly extensible?: boolean;
};

/** @param frames samples in -1 to 1; every channel holds the same */
export function wavFile(frames: readonly number[], { rate, channels, bits, float = false, extensible = false }: WavKind): Buffer {
  const bytes = bits / 8;
  const format = Buffer.alloc(extensible ? 40 : 16);
  format.writeUInt16LE(extensible ? 0xfffe : float ? 3 : 1, 0);
  format.writeUInt16LE(channels, 2);
  format.writeUInt32LE(rate, 4);
  format.writeUInt32LE(rate * channels * bytes, 8);
  format.writeUInt16LE(channels * bytes, 12);
  format.writeUInt16LE(bits, 14);
  if (extensible) {
    format.writeUInt16LE(22, 16);
    format.writeUInt16LE(bits, 18);
    format.writeUInt16LE(float ? 3 : 1, 24);
    Buffer.from('000000001000800000aa00389b71', 'hex').copy(format, 26);
  }
  const data = Buffer.alloc(frames.length * channels * bytes);
  frames.forEach((value, i) => {
    for (let c = 0; c < channels; c += 1) write(data, (i * channels + c) * bytes, value, bits, float);
  });
  const list = Buffer.from('INFOISFT\x03\0\0\0abc\0', 'latin1');
  const body = Buffer.concat([chunk('fmt ', format), chunk('LIST', list), chunk('data', data), chunk('junk', Buffer.from('not sound'))]);
  const head = Buffer.from('RIFF\0\0\0\0WAVE', 'latin1');
  head.writeUInt32LE(body.length + 4, 4);
  return Buffer.concat([head, body]);
}

function chunk(id: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(id, 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
}

function write(data: Buffer, at: number, value: number, bits: number, float: boolean): void {
  if (float && bits === 32) data.writeFloatLE(value, at);
  else if (float) data.writeDoubleLE(value, at);
  else if (bits === 8) data.writeUInt8(Math.round(value * 127) + 128, at);
  else data.writeIntLE(Math.round(value * (2 ** (bits - 1) - 1)), at, bits / 8);
}

export const tone = (hertz: number, rate: number, seconds: number, amplitude = 0.25): number[] =>
  Array.from({ length: Math.round(rate * seconds) }, (_, i) => amplitude * Math.sin((2 * Math.PI * hertz * i) / rate));

/** Amplitude of one frequency in 16 kHz samples (a single bin of a Fourier transform). */
export function amplitudeAt(hertz: number, samples: Float32Array): number {
  let re = 0,
    im = 0;
  samples.forEach((sample, i) => {
    re += sample * Math.cos((2 * Math.PI * hertz * i) / 16_000);
    im += sample * Math.sin((2 * Math.PI * hertz * i) / 16_000);
  });
  return (2 * Math.hypot(re, im)) / samples.length;
}
