/**
 * Eruption ages: several published tables, which disagree. Before the earliest of them a permanent tooth is doubted, after the
 * latest it is not; between them (a soft window) the grammar may do either, and never refuses the finding.
 *   A  https://liquisearch.com/horse_teeth/tooth_growth (encyclopaedia table)
 *   B  The Veterinary Care of the Horse p. 1064, http://online.flipbuilder.com/ulbm/zzvj/files/basic-html/page1064.html
 *   C  http://www.coloradohorsevet.com/equineservices/equine-dentistry/equine-dental-development/ (rounds the incisors down)
 *   E  CK Equine Hospital, https://www.ckequinehospital.com/dentistry
 * Ages are years: [earliest, latest] of each table that gives one; fractions that were lost in print are left out.
 */
import { describe, expect, test } from 'vitest';
import { doubtsOf, findings, read, spoken } from './reading.ts';

type Range = readonly [number, number];
const tables: Readonly<Record<string, Readonly<Partial<Record<'A' | 'B' | 'C' | 'E', Range>>>>> = {
  '01': { A: [2.5, 2.5], C: [2, 2], E: [2.5, 2.5] },
  '02': { A: [3.5, 4], C: [3, 3], E: [3.5, 3.5] },
  '03': { A: [4.5, 5], C: [4, 4], E: [4.5, 4.5] },
  '04': { A: [3.5, 6], B: [4, 5], C: [4, 5] },
  '06': { A: [2, 3], C: [2, 2] },
  '07': { A: [2.5, 3], B: [3, 3], C: [3, 3] },
  '08': { A: [3, 4], C: [4, 4] },
  '09': { A: [0.75, 1], B: [0.75, 1], C: [0.75, 1] },
  '10': { A: [2, 2], B: [2, 3], C: [2, 2] },
  '11': { A: [3, 4], C: [2, 4] },
};
const rows = Object.entries(tables).flatMap(([position, by]) => {
  const ranges = Object.values(by);
  return ['1', '2', '3', '4'].map((quadrant) => ({
    tooth: quadrant + position,
    earliest: Math.min(...ranges.map(([from]) => from)),
    latest: Math.max(...ranges.map(([, to]) => to)),
  }));
});

describe.each(rows)('$tooth, published at $earliest to $latest years', ({ tooth, earliest, latest }) => {
  const at = (age: number): ReturnType<typeof read> => read(`${spoken(tooth)} fractured`, { age });
  test('well before every table it is doubted, and stays', () => {
    const result = at(earliest * 0.5);
    expect(findings(result)).toHaveLength(1);
    expect(doubtsOf(result)).toEqual(['unlikely']);
    expect(result.doubts[0]?.source).toBeTruthy();
  });
  test('well after every table it is not doubted', () => {
    expect(doubtsOf(at(latest + 1))).toEqual([]);
  });
  test('where tables disagree the finding stays in any case', () => {
    expect(findings(at((earliest + latest) / 2))).toHaveLength(1);
  });
  test('without an age the rule is silent', () => {
    expect(doubtsOf(read(`${spoken(tooth)} fractured`))).toEqual([]);
  });
});

/** Wolf teeth come at 5 months to 3 years, if ever (tables A, B, C). */
test('a wolf tooth at three years is no surprise', () => {
  expect(doubtsOf(read('one oh five wolf tooth', { age: 3 }))).toEqual([]);
});

/** Deciduous teeth are lost between about 2.5 and 5 years (CK Equine Hospital). */
describe('caps', () => {
  const caps = ['5', '6', '7', '8'].flatMap((q) => ['06', '07', '08'].map((p) => q + p));
  test.each(caps)('%s retained at three years is no surprise', (tooth) =>
    expect(doubtsOf(read(`${spoken(tooth)} retained cap`, { age: 3 }))).toEqual([]),
  );
  test.each(caps)('%s retained at twelve years is doubted, and stays', (tooth) => {
    const result = read(`${spoken(tooth)} retained cap`, { age: 12 });
    expect([findings(result).length, doubtsOf(result)]).toEqual([1, ['unlikely']]);
  });
});
