/** Two drafts joined, one split at a phrase: utterances go over with all they made, and each log keeps a line about it. Pure. */
import type { Draft, DraftEvent, DraftPart, Header } from '../../parser/contract/draft.ts';
import { stands, supersede, uncorrect, type Who } from './standing.ts';

/** The utterances named, with their items (typed corrections of them too), doubts, commands and hints. */
export function partOf(draft: Draft, utterances: readonly string[]): DraftPart {
  const ids = new Set(utterances);
  const items = draft.items.filter((i) => ids.has(i.item.evidence.utterance));
  const itemIds = new Set(items.map((i) => i.item.id));
  return {
    utterances: draft.utterances.filter((u) => ids.has(u.id)),
    items,
    doubts: draft.doubts.filter((d) => ids.has(d.doubt.utterance)),
    commands: draft.commands.filter((c) => ids.has(c.utterance)),
    hints: draft.hints.filter(
      (h) =>
        (h.item !== undefined && itemIds.has(h.item)) || utterances.some((u) => h.id.startsWith(u) && !/^\d/.test(h.id.slice(u.length))),
    ),
  };
}

/** The draft less the part; what only the part had corrected stands again. */
export function without(draft: Draft, part: DraftPart): Draft {
  const less = <T>(all: readonly T[], some: readonly T[]): T[] => all.filter((one) => !some.includes(one));
  return uncorrect(
    {
      ...draft,
      utterances: less(draft.utterances, part.utterances),
      items: less(draft.items, part.items),
      doubts: less(draft.doubts, part.doubts),
      commands: less(draft.commands, part.commands),
      hints: less(draft.hints, part.hints),
    },
    part.items.filter(stands),
  );
}

/** Appends the part; each utterance remembers whose journal holds its sound, and corrections hold again. */
export function withPart(draft: Draft, part: DraftPart, from: string, who: Who): Draft {
  const utterances = part.utterances.map(({ sound, ...u }) => ({ ...u, ...((sound ?? from) !== draft.id && { sound: sound ?? from }) }));
  const corrected = supersede(
    draft,
    part.items.flatMap((i) => (stands(i) && i.item.revises ? [i.item.revises] : [])),
    who,
  );
  return {
    ...corrected,
    utterances: [...draft.utterances, ...utterances],
    items: [...corrected.items, ...part.items],
    doubts: [...draft.doubts, ...part.doubts],
    commands: [...draft.commands, ...part.commands],
    hints: [...draft.hints, ...part.hints],
  };
}

/** Events for both logs when all that `from` heard goes to `into`. */
export function join(into: Draft, from: Draft, who: Who): { readonly into: readonly DraftEvent[]; readonly from: readonly DraftEvent[] } {
  return move(
    from,
    from.utterances.map((u) => u.id),
    into.id,
    who,
  );
}

/** Events for both logs when `utterance` and all after it become a draft of their own (`fresh`, its id). Null when there is no such utterance. */
export function split(
  draft: Draft,
  utterance: string,
  fresh: string,
  header: Partial<Header>,
  who: Who,
): { readonly into: readonly DraftEvent[]; readonly from: readonly DraftEvent[] } | null {
  const at = draft.utterances.findIndex((u) => u.id === utterance);
  if (at < 0) return null;
  const moved = move(
    draft,
    draft.utterances.slice(at).map((u) => u.id),
    fresh,
    who,
  );
  const opened: DraftEvent = { event: 'opened', header: { ...draft.header, horse: null, ...header }, ...who };
  return { ...moved, into: [opened, ...moved.into] };
}

function move(
  from: Draft,
  utterances: readonly string[],
  to: string,
  who: Who,
): { readonly into: readonly DraftEvent[]; readonly from: readonly DraftEvent[] } {
  if (utterances.length === 0) return { into: [], from: [] };
  return {
    into: [{ event: 'moved-in', from: from.id, part: partOf(from, utterances), ...who }],
    from: [{ event: 'moved-out', utterances: [...utterances], to, ...who }],
  };
}
