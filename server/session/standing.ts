/** Striking, bringing back, replacing and keeping the items of a draft. Pure; nothing is ever taken out of the list. */
import type { Draft, DraftDoubt, DraftItem } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';

export interface Who {
  readonly by: string;
  readonly when: string;
}
/** Who is named when a spoken command did it. */
export const voice = 'voice';

/** An item that counts: neither struck nor replaced. */
export const stands = (i: DraftItem): boolean => i.state === 'open' || i.state === 'kept';
export const isOpen = (d: DraftDoubt): boolean => !d.settled && d.doubt.state === 'open';
const asItWas = ({ state, by, when, touched }: DraftItem): NonNullable<DraftItem['was']> => ({
  state,
  ...(by && { by }),
  ...(when && { when }),
  ...(touched && { touched }),
});
const byHand = (who: Who): { touched?: true } => (who.by === voice ? {} : { touched: true });

const eachItem = (draft: Draft, change: (i: DraftItem) => DraftItem): Draft => ({ ...draft, items: draft.items.map(change) });
const eachDoubt = (draft: Draft, change: (d: DraftDoubt) => DraftDoubt): Draft => ({ ...draft, doubts: draft.doubts.map(change) });
const about = (d: DraftDoubt, ids: ReadonlySet<string>): boolean =>
  ids.has(d.doubt.id) || (d.doubt.item !== undefined && ids.has(d.doubt.item));

/** Strikes items, and with them what was asked about them. `ids` may name doubts too. */
export function strike(draft: Draft, ids: readonly string[], who: Who): Draft {
  const set = new Set(ids);
  const struck = eachItem(draft, (i) =>
    set.has(i.item.id) && stands(i) ? { ...i, ...who, state: 'struck', was: asItWas(i), ...byHand(who) } : i,
  );
  return eachDoubt(struck, (d) => (about(d, set) && isOpen(d) ? { ...d, settled: { how: 'struck', ...who } } : d));
}

/** Strikes what an utterance made, as an undo: what it had replaced stands again. */
export function takeBack(draft: Draft, ids: readonly string[], who: Who): Draft {
  const set = new Set(ids);
  return uncorrect(
    strike(draft, ids, who),
    draft.items.filter((i) => set.has(i.item.id) && stands(i)),
  );
}
const reinstate = (draft: Draft, ids: ReadonlySet<string>): Draft =>
  eachItem(draft, (i) => (ids.has(i.item.id) && !stands(i) && i.was ? { item: i.item, ...i.was } : i));
/** What these items had replaced stands again as it did, unless another correction that stands replaced it too. What was struck stays struck. */
export function uncorrect(draft: Draft, corrections: readonly DraftItem[]): Draft {
  const corrected = new Set(draft.items.filter(stands).map(({ item }) => item.revises));
  const revised = new Set(draft.items.filter((i) => i.state === 'revised' && !corrected.has(i.item.id)).map((i) => i.item.id));
  return reinstate(draft, new Set(corrections.flatMap(({ item }) => (item.revises && revised.has(item.revises) ? [item.revises] : []))));
}

/** Brings back what was struck or replaced, exactly as it stood, with the questions about it; its replacement is struck. */
export function restore(draft: Draft, ids: readonly string[], who: Who): Draft {
  const set = new Set(draft.items.filter((i) => ids.includes(i.item.id) && !stands(i)).map((i) => i.item.id));
  const asked = new Set([...set, ...ids.filter((id) => draft.doubts.some((d) => d.doubt.id === id))]);
  const replacements = draft.items.filter((i) => stands(i) && i.item.revises && set.has(i.item.revises)).map((i) => i.item.id);
  const back = reinstate(strike(draft, replacements, who), set);
  const marked = eachItem(back, (i) => (set.has(i.item.id) ? { ...i, ...byHand(who) } : i));
  const older = new Set(marked.items.flatMap((i) => (set.has(i.item.id) && i.item.revises ? [i.item.revises] : [])));
  const reopened = eachDoubt(marked, (d) => (about(d, asked) && d.settled?.how === 'struck' ? { doubt: d.doubt } : d));
  return replace(reopened, older, who);
}

const replace = (draft: Draft, ids: ReadonlySet<string>, who: Who): Draft =>
  eachItem(draft, (i) => (ids.has(i.item.id) && stands(i) ? { ...i, ...who, state: 'revised', was: asItWas(i) } : i));

/** Adds an item. What it revises is marked so and stays visible; open questions about that follow to the new one. It can revise only what stands. */
export function put(draft: Draft, item: Item, how: Partial<DraftItem>, who: Who): Draft {
  if (draft.items.some((i) => i.item.id === item.id)) return draft;
  const { revises, ...alone } = item;
  const target = revises && latestOf(draft, revises);
  if (target !== revises) return put(draft, target ? { ...item, revises: target } : alone, how, who);
  const revised = revises ? replace(draft, new Set([revises]), who) : draft;
  const followed = revises
    ? eachDoubt(revised, (d) => (isOpen(d) && d.doubt.item === revises ? { ...d, doubt: { ...d.doubt, item: item.id } } : d))
    : revised;
  return { ...followed, items: [...followed.items, { state: 'open', ...how, item }] };
}

/** The item itself if it stands, else the standing end of its chain of corrections. */
function latestOf(draft: Draft, id: string): string | undefined {
  const found = draft.items.find((i) => i.item.id === id);
  if (!found || stands(found)) return found?.item.id;
  const next = draft.items.findLast((i) => i.item.revises === id && (stands(i) || i.state === 'revised'));
  return found.state === 'revised' && next ? latestOf(draft, next.item.id) : undefined;
}

/** Marks items as replaced without a replacement of their own (a chosen reading covers them). */
export const supersede = (draft: Draft, ids: readonly string[], who: Who): Draft => replace(draft, new Set(ids), who);

/** A person's yes. */
export function keep(draft: Draft, ids: readonly string[], who: Who): Draft {
  const set = new Set(ids);
  return eachItem(draft, (i) => (set.has(i.item.id) && stands(i) ? { ...i, ...who, state: 'kept', touched: true } : i));
}
