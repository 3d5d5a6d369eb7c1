/** How long a speaker waits, at the pace of speech: from the sound that shows a phrase to be over until its items are in the draft. */
import { setTimeout as wait } from 'node:timers/promises';
import { earOf, type Ear, type Segmenter } from '../../../server/app/ear.ts';
import { language } from '../../../server/app/language.ts';
import { openListening } from '../../../server/app/listening.ts';
import { read } from '../../../server/app/understand.ts';
import { RATE } from '../../../server/speech/engine.ts';
import { openEngine } from '../../../server/speech/moonshine/index.ts';
import { openLive } from '../../../server/session/live.ts';
import { emptyDraft } from '../../../server/session/reduce.ts';
import { percentile } from './measure.ts';
import type { SpokenSet } from './sets.ts';
import { joined } from './sound.ts';

/** Seconds of sound that the page sends at a time; of quiet behind each phrase, longer than the pause that ends it. */
const CHUNK = 0.25,
  QUIET = 1.25;
/** Phrases longer than this, in seconds, are not what the mark speaks of. */
const LONGEST = 6;

interface Room {
  readonly listening: ReturnType<typeof openListening>;
  /** Milliseconds that each phrase was waited for. */
  readonly waited: number[];
  asked: number;
}

async function roomOf(ear: Ear, foresees: boolean): Promise<Room> {
  const waited: number[] = [];
  const now = (): string => new Date().toISOString();
  const live = openLive(
    {
      read,
      append: () => undefined,
      load: () => {
        throw new Error('There is one exam here.');
      },
      publish: () => undefined,
      now,
      freshId: () => 'next',
      tick: () => performance.now(),
      say: () => '',
      trouble: () => ({ code: 'not-read', message: '' }),
    },
    emptyDraft('bench'),
  );
  const own = await ear.segmenter();
  const segmenter: Segmenter = {
    ...own,
    soon: () => (foresees ? own.soon() : undefined),
    push: async (sound) => {
      const from = performance.now();
      const phrases = await own.push(sound);
      if (phrases.length > 0) setImmediate(() => void live.idle().then(() => waited.push(performance.now() - from)));
      return phrases;
    },
  };
  const room: Room = { waited, asked: 0, listening: undefined as never };
  const hear: Ear['hear'] = (stretch) => {
    room.asked += 1;
    return ear.hear(stretch);
  };
  return Object.assign(room, { listening: openListening(live, { ...ear, hear }, segmenter, () => undefined, now) });
}

/** @returns a paragraph: waits with and without looking ahead, phrase by phrase in turn, in one run */
export async function live(dir: string, vad: string, sets: readonly SpokenSet[]): Promise<string> {
  const engine = await openEngine({ weightsDir: dir });
  const ear = earOf(engine, vad, language());
  const rooms = [await roomOf(ear, true), await roomOf(ear, false)] as const;
  const spoken = sets.flatMap((set) => set.spoken).filter(({ samples }) => samples.length <= LONGEST * RATE);
  const at = [0, 0];
  for (const [n, { samples }] of spoken.entries())
    for (const which of n % 2 === 0 ? ([0, 1] as const) : ([1, 0] as const)) {
      const whole = joined([samples, new Float32Array(QUIET * RATE)]);
      const began = performance.now();
      for (let from = 0; from < whole.length; from += CHUNK * RATE) {
        const chunk = whole.subarray(from, from + CHUNK * RATE);
        await wait(Math.max(0, began + ((from + chunk.length) / RATE) * 1000 - performance.now()));
        await rooms[which].listening.push(chunk, 'bench', at[which] as number);
        at[which] = (at[which] as number) + chunk.length;
      }
    }
  await wait(1000);
  await engine.close();
  const [ahead, plain] = rooms.map(
    ({ waited }) => `median ${percentile(waited, 0.5).toFixed(0)} ms, 95 % at most ${percentile(waited, 0.95).toFixed(0)} ms`,
  ) as [string, string];
  return `${spoken.length} phrases of at most ${LONGEST} s at the pace of speech, in chunks of ${CHUNK} s, twice each; from the chunk that ended a phrase (${rooms[0].waited.length} ended) to its items in the draft: hearing begun in the pause, ${ahead}; begun at its end, ${plain}. The ear was asked ${rooms[0].asked} and ${rooms[1].asked} times.`;
}
