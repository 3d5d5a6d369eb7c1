/** "all worn bar the sixes", "normal apart from two oh nine": what a finding leaves out. */
import type { Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { rowTeeth, type RowId } from '../lexicon/teeth.ts';
import type { Roles } from './assemble.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import type { Mark } from './scan.ts';

/** The marks of the words that make the exception, and of the places left out; none where a finding follows them instead. */
export interface Exception { readonly cue: number; readonly places: readonly number[] }

export const isExcept = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'except') ?? false;

export const exceptionsIn = (marks: readonly Mark[], role: Roles['role']): readonly Exception[] => marks.flatMap((mark, cue): readonly Exception[] => {
  if (!isExcept(mark)) return [];
  const places: number[] = [];
  for (let i = cue + 1; i < marks.length && (role[i] === 'glue' || role[i] === 'place' || role[i] === 'cue' || marks[i]?.again); i += 1) if (role[i] === 'place') places.push(i);
  return [{ cue, places }];
});

/** The teeth or rows of an exception, for one finding. */
export function leftOut({ places }: Exception, id: ConditionId, marks: readonly Mark[]): Place | null {
  const placings = places.map((i) => ({ raw: (marks[i] as Mark).place as NonNullable<Mark['place']>, marks: [i] }));
  return placings.length === 0 ? null : resolvePlace(placings, { ...wantedBy(id, new Set(), true) }).place;
}

const teethOf = (place: Place): readonly string[] => ('teeth' in place ? place.teeth : 'rows' in place ? place.rows.flatMap((row) => rowTeeth[row as RowId]) : []);

/** A place less others; the same place where they are no part of it, or all of it. */
export function less(place: Place, others: readonly Place[]): Place {
  if ('rows' in place) {
    const rows = place.rows.filter((row) => !others.some((other) => 'rows' in other && other.rows.includes(row)));
    if (rows.length < place.rows.length && rows.length > 0 && others.every((other) => 'rows' in other)) return { rows };
  }
  const group = teethOf(place);
  const out = new Set(others.flatMap(teethOf));
  const left = group.filter((t) => !out.has(t));
  return left.length === group.length || left.length === 0 ? place : { teeth: left, from: 'group' };
}
