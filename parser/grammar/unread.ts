/** Words of the trade that no rule could read: they ask for a person. Talk around them does not. */
import { isTechnical, partOfAnother } from './core.ts';
import type { Reading } from './read.ts';

/** Indices of unread trade words; in a phrase with words from outside the trade, of which nothing was made, only those that nobody says of anything else. */
export function unreadIn(reading: Reading, claims: ReadonlyMap<number, string>): readonly number[] {
  const talk = reading.unknown > 0;
  return reading.marks.flatMap((mark, i) => {
    const words = reading.tokens.slice(mark.from, mark.to);
    const head = reading.role[i] === 'head';
    const strong = head && mark.terms?.some((t) => (t.k === 'condition' && t.strength === 'say') || (t.k === 'work' && t.term.as === 'procedure' && t.term.done));
    const technical = head && !partOfAnother(reading, i) && mark.terms?.some((t) => t.k === 'condition' && isTechnical(words.map(({ t: w }) => w).join(' '), t.strength));
    const code = mark.place?.codes !== undefined;
    return (talk ? technical : strong || code) ? words.map(({ word }) => word).filter((word) => !claims.has(word)) : [];
  });
}
