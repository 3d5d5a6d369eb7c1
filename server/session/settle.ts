/** How a question about the draft is answered. Pure. */
import type { Draft, DraftDoubt } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { isOpen, keep, put, stands, strike, supersede, voice, type Who } from './standing.ts';

/** What an item says, without its id and where it came from: two hearings of one thing are equal here. */
export const meaning = ({ id: _id, evidence: _evidence, revises: _revises, how: _how, ...rest }: Item): string =>
  JSON.stringify(
    Object.entries(rest)
      .filter(([, value]) => value !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

/** The rule's name on questions that a second hearing of the same sound opened. */
export const heardAgainRule = 'heard-again';
export interface Settling {
  readonly how: 'reading' | 'kept-as-said' | 'struck' | 'completed';
  readonly reading?: number | undefined;
}

/** Settles an open doubt and does what the answer means to the items. An unknown or settled doubt changes nothing. */
export function settle(draft: Draft, id: string, { how, reading }: Settling, who: Who): Draft {
  const found = draft.doubts.find((d) => d.doubt.id === id);
  if (!found || !isOpen(found)) return draft;
  const done: DraftDoubt = { ...found, settled: { how, ...who, ...(reading !== undefined && { reading }) } };
  const settled: Draft = { ...draft, doubts: draft.doubts.map((d) => (d === found ? done : d)) };
  const { item } = found.doubt;
  if (how === 'struck' && item) return strike(settled, [item], who);
  if (how === 'kept-as-said' && item && who.by !== voice) return keep(settled, [item], who);
  if (how === 'reading' && reading !== undefined) return choose(settled, found, reading, who);
  return settled;
}

/** The items a doubt is about: the one it names, all of the utterance that was heard again, or all that two readers heard differently. */
function covered(draft: Draft, { doubt }: DraftDoubt): readonly string[] {
  const differing = doubt.doubt === 'readers-differ' ? (doubt.readings?.[0]?.items ?? []).map(({ id }) => id) : [];
  const about = ({ id, evidence }: Item): boolean =>
    id === doubt.item || differing.includes(id) || (doubt.rule === heardAgainRule && evidence.utterance === doubt.utterance);
  return draft.items.filter((i) => stands(i) && about(i.item)).map((i) => i.item.id);
}

function choose(draft: Draft, about: DraftDoubt, n: number, who: Who): Draft {
  const chosen = about.doubt.readings?.[n]?.items ?? [];
  const old = draft.items.filter((i) => covered(draft, about).includes(i.item.id));
  if (chosen.length === 0)
    return strike(
      draft,
      old.map((i) => i.item.id),
      who,
    );
  const same = (item: Item) => old.find((i) => meaning(i.item) === meaning(item));
  const right = chosen.flatMap((item) => same(item)?.item.id ?? []);
  const wrong = old.map((i) => i.item.id).filter((id) => !right.includes(id));
  const stand = who.by === voice ? {} : { state: 'kept' as const, touched: true, ...who };
  const kept = who.by === voice ? draft : keep(draft, right, who);
  const fresh = chosen.filter((item) => !same(item));
  const added = fresh.reduce((d, item, k): Draft => {
    const taken = d.items.some((i) => i.item.id === item.id);
    return put(
      d,
      { ...item, ...(taken && { id: `${about.doubt.id}.${n}.${k}` }), ...(k === 0 && wrong[0] && { revises: wrong[0] }) },
      stand,
      who,
    );
  }, kept);
  return supersede(added, wrong, who);
}
