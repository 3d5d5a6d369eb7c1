/**
 * One verb of work and several things in one breath: "reduced the hook on one oh six and the ramp on three eleven" (both), "reduced the hook but left
 * the ramp" (one of them), "hook on one oh six and ramp on three eleven reduced" (the last, or both: which is asked).
 */
import { handledAs } from '../lexicon/handling.ts';
import { either } from './either.ts';
import type { Reading } from './read.ts';
import { isGlue, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

const definite: ReadonlySet<string> = new Set(['the', 'that', 'his', 'her']);
const done = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done) === true;
const kindOf = (mark: Mark | undefined): string | undefined =>
  mark?.terms?.flatMap((t) => (t.k === 'condition' && t.strength === 'say' ? [handledAs[t.id]] : []))[0];
const placed = (mark: Mark | undefined): boolean => mark?.place !== undefined && kindOf(mark) === undefined;
/** Whether the words can share work at all: asked before anything is scanned. */
const shares = (tokens: readonly Token[]): boolean =>
  tokens.some(({ t }, i) => (t === 'left' && i > 1) || (t === 'and' && i > 1 && definite.has(tokens[i + 1]?.t ?? ''))) &&
  tokens.some(({ t }) => didWords.has(t));

/** @returns the tokens with the verb, or "alone", said again where it is meant again; the same list where it is not */
export function sharedWork(tokens: readonly Token[]): readonly Token[] {
  const did = shares(tokens) ? scan(tokens).marks.find(done)?.from : undefined;
  return did === undefined ? tokens : leftBeside(verbAgain(tokens, did), did);
}

/** "reduced the hook on one oh six and the ramp on three eleven" */
function verbAgain(tokens: readonly Token[], did: number): readonly Token[] {
  const the = tokens.findIndex(({ t }, i) => i > did && definite.has(t));
  const and = the < 0 ? -1 : tokens.findIndex(({ t }, i) => i > the && t === 'and' && definite.has(tokens[i + 1]?.t ?? ''));
  const verb = tokens.slice(did, the);
  if (and < 0 || !scan(verb).marks.some(done)) return tokens;
  const [first, place, ...more] = scan(tokens.slice(the, and)).marks.filter((mark) => !isGlue(mark));
  const [second, other, next] = scan(tokens.slice(and + 1)).marks.filter((mark) => !isGlue(mark));
  const last = other && (next === undefined || tokens[and + other.to]?.ends === true);
  const same = kindOf(first) !== undefined && kindOf(first) === kindOf(second);
  return last && same && placed(place) && placed(other) && more.length === 0
    ? [...tokens.slice(0, and + 1), ...verb.map(({ t, word }) => ({ t, word })), ...tokens.slice(and + 1)]
    : tokens;
}

/** "hook on one oh six reduced, ramp on three eleven left", "reduced the hook, left the ramp": beside what was worked on it was not touched. */
function leftBeside(tokens: readonly Token[], did: number): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => i > did && t === 'left' && (closes(tokens, i) || definite.has(tokens[i + 1]?.t ?? '')));
  if (at < 0 || !scan(tokens.slice(0, at)).marks.some(done)) return tokens;
  const end = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
  const last = end < 0 ? tokens.length - 1 : end;
  const from = at === last ? tokens.slice(0, at).findLastIndex(({ t, ends }) => ends === true || t === 'and' || t === 'but') + 1 : at + 1;
  const [thing, place, ...more] = scan(tokens.slice(from, at === last ? at : last + 1)).marks.filter((mark) => !isGlue(mark));
  // "reduced, ramp on the upper left": behind what is no number it is a side.
  if (kindOf(thing) !== 'overgrowth' || !placed(place) || more.length > 0 || (at === last && place?.place?.codes === undefined))
    return tokens;
  const { t, word, ends } = tokens[last] as Token;
  return [...tokens.slice(0, last), { t, word }, { t: 'alone', word, ...(ends ? { ends } : {}) }, ...tokens.slice(last + 1)];
}
const closes = (tokens: readonly Token[], at: number): boolean => at === tokens.length - 1 || tokens[at]?.ends === true;
/** @returns where the verb is said once more, behind the first place: "hook on one oh six [reduced] and ramp on three eleven reduced" */
export function ofBoth(tokens: readonly Token[]): readonly Token[] | undefined {
  const last = tokens.length - 1;
  const may =
    tokens.some(({ t, ends }, i) => t === 'and' && !ends && i > 1) && [last, last - 1].some((i) => didWords.has(tokens[i]?.t ?? ''));
  const [first, place, second, other, verb, ...more] = may ? scan(tokens).marks.filter((mark) => !isGlue(mark)) : [];
  const kind = kindOf(first);
  if (
    verb === undefined ||
    more.length > 0 ||
    !done(verb) ||
    kind === undefined ||
    kindOf(second) !== kind ||
    !placed(place) ||
    !placed(other) ||
    tokens.slice(0, verb.to - 1).some(({ ends }) => ends) ||
    !tokens.slice((place as Mark).to, (second as Mark).from).some(({ t }) => t === 'and')
  )
    return undefined;
  const to = (place as Mark).to;
  return [...tokens.slice(0, to), ...tokens.slice(verb.from, verb.to), ...tokens.slice(to)];
}
export const lastOrBoth = (asHeard: Reading, both: Reading): Reading => ({
  ...either(asHeard, both, 'work behind two findings'),
  oneSentence: true,
});
