/** "all worn bar the sixes", "normal apart from two oh nine": what a finding leaves out. */
import type { Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { rowTeeth, type RowId } from '../lexicon/teeth.ts';
import type { Roles } from './roles.ts';
import { gather } from './lists.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import { quadrantsOf, type RawPlace } from './places.ts';
import type { Mark } from './scan.ts';
import { quadrantOf } from './teeth.ts';

/** The marks of the words that make the exception, and of the places left out; none where a finding follows them instead. */
export interface Exception {
  readonly cue: number;
  readonly places: readonly number[];
}

export const isExcept = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'except') ?? false;

export const exceptionsIn = (marks: readonly Mark[], role: Roles['role']): readonly Exception[] =>
  gather(marks, (mark, cue): Exception | undefined => {
    if (!isExcept(mark)) return undefined;
    const places: number[] = [];
    for (let i = cue + 1; i < marks.length && (role[i] === 'glue' || role[i] === 'place' || role[i] === 'cue' || marks[i]?.again); i += 1)
      if (role[i] === 'place') places.push(i);
    // "apart from four oh eight the lower right looks healthy": the last one before the finding is what it is said of.
    const last = places.at(-1) as number;
    const leads =
      places.length > 1 &&
      !marks.slice(0, cue).some((_, i) => role[i] === 'head' || role[i] === 'place') &&
      role.slice(last + 1).find((r) => r !== 'glue') === 'head';
    return { cue, places: leads ? places.slice(0, -1) : places };
  });

/** The teeth or rows of an exception, for one finding. */
export function leftOut({ places }: Exception, id: ConditionId, marks: readonly Mark[], of: Place | null = null): Place | null {
  const [only] = places;
  const quarter = places.length === 1 && of !== null ? quarterOf((marks[only as number] as Mark).place as RawPlace, of) : null;
  if (quarter) return quarter;
  const placings = places.map((i) => ({ raw: (marks[i] as Mark).place as NonNullable<Mark['place']>, marks: [i] }));
  return placings.length === 0 ? null : resolvePlace(placings, { ...wantedBy(id, new Set(), true) }).place;
}

const teethOf = (place: Place): readonly string[] =>
  'teeth' in place ? place.teeth : 'rows' in place ? place.rows.flatMap((row) => rowTeeth[row as RowId]) : [];

/** "the tushes are sharp, all save the bottom left": of the teeth named, those of that quadrant. */
const quarterOf = (raw: RawPlace, of: Place): Place | null => {
  const bare = raw.codes === undefined && raw.positions === undefined && raw.region === undefined && !raw.row;
  const quadrants = bare ? quadrantsOf(raw) : [];
  const teeth = 'teeth' in of ? of.teeth.filter((t) => quadrants.includes(((quadrantOf(t) - 1) % 4) + 1)) : [];
  return teeth.length > 0 ? { teeth } : null;
};

/** A place less others; the same place where they are no part of it, or all of it. */
export function less(place: Place, others: readonly Place[]): Place {
  if ('rows' in place) {
    const rows = place.rows.filter((row) => !others.some((other) => 'rows' in other && other.rows.includes(row)));
    if (rows.length < place.rows.length && rows.length > 0 && others.every((other) => 'rows' in other)) return { rows };
  }
  const group = teethOf(place);
  const out = new Set(others.flatMap(teethOf));
  const left = group.filter((t) => !out.has(t));
  return left.length === group.length || left.length === 0 ? place : { teeth: [...left].sort(), from: 'group' };
}
