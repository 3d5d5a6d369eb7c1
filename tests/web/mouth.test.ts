/** The drawn mouth as data: which teeth stand where, what the marks say, where the arrows lead. */
import { describe, expect, test } from 'vitest';
import { deciduousTeeth, permanentTeeth, rowIds } from '../../parser/lexicon/teeth.ts';
import { size } from '../../web/mouth/anatomy.ts';
import { lookedAt, marksOf, saidUnseen } from '../../web/mouth/marks.ts';
import { placeWords, spokenTooth, teethWords } from '../../web/mouth/names.ts';
import { keysOf, placeOf, spaces, teethOfRow } from '../../web/mouth/places.ts';
import { next } from '../../web/mouth/roving.ts';
import { drawnSpaces, drawTooth } from '../../web/mouth/shape.ts';
import { sampleDraft } from '../page/check.sample.ts';

const drawn = new Map(permanentTeeth.map((t) => [t, drawTooth(t)]));
const at = (tooth: string): { x: number; y: number } => drawn.get(tooth)!.at;

describe('the view, facing the horse', () => {
  // Floyd 1991 numbers 1 upper right, 2 upper left, 3 lower left, 4 lower right; the 100 arcade stands at the examiner's upper left (standards, section 1, S4).
  test('the horse’s right is on the viewer’s left, upper above lower', () => {
    for (const t of permanentTeeth) expect(at(t).x < size.width / 2, t).toBe(t[0] === '1' || t[0] === '4');
    const lowest = Math.max(...permanentTeeth.filter((t) => t < '300').map((t) => at(t).y));
    for (const t of permanentTeeth.filter((x) => x > '300')) expect(at(t).y, t).toBeGreaterThan(lowest);
  });
  test('incisors are nearest: farther out than any cheek tooth of their jaw, and each tooth farther in than the one before', () => {
    for (const q of [1, 2])
      for (let p = 2; p <= 11; p++)
        expect(at(`${q}${String(p).padStart(2, '0')}`).y).toBeGreaterThan(at(`${q}${String(p - 1).padStart(2, '0')}`).y);
    for (const q of [3, 4])
      for (let p = 2; p <= 11; p++)
        expect(at(`${q}${String(p).padStart(2, '0')}`).y).toBeLessThan(at(`${q}${String(p - 1).padStart(2, '0')}`).y);
  });
  test('the lower rows stand closer together than the upper', () => {
    for (let p = 6; p <= 11; p++) {
      const n = String(p).padStart(2, '0');
      expect(at(`2${n}`).x - at(`1${n}`).x).toBeGreaterThan(at(`3${n}`).x - at(`4${n}`).x);
    }
  });
  test('every tooth of the contract has a place, caps and teeth behind the eleven too; nothing else has', () => {
    for (const t of [...permanentTeeth, ...deciduousTeeth, '112', '212', '312', '412'])
      expect(drawTooth(t).outline).toMatch(/^M[-\d. C]+Z$/);
    expect(() => drawTooth('113')).toThrow(/no place for tooth 113/);
  });
  test('the drawing is the same each time and no two teeth are alike', () => {
    expect(drawTooth('108')).toEqual(drawTooth('108'));
    expect(new Set([...drawn.values()].map((d) => d.outline)).size).toBe(44);
  });
});

describe('places', () => {
  test('44 permanent teeth, 42 gaps, and every key gives its place back', () => {
    // Ten gaps in each quarter and two across the middle (contract, ruling 3).
    expect(spaces.length).toBe(42);
    expect(drawnSpaces.length).toBe(42);
    for (const key of [
      ...permanentTeeth,
      ...spaces.map(([a, b]) => `${a}-${b}`),
      ...rowIds.map((r) => `row:${r}`),
      'region:tongue',
      'region:cheek:left',
    ])
      expect(keysOf(placeOf(key))).toEqual([key]);
  });
  test('rows hold six teeth; canines and wolf teeth stand in none', () => {
    for (const row of rowIds) expect(teethOfRow(row).length).toBe(6);
    expect(rowIds.flatMap(teethOfRow).some((t) => /0[45]$/.test(t))).toBe(false);
  });
  test.each([
    ['106', 'one oh six, upper right, first cheek tooth'],
    ['111', 'one eleven, upper right, sixth cheek tooth'],
    ['304', 'three oh four, lower left, canine'],
    ['410', 'four ten, lower right, fifth cheek tooth'],
    ['607', 'six oh seven, upper left, second cheek tooth, cap'],
    ['801', 'eight oh one, lower right, central incisor, milk tooth'],
  ])('%s is read “%s”', (tooth, words) => expect(spokenTooth(tooth)).toBe(words));
  test('a run of teeth is told as a run', () => {
    expect(teethWords(['106', '107', '108', '206'])).toBe('106 to 108, 206');
    expect(placeWords({ region: 'cheek', side: 'left' })).toBe('Cheek, left');
    expect(placeWords(null)).toBe('No place said');
    expect(placeWords({ rows: ['upper-left', 'upper-right', 'lower-left'] })).toBe('Upper cheek teeth, Lower left cheek teeth');
    expect(placeWords({ rows: ['upper-incisors', 'lower-incisors'] })).toBe('Incisors');
  });
});

describe('marks', () => {
  const draft = sampleDraft();
  const marks = marksOf(draft);
  test('present, ruled out, suspected, work, counts and questions each stand at their place', () => {
    expect(marks.get('106')).toEqual({ look: 'present', count: 2, doubts: 0 });
    expect(marks.get('209')?.look).toBe('half');
    expect(marks.get('407')?.look).toBe('open');
    expect(marks.get('607')).toEqual({ look: 'work', count: 1, doubts: 1 });
    expect(marks.get('309-310')).toEqual({ look: 'present', count: 3, doubts: 0 });
    expect(marks.get('306')?.doubts).toBe(1);
    expect(marks.get('region:cheek:left')?.look).toBe('present');
  });
  test('a struck item leaves no mark', () => {
    const struck = { ...draft, doubts: [], items: draft.items.map((i) => ({ ...i, state: 'struck' as const })) };
    expect(marksOf(struck).size).toBe(0);
    expect(lookedAt(struck.items).size).toBe(0);
  });
  test('a gap speaks of its two teeth, a row of its six; nothing said anywhere speaks of none', () => {
    const seen = lookedAt(draft.items);
    expect(seen.has('309')).toBe(true);
    expect(seen.has('308')).toBe(false);
    expect(seen.has('110')).toBe(true);
    expect(saidUnseen(draft.items).size).toBe(0);
    expect(marksOf(null).size).toBe(0);
  });
});

describe('arrow keys', () => {
  const spots = [...drawn.values(), ...drawnSpaces];
  test.each([
    ['106', 'down', '107'],
    ['107', 'up', '106'],
    ['101', 'right', '201'],
    ['306', 'up', '307'],
    ['401', 'right', '301'],
  ] as const)('from %s %s is %s', (from, way, to) => expect(next(spots, from, way)).toBe(to));
  test('every tooth and every gap can be reached from the first', () => {
    const reached = new Set(['101']);
    for (const key of reached) for (const way of ['up', 'down', 'left', 'right'] as const) reached.add(next(spots, key, way));
    expect([...drawn.keys(), ...drawnSpaces.map((s) => s.key)].filter((key) => !reached.has(key))).toEqual([]);
  });
});
