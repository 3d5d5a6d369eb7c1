/** One exam after another at one microphone: sound to the journal, then to the ear. */
import type { DraftEvent } from '../../parser/contract/draft.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import type { Journal } from '../audio/journal.ts';
import type { Chunk } from '../http/doors.ts';
import type { Live } from '../session/live.ts';
import { RATE } from '../speech/engine.ts';
import type { Ear } from './ear.ts';
import type { Journals } from './journals.ts';
import { openListening } from './listening.ts';

export interface Sitting {
  readonly live: Live;
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

/** Sound in a pause: its length stays on the exam's clock, it is only listened to for the word to go on. */
async function notKept(journal: Journal, { epoch, sequence, samples }: Chunk): Promise<{ at: number; duplicate: boolean }> {
  const due = journal.expected();
  const at = journal.length();
  if (epoch === due.epoch && sequence < due.sequence) return { at, duplicate: true };
  await journal.gap({ kind: 'pause', samples: samples.length, epoch, next: sequence + 1 });
  return { at, duplicate: false };
}

export async function openSitting(live: Live, ear: Ear, journals: Journals, publish: (message: FromServer) => void, now: () => string): Promise<Sitting> {
  const listening = openListening(live, ear, await ear.segmenter(), publish, now);
  /** Where the pause that is on began, in samples of the exam's journal. */
  let pausedAt: number | null = null;
  const tellGap = (why: 'pause' | 'lost', from: number, to: number): Promise<unknown> => {
    const gap: DraftEvent = { event: 'gap', at: [from / RATE, to / RATE], why, when: now() };
    return live.change(() => [gap]);
  };
  const pauseOver = async (at: number): Promise<void> => {
    const from = pausedAt ?? at;
    pausedAt = null;
    await tellGap('pause', from, at);
  };

  return {
    live,
    // Chunks come faster than the disk syncs, so nothing here waits between looking at the journal and writing to it.
    sound: async (chunk, first) => {
      const exam = live.draft().id;
      const journal = await journals.open(exam);
      const samples = Float32Array.from(chunk.samples, (sample) => sample / 32_768);
      const gap = first ? lostBefore(journal.expected(), chunk) * samples.length : 0;
      const lostAt = journal.length();
      const noted = gap > 0 ? journal.gap({ kind: 'lost', samples: gap, epoch: chunk.epoch, next: chunk.sequence }) : undefined;
      const { at, duplicate } = await (live.draft().paused ? notKept(journal, chunk) : journal.append(chunk));
      await noted;
      if (live.draft().id !== exam) return false;
      if (gap > 0) {
        await listening.skip(gap);
        await tellGap('lost', lostAt, lostAt + gap);
      }
      if (live.draft().paused) pausedAt ??= at;
      else if (pausedAt !== null) await pauseOver(at);
      if (!duplicate) await listening.push(samples, exam, at, chunk.ownVoiceMs);
      return true;
    },
    said: listening.said,
    settle: async () => { await listening.flush(); await live.idle(); },
  };
}
