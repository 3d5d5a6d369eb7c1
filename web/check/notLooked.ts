/** What nobody spoke of: rows of teeth and the regions an exam walks through. Pure. */
import type { Hint } from '../../parser/contract/doubt.ts';
import type { DraftItem } from '../../parser/contract/draft.ts';
import type { Place } from '../../parser/contract/item.ts';
import type { RegionId } from '../../parser/lexicon/regions.ts';
import { rowIds } from '../../parser/lexicon/teeth.ts';
import { stands } from '../fold.ts';
import { regions } from '../labels.ts';
import { lookedAt, placeOfItem, saidUnseen } from '../mouth/marks.ts';
import { rowWords, teethWords } from '../mouth/names.ts';
import { teethOfRow, teethSpokenOf } from '../mouth/places.ts';

export interface Open {
  readonly label: string;
  readonly detail: string;
  readonly place: Place;
}
/** Regions of the order of an exam: common practice of the trade, no source. */
const walked = ['temporomandibular-joint', 'masseter', 'jaw-movement', 'lips', 'bars', 'gums', 'tongue', 'cheek', 'palate'] as const;

/** Rows first (whole, or the teeth of them that are left), then regions. A tooth said to be not examined is no longer left. */
export function left(items: readonly DraftItem[]): readonly Open[] {
  const seen = lookedAt(items);
  const unseen = saidUnseen(items);
  const rows = rowIds.flatMap((row): Open[] => {
    const teeth = teethOfRow(row);
    const open = teeth.filter((tooth) => !seen.has(tooth) && !unseen.has(tooth));
    if (open.length === 0) return [];
    const whole = open.length === teeth.length;
    return [{ label: rowWords[row], detail: whole ? '' : `${teethWords(open)}`, place: whole ? { rows: [row] } : { teeth: open } }];
  });
  const places = items.filter((i) => stands(i) && i.item.kind !== 'follow-up').flatMap((i) => placeOfItem(i.item) ?? []);
  /** By its own name, or by the mouth that holds it. */
  const named = (region: RegionId, side: 'left' | 'right'): boolean =>
    places.some(
      (place) =>
        'region' in place &&
        (place.region === region || (place.region === 'mouth' && !place.jaw && isWithin(region))) &&
        (!place.side || place.side === 'both' || place.side === side || (place.region === region && !regions[region].paired)),
    );
  const outside = walked.flatMap((region): Open[] => {
    const { label, paired } = regions[region];
    const sides = (['left', 'right'] as const).filter((side) => !named(region, side));
    if (sides.length === 0) return [];
    const one = paired && sides.length === 1 ? sides[0] : undefined;
    return [{ label, detail: one ?? '', place: { region, ...(paired && { side: one ?? ('both' as const) }) } }];
  });
  return [...rows, ...outside];
}
const isWithin = (region: RegionId): boolean => regions[region].where === 'inside' && region !== 'jaw-movement';

/** Hints that still hold: what made one look there stands, and nobody has looked there since. */
export function hintsLeft(hints: readonly Hint[], items: readonly DraftItem[]): readonly Hint[] {
  const seen = lookedAt(items);
  const unseen = saidUnseen(items);
  const standing = new Set(items.filter(stands).map((i) => i.item.id));
  return hints.filter(
    ({ item, place }) =>
      (item === undefined || standing.has(item)) && teethSpokenOf(place).some((tooth) => !seen.has(tooth) && !unseen.has(tooth)),
  );
}
