/** Places of the drawn mouth as short keys, so that one map holds teeth, gaps, rows and regions alike. */
import type { Place } from '../../parser/contract/item.ts';
import { regions, type RegionId } from '../../parser/lexicon/regions.ts';
import { permanentTeeth, rowIds, type RowId } from '../../parser/lexicon/teeth.ts';
import { positionOf, quadrantOf, regionWords, rowWords, spokenSpace, spokenTooth } from './names.ts';

/** `106` a tooth, `106-107` a gap, `row:upper-left` a row, `region:cheek:left` a region. */
export type PlaceKey = string;

/** Neighbours in one row, lower number first; across the middle 101/201 and 301/401. */
export const spaces: readonly (readonly [string, string])[] = [
  ...[1, 2, 3, 4].flatMap((q) => Array.from({ length: 10 }, (_, i) => [String(q * 100 + i + 1), String(q * 100 + i + 2)] as const)),
  ['101', '201'],
  ['301', '401'],
];
const cheekRow: Readonly<Record<1 | 2 | 3 | 4, RowId>> = { 1: 'upper-right', 2: 'upper-left', 3: 'lower-left', 4: 'lower-right' };

/** The row a tooth stands in; canines and wolf teeth stand in the bars, in no row. */
export function rowOf(tooth: string): RowId | null {
  const position = positionOf(tooth);
  if (position >= 6) return cheekRow[quadrantOf(tooth)];
  return position <= 3 ? (quadrantOf(tooth) < 3 ? 'upper-incisors' : 'lower-incisors') : null;
}
export const teethOfRow = (row: RowId): readonly string[] => permanentTeeth.filter((tooth) => rowOf(tooth) === row);

/** Keys at which a place is shown. */
export function keysOf(place: Place | null | undefined): readonly PlaceKey[] {
  if (!place) return [];
  if ('teeth' in place) return place.teeth;
  if ('spaces' in place) return place.spaces.map(([a, b]) => `${a}-${b}`);
  if ('rows' in place) return place.rows.map((row) => `row:${row}`);
  const sides = place.side === 'both' ? ['left', 'right'] : place.side ? [place.side] : [];
  return sides.length ? sides.map((side) => `region:${place.region}:${side}`) : [`region:${place.region}`];
}
/** The place a key stands for. */
export function placeOf(key: PlaceKey): Place {
  const [kind, name, side] = key.split(':');
  if (kind === 'row') return { rows: [name as RowId] };
  if (kind === 'region') return { region: name as RegionId, ...(side ? { side: side as 'left' | 'right' } : {}) };
  const [a, b] = key.split('-');
  return b ? { spaces: [[a!, b]] } : { teeth: [key] };
}
/** The spoken name of a key. */
export function nameOf(key: PlaceKey): string {
  const place = placeOf(key);
  if ('teeth' in place) return spokenTooth(key);
  if ('spaces' in place) return spokenSpace(...place.spaces[0]!);
  if ('rows' in place) return rowWords[place.rows[0]!];
  return regionWords(place.region, place.side, place.jaw);
}
/** Teeth that a place speaks of: a gap speaks of its two, a row, "the incisors", "the mouth" of all theirs. */
export function teethSpokenOf(place: Place | null | undefined): readonly string[] {
  if (!place) return [];
  if ('teeth' in place) return place.teeth;
  if ('rows' in place) return place.rows.flatMap(teethOfRow);
  if ('spaces' in place) return place.spaces.flat();
  const inRegion = (tooth: string): boolean => {
    const position = positionOf(tooth);
    const named =
      place.region === 'mouth' || (place.region === 'incisors' && position <= 3) || (place.region === 'cheek-teeth' && position >= 6);
    const quadrant = quadrantOf(tooth);
    const onSide = !place.side || place.side === 'both' || (place.side === 'right') === (quadrant === 1 || quadrant === 4);
    return named && onSide && (!place.jaw || (place.jaw === 'upper') === quadrant < 3);
  };
  return permanentTeeth.filter(inRegion);
}
export { rowIds, regions };
