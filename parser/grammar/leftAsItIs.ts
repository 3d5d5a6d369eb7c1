/**
 * "Left the wolf tooth in", "the cap can stay on", "couldn't get the wolf tooth", "had a go at the cap, no joy": what was left as it is, or tried
 * in vain, told by words of no trade. Said again as work that was not done, or tried, on that thing.
 */
import { handleSay } from '../lexicon/handling.ts';
import { atTheEnd, describing, failing, goesOn, inVain, leavingSay, leftHow, trying } from '../lexicon/plainWork.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';
import {
  as,
  between,
  eachOnce,
  ended,
  particles,
  stops,
  t,
  thingAt,
  thingBefore,
  toothAt,
  toothBefore,
  type Rule,
  type Thing,
  type Tokens,
} from './worked.ts';

const left = longestOf([[leftHow, true]]);
const couldNot = longestOf([[failing, true]]);
const tried = longestOf([[trying, true]]);
const vain = longestOf([[inVain, true]]);

/** Where the words of how it is left end. */
function leftEnd(tokens: Tokens, at: number): number | undefined {
  const form = formAt(left, tokens, at);
  if (form) return at + form.words.length;
  return atTheEnd.has(t(tokens, at)) && (stops(tokens, at + 1) || goesOn.has(t(tokens, at + 1))) ? at + 1 : undefined;
}
/** "left the wolf tooth on the upper left in", "the cap on five oh seven left on", "can stay on": it was not done. */
const stays: Rule = (tokens, at) => {
  if (!leavingSay.has(t(tokens, at)) || tokens[at]?.ends) return undefined;
  return t(tokens, at).startsWith('l') ? (leaves(tokens, at) ?? staysThere(tokens, at)) : staysThere(tokens, at);
};
function leaves(tokens: Tokens, at: number): Tokens | undefined {
  const named = describing.has(t(tokens, at + 1)) ? thingAt(tokens, at + 1) : undefined;
  const ahead = named ?? toothAt(tokens, at + 1);
  if (ahead === undefined || ended(tokens, at, ahead.to)) return group(tokens, at);
  const end = leftEnd(tokens, ahead.to);
  return end === undefined || (named === undefined && t(tokens, ahead.to) !== 'in')
    ? group(tokens, at)
    : [
        ...tokens.slice(0, at),
        ...tokens.slice(at + 1, ahead.to),
        ...undone(ahead, tokens[at] as Token, tokens[end - 1] as Token),
        ...tokens.slice(end),
      ];
}
function staysThere(tokens: Tokens, at: number): Tokens | undefined {
  const end = leftEnd(tokens, at + 1);
  const thing =
    end === undefined
      ? undefined
      : (thingBefore(tokens, at) ?? (t(tokens, at) === 'left' && t(tokens, at + 1) === 'in' ? toothBefore(tokens, at) : undefined));
  return thing === undefined ||
    end === undefined ||
    tokens.slice(thing.to, at).some((token) => !between.has(token.t) && !describing.has(token.t))
    ? undefined
    : [...tokens.slice(0, thing.to), ...undone(thing, tokens[at] as Token, tokens[end - 1] as Token), ...tokens.slice(end)];
}
const undone = ({ verb }: Thing, first: Token, last: Token): Tokens => [
  as('not', { ...first, ends: undefined } as unknown as Token),
  as(verb[1], last),
];
/** "left the incisors for another day": left alone, and what was not done to them is not said. */
function group(tokens: Tokens, at: number): Tokens | undefined {
  const [article, mark] = scan(tokens.slice(at + 1)).marks;
  const of = article?.place ? article : mark;
  const to = at + 1 + (of?.to ?? 0);
  const form = of?.place?.positions !== undefined || of?.place?.codes !== undefined ? formAt(left, tokens, to) : undefined;
  const end = to + (form?.words.length ?? 0);
  return form === undefined || form.words.includes('alone') || ended(tokens, at, to)
    ? undefined
    : [...tokens.slice(0, to), as('alone', tokens[end - 1] as Token), ...tokens.slice(end)];
}

/** "couldn't get the wolf tooth", "had a go at the cap, no joy": tried. */
const unable: Rule = (tokens, at) => {
  const could = formAt(couldNot, tokens, at);
  const try_ = could ? undefined : formAt(tried, tokens, at);
  const form = could ?? try_;
  const thing = form && !ended(tokens, at, at + form.words.length) ? thingAt(tokens, at + form.words.length) : undefined;
  if (form === undefined || thing === undefined || !describing.has(t(tokens, at + form.words.length))) return undefined;
  const rest = tokens.slice(thing.to + (could && particles.has(t(tokens, thing.to)) ? 1 : 0));
  if (could && thing.kind === 'overgrowth' && rest.length === tokens.length - thing.to) return undefined;
  if (
    could &&
    rest.length > 0 &&
    !ended(tokens, at, tokens.length - rest.length) &&
    !/^(?:so|and|but|today|at|because|he|she|it)$/.test(rest[0]?.t ?? '')
  )
    return undefined;
  const fails = try_ ? rest.findIndex((_, i) => formAt(vain, rest, i) !== undefined) : 0;
  if (fails < 0) return undefined;
  const word = tokens[at] as Token;
  const tail = try_ ? ['but', 'could', 'not'].map((one) => as(one, { word: (rest[fails] as Token).word, t: one })) : rest;
  return [
    ...tokens.slice(0, at),
    as('tried', word),
    as('to', word),
    as(thing.verb[0], word),
    ...tokens.slice(at + form.words.length, thing.to).map((token) => as(token.t, token)),
    ...tail,
  ];
};

/** "went to take the cap off but it's not ready": tried, as it came to nothing. */
const wentTo: Rule = (tokens, at) =>
  t(tokens, at) === 'went' &&
  t(tokens, at + 1) === 'to' &&
  handleSay.has(t(tokens, at + 2)) &&
  tokens.some((_, i) => i > at + 3 && formAt(vain, tokens, i) !== undefined)
    ? [...tokens.slice(0, at), as('tried', tokens[at] as Token), ...tokens.slice(at + 1)]
    : undefined;

export const triedInVain: readonly Rewording[] = [eachOnce(wentTo, ['went']), eachOnce(unable, firstWords(couldNot, tried))];
export const leftAsItIs: Rewording = eachOnce(stays, leavingSay);
