/** Tooth codes and dental formulae against what is published. */
import { describe, expect, test } from 'vitest';
import { legalTeeth } from '../../parser/index.ts';
import { doubtsOf, findings, read, spoken, teethOf } from './reading.ts';

const two = (n: number): string => String(n).padStart(2, '0');
const codes = (quadrants: readonly number[], positions: readonly number[]): readonly string[] =>
  quadrants.flatMap((q) => positions.map((p) => `${q}${two(p)}`));
const upTo = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i + 1);
/** Floyd MR (1991) "The modified Triadan system: nomenclature for veterinary dentistry", J Vet Dent; Liyou O., "Anatomy, physiology, ageing & nomenclature for equine dentistry", https://www.yumpu.com/en/document/view/42886277/ */
const permanent = codes([1, 2, 3, 4], upTo(11));
const deciduous = codes([5, 6, 7, 8], [1, 2, 3, 6, 7, 8]);
const supernumerary = ['112', '212', '312', '412'];

describe('modified Triadan codes (Floyd 1991)', () => {
  test('44 permanent and 24 deciduous teeth are legal; behind an eleven the four supernumeraries (from memory, not confirmed)', () => {
    expect([permanent.length, deciduous.length]).toEqual([44, 24]);
    expect([...legalTeeth].filter((t) => !supernumerary.includes(t)).sort()).toEqual([...permanent, ...deciduous].sort());
  });
  test.each([...permanent, ...deciduous])('%s is read as it is spoken', (code) => {
    const result = read(`${spoken(code)} fractured`);
    expect(findings(result).map(teethOf)).toEqual([[code]]);
    expect(doubtsOf(result)).toEqual([]);
  });
  // x00 is no tooth; no deciduous canine erupts, 05 is permanent, molars have no deciduous precursor.
  test.each([...codes([5, 6, 7, 8], [4, 5, 9, 10, 11]), ...codes([9], [1, 6, 9, 11]), ...codes([1, 2, 3, 4], [12])])(
    '%s is no such tooth: the finding stays, without a place',
    (code) => {
      const result = read(`${spoken(code)} fractured`);
      expect(findings(result).map(({ condition, place }) => [condition, place])).toEqual([['fracture', null]]);
      expect(doubtsOf(result)).toEqual(['no-such-tooth']);
    },
  );
});

/** Merck Veterinary Manual, Muylle S., Overview of Dental Development, http://www.merckvetmanual.com/digestive-system/dental-development/overview-of-dental-development */
test.each([
  ['left lower second premolar', '306'],
  ['last molar of the right mandible', '411'],
])('Merck: the %s is %s', (name, code) => {
  expect(findings(read(`${name} fractured`)).map(teethOf)).toEqual([[code]]);
});

/** SAEVA Proceedings 2014 Dental Wetlab p. 3, https://view.joomag.com/saeva-proceedings-2014-dental-wetlab/0815754001508233534?page=3 : three naming systems in speech, one tooth. */
test.each(['upper right fourth premolar', 'upper right p four', 'upper right third cheek tooth', 'one oh eight'])(
  'SAEVA: %s is 108',
  (name) => {
    expect(findings(read(`${name} fractured`)).map(teethOf)).toEqual([['108']]);
  },
);

/** CK Equine Hospital, https://www.ckequinehospital.com/dentistry (01 to 04; 06 to 11); Griffin C., The first premolar (wolf) teeth, https://docslib.org/download/7400654/ (05). */
const names: readonly (readonly [string, number])[] = [
  ['central incisor', 1],
  ['middle incisor', 2],
  ['corner incisor', 3],
  ['canine', 4],
  ['second premolar', 6],
  ['third premolar', 7],
  ['fourth premolar', 8],
  ['first molar', 9],
  ['second molar', 10],
  ['third molar', 11],
  ['first cheek tooth', 6],
  ['second cheek tooth', 7],
  ['third cheek tooth', 8],
  ['fourth cheek tooth', 9],
  ['fifth cheek tooth', 10],
  ['sixth cheek tooth', 11],
];
const quadrants: readonly (readonly [string, number])[] = [
  ['upper right', 1],
  ['upper left', 2],
  ['lower left', 3],
  ['lower right', 4],
];
describe('a name and its quadrant are one tooth (first digit: SAEVA 2014 p. 3)', () => {
  test.each(quadrants.flatMap(([where, q]) => names.map(([name, p]) => [`${where} ${name}`, `${q}${two(p)}`] as const)))(
    '%s is %s',
    (name, code) => {
      expect(findings(read(`${name} fractured`)).map(teethOf)).toEqual([[code]]);
    },
  );
  test.each(quadrants)('%s wolf tooth is the 05', (where, q) => {
    expect(findings(read(`${where} wolf tooth`)).map((f) => [f.condition, teethOf(f)])).toEqual([['wolf-tooth', [`${q}05`]]]);
  });
});

describe('dental formulae', () => {
  // CK Equine Hospital: 36 to 44 permanent teeth; https://liquisearch.com/horse_teeth/tooth_growth : 24 deciduous.
  test('permanent: 12 incisors and 24 cheek teeth, with 4 canines 40, with 4 wolf teeth 44', () => {
    const at = (positions: readonly number[]): number =>
      [...legalTeeth].filter((t) => /^[1-4]/.test(t) && positions.includes(Number(t.slice(1)))).length;
    expect([at([1, 2, 3]), at([6, 7, 8, 9, 10, 11]), at([4]), at([5])]).toEqual([12, 24, 4, 4]);
  });
  test('deciduous: 2 x (3/3 incisors, 0/0 canines, 3/3 premolars)', () => {
    expect([...legalTeeth].filter((t) => /^[5-8]/.test(t)).length).toBe(24);
  });
  // "Rule of 4 and 9" (Liyou, p. 16): every canine ends in 04, every first molar in 09.
  test.each([
    ['canines', '04'],
    ['first molars', '09'],
  ])('all four %s end in %s', (group, end) => {
    expect(findings(read(`all four ${group} fractured`)).map(teethOf)).toEqual([[`1${end}`, `2${end}`, `3${end}`, `4${end}`]]);
  });
});
