/**
 * "My back is sore today, two ten pocket", "overgrowth three oh eight, undo the buckle would you": what is talk by itself, between pauses, is no part
 * of what is found beside it. Set aside, and the rest is read without it.
 */
import { light } from '../lexicon/fillers.ts';
import type { Reading } from './read.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const lightWords: ReadonlySet<string> = new Set(light);

/** Words between pauses. */
export function partsOf(tokens: readonly Token[]): readonly (readonly Token[])[] {
  const ends = [...tokens.flatMap(({ ends: pause }, i) => (pause && i + 1 < tokens.length ? [i + 1] : [])), tokens.length];
  return ends.map((to, i) => tokens.slice(ends[i - 1] ?? 0, to));
}
/** Words that lean on what was said: "came away whole", "both pulled", "left's worse". */
const leaning: ReadonlySet<string> = new Set([
  ...['it', 'them', 'that', 'those', 'these', 'this', 'both', 'one', 'ones', 'same', 'other', 'rest', 'there'],
]);
/** Of these one stands in what puts right: "should have said ramp". */
const turning: ReadonlySet<string> = new Set([
  'should',
  'said',
  'meant',
  'mean',
  'sorry',
  'actually',
  'rather',
  'instead',
  'correction',
  'make',
  'wait',
]);
const tells = (mark: Mark): boolean =>
  mark.place !== undefined ||
  mark.number !== undefined ||
  mark.measure !== undefined ||
  mark.grade !== undefined ||
  mark.terms?.some(({ k }) => k === 'work' || k === 'surface' || k === 'qualifier') === true;
/** Nothing is made of it, nothing in it says where, how much or what was done, and it holds words that are not the trade's. */
function isTalk({ made, scanned: marks, tokens }: Reading): boolean {
  // "an old one", "the left one's worse": of what was found.
  if (made.length > 0 || tokens.some(({ t }) => t === 'one' || t === 'ones' || turning.has(t))) return false;
  const everyday = marks.some(({ terms }) => terms?.some((t) => t.k === 'talk'));
  const points = tokens.some(
    ({ t, ends }, i) => leaning.has(t) && (ends === true || !marks.some((mark) => mark.from === i + 1 && mark.unknown)),
  );
  if (everyday ? marks.some(({ place }) => place?.codes) : marks.some(tells) || points) return false;
  const strange = marks.filter((mark) => mark.unknown && !tokens.slice(mark.from, mark.to).every(({ t }) => lightWords.has(t)));
  const named = marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength !== 'absentSay'));
  return everyday || strange.length >= (named ? 1 : 2);
}

/**
 * @param alone reads words as if nothing had been said before
 * @param read reads words where they stand
 */
export function talkAside(
  tokens: readonly Token[],
  asRead: Reading,
  alone: (words: readonly Token[]) => Reading,
  read: (words: readonly Token[]) => Reading,
): Reading {
  const parts = asRead.made.length === 0 || asRead.takenBack.length > 0 ? [] : partsOf(tokens);
  if (parts.length < 2) return asRead;
  const talk = new Set(parts.filter((part) => isTalk(alone(part))));
  if (talk.size === 0 || talk.size === parts.length) return asRead;
  const rest = read(parts.filter((part) => !talk.has(part)).flat());
  const sure =
    rest.made.length > 0 &&
    rest.made.every(({ body, how, doubts }) => body?.kind === 'finding' && how?.place !== 'carried' && doubts.length === 0);
  return sure ? rest : asRead;
}
