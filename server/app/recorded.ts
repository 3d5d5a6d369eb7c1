/** A recorded file goes the way that a microphone goes, only faster: a stretch at a time, each read before the next. */
import type { Readable } from 'node:stream';
import type { UploadLine } from '../../parser/contract/wire.ts';
import { toInt16 } from '../audio/journal.ts';
import { readRecording } from '../audio/read.ts';
import type { Live } from '../session/live.ts';
import { RATE } from '../speech/engine.ts';
import type { Journals } from './journals.ts';
import type { Listening } from './listening.ts';
import type { Sitting } from './sitting.ts';

export interface Notice {
  readonly code: string;
  readonly message: string;
}
const stretch = 2 * RATE;

/** The recording in stretches of two seconds; the last may be shorter. @throws AudioError */
async function* stretches(source: string | Readable, notice: (notice: Notice) => void): AsyncGenerator<Float32Array> {
  let held: Float32Array[] = [],
    length = 0;
  for await (const samples of readRecording(source, { onNotice: notice })) {
    for (let at = 0; at < samples.length;) {
      const piece = samples.subarray(at, at + stretch - length);
      held.push(piece);
      length += piece.length;
      at += piece.length;
      if (length === stretch) {
        yield joined(held, length);
        held = [];
        length = 0;
      }
    }
  }
  if (length > 0) yield joined(held, length);
}
function joined(pieces: readonly Float32Array[], length: number): Float32Array {
  const whole = new Float32Array(length);
  pieces.reduce((at, piece) => {
    whole.set(piece, at);
    return at + piece.length;
  }, 0);
  return whole;
}

/** Keeps the sound, in the journal of whichever exam is on. @yields how far it is, in seconds */
export async function* hearKept(sound: AsyncIterable<Float32Array>, sitting: Sitting, journals: Journals): AsyncGenerator<UploadLine> {
  let done = 0;
  for await (const samples of sound) {
    const { epoch, sequence } = (await journals.open(sitting.live.draft().id)).expected();
    await sitting.sound({ epoch, sequence, samples: toInt16(samples), ownVoiceMs: 0 }, false);
    await sitting.live.idle();
    done += samples.length / RATE;
    yield { stage: 'hearing', done };
  }
  await sitting.settle();
}

/** Keeps nothing: for a look at what would be understood. */
export async function hearOnly(
  source: string | Readable,
  live: Live,
  listening: Listening,
  notice: (notice: Notice) => void,
): Promise<void> {
  let at = 0;
  for await (const samples of stretches(source, notice)) {
    await listening.push(samples, live.exams()[0]!, at);
    await live.idle();
    at += samples.length;
  }
  await listening.flush();
  await live.idle();
}

/** The sound once its first stretch was read: what is no recording is known before anything is made of it. @throws AudioError */
export async function opened(source: string | Readable, notice: (notice: Notice) => void): Promise<AsyncIterable<Float32Array>> {
  const sound = stretches(source, notice);
  const first = await sound.next();
  return (async function* () {
    if (first.done) return;
    yield first.value;
    yield* sound;
  })();
}
