/**
 * Surfaces and directions. SAEVA Proceedings 2014 Dental Wetlab p. 3,
 * https://view.joomag.com/saeva-proceedings-2014-dental-wetlab/0815754001508233534?page=3 : buccal to the cheek, lingual to the
 * tongue (lower), palatal to the roof of the mouth (upper), labial to the lips, occlusal the table, rostral and caudal, mesial and distal.
 */
import { describe, expect, test } from 'vitest';
import { doubtsOf, findings, read } from './reading.ts';

const surfaceOf = (text: string): readonly string[] => findings(read(text)).flatMap((f) => f.surfaces ?? []);

describe('the words', () => {
  test.each([
    ['buccal', 'one oh nine'],
    ['palatal', 'one oh nine'],
    ['lingual', 'three oh nine'],
    ['labial', 'one oh two'],
    ['occlusal', 'one oh nine'],
    ['mesial', 'one oh nine'],
    ['distal', 'one oh nine'],
    ['interproximal', 'one oh nine'], // from memory, not confirmed
    ['vestibular', 'one oh two'], // word used in Steinfort et al. 2019, Front Vet Sci 6:322; its meaning from memory, not confirmed
  ])('%s caries on %s', (surface, tooth) => {
    expect(surfaceOf(`${surface} caries on ${tooth}`)).toEqual([surface]);
    expect(doubtsOf(read(`${surface} caries on ${tooth}`))).toEqual([]);
  });
});

describe('in plain words', () => {
  test.each([
    ['points on the cheek side of one oh nine', 'buccal'],
    ['points on the outside of one oh nine', 'buccal'],
    ['points on the tongue side of three oh nine', 'lingual'],
    ['points on the inside of three oh nine', 'lingual'],
  ])('%s', (text, surface) => {
    expect(surfaceOf(text)).toEqual([surface]);
  });
});

describe('a likely slip is kept as said, and asked', () => {
  test.each([
    ['palatal caries on three oh nine', 'palatal'],
    ['lingual caries on one oh nine', 'lingual'],
  ])('%s', (text, surface) => {
    expect(surfaceOf(text)).toEqual([surface]);
    expect(doubtsOf(read(text))).toEqual(['unlikely']);
  });
});

/** SAEVA 2014 p. 7: points on the buccal edge of the uppers and the lingual edge of the lowers; a hook at the rostral edge of the first or the caudal edge of the last cheek tooth. */
describe('where wear is usual', () => {
  test.each([
    'buccal points on the uppers',
    'lingual points on the lowers',
    'one oh six rostral hook',
    'two oh six rostral hook',
    'three eleven caudal hook',
    'four eleven caudal hook',
  ])('%s raises nothing', (text) => expect(doubtsOf(read(text))).toEqual([]));
  test.each(['palatal points on the uppers', 'buccal points on the lowers', 'hook on one oh eight', 'hook on four oh nine'])(
    '%s is asked',
    (text) => {
      expect(doubtsOf(read(text))).toEqual(['unlikely']);
      expect(findings(read(text))).toHaveLength(1);
    },
  );
});

/** Near side is the left, off side the right of the horse: common practice, no source. */
test.each([
  ['near side upper six hook', '206'],
  ['off side upper six hook', '106'],
  ['nearside lower nine fractured', '309'],
  ['offside lower nine fractured', '409'],
])('%s is %s', (text, tooth) => {
  expect(findings(read(text)).map(({ place }) => place)).toEqual([expect.objectContaining({ teeth: [tooth] })]);
});
