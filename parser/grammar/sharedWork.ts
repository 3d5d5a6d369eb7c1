/**
 * One verb of work and several things in one breath: "reduced the hook on one oh six and the ramp on three eleven" (both), "reduced the hook but left
 * the ramp" (one of them), "hook on one oh six and ramp on three eleven reduced" (the last, or both: `workOfEither.ts`).
 */
import { handledAs } from '../lexicon/handling.ts';
import type { Rewording } from './said.ts';
import { isGlue, scan, type Mark } from './scan.ts';
import { namedBy, onesWords } from './shares.ts';
import type { Token } from './tokens.ts';
import { workWords } from './vocabulary.ts';

const definite: ReadonlySet<string> = new Set(['the', 'that', 'his', 'her']);
export const done = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done) === true;
export const kindOf = (mark: Mark | undefined): string | undefined =>
  mark?.terms?.flatMap((t) => (t.k === 'condition' && t.strength === 'say' ? [handledAs[t.id]] : []))[0];
export const placed = (mark: Mark | undefined): boolean => mark?.place !== undefined && kindOf(mark) === undefined;
/** Whether the words can share work at all: asked before anything is scanned. */
const shares = (tokens: readonly Token[]): boolean =>
  tokens.some(
    ({ t }, i) =>
      i > 1 &&
      (t === 'left' ||
        t === 'next' ||
        t === 'were' ||
        onesWords.has(t) ||
        ((t === 'and' || t === 'not') && definite.has(tokens[i + 1]?.t ?? ''))),
  ) && tokens.some(({ t }) => workWords.has(t));

function saidAgain(tokens: readonly Token[]): readonly Token[] {
  const work = shares(tokens) ? scan(tokens).marks.find(done) : undefined;
  if (work === undefined) return tokens;
  const told = toldOfPairs(tokens, work);
  if (told) return told;
  // "the hook reduced" is one name of work: its verb is what names no thing.
  const verb = tokens.slice(work.from, work.to).filter((token) => !definite.has(token.t) && kindOf(scan([token]).marks[0]) === undefined);
  return nextTime(leftBeside(notThat(verbAgain(tokens, work.from), work.to, verb), work.from, verb), work.to, verb);
}
const again = (verb: readonly Token[]): readonly Token[] => verb.map(({ t, word }) => ({ t, word }));

/** "hook on one oh six and ramp on three eleven, the first reduced", "the hook on ... and the ramp on ... were reduced": each with its place said again. */
function toldOfPairs(tokens: readonly Token[], { from, to }: Mark): readonly Token[] | undefined {
  let at = from - 1;
  while (['was', 'one', 'both', 'all'].includes(tokens[at]?.t ?? '')) at -= 1;
  const word = tokens[at];
  if (word === undefined || word.ends || to < tokens.length || !(word.t === 'were' || onesWords.has(word.t))) return undefined;
  const marks = scan(tokens.slice(0, at)).marks.filter((mark) => !isGlue(mark));
  const pairs = marks.flatMap((mark, i) =>
    i % 2 === 0 && kindOf(mark) !== undefined && placed(marks[i + 1]) ? [[mark, marks[i + 1] as Mark] as const] : [],
  );
  if (pairs.length < 2 || pairs.length * 2 !== marks.length) return undefined;
  const verb = tokens.slice(from, to);
  if (word.t === 'were') {
    const ends = pairs.slice(0, -1).map(([, place]) => place.to - 1);
    // "hook on ..., and the ramps on ... were reduced": of those alone.
    const singular = !tokens[(pairs.at(-1)?.[0].to ?? 1) - 1]?.t.endsWith('s');
    return singular
      ? [...tokens.slice(0, at).flatMap((token, i) => (ends.includes(i) ? [token, ...again(verb)] : [token])), ...verb]
      : undefined;
  }
  const one = namedBy(word.t, pairs.length);
  const [name, place] = (one === undefined ? undefined : pairs[one]) ?? [];
  if (name === undefined || place === undefined) return undefined;
  const copy = tokens.slice(name.from, place.to).map(({ t }): Token => ({ t, word: word.word, carried: true }));
  return [...tokens.slice(0, at), ...copy, ...verb];
}

/** "reduced the ramp on three eleven but not the hook on one oh six" */
function notThat(tokens: readonly Token[], from: number, verb: readonly Token[]): readonly Token[] {
  const not = tokens.findIndex(({ t }, i) => i >= from && t === 'not' && definite.has(tokens[i + 1]?.t ?? ''));
  const [thing, place, ...more] = not < 0 ? [] : scan(tokens.slice(not + 1)).marks.filter((mark) => !isGlue(mark));
  return kindOf(thing) !== undefined && placed(place) && more.length === 0
    ? [...tokens.slice(0, not + 1), ...again(verb), ...tokens.slice(not + 1)]
    : tokens;
}

/** "hook on one oh six reduced, ramp on three eleven next time" */
function nextTime(tokens: readonly Token[], from: number, verb: readonly Token[]): readonly Token[] {
  const next = tokens.findIndex(
    ({ t }, i) => i > from && t === 'next' && ['time', 'visit'].includes(tokens[i + 1]?.t ?? '') && closes(tokens, i + 1),
  );
  if (next < 0) return tokens;
  const pause = tokens.slice(0, next).findLastIndex(({ t, ends }) => ends === true || t === 'and' || t === 'but') + 1;
  const [thing, place, ...more] = scan(tokens.slice(pause, next)).marks.filter((mark) => !isGlue(mark));
  return pause >= from && kindOf(thing) !== undefined && placed(place) && more.length === 0
    ? [
        ...tokens.slice(0, next),
        ...['to', 'be'].map((t) => ({ t, word: (tokens[next] as Token).word })),
        ...again(verb),
        ...tokens.slice(next),
      ]
    : tokens;
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
    ? [...tokens.slice(0, and + 1), ...again(verb), ...tokens.slice(and + 1)]
    : tokens;
}

/** "hook on one oh six reduced, ramp on three eleven left", "reduced the hook, left the ramp": beside what was worked on it was not touched. */
function leftBeside(tokens: readonly Token[], did: number, verb: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => i > did && t === 'left' && (leaves(tokens, i) || definite.has(tokens[i + 1]?.t ?? '')));
  if (at < 0 || !scan(tokens.slice(0, at)).marks.some(done)) return tokens;
  const end = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
  const last = end < 0 ? tokens.length - 1 : end;
  const behind = leaves(tokens, at);
  const from = behind ? tokens.slice(0, at).findLastIndex(({ t, ends }) => ends === true || t === 'and' || t === 'but') + 1 : at + 1;
  const [thing, place, ...more] = scan(tokens.slice(from, behind ? at : last + 1)).marks.filter((mark) => !isGlue(mark));
  const { word, ends } = tokens[behind ? at : last] as Token;
  const own = (t: string): Token => ({ t, word });
  // "two oh six reduced, four eleven left alone"
  if (behind && thing?.place?.codes !== undefined && place === undefined && tokens[at + 1]?.t === 'alone')
    return [...tokens.slice(0, at), own('not'), ...again(verb), ...tokens.slice(at + 2)];
  // "reduced, ramp on the upper left": behind what is no number it is a side.
  if (kindOf(thing) !== 'overgrowth' || !placed(place) || more.length > 0 || (behind && place?.place?.codes === undefined)) return tokens;
  const to = behind ? at : last;
  return [
    ...tokens.slice(0, to),
    own((tokens[to] as Token).t),
    { ...own('alone'), ...(ends ? { ends } : {}) },
    ...tokens.slice(to + 1 + (tokens[to + 1]?.t === 'alone' ? 1 : 0)),
  ];
}
/** Behind what is left: nothing more, or how long it is left. */
const leaves = (tokens: readonly Token[], at: number): boolean =>
  closes(tokens, at) || ['alone', 'for', 'till', 'until'].includes(tokens[at + 1]?.t ?? '');
const closes = (tokens: readonly Token[], at: number): boolean => at === tokens.length - 1 || tokens[at]?.ends === true;

/** The verb, or "alone", said again where it is meant again. */
export const sharedWork: readonly Rewording[] = [{ rule: saidAgain, needs: ['left', 'next', 'were', 'and', 'not', ...onesWords] }];
