/**
 * Joins the parts, and is the only file that does (with its folder app/):
 *
 *   sound --journal--> segmenter --hear--> hypotheses --read--> items --apply--> draft --confirm--> record
 */
import type { Readable } from 'node:stream';
import type { Draft, Header, ParseResult } from '../parser/contract/draft.ts';
import type { Item } from '../parser/contract/item.ts';
import type { FromServer, UploadLine } from '../parser/contract/wire.ts';
import type { HeardPhrase } from '../parser/contract/word.ts';
import { labelOf, say } from '../parser/index.ts';
import { earOf, wakingEar, type Ear } from './app/ear.ts';
import { eraseExam, eraseSound } from './app/erase.ts';
import { openExams, noHeader } from './app/exams.ts';
import { expectedNames, expecting } from './app/expected.ts';
import { openJournals } from './app/journals.ts';
import { language } from './app/language.ts';
import { openLine } from './app/line.ts';
import { openListening } from './app/listening.ts';
import { openOpinions, type Opinions } from './app/opinions.ts';
import { freshId, now } from './app/now.ts';
import { inWords } from './app/plain.ts';
import { hearKept, hearOnly, opened, type Notice } from './app/recorded.ts';
import { openSittings, type Sittings } from './app/sittings.ts';
import { goesBefore } from './app/turns.ts';
import { read } from './app/understand.ts';
import type { Doors } from './http/doors.ts';
import { openStore, type Store } from './records/index.ts';
import { cautionsFor, exportExam, ownerPage, vetLetter } from './report/index.ts';
import { coverageOf, leftParts } from './session/coverage.ts';
import { openLive } from './session/live.ts';
import { applyEvent, emptyDraft } from './session/reduce.ts';
import { stands } from './session/standing.ts';
import type { Engine } from './speech/engine.ts';
import { openEngine } from './speech/moonshine/index.ts';
import { ensureWeights, notLoaded, type WeightsProgress } from './speech/weights.ts';

export { asRefusal } from './app/plain.ts';
export { exportExam, paperStyle } from './report/index.ts';
export interface Hearing {
  readonly plainEar?: boolean;
  /** Hear with the second reader alone, for comparison. */ readonly engine?: Engine;
  readonly weights?: string;
  readonly onProgress?: (progress: WeightsProgress) => void;
}

/** The words by which an item is found: its labels and its sentence. */
const searchWords = (item: Item): string =>
  [item.kind === 'finding' ? labelOf(item.condition) : item.kind === 'treatment' ? labelOf(item.procedure) : '', say(item)]
    .join(' ')
    .trim();
/** @throws StoreError; `write: false` reads beside a running program */
export const openBook = (dataDir: string, write: boolean): Store => openStore(dataDir, { write, words: searchWords });

/** Readings that the ear keeps open at a time. */
const beam = 6;

/**
 * The embedded ear, its weights checked byte for byte, its recogniser still being loaded.
 * @throws WeightsError when its weights are not there and cannot be fetched; `waking` rejects with one when they cannot be loaded
 */
export async function wakeEar({ plainEar = false, weights, engine, onProgress }: Hearing = {}): Promise<Ear> {
  const paths = await ensureWeights({ plainEar, ...(weights !== undefined && { from: weights }), ...(onProgress && { onProgress }) });
  if (engine) return earOf(engine, paths.vad);
  const opened = openEngine({ weightsDir: paths.dir, plainEar, width: plainEar ? 1 : beam }).catch((cause: unknown) => {
    throw notLoaded(paths.dir, cause);
  });
  return wakingEar(
    paths.tradeDecoder ? 'moonshine-tiny, trade words' : 'moonshine-tiny',
    paths.vad,
    opened,
    plainEar ? undefined : language,
  );
}
/** The same, once it can hear. */
export async function openEar(hearing: Hearing = {}): Promise<Ear> {
  const ear = await wakeEar(hearing);
  await ear.waking;
  return ear;
}

/** A second reader, where one is installed, and who is told when it fails. */
export interface SecondEar {
  readonly second?: Engine | undefined;
  readonly onSecondTrouble?: (error: unknown) => void;
}

export interface App {
  readonly doors: Doors;
  /** Hears a recording into the records; `each` sees what the page would see. @returns the exams made */
  readonly hearFile: (
    source: string | Readable,
    header: Partial<Header>,
    each: (message: FromServer) => void,
    notice: (notice: Notice) => void,
  ) => Promise<readonly string[]>;
  /** Reads what an earlier run left unread in the drafts' journals. */
  readonly readLeftovers: () => Promise<void>;
  /** Lets the second reader read a whole exam. @returns the number of questions raised; null where there is one reader */
  readonly rereadBySecond: (exam: string) => Promise<number | null>;
  readonly close: () => Promise<void>;
}

const standing = (draft: Draft): readonly Item[] => draft.items.filter(stands).map(({ item }) => item);

/** Opens one data folder with an ear. */
export function openApp(dataDir: string, anyEar: Ear, { second, onSecondTrouble = () => undefined }: SecondEar = {}): App {
  const store = openBook(dataDir, true);
  const journals = openJournals(dataDir);
  const ear = expecting(second ? goesBefore(anyEar, second) : anyEar, (exam) =>
    expectedNames(sittings.draft(exam).header, { exams: store.exams(), horses: store.horses() }),
  );
  // A question raised by the second reader is told like any other change; with one reader nothing is asked.
  const sittings: Sittings = openSittings(store, journals, ear, read, (exam, utterance) => opinions?.ask(exam, utterance));
  const opinions: Opinions | undefined =
    second && openOpinions(second, { store, journals, read, change: sittings.change, trouble: onSecondTrouble });
  const exams = openExams(store, journals, sittings, ear);

  async function* upload(source: Readable): ReturnType<Doors['upload']> {
    let noticed: readonly Notice[] = [];
    const told = (line: UploadLine): UploadLine => {
      const notices = noticed.map(({ code, message }) => ({ code, message }));
      noticed = [];
      return notices.length ? { ...line, notices } : line;
    };
    yield { stage: 'opening' };
    const sound = await opened(source, (notice) => {
      noticed = [...noticed, notice];
    }).catch((error: unknown) => inWords(error));
    if ('message' in sound) return yield { stage: 'trouble', error: sound };
    const { id } = exams.open({});
    const { sitting } = await sittings.of(id);
    try {
      for await (const line of hearKept(sound, sitting, journals)) yield told(line);
      yield told({ stage: 'ready', exams: [...sitting.live.exams()] });
    } catch (error) {
      // Nothing of a file in which nothing was heard stays; what was read of one that broke off is a draft.
      if (sitting.live.draft().utterances.length === 0) await exams.erase(id, 'exam');
      yield { stage: 'trouble', error: inWords(error) };
    } finally {
      await sittings.letGo(sitting.live.draft().id);
    }
  }

  const doors: Doors = {
    ...exams,
    exams: () => store.exams(),
    revision: (id, n) => store.revision(id, n),
    horses: () => store.horses(),
    compare: (horse) => store.compare(horse),
    due: () => store.due(),
    search: (query) => store.search(query),
    upload: (sound) => upload(sound),
    exam: (id) => {
      const { draft } = exams.exam(id);
      return { draft, cautions: cautionsFor(standing(draft)) };
    },
    export: (id) => exportExam(exams.exam(id).draft),
    report: (id, to) => {
      const { draft } = exams.exam(id);
      const sheet = { draft: draft.state === 'draft', left: leftParts(coverageOf(draft)), style: '/paper.css' };
      return to === 'owner' ? ownerPage(exportExam(draft), sheet) : vetLetter(exportExam(draft), sheet);
    },
    line: (send) => openLine(sittings, journals, ({ header = {} }) => exams.open(header).id, send),
  };
  return {
    doors,
    hearFile: async (source, header, each, notice) => {
      const sound = await opened(source, notice);
      const { id } = exams.open(header);
      const seat = await sittings.of(id);
      seat.watchers.add(each);
      for await (const line of hearKept(sound, seat.sitting, journals)) void line;
      seat.watchers.delete(each);
      await sittings.letGo(seat.sitting.live.draft().id);
      return seat.sitting.live.exams();
    },
    readLeftovers: async () => {
      for (const row of store.exams())
        if (row.state === 'draft' && !row.erased && !store.soundErased(row.id)) {
          await sittings.of(row.id);
          await sittings.letGo(row.id);
        }
    },
    rereadBySecond: async (exam) => (opinions === undefined ? null : opinions.whole(exam)),
    close: async () => {
      await sittings.closeAll();
      await opinions?.close();
      store.close();
      await ear.close();
    },
  };
}

/** One phrase of a recording that is only looked at. */
export interface Understood {
  readonly phrase: HeardPhrase;
  readonly result: ParseResult;
  readonly exam: string;
}

/** Hears a recording and keeps nothing. `each` is called phrase by phrase. @throws AudioError */
export async function lookAt(
  file: string,
  ear: Ear,
  header: Partial<Header>,
  each: (understood: Understood) => void,
  notice: (notice: Notice) => void,
): Promise<void> {
  const start = applyEvent(emptyDraft(freshId()), {
    event: 'opened',
    header: { ...noHeader, startedAt: now(), ...header },
    by: 'file',
    when: now(),
  });
  const drafts = new Map([[start.id, start]]);
  const live = openLive(
    {
      read: (phrase, context) => {
        const result = read(phrase, context);
        each({ phrase, result, exam: live.draft().id });
        return result;
      },
      append: (changes) => changes.forEach(({ exam, draft }) => drafts.set(exam, draft)),
      load: (exam) => drafts.get(exam) ?? start,
      publish: () => undefined,
      say,
      trouble: inWords,
      now,
      freshId,
      tick: () => performance.now(),
    },
    start,
  );
  await hearOnly(
    file,
    live,
    openListening(live, ear, await ear.segmenter(), () => undefined, now),
    notice,
  );
}

/** Erases for good in a data folder that no running program holds. @returns the exams erased */
export async function eraseIn(
  dataDir: string,
  which: { readonly horse: string } | { readonly exam: string; readonly what: 'sound' | 'exam' },
): Promise<readonly string[]> {
  const store = openBook(dataDir, true);
  const journals = openJournals(dataDir);
  try {
    const gone = 'horse' in which ? store.examsOf(which.horse) : [which.exam];
    for (const exam of gone) await ('exam' in which && which.what === 'sound' ? eraseSound : eraseExam)(store, journals, exam, now());
    return gone;
  } finally {
    store.close();
  }
}
