/** The exams that are being listened to, each with the pages that look on. One live session an exam. */
import type { Draft, DraftEvent } from '../../parser/contract/draft.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import { say } from '../../parser/index.ts';
import type { Store } from '../records/index.ts';
import { openLive, type Hands } from '../session/live.ts';
import { applyEvent, foldDraft } from '../session/reduce.ts';
import type { Ear } from './ear.ts';
import type { Journals } from './journals.ts';
import { freshId, now } from './now.ts';
import { inWords } from './plain.ts';
import { recordOf } from './record.ts';
import { readTail, unreadTail } from './rehear.ts';
import { openSitting, type Sitting } from './sitting.ts';
import type { Read } from './understand.ts';

export interface Seat {
  readonly sitting: Sitting;
  readonly watchers: Set<(message: FromServer) => void>;
}
export interface Sittings {
  /** The exam's sitting, opened at need; what an earlier run left unread is read first. */
  readonly of: (exam: string) => Promise<Seat>;
  /** The exam as it stands; also while it is listened to. */
  readonly draft: (exam: string) => Draft;
  /** In its place in the queue of the sitting that is on, or straight to the log. */
  readonly change: (exam: string, make: (draft: Draft) => readonly DraftEvent[]) => Promise<Draft>;
  /** Ends a sitting that nobody looks on; false while somebody does. */
  readonly letGo: (exam: string) => Promise<boolean>;
  readonly closeAll: () => Promise<void>;
}

/** Events to the log; a confirmation also makes the record. */
const keepIn =
  (store: Store): Hands['append'] =>
  (changes) => {
    const [only] = changes;
    if (changes.length === 1 && only?.events.some(({ event }) => event === 'confirmed'))
      store.confirm(only.exam, only.events, only.draft, recordOf(only.draft));
    else store.appendAll(changes);
  };

/** @param onRead told of every phrase once it is read and on disk */
export function openSittings(
  store: Store,
  journals: Journals,
  ear: Ear,
  read: Read,
  onRead: (exam: string, utterance: string) => void = () => undefined,
): Sittings {
  const seats = new Map<string, Promise<Seat>>();
  const lives = new Map<string, Seat>();
  const append = keepIn(store);
  const load = (exam: string): Draft => foldDraft(exam, store.events(exam));

  const open = async (exam: string): Promise<Seat> => {
    const watchers: Seat['watchers'] = new Set();
    let at = exam;
    const publish = (message: FromServer): void => {
      if (message.type === 'draft' && message.draft.id !== at) {
        seats.delete(at);
        lives.delete(at);
        at = message.draft.id;
        seats.set(at, Promise.resolve(seat));
        lives.set(at, seat);
      }
      if (message.type === 'changed') for (const { id, at: spoken } of message.parts.utterances ?? []) if (spoken) onRead(message.exam, id);
      for (const send of watchers) send(message);
    };
    const live = openLive({ read, append, load, publish, say, trouble: inWords, now, freshId, tick: () => performance.now() }, load(exam));
    const seat: Seat = { sitting: await openSitting(live, ear, journals, publish, now), watchers };
    const tail = await unreadTail(live.draft(), journals);
    if (tail) await readTail(live, tail, ear, journals);
    lives.set(exam, seat);
    return seat;
  };
  const close = async (exam: string): Promise<void> => {
    const seat = await seats.get(exam);
    await seat?.sitting.settle();
    seats.delete(exam);
    lives.delete(exam);
    for (const one of seat?.sitting.live.exams() ?? []) await journals.close(one);
  };

  return {
    of: (exam) => {
      const seat = seats.get(exam) ?? open(exam);
      seats.set(exam, seat);
      seat.catch(() => seats.delete(exam));
      return seat;
    },
    draft: (exam) => lives.get(exam)?.sitting.live.draft() ?? load(exam),
    change: async (exam, make) => {
      const seat = await seats.get(exam);
      if (seat) return seat.sitting.live.change(make);
      const draft = load(exam);
      const events = make(draft);
      const after = events.reduce(applyEvent, draft);
      if (events.length) append([{ exam, events, draft: after }]);
      return after;
    },
    letGo: async (exam) => {
      const seat = await seats.get(exam);
      if (seat?.watchers.size) return false;
      await close(exam);
      return true;
    },
    closeAll: async () => {
      await Promise.all([...seats.keys()].map(close));
      await journals.closeAll();
    },
  };
}
