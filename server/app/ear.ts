/** The ear with its voice activity, as the rest of the program needs it. */
import type { HeardPhrase, Span } from '../../parser/contract/word.ts';
import { breathsIn, openSegmenter, type Phrase, type Segmenter } from '../audio/segment.ts';
import { RATE, type Engine } from '../speech/engine.ts';
import { withPauses, type Ends } from '../speech/pauses.ts';
import { verified, type Language } from '../speech/verify.ts';

/** A stretch of an exam's sound: which exam's journal, from which sample. */
export interface Stretch {
  readonly exam: string;
  readonly from: number;
  readonly samples: Float32Array;
  readonly silenceBefore?: number;
  /** Short pauses inside it, in samples of its journal; absent: they are looked for. */ readonly pauses?: readonly Span[];
  /** Names that may be spoken. */ readonly names?: readonly string[];
}
export interface Ear {
  readonly name: string;
  /** Settles once it can hear; what is asked of it before that waits. Absent: it can. */
  readonly waking?: Promise<unknown>;
  readonly segmenter: (from?: number) => Promise<Segmenter>;
  readonly hear: (stretch: Stretch) => Promise<HeardPhrase>;
  readonly close: () => Promise<void>;
}

/** An utterance's id: the exam whose journal holds its sound, and its first sample there. */
export const idOf = (exam: string, from: number): string => `${exam}:${from}`;
/** In seconds of the exam's sound. */
export const spanOf = (from: number, samples: number): Span => [from / RATE, (from + samples) / RATE];

/**
 * Hear, then propose and score: where the best reading is not wholly of the trade, readings that are and that sound alike are judged by the ear itself.
 * @param vad the Silero file of `ensureWeights`; @param language absent: what is heard stands as it is
 */
export const earOf = (engine: Engine, vad: string, language?: Language & Ends): Ear => ({
  name: engine.name,
  segmenter: (from = 0) => openSegmenter(vad, from),
  hear: async ({ exam, from, samples, silenceBefore, pauses, names = [] }) => {
    const clip = { samples, from, pauses: pauses ?? (engine.score ? await breathsIn(vad, samples, from) : []) };
    const heard = (await engine.hear(clip, names)).hypotheses;
    const judged = language ? await verified(engine, clip, heard, language, names) : heard;
    const hypotheses = language ? await withPauses(engine, clip, judged, language) : judged;
    return {
      id: idOf(exam, from),
      at: spanOf(from, samples.length),
      hypotheses,
      reader: 'first',
      ...(silenceBefore !== undefined && { silenceBefore }),
    };
  },
  close: () => engine.close(),
});
/** An ear whose recogniser is still being loaded: sound is cut into phrases already, and each waits for it. */
export function wakingEar(name: string, vad: string, open: Promise<Engine>, language?: () => Language & Ends): Ear {
  const ear = open.then((engine) => earOf(engine, vad, language?.()));
  ear.catch(() => undefined); // told to whoever asks it, and to whoever waits for `waking`
  return {
    name,
    waking: ear,
    segmenter: (from = 0) => openSegmenter(vad, from),
    hear: async (stretch) => (await ear).hear(stretch),
    close: () =>
      ear.then(
        (opened) => opened.close(),
        () => undefined,
      ),
  };
}
export type { Phrase, Segmenter };
