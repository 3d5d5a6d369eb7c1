/** What a raw place can mean for one condition or procedure: teeth, gaps, rows or a region, never a side or a tooth that was not said. */
import type { Place } from '../contract/item.ts';
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import { positionOf as positionNamedBy } from '../lexicon/places.ts';
import type { RegionId } from '../lexicon/regions.ts';
import type { ConditionEntry, PlaceKind } from '../lexicon/types.ts';
import { rowTeeth, type RowId } from '../lexicon/teeth.ts';
import type { Placing } from './groups.ts';
import { gapOf } from './codes.ts';
import { contradicts, isPaired, quadrantsOf, type RawPlace } from './places.ts';
import { codeOf, isSupernumerary, isTooth, positionOf, quadrantOf } from './teeth.ts';

export interface PlaceDoubt {
  readonly doubt: 'no-such-tooth' | 'two-readings' | 'unlikely' | 'no-place';
  readonly said?: readonly string[];
  readonly readings?: readonly Place[];
  readonly rule?: string;
}
export interface Resolved {
  readonly place: Place | null;
  readonly doubts: readonly PlaceDoubt[];
  readonly distal?: true;
}
export interface Wanted {
  readonly kinds: readonly PlaceKind[];
  readonly positions?: readonly number[];
  readonly home?: RegionId;
  readonly supernumerary?: boolean;
  /** A whole group is its rows. */ readonly rows?: boolean;
  /** Of the incisors alone. */ readonly bite?: boolean;
  /** No gap in a row is said of the row. */ readonly absentRow?: boolean;
  /** Said of one tooth: a quadrant does not say which. */ readonly single?: boolean;
  /** Both of which jaw is asked where neither was said; what is ruled out is ruled out in both. */ readonly asks?: boolean;
  readonly missing: ReadonlySet<string>;
}

const cheek = [6, 7, 8, 9, 10, 11];
const rowOf: Readonly<Record<number, RowId>> = { 1: 'upper-right', 2: 'upper-left', 3: 'lower-left', 4: 'lower-right' };
const none: Resolved = { place: null, doubts: [] };

/** Findings of one tooth: "a hook, upper right" leaves the tooth unsaid, and it is not guessed. */
export const ofOneTooth: ReadonlySet<ConditionId> = new Set<ConditionId>([
  'hook',
  'ramp',
  'step',
  'fracture',
  'missing',
  'retained-fragment',
  'supernumerary',
  'apical-infection',
  'pulp-exposure',
  'focal-overgrowth',
  'mobility',
  'previously-extracted',
  'displaced',
  'rotated',
  'impacted',
  'unerupted',
  'erupting',
  'erupted',
  'retained-cap',
  'loose-cap',
  'cap-shed',
  'root-remnant',
  'infundibular-caries',
  'drifted',
  'discoloured',
  'periodontal-pocket',
]);

/** @param ruledOut what is ruled out in a quadrant is ruled out at all its teeth */
export function wantedBy(id: ConditionId, missing: ReadonlySet<string>, ruledOut = false): Wanted {
  const entry = conditions[id] as ConditionEntry;
  const position = positionNamedBy[id];
  return {
    kinds: entry.places,
    missing,
    ...(position ? { positions: [position] } : {}),
    ...(entry.home ? { home: entry.home as RegionId } : {}),
    ...(ofOneTooth.has(id) && !ruledOut ? { single: true } : {}),
    ...(ruledOut && !entry.places.includes('T') && entry.places.includes('S') ? { absentRow: true } : {}),
    ...(id === 'abnormality' ? { rows: true } : ruledOut ? {} : { asks: true }),
    ...(entry.group === 'bite' ? { bite: true } : {}),
    supernumerary: id === 'supernumerary',
  };
}

/** "no hook on one oh six or two oh six": of what is not there, or was not done, "or" names both. */
export const neitherOf = (placings: readonly Placing[]): readonly Placing[] =>
  placings.map((p) => {
    const all = p.raw.joined === 'or' ? ('and' as const) : p.raw.joined === 'orPairs' ? ('pairs' as const) : undefined;
    return all ? { ...p, raw: { ...p.raw, joined: all } } : p;
  });

export function resolvePlace(placings: readonly Placing[], wanted: Wanted): Resolved {
  const beside = placings.filter((p) => p.beside).flatMap((p) => oppositeOf(p.raw, placings[0]?.raw));
  const where = placings.filter((p) => !p.beside);
  const all = where.map((p) => p.raw);
  // "the gum at three oh nine": the tooth says where, when the finding can stand at a tooth.
  const codes = all.filter((raw) => raw.codes !== undefined);
  const chosen =
    codes.length > 0 && (wanted.kinds.includes('T') || wanted.kinds.includes('S'))
      ? where.filter((p) => p.raw.codes !== undefined || p.rest || p.raw.joined === 'between').map((p) => p.raw)
      : all;
  const parts = chosen.map((raw) => one(raw, wanted));
  const merged = parts.length === 0 ? none : parts.reduce(join);
  const withCodes = merged.place === null || !('region' in merged.place) ? undefined : codes.flatMap((raw) => raw.codes ?? []);
  const opposite = [...beside, ...(withCodes ?? [])];
  return opposite.length > 0 && merged.place !== null
    ? { ...merged, doubts: merged.doubts.filter(({ doubt }) => doubt !== 'no-place'), place: { ...merged.place, opposite } }
    : merged;
}

/** "level with the eights": of the side named, in the upper row, against which the cheek lies; "level with two oh eight": that tooth. */
function oppositeOf(raw: RawPlace, beside: RawPlace | undefined): readonly string[] {
  if (raw.codes) return raw.codes;
  if (!raw.positions) return [];
  const jaw = raw.jaw ?? 'upper';
  const side = raw.side ?? beside?.side;
  return quadrantsOf({ jaw, side }).flatMap((q) => (raw.positions ?? []).map((p) => codeOf(q, p)));
}

function join(a: Resolved, b: Resolved): Resolved {
  const doubts = [...a.doubts, ...b.doubts];
  const [x, y] = [a.place, b.place];
  if (x === null || y === null) return { place: x ?? y, doubts };
  if ('teeth' in x && 'teeth' in y)
    return { place: { ...x, teeth: unique([...x.teeth, ...y.teeth]), ...(x.from || y.from ? { from: 'group' as const } : {}) }, doubts };
  // "a gap either side of it, so that's one oh nine one ten and one ten one eleven": said twice, each is there once.
  if ('spaces' in x && 'spaces' in y) {
    const more = y.spaces.filter(([a, b]) => !x.spaces.some(([c, d]) => a === c && b === d));
    return { place: { ...x, spaces: [...x.spaces, ...more] }, doubts };
  }
  if ('rows' in x && 'rows' in y) return { place: { ...x, rows: [...new Set([...x.rows, ...y.rows])].sort() }, doubts };
  if ('region' in x && 'region' in y && x.region === y.region && x.side !== undefined && y.side !== undefined && x.side !== y.side)
    return { place: { ...x, side: 'both' }, doubts };
  // "the lower lip, the upper lip as well": both.
  if ('region' in x && 'region' in y && x.region === y.region && x.jaw !== undefined && y.jaw !== undefined && x.jaw !== y.jaw) {
    const { region, side } = x;
    return { place: { region, ...(side ? { side } : {}) }, doubts };
  }
  // "incisors and canines": a row and teeth are the teeth of both.
  const [teeth, others] = [teethIn(x), teethIn(y)];
  if (teeth && others) return { place: { teeth: unique([...teeth, ...others]), from: 'group' }, doubts };
  return { place: x, doubts };
}
const teethIn = (place: Place): readonly string[] | undefined =>
  'teeth' in place ? place.teeth : 'rows' in place ? place.rows.flatMap((row) => rowTeeth[row]) : undefined;

const unique = (codes: readonly string[]): string[] => [...new Set(codes)].sort();

function one(raw: RawPlace, wanted: Wanted): Resolved {
  if (raw.codes) return ofCodes(raw, raw.codes, wanted);
  if (raw.elsewhere !== undefined) return none;
  // "two of the lower incisors", "hooks at both ends": which, or of which row, was not said.
  if (raw.part || (raw.ends && (raw.jaw === undefined || raw.side === undefined || raw.side === 'both' || raw.jaw === 'both')))
    return { place: null, doubts: [{ doubt: 'no-place' }] };
  if (raw.region && wanted.kinds.includes('G'))
    return {
      place: {
        region: raw.region,
        ...sideOf(raw),
        ...(raw.jaw && raw.jaw !== 'both' && ['lips', 'gums', 'bars'].includes(raw.region) ? { jaw: raw.jaw } : {}),
      },
      doubts: [],
    };
  // "right bar sharp": what stands at teeth only has no place in a region, and its side is the region's.
  if (
    raw.region &&
    !['incisors', 'cheek-teeth'].includes(raw.region) &&
    !wanted.kinds.includes('R') &&
    wanted.home === undefined &&
    !wanted.kinds.includes('N')
  )
    return { place: null, doubts: [{ doubt: 'no-place' }] };
  // A bare "both" says neither of what.
  if (raw.weak && raw.jaw === undefined && raw.positions === undefined && raw.region === undefined && wanted.positions === undefined)
    return { place: null, doubts: [{ doubt: 'no-place' }] };
  if (raw.asked)
    return { place: null, doubts: [{ doubt: 'two-readings', readings: raw.asked.map((p) => ({ teeth: inQuadrants(raw, [p]) })) }] };
  if (raw.all && !raw.positions && raw.jaw === undefined && raw.side === undefined && wanted.kinds.includes('R'))
    return { place: { rows: Object.values(rowOf).sort() }, doubts: [] };
  // "upper incisors are level, lowers are smiley": a bite is of the incisors.
  if (
    wanted.bite &&
    (raw.jaw !== undefined || raw.side !== undefined) &&
    raw.positions === undefined &&
    !raw.row &&
    raw.region === undefined
  )
    return raw.jaw === undefined ? none : ofGroupAsArea(raw, [1, 2, 3], undefined, wanted);
  // "incisors normal, no wolf teeth": a tooth that has a name of its own stands at no others.
  if (wanted.positions && raw.positions && !raw.positions.some((p) => wanted.positions?.includes(p)))
    return { place: null, doubts: [{ doubt: 'no-place' }] };
  const positions = raw.positions ?? wanted.positions;
  const quadrants = raw.quadrants ?? (raw.jaw !== undefined || raw.side !== undefined ? quadrantsOf(raw) : undefined);
  if (
    raw.positions?.length === 2 &&
    quadrants?.length === 1 &&
    wanted.kinds.includes('S') &&
    (raw.joined === 'between' ||
      (raw.joined === 'adjacent' && raw.positions[1] === (raw.positions[0] as number) + 1) ||
      !wanted.kinds.includes('T'))
  )
    return ofCodes(
      {},
      raw.positions.map((p) => codeOf(quadrants[0] as number, p)),
      { ...wanted, kinds: ['S'] },
    );
  // "on the right, a gap between the ten and the eleven": upper or lower is asked.
  if (
    raw.positions?.length === 2 &&
    raw.joined === 'between' &&
    wanted.kinds.includes('S') &&
    quadrants?.length === 2 &&
    raw.jaw === undefined &&
    !raw.plural &&
    (raw.side === 'left' || raw.side === 'right')
  )
    return {
      place: null,
      doubts: [
        {
          doubt: 'two-readings',
          readings: quadrants.map((q) => ({ spaces: [raw.positions?.map((p) => codeOf(q, p)) as [string, string]] })),
        },
      ],
    };
  // "between the tens and elevens on both lowers": the gap of each row.
  if (
    raw.positions?.length === 2 &&
    raw.joined === 'between' &&
    wanted.kinds.includes('S') &&
    quadrants &&
    quadrants.length > 1 &&
    raw.positions[1] === (raw.positions[0] as number) + 1
  )
    return { place: { spaces: quadrants.map((q) => raw.positions?.map((p) => codeOf(q, p)) as [string, string]) }, doubts: [] };
  if (raw.positions && raw.joined === 'pairs' && raw.positions.length % 2 === 0 && quadrants?.length === 1 && wanted.kinds.includes('S'))
    return ofCodes(
      { joined: 'pairs' },
      raw.positions.map((p) => codeOf(quadrants[0] as number, p)),
      wanted,
    );
  // "diastemata between all the lower left cheek teeth"
  if (raw.positions && raw.positions.length > 2 && quadrants && wanted.kinds.includes('S') && raw.joined === 'between')
    return {
      place: {
        spaces: quadrants.flatMap((q) => (raw.positions ?? []).slice(1).map((p) => [codeOf(q, p - 1), codeOf(q, p)] as [string, string])),
      },
      doubts: [],
    };
  // "between the upper centrals"
  if (
    raw.joined === 'between' &&
    raw.positions?.length === 1 &&
    raw.positions[0] === 1 &&
    raw.jaw &&
    raw.jaw !== 'both' &&
    raw.side === undefined &&
    wanted.kinds.includes('S')
  )
    return { place: { spaces: [raw.jaw === 'upper' ? ['101', '201'] : ['301', '401']] }, doubts: [] };
  if (
    wanted.rows &&
    raw.positions &&
    raw.positions.length > 1 &&
    (raw.positions.length === 3 ? raw.positions[0] === 1 : raw.positions.length === 6)
  )
    return ofGroupAsArea(raw, raw.positions, quadrants, wanted);
  // "upper right seven smells": one tooth, as its number would be.
  if (raw.positions?.length === 1 && quadrants?.length === 1 && wanted.kinds.includes('S') && !wanted.kinds.includes('T'))
    return ofCodes({}, [codeOf(quadrants[0] as number, raw.positions[0] as number)], wanted);
  // "calculus on the lower canines and a mild overbite": a bite is of the incisors, whatever stands before it.
  if (wanted.bite && wanted.kinds.includes('N') && raw.positions?.some((p) => p > 3)) return none;
  if (raw.positions && !wanted.kinds.includes('T')) return ofGroupAsArea(raw, raw.positions, quadrants, wanted);
  if (positions && wanted.kinds.includes('T')) return ofPositions(raw, positions, quadrants, wanted);
  if (quadrants && (wanted.kinds.includes('R') || (wanted.absentRow && raw.positions === undefined)))
    return { place: { rows: quadrants.map((q) => rowOf[q] as RowId).sort() }, doubts: [] };
  // A side without a jaw: upper or lower is asked; a quadrant without a tooth: the place is not there yet.
  if (wanted.single && quadrants !== undefined && raw.jaw === undefined && raw.side !== 'both' && raw.side !== undefined)
    return { place: null, doubts: [{ doubt: 'two-readings', readings: quadrants.map((q) => ({ rows: [rowOf[q] as RowId] })) }] };
  if (wanted.single && (quadrants ?? raw.all)) return { place: null, doubts: [{ doubt: 'no-place' }] };
  if (quadrants && wanted.kinds.includes('T')) return ofPositions({ ...raw, plural: true }, cheek, quadrants, wanted);
  if (raw.all && wanted.kinds.includes('T')) return ofPositions({ ...raw, plural: true }, cheek, [1, 2, 3, 4], wanted);
  if (wanted.home && raw.side) return { place: { region: wanted.home, side: raw.side }, doubts: [] };
  return wanted.kinds.includes('N') ? none : { place: null, doubts: [{ doubt: 'no-place' }] };
}

const sideOf = (raw: RawPlace): { side?: 'left' | 'right' | 'both' } =>
  raw.side ? { side: raw.side } : raw.plural && raw.region && isPaired(raw.region) ? { side: 'both' } : {};

function ofCodes(raw: RawPlace, codes: readonly string[], wanted: Wanted): Resolved {
  const wrong: PlaceDoubt[] = (raw.notTeeth ?? []).length > 0 ? [{ doubt: 'no-such-tooth', said: raw.notTeeth }] : [];
  const beyond = codes.filter((code) => isSupernumerary(code) && !wanted.supernumerary);
  if (beyond.length > 0) wrong.push({ doubt: 'no-such-tooth', said: beyond });
  const teeth = codes.filter((code) => !beyond.includes(code));
  if (teeth.length === 0) return { place: null, doubts: wrong };
  if (raw.jaw && contradicts(raw, teeth[0] as string)) {
    const other = quadrantsOf(raw)
      .map((q) => codeOf(q, positionOf(teeth[0] as string)))
      .filter(isTooth);
    return { place: null, doubts: [...wrong, { doubt: 'two-readings', readings: [{ teeth: [teeth[0] as string] }, { teeth: other }] }] };
  }
  if (raw.joined === 'orPairs') {
    const both = ofCodes({ ...raw, joined: 'pairs' }, codes, wanted);
    const readings = both.place && 'spaces' in both.place ? both.place.spaces.map((space) => ({ spaces: [space] })) : [];
    return { place: null, doubts: [...both.doubts, { doubt: 'two-readings', readings }] };
  }
  if (raw.joined === 'or')
    return { place: null, doubts: [...wrong, { doubt: 'two-readings', readings: teeth.map((code) => ({ teeth: [code] })) }] };
  const spaceOnly = wanted.kinds.includes('S') && !wanted.kinds.includes('T');
  if (raw.relative === 'either') {
    const sides =
      teeth.length === 1 && wanted.kinds.includes('S') ? ([-1, 1] as const).map((step) => spaceBy(teeth[0] as string, step, []).place) : [];
    return sides.length === 2 && sides.every((place) => place !== null)
      ? { place: { spaces: sides.flatMap((place) => (place && 'spaces' in place ? place.spaces : [])) }, doubts: wrong }
      : { place: null, doubts: [...wrong, { doubt: 'no-place' }] };
  }
  if (
    wanted.kinds.includes('S') &&
    raw.relative &&
    teeth.length === 1 &&
    (spaceOnly || isTooth(codeOf(quadrantOf(teeth[0] as string), positionOf(teeth[0] as string) + (raw.relative === 'behind' ? 1 : -1))))
  )
    return spaceBy(teeth[0] as string, raw.relative === 'behind' ? 1 : -1, wrong);
  if (raw.relative && teeth.length === 1 && !wanted.supernumerary)
    return relativeTooth(teeth[0] as string, raw.relative === 'behind' ? 1 : -1, wrong);
  if (
    wanted.kinds.includes('S') &&
    raw.joined === 'pairs' &&
    teeth.every((code, i) => i % 2 === 0 || gapOf([teeth[i - 1] as string, code]))
  )
    return {
      place: {
        spaces: teeth.flatMap((code, i): [string, string][] =>
          i % 2 === 0 ? [gapOf([code, teeth[i + 1] as string]) as [string, string]] : [],
        ),
      },
      doubts: wrong,
    };
  if (wanted.kinds.includes('S') && (raw.joined === 'between' || raw.joined === 'adjacent' || (spaceOnly && teeth.length > 1))) {
    const gap = gapOf(teeth);
    if (gap) return { place: { spaces: [[gap[0], gap[1]]] }, doubts: wrong };
    if (raw.joined === 'range' || teeth.length > 2) {
      const gaps = teeth.slice(1).map((code, i) => gapOf([teeth[i] as string, code]));
      if (gaps.every((g) => g !== undefined))
        return { place: { spaces: gaps.map((g) => [g[0], g[1]] as [string, string]) }, doubts: wrong };
    }
    if (spaceOnly || raw.joined === 'between')
      return { place: { teeth: unique(teeth) }, doubts: [...wrong, { doubt: 'unlikely', rule: 'gap-between-neighbours' }] };
  }
  if (spaceOnly && teeth.length === 1) {
    const code = teeth[0] as string;
    const readings = [spaceBy(code, -1, []).place, spaceBy(code, 1, []).place].filter((p): p is Place => p !== null);
    return { place: null, doubts: [...wrong, { doubt: 'two-readings', readings }] };
  }
  if (!wanted.kinds.includes('T') && !wanted.kinds.includes('S'))
    return { place: null, doubts: wrong.length > 0 ? wrong : [{ doubt: 'no-place' }] };
  return {
    place: { teeth: unique(teeth), ...(raw.joined === 'range' ? { from: 'group' as const } : {}) },
    doubts: wrong,
    ...(raw.relative === 'behind' ? { distal: true as const } : {}),
  };
}

function spaceBy(code: string, step: 1 | -1, doubts: readonly PlaceDoubt[]): Resolved {
  const other = codeOf(quadrantOf(code), positionOf(code) + step);
  return isTooth(other)
    ? { place: { spaces: [step > 0 ? [code, other] : [other, code]] }, doubts }
    : { place: null, doubts: [...doubts, { doubt: 'no-place' }] };
}
function relativeTooth(code: string, step: 1 | -1, doubts: readonly PlaceDoubt[]): Resolved {
  const other = codeOf(quadrantOf(code), positionOf(code) + step);
  return isTooth(other)
    ? { place: { teeth: [other] }, doubts }
    : { place: { teeth: [code] }, doubts, ...(step > 0 ? { distal: true as const } : {}) };
}

const inQuadrants = (raw: RawPlace, positions: readonly number[]): string[] =>
  unique((raw.quadrants ?? (raw.jaw || raw.side ? quadrantsOf(raw) : [1, 2, 3, 4])).flatMap((q) => positions.map((p) => codeOf(q, p))));

/** "the sixes", "upper canines", "upper left fourth cheek tooth", "upper right" for a wolf tooth. */
function ofPositions(raw: RawPlace, positions: readonly number[], quadrants: readonly number[] | undefined, wanted: Wanted): Resolved {
  const several =
    raw.plural ||
    raw.all ||
    positions.length > 1 ||
    raw.side === 'both' ||
    raw.jaw === 'both' ||
    (quadrants !== undefined && raw.quadrants !== undefined);
  // "an incisor is missing": one of twelve, and which was not said.
  if (wanted.single && positions.length > 1 && !raw.plural && !raw.all) return { place: null, doubts: [{ doubt: 'no-place' }] };
  // "wolf teeth both sides", "hooks on both sixes": two of four, and which two was not said.
  if (wanted.asks && raw.side === 'both' && raw.jaw === undefined && raw.quadrants === undefined && !raw.all && positions.length === 1) {
    const pair = (...of: readonly number[]): Place => ({ teeth: of.map((q) => codeOf(q, positions[0] as number)) });
    return { place: null, doubts: [{ doubt: 'two-readings', readings: [pair(1, 2), pair(3, 4), pair(1, 2, 3, 4)] }] };
  }
  const where = quadrants ?? (several ? [1, 2, 3, 4] : undefined);
  // One tooth of several possible ones: which, is asked.
  if (where === undefined || (where.length > 1 && !several))
    return {
      place: null,
      doubts: [{ doubt: 'two-readings', readings: (where ?? [1, 2, 3, 4]).map((q) => ({ teeth: [codeOf(q, positions[0] as number)] })) }],
    };
  const teeth = where.flatMap((q) => positions.map((p) => codeOf(q, p))).filter((code) => !wanted.missing.has(code));
  const group =
    (teeth.length > 1 && (raw.positions !== undefined || raw.all === true)) || (wanted.positions === undefined && teeth.length > 1);
  return teeth.length === 0 ? none : { place: { teeth: unique(teeth), ...(group ? { from: 'group' as const } : {}) }, doubts: [] };
}

/** A group of teeth where the finding stands at a row or a region: "incisors level", "wave on the cheek teeth". */
function ofGroupAsArea(raw: RawPlace, positions: readonly number[], quadrants: readonly number[] | undefined, wanted: Wanted): Resolved {
  const incisors = positions.every((p) => p <= 3);
  // "bit rubs, both corners": of the mouth.
  if (positions.length === 1 && positions[0] === 3 && !wanted.kinds.includes('R') && wanted.kinds.includes('G'))
    return {
      place: { region: 'commissure', ...(raw.side ? { side: raw.side } : raw.plural ? { side: 'both' as const } : {}) },
      doubts: [],
    };
  if (wanted.kinds.includes('R')) {
    const rows: readonly RowId[] = incisors
      ? raw.jaw === undefined || raw.jaw === 'both'
        ? ['lower-incisors', 'upper-incisors']
        : [`${raw.jaw}-incisors`]
      : (quadrants ?? [1, 2, 3, 4]).map((q) => rowOf[q] as RowId);
    return { place: { rows: [...rows].sort() }, doubts: [] };
  }
  if (wanted.kinds.includes('G'))
    return { place: { region: incisors ? 'incisors' : 'cheek-teeth', ...(raw.side ? { side: raw.side } : {}) }, doubts: [] };
  return { place: null, doubts: [{ doubt: 'no-place' }] };
}
