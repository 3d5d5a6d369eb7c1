/** One message of the server onto a draft, and what stands in it. Pure: no signal, no page. */
import type { Draft, DraftDoubt, DraftItem } from '../parser/contract/draft.ts';
import type { FromServer } from '../parser/contract/wire.ts';

const upsert = <T>(old: readonly T[], parts: readonly T[] | undefined, id: (part: T) => string): T[] => {
  if (!parts?.length) return old as T[];
  const next = new Map(old.map((part) => [id(part), part]));
  for (const part of parts) next.set(id(part), part);
  return [...next.values()];
};

/** A message for another exam, or older than the draft, changes nothing. */
export function fold(draft: Draft | null, message: FromServer): Draft | null {
  if (message.type === 'draft') return message.draft;
  if (message.type !== 'changed' || !draft || message.exam !== draft.id || message.seq < draft.seq) return draft;
  const { utterances, items, doubts, commands, hints, ...whole } = message.parts;
  return {
    ...draft,
    ...whole,
    seq: message.seq,
    utterances: upsert(draft.utterances, utterances, (u) => u.id),
    items: upsert(draft.items, items, (i) => i.item.id),
    doubts: upsert(draft.doubts, doubts, (d) => d.doubt.id),
    commands: upsert(draft.commands, commands, (c) => c.id),
    hints: upsert(draft.hints, hints, (h) => h.id),
  };
}

export const isOpen = (d: DraftDoubt): boolean => !d.settled && d.doubt.state === 'open';
/** The question to ask now: of the phrase that was asked about last, one between readings before any other. The server takes a spoken answer for this one alone. */
export const askedNow = (open: readonly DraftDoubt[]): DraftDoubt | undefined => {
  const latest = open.filter(({ doubt }) => doubt.utterance === open.at(-1)?.doubt.utterance);
  return latest.findLast(({ doubt }) => (doubt.readings?.length ?? 0) > 1) ?? latest.at(-1);
};
/** An item that counts: neither struck nor replaced by a correction. */
export const stands = (i: DraftItem): boolean => i.state !== 'struck' && i.state !== 'revised';
