/** "Five mil at least", "two mil, if that", "four mil, could be five": what is said of a size right behind it. */
import { behindSize, guessBefore, orEven } from '../lexicon/units.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import { readNumber } from './numbers.ts';
import type { Rewording } from './said.ts';
import { unitWords } from './sizes.ts';
import type { Token } from './tokens.ts';

const closing = longestOf([[behindSize, true as const]]),
  even = longestOf([[orEven, true as const]]);
const ends = (tokens: readonly Token[], to: number): boolean => to >= tokens.length || tokens[to - 1]?.ends === true;

const unended = (token: Token): Token => Object.fromEntries(Object.entries(token).filter(([key]) => key !== 'ends')) as unknown as Token;

/** The size stands as it was said: the words behind it make no other of it, and rule out nothing. */
function withoutClosing(tokens: readonly Token[]): readonly Token[] {
  const unit = tokens.findIndex(({ t }, i) => unitWords.has(t) && formAt(closing, tokens, i + 1) !== undefined);
  const to = unit + 1 + (formAt(closing, tokens, unit + 1)?.words.length ?? 0);
  if (unit < 0 || !ends(tokens, to)) return tokens;
  const size = unended(tokens[unit] as Token);
  return [...tokens.slice(0, unit), tokens[to - 1]?.ends ? { ...size, ends: true as const } : size, ...tokens.slice(to)];
}

/** Of two sizes both are kept: from one to the other. */
function orTheNext(tokens: readonly Token[]): readonly Token[] {
  const unit = tokens.findIndex(({ t }, i) => unitWords.has(t) && formAt(even, tokens, i + 1) !== undefined);
  const at = unit + 1 + (formAt(even, tokens, unit + 1)?.words.length ?? 0);
  const more = unit < 0 ? undefined : readNumber(tokens, at);
  if (more === undefined) return tokens;
  const to = unitWords.has(tokens[more.to]?.t ?? '') ? more.to + 1 : more.to;
  const before = Array.from({ length: 4 }, (_, i) => unit - 1 - i).findLast((i) => i >= 0 && readNumber(tokens, i)?.to === unit);
  const less = before === undefined ? undefined : readNumber(tokens, before);
  if (
    !ends(tokens, to) ||
    less === undefined ||
    typeof less.value !== 'number' ||
    typeof more.value !== 'number' ||
    more.value <= less.value
  )
    return tokens;
  const size = unended(tokens[unit] as Token);
  return [
    ...tokens.slice(0, unit),
    { t: 'to', word: (tokens[unit + 1] as Token).word },
    ...tokens.slice(at, more.to).map(unended),
    tokens[to - 1]?.ends ? { ...size, ends: true as const } : size,
    ...tokens.slice(to),
  ];
}

const guessed: ReadonlySet<string> = new Set(guessBefore);
const halves: ReadonlySet<string> = new Set(['halfway', 'half', 'partway', 'fully']);
/** "hook on one oh six, probably five mil": a guess at the size, and not at the hook. */
function aboutSo(tokens: readonly Token[]): readonly Token[] {
  const is = (at: number): boolean => {
    const number = guessed.has(tokens[at]?.t ?? '') && tokens[at]?.ends !== true ? readNumber(tokens, at + 1) : undefined;
    return (
      (number !== undefined && unitWords.has(tokens[number.to]?.t ?? '')) ||
      (guessed.has(tokens[at]?.t ?? '') && halves.has(tokens[at + 1]?.t ?? ''))
    );
  };
  return tokens.some((_, at) => is(at)) ? tokens.map((token, at) => (is(at) ? { ...token, t: 'about' } : token)) : tokens;
}

export const moreOrLess: readonly Rewording[] = [
  { rule: aboutSo, needs: guessed },
  { rule: withoutClosing, needs: firstWords(closing) },
  { rule: orTheNext, needs: firstWords(even) },
];
