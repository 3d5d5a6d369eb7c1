/** A phrase of which nothing was made, though it was heard badly and holds a word of the trade: it may have been a finding, so it is asked about. */
import type { Doubt } from '../contract/doubt.ts';
import type { Hypothesis } from '../contract/word.ts';
import type { Parsed } from './parse.ts';
import { scan, type Mark } from './scan.ts';
import { tokenise } from './tokens.ts';

/**
 * Nats a word below which the ear guessed. Of phrases of which nothing was made (even ids and sampled ones in two robotic
 * voices and a natural one, clean and at 10 dB): talk heard rightly lay above -0.21, findings and works that were lost mostly below -0.25.
 */
export const GUESSED = -0.25;
/** The same where it holds what nobody says of anything else: a tooth's number, a size, a grade, the name of a finding or of a work. */
export const GUESSED_TRADE = -0.1;

const telling = new Set(['condition', 'region', 'surface', 'qualifier', 'side', 'jaw', 'row', 'hundreds', 'group', 'cue', 'work']);
const ofTrade = ({ place, measure, grade, number, pulpHorn, terms }: Mark): boolean =>
  place !== undefined ||
  measure !== undefined ||
  grade !== undefined ||
  number !== undefined ||
  pulpHorn !== undefined ||
  (terms !== undefined && terms.every(({ k }) => telling.has(k)));

const ownOfTrade = ({ place, measure, grade, terms }: Mark): boolean =>
  place?.codes !== undefined ||
  measure?.unit !== undefined ||
  grade?.announced === true ||
  (terms ?? []).some((t) => (t.k === 'condition' && t.strength === 'say') || (t.k === 'work' && t.term.as === 'procedure' && t.term.done));

/** Nothing at all: no item, question, command or fact of the visit. */
export const madeNothing = ({ items, doubts, commands, settles, header }: Parsed): boolean =>
  items.length + doubts.length + commands.length + settles.length === 0 && header === undefined;

/** @returns the question, or undefined where something was made of the phrase, it was heard well, or it is talk throughout */
export function faint(first: Parsed, { words, logProb }: Hypothesis): Doubt | undefined {
  if (!madeNothing(first) || logProb / words.length > GUESSED_TRADE) return undefined;
  const { marks } = scan(tokenise(words.map(({ w }) => w)));
  if (!marks.some(logProb / words.length > GUESSED ? ownOfTrade : ofTrade)) return undefined;
  return unreadWhole(first, 'This was heard badly. Play it: it may belong to the record.');
}

/** The question about all words of a phrase of which nothing was made. */
const unreadWhole = ({ id, text, utterance: { at } }: Parsed, why?: string): Doubt => ({
  id: `${id}/d1`,
  doubt: 'unread',
  words: text,
  utterance: id,
  state: 'open',
  ...(at ? { at } : {}),
  ...(why ? { why } : {}),
});

/** The reading with that question, which takes the words that nobody took. */
export function askedInWhole(parsed: Parsed, why?: string): Parsed {
  const doubt = unreadWhole(parsed, why);
  const words = parsed.utterance.words.map((word) => (word.as === 'leftover' ? { ...word, as: `doubt:${doubt.id}` as const } : word));
  return { ...parsed, utterance: { ...parsed.utterance, words }, doubts: [doubt], leftovers: [] };
}
