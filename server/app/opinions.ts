/**
 * The second reader's part: it reads finished phrases after the first has, one at a time and only with what the processor
 * has left, through the same grammar in the same context. What differs becomes a question; nothing of the first reading is changed.
 */
import { ownItems, type DraftEvent, type SecondHeard } from '../../parser/contract/draft.ts';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import type { Store } from '../records/index.ts';
import { contextOf } from '../session/context.ts';
import { compareReaders, readOf, sureOfBoth, type Compared } from '../session/readers.ts';
import { foldDraft } from '../session/reduce.ts';
import { RATE, type Engine } from '../speech/engine.ts';
import type { Journals } from './journals.ts';
import { now } from './now.ts';
import type { Read } from './understand.ts';

export interface Opinions {
  /** Queues a phrase of an exam that the first reader has read. */
  readonly ask: (exam: string, utterance: string) => void;
  /** Every phrase of an exam that the second reader has not read yet; resolves with the number of questions raised. */
  readonly whole: (exam: string) => Promise<number>;
  readonly idle: () => Promise<void>;
  readonly close: () => Promise<void>;
}
export interface Hands {
  readonly store: Pick<Store, 'events'>;
  readonly journals: Pick<Journals, 'view'>;
  readonly change: (exam: string, make: () => readonly DraftEvent[]) => Promise<unknown>;
  readonly read: Read;
  /** Told once, until it reads again or fails in another way: the program goes on with one reader. */
  readonly trouble: (error: unknown) => void;
}

/** The names of an exam, for the reader to expect. */
const namesIn = ({ horse, owner, yard }: ReturnType<typeof contextOf>['header']): readonly string[] =>
  [horse?.name, owner, yard].filter((name): name is string => !!name);

/** What the second reader made of each item of the first. */
function heardOf(items: ReturnType<Read>['items'], { agreed }: Pick<Compared, 'agreed'>, text: string): readonly SecondHeard[] {
  return items.map(({ id, evidence }): SecondHeard =>
    agreed.includes(id)
      ? { item: id, heard: 'same', text, ...(evidence.sure !== undefined ? { sure: sureOfBoth(evidence.sure) } : {}) }
      : { item: id, heard: 'not-this', text },
  );
}

export function openOpinions(second: Engine, { store, journals, change, read, trouble }: Hands): Opinions {
  let queue: Promise<unknown> = Promise.resolve();
  const done = new Set<string>();
  /** What was told and has not ceased since. */
  let told: string | undefined;
  let closed = false;

  /** @returns whether a question was raised */
  const compare = async (exam: string, utterance: string): Promise<boolean> => {
    if (closed) return false;
    const events = store.events(exam);
    const heardAt = events.findIndex((e) => e.event === 'heard' && e.phrase.id === utterance);
    const said = events.findLast((e) => e.event === 'said' && e.result.id === utterance);
    const heard = events[heardAt];
    if (heard?.event !== 'heard' || said?.event !== 'said' || heard.phrase.at === undefined || said.result.utterance.overOwnVoice)
      return false;
    const [from, to] = heard.phrase.at;
    const context = contextOf(foldDraft(exam, events.slice(0, heardAt)));
    const samples = await journals.view(said.result.utterance.sound ?? exam, (journal) =>
      journal.read(Math.round(from * RATE), Math.round(to * RATE)),
    );
    const { hypotheses } = await second.hear({ samples, from: Math.round(from * RATE) }, namesIn(context.header));
    if (hypotheses.length === 0) return false;
    const phrase: HeardPhrase = { ...heard.phrase, hypotheses, reader: 'second' };
    const other = read(phrase, context);
    const { doubts, ...compared } = compareReaders(
      said.result.utterance,
      readOf({ ...said.result, items: ownItems(said.result) }, heard.phrase.hypotheses[0]),
      readOf({ ...other, items: ownItems(other) }, hypotheses[0]),
      `${utterance}/second`,
    );
    const items = heardOf([...ownItems(said.result)], compared, other.text);
    // A confirmed record is only asked about: nothing is written beside its items.
    const confirmed = foldDraft(exam, events).state === 'confirmed';
    const made: DraftEvent[] = [
      ...(items.length > 0 && !confirmed ? [{ event: 'compared' as const, utterance, items: [...items], when: now() }] : []),
      ...doubts.map((doubt) => ({ event: 'asked' as const, doubt, when: now() })),
    ];
    if (made.length > 0) await change(exam, () => made);
    return doubts.length > 0;
  };
  const inTurn = (exam: string, utterance: string): Promise<boolean> => {
    if (done.has(utterance)) return Promise.resolve(false);
    done.add(utterance);
    const mine = queue.then(() => compare(exam, utterance));
    queue = mine.then(
      () => {
        told = undefined;
      },
      (error: unknown) => {
        done.delete(utterance);
        if (!closed && told !== String(error)) trouble(error);
        told = String(error);
      },
    );
    return mine;
  };

  return {
    ask: (exam, utterance) => {
      inTurn(exam, utterance).catch(() => undefined);
    },
    whole: async (exam) => {
      const utterances = store.events(exam).flatMap((e) => (e.event === 'heard' ? [e.phrase.id] : []));
      let raised = 0;
      for (const utterance of new Set(utterances)) if (await inTurn(exam, utterance)) raised += 1;
      return raised;
    },
    idle: () => queue.then(() => undefined),
    // What was not compared yet is left: the records wait for nobody, and a reread asks again.
    close: async () => {
      closed = true;
      await second.close();
      await queue;
    },
  };
}
