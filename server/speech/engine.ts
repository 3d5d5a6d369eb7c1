/** What every ear offers. An ear knows words, not teeth. */
import type { Hypothesis } from '../../parser/contract/word.ts';

/** A stretch of sound. */
export type Clip = {
  /** Mono, 16 kHz, -1 to 1. */
  readonly samples: Float32Array;
  /** Index of the first sample in the exam. */
  readonly from: number;
  /** Short pauses inside it, in samples of the exam. */
  readonly pauses?: readonly (readonly [number, number])[];
};

/** `quickly`: by one listening, where an ear would listen several times to be surer. */
export type Scoring = 'surely' | 'quickly';

export type Heard = {
  /** Best first, by acoustic score; nothing of a bias is in their numbers. */
  readonly hypotheses: readonly Hypothesis[];
  /** Why there are no hypotheses. */
  readonly empty?: 'no-speech' | 'no-words';
  readonly tookMs: number;
};

export type Engine = {
  readonly name: string;
  /** Hears one phrase. `bias` are phrases to expect (names, terms); an ear may ignore them. */
  hear(clip: Clip, bias: readonly string[]): Promise<Heard>;
  /** Natural log-probability of each sentence given the sound, in the order given; lower-case words without punctuation will do. */
  score?(clip: Clip, sentences: readonly string[], how?: Scoring): Promise<number[]>;
  /** Makes it stand still between two steps of its work, where it can, and go on; what it was asked is answered all the same. */
  hold?(on: boolean): void;
  close(): Promise<void>;
};

export const RATE = 16_000;
