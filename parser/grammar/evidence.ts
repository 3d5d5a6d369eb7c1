/** Where in the phrase a thing was said: its words, and the second of the sound. */
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Word } from '../contract/word.ts';
import { gather } from './lists.ts';
import type { Made } from './made.ts';
import type { Reading } from './read.ts';
import { headSpan } from './scan.ts';

/** Indices of the words that marks stand for, in the order of speech. */
export function wordsOf(marks: readonly number[], { marks: all, tokens }: Pick<Reading, 'marks' | 'tokens'>): readonly number[] {
  const words = new Set<number>();
  for (const m of marks) {
    const [from, to] = headSpan(all, m);
    for (let at = from; at < to; at += 1) {
      const token = tokens[at];
      if (token?.heard) token.heard.forEach((word) => words.add(word));
      else if (token) words.add(token.word);
    }
  }
  return [...words].sort((a, b) => a - b);
}

export const textOf = (indices: readonly number[], words: readonly Word[]): string => indices.map((i) => words[i]?.w ?? '').join(' ');

/** Seconds from the first of these words to the last; nothing for words that were typed. */
export function span(words: readonly Word[], indices: readonly number[]): { at?: [number, number] } {
  const times = gather(indices, (i) => words[i]?.at);
  return times.length === 0 ? {} : { at: [Math.min(...times.map(([from]) => from)), Math.max(...times.map(([, to]) => to))] };
}

export const evidence = (heard: HeardPhrase, words: readonly Word[], indices: readonly number[], made: Made): Item['evidence'] => ({
  utterance: heard.id,
  words: [...indices],
  ...span(words, indices),
  rules: [...made.rules],
  ...(made.repaired ? { repaired: true } : {}),
});
