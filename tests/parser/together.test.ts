/**
 * Places and findings set beside each other, by the algebra of sets: "c on A and B" is c at every tooth of A and of B, "c on A, none on B" is c at A
 * and none at B, "c on A except B" is A less B. The teeth of a row, a jaw and a position are those of the Triadan system (Floyd 1991, standards
 * section 1). Gaps stand beside each other the same way. A reading may ask; it may not be wrong in silence.
 */
import { describe, expect, test } from 'vitest';
import type { Item, Place } from '../../parser/contract/item.ts';
import { rowTeeth, type RowId } from '../../parser/lexicon/teeth.ts';
import { readLines } from './corpus.ts';

const row = (quadrant: number): readonly string[] =>
  [6, 7, 8, 9, 10, 11].map((position) => `${quadrant}${String(position).padStart(2, '0')}`);
const places: Readonly<Record<string, readonly string[]>> = {
  'one oh six': ['106'],
  'three oh nine': ['309'],
  'two ten': ['210'],
  'the upper right': row(1),
  'the lower left': row(3),
  'the uppers': [...row(1), ...row(2)],
  'the lowers': [...row(3), ...row(4)],
  'both upper sixes': ['106', '206'],
  'the lower elevens': ['311', '411'],
  'one oh seven and one oh eight': ['107', '108'],
  'three oh eight to three ten': ['308', '309', '310'],
  'the lower right six': ['406'],
};
/** A position of one jaw, and the other jaw: its teeth of that position, or all of it; people mean either. */
const meansEither = (a: string, b: string): boolean =>
  [a, b].some((one) => /sixes|elevens/.test(one)) && [a, b].some((one) => one === 'the uppers' || one === 'the lowers');
const conditions: Readonly<Record<string, string>> = {
  calculus: 'calculus',
  points: 'sharp-enamel-points',
  caries: 'caries',
  cupping: 'cupped-out',
};

type Meant = Readonly<Record<string, readonly string[]>>;
type Case = (c: string, d: string, a: string, b: string) => readonly [lines: string, meant: Meant];
const at = (place: string): readonly string[] => places[place] as readonly string[];
const is = (c: string, presence: string): string => `${conditions[c]} ${presence}`;
/** What the last of the lines means. */
const forms: Readonly<Record<string, Case>> = {
  'A and B': (c, _d, a, b) => [`${c} on ${a} and ${b}`, { [is(c, 'present')]: [...at(a), ...at(b)] }],
  'A, and on B too': (c, _d, a, b) => [`${c} on ${a}, and on ${b} too`, { [is(c, 'present')]: [...at(a), ...at(b)] }],
  'A, same on B': (c, _d, a, b) => [`${c} on ${a}, same on ${b}`, { [is(c, 'present')]: [...at(a), ...at(b)] }],
  'none on A or B': (c, _d, a, b) => [`no ${c} on ${a} or ${b}`, { [is(c, 'absent')]: [...at(a), ...at(b)] }],
  'A, none on B': (c, _d, a, b) => [`${c} on ${a}, none on ${b}`, { [is(c, 'present')]: at(a), [is(c, 'absent')]: at(b) }],
  'A but none on B': (c, _d, a, b) => [`${c} on ${a} but none on ${b}`, { [is(c, 'present')]: at(a), [is(c, 'absent')]: at(b) }],
  'none on A, there is on B': (c, _d, a, b) => [
    `no ${c} on ${a}, there is on ${b}`,
    { [is(c, 'absent')]: at(a), [is(c, 'present')]: at(b) },
  ],
  'one on A, another on B': (c, d, a, b) => [`${c} on ${a}, ${d} on ${b}`, { [is(c, 'present')]: at(a), [is(d, 'present')]: at(b) }],
  'one on A, no other on B': (c, d, a, b) => [`${c} on ${a}, no ${d} on ${b}`, { [is(c, 'present')]: at(a), [is(d, 'absent')]: at(b) }],
  'two on A': (c, d, a) => [`${c} and ${d} on ${a}`, { [is(c, 'present')]: at(a), [is(d, 'present')]: at(a) }],
  'neither on A': (c, d, a) => [`no ${c} or ${d} on ${a}`, { [is(c, 'absent')]: at(a), [is(d, 'absent')]: at(a) }],
  'A, rasped B': (c, _d, a, b) => [`${c} on ${a}, rasped ${b}`, { [is(c, 'present')]: at(a), 'rasp done': at(b) }],
  'rasped A and B': (_c, _d, a, b) => [`rasped ${a} and ${b}`, { 'rasp done': [...at(a), ...at(b)] }],
  'reduced A and left B': (_c, _d, a, b) => [`reduced ${a} and left ${b} alone`, { 'reduce done': at(a), 'reduce not-done': at(b) }],
  'reduced A, B not touched': (_c, _d, a, b) => [`reduced ${a}, ${b} not touched`, { 'reduce done': at(a), 'reduce not-done': at(b) }],
  'reduced A, B next time': (_c, _d, a, b) => [`reduced ${a}, ${b} next time`, { 'reduce done': at(a), 'reduce planned': at(b) }],
  'reduced A, will do B': (_c, _d, a, b) => [`reduced ${a}, will do ${b} next visit`, { 'reduce done': at(a), 'reduce planned': at(b) }],
  'rasped A, reduced B': (_c, _d, a, b) => [`rasped ${a}, reduced ${b}`, { 'rasp done': at(a), 'reduce done': at(b) }],
  'A normal, one on B': (c, _d, a, b) => [`${a} normal, ${c} on ${b}`, { 'abnormality absent': at(a), [is(c, 'present')]: at(b) }],
  'A has one, B another': (c, d, a, b) => [`${a} has ${c}, ${b} has ${d}`, { [is(c, 'present')]: at(a), [is(d, 'present')]: at(b) }],
  'one on A, maybe another on B': (c, d, a, b) => [
    `${c} on ${a}, maybe ${d} on ${b}`,
    { [is(c, 'present')]: at(a), [is(d, 'suspected')]: at(b) },
  ],
  'A not seen, one on B': (c, _d, a, b) => [`couldn't see ${a}, ${c} on ${b}`, { 'not-examined': at(a), [is(c, 'present')]: at(b) }],
  'then: and on B': (c, _d, a, b) => [`${c} on ${a} / and on ${b}`, { [is(c, 'present')]: at(b) }],
  'then: not on B': (c, _d, a, b) => [`${c} on ${a} / not on ${b}`, { [is(c, 'absent')]: at(b) }],
  'then: none on B': (c, _d, a, b) => [`${c} on ${a} / none on ${b}`, { [is(c, 'absent')]: at(b) }],
};

const teethOf = (place: Place | null | undefined): readonly string[] =>
  !place
    ? []
    : 'teeth' in place
      ? place.teeth
      : 'spaces' in place
        ? place.spaces.map((space) => space.join('/'))
        : 'rows' in place
          ? place.rows.flatMap((one) => rowTeeth[one as RowId])
          : ['elsewhere'];
const nameOf = (item: Item): string =>
  item.kind === 'finding'
    ? `${item.condition} ${item.presence}`
    : item.kind === 'treatment'
      ? `${item.procedure} ${item.state}${item.amountMm === undefined ? '' : ` ${item.amountMm}`}`
      : item.kind === 'follow-up'
        ? `${item.action}${item.after && 'unit' in item.after ? ` ${item.after.value} ${item.after.unit}` : ''}`
        : item.kind;
const written = (all: ReadonlyMap<string, readonly string[]>): string =>
  [...all]
    .map(([name, teeth]) => `${name}: ${[...new Set(teeth)].sort().join(' ')}`)
    .sort()
    .join('; ');
function madeOf(items: readonly Item[]): string {
  const made = new Map<string, readonly string[]>();
  for (const item of items) made.set(nameOf(item), [...(made.get(nameOf(item)) ?? []), ...teethOf('place' in item ? item.place : null)]);
  return written(made);
}

/** Every place beside every other that shares no tooth with it; the findings take turns. */
const pairs = Object.keys(places).flatMap((a, i) =>
  Object.keys(places).flatMap((b, k) => {
    const names = Object.keys(conditions);
    const apart = !at(a).some((tooth) => at(b).includes(tooth)) && !meansEither(a, b);
    return apart ? [[names[(i + k) % 4], names[(i + k + 1 + (i % 3)) % 4], a, b] as [string, string, string, string]] : [];
  }),
);

/** What a form says of every pair, against what it means. */
function check(form: Case, all: readonly (readonly [string, string, string, string])[]): void {
  const wrong: string[] = [];
  let right = 0;
  for (const pair of all) {
    const [lines, meant] = form(...pair);
    const read = readLines(lines.split(' / ')).at(-1);
    const made = madeOf(read?.items ?? []);
    if (made === written(new Map(Object.entries(meant)))) right += 1;
    else if ((read?.doubts.length ?? 0) === 0) wrong.push(`${lines}: ${made}`);
  }
  expect(wrong).toEqual([]);
  // What is asked of everybody is no reading.
  expect(right).toBeGreaterThan(all.length / 2);
}

describe('places and findings beside each other', () => {
  test.each(Object.entries(forms))('%s', (_name, form) => check(form, pairs));
});

/** Gaps, with the small word before them: each is between the two teeth that its words name, or behind one. */
const gaps: Readonly<Record<string, readonly string[]>> = {
  'at three oh nine three ten': ['309/310'],
  'at three ten three eleven': ['310/311'],
  'at four oh eight four oh nine': ['408/409'],
  'at one oh seven one oh eight': ['107/108'],
  'between two ten and two eleven': ['210/211'],
  'between the upper right eight and nine': ['108/109'],
  'behind four ten': ['410/411'],
  'behind one oh nine': ['109/110'],
};
const inGaps: Readonly<Record<string, string>> = { 'a pocket': 'periodontal-pocket', 'food packing': 'food-packing', 'a gap': 'diastema' };
const gap = (place: string): readonly string[] => gaps[place] as readonly string[];
const found = (c: string, presence = 'present'): string => `${inGaps[c]} ${presence}`;
const bare = (c: string): string => c.replace(/^a /, '');
const gapForms: Readonly<Record<string, Case>> = {
  'A and B': (c, _d, a, b) => [`${c} ${a} and ${b}`, { [found(c)]: [...gap(a), ...gap(b)] }],
  'A, B as well': (c, _d, a, b) => [`${c} ${a}, ${b} as well`, { [found(c)]: [...gap(a), ...gap(b)] }],
  'A, and B too': (c, _d, a, b) => [`${c} ${a}, and ${b} too`, { [found(c)]: [...gap(a), ...gap(b)] }],
  'A, same B': (c, _d, a, b) => [`${c} ${a}, same ${b}`, { [found(c)]: [...gap(a), ...gap(b)] }],
  'none A or B': (c, _d, a, b) => [`no ${bare(c)} ${a} or ${b}`, { [found(c, 'absent')]: [...gap(a), ...gap(b)] }],
  'A, none B': (c, _d, a, b) => [`${c} ${a}, none ${b}`, { [found(c)]: gap(a), [found(c, 'absent')]: gap(b) }],
  'none A, there is B': (c, _d, a, b) => [`no ${bare(c)} ${a}, there is ${b}`, { [found(c, 'absent')]: gap(a), [found(c)]: gap(b) }],
  'one A, another B': (c, d, a, b) => [`${c} ${a}, ${d} ${b}`, { [found(c)]: gap(a), [found(d)]: gap(b) }],
  'A one, B another': (c, d, a, b) => [`${a}, ${c}, ${b}, ${d}`.replace(/\bat /g, ''), { [found(c)]: gap(a), [found(d)]: gap(b) }],
  'one A, no other B': (c, d, a, b) => [`${c} ${a}, no ${bare(d)} ${b}`, { [found(c)]: gap(a), [found(d, 'absent')]: gap(b) }],
  'A, maybe B': (c, _d, a, b) => [`${c} ${a}, possibly ${b} as well`, { [found(c)]: gap(a), [found(c, 'suspected')]: gap(b) }],
  'A, B clear': (c, _d, a, b) => [`${c} ${a}, ${b} clear`.replace(/, at /, ', '), { [found(c)]: gap(a), 'abnormality absent': gap(b) }],
  'flushed A and B': (_c, _d, a, b) => [`flushed ${a} and ${b}`.replace(/\bat /g, ''), { 'flush done': [...gap(a), ...gap(b)] }],
  'one A, flushed B': (c, _d, a, b) => [
    `${c} ${a}, flushed ${b}`.replace(/flushed at /, 'flushed '),
    { [found(c)]: gap(a), 'flush done': gap(b) },
  ],
  'then: and B': (c, _d, a, b) => [`${c} ${a} / and ${b}`, { [found(c)]: gap(b) }],
  'then: same B': (c, _d, a, b) => [`${c} ${a} / same ${b}`, { [found(c)]: gap(b) }],
  'then: none B': (c, _d, a, b) => [`${c} ${a} / none ${b}`, { [found(c, 'absent')]: gap(b) }],
  'then: not B': (c, _d, a, b) => [`${c} ${a} / not ${b}`, { [found(c, 'absent')]: gap(b) }],
  'then: there is B': (c, _d, a, b) => [`no ${bare(c)} ${a} / there is ${b}`, { [found(c)]: gap(b) }],
};
const gapPairs = Object.keys(gaps).flatMap((a, i) =>
  Object.keys(gaps).flatMap((b, k) => {
    const names = Object.keys(inGaps);
    return a === b ? [] : [[names[(i + k) % 3], names[(i + k + 1 + (k % 2)) % 3], a, b] as [string, string, string, string]];
  }),
);

describe('gaps beside each other', () => {
  test.each(Object.entries(gapForms))('%s', (_name, form) => check(form, gapPairs));
});

/** Work at one place and at another, how much came off, and what comes next; what the last line means. Whole rows are never reduced by a size: those ask. */
const workForms: Readonly<Record<string, Case>> = {
  'reduced A by two, B by three': (_c, _d, a, b) => [
    `reduced ${a} by two mil, ${b} by three`,
    { 'reduce done 2': at(a), 'reduce done 3': at(b) },
  ],
  'two off A and three off B': (_c, _d, a, b) => [
    `took two mil off ${a} and three off ${b}`,
    { 'reduce done 2': at(a), 'reduce done 3': at(b) },
  ],
  'two off A, three off B': (_c, _d, a, b) => [`two mil off ${a}, three mil off ${b}`, { 'reduce done 2': at(a), 'reduce done 3': at(b) }],
  'two off A and off B': (_c, _d, a, b) => [`took two mil off ${a} and off ${b}`, { 'reduce done 2': [...at(a), ...at(b)] }],
  'A rasped, B still to do': (_c, _d, a, b) => [`${a} rasped, ${b} still to do`, { 'rasp done': at(a), 'rasp planned': at(b) }],
  'only rasped A, not B': (_c, _d, a, b) => [`only rasped ${a}, not ${b}`, { 'rasp done': at(a), 'rasp not-done': at(b) }],
  'rasped A then B': (_c, _d, a, b) => [`rasped ${a} then ${b}`, { 'rasp done': [...at(a), ...at(b)] }],
  'scaled A, B next visit': (_c, _d, a, b) => [
    `scaled ${a}, ${b} next visit`,
    { 'scale-calculus done': at(a), 'scale-calculus planned': at(b) },
  ],
  'could not rasp A, did B': (_c, _d, a, b) => [`couldn't rasp ${a}, did ${b}`, { 'rasp not-done': at(a), 'rasp done': at(b) }],
  'could not see A or B': (_c, _d, a, b) => [`couldn't see ${a} or ${b}`, { 'not-examined': [...at(a), ...at(b)] }],
  'then: and B': (_c, _d, a, b) => [`rasped ${a} / and ${b}`, { 'rasp done': at(b) }],
  'then: B as well': (_c, _d, a, b) => [`rasped ${a} / ${b} as well`, { 'rasp done': at(b) }],
  'then: not B': (_c, _d, a, b) => [`rasped ${a} / not ${b}`, { 'rasp not-done': at(b) }],
  'then: B next time': (_c, _d, a, b) => [`rasped ${a} / ${b} next time`, { 'rasp planned': at(b) }],
  'monitor A and B': (_c, _d, a, b) => [`monitor ${a} and ${b}`, { monitor: [...at(a), ...at(b)] }],
  'monitor A, then: and B': (_c, _d, a, b) => [`monitor ${a} / and ${b}`, { monitor: at(b) }],
  'recheck A in six months, B in a year': (_c, _d, a, b) => [
    `recheck ${a} in six months, ${b} in a year`,
    { 'recheck 6 month': at(a), 'recheck 1 year': at(b) },
  ],
  'recheck A and B': (_c, _d, a, b) => [`recheck ${a} and ${b} in six months`, { 'recheck 6 month': [...at(a), ...at(b)] }],
  'A to be monitored, B needs an x ray': (_c, _d, a, b) => [
    `${a} to be monitored, ${b} needs an x ray`,
    { monitor: at(a), 'radiograph advised': at(b) },
  ],
  'monitor A, rasped B': (_c, _d, a, b) => [`monitor ${a}, rasped ${b}`, { monitor: at(a), 'rasp done': at(b) }],
};
describe('work beside work, and what comes next', () => {
  test.each(Object.entries(workForms))('%s', (_name, form) => check(form, pairs));
});

/** A third place, apart from both. */
const third = (a: string, b: string): string =>
  Object.keys(places).find((e) => [a, b].every((one) => !meansEither(e, one) && !at(e).some((tooth) => at(one).includes(tooth)))) as string;
const threes: Readonly<Record<string, Case>> = {
  'on A, B and C': (c, _d, a, b) => [
    `${c} on ${a}, ${b} and ${third(a, b)}`,
    { [is(c, 'present')]: [...at(a), ...at(b), ...at(third(a, b))] },
  ],
  'none on A, B or C': (c, _d, a, b) => [
    `no ${c} on ${a}, ${b} or ${third(a, b)}`,
    { [is(c, 'absent')]: [...at(a), ...at(b), ...at(third(a, b))] },
  ],
  'A, none on B, another on C': (c, d, a, b) => [
    `${c} on ${a}, none on ${b}, ${d} on ${third(a, b)}`,
    { [is(c, 'present')]: at(a), [is(c, 'absent')]: at(b), [is(d, 'present')]: at(third(a, b)) },
  ],
  'on A and B, another on C': (c, d, a, b) => [
    `${c} on ${a} and ${b}, ${d} on ${third(a, b)}`,
    { [is(c, 'present')]: [...at(a), ...at(b)], [is(d, 'present')]: at(third(a, b)) },
  ],
  'A fine, one on B, C not seen': (c, _d, a, b) => [
    `${a} fine, ${c} on ${b}, couldn't see ${third(a, b)}`,
    { 'abnormality absent': at(a), [is(c, 'present')]: at(b), 'not-examined': at(third(a, b)) },
  ],
  'rasped A and B, C next time': (_c, _d, a, b) => [
    `rasped ${a} and ${b}, ${third(a, b)} next time`,
    { 'rasp done': [...at(a), ...at(b)], 'rasp planned': at(third(a, b)) },
  ],
  'then, then: same on C': (c, d, a, b) => [
    `${c} on ${a} / ${d} on ${b} / same on ${third(a, b)}`,
    { [is(d, 'present')]: at(third(a, b)) },
  ],
};
const withThird = pairs.filter(([, , a, b]) => third(a, b) !== undefined);
describe('three places', () => {
  test.each(Object.entries(threes))('%s', (_name, form) => check(form, withThird));
});
