/** "Five mil at least", "two mil, if that", "four mil, could be five", "i'd put that at four mil", "six, seven, call it seven": what is said of a size beside it. */
import { askedOfSize, behindSize, guessBefore, judgedSay, orEven, settledSay } from '../lexicon/units.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import { mayBeNumber, readNumber } from './numbers.ts';
import type { Rewording } from './said.ts';
import { unitWords } from './sizes.ts';
import type { Token } from './tokens.ts';

const guessed: ReadonlySet<string> = new Set(guessBefore);
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

const judged = longestOf([[judgedSay, true as const]]),
  settled = longestOf([[settledSay, true as const]]),
  wondered = longestOf([[askedOfSize, true as const]]);
/** From these words on, and those between stand for the first behind them. */
const leftOutOf = (tokens: readonly Token[], from: number, to: number): readonly Token[] => [
  ...tokens.slice(0, from),
  { ...(tokens[to] as Token), heard: tokens.slice(from, to + 1).map(({ word }) => word) },
  ...tokens.slice(to + 1),
];
const figureAt = (tokens: readonly Token[], at: number): boolean => {
  const said = ['a', 'an', 'about', 'just', 'grade', 'maybe', 'around'].includes(tokens[at]?.t ?? '') ? at + 1 : at;
  return mayBeNumber(tokens[said]?.t);
};
/** "Peripheral caries i'd put that at one point two": a figure of it, and no time at which it was so. */
function withoutJudging(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => {
    const form = formAt(judged, tokens, i);
    // "i'd put him at nine" is an age, but for his condition.
    const ofHorse = form?.words.some((t) => t === 'him' || t === 'her') === true && !tokens.slice(0, i).some(({ t }) => t === 'condition');
    return form !== undefined && !ofHorse && figureAt(tokens, i + form.words.length);
  });
  return at < 0 ? tokens : leftOutOf(tokens, at, at + (formAt(judged, tokens, at)?.words.length ?? 0));
}
/** "How deep are you now, six, seven, call it seven mil": the last of them, as a size; what was asked of oneself and read off on the way stands aside. */
function settledOn(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => {
    const form = i > 0 ? formAt(settled, tokens, i) : undefined;
    const size = form && readNumber(tokens, i + form.words.length);
    return size !== undefined && unitWords.has(tokens[size.to]?.t ?? '');
  });
  if (at < 0) return withoutWondering(tokens);
  // Back over parts that are a number, or one or another: "two ten, call it four mil" is a tooth, and then its size.
  let from = at;
  for (let part = at; part > 0 && tokens[part - 1]?.ends === true;) {
    part = tokens.slice(0, part - 1).findLastIndex(({ ends: paused }) => paused === true) + 1;
    const said = tokens.slice(part, from).filter(({ t }) => !guessed.has(t));
    if (!said.every(({ t }, i) => (i % 2 === 0 ? mayBeNumber(t) : t === 'or' || t === 'to')) || said.length % 2 === 0) break;
    from = part;
  }
  return withoutWondering(from < at ? leftOutOf(tokens, from, at + (formAt(settled, tokens, at)?.words.length ?? 0)) : tokens);
}
function withoutWondering(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => {
    const form = formAt(wondered, tokens, i);
    const to = i + (form?.words.length ?? 0);
    return form !== undefined && tokens[to - 1]?.ends === true && figureAt(tokens, to);
  });
  return at < 0 ? tokens : leftOutOf(tokens, at, at + (formAt(wondered, tokens, at)?.words.length ?? 0));
}

export const moreOrLess: readonly Rewording[] = [
  { rule: withoutJudging, needs: ['put', 'measure', 'measured', 'gauge', 'gauged', 'clocked'] },
  { rule: settledOn, needs: ['call', 'say', 'make', 'go', 'settle', 'how'] },
  { rule: aboutSo, needs: guessed },
  { rule: withoutClosing, needs: firstWords(closing) },
  { rule: orTheNext, needs: firstWords(even) },
];
