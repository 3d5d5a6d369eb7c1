/**
 * Number words against two general readers, where those are right: compromise (`three`) and words-to-numbers. Where one is known
 * to be wrong ("nought", "a centimetre and a half", tooth codes) the expectation is plain arithmetic, and says so.
 */
import nlp from 'compromise/three';
import { wordsToNumbers } from 'words-to-numbers';
import { describe, expect, test } from 'vitest';
import { findings, read } from './reading.ts';

const small = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const inWords = (n: number): string => small[n] ?? `${tens[Math.floor(n / 10)]}${n % 10 ? ` ${small[n % 10]}` : ''}`;
const measured = (size: string): unknown => findings(read(`ulcer on the left cheek ${size}`))[0]?.measures?.[0]?.value;
const byCompromise = (words: string): unknown => (nlp(words).numbers().get() as readonly unknown[])[0];

describe('whole numbers, one to ninety nine', () => {
  test.each(Array.from({ length: 99 }, (_, i) => inWords(i + 1)))('%s', (words) => {
    const ours = measured(`${words} millimetres`);
    expect(ours).toBe(byCompromise(words));
    expect(ours).toBe(wordsToNumbers(words));
  });
});

describe('decimals', () => {
  test.each([0, 1, 2, 3, 7, 12].flatMap((whole) => [1, 2, 3, 5, 9].map((part) => `${small[whole]} point ${small[part]}`)))(
    '%s',
    (words) => {
      const ours = measured(`${words} millimetres`);
      expect(ours).toBe(byCompromise(words));
      expect(ours).toBe(wordsToNumbers(words));
    },
  );
});

describe('halves (compromise reads them, words-to-numbers does not)', () => {
  test.each(['one and a half', 'two and a half', 'three and a half', 'ten and a half'])('%s', (words) =>
    expect(measured(`${words} millimetres`)).toBe(byCompromise(words)),
  );
});

describe('what both general readers miss: plain arithmetic', () => {
  test.each<readonly [string, number | readonly number[]]>([
    ['nought point three millimetres', 0.3],
    ['nought point five millimetres', 0.5],
    ['half a millimetre', 0.5],
    ['a centimetre and a half', 1.5],
    ['a millimetre', 1],
    ['eight to ten millimetres', [8, 10]],
    ['two to three mil', [2, 3]],
    ['four or five mil', [4, 5]],
  ])('%s', (words, value) => expect(measured(words)).toEqual(value));
  test('the unit stays as spoken', () => {
    expect(findings(read('ulcer on the left cheek a centimetre and a half'))[0]?.measures?.[0]?.unit).toBe('cm');
  });
});

/** A number beside money, height, rate, time or count is never a tooth: common practice, no source. */
test.each([
  'that is one ten today',
  'sixteen two hands',
  'two hundred and five pounds please',
  'we start at three ten',
  'call me at two oh six tonight',
])('no tooth in: %s', (words) => {
  const result = read(words);
  expect([findings(result), result.doubts]).toEqual([[], []]);
});
