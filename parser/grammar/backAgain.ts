/** "Rasped six months ago and there's points back on the uppers already": the work was then, and what has come back is found now, at no back of anything. */
import { backThere, doneThen } from '../lexicon/history.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import { endOfPart } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const textOf = (tokens: readonly Token[]): string => tokens.map(({ t }) => t).join(' ');

/** What was done then ends where it is said when, as at a pause. */
function pausedBehind(tokens: readonly Token[]): readonly Token[] {
  const then = doneThen.exec(textOf(tokens.slice(0, endOfPart(tokens, 0))))?.[0];
  const last = then === undefined ? -1 : then.split(' ').length - 1;
  return last < 0 || tokens[last]?.ends ? tokens : tokens.map((token, i) => (i === last ? { ...token, ends: true as const } : token));
}

/** "points back on the uppers" behind what was done then, "the points are back on the lowers": they have come again. */
function comeAgain(said: readonly Token[]): readonly Token[] {
  const tokens = pausedBehind(said);
  const treated = doneThen.test(textOf(tokens.slice(0, endOfPart(tokens, 0))));
  const at = tokens.findIndex(({ t }, i) => t === 'back' && i > 0 && tokens[i - 1]?.ends !== true && isBack(tokens, i, treated));
  if (at < 0) return tokens;
  const before = tokens[at - 1] as Token;
  const words = [...(before.heard ?? [before.word]), (tokens[at] as Token).word];
  return [
    ...tokens.slice(0, at - 1),
    { ...before, heard: words, ...(tokens[at]?.ends ? { ends: true as const } : {}) },
    ...tokens.slice(at + 1),
  ];
}
function isBack(tokens: readonly Token[], at: number, treated: boolean): boolean {
  if (!backThere.test(`${textOf(tokens.slice(at + 1, endOfPart(tokens, at)))} `)) return false;
  const verb = ['is', 'are'].includes(tokens[at - 1]?.t ?? '');
  const before = tokens.slice(0, verb ? at - 1 : at);
  const named = scan(before).marks.at(-1);
  return (verb || treated) && named?.to === before.length && named.terms?.some(({ k }) => k === 'condition') === true;
}

export const backAgain: readonly Rewording[] = [{ rule: comeAgain, needs: ['back', 'ago', 'last', 'in'] }];
