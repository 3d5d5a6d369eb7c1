/** The records of one data folder. The only room with SQL. */
import { chmodSync, closeSync, existsSync, openSync, renameSync, rmSync } from 'node:fs';
import type { Draft, DraftEvent, Header } from '../../parser/contract/draft.ts';
import type { Exam } from '../../parser/contract/record.ts';
import type { Comparison, DueRow, ExamRow, HorseRow, SearchHit, SearchQuery } from '../../parser/contract/wire.ts';
import { revision, writeRevision, type ItemWords } from './confirm.ts';
import { emptyLog, eraseExam, eraseSound, soundElsewhere, type Stretch } from './erase.ts';
import { append, createExam, events, examRows, examsOf } from './events.ts';
import { openDatabase, prepareFolder, takeLock } from './folder.ts';
import { compare, due, horses } from './horses.ts';
import { migrate, newestVersion } from './migrations.ts';
import { search } from './search.ts';
import { asStoreError, plainly, StoreError } from './storeError.ts';

export { StoreError, type StoreErrorCode } from './storeError.ts';

export interface Store {
  /** Opens a draft with its first event. @throws StoreError `exists` */
  readonly createExam: (id: string, header: Header, by: string, when: string) => void;
  /** On disk before it returns, all of it or none. `draft` is what the log folds to with these events. @throws StoreError `stale`, `erased`, `disk-full` */
  readonly append: (exam: string, events: readonly DraftEvent[], draft: Draft) => void;
  /** Several logs in one step (a join, a split); all of it or none. `fresh` exams are made by their first event. */
  readonly appendAll: (
    changes: readonly { readonly exam: string; readonly events: readonly DraftEvent[]; readonly draft: Draft; readonly fresh?: boolean }[],
  ) => void;
  /** The whole log, checked. @throws StoreError `missing`, `erased`, `damaged` */
  readonly events: (exam: string) => readonly DraftEvent[];
  readonly exams: () => readonly ExamRow[];
  /** Appends the `confirmed` event, writes the revision and makes it searchable, in one step. */
  readonly confirm: (exam: string, events: readonly DraftEvent[], draft: Draft, record: Exam) => void;
  readonly revision: (exam: string, n: number) => Exam;
  readonly search: (query: SearchQuery) => readonly SearchHit[];
  readonly horses: () => readonly HorseRow[];
  readonly compare: (horse: string) => Comparison;
  readonly due: () => readonly DueRow[];
  readonly eraseSound: (exam: string) => void;
  /** To be asked before an exam is erased: what of its sound lies in other exams' journals. */
  readonly soundElsewhere: (exam: string) => readonly Stretch[];
  readonly eraseExam: (exam: string, when: string) => void;
  /** Ids of a horse's exams, drafts too, that are not erased. */
  readonly examsOf: (horse: string) => readonly string[];
  /** Whether the exam's sound was erased, or the exam. */
  readonly soundErased: (exam: string) => boolean;
  /** A whole copy of the records (not of the sound) in one file (0600) that must not exist yet. */
  readonly backup: (file: string) => Promise<void>;
  readonly close: () => void;
}

const idsAsWords: ItemWords = (item) =>
  Object.values(item)
    .filter((v) => typeof v === 'string')
    .join(' ')
    .replaceAll('-', ' ');

/**
 * Opens the records in `dir`, made if absent (folder 0700, files 0600). One live writer a folder.
 * `write: false` reads beside a live writer. `words` names items for the full-text search. `maxPages` bounds the file (pages of 4096 bytes).
 * @throws StoreError `locked`, `newer`, `damaged`, `cannot-write`
 */
export function openStore(
  dir: string,
  { write = true, words = idsAsWords, maxPages }: { readonly write?: boolean; readonly words?: ItemWords; readonly maxPages?: number } = {},
): Store {
  if (write) prepareFolder(dir);
  const release = write ? takeLock(dir) : () => undefined;
  try {
    const db = openDatabase(dir, write);
    if (write) migrate(db);
    else if (db.pragma('user_version', { simple: true }) !== newestVersion)
      throw new StoreError('newer', 'These records were written by another version of this program. Start that one once, then try again.');
    if (maxPages !== undefined) db.pragma(`max_page_count = ${Math.floor(maxPages)}`);
    /** One transaction, on disk or not at all. */
    const whole = <T>(work: () => T): T => asStoreError(() => db.transaction(work).immediate());
    const erased = <T>(work: () => T): T => {
      const done = whole(work);
      emptyLog(db);
      return done;
    };
    return {
      createExam: (id, header, by, when) => whole(() => createExam(db, id, header, by, when)),
      append: (exam, list, draft) => whole(() => append(db, exam, list, draft)),
      appendAll: (changes) =>
        whole(() =>
          changes.forEach(({ exam, events: list, draft, fresh }) => {
            const [first, ...rest] = list;
            if (!fresh) append(db, exam, list, draft);
            else if (first?.event === 'opened') {
              createExam(db, exam, first.header, first.by, first.when);
              append(db, exam, rest, draft);
            } else throw new TypeError('A fresh exam begins with `opened`.');
          }),
        ),
      events: (exam) => asStoreError(() => events(db, exam)),
      exams: () => asStoreError(() => examRows(db)),
      confirm: (exam, list, draft, record) =>
        whole(() => {
          append(db, exam, list, draft);
          writeRevision(db, draft, record, words);
        }),
      revision: (exam, n) => asStoreError(() => revision(db, exam, n)),
      search: (query) => asStoreError(() => search(db, query)),
      horses: () => asStoreError(() => horses(db)),
      compare: (horse) => asStoreError(() => compare(db, horse)),
      due: () => asStoreError(() => due(db)),
      eraseSound: (exam) => whole(() => eraseSound(db, exam)),
      soundElsewhere: (exam) => asStoreError(() => soundElsewhere(db, exam)),
      eraseExam: (exam, when) => erased(() => eraseExam(db, exam, when)),
      examsOf: (horse) => asStoreError(() => examsOf(db, horse)),
      soundErased: (exam) =>
        (db.prepare('SELECT sound_erased AS gone FROM exams WHERE id = ?').get(exam) as { gone: number } | undefined)?.gone === 1,
      backup: async (file) => {
        if (existsSync(file))
          throw new StoreError('exists', 'A file of that name exists already and was left untouched. Choose another name.');
        const part = `${file}.part`;
        try {
          closeSync(openSync(part, 'w', 0o600));
          await db.backup(part);
          chmodSync(part, 0o600);
          renameSync(part, file);
        } catch (error) {
          rmSync(part, { force: true });
          throw plainly(error);
        }
      },
      close: () => {
        db.close();
        release();
      },
    };
  } catch (error) {
    release();
    throw plainly(error);
  }
}
