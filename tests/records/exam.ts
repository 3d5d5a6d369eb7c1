/** Confirmed exams for the store, made from hand-written phrases. */
import type { Draft, DraftEvent } from '../../parser/contract/draft.ts';
import { Exam } from '../../parser/contract/record.ts';
import type { Store } from '../../server/records/index.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { by, header, when } from '../session/made.ts';

export const recordOf = (draft: Draft): Exam =>
  Exam.parse({
    ...draft.header,
    id: draft.id,
    utterances: draft.utterances,
    commands: draft.commands,
    doubts: draft.doubts.map((d) => d.doubt),
    hints: draft.hints,
    revisions: draft.revisions,
    items: draft.items.filter((i) => i.state === 'open' || i.state === 'kept').map((i) => i.item),
  });
/** Appends as the program does: fold, then write both. */
export function add(store: Store, exam: string, ...events: DraftEvent[]): Draft {
  const draft = events.reduce(applyEvent, foldDraft(exam, store.events(exam)));
  store.append(exam, events, draft);
  return draft;
}
export function confirm(store: Store, exam: string, at = when): Draft {
  const event: DraftEvent = { event: 'confirmed', lexicon: '1', by, when: at };
  const draft = applyEvent(foldDraft(exam, store.events(exam)), event);
  store.confirm(exam, [event], draft, recordOf(draft));
  return draft;
}
export function confirmedExam(store: Store, id: string, horse: string | null, startedAt: string, ...events: DraftEvent[]): Draft {
  store.createExam(id, header(horse, startedAt), by, startedAt);
  add(store, id, ...events);
  return confirm(store, id, startedAt);
}
