/** Visits side by side: a row for each place, a column for each visit. Pure. */
import type { Item } from '../../parser/contract/item.ts';
import type { Comparison } from '../../parser/contract/wire.ts';
import { placeOfItem } from '../mouth/marks.ts';
import { keysOf, nameOf, placeOf, type PlaceKey } from '../mouth/places.ts';
import { placeWords } from '../mouth/names.ts';
import { capital } from '../labels.ts';
import { parts, partOf } from '../words.ts';

export interface CompareRow {
  readonly key: PlaceKey;
  readonly label: string;
  readonly name: string;
  readonly cells: readonly (readonly Item[])[];
}
const nowhere = 'Whole mouth';
const drawn = (key: PlaceKey): boolean => /^\d|^row:/.test(key);
const label = (key: PlaceKey): string => (drawn(key) ? capital(placeWords(placeOf(key))) : key);

/** Findings and work by place, in the order of an exam; a place that no visit speaks of has no row. */
export function compareRows(comparison: Comparison): readonly CompareRow[] {
  const rows = new Map<PlaceKey, { first: number; cells: Item[][] }>();
  comparison.visits.forEach((visit, column) => {
    for (const item of visit.items) {
      if (item.kind !== 'finding' && item.kind !== 'treatment' && item.kind !== 'not-examined') continue;
      const place = placeOfItem(item);
      // Teeth, gaps and rows each have a row of their own; a region is one row with its sides.
      const keys = !place ? [nowhere] : 'region' in place ? [placeWords(place)] : keysOf(place);
      for (const key of keys) {
        const row = rows.get(key) ?? { first: 99, cells: comparison.visits.map(() => []) };
        row.cells[column]!.push(item);
        if (item.kind === 'finding') row.first = Math.min(row.first, parts.indexOf(partOf(item)));
        rows.set(key, row);
      }
    }
  });
  return [...rows]
    .sort(([a, x], [b, y]) => x.first - y.first || a.localeCompare(b))
    .map(([key, { cells }]) => ({ key, label: label(key), name: drawn(key) ? nameOf(key) : key, cells }));
}
