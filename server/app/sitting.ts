/** One exam after another at one microphone: sound to the journal, then to the ear. */
import type { DraftEvent } from '../../parser/contract/draft.ts';
import type { FromServer, HearingState } from '../../parser/contract/wire.ts';
import type { Journal } from '../audio/journal.ts';
import type { Chunk } from '../http/doors.ts';
import type { Live } from '../session/live.ts';
import { RATE } from '../speech/engine.ts';
import type { Ear } from './ear.ts';
import type { Journals } from './journals.ts';
import { openListening } from './listening.ts';

export interface Sitting {
  readonly live: Live;
  readonly state: () => HearingState;
  /**
   * `first`: the first chunk since its sender named the epoch; only there a jump in numbers means that sound is lost for good.
   * Resolves true once the chunk is on the disk, false when by then another exam is on: its sender sends it again, to that one.
   */
  readonly sound: (chunk: Chunk, first: boolean) => Promise<boolean>;
  /** Our own voice begins to say this. */
  readonly said: (sentence: string) => void;
  /** Ends what is being said and waits until all is read. */
  readonly settle: () => Promise<void>;
}

/** How many chunks the sender no longer has: numbers between the one that was due and the one that came. */
const lostBefore = (due: { readonly epoch: number; readonly sequence: number }, { epoch, sequence }: Chunk): number =>
  Math.max(0, epoch === due.epoch ? sequence - due.sequence : epoch > due.epoch ? sequence : 0);

/** A stretch longer than this is no break in an exam: a clock was set, or the draft was taken up on another day. */
const longestAway = 12 * 3600;
/**
 * Samples during which nothing was listened to between two epochs: each bears the second of the page's clock in which it began, and the
 * journal knows how much of the older one came. Null where `chunk` opens no new epoch of this journal. Right to about a second.
 */
function awayBefore(journal: Journal, { epoch }: Chunk): number | null {
  const before = journal.expected().epoch;
  if (journal.length() === 0 || epoch <= before) return null;
  const came = journal.parts().reduce((sum, part) => sum + (part.epoch === before ? part.samples : 0), 0);
  const away = (epoch - before) * RATE - came;
  return away > 0 && away < longestAway * RATE ? away : 0;
}

/** Sound in a pause: its length stays on the exam's clock, it is only listened to for the word to go on. */
async function notKept(journal: Journal, { epoch, sequence, samples }: Chunk): Promise<{ at: number; duplicate: boolean }> {
  const due = journal.expected();
  const at = journal.length();
  if (epoch === due.epoch && sequence < due.sequence) return { at, duplicate: true };
  await journal.gap({ kind: 'pause', samples: samples.length, epoch, next: sequence + 1 });
  return { at, duplicate: false };
}

export async function openSitting(
  live: Live,
  ear: Ear,
  journals: Journals,
  publish: (message: FromServer) => void,
  now: () => string,
): Promise<Sitting> {
  const listening = openListening(live, ear, await ear.segmenter(), publish, now);
  /** Where the pause that is on began, in samples of the exam's journal. */
  let pausedAt: number | null = null;
  /** The exam whose sound came last: after a change of horse nothing is missing, it lies in the other journal. */
  let latest: string | null = null;
  /** Settled when every chunk so far is written; and what a chunk waits for: the first of an epoch for all before it, those behind it for the same. */
  let inFlight: Promise<unknown> = Promise.resolve();
  let gate: Promise<unknown> = inFlight;
  const tellGap = (why: 'pause' | 'lost', from: number, to: number): Promise<unknown> => {
    const gap: DraftEvent = { event: 'gap', at: [from / RATE, to / RATE], why, when: now() };
    return live.change(() => [gap]);
  };
  const pauseOver = (at: number): Promise<unknown> => {
    const from = pausedAt ?? at;
    pausedAt = null;
    return tellGap('pause', from, at);
  };

  // Chunks come faster than the disk syncs: behind its turn a chunk waits for nothing between looking at the journal and writing to it.
  const keep = async (chunk: Chunk, first: boolean, turn: Promise<unknown>): Promise<boolean> => {
    const exam = live.draft().id;
    await turn;
    const journal = await journals.open(exam);
    if (live.draft().id !== exam) return false;
    const samples = Float32Array.from(chunk.samples, (sample) => sample / 32_768);
    const from = journal.length();
    const seam = first && (latest === null || latest === exam) ? awayBefore(journal, chunk) : null;
    latest = exam;
    const due = journal.expected();
    const lost = first ? lostBefore(due, chunk) * samples.length : 0;
    const { paused } = live.draft();
    const noted: Promise<void>[] = [
      ...(seam ? [journal.gap({ kind: paused ? 'pause' : 'lost', samples: seam, ...due, next: due.sequence })] : []),
      ...(lost > 0 ? [journal.gap({ kind: 'lost', samples: lost, epoch: chunk.epoch, next: chunk.sequence })] : []),
    ];
    // A gap that the disk refuses takes the sound behind it along, whose error is the one that is told.
    for (const gap of noted) gap.catch(() => undefined);
    const { at, duplicate } = await (paused ? notKept(journal, chunk) : journal.append(chunk));
    if (live.draft().id !== exam) return false;
    // From here nothing is waited for until the sound is handed on: the chunk behind would overtake it.
    const told: Promise<unknown>[] = [...noted];
    const missing = (seam ?? 0) + lost;
    if (seam !== null || missing > 0) {
      told.push(listening.skip(missing));
      if (!paused) told.push(tellGap('lost', from, from + missing));
    }
    if (live.draft().paused) pausedAt ??= seam ? from : at;
    else if (pausedAt !== null) told.push(pauseOver(at));
    if (!duplicate) told.push(listening.push(samples, exam, at, chunk.ownVoiceMs));
    await Promise.all(told);
    return true;
  };

  return {
    live,
    state: listening.state,
    sound: (chunk, first) => {
      if (first) gate = inFlight;
      const kept = keep(chunk, first, gate);
      inFlight = Promise.allSettled([inFlight, kept]);
      return kept;
    },
    said: listening.said,
    settle: async () => {
      await listening.flush();
      await live.idle();
    },
  };
}
