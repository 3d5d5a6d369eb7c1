/** The grammar's memory from one phrase to the next: small, plain JSON, handed back and forth by the caller. */
import type { Context } from '../contract/draft.ts';
import type { Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import { gather } from './lists.ts';
import type { RawPlace } from './places.ts';
import type { Reading } from './read.ts';

export interface Carry {
  /** The place last spoken, as it was said. */
  readonly place?: readonly RawPlace[];
  /** The item last made. */
  readonly last?: string;
  /** All items of the last utterance that made any. */
  readonly lastItems: readonly string[];
  /** Half of a finding, waiting for its other half. */
  readonly half?: { readonly doubt: string; readonly item?: string };
  /** What `bring-back` can undo, and the items it brings back, latest last; at most five. */
  readonly undo: readonly { readonly command: string; readonly ids: readonly string[]; readonly items?: readonly Item[] }[];
  readonly paused: boolean;
  /** A doubt with readings, open for `answer`. */
  readonly question?: string;
}

export const noCarry: Carry = { lastItems: [], undo: [], paused: false };
/** Seconds of silence that end what is carried (record contract, section 1). */
export const LONG_PAUSE = 20;

export const carryOf = (context: Context): Carry => ({ ...noCarry, ...(context.carry as Partial<Carry> | undefined) });
export const standing = (context: Context, id: string | undefined): Item | undefined => context.items.findLast((item) => item.id === id);
export const itemsOf = ({ items }: Context, ids: readonly string[]): readonly Item[] => items.filter(({ id }) => ids.includes(id));
/** The carried memory after a long pause: undo and pause stay, places and halves do not. */
export const afterPause = (carry: Carry): Carry => ({
  lastItems: carry.lastItems,
  undo: carry.undo,
  paused: carry.paused,
  ...(carry.last ? { last: undefined } : {}),
});
export const remember = (undo: Carry['undo'], entry: Carry['undo'][number]): Carry['undo'] => [...undo, entry].slice(-5);
/** Teeth said to be missing or extracted, left out of groups. */
export const missingTeeth = (context: Context): ReadonlySet<string> =>
  new Set(
    context.items.flatMap((item) =>
      item.kind === 'finding' &&
      ['missing', 'previously-extracted'].includes(item.condition) &&
      item.presence === 'present' &&
      item.place &&
      'teeth' in item.place
        ? item.place.teeth
        : [],
    ),
  );

/** "tongue, small scar on the left side": one part and a side of it are one place. */
function asOnePlace(raws: readonly RawPlace[], item: Item | undefined): readonly RawPlace[] {
  const place = item && 'place' in item ? item.place : null;
  const [part, side, ...more] = raws;
  return place && 'region' in place && place.side && part?.region === place.region && more.length === 0 && side?.side === place.side
    ? [{ ...part, side: place.side }]
    : raws;
}

/** What the next phrase may lean on. Talk clears nothing; a region or a row said anew takes the place of a tooth. */
export function carryAfter(
  carry: Carry,
  { made, marks, places }: Reading,
  items: readonly Item[],
  doubts: readonly Doubt[],
  before: Context,
): Carry {
  if (made.length === 0) return carry;
  const raws = asOnePlace(
    gather(places, (i) => marks[i]?.place),
    items.at(-1),
  );
  const half = doubts.find(({ doubt }) => doubt === 'no-place' || doubt === 'no-condition');
  const amended = gather(made, ({ revises }) => revises?.id);
  return {
    undo: amended.length > 0 ? remember(carry.undo, { command: 'amend', ids: amended, items: itemsOf(before, amended) }) : carry.undo,
    paused: carry.paused,
    lastItems: items.length > 0 ? items.map(({ id }) => id) : carry.lastItems,
    ...(items.length > 0 ? { last: items.at(-1)?.id } : carry.last ? { last: carry.last } : {}),
    ...(raws.length > 0 ? { place: raws } : carry.place ? { place: carry.place } : {}),
    ...(half ? { half: { doubt: half.id, ...(half.item ? { item: half.item } : {}) } } : {}),
  };
}
