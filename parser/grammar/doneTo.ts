/** Work that names what it was done to, where earlier phrases said where that is: "took the step down", "both caps off", "hooks reduced", "flushed both of those". */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { handledAs, thingsSay } from '../lexicon/handling.ts';
import type { ProcedureId } from '../lexicon/procedures.ts';

/** What was named, and how many of it. */
export interface DoneTo {
  readonly things: readonly ConditionId[];
  readonly many: 'one' | 'some' | 'both';
  /** As it was said: "the big hook" may tell it from another. */ readonly words: readonly string[];
}
type Found = Extract<Item, { kind: 'finding' }>;

/** The thing that words of work name, and how many: "the hook", "hooks", "both hooks". */
export function doneTo(words: readonly string[]): DoneTo | undefined {
  const at = words.findIndex((word) => thingsSay[word.replace(/s$/, '')] !== undefined);
  const word = words[at];
  return word === undefined
    ? undefined
    : {
        things: thingsSay[word.replace(/s$/, '')] as readonly ConditionId[],
        many: words.includes('both') || words.slice(0, at).includes('two') ? 'both' : /[^u]s$|data$/.test(word) ? 'some' : 'one',
        words,
      };
}

/** Where it is; undefined, and it is asked, where the findings are not as many as were said. */
export function placeOf({ things, many, words }: DoneTo, procedure: ProcedureId, { items }: Context): Place | undefined {
  const found = items.filter(
    (item): item is Found => item.kind === 'finding' && item.presence === 'present' && things.includes(item.condition),
  );
  // "flushed that pocket again": what was there last time, where none was found today.
  const all = found.some(({ when }) => when === 'now') ? found.filter(({ when }) => when === 'now') : found;
  const undone = all.filter(
    ({ place }) =>
      !items.some(
        (item) =>
          item.kind === 'treatment' &&
          item.procedure === procedure &&
          item.state === 'done' &&
          JSON.stringify(item.place) === JSON.stringify(place),
      ),
  );
  const left = undone.length > 0 ? undone : all;
  return many === 'one' ? (theOne(left, words, items)?.place ?? undefined) : together(left, many);
}

/** Of several the one just found, or the one that was called so; which of them else is asked. */
function theOne(found: readonly Found[], words: readonly string[], items: Context['items']): Found | undefined {
  const called = found.filter(({ severitySaid }) => severitySaid !== undefined && words.includes(severitySaid));
  const of = called.length > 0 ? called : found;
  const last = of.at(-1);
  const alone = new Set(of.map(({ place }) => JSON.stringify(place))).size === 1;
  const just =
    items.findLast(({ kind }) => kind === 'finding')?.id === last?.id && called.length === 0 && !words.some((word) => sizes.has(word));
  return alone || just ? last : undefined;
}
const sizes: ReadonlySet<string> = new Set(['big', 'large', 'small', 'little', 'wee', 'tall', 'bad', 'high']);

/** "took them all down", "flushed both of those": the places of all findings of one kind since the last work; none where another kind stands among them. */
export function placeOfAll(every: 'all' | 'both', place: Place, { items }: Context): Place | undefined {
  const kind = (item: Item | undefined): string | undefined => (item?.kind === 'finding' ? handledAs[item.condition] : undefined);
  const work = items.findLastIndex((item) => item.kind === 'treatment');
  const found = items.slice(work + 1).filter((item): item is Found => item.kind === 'finding' && item.presence === 'present');
  const last = kind(found.at(-1));
  const named = found.slice(found.findIndex((item) => kind(item) === last));
  if (named.length < 2 || (every === 'both' && 'teeth' in place && place.teeth.length === 2)) return place;
  return named.every((item) => kind(item) === last) ? together(named, every === 'both' ? 'both' : 'some') : undefined;
}

/** Places of one kind as one place: two of them where "both" was said, two at least where there is more than one. */
function together(found: readonly Found[], many: 'some' | 'both'): Place | undefined {
  const places = found.map(({ place }) => place);
  const each = <T>(of: (place: Place) => readonly T[] | undefined): readonly T[] | undefined => {
    const all = places.map((place) => (place ? of(place) : undefined));
    const flat = all.flatMap((one) => one ?? []);
    const unique = [...new Map(flat.map((one) => [JSON.stringify(one), one])).values()].sort();
    return all.every((one) => one !== undefined) && (many === 'both' ? unique.length === 2 : unique.length > 1) ? unique : undefined;
  };
  const teeth = each((place) => ('teeth' in place ? place.teeth : undefined));
  if (teeth) return { teeth: [...teeth] };
  const spaces = each((place) => ('spaces' in place ? place.spaces : undefined));
  if (spaces) return { spaces: [...spaces] };
  const rows = each((place) => ('rows' in place ? place.rows : undefined));
  return rows ? { rows: [...rows] } : undefined;
}
