/**
 * How the words of the trade sound, by our rules of spelling, beside the Carnegie Mellon Pronouncing Dictionary (package
 * `cmu-pronouncing-dictionary`, in the alphabet ARPABET, American English). The rules leave out stress and the length of vowels.
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { expect, test } from 'vitest';
import { distance, soundCodes, soundOf } from '../../parser/grammar/sounds.ts';
import { soundForms } from '../../parser/grammar/vocabulary.ts';

/** ARPABET's phones as the letters that our rules write. */
const letters: Readonly<Record<string, string>> = {
  AA: 'o',
  AE: 'a',
  AH: 'u',
  AO: 'o',
  AW: 'o',
  AY: 'i',
  EH: 'e',
  ER: 'er',
  EY: 'A',
  IH: 'i',
  IY: 'e',
  OW: 'O',
  OY: 'O',
  UH: 'u',
  UW: 'u',
  B: 'b',
  CH: 'C',
  D: 'd',
  DH: 'T',
  F: 'f',
  G: 'g',
  HH: 'h',
  JH: 'j',
  K: 'k',
  L: 'l',
  M: 'm',
  N: 'n',
  NG: 'N',
  P: 'p',
  R: 'r',
  S: 's',
  SH: 'S',
  T: 't',
  TH: 'T',
  V: 'v',
  W: 'w',
  Y: 'y',
  Z: 'z',
  ZH: 'S',
};
const published = (phones: string): string =>
  phones
    .split(' ')
    .map((phone) => letters[phone.replace(/\d/, '')] ?? expect.fail(`no letter for ${phone}`))
    .join('');
const phonesOf = (word: string): string | undefined => (dictionary as Readonly<Record<string, string>>)[word];
/** Shorter words are never taken for others (`likeness.ts`), nor further ones. */
const SHORTEST = 4,
  NEAR = 0.2;
const words = [...new Set(soundForms.flatMap((form) => form.split(' ')))].filter((word) => soundOf(word).length >= SHORTEST);
const known = words.flatMap((word) => {
  const phones = phonesOf(word);
  return phones === undefined ? [] : [{ word, phones, ours: soundCodes(soundOf(word)), theirs: soundCodes(published(phones)) }];
});

test('the dictionary has most of the lexicon', () => expect(known.length / words.length).toBeGreaterThan(0.75));
test('a word sounds by our rules as it does in the dictionary', () => {
  const apart = known.map(({ ours, theirs }) => distance(ours, theirs));
  expect(apart.reduce((sum, one) => sum + one, 0) / apart.length).toBeLessThan(0.08);
  expect(apart.filter((one) => one <= NEAR).length / apart.length).toBeGreaterThan(0.95);
});
test('words that the dictionary sounds alike are alike to us', () => {
  const alike = new Map<string, string[]>();
  for (const [word, phones] of Object.entries(dictionary))
    if (/^[a-z]+$/.test(word)) alike.set(phones, [...(alike.get(phones) ?? []), word]);
  const pairs = known.flatMap(({ word, phones, ours }) =>
    (alike.get(phones) ?? []).filter((other) => other !== word).map((other) => distance(ours, soundCodes(soundOf(other)))),
  );
  expect(pairs.length).toBeGreaterThan(200);
  expect(pairs.filter((one) => one <= NEAR).length / pairs.length).toBeGreaterThan(0.9);
});
test('words that we take for each other are near in the dictionary too', () => {
  const pairs = known.flatMap((a, i) =>
    known
      .slice(i + 1)
      .filter((b) => distance(a.ours, b.ours) <= NEAR)
      .map((b) => distance(a.theirs, b.theirs)),
  );
  expect(pairs.length).toBeGreaterThan(200);
  expect(pairs.filter((one) => one <= 0.35).length / pairs.length).toBeGreaterThan(0.95);
});
