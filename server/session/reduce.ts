/** The draft: a pure fold of its append-only events. Any prefix of a log folds to a valid draft. */
import type { Draft, DraftEvent, Header, Horse } from '../../parser/contract/draft.ts';
import { partOf, without, withPart } from './move.ts';
import { obey } from './obey.ts';
import { ask, said } from './said.ts';
import { settle } from './settle.ts';
import { keep, put, restore, strike } from './standing.ts';

/** A draft before its first event. */
export const emptyDraft = (id: string): Draft => ({
  id,
  header: { horse: null, owner: null, yard: null, examiner: null, startedAt: null },
  state: 'draft',
  revision: 0,
  utterances: [],
  items: [],
  commands: [],
  doubts: [],
  hints: [],
  gaps: [],
  revisions: [],
  unread: [],
  paused: false,
  carry: undefined,
  seq: 0,
});

/** The draft after one more event; `seq` goes up by one. */
export function applyEvent(draft: Draft, event: DraftEvent): Draft {
  return { ...change(draft, event), seq: draft.seq + 1 };
}
export const foldDraft = (id: string, events: readonly DraftEvent[]): Draft => events.reduce(applyEvent, emptyDraft(id));

function change(draft: Draft, event: DraftEvent): Draft {
  const who = { by: 'by' in event ? event.by : '', when: event.when };
  switch (event.event) {
    case 'opened':
      return { ...draft, header: event.header, ...(event.follows && { follows: event.follows }) };
    case 'heard':
      return heard(draft, event.phrase);
    case 'said':
      return said(draft, event.result, event.when);
    case 'header':
      return typedHeader(draft, event.header);
    case 'typed':
      return put(draft, event.item, { touched: true, state: 'kept', ...who }, who);
    case 'struck':
      return strike(draft, event.ids, who);
    case 'restored':
      return restore(draft, event.ids, who);
    case 'kept':
      return keep(draft, event.ids, who);
    case 'settled':
      return settle(draft, event.doubt, event, who);
    case 'commanded':
      return obey(draft, event.command, who);
    case 'asked':
      return ask(draft, event.doubt);
    case 'compared':
      return compared(draft, event.items);
    case 'listened':
      return { ...draft, listenedTo: Math.max(draft.listenedTo ?? 0, event.to) };
    case 'gap':
      return { ...draft, gaps: [...draft.gaps, { at: event.at, why: event.why }] };
    case 'moved-out':
      return { ...without(draft, partOf(draft, event.utterances)), ...(event.to === draft.follows && { follows: undefined }) };
    case 'moved-in':
      return withPart(draft, event.part, event.from, who);
    case 'confirmed': {
      const kept = keep(
        draft,
        draft.items.filter((i) => i.state === 'open').map((i) => i.item.id),
        who,
      );
      const revision = draft.revision + 1;
      const reason = draft.reopened && { reason: draft.reopened.reason };
      return {
        ...kept,
        state: 'confirmed',
        revision,
        reopened: undefined,
        revisions: [...draft.revisions, { revision, ...who, ...reason, lexicon: event.lexicon }],
      };
    }
    case 'reopened':
      return { ...draft, state: 'draft', reopened: { reason: event.reason, ...who } };
  }
}

/** Sound that is heard but not read yet blocks confirming. A phrase that is known already is being heard again and blocks nothing. */
function heard(draft: Draft, { id, at }: { readonly id: string; readonly at?: Draft['unread'][number] | undefined }): Draft {
  const known = draft.utterances.some((u) => u.id === id) || draft.unread.some(([from]) => from === at?.[0]);
  return at && !known ? { ...draft, unread: [...draft.unread, at] } : draft;
}

/** Kept beside the item, never in it. */
function compared(draft: Draft, heard: Extract<DraftEvent, { event: 'compared' }>['items']): Draft {
  const by = new Map(heard.map(({ item, ...second }) => [item, second]));
  return {
    ...draft,
    items: draft.items.map((i) => {
      const second = by.get(i.item.id);
      return second ? { ...i, second } : i;
    }),
  };
}

function typedHeader(draft: Draft, header: Partial<Header>): Draft {
  const { horse, ...visit } = header;
  const names = [...Object.keys(visit), ...Object.keys(horse ?? {}).map((name) => `horse.${name}`)];
  const told: Horse | null | undefined = horse === undefined ? draft.header.horse : horse && { ...draft.header.horse, ...horse };
  return {
    ...draft,
    header: { ...draft.header, ...visit, horse: told ?? null },
    headerTyped: [...new Set([...(draft.headerTyped ?? []), ...names])],
  };
}
