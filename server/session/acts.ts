/** What a person does at the check screen, as events of the draft, or the reason why not. Pure. */
import type { Draft, DraftEvent } from '../../parser/contract/draft.ts';
import { Item, type How } from '../../parser/contract/item.ts';
import type { Act, ApiError } from '../../parser/contract/wire.ts';
import { illegal } from './legal.ts';
import { isOpen, stands, type Who } from './standing.ts';

export type Acted = { readonly events: readonly DraftEvent[] } | { readonly error: ApiError };
const refuse = (code: string, message: string): Acted => ({ error: { code, message } });
const does = (...events: DraftEvent[]): Acted => ({ events });

/** A confirmed record is never changed by an act: it is amended first. */
export function actOn(draft: Draft, act: Act, who: Who): Acted {
  if (draft.state === 'confirmed')
    return refuse('confirmed', 'This record is confirmed, so nothing was changed. To change it, amend it and say why.');
  switch (act.act) {
    case 'add':
      return add(draft, act.item, who);
    case 'edit':
      return edit(draft, act.id, act.item, who);
    case 'strike':
      return draft.items.some((i) => act.ids.includes(i.item.id) && stands(i)) ? does({ event: 'struck', ids: act.ids, ...who }) : gone;
    case 'restore':
      return draft.items.some((i) => act.ids.includes(i.item.id) && !stands(i)) ? does({ event: 'restored', ids: act.ids, ...who }) : gone;
    case 'keep':
      return draft.items.some((i) => act.ids.includes(i.item.id) && stands(i)) ? does({ event: 'kept', ids: act.ids, ...who }) : gone;
    case 'keep-sure': {
      const doubted = new Set(draft.doubts.filter(isOpen).map((d) => d.doubt.item));
      const ids = draft.items.filter((i) => i.state === 'open' && !doubted.has(i.item.id)).map((i) => i.item.id);
      return ids.length ? does({ event: 'kept', ids, ...who }) : does();
    }
    case 'settle':
      return settle(draft, act, who);
    case 'header':
      return does({ event: 'header', header: act.header, ...who });
  }
}
const gone = refuse('not-there', 'That is not there to be changed any more. Nothing was lost; open the draft anew to see how it stands.');

function settle(draft: Draft, { doubt: id, how, reading }: Extract<Act, { act: 'settle' }>, who: Who): Acted {
  const found = draft.doubts.find((d) => d.doubt.id === id);
  if (!found || !isOpen(found)) return refuse('not-open', 'That question is settled already. Nothing was changed.');
  if (how === 'reading' && !found.doubt.readings?.[reading ?? -1])
    return refuse(
      'no-such-reading',
      'That answer is not among those offered. Nothing was changed; choose one of them, keep it as said, or strike it.',
    );
  return does({ event: 'settled', doubt: id, how, ...(how === 'reading' && { reading }), ...who });
}

const own = ['id', 'evidence', 'how', 'revises'];
/** Field names in which two items differ. */
const changed = (a: Record<string, unknown>, b: Record<string, unknown>): readonly string[] =>
  [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (name) => !own.includes(name) && JSON.stringify(a[name]) !== JSON.stringify(b[name]),
  );
const bare = (item: unknown): Record<string, unknown> =>
  item && typeof item === 'object' ? Object.fromEntries(Object.entries(item).filter(([name]) => !own.includes(name))) : {};
const nextId = (draft: Draft): string => `${draft.id}:typed${draft.seq + 1}`;

/** Checked by the contract and the trade's tables; every field typed. */
function add(draft: Draft, given: unknown, who: Who): Acted {
  const fields = bare(given);
  const how = Object.fromEntries(
    Object.keys(fields)
      .filter((name) => name !== 'kind')
      .map((name): [string, How] => [name, 'typed']),
  );
  return typed(
    { ...fields, id: nextId(draft), evidence: { utterance: '', words: [], rules: [], ...who }, how },
    new Set(Object.keys(how)),
    who,
    [],
  );
}

/** The new item keeps where the old one came from, with who changed it and when; only changed fields count as typed. */
function edit(draft: Draft, id: string, given: unknown, who: Who): Acted {
  const old = draft.items.find((i) => i.item.id === id && stands(i))?.item;
  if (!old) return gone;
  const fields = { kind: old.kind, ...bare(given) };
  const read = Item.safeParse({ ...fields, id, evidence: old.evidence });
  if (!read.success) return unreadable;
  const differs = changed(bare(old), bare(read.data));
  if (differs.length === 0) return does({ event: 'kept', ids: [id], ...who });
  const how = { ...old.how, ...Object.fromEntries(differs.map((name): [string, How] => [name, 'typed'])) };
  const answered = draft.doubts.filter(
    (d) => isOpen(d) && d.doubt.item === id && answers[d.doubt.doubt]?.some((name) => differs.includes(name)),
  );
  return typed(
    { ...bare(read.data), id: nextId(draft), evidence: { ...old.evidence, ...who }, how, revises: id },
    new Set(differs),
    who,
    answered.map(({ doubt }): DraftEvent => ({ event: 'settled', doubt: doubt.id, how: 'completed', ...who })),
  );
}
/** Which field, filled in by hand, answers which question; every other question stays open until it is answered itself. */
const answers: Readonly<Record<string, readonly string[]>> = {
  'no-such-tooth': ['place'],
  'no-place': ['place'],
  'no-condition': ['condition'],
  'off-scale': ['grade'],
  'dose-unclear': ['dose'],
  'state-unclear': ['state'],
};

const unreadable = refuse(
  'not-an-item',
  'Something needed is missing or is not one of the values offered. Nothing was changed; choose from the lists and try again.',
);
function typed(item: unknown, fields: ReadonlySet<string>, who: Who, also: readonly DraftEvent[]): Acted {
  const read = Item.safeParse(item);
  if (!read.success) return unreadable;
  const bad = illegal(read.data, fields);
  return bad ? refuse('not-legal', `${bad} Nothing was changed.`) : does(...also, { event: 'typed', item: read.data, ...who });
}
