import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Phrase } from '../../server/audio/cutter.ts';
import { openCutter } from '../../server/audio/cutter.ts';

const WINDOW = 512;
/** So many seconds of windows with one probability of speech. */
const of = (speech: number, seconds: number): number[] => Array<number>(Math.round((seconds * 16_000) / WINDOW)).fill(speech);

/** Sample number i of the exam holds the value i * MARK: exact in 32 bits, and next to silent. */
const MARK = 2 ** -40;

/** Runs windows through a cutter. */
function cut(probabilities: readonly number[], from = 0): Phrase[] {
  const cutter = openCutter(from);
  const phrases = probabilities.map((speech, n) => {
    const at = from + n * WINDOW;
    return cutter.push({ at, speech, samples: Float32Array.from({ length: WINDOW }, (_, i) => (at + i) * MARK) });
  });
  return [...phrases, cutter.flush()].filter((phrase) => phrase !== undefined);
}

test('two phrases with a pause between them, each with room before and after the voice', () => {
  const phrases = cut([...of(0, 2), ...of(0.9, 1), ...of(0.1, 1.5), ...of(0.9, 1), ...of(0, 1)]);
  expect(phrases).toHaveLength(2);
  for (const { from, to, speech, samples } of phrases) {
    expect((speech[0] - from) / 16_000).toBeGreaterThanOrEqual(0.3);
    expect((to - speech[1]) / 16_000).toBeGreaterThanOrEqual(0.25);
    expect(samples.length).toBe(to - from);
    expect([samples[0], samples.at(-1)]).toEqual([from * MARK, (to - 1) * MARK]);
  }
  expect(phrases.map(({ silenceBefore }) => Math.round(silenceBefore * 10) / 10)).toEqual([2, 1.5]);
});

test('a breath inside a sentence does not cut it', () => {
  expect(cut([...of(0.9, 1), ...of(0.05, 0.5), ...of(0.9, 1), ...of(0, 1)])).toHaveLength(1);
});

test('a phrase is known before its pause is over, and is the same one when it is; a breath takes it back', () => {
  const cutter = openCutter(0);
  const after = (speech: number, seconds: number): (Phrase | undefined)[] =>
    of(speech, seconds).map((likely) => cutter.push({ at: (at += WINDOW), speech: likely, samples: new Float32Array(WINDOW) }));
  let at = 0;
  after(0.9, 1);
  expect(cutter.soon()).toBeUndefined();
  after(0.05, 0.4);
  const foreseen = cutter.soon();
  expect(foreseen?.samples.length).toBeGreaterThan(16_000);
  after(0.9, 0.5);
  expect(cutter.soon()).toBeUndefined();
  after(0, 0.4);
  const whole = cutter.soon();
  expect(whole?.from).toBe(foreseen?.from);
  expect(whole?.to).toBeGreaterThan((foreseen as Phrase).to + 8000);
  // Told a quarter of a second and more before the end, which the pause alone decides.
  expect(after(0, 0.15)).toEqual([undefined, undefined, undefined, undefined, undefined]);
  expect(after(0, 0.2).find((phrase) => phrase !== undefined)).toBe(whole);
  expect(cutter.soon()).toBeUndefined();
});

test('a knock or a bark of a tenth of a second is no phrase, and silence goes on being counted through it', () => {
  const phrases = cut([...of(0, 1), ...of(0.9, 0.1), ...of(0, 1), ...of(0.9, 0.5), ...of(0, 1)]);
  expect(phrases).toHaveLength(1);
  expect(phrases[0]?.silenceBefore).toBeCloseTo(2.1, 1);
});

test('talk without a pause is cut at its softest moment, and nothing between the parts is lost or doubled', () => {
  const talk = [...of(0.95, 12), ...of(0.6, 0.1), ...of(0.95, 12), ...of(0, 1)];
  const [first, second] = cut(talk);
  expect((first as Phrase).to).toBe((second as Phrase).from);
  expect((first as Phrase).to / 16_000).toBeCloseTo(12, 0);
});

test('what is being said when the stream ends is a phrase', () => {
  expect(cut([...of(0, 1), ...of(0.9, 1)])).toHaveLength(1);
});

test('the exam clock goes on from where the stream began', () => {
  expect(cut([...of(0, 1), ...of(0.9, 1), ...of(0, 1)], 160_000)[0]?.from).toBeGreaterThanOrEqual(160_000);
});

test('whatever the stream: phrases lie in order, never overlap, are at most 15 s long, and hold every stretch of clear speech', () => {
  const stretch = fc.record({ speech: fc.constantFrom(0, 0.2, 0.4, 0.6, 0.95), seconds: fc.double({ min: 0.03, max: 20, noNaN: true }) });
  fc.assert(
    fc.property(fc.array(stretch, { maxLength: 10 }), (stretches) => {
      const stream = stretches.flatMap(({ speech, seconds }) => of(speech, seconds));
      const phrases = cut(stream);
      phrases.forEach((phrase, i) => {
        expect(phrase.from).toBeGreaterThanOrEqual(phrases[i - 1]?.to ?? 0);
        expect(phrase.samples.length).toBeLessThanOrEqual(15.1 * 16_000);
        expect(phrase.samples[0]).toBe(phrase.from * MARK);
        expect(phrase.samples.at(-1)).toBe((phrase.to - 1) * MARK);
      });
      let at = 0;
      for (const { speech, seconds } of stretches) {
        const count = of(speech, seconds).length * WINDOW;
        if (speech === 0.95 && seconds > 0.2) {
          for (const sample of [at, at + count - 1]) expect(phrases.some(({ from, to }) => from <= sample && sample < to)).toBe(true);
        }
        at += count;
      }
    }),
    { numRuns: 60 },
  );
});

test('a breath inside a sentence is told, and a closed mouth inside a word is none', () => {
  const [phrase] = cut([...of(0.9, 1), ...of(0.05, 0.4), ...of(0.9, 1), ...of(0.1, 0.15), ...of(0.9, 0.5), ...of(0, 1)]);
  const [pause, ...more] = phrase?.pauses ?? [];
  expect(more).toEqual([]);
  expect((pause?.[0] ?? NaN) / 16_000).toBeCloseTo(1, 1);
  expect((pause?.[1] ?? NaN) / 16_000).toBeCloseTo(1.4, 1);
});
