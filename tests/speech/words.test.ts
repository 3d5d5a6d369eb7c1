import { expect, test } from 'vitest';
import { Hypothesis } from '../../parser/contract/word.ts';
import { scriptedEngine } from '../../server/speech/scripted.ts';
import { beam } from '../../server/speech/moonshine/beam.ts';
import { best, logSumExp } from '../../server/speech/moonshine/logits.ts';
import { encodeSentence, wordsOf } from '../../server/speech/moonshine/tokens.ts';
import { hypothesis, voiced } from '../../server/speech/words.ts';

test('words share the stretch of speech by their length, in order and without a hole', () => {
  const { words, text, logProb } = hypothesis(
    [
      { w: 'hook', logProb: -0.5 },
      { w: 'on', logProb: -0.25 },
      { w: 'one', logProb: -1 },
    ],
    { from: 10, to: 12.4 },
    -0.25,
  );
  expect(text).toBe('hook on one');
  expect(logProb).toBe(-2);
  expect(words.map(({ at }) => at)).toEqual([
    [10, 11],
    [11, 11.6],
    [11.6, 12.4],
  ]);
});

test('the voice of a clip lies where it is loud; in silence or steady noise it is the whole clip', () => {
  const samples = Float32Array.from({ length: 32_000 }, (_, i) => (i >= 8_000 && i < 24_000 ? Math.sin(i / 10) : 0.001 * Math.sin(i)));
  expect(voiced({ samples, from: 16_000 })).toEqual({ from: 1.5, to: 2.5 });
  expect(voiced({ samples: new Float32Array(16_000), from: 0 })).toEqual({ from: 0, to: 1 });
});

test('the scripted ear says its lines, n-best lists and wordless speech included, and ends with an error', async () => {
  const ear = scriptedEngine(['hook on one oh six', ['carries', 'caries'], '']);
  const clip = { samples: new Float32Array(16_000), from: 32_000 };
  const [first, second, third] = [await ear.hear(clip, []), await ear.hear(clip, []), await ear.hear(clip, [])];
  first.hypotheses.forEach((one) => Hypothesis.parse(one));
  expect(first.hypotheses[0]?.words.at(-1)?.at?.[1]).toBe(3);
  expect(second.hypotheses.map(({ text }) => text)).toEqual(['carries', 'caries']);
  expect(third.empty).toBe('no-words');
  await expect(ear.hear(clip, [])).rejects.toThrow('after 3 lines');
});

test('tokens become the words that they were made from, one score a word', () => {
  const tokens = encodeSentence('diastema between three oh nine and three ten');
  const words = wordsOf(
    tokens,
    tokens.map(() => -0.5),
  );
  expect(words.map(({ w }) => w).join(' ')).toBe('Diastema between three oh nine and three ten.');
  expect(words.reduce((sum, { logProb }) => sum + logProb, 0)).toBeCloseTo(-0.5 * tokens.length, 6);
});

test('sums and picks over scores', () => {
  expect(logSumExp(Float32Array.of(0, 0, 0, 0))).toBeCloseTo(Math.log(4), 9);
  expect(logSumExp([1000, 1000])).toBeCloseTo(1000 + Math.log(2), 9);
  expect(logSumExp([-Infinity])).toBe(-Infinity);
  expect(best(Float32Array.of(3, 9, -1, 9, 4), 3)).toEqual([1, 3, 4]);
});

/** A tiny language: token 0 ends; the likeliest first word leads nowhere good, so that greedy and beam differ. */
const NEXT: Readonly<Record<string, readonly number[]>> = {
  '': [-9, Math.log(0.6), Math.log(0.4), -9],
  1: [Math.log(0.4), Math.log(0.3), Math.log(0.3), -9],
  2: [Math.log(0.9), -9, -9, Math.log(0.1)],
};
const row = (path: string): readonly number[] => NEXT[path] ?? [0, -9, -9, -9];
const language = (paths: readonly string[]): Parameters<typeof beam>[0] => ({
  logits: Float32Array.from(paths.flatMap((path) => [...row(path)])),
  next: async (rows, tokens) => language(rows.map((r, i) => `${paths[r] ?? ''}${tokens[i] ?? ''}`)),
});

test('greedy takes the likeliest word each time; a beam finds the likeliest sentence, and gives the next best', async () => {
  const options = { vocabulary: 4, end: 0, maxTokens: 5 };
  const greedy = await beam(language(['']), { ...options, width: 1 });
  expect(greedy.map(({ tokens }) => tokens)).toEqual([[1]]);
  const wide = await beam(language(['']), { ...options, width: 4 });
  expect(wide.slice(0, 2).map(({ tokens }) => tokens)).toEqual([[2], [1]]);
  expect(Math.exp(wide[0]?.logProb ?? NaN)).toBeCloseTo(0.36, 2);
  wide.slice(1).forEach(({ logProb }, i) => expect(logProb).toBeLessThanOrEqual(wide[i]?.logProb ?? NaN));
});

test('a language that never ends is cut at the cap', async () => {
  const endless = (rows: number): Parameters<typeof beam>[0] => ({
    logits: Float32Array.from(Array.from({ length: rows }, () => [-30, 0, -1]).flat()),
    next: async (taken) => endless(taken.length),
  });
  for (const width of [1, 3]) {
    const [path] = await beam(endless(1), { vocabulary: 3, end: 0, width, maxTokens: 6 });
    expect(path?.tokens.length).toBeLessThanOrEqual(7);
  }
});
