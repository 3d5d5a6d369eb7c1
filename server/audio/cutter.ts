/**
 * Cuts a stream of windows into phrases, by how likely each window is speech. Pure bookkeeping: no model in here.
 * A phrase ends after a pause, and at the latest at the longest length, then at its quietest moment.
 */
import { RATE } from '../speech/engine.ts';
import { WINDOW } from './vad.ts';

export type Phrase = {
  /** Samples of the exam: [from, to). */
  readonly from: number;
  readonly to: number;
  readonly samples: Float32Array;
  /** Where in the exam the voice itself was, inside [from, to). */
  readonly speech: readonly [number, number];
  /** Short pauses inside the voice, in samples of the exam: breaths between the parts of what is said. */
  readonly pauses: readonly (readonly [number, number])[];
  /** Seconds without speech before the voice. */
  readonly silenceBefore: number;
};

const windows = (seconds: number): number => Math.round((seconds * RATE) / WINDOW);

/** Speech begins at the first level and goes on down to the second, so that a faint syllable does not end a phrase. */
const BEGINS = 0.5,
  GOES_ON = 0.35;
const PAUSE = windows(0.6),
  LOOK_BEHIND = windows(0.5),
  TAIL = windows(0.3),
  LONGEST = windows(15),
  CUT_SPAN = windows(6);
/** A closed mouth inside a word is shorter than this. */
const BREATH = windows(0.25);
/** Fewer windows of speech than this are a bark or a knock: none of 24 five-second clips of barn noise had more than 3. */
const LEAST = 4;

type Window = { readonly at: number; readonly samples: Float32Array; readonly speech: number };

export type Cutter = {
  /** @returns the phrase that this window completed, if any */
  push(window: Window): Phrase | undefined;
  /** The phrase that the pause so far will end unless the voice goes on; when it does end it, the same object is what `push` returns. */
  soon(): Phrase | undefined;
  /** Ends the stream here: what was being said is a phrase. */
  flush(): Phrase | undefined;
  speaking(): boolean;
};

export function openCutter(from: number): Cutter {
  let held: Window[] = [];
  let speaking = false,
    continues = false;
  let soon: Phrase | undefined;
  /** End of the last voice, in samples of the exam. */
  let quietSince = from;

  const lastVoice = (): number => held.findLastIndex(({ speech }) => speech >= GOES_ON);
  const idle = (keep: readonly Window[]): void => {
    held = keep.slice(-LOOK_BEHIND);
    speaking = false;
    continues = false;
    soon = undefined;
  };
  const phraseOf = (said: readonly Window[]): Phrase | undefined => {
    const voiced = said.filter(({ speech }) => speech >= BEGINS);
    const first = said.find(({ speech }) => speech >= GOES_ON),
      last = said.findLast(({ speech }) => speech >= GOES_ON);
    const start = said[0],
      end = said.at(-1);
    if (voiced.length < (continues ? 1 : LEAST) || !first || !last || !start || !end) return undefined;
    const silenceBefore = Math.max(0, first.at - quietSince) / RATE;
    const speech = [first.at, last.at + last.samples.length] as const;
    const pauses = pausesIn(said.slice(said.indexOf(first), said.indexOf(last) + 1));
    return { from: start.at, to: end.at + end.samples.length, samples: joined(said), speech, pauses, silenceBefore };
  };
  const ended = (phrase: Phrase | undefined): Phrase | undefined => {
    if (phrase) quietSince = phrase.speech[1];
    return phrase;
  };

  return {
    push(window) {
      held.push(window);
      if (!speaking) {
        if (window.speech >= BEGINS) speaking = true;
        else idle(held);
        return undefined;
      }
      const last = lastVoice();
      const quiet = held.length - 1 - last;
      // All that a phrase keeps of its pause is there: what is left of the pause only decides whether it ends.
      if (quiet === TAIL) soon = phraseOf(held);
      else if (quiet < TAIL) soon = undefined;
      if (quiet >= PAUSE) {
        const phrase = ended(soon ?? phraseOf(held.slice(0, last + 1 + TAIL)));
        idle(held.slice(last + 1 + TAIL));
        return phrase;
      }
      if (held.length < LONGEST) return undefined;
      const cut = quietest(held);
      const phrase = ended(phraseOf(held.slice(0, cut)));
      held = held.slice(cut);
      continues = true;
      soon = undefined;
      return phrase;
    },
    soon: () => soon,
    flush() {
      const phrase = speaking ? ended(phraseOf(held)) : undefined;
      idle([]);
      return phrase;
    },
    speaking: () => speaking,
  };
}

/** Where for a breath's length nobody spoke, between two voices. */
export function pausesIn(said: readonly Pick<Window, 'at' | 'speech'>[]): readonly (readonly [number, number])[] {
  const pauses: (readonly [number, number])[] = [];
  let quiet = 0;
  const first = said.findIndex(({ speech }) => speech >= GOES_ON);
  said.forEach(({ at, speech }, i) => {
    if (speech < GOES_ON) quiet += 1;
    else {
      if (quiet >= BREATH && i > first) pauses.push([(said[i - quiet] as Pick<Window, 'at'>).at, at]);
      quiet = 0;
    }
  });
  return pauses;
}

/** Index of the least speech-like window near the end, the softer one where two are level. */
function quietest(held: readonly Window[]): number {
  const from = held.length - CUT_SPAN;
  const badness = held.slice(from, -TAIL).map(({ speech, samples }) => speech + level(samples));
  return from + badness.indexOf(Math.min(...badness));
}

/** Root mean square of samples, 0 to 1. */
export const level = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length));

function joined(said: readonly Window[]): Float32Array {
  const whole = new Float32Array(said.reduce((sum, { samples }) => sum + samples.length, 0));
  let at = 0;
  for (const { samples } of said) {
    whole.set(samples, at);
    at += samples.length;
  }
  return whole;
}
