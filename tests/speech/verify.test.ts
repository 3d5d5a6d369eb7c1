import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distance, soundCodes, soundOf } from '../../parser/grammar/sounds.ts';
import { proposer, withNames } from '../../parser/index.ts';
import { language as ofTheTrade } from '../../server/app/language.ts';
import type { Engine } from '../../server/speech/engine.ts';
import { judge } from '../../server/speech/judge.ts';
import { verified } from '../../server/speech/verify.ts';
import { hypothesis } from '../../server/speech/words.ts';

const far = (a: string, b: string): number => distance(soundCodes(soundOf(a)), soundCodes(soundOf(b)));

// Heard by this recogniser in place of the word on the right (our own trials).
test.each([
  ['rants', 'ramps', 'hooks'],
  ['carries', 'caries', 'canine'],
  ['who kill', 'buccal', 'lingual'],
  ['coddle', 'caudal', 'rostral'],
  ['for all nine', 'four oh nine', 'four oh three'],
  ['not', 'nought', 'note'],
  ['carter', 'tartar', 'ramp'],
  ['diorstamer', 'diastema', 'displaced'],
  ['rama fidin', 'romifidine', 'detomidine'],
])('"%s" is nearer to "%s" than to "%s"', (heard, said, other) => {
  expect(far(heard, said)).toBeLessThan(0.45);
  expect(far(heard, said)).toBeLessThan(far(heard, other));
});

test('a distance is nought for the same sound, the same both ways, and never far above one', () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (a, b) => {
      expect(far(a, a)).toBe(0);
      expect(far(a, b)).toBeCloseTo(far(b, a), 9);
      expect(far(a, b)).toBeLessThanOrEqual(1.3);
    }),
  );
});

const FORMS = [
  'valve diastema',
  'between',
  'rostral hook',
  'ramps',
  'on',
  'peripheral caries',
  'buccal',
  'romifidine',
  'half a mil',
  'one oh nine',
  'four',
  'three',
];

test('proposals are sentences of the trade that sound like what was heard, nearest first, and never what was heard', () => {
  const propose = proposer(FORMS);
  expect(propose(['Rants on four oh nine.'], 5)[0]).toBe('ramps on four oh nine');
  expect(propose(['Raw stroll hook on three or nine'], 8)).toContain('rostral hook on three oh nine');
  expect(propose(['rostral hook on one oh nine'], 8)).not.toContain('rostral hook on one oh nine');
});

test('any words at all give at most so many proposals, all different', () => {
  const propose = proposer(FORMS);
  fc.assert(
    fc.property(fc.array(fc.string(), { maxLength: 3 }), fc.integer({ min: 0, max: 9 }), (texts, count) => {
      const proposals = propose(texts, count);
      expect(proposals.length).toBeLessThanOrEqual(count);
      expect(new Set(proposals).size).toBe(proposals.length);
    }),
    { numRuns: 50 },
  );
});

const SPAN = { from: 0, to: 2 };

test('a few nats bring a reading of the trade to the front; belief stays what the ear said', () => {
  const candidates = [
    { text: 'rants on', logProb: -3, inTrade: false },
    { text: 'ramps on', logProb: -4, inTrade: true },
  ];
  const [first, second] = judge(candidates, SPAN, { trade: 2, name: 4, temperature: 1 });
  expect(first?.hypothesis.text).toBe('ramps on');
  expect(first?.posterior).toBeCloseTo(1 / (1 + Math.E), 6);
  expect(second?.posterior).toBeCloseTo(Math.E / (1 + Math.E), 6);
  expect(judge(candidates, SPAN, { trade: 0.5, name: 4, temperature: 1 })[0]?.hypothesis.text).toBe('rants on');
});

test('belief adds up to one, and a higher temperature makes it milder', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ text: fc.constant('a b'), logProb: fc.double({ min: -60, max: 0, noNaN: true }), inTrade: fc.boolean() }), {
        minLength: 1,
        maxLength: 9,
      }),
      (candidates) => {
        const sum = (temperature: number) =>
          judge(candidates, SPAN, { trade: 2, name: 4, temperature }).reduce((total, { posterior }) => total + posterior, 0);
        expect(sum(1)).toBeCloseTo(1, 6);
        expect(sum(3)).toBeCloseTo(1, 6);
        const top = (temperature: number) =>
          Math.max(...judge(candidates, SPAN, { trade: 2, name: 4, temperature }).map(({ posterior }) => posterior));
        expect(top(3)).toBeLessThanOrEqual(top(1) + 1e-9);
      },
    ),
  );
});

/** An engine whose ear gives the scores listed, and -50 to anything else. */
const engineWith = (scores: Readonly<Record<string, number>>): Engine & { asked: string[] } => {
  const asked: string[] = [];
  return {
    name: 'listed',
    asked,
    hear: async () => ({ hypotheses: [], tookMs: 0 }),
    score: async (_clip, sentences) => {
      asked.push(...sentences);
      return sentences.map((one) => scores[one] ?? -50);
    },
    close: async () => undefined,
  };
};
const clip = { samples: new Float32Array(32_000), from: 0 };
const free = (text: string) => [
  hypothesis(
    text.split(' ').map((w) => ({ w, logProb: -1 })),
    SPAN,
  ),
];
const language = {
  whole: (text: string) => !/rants|show/.test(text),
  open: (text: string) => text.endsWith('half'),
  propose: proposer(FORMS),
  named: withNames,
};

test('the only reading, whole by the grammar, is left alone: there is nothing to ask of the ear', async () => {
  const engine = engineWith({});
  const given = free('ramps on four');
  expect((await verified(engine, clip, given, language)).map(({ text, words }) => ({ text, words }))).toEqual(
    given.map(({ text, words }) => ({ text, words })),
  );
  expect(engine.asked).toEqual([]);
});

test('what was misheard is found again, and talk stays talk', async () => {
  const near = engineWith({ 'rants on four': -3, 'ramps on four': -3.5 });
  expect((await verified(near, clip, free('rants on four'), language))[0]?.text).toBe('ramps on four');
  const talk = engineWith({ 'how was the show': -2 });
  expect((await verified(talk, clip, free('how was the show'), language))[0]?.text).toBe('how was the show');
});

const NAMES = ['Bonny Lass', 'Mistral', 'Mrs Abernethy', 'Larkfield Stables', 'Pumpkin'];

test('an expected name that sounds like what was heard is judged by the ear, also where the phrase reads whole; without names nothing is asked', async () => {
  const language2 = { ...language, whole: (text: string) => text.startsWith('next horse') };
  const engine = engineWith({ 'next horse mistrial': -1, 'next horse Mistral': -4 });
  const named = await verified(engine, clip, free('next horse mistrial'), language2, NAMES);
  expect(named[0]?.text).toBe('next horse Mistral');
  // The few nats for the name order the readings and are in no number.
  expect(named.map(({ logProb }) => logProb)).toEqual([-4, -1]);
  const unasked = engineWith({});
  expect((await verified(unasked, clip, free('next horse mistrial'), language2))[0]?.text).toBe('next horse mistrial');
  expect(unasked.asked).toEqual([]);
});

test('a name that the ear does not hear does not come, however near it sounds', async () => {
  const engine = engineWith({ 'that is the mistrial': -1, 'that is the Mistral': -9 });
  expect((await verified(engine, clip, free('that is the mistrial'), language, NAMES))[0]?.text).toBe('that is the mistrial');
});

test('readings of the ear are ordered by what it says of each when it is asked again, also where the best reads whole', async () => {
  const engine = engineWith({ 'ramps on four': -4, 'ramp on four': -1.5 });
  const heard = [
    ['ramps on four', -1],
    ['ramp on four', -2],
  ].map(([text, logProb]) => hypothesis([{ w: text as string, logProb: logProb as number }], SPAN));
  expect((await verified(engine, clip, heard, language)).map(({ text, logProb }) => [text, logProb])).toEqual([
    ['ramp on four', -1.5],
    ['ramps on four', -4],
  ]);
});

test("the ear's own best gives way to the trade or a name, never to other talk that was scored a little higher", () => {
  const talk = [
    { text: 'how was the show', logProb: -3, inTrade: false },
    { text: 'how was this show', logProb: -2.8, inTrade: false },
  ];
  expect(judge(talk, SPAN)[0]?.hypothesis.text).toBe('how was the show');
  expect(judge([...talk, { text: 'now Mistral', logProb: -4, inTrade: false, named: true }], SPAN)[0]?.hypothesis.text).toBe('now Mistral');
});

test('where no reading holds a name, names change nothing', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          text: fc.constant('a b'),
          logProb: fc.double({ min: -60, max: 0, noNaN: true }),
          inTrade: fc.boolean(),
          named: fc.constant(false),
        }),
        { minLength: 1, maxLength: 9 },
      ),
      fc.double({ min: 0, max: 30, noNaN: true }),
      (candidates, name) => {
        expect(judge(candidates, SPAN, { trade: 2, name, temperature: 1 })).toEqual(
          judge(candidates, SPAN, { trade: 2, name: 0, temperature: 1 }),
        );
      },
    ),
  );
});

test('names are proposed whole or not at all, whatever their order, at most so many, and never what was heard', () => {
  const words = fc.constantFrom(
    'next',
    'horse',
    'mistrial',
    'bonny',
    'last',
    'pumped',
    'in',
    'laugh',
    'field',
    'stable',
    'hook',
    'on',
    'one',
    'oh',
    'six',
    'mrs',
    'aber',
    'netty',
  );
  fc.assert(
    fc.property(
      fc.array(words, { minLength: 1, maxLength: 8 }),
      fc.shuffledSubarray(NAMES),
      fc.integer({ min: 0, max: 9 }),
      (heard, names, count) => {
        const text = heard.join(' ');
        const proposals = withNames([text], names, count);
        expect(proposals.length).toBeLessThanOrEqual(count);
        expect(withNames([text], [...names].reverse(), count)).toEqual(proposals);
        expect(withNames([text], [], count)).toEqual([]);
        for (const proposal of proposals) {
          expect(proposal.toLowerCase()).not.toBe(text);
          expect(names.some((name) => ` ${proposal} `.includes(` ${name} `))).toBe(true);
        }
      },
    ),
    { numRuns: 200 },
  );
  expect(withNames(['Next horse bonny last.'], NAMES, 3)[0]).toBe('next horse Bonny Lass');
  expect(withNames(['hook on one oh six'], NAMES, 3)).toEqual([]);
});

test('a reading that leaves a question open gets no nats for being whole; one that is finished does', () => {
  const said = [
    { text: 'wave is good condition score six', logProb: -1.4, inTrade: true, open: true },
    { text: 'weight is good condition score six', logProb: -0.7, inTrade: false },
  ];
  const order = (candidates: Parameters<typeof judge>[0]) => judge([...candidates].reverse(), SPAN).map(({ hypothesis: { text } }) => text);
  expect(order(said)[0]).toBe('weight is good condition score six');
  expect(order(said.map((one) => ({ ...one, open: false })))[0]).toBe('wave is good condition score six');
});

test("where the best reading leaves a question open the ear's own others are judged with it, all scored at once", async () => {
  const engine = engineWith({ 'four half': -2.4, 'ramps on four': -3.4, show: -3 });
  const heard = [
    ['four half', -2.4],
    ['ramps on four', -3.4],
    ['show', -3],
  ].map(([text, logProb]) => hypothesis([{ w: text as string, logProb: logProb as number }], SPAN));
  expect((await verified(engine, clip, heard, language)).map(({ text }) => text)).toEqual(['ramps on four', 'four half', 'show']);
  expect(engine.asked).toEqual(['four half', 'ramps on four', 'show']);
  const far = engineWith({ 'four half': -2.4, 'ramps on four': -5 });
  expect((await verified(far, clip, heard.slice(0, 2), language))[0]?.text).toBe('four half');
});

test('half a finding is an open question; what is only unlikely was said to its end', () => {
  const { open, whole } = ofTheTrade();
  for (const text of ['wave is good condition score six', 'two zero eight', 'tumour on the right side'])
    expect([text, whole(text), open(text)]).toEqual([text, true, true]);
  // A cap on a permanent tooth, a hook where none stands.
  for (const text of ['caps on all four sevens', 'hook on two oh eight'])
    expect([text, whole(text), open(text)]).toEqual([text, true, false]);
});
