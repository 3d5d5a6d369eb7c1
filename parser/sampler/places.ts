/** Places as they are said, with what they mean. Plausible ones: a hook stands at an 06 or an 11, EOTRH at a front tooth. */
import type { Place } from '../contract/item.ts';
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import { regions, type RegionId } from '../lexicon/regions.ts';
import type { RowId } from '../lexicon/teeth.ts';
import type { ConditionEntry, PlaceKind } from '../lexicon/types.ts';
import { otherSide } from '../grammar/teeth.ts';
import { chance, formOf, pick, weighted, whole, type Random } from './draw.ts';
import { sayByName, sayTooth } from './spoken.ts';

export interface Said<T> {
  readonly say: string;
  readonly means: T;
  /** Wants "on", "at" or "in" before it. */ readonly joint?: string;
}

const incisors = [1, 2, 3];
const cheekTeeth = [6, 7, 8, 9, 10, 11];
/** Where a finding is met: quadrants and positions. Others stand anywhere among the cheek teeth, seldom at an incisor. */
const usual: Readonly<Partial<Record<ConditionId, { readonly quadrants?: readonly number[]; readonly positions: readonly number[] }>>> = {
  hook: { positions: [6, 11] },
  ramp: { positions: [6, 11] },
  'infundibular-caries': { quadrants: [1, 2], positions: cheekTeeth },
  'cemental-hypoplasia': { quadrants: [1, 2], positions: cheekTeeth },
  eotrh: { positions: incisors },
  hypercementosis: { positions: incisors },
  calculus: { positions: [4, 3] },
  sharp: { positions: [4] },
  'canine-present': { positions: [4] },
  'wolf-tooth': { quadrants: [1, 2], positions: [5] },
  'blind-wolf-tooth': { quadrants: [1, 2], positions: [5] },
  'bit-seat-present': { positions: [6] },
  'retained-cap': { quadrants: [5, 6, 7, 8], positions: [6, 7, 8] },
  'loose-cap': { quadrants: [5, 6, 7, 8], positions: [6, 7, 8] },
  'cap-shed': { quadrants: [5, 6, 7, 8], positions: [6, 7, 8] },
  'deciduous-present': { quadrants: [5, 6, 7, 8], positions: [1, 2, 3] },
};
const code = (quadrant: number, position: number): string => `${quadrant}${String(position).padStart(2, '0')}`;

function tooth(random: Random, id: ConditionId | undefined): string {
  const where = id === undefined ? undefined : usual[id];
  return code(
    pick(random, where?.quadrants ?? [1, 2, 3, 4]),
    pick(
      random,
      where?.positions ??
        weighted(random, [
          [9, cheekTeeth],
          [1, incisors],
        ]),
    ),
  );
}

/** One tooth, several, or a group. */
export function drawTeeth(random: Random, id?: ConditionId): Said<Place> {
  const first = tooth(random, id);
  const alone = (): Said<Place> => ({
    say: (chance(random, 0.08) ? sayByName(random, first) : undefined) ?? sayTooth(random, first),
    means: { teeth: [first] },
    joint: 'on',
  });
  const [quadrant, position] = [Number(first[0]), Number(first.slice(1))];
  return weighted(random, [
    [14, alone],
    [
      2,
      () => {
        const teeth = [first, otherSide(first)].sort();
        return { say: teeth.map((t) => sayTooth(random, t)).join(' and '), means: { teeth }, joint: 'on' };
      },
    ],
    [
      1,
      () =>
        position >= 6 && position <= 9 && quadrant <= 4 ? range(random, quadrant, position, whole(random, position + 2, 11)) : alone(),
    ],
    [1, () => (position >= 6 && quadrant <= 4 ? group(random, quadrant, position) : alone())],
  ])();
}

function range(random: Random, quadrant: number, from: number, to: number): Said<Place> {
  const teeth = Array.from({ length: to - from + 1 }, (_, i) => code(quadrant, from + i));
  return {
    say: `${sayTooth(random, teeth[0] as string)} ${pick(random, ['to', 'to', 'through to', 'up to'])} ${sayTooth(random, teeth.at(-1) as string)}`,
    means: { teeth, from: 'group' },
    joint: 'on',
  };
}

const plurals: Readonly<Record<number, string>> = { 6: 'sixes', 7: 'sevens', 8: 'eights', 9: 'nines', 10: 'tens', 11: 'elevens' };
function group(random: Random, quadrant: number, position: number): Said<Place> {
  const upper = quadrant <= 2;
  return weighted<() => Said<Place>>(random, [
    [
      3,
      () => ({
        say: `the ${upper ? 'upper' : 'lower'} ${plurals[position]}`,
        means: { teeth: (upper ? [1, 2] : [3, 4]).map((q) => code(q, position)), from: 'group' },
        joint: 'on',
      }),
    ],
    [
      1,
      () => ({
        say: `all four ${plurals[position]}`,
        means: { teeth: [1, 2, 3, 4].map((q) => code(q, position)), from: 'group' },
        joint: 'on',
      }),
    ],
    [
      1,
      () => ({
        say: `the ${upper ? 'upper' : 'lower'} cheek teeth`,
        means: { teeth: (upper ? [1, 2] : [3, 4]).flatMap((q) => cheekTeeth.map((p) => code(q, p))), from: 'group' },
        joint: 'on',
      }),
    ],
  ])();
}

export function drawSpace(random: Random): Said<Place> {
  const quadrant = whole(random, 1, 4);
  const position = whole(random, 6, 10);
  const [a, b] = [code(quadrant, position), code(quadrant, position + 1)];
  const means: Place = { spaces: [[a, b]] };
  return weighted<() => Said<Place>>(random, [
    [5, () => ({ say: `between ${sayTooth(random, a)} and ${sayTooth(random, b)}`, means })],
    [4, () => ({ say: `${sayTooth(random, a)} ${sayTooth(random, b)}`, means, joint: 'at' })],
    [1, () => ({ say: `behind ${sayTooth(random, a)}`, means })],
  ])();
}

const rowSides: readonly (readonly [RowId, string])[] = [
  ['upper-right', 'upper right'],
  ['upper-left', 'upper left'],
  ['lower-left', 'lower left'],
  ['lower-right', 'lower right'],
];
export function drawRow(random: Random): Said<Place> {
  const [row, say] = pick(random, rowSides);
  return {
    say: chance(random, 0.4) ? `the ${say} ${pick(random, ['arcade', 'row', 'quadrant'])}` : say,
    means: { rows: [row] },
    joint: 'on',
  };
}

/** Regions that are spoken of without a side of their own. */
export function drawRegion(random: Random, ids: readonly RegionId[]): Said<Place> {
  const id = pick(random, ids);
  const { paired, say } = regions[id];
  const form = formOf(
    random,
    say.filter((template) => !/upper|lower|corner|rest of/.test(template)),
  );
  const plural = /s$/.test(form) && !/(sinus|masseters? muscle|poll|temporalis)$/.test(form);
  if (!paired) return { say: `the ${form}`, means: { region: id }, joint: 'on' };
  if (plural) return { say: `both ${form}`, means: { region: id, side: 'both' }, joint: 'on' };
  const side = pick(random, ['left', 'right'] as const);
  return { say: `the ${side} ${form}`, means: { region: id, side }, joint: 'on' };
}

const softRegions: readonly RegionId[] = [
  'tongue',
  'cheek',
  'gums',
  'bars',
  'palate',
  'commissure',
  'lips',
  'mandible',
  'masseter',
  'temporomandibular-joint',
];
const homes: Readonly<Partial<Record<ConditionId, readonly RegionId[]>>> = {
  tension: ['masseter', 'temporalis', 'poll'],
  crepitus: ['temporomandibular-joint'],
  asymmetry: ['masseter', 'temporalis'],
  'muscle-wasting': ['masseter', 'temporalis'],
  discharge: ['nostril', 'eye'],
  'bone-spur': ['bars'],
  'bit-injury': ['bars', 'commissure', 'tongue'],
  'dull-percussion': ['frontal-sinus', 'maxillary-sinus'],
  'eruption-bump': ['mandible'],
  'draining-tract': ['mandible', 'maxilla'],
  'food-pouching': ['cheek'],
  ulcer: ['cheek', 'tongue', 'gums', 'lips'],
  laceration: ['tongue', 'cheek', 'lips'],
  gingivitis: ['gums'],
  heat: ['temporomandibular-joint', 'mandible'],
};

/** A place that the condition takes; undefined for one that needs none. */
export function drawPlace(random: Random, id: ConditionId): Said<Place> | undefined {
  const entry = conditions[id] as ConditionEntry;
  const kinds = entry.places.filter((kind) => kind !== 'N' && entry.group !== 'bite');
  if (kinds.length === 0 || entry.home !== undefined) return undefined;
  const draw: Readonly<Record<Exclude<PlaceKind, 'N'>, () => Said<Place>>> = {
    T: () => drawTeeth(random, id),
    S: () => drawSpace(random),
    R: () => drawRow(random),
    G: () => drawRegion(random, homes[id] ?? softRegions),
  };
  return draw[pick(random, kinds) as Exclude<PlaceKind, 'N'>]();
}
