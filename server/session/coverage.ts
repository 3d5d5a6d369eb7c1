/** What of a whole exam was spoken of and what was not: rows of teeth and the regions an exam walks through. Pure. */
import type { Draft } from '../../parser/contract/draft.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import { regions, type RegionId } from '../../parser/lexicon/regions.ts';
import { rowIds, rowTeeth, type RowId } from '../../parser/lexicon/teeth.ts';
import { stands } from './standing.ts';

/** Regions in the order of an exam: common practice of the trade, no source. */
export const walked = [
  'temporomandibular-joint',
  'masseter',
  'jaw-movement',
  'lips',
  'bars',
  'gums',
  'tongue',
  'cheek',
  'palate',
] as const satisfies readonly RegionId[];

export interface Coverage {
  /** Rows not spoken of whole; `teeth` those of them that are left. */
  readonly rows: readonly { readonly row: RowId; readonly teeth: readonly string[]; readonly whole: boolean }[];
  /** Regions not spoken of; of a paired one perhaps only one side. */
  readonly regions: readonly { readonly region: RegionId; readonly side?: Side }[];
}
type Side = 'left' | 'right';
const sides: readonly Side[] = ['left', 'right'];

/** Spoken of: found, ruled out, worked on, or said not to be examined. "No hooks" without a place says nothing about any tooth. */
export function coverageOf(draft: Draft): Coverage {
  const places = draft.items.filter(stands).flatMap((i) => placeOf(i.item) ?? []);
  const teeth = new Set(places.flatMap(teethOf));
  /** Whether this side of a region was spoken of: by its own name, or by the mouth that holds it. */
  const seen = (region: RegionId, side: Side): boolean =>
    places.some(
      (place) =>
        'region' in place &&
        (place.region === region || (place.region === 'mouth' && !place.jaw && isWithin(region))) &&
        (!place.side || place.side === 'both' || place.side === side || (place.region === region && !regions[region].paired)),
    );
  return {
    rows: rowIds.flatMap((row) => {
      const left = rowTeeth[row].filter((tooth) => !teeth.has(tooth));
      return left.length ? [{ row, teeth: left, whole: left.length === rowTeeth[row].length }] : [];
    }),
    regions: walked.flatMap((region) => {
      const left = sides.filter((side) => !seen(region, side));
      return left.length === 0 ? [] : left.length === 2 || !regions[region].paired ? [{ region }] : [{ region, side: left[0]! }];
    }),
  };
}
const isWithin = (region: RegionId): boolean => regions[region].where === 'inside' && region !== 'jaw-movement';
const placeOf = (item: Item): Place | null => ('place' in item && item.kind !== 'follow-up' ? item.place : null);

/** The horse's own side: quadrants 1 and 4 are its right (Floyd 1991). */
const sideOf = (tooth: string): Side => (tooth.startsWith('1') || tooth.startsWith('4') ? 'right' : 'left');
function teethOf(place: Place): readonly string[] {
  if ('teeth' in place) return place.teeth;
  if ('spaces' in place) return place.spaces.flat();
  if ('rows' in place) return place.rows.flatMap((row) => rowTeeth[row]);
  const rows: readonly RowId[] =
    place.region === 'mouth'
      ? rowIds
      : place.region === 'incisors'
        ? ['upper-incisors', 'lower-incisors']
        : place.region === 'cheek-teeth'
          ? ['upper-right', 'upper-left', 'lower-left', 'lower-right']
          : [];
  const side = place.side === 'left' || place.side === 'right' ? place.side : null;
  return rows
    .filter((row) => !place.jaw || row.startsWith(place.jaw))
    .flatMap((row) => rowTeeth[row])
    .filter((tooth) => side === null || sideOf(tooth) === side);
}

const lower = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);
/** "upper left, 110 and 111", "tongue": each part in words. */
export const leftParts = ({ rows, regions: open }: Coverage): readonly string[] => [
  ...rows.map(({ row, teeth, whole }) => (whole ? row.replace('-', ' ') : `${row.replace('-', ' ')}, ${list(teeth)}`)),
  ...open.map(({ region, side }) => `${lower(regions[region].label)}${side ? `, ${side}` : ''}`),
];
/** To be said aloud or shown. */
export function leftInWords(coverage: Coverage): string {
  const parts = leftParts(coverage);
  return parts.length ? `Not looked at yet: ${parts.join('; ')}.` : 'Every row and region was spoken of.';
}
const list = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
