/** What stands at each place of a draft: the marks of the drawn mouth, and what was not looked at yet. Pure. */
import type { Draft, DraftItem } from '../../parser/contract/draft.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import { permanentTeeth } from '../../parser/lexicon/teeth.ts';
import { isOpen, stands } from '../fold.ts';
import { keysOf, teethSpokenOf, type PlaceKey } from './places.ts';

/** How a place stands, strongest first; `work` and `plan` are treatments done and not done. */
export const looks = ['present', 'half', 'open', 'before', 'work', 'plan', 'unseen'] as const;
export type Look = (typeof looks)[number];
export interface Mark {
  readonly look: Look | null;
  readonly count: number;
  readonly doubts: number;
}

export const placeOfItem = (item: Item): Place | null => ('place' in item ? (item.place ?? null) : null);

/** Whether an item speaks of a place: a gap also belongs to its two teeth, a row and "the incisors" to each of theirs. */
export function standsAt(item: Item, key: PlaceKey): boolean {
  if (teethSpokenOf(placeOfItem(item)).includes(key)) return true;
  return keysOf(placeOfItem(item)).some(
    (k) =>
      k === key ||
      (k.includes('-') && !k.includes(':') && k.split('-').includes(key)) ||
      (k.startsWith('region:') && (k === `${key}:left` || k === `${key}:right`)),
  );
}
/** How one item looks where it stands; words about the visit look like nothing. */
export function lookOf(item: Item): Look | null {
  if (item.kind === 'not-examined') return 'unseen';
  if (item.kind === 'treatment') return item.state === 'done' || item.state === 'part-done' || item.state === 'attempted' ? 'work' : 'plan';
  if (item.kind === 'sedation') return item.given ? 'work' : 'open';
  if (item.kind === 'medication') return item.state === undefined || item.state === 'given' ? 'work' : 'plan';
  if (item.kind === 'follow-up') return 'plan';
  if (item.kind !== 'finding') return null;
  if (item.when === 'before') return 'before';
  return item.presence === 'present' ? 'present' : item.presence === 'suspected' ? 'half' : 'open';
}

/** Marks by place. Struck and replaced items leave none. */
export function marksOf(draft: Pick<Draft, 'items' | 'doubts'> | null): ReadonlyMap<PlaceKey, Mark> {
  const marks = new Map<PlaceKey, Mark>();
  if (!draft) return marks;
  const at = (key: PlaceKey): Mark => marks.get(key) ?? { look: null, count: 0, doubts: 0 };
  const places = new Map<string, readonly PlaceKey[]>();
  for (const { item } of draft.items.filter(stands)) {
    const keys = keysOf(placeOfItem(item));
    places.set(item.id, keys);
    for (const key of keys) marks.set(key, { ...at(key), look: stronger(at(key).look, lookOf(item)), count: at(key).count + 1 });
  }
  for (const { doubt } of draft.doubts.filter(isOpen)) {
    const keys = doubt.place ? keysOf(doubt.place) : (doubt.item && places.get(doubt.item)) || [];
    for (const key of keys) marks.set(key, { ...at(key), doubts: at(key).doubts + 1 });
  }
  return marks;
}
const stronger = (a: Look | null, b: Look | null): Look | null => (a && (!b || looks.indexOf(a) <= looks.indexOf(b)) ? a : b);

/** Teeth that were spoken of, whatever was said of them; "not examined" is not looking. */
export function lookedAt(items: readonly DraftItem[]): ReadonlySet<string> {
  const seen = items
    .filter(stands)
    .map((i) => i.item)
    .filter((item) => item.kind === 'finding' || item.kind === 'treatment');
  return new Set(seen.flatMap((item) => teethSpokenOf(placeOfItem(item))));
}
/** Teeth said to be not examined. */
export function saidUnseen(items: readonly DraftItem[]): ReadonlySet<string> {
  return new Set(
    items
      .filter(stands)
      .filter((i) => i.item.kind === 'not-examined')
      .flatMap((i) => teethSpokenOf(placeOfItem(i.item))),
  );
}
/** Caps and teeth behind the eleven are drawn only where a draft names them. */
export function extraTeeth(draft: Pick<Draft, 'items'> | null): readonly string[] {
  const usual = new Set(permanentTeeth);
  const named = (draft?.items ?? []).filter(stands).flatMap((i) => {
    const place = placeOfItem(i.item);
    return place && 'teeth' in place ? place.teeth : [];
  });
  return [...new Set(named)].filter((tooth) => !usual.has(tooth)).sort();
}
