import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distance, soundCodes, soundOf } from '../../parser/grammar/sounds.ts';
import { proposer } from '../../parser/index.ts';
import type { Engine } from '../../server/speech/engine.ts';
import { judge } from '../../server/speech/judge.ts';
import { verified } from '../../server/speech/verify.ts';
import { hypothesis } from '../../server/speech/words.ts';

const far = (a: string, b: string): number => distance(soundCodes(soundOf(a)), soundCodes(soundOf(b)));

// Heard by this recogniser in place of the word on the right (our own trials).
test.each([
  ['rants', 'ramps', 'hooks'], ['carries', 'caries', 'canine'], ['who kill', 'buccal', 'lingual'], ['coddle', 'caudal', 'rostral'],
  ['for all nine', 'four oh nine', 'four oh three'], ['not', 'nought', 'note'], ['carter', 'tartar', 'ramp'], ['diorstamer', 'diastema', 'displaced'], ['rama fidin', 'romifidine', 'detomidine'],
])('"%s" is nearer to "%s" than to "%s"', (heard, said, other) => {
  expect(far(heard, said)).toBeLessThan(0.45);
  expect(far(heard, said)).toBeLessThan(far(heard, other));
});

test('a distance is nought for the same sound, the same both ways, and never far above one', () => {
  fc.assert(fc.property(fc.string(), fc.string(), (a, b) => {
    expect(far(a, a)).toBe(0);
    expect(far(a, b)).toBeCloseTo(far(b, a), 9);
    expect(far(a, b)).toBeLessThanOrEqual(1.3);
  }));
});

const FORMS = ['valve diastema', 'between', 'rostral hook', 'ramps', 'on', 'peripheral caries', 'buccal', 'romifidine', 'half a mil', 'one oh nine', 'four', 'three'];

test('proposals are sentences of the trade that sound like what was heard, nearest first, and never what was heard', () => {
  const propose = proposer(FORMS);
  expect(propose(['Rants on four oh nine.'], 5)[0]).toBe('ramps on four oh nine');
  expect(propose(['Raw stroll hook on three or nine'], 8)).toContain('rostral hook on three oh nine');
  expect(propose(['rostral hook on one oh nine'], 8)).not.toContain('rostral hook on one oh nine');
});

test('any words at all give at most so many proposals, all different', () => {
  const propose = proposer(FORMS);
  fc.assert(fc.property(fc.array(fc.string(), { maxLength: 3 }), fc.integer({ min: 0, max: 9 }), (texts, count) => {
    const proposals = propose(texts, count);
    expect(proposals.length).toBeLessThanOrEqual(count);
    expect(new Set(proposals).size).toBe(proposals.length);
  }), { numRuns: 50 });
});

const SPAN = { from: 0, to: 2 };

test('a few nats bring a reading of the trade to the front; belief stays what the ear said', () => {
  const candidates = [{ text: 'rants on', logProb: -3, inTrade: false }, { text: 'ramps on', logProb: -4, inTrade: true }];
  const [first, second] = judge(candidates, SPAN, { trade: 2, temperature: 1 });
  expect(first?.hypothesis.text).toBe('ramps on');
  expect(first?.posterior).toBeCloseTo(1 / (1 + Math.E), 6);
  expect(second?.posterior).toBeCloseTo(Math.E / (1 + Math.E), 6);
  expect(judge(candidates, SPAN, { trade: 0.5, temperature: 1 })[0]?.hypothesis.text).toBe('rants on');
});

test('belief adds up to one, and a higher temperature makes it milder', () => {
  fc.assert(fc.property(fc.array(fc.record({ text: fc.constant('a b'), logProb: fc.double({ min: -60, max: 0, noNaN: true }), inTrade: fc.boolean() }), { minLength: 1, maxLength: 9 }), (candidates) => {
    const sum = (temperature: number) => judge(candidates, SPAN, { trade: 2, temperature }).reduce((total, { posterior }) => total + posterior, 0);
    expect(sum(1)).toBeCloseTo(1, 6);
    expect(sum(3)).toBeCloseTo(1, 6);
    const top = (temperature: number) => Math.max(...judge(candidates, SPAN, { trade: 2, temperature }).map(({ posterior }) => posterior));
    expect(top(3)).toBeLessThanOrEqual(top(1) + 1e-9);
  }));
});

/** An engine whose ear gives the scores listed, and -50 to anything else. */
const engineWith = (scores: Readonly<Record<string, number>>): Engine & { asked: string[] } => {
  const asked: string[] = [];
  return {
    name: 'listed', asked,
    hear: async () => ({ hypotheses: [], tookMs: 0 }),
    score: async (_clip, sentences) => { asked.push(...sentences); return sentences.map((one) => scores[one] ?? -50); },
    close: async () => undefined,
  };
};
const clip = { samples: new Float32Array(32_000), from: 0 };
const free = (text: string) => [hypothesis(text.split(' ').map((w) => ({ w, logProb: -1 })), SPAN)];
const language = { whole: (text: string) => !/rants|show/.test(text), propose: proposer(FORMS) };

test('a reading that the grammar reads whole is left alone: nothing is asked of the ear', async () => {
  const engine = engineWith({});
  const given = free('ramps on four');
  expect((await verified(engine, clip, given, language)).map(({ text, words }) => ({ text, words }))).toEqual(given.map(({ text, words }) => ({ text, words })));
  expect(engine.asked).toEqual([]);
});

test('what was misheard is found again, and talk stays talk', async () => {
  const near = engineWith({ 'rants on four': -3, 'ramps on four': -3.5 });
  expect((await verified(near, clip, free('rants on four'), language))[0]?.text).toBe('ramps on four');
  const talk = engineWith({ 'how was the show': -2 });
  expect((await verified(talk, clip, free('how was the show'), language))[0]?.text).toBe('how was the show');
});
