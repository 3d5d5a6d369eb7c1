/**
 * Guards against the known faults of this kind of recogniser: text on silence, one phrase said over and over,
 * sounds described in brackets, punctuation and capitals where speech has none.
 */
import type { ReaderToken } from './resident.ts';
import type { ScoredWord } from '../words.ts';

/** Joins tokens into lower-case words; figures stay figures ("106", "4mm"): the grammar reads both. */
export function wordsOf(tokens: readonly ReaderToken[]): readonly ScoredWord[] {
  const words: { w: string; logProb: number }[] = [];
  for (const token of tokens) {
    const last = words.at(-1);
    if (last === undefined || token.text.startsWith(' ')) words.push({ w: token.text.trim(), logProb: token.logProb });
    else {
      last.w += token.text;
      last.logProb += token.logProb;
    }
  }
  return words.flatMap((word) => spokenParts(word.w).map((w) => ({ ...word, w })));
}

/** "hook," is "hook"; "three-oh-nine" and "309-310" are said apart; "1.1" and "1/2" keep their inner mark. */
const spokenParts = (w: string): string[] =>
  w
    .toLowerCase()
    .replace(/[–—-]/g, ' ')
    .replace(/[^\p{L}\p{N}.,/' ]/gu, ' ')
    .replace(/[.,](?!\d)/g, ' ')
    .trim()
    .split(/\s+/)
    .filter((part) => part !== '' && part !== "'");

/** What it says of silence or noise; from the recogniser's public issue threads, from memory. */
const silenceTalk = new Set([
  'you',
  'thank you',
  'thanks for watching',
  'thank you for watching',
  'bye',
  'blank audio',
  'music',
  'silence',
  'inaudible',
  'applause',
  'so',
]);

/** Root mean square below which a clip holds no voice (-60 dB of full scale), whatever is read in it. */
const QUIET = 0.001;
export const isQuiet = (samples: Float32Array): boolean =>
  Math.sqrt(samples.reduce((sum, one) => sum + one * one, 0) / Math.max(1, samples.length)) < QUIET;

/** @returns why these words cannot be what was said, or undefined. `seconds` is the clip's length. */
export function faultOf(words: readonly ScoredWord[], seconds: number): 'silence' | 'repetition' | 'too-many' | undefined {
  if (words.length === 0) return 'silence';
  const text = words.map(({ w }) => w).join(' ');
  if (silenceTalk.has(text)) return 'silence';
  if (words.length > Math.max(6, Math.ceil(seconds * 6.5))) return 'too-many';
  return repeats(words.map(({ w }) => w)) ? 'repetition' : undefined;
}

/** One to four words said four times running: people count, but they do not say "class class class class". */
function repeats(words: readonly string[]): boolean {
  return [1, 2, 3, 4].some((size) =>
    words.some(
      (_, start) =>
        start + size * 4 <= words.length &&
        Array.from({ length: size * 3 }, (_x, i) => words[start + i] === words[start + i + size]).every(Boolean),
    ),
  );
}
