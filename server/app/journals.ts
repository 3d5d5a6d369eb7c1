/** The sound of every exam, each in a folder of its own below the data folder. */
import { join } from 'node:path';
import { eraseStretch } from '../audio/journalErase.ts';
import { eraseJournal, openJournal, viewJournal, type Journal, type JournalView } from '../audio/journal.ts';
import { RATE } from '../speech/engine.ts';
import { refusal } from '../http/refusal.ts';

export interface Journals {
  /** The exam's journal, opened for writing at the first call. */
  readonly open: (exam: string) => Promise<Journal>;
  readonly close: (exam: string) => Promise<void>;
  /** Reads with a view of its own, or with the open one. */
  readonly view: <T>(exam: string, use: (journal: JournalView) => Promise<T>) => Promise<T>;
  readonly erase: (exam: string, when: string) => Promise<void>;
  /** Silence over [from, to) seconds of an exam's sound; nobody may be writing it. */
  readonly eraseStretch: (exam: string, at: readonly [number, number]) => Promise<void>;
  readonly closeAll: () => Promise<void>;
}

/** Exam ids are our own; anything else never becomes a path. */
const examId = /^[0-9a-z-]{1,64}$/;

export function openJournals(dir: string): Journals {
  const opened = new Map<string, Promise<Journal>>();
  const folder = (exam: string): string => {
    if (!examId.test(exam)) throw refusal(404, 'missing', 'There is no such exam.');
    return join(dir, 'sound', exam);
  };
  const close = async (exam: string): Promise<void> => {
    const journal = opened.get(exam);
    opened.delete(exam);
    await (await journal)?.close();
  };
  return {
    open: (exam) => {
      const known = opened.get(exam) ?? openJournal(folder(exam));
      opened.set(exam, known);
      known.catch(() => opened.delete(exam));
      return known;
    },
    close,
    view: async (exam, use) => {
      const writing = opened.get(exam);
      if (writing) return use(await writing);
      const view = await viewJournal(folder(exam));
      try {
        return await use(view);
      } finally {
        await view.close();
      }
    },
    erase: async (exam, when) => {
      await close(exam);
      await eraseJournal(folder(exam), when);
    },
    eraseStretch: async (exam, [from, to]) => {
      await close(exam);
      await eraseStretch(folder(exam), Math.floor(from * RATE), Math.ceil(to * RATE));
    },
    closeAll: async () => {
      await Promise.all([...opened.keys()].map(close));
    },
  };
}
