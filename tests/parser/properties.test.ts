/** What holds for any words: nothing throws, every word is accounted for, the work grows with the length, what is sampled reads back, talk changes nothing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyContext, explain, meaningOf, parse, parseText, spokenForms } from '../../parser/index.ts';
import { HeardPhrase } from '../../parser/contract/word.ts';
import { ParseResult } from '../../parser/contract/draft.ts';
import { chatter, sample } from '../../parser/sampler/index.ts';
import { difference } from '../match.ts';
import { readLines } from './corpus.ts';
import { seeded } from './seeded.ts';
import { sound } from './sound.ts';

const tradeWords = [
  ...new Set(spokenForms().flatMap((form) => form.split(' '))),
  'no',
  'and',
  'or',
  'sorry',
  'i',
  'mean',
  'not',
  'between',
  'behind',
  'that',
  'the',
  'oh',
  'one',
  'two',
  'three',
  'four',
  'nine',
  'ten',
  'point',
  'hundred',
  'to',
];
const accounted = /^(item:|doubt:|command$|filler$|leftover$)/;

function holds(text: string): void {
  const result = parseText('p/1', text, emptyContext());
  const words = text.split(/\s+/).filter(Boolean);
  expect(result.utterance.words.map(({ w }) => w)).toEqual(words);
  expect(result.utterance.words.filter(({ as }) => !accounted.test(as))).toEqual([]);
  // A word that an item claims is claimed by an item that exists.
  const ids = new Set([...result.items, ...result.doubts].map(({ id }) => id));
  expect(result.utterance.words.filter(({ as }) => /^(item|doubt):/.test(as) && !ids.has(as.replace(/^\w+:/, '')))).toEqual([]);
  expect(ParseResult.safeParse(result).error?.issues ?? []).toEqual([]);
  expect(JSON.parse(JSON.stringify(result.carry ?? null)) as unknown).toEqual(result.carry ?? null);
}

describe('any words', () => {
  test('words of the trade in any order, up to 200', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...tradeWords), { maxLength: 200 }), (words) => holds(words.join(' '))),
      { numRuns: 60, seed: 4 },
    );
  });
  test('random Unicode, up to 200 words', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 12 }), { maxLength: 200 }), (words) => holds(words.join(' '))),
      { numRuns: 60, seed: 4 },
    );
  });
  test('no hypothesis, an empty one, and several', () => {
    const heard = (texts: readonly string[]) =>
      HeardPhrase.parse({
        id: 'p/1',
        hypotheses: texts.map((text, i) => ({
          text,
          logProb: -i,
          words: text
            .split(' ')
            .filter(Boolean)
            .map((w) => ({ w })),
        })),
      });
    expect(parse(heard([]), emptyContext()).doubts.map(({ doubt }) => doubt)).toEqual(['unheard']);
    expect(parse(heard(['']), emptyContext()).doubts.map(({ doubt }) => doubt)).toEqual(['unheard']);
    const result = parse(heard(['one oh six hook', 'two oh six hook']), emptyContext());
    // Posterior of the first of two with log scores 0 and -1: 1 / (1 + e^-1) = 0.731.
    expect(result.items[0]?.evidence.sure).toBeCloseTo(0.731, 3);
  });
});

describe('what is made stands by its schema', () => {
  test('of words of the trade in any order', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...tradeWords), { minLength: 2, maxLength: 14 }), (words) => {
        expect(sound(parseText('p/1', words.join(' '), emptyContext()))).toEqual([]);
      }),
      { numRuns: 300, seed: 9 },
    );
  });
  test('of spoken forms with places and numbers between them, phrase after phrase', () => {
    const forms = spokenForms();
    const filling = [
      'no',
      'and',
      'on',
      'upper left',
      'one oh six',
      'two ten',
      'three mil',
      'grade two',
      'except',
      'but',
      'last year',
      'now',
      'both',
      'the right',
      'not',
      'one',
      'the sixes',
    ];
    const phrase = fc
      .array(
        fc.oneof(
          fc.nat(forms.length - 1).map((i) => forms[i] as string),
          fc.constantFrom(...filling),
        ),
        { minLength: 1, maxLength: 6 },
      )
      .map((parts) => parts.join(' '));
    fc.assert(
      fc.property(fc.array(phrase, { minLength: 1, maxLength: 4 }), (lines) => {
        expect(readLines(lines).flatMap(sound)).toEqual([]);
      }),
      { numRuns: 300, seed: 9 },
    );
  });
  test('of every sampled sentence', () => {
    const random = seeded(9);
    expect(Array.from({ length: 500 }, () => sample(random)).flatMap((one) => readLines([...one.before, one.text]).flatMap(sound))).toEqual(
      [],
    );
  });
});

describe('the ear is not sure', () => {
  const heard = (...texts: readonly (readonly [string, number])[]) =>
    HeardPhrase.parse({
      id: 'p/1',
      hypotheses: texts.map(([text, logProb]) => ({ text, logProb, words: text.split(' ').map((w) => ({ w })) })),
    });
  test('a rival tooth close behind is named', () => {
    const { doubts } = parse(heard(['one oh six hook', 0], ['two oh six hook', -0.5]), emptyContext());
    expect(doubts.map(({ doubt, readings }) => [doubt, readings?.map(({ label }) => label)])).toEqual([
      ['unsure', ['one oh six hook', 'two oh six hook']],
    ]);
  });
  test('a rival that says the same adds to the belief', () => {
    const result = parse(heard(['hook on one oh six', 0], ['one oh six hook', -0.1]), emptyContext());
    expect(result.items[0]?.evidence.sure).toBeCloseTo(1, 5);
    expect(result.doubts).toEqual([]);
  });
  test('a rival far behind is no doubt', () => {
    expect(parse(heard(['one oh six hook', 0], ['two oh six hook', -3]), emptyContext()).doubts).toEqual([]);
  });
});

describe('the work of reading', () => {
  test.each([
    'one oh six hook four mil and no ramps on three eleven',
    'one oh six hook four mil sorry three mil',
    'sorry i mean',
    'and the other side',
    'upper left',
  ])('words looked at are bounded for every word said: %s', (phrase) => {
    // Every look at a word is counted, also those of a phrase that takes itself back; at most six corrections a phrase.
    for (const times of [1, 10, 100]) {
      const text = Array(times).fill(phrase).join(' ');
      expect(parseText('p/1', text, emptyContext()).trace.steps / text.split(' ').length).toBeLessThanOrEqual(10);
    }
  });
});

describe('the sampler', () => {
  const random = seeded(20261125);
  const drawn = Array.from({ length: 400 }, () => sample(random));
  test('what is drawn reads back as what it means', () => {
    const wrong = drawn.flatMap((one) => {
      const result = readLines([...one.before, one.text]).at(-1);
      const { missing, extra } = difference({ items: one.items }, { items: result?.items ?? [], commands: [], doubts: [] });
      return missing.length + extra.length === 0 || result === undefined
        ? []
        : [[explain(result), ...missing.map((m) => `  missing ${m}`), ...extra.map((e) => `  extra ${e}`)].join('\n')];
    });
    expect(wrong.join('\n')).toBe('');
  });
  test('a command that is drawn is heard as one', () => {
    const steering = drawn.filter(({ command }) => command !== undefined);
    expect(steering.length).toBeGreaterThan(5);
    expect(
      steering
        .filter(
          (one) =>
            !readLines([...one.before, one.text])
              .at(-1)
              ?.commands.some(({ command }) => command === one.command),
        )
        .map(({ text }) => text),
    ).toEqual([]);
  });
  test('talk yields nothing, and talk between phrases changes nothing', () => {
    const talk = Array.from({ length: 200 }, () => chatter(random));
    expect(
      talk.flatMap((text) =>
        readLines([text])
          .filter((r) => r.items.length + r.doubts.length + r.commands.length > 0)
          .map(explain),
      ),
    ).toEqual([]);
    const lines = drawn
      .filter(({ command, before }) => command === undefined && before.length === 0)
      .slice(0, 60)
      .map(({ text }) => text);
    const items = (said: readonly string[]): readonly string[] => readLines(said).flatMap((r) => r.items.map(meaningOf));
    expect(items(lines.flatMap((line, i) => [talk[i] as string, line]))).toEqual(items(lines));
  });
});
