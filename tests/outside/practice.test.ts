/** Facts of the trade, each with what stands behind it; what rests on nothing printed says "common practice, no source". */
import { describe, expect, test } from 'vitest';
import { doubtsOf, findings, read, spoken, teethOf } from './reading.ts';
import { readLines } from '../parser/corpus.ts';

const upper = ['1', '2'].flatMap((q) => ['06', '07', '08', '09', '10', '11'].map((p) => q + p));
const lower = ['3', '4'].flatMap((q) => ['06', '07', '08', '09', '10', '11'].map((p) => q + p));

describe('common practice, no source', () => {
  test('a routine recheck is after twelve months: recorded only when it is spoken', () => {
    expect(read('recheck in twelve months').items.map((i) => i.kind === 'follow-up' && i.after)).toEqual([{ value: 12, unit: 'month' }]);
    expect(read('recheck').items.every((i) => i.kind === 'follow-up' && i.after === undefined)).toBe(true);
  });
  test('points on the outside of the uppers and the inside of the lowers are the everyday finding', () => {
    const [up, low] = findings(read('points on the outside of the uppers and the inside of the lowers'));
    expect([teethOf(up), up?.surfaces, teethOf(low), low?.surfaces]).toEqual([upper, ['buccal'], lower, ['lingual']]);
  });
  test('a front hook of the first upper goes with a back hook of the last lower: nothing is doubted, nothing is added', () => {
    const [front, back] = readLines(['one oh six rostral hook', 'four eleven caudal hook']);
    expect([front, back].map((r) => [r?.items.length, r?.doubts.length])).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });
});

/** Overgrowth: tallest measured 17.9 mm (Marshall, Shaw, Dixon 2012, Vet J 193:53-57); over 20 mm is asked. A pocket over 25 mm is asked (our judgement, no source). */
describe('sizes beyond the literature are asked and kept', () => {
  test.each([
    ['hook on one oh six seventeen millimetres', []],
    ['hook on one oh six two centimetres', []],
    ['hook on one oh six three centimetres', ['unlikely']],
    ['pocket on three oh nine fifteen millimetres', []],
    ['pocket on three oh nine thirty millimetres', ['unlikely']],
  ])('%s', (text, doubts) => {
    expect(doubtsOf(read(text))).toEqual(doubts);
    expect(findings(read(text))[0]?.measures).toHaveLength(1);
  });
});

/** Infundibula: two in each upper cheek tooth, none in the lower (https://www.veterinary-practice.com/article/aetiopathogenesis-infundibular-caries). */
describe('infundibular caries', () => {
  test.each(upper)('%s has infundibula', (tooth) => expect(doubtsOf(read(`${spoken(tooth)} infundibular caries`))).toEqual([]));
  test.each(lower)('%s has none: asked, never moved', (tooth) => {
    const result = read(`${spoken(tooth)} infundibular caries`);
    expect([doubtsOf(result), findings(result).map(teethOf)]).toEqual([['unlikely'], [[tooth]]]);
  });
});

/** Pulp horns: 1 to 5 in every cheek tooth, 6 only in the 06s (Dacre, Kempson, Dixon 2008, Vet J 178:311-320); 7 in the 11s, 8 in the upper 11 (from memory, not confirmed). */
describe('pulp horns', () => {
  const word = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];
  const legal = (tooth: string, horn: number): boolean =>
    horn <= 5 ||
    (horn === 6 && tooth.endsWith('06')) ||
    (horn === 7 && tooth.endsWith('11')) ||
    (horn === 8 && ['111', '211'].includes(tooth));
  test.each(['106', '108', '111', '309', '411'].flatMap((tooth) => [1, 5, 6, 7, 8].map((horn) => [tooth, horn] as const)))(
    '%s horn %d',
    (tooth, horn) => {
      const result = read(`${spoken(tooth)} pulp exposure pulp horn ${word[horn]}`);
      expect([findings(result)[0]?.pulpHorn, doubtsOf(result)]).toEqual([horn, legal(tooth, horn) ? [] : ['unlikely']]);
    },
  );
});

/** EOTRH: incisors and canines, mainly over 15 years, mild from 10 (https://ukvetequine.com/content/review/equine-odontoclastic-tooth-resorption-and-hypercementosis). */
describe('EOTRH', () => {
  test.each([
    ['one oh three', 20, []],
    ['three oh four', 16, []],
    ['one oh three', 5, ['unlikely']],
    ['one oh nine', 20, ['unlikely']],
  ] as const)('%s at %d years', (tooth, age, doubts) => {
    expect(doubtsOf(read(`${tooth} e o t r h stage two`, { age }))).toEqual(doubts);
  });
});

/** Mares: canines usually regressed or absent (Merck Veterinary Manual); either way is unusual, never an error. */
test.each([
  ['canine present one oh four', 'mare'],
  ['one oh four missing', 'gelding'],
])('%s in a %s raises nothing', (text, sex) => {
  expect(doubtsOf(read(text, { age: 10, sex }))).toEqual([]);
});

/** Diastema: two neighbours of one row, usually 09/10 and 10/11 of the lower jaw (UK-Vet Equine, https://ukvetequine.com/content/clinical/cheek-teeth-diastemata). */
describe('diastema', () => {
  test.each(['309/310', '310/311', '409/410', '410/411'])('%s', (pair) => {
    const [a, b] = pair.split('/') as [string, string];
    const result = read(`diastema ${spoken(a)} ${spoken(b)}`);
    expect([findings(result).map(({ place }) => place), doubtsOf(result)]).toEqual([[expect.objectContaining({ spaces: [[a, b]] })], []]);
  });
  test.each([
    ['309', '311'],
    ['106', '206'],
    ['310', '410'],
  ])('%s and %s are no neighbours: asked, with both as its place', (a, b) => {
    const result = read(`diastema between ${spoken(a)} and ${spoken(b)}`);
    expect([findings(result).map(teethOf), doubtsOf(result)]).toEqual([[[a, b]], ['unlikely']]);
  });
});

/** Opposing tooth of a missing one is often stepped, 1xx with 4xx and 2xx with 3xx (SAEVA 2014 p. 7): a hint at most, never a doubt or an item. */
test.each(['109', '209', '309', '409'])('%s missing raises no doubt and no second item', (tooth) => {
  const result = read(`${spoken(tooth)} missing`);
  expect([result.items.length, result.doubts.length]).toEqual([1, 0]);
});

/** "Bute" is phenylbutazone, never butorphanol (standards vocabulary; common practice, no source). */
test('bute is a medicine, not a sedation', () => {
  expect(read('bute given by the vet').items.map((i) => [i.kind, i.kind === 'medication' && i.agent])).toEqual([
    ['medication', 'phenylbutazone'],
  ]);
});
