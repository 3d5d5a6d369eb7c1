import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { readRecording } from '../../server/audio/read.ts';
import type { Engine } from '../../server/speech/engine.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { JFK_PATH, JFK_WORDS, bare } from './jfk.ts';

let ear: Engine;
let samples: Float32Array;

beforeAll(async () => {
  const { dir } = inject('weights');
  const parts: number[] = [];
  for await (const part of readRecording(JFK_PATH)) parts.push(...part);
  samples = Float32Array.from(parts);
  ear = await openEngine({ weightsDir: dir });
});

afterAll(() => ear.close());

test('hears a public recording word for word, with words in order inside the clip', async () => {
  const { hypotheses, empty } = await ear.hear({ samples, from: 16_000 }, []);
  expect(empty).toBeUndefined();
  const [best] = hypotheses;
  expect(bare(best?.text ?? '')).toBe(JFK_WORDS);
  const times = best?.words.map(({ at }) => at ?? [0, 0]) ?? [];
  // The speaker begins 0.3 to 0.4 s into the clip, and ends within its last second.
  expect(times[0]?.[0]).toBeGreaterThan(1.2);
  expect(times[0]?.[0]).toBeLessThan(1.5);
  expect(times.at(-1)?.[1]).toBeGreaterThan(samples.length / 16_000);
  expect(times.at(-1)?.[1]).toBeLessThanOrEqual(1 + samples.length / 16_000);
  times.slice(1).forEach((at, i) => expect(at[0]).toBeCloseTo(times[i]?.[1] ?? NaN, 3));
});

test('scores the words that were said above words that were not', async () => {
  const clip = { samples, from: 0 };
  const [said, near, other] =
    (await ear.score?.(clip, [JFK_WORDS, JFK_WORDS.replace('country', 'county'), 'the weather is fine today'])) ?? [];
  expect(said).toBeGreaterThan(near ?? NaN);
  expect(near).toBeGreaterThan(other ?? NaN);
});

test('the same clip gives the same answer, whatever was asked in between', async () => {
  const clip = { samples: samples.slice(0, 48_000), from: 0 };
  const first = await ear.hear(clip, []);
  await ear.score?.(clip, ['and so my fellow americans', 'rain']);
  const again = await ear.hear({ ...clip, samples: clip.samples.slice() }, []);
  expect(again.hypotheses).toEqual(first.hypotheses);
});

test('digital silence is no speech, and says so', async () => {
  expect(await ear.hear({ samples: new Float32Array(32_000), from: 0 }, [])).toMatchObject({ hypotheses: [], empty: 'no-speech' });
});

test('a clip too short for the graph is padded, not a crash', async () => {
  await expect(ear.hear({ samples: Float32Array.from({ length: 100 }, (_, i) => Math.sin(i)), from: 0 }, [])).resolves.toBeDefined();
});

test('missing weights are an error at once, not a wait', async () => {
  await expect(openEngine({ weightsDir: '/nowhere', plainEar: true })).rejects.toThrow();
});
