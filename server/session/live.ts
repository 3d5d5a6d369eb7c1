/**
 * The live session: phrases in order, each heard, read, written and told; commands answered; horses changed.
 * Everything it touches is handed in.
 */
import type { Command } from '../../parser/contract/doubt.ts';
import type { CommandId } from '../../parser/lexicon/commands.ts';
import type { Context, Draft, DraftEvent, Header, ParseResult } from '../../parser/contract/draft.ts';
import type { ApiError, FromServer } from '../../parser/contract/wire.ts';
import type { HeardPhrase, Span } from '../../parser/contract/word.ts';
import { answered } from './answered.ts';
import { answerTo, type Say } from './answers.ts';
import { changes } from './changed.ts';
import { contextOf } from './context.ts';
import { join } from './move.ts';
import { lastTaken } from './obey.ts';
import { allOwn, overOwn, withOwn, withoutOwn, type OwnVoice } from './ownWordsOut.ts';
import { applyEvent, emptyDraft } from './reduce.ts';

/** One log's share of a step; `fresh` when the exam is made by it. */
export interface Change {
  readonly exam: string;
  readonly events: readonly DraftEvent[];
  readonly draft: Draft;
  readonly fresh?: boolean;
}
export interface Hands {
  readonly read: (phrase: HeardPhrase, context: Context) => ParseResult;
  /** On disk, all of it or none, before it returns. */
  readonly append: (changes: readonly Change[]) => void;
  /** An exam's draft as it is on disk now. */
  readonly load: (exam: string) => Draft;
  readonly publish: (message: FromServer) => void;
  readonly say: Say;
  /** What a person is told of an error: what happened, what is safe, what to do. */
  readonly trouble: (error: unknown) => ApiError;
  /** ISO wall time; an unused exam id. */
  readonly now: () => string;
  readonly freshId: () => string;
  /** Milliseconds that only go up. */
  readonly tick: () => number;
}
export interface Sounding {
  readonly at?: Span | undefined;
  /** The exam whose journal the sound lies in, when it is not the one listened to now. */
  readonly journal?: string;
  /** Sentences our own voice said while this was heard, and whether it sounded from end to end. */
  readonly ownVoice?: OwnVoice;
}

export interface Live {
  readonly draft: () => Draft;
  /** Exams of this sitting, in order. */
  readonly exams: () => readonly string[];
  /** Queues a stretch of sound; resolves when it is read and told. What cannot be heard stays unread, and that is told. */
  readonly phrase: (hear: () => Promise<HeardPhrase>, sounding?: Sounding) => Promise<void>;
  /** A command by touch. */
  readonly command: (command: CommandId, by: string, name?: string) => Promise<void>;
  /** Events from elsewhere (acts, gaps, questions), in their place in the queue. `make` sees the draft as it stands then. */
  readonly change: (make: (draft: Draft) => readonly DraftEvent[]) => Promise<Draft>;
  /** Resolves when all that was queued is done. */
  readonly idle: () => Promise<void>;
}

export function openLive(hands: Hands, start: Draft): Live {
  let draft = start;
  /** The exam before a change of horse that can still be undone. */
  let previous: string | null = start.follows ?? null;
  const sitting = [start.id];
  let waiting: readonly Span[] = [];
  let queue: Promise<unknown> = Promise.resolve();

  const inTurn = <T>(work: () => T | Promise<T>): Promise<T> => {
    const done = queue.then(work);
    queue = done.catch(() => undefined);
    return done;
  };
  /** What the page sees: sound still in the queue is unread too. */
  const shown = (d: Draft): Draft => (waiting.length ? { ...d, unread: [...d.unread, ...waiting] } : d);
  const tell = (before: Draft, after: Draft): void => hands.publish(changes(before, after));
  const write = (events: readonly DraftEvent[]): void => {
    if (events.length === 0) return;
    const before = shown(draft);
    const after = events.reduce(applyEvent, draft);
    hands.append([{ exam: draft.id, events, draft: after }]);
    draft = after;
    tell(before, shown(draft));
  };
  const wait = (next: readonly Span[]): void => {
    const before = shown(draft);
    waiting = next;
    tell(before, shown(draft));
  };

  const nextHorse = (name: string | undefined, by: string): void => {
    const when = hands.now();
    const header: Header = { ...draft.header, horse: name ? { name } : null, startedAt: when };
    const opened: DraftEvent = { event: 'opened', header, follows: draft.id, by, when };
    const fresh = applyEvent(emptyDraft(hands.freshId()), opened);
    hands.append([{ exam: fresh.id, events: [opened], draft: fresh, fresh: true }]);
    previous = draft.id;
    draft = fresh;
    sitting.push(fresh.id);
    hands.publish({ type: 'draft', draft: shown(draft) });
  };
  /** Undoes a change of horse: all that was heard since goes back to the horse before. */
  const horseBefore = (into: Draft, by: string): string => {
    const who = { by, when: hands.now() };
    const moved = join(into, draft, who);
    const unnamed: DraftEvent = { event: 'header', header: { horse: null }, ...who };
    const left = [...moved.from, unnamed];
    const joined = moved.into.reduce(applyEvent, into);
    hands.append([
      { exam: into.id, events: moved.into, draft: joined },
      { exam: draft.id, events: left, draft: left.reduce(applyEvent, draft) },
    ]);
    draft = joined;
    previous = null;
    sitting.push(into.id);
    hands.publish({ type: 'draft', draft: shown(draft) });
    return `Back to ${into.header.horse?.name ?? 'the horse before'}.`;
  };

  /** An exam that was confirmed or erased meanwhile takes nothing in. */
  const undoChange = ({ command }: Command, exam: string, by: string): void => {
    const answer = (say: string, tone: 'done' | 'unsure'): void => hands.publish({ type: 'answer', command, say, tone });
    try {
      const into = hands.load(exam);
      if (into.state === 'confirmed')
        answer(`${into.header.horse?.name ?? 'The horse before'} is confirmed already, so nothing was changed.`, 'unsure');
      else answer(horseBefore(into, by), 'done');
    } catch (error) {
      hands.publish({ type: 'trouble', error: hands.trouble(error) });
    }
  };

  /** `before`: the draft ahead of the command. */
  const follow = (command: Command, before: Draft, by: string): void => {
    const nothing = command.command === 'bring-back' && lastTaken(before).length === 0 && !command.targets?.length;
    if (nothing && previous) return undoChange(command, previous, by);
    const answer = answerTo(command, before, draft, hands.say);
    if (command.command === 'next-horse') nextHorse(command.name, by);
    hands.publish(answer);
  };

  /** Read while our own voice sounded: without its words, and asked about where it sounded throughout. */
  const readOver = (phrase: HeardPhrase, voice: OwnVoice): ParseResult => {
    const others = withoutOwn(phrase, voice);
    if (others === null) return overOwn(hands.read(phrase, contextOf(draft)), voice);
    return others.hypotheses.length
      ? overOwn(withOwn(hands.read(others, contextOf(draft)), phrase, voice), voice)
      : allOwn(phrase, draft.carry);
  };

  const take = (phrase: HeardPhrase, { journal, ownVoice }: Sounding): void => {
    const before = draft;
    const read = ownVoice?.spoken.length ? readOver(phrase, ownVoice) : hands.read(phrase, contextOf(draft));
    // While paused only the word to go on is listened to; nothing else is kept, not even that it was said.
    if (draft.paused && !read.commands.some((c) => c.command === 'resume')) return;
    const meant = answered(draft, read);
    const result: ParseResult = journal && journal !== draft.id ? { ...meant, utterance: { ...meant.utterance, sound: journal } } : meant;
    const when = hands.now();
    write([
      { event: 'heard', phrase, when },
      { event: 'said', result, when },
    ]);
    for (const command of result.commands) follow(command, before, draft.header.examiner ?? 'voice');
  };

  return {
    draft: () => draft,
    exams: () => [...new Set(sitting)],
    phrase: (hear, sounding = {}) => {
      const { at } = sounding;
      if (at && !draft.paused && !waiting.some(([start]) => start === at[0])) wait([...waiting, at]);
      return inTurn(async () => {
        const from = hands.tick();
        hands.publish({ type: 'hearing', state: 'reading' });
        try {
          take(await hear(), sounding);
          if (at) wait(waiting.filter(([start]) => start !== at[0]));
        } catch (error) {
          hands.publish({ type: 'trouble', error: hands.trouble(error) });
          throw error;
        } finally {
          hands.publish({ type: 'hearing', state: draft.paused ? 'paused' : 'listening', tookMs: hands.tick() - from });
        }
      });
    },
    command: (command, by, name) =>
      inTurn(() => {
        const before = draft;
        const made: Command = { id: `${draft.id}:touch${draft.seq + 1}`, command, utterance: '', words: '', ...(name && { name }) };
        write([{ event: 'commanded', command: made, by, when: hands.now() }]);
        follow(made, before, by);
      }),
    change: (make) =>
      inTurn(() => {
        write(make(draft));
        return draft;
      }),
    idle: () => queue.then(() => undefined),
  };
}
