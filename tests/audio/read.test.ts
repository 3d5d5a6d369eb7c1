import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Notice } from '../../server/audio/decoded.ts';
import { readRecording } from '../../server/audio/read.ts';
import { toWav } from '../../server/audio/wav.ts';
import type { WavKind } from './wavFile.ts';
import { amplitudeAt, tone, wavFile } from './wavFile.ts';

const SAMPLES = new URL('./samples/', import.meta.url);
let home: string;
beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'quidnote-read-'));
});
afterAll(() => rm(home, { recursive: true, force: true }));

async function read(bytes: Buffer, pieces = 1000, onNotice: (notice: Notice) => void = () => undefined): Promise<Float32Array> {
  const stream = Readable.from(
    (function* () {
      for (let at = 0; at < bytes.length; at += pieces) yield bytes.subarray(at, at + pieces);
    })(),
  );
  const parts: number[] = [];
  for await (const part of readRecording(stream, { onNotice })) parts.push(...part);
  return Float32Array.from(parts);
}

const KINDS: readonly WavKind[] = [
  ...[8, 16, 24, 32].map((bits) => ({ rate: 16_000, channels: 1, bits })),
  ...[32, 64].map((bits) => ({ rate: 48_000, channels: 2, bits, float: true })),
  { rate: 44_100, channels: 2, bits: 24, extensible: true },
  { rate: 96_000, channels: 6, bits: 32, float: true, extensible: true },
  ...[8_000, 11_025, 22_050, 32_000, 44_100, 48_000, 192_000].map((rate) => ({ rate, channels: 1, bits: 16 })),
];

test.each(KINDS)('WAV $rate Hz, $channels channels, $bits bits', async (kind) => {
  const samples = await read(wavFile(tone(1000, kind.rate, 0.5), kind));
  // A half second, to the sample that its own rate allows.
  expect(samples.length).toBe(Math.ceil((Math.round(kind.rate / 2) * 16_000) / kind.rate));
  expect(amplitudeAt(1000, samples)).toBeCloseTo(0.25, 2);
  expect(amplitudeAt(2500, samples)).toBeLessThan(0.005);
});

test.each(['tone.flac', 'tone.mp3', 'tone-vorbis.ogg', 'tone.opus'])('%s is the tone that was packed, whole', async (file) => {
  const samples = await read(readFileSync(new URL(file, SAMPLES)));
  expect(Math.abs(samples.length - 16_000)).toBeLessThan(800);
  // Packing with losses may take a little off; the tone's own amplitude is 0.25.
  expect(amplitudeAt(1000, samples)).toBeGreaterThan(0.22);
  expect(amplitudeAt(1000, samples)).toBeLessThan(0.27);
  expect(amplitudeAt(1700, samples)).toBeLessThan(0.01);
});

test('the way a stream is cut into pieces changes nothing', async () => {
  const file = wavFile(tone(440, 44_100, 0.2), { rate: 44_100, channels: 2, bits: 16 });
  const whole = await read(file, file.length);
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 5000 }), async (pieces) => {
      expect(await read(file, pieces)).toEqual(whole);
    }),
    { numRuns: 20 },
  );
});

test('what toWav writes is read back', async () => {
  const samples = Float32Array.from(tone(300, 16_000, 0.1));
  const back = await read(toWav(samples));
  samples.forEach((sample, i) => expect(Math.abs((back[i] ?? NaN) - sample)).toBeLessThan(1 / 32_768));
});

describe('what cannot be heard is refused, and says why', () => {
  const good = wavFile(tone(440, 16_000, 0.2), { rate: 16_000, channels: 1, bits: 16 });
  const patched = (at: number, value: number, bytes: 2 | 4) => {
    const copy = Buffer.from(good);
    copy.writeUIntLE(value, at, bytes);
    return copy;
  };
  test.each([
    ['an empty file', Buffer.alloc(0), 'empty'],
    ['one byte', Buffer.from([0]), 'not-audio'],
    ['a text', Buffer.from('Dear owner, thank you for your visit.'), 'not-audio'],
    ['a header and no more', good.subarray(0, 20), 'truncated'],
    ['a header and no sound', good.subarray(0, good.indexOf('data') + 8), 'empty'],
    ['a rate of zero', patched(24, 0, 4), 'damaged'],
    ['a rate beyond reason', patched(24, 3_000_000, 4), 'damaged'],
    ['no channels', patched(22, 0, 2), 'damaged'],
    ['a depth nobody uses', patched(34, 13, 2), 'unsupported'],
    ['another coding', patched(20, 85, 2), 'unsupported'],
    ['silence', wavFile(Array<number>(4000).fill(0), { rate: 8_000, channels: 1, bits: 16 }), 'silent'],
    ['an M4A', readFileSync(new URL('tone.m4a', SAMPLES)), 'unsupported'],
    ['a FLAC head on rubbish', Buffer.concat([Buffer.from('fLaC'), Buffer.alloc(9000, 7)]), 'damaged'],
    ['an MP3 mark on rubbish', Buffer.concat([Buffer.from('ID3'), Buffer.alloc(9000, 7)]), 'damaged'],
    [
      'an Ogg head on rubbish',
      Buffer.concat([Buffer.from('OggS'), Buffer.alloc(20), Buffer.from('OpusHead'), Buffer.alloc(9000, 7)]),
      'damaged',
    ],
  ])('%s', async (_what, bytes, code) => {
    await expect(read(bytes as Buffer)).rejects.toMatchObject({ name: 'AudioError', code });
  });
  test('a file that is not there', async () => {
    await expect(readRecording(join(home, 'none.wav')).next()).rejects.toMatchObject({ code: 'missing' });
    await expect(readRecording(home).next()).rejects.toMatchObject({ code: 'missing' });
  });
  test('any bytes at all end in sound or in a clear error', async () => {
    const starts = ['RIFF\0\0\0\0WAVE', 'fLaC', 'OggS\0\x02OpusHead', 'OggS\x01vorbis', 'ID3', '\xff\xfb', ''];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 3000 }), async (start, noise) => {
        const outcome = await read(Buffer.concat([Buffer.from(start, 'latin1'), noise])).then(
          () => 'sound',
          (error: Error) => error.name,
        );
        expect(['sound', 'AudioError']).toContain(outcome);
      }),
      { numRuns: 60 },
    );
  });
});

test('a recording cut short is heard as far as it goes, and the person is told; so with a clipped one', async () => {
  const notices: Notice[] = [];
  const file = wavFile(tone(440, 16_000, 0.5), { rate: 16_000, channels: 1, bits: 16 });
  expect((await read(file.subarray(0, 8_000), 1000, (notice) => notices.push(notice))).length).toBeGreaterThan(3_900);
  expect(notices.map(({ code }) => code)).toEqual(['truncated']);
  const loud = wavFile(
    tone(440, 16_000, 0.5, 3).map((x) => Math.max(-1, Math.min(1, x))),
    { rate: 16_000, channels: 1, bits: 16 },
  );
  await read(loud, 1000, (notice) => notices.push(notice));
  expect(notices.map(({ code }) => code)).toEqual(['truncated', 'clipped']);
});

test('a path is read as a stream is', async () => {
  const path = join(home, 'tone.wav');
  await writeFile(path, wavFile(tone(1000, 8_000, 0.25), { rate: 8_000, channels: 1, bits: 16 }));
  let count = 0;
  for await (const part of readRecording(path)) count += part.length;
  expect(count).toBe(4_000);
});
