/** "Took it down two", "reduced three oh eight by two": a number with no unit right behind "down" or "by" of a tooth is millimetres. How many of them were taken down stands before it ("took two down"). */
import { loweredSay } from '../lexicon/handling.ts';
import { readCodes } from './codes.ts';
import { readNumber } from './numbers.ts';
import type { Rewording } from './said.ts';
import { readMeasure } from './sizes.ts';
import type { Token } from './tokens.ts';

const lowered: ReadonlySet<string> = new Set(loweredSay);
const byItself: ReadonlySet<string> = new Set(['reduced', 'lowered', 'shortened', 'trimmed', 'reduce']);
const behind: ReadonlySet<string> = new Set(['and', 'with', 'now', 'today', 'then', 'so', 'but', 'again', 'already', 'each']);
const more: ReadonlySet<string> = new Set(['by', 'to', 'another', 'about']);
const pointing: ReadonlySet<string> = new Set(['it', 'that', 'this', 'them', 'both', 'those', 'one', 'hook', 'ramp', 'step']);
const MOST = 10;
/** How far its verb stands before "down". */
const NEAR = 12;

function inMillimetres(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => bareAt(tokens, i) !== undefined);
  const to = bareAt(tokens, at);
  if (to === undefined) return tokens;
  const number = tokens[to - 1] as Token;
  return inMillimetres([
    ...tokens.slice(0, to - 1),
    { t: number.t, word: number.word },
    { t: 'mil', word: number.word, ...(number.ends ? { ends: true as const } : {}) },
    ...tokens.slice(to),
  ]);
}

/** Where the bare number behind the word here ends. */
function bareAt(tokens: readonly Token[], at: number): number | undefined {
  const word = tokens[at]?.t;
  if (word !== 'down' && word !== 'by') return undefined;
  const verb = tokens.findLastIndex(
    ({ t }, i) => i < at && i >= at - NEAR && (word === 'down' ? lowered.has(t) || byItself.has(t) : byItself.has(t)),
  );
  // Right before it stands what is taken down: a tooth, what was found, or what points to it.
  const thing = tokens[at - 1]?.t === 'down' ? at - 2 : at - 1;
  if (verb < 0 || thing <= verb || tokens[thing]?.ends || !(pointing.has(tokens[thing]?.t ?? '') || endsTooth(tokens, thing)))
    return undefined;
  let from = at + 1;
  while (more.has(tokens[from]?.t ?? '')) from += 1;
  const number = readNumber(tokens, from);
  if (number === undefined || number.value < 1 || number.value > MOST || readCodes(tokens, from) !== undefined) return undefined;
  const next = tokens[number.to]?.t;
  const closed =
    tokens[number.to - 1]?.ends === true ||
    next === undefined ||
    behind.has(next) ||
    (next === 'by' && tokens[number.to + 1]?.t === 'hand');
  return closed ? number.to : undefined;
}
const endsTooth = (tokens: readonly Token[], last: number): boolean =>
  [2, 1, 3, 4].some((words) => last - words + 1 >= 0 && readCodes(tokens, last - words + 1)?.to === last + 1);

const verbs: ReadonlySet<string> = new Set(['take', 'bring', 'get']);
/** "Plan to take four eleven down another three mil": a tooth taken down so far is reduced. */
function takenDown(tokens: readonly Token[]): readonly Token[] {
  for (let at = 0; at < tokens.length - 3; at += 1) {
    const tooth = verbs.has(tokens[at]?.t ?? '') ? readCodes(tokens, at + 1) : undefined;
    if (tooth === undefined || tokens[tooth.to]?.t !== 'down' || tokens[tooth.to]?.ends || tokens[tooth.to - 1]?.ends) continue;
    let from = tooth.to + 1;
    while (more.has(tokens[from]?.t ?? '') || (tokens[from]?.t === 'a' && tokens[from + 1]?.t === 'further'))
      from += tokens[from]?.t === 'a' ? 2 : 1;
    if (readMeasure(tokens, from)?.measure?.unit !== 'mm') continue;
    const [verb, down] = [tokens[at] as Token, tokens[tooth.to] as Token];
    return [
      ...tokens.slice(0, at),
      { t: 'reduce', word: verb.word, heard: [verb.word, down.word] },
      ...tokens.slice(at + 1, tooth.to),
      ...tokens.slice(tooth.to + 1),
    ];
  }
  return tokens;
}

export const downBare: readonly Rewording[] = [
  { rule: inMillimetres, needs: ['down', 'by'] },
  { rule: takenDown, needs: ['down'] },
];
