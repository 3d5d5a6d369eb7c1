/** "two, two oh, two oh seven": a number begun and begun again is said once. Where it may be a number of its own it stays. */
import { digit } from './numbers.ts';
import { readCode } from './teeth.ts';
import { isOh, type Token } from './tokens.ts';

/** So many words of a tooth's number may be said before it is begun again. */
const MOST = 2;
/** What a lone first figure may follow; behind "grade" or "left" it says something. */
const opens: ReadonlySet<string> = new Set(['on', 'at', 'the', 'so', 'is', 'and', 'it']);

/** How many words here are the beginning of the tooth's number that comes right behind them. */
function startsFalsely(tokens: readonly Token[], at: number): number {
  const first = digit(tokens[at]?.t ?? '');
  if (first === undefined || first < 1 || first > 8) return 0;
  for (let length = 1; length <= MOST; length += 1) {
    if (tokens[at + length - 1]?.ends !== true) continue;
    const next = at + length;
    const again = tokens.slice(at, next).every(({ t }, i) => tokens[next + i]?.t === t || (isOh(t) && isOh(tokens[next + i]?.t)));
    const before = tokens[at - 1];
    const free = length > 1 ? isOh(tokens[next - 1]?.t) : before === undefined || (before.ends === true && at < 2) || opens.has(before.t);
    return again && free && (readCode(tokens, next) !== undefined || startsFalsely(tokens, next) > 0) ? length : 0;
  }
  return 0;
}

export function withoutFalseStarts(tokens: readonly Token[]): readonly Token[] {
  const gone = new Set<number>();
  for (let at = 0; at < tokens.length; at += 1) {
    const length = startsFalsely(tokens, at);
    for (let i = 0; i < length; i += 1) gone.add(at + i);
    at += Math.max(0, length - 1);
  }
  return gone.size === 0 ? tokens : tokens.filter((_, i) => !gone.has(i));
}
