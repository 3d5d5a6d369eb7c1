/** Words of the trade that no rule could read: they ask for a person. Talk around them does not. */
import type { Reading } from './read.ts';

/** Indices of unread trade words; none when the phrase is talk (nothing made of it, and words from outside the trade in it). */
export function unreadIn(reading: Reading, claims: ReadonlyMap<number, string>): readonly number[] {
  if (reading.unknown > 0 && reading.made.length === 0) return [];
  return reading.marks.flatMap((mark, i) => {
    const strong = reading.role[i] === 'head' && mark.terms?.some((t) => (t.k === 'condition' && t.strength === 'say') || (t.k === 'work' && t.term.as === 'procedure' && t.term.done));
    const code = mark.place?.codes !== undefined;
    return (strong || code) && reading.unknown === 0 ? reading.tokens.slice(mark.from, mark.to).map(({ word }) => word).filter((word) => !claims.has(word)) : [];
  });
}
