import { expect, inject, test } from 'vitest';
import { readRecording } from '../../server/audio/read.ts';
import type { Phrase } from '../../server/audio/segment.ts';
import { openSegmenter } from '../../server/audio/segment.ts';
import { JFK_PATH } from '../speech/jfk.ts';

async function jfk(): Promise<Float32Array> {
  const parts: number[] = [];
  for await (const part of readRecording(JFK_PATH)) parts.push(...part);
  return Float32Array.from(parts);
}

async function phrasesOf(samples: Float32Array, piece = 1600): Promise<Phrase[]> {
  const segmenter = await openSegmenter(inject('weights').vad);
  const phrases: Phrase[] = [];
  for (let at = 0; at < samples.length; at += piece) phrases.push(...(await segmenter.push(samples.slice(at, at + piece))));
  return [...phrases, ...(await segmenter.flush())];
}

/** A stream of numbers in -1 to 1 that is the same each time (Park and Miller 1988). */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (2 * state) / 2_147_483_647 - 1;
  };
}

test('a public speech is cut at its long pauses, whatever the pieces it comes in', async () => {
  const samples = await jfk();
  const phrases = await phrasesOf(samples);
  // The speaker stops for about a second after "Americans" and after "ask not".
  expect(phrases).toHaveLength(3);
  phrases.forEach(({ from, to, samples: own }) => expect(own).toEqual(samples.slice(from, to)));
  expect(await phrasesOf(samples, 317)).toEqual(phrases);
});

test.each<[string, (i: number, random: () => number) => number]>([
  ['hiss', (_, random) => 0.3 * random()],
  ['a motor', (i, random) => 0.3 * (((i * 97) / 16_000) % 1) + 0.2 * (((i * 1450) / 16_000) % 1) - 0.25 + 0.05 * random()],
  ['rasping', (i, random) => 0.5 * random() * Math.max(0, Math.sin((2 * Math.PI * 2.5 * i) / 16_000)) ** 2],
  ['knocks', (i, random) => (i % 8000 < 300 ? 0.8 * random() * (1 - (i % 8000) / 300) : 0)],
])('%s is no phrase', async (_what, sound) => {
  const random = noise(7);
  expect(await phrasesOf(Float32Array.from({ length: 160_000 }, (_unused, i) => sound(i, random)))).toEqual([]);
});

test('a lost stretch ends the phrase, and the clock and the silence go on over it', async () => {
  const samples = await jfk();
  const segmenter = await openSegmenter(inject('weights').vad, 16_000);
  await segmenter.push(samples.slice(0, 32_000));
  const [cut] = await segmenter.skip(80_000);
  expect(cut?.from).toBeGreaterThanOrEqual(16_000);
  expect(segmenter.state().at).toBe(128_000);
  const rest = [...(await segmenter.push(samples)), ...(await segmenter.flush())];
  expect(rest[0]?.from).toBeGreaterThanOrEqual(128_000);
  expect(rest[0]?.silenceBefore).toBeGreaterThan(5);
});

test('the live state says when somebody speaks', async () => {
  const samples = await jfk();
  const segmenter = await openSegmenter(inject('weights').vad);
  expect(segmenter.state()).toMatchObject({ speaking: false, level: -100 });
  await segmenter.push(samples.slice(0, 24_000));
  expect(segmenter.state().speaking).toBe(true);
  expect(segmenter.state().level).toBeGreaterThan(-60);
});
