/** A phrase of which nothing was made, though its words are those of the trade: it is asked about, not lost. Which words those are was learned from the gold corpus. */
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { from, weights } from '../lexicon/tradeOrTalk.ts';
import { askedInWhole, madeNothing } from './faint.ts';
import type { Parsed } from './parse.ts';

/** Above so many nats a phrase is of the trade (`fixtures/make/tradeOrTalk.ts --check`). */
export const OF_TRADE = 2.2;
/** Of fewer words than this nothing can be told. */
const FEWEST = 3;

export const NOTHING_MADE = 'These sound like words for the record, and nothing was made of them.';

/** Numbers are said of everything: "ten past three", "room two oh six". */
const numbers: ReadonlySet<string> = new Set([
  ...Object.keys(digitWords),
  ...Object.keys(teenWords),
  ...Object.keys(tensWords),
  'oh',
  'hundred',
  'half',
  'past',
  'quarter',
  'point',
  'number',
]);

/** The words of a text that tell what it is about, as the table has them. */
export const tellingWords = (words: readonly string[]): readonly string[] =>
  words.flatMap((word) => word.toLowerCase().match(/[a-z']+/g) ?? []).filter((word) => !numbers.has(word));

const weigh = new Map(Object.entries(weights));
/** How much the words speak for the trade, in nats; nought is even. */
export const soundsOfTrade = (words: readonly string[]): number =>
  [...new Set(tellingWords(words))].reduce((sum, word) => sum + (weigh.get(word) ?? 0), from);

/** The same reading, or with one question where nothing was made of words of the trade. */
export function askedWhereLost(parsed: Parsed): Parsed {
  if (!madeNothing(parsed)) return parsed;
  const words = parsed.utterance.words.map(({ w }) => w);
  return words.length < FEWEST || soundsOfTrade(words) < OF_TRADE ? parsed : askedInWhole(parsed, NOTHING_MADE);
}
