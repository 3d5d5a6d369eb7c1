/**
 * "Tushes coming through below", "her two wolf teeth above": the jaw behind what is named by its kind. "Hook on one oh six, none below" is of the
 * tooth that faces it, "hooks on the upper sixes, none below" of the other jaw; what was found stays.
 */
import { jawBehind, kindsOfJaw } from '../lexicon/places.ts';
import { plainly } from './saidPlainly.ts';
import { scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const kinds: ReadonlySet<string> = new Set(kindsOfJaw);
/** "the tooth above" is another one; "down below" is read as it is. */
const teeth: ReadonlySet<string> = new Set(['teeth', 'tooth']);
const ofTeeth: ReadonlySet<string> = new Set(['wolf', 'cheek', 'canine', 'corner', 'front']);
const written: ReadonlySet<string> = new Set(['down', 'up']);
const closing: ReadonlySet<string> = new Set(['too', 'also', 'either', 'as', 'and', 'but', 'though', 'only', 'now', 'yet']);
const none: ReadonlySet<string> = new Set(['none', 'nothing', 'nil', 'not']);
/** "the one below", "from above", "as below": of a tooth, a view or words. */
const other: ReadonlySet<string> = new Set([
  'one',
  'from',
  'as',
  'and',
  'or',
  'the',
  'just',
  'mentioned',
  'up',
  'down',
  'tooth',
  'teeth',
  'those',
  'row',
  'right',
  'left',
  'it',
  'that',
]);
const named = (tokens: readonly Token[]): boolean =>
  scan(tokens).marks.some(({ place }) => place?.jaw !== undefined || place?.codes !== undefined);

function inItsJaw(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t, ends }, i) =>
      jawBehind[t] !== undefined && i > 0 && (ends === true || i === tokens.length - 1 || closing.has(tokens[i + 1]?.t ?? '')),
  );
  const jaw = at < 0 ? undefined : jawBehind[(tokens[at] as Token).t];
  if (jaw === undefined) return tokens;
  const from = tokens.slice(0, at).findLastIndex(({ ends, t }) => ends === true || t === 'and' || t === 'but') + 1;
  const part = tokens.slice(from, at);
  const kind = part.findIndex(({ t }, i) => kinds.has(t) || (teeth.has(t) && ofTeeth.has(part[i - 1]?.t ?? '')));
  if (written.has(tokens[at - 1]?.t ?? '')) return tokens;
  if (kind >= 0 && !named(part) && !['right', 'left'].includes(tokens[at - 1]?.t ?? '')) {
    const { ends, ...last } = tokens[at - 1] as Token;
    const closes = ends === true || tokens[at]?.ends === true;
    const first = ofTeeth.has(part[kind - 1]?.t ?? '') ? kind - 1 : kind;
    const put: Token = { t: jaw, word: (tokens[at] as Token).word };
    const before = [...tokens.slice(0, at - 1), closes ? { ...last, ends: true as const } : last];
    return [...before.slice(0, from + first), put, ...before.slice(from + first), ...tokens.slice(at + 1)];
  }
  const rulesOut = none.has(part[0]?.t ?? '') && part.length === 1;
  const told = scan(tokens.slice(0, from)).marks.filter(({ place }) => place !== undefined);
  const where = told.at(-1)?.place;
  if (!rulesOut || where === undefined || where.region !== undefined || other.has(part.at(-1)?.t ?? '')) return tokens;
  const single = told.length === 1 && where.codes?.length === 1;
  const words = single ? ['on', 'the', 'one', (tokens[at] as Token).t] : ['on', 'the', `${jaw}s`];
  return [...tokens.slice(0, at), ...plainly(tokens, at, at + 1, words), ...tokens.slice(at + 1)];
}

const sides: ReadonlySet<string> = new Set(['side', 'sides']);
/** "Wolf teeth both sides, none on the lowers": on both sides of the other jaw, for no jaw was said of them. */
function otherJaw(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => i > 1 && none.has(t) && tokens[i - 1]?.ends === true);
  const behind =
    at < 0
      ? undefined
      : /^(?:(?:on|in|at) )?(?:the )?(lowers?|bottom|uppers?|top)(?: (?:ones|row|rows|jaw))?(?: |$)/.exec(textOf(tokens.slice(at + 1)));
  const both = behind
    ? tokens.slice(0, at).findLastIndex(({ t }, i) => sides.has(t) && ['both', 'each', 'either'].includes(tokens[i - 1]?.t ?? ''))
    : -1;
  const before = tokens.slice(0, at);
  const onlySides = scan(before).marks.every(
    ({ place }) => place === undefined || (place.side === 'both' && place.jaw === undefined && place.region === undefined),
  );
  if (
    !behind ||
    both < 0 ||
    named(before) ||
    !onlySides ||
    /^(?:lower|upper|bottom|top)s? (?:left|right)/.test(textOf(tokens.slice(at + 1)).replace(/^(?:(?:on|in|at) )?(?:the )?/, ''))
  )
    return tokens;
  const jaw = /^[lb]/.test(behind[1] as string) ? 'upper' : 'lower';
  return [...tokens.slice(0, both - 1), { t: jaw, word: (tokens[both - 1] as Token).word, carried: true }, ...tokens.slice(both - 1)];
}
const across: Readonly<Record<string, string>> = { left: 'right', right: 'left' };
/** "Points upper right, same on the left": the other side stays in the jaw that was named. */
function sameJaw(tokens: readonly Token[]): readonly Token[] {
  const same = tokens.findIndex(({ t }, i) => t === 'same' && i > 1);
  const end = tokens.findIndex(({ ends }, i) => i >= same && ends === true);
  const side = tokens.findIndex(({ t }, i) => i > same && (end < 0 || i <= end) && across[t] !== undefined);
  if (same < 0 || side < 0 || !/^(?:(?:again|thing|on|at|for|over|the) )*$/.test(`${textOf(tokens.slice(same + 1, side))} `)) return tokens;
  const mark = scan(tokens.slice(0, same)).marks.findLast(({ place }) => place !== undefined);
  const place = mark?.place;
  const quarter = place?.codes === undefined && place?.region === undefined && place?.side === across[(tokens[side] as Token).t];
  if (!mark || !quarter || (place?.jaw !== 'upper' && place?.jaw !== 'lower')) return tokens;
  const to = tokens[side + 1]?.t === 'side' && tokens[side]?.ends !== true ? side + 2 : side + 1;
  const words = tokens.slice(mark.from, mark.to).map(({ t }) => across[t] ?? t);
  return [...tokens.slice(0, side), ...plainly(tokens, side, to, words), ...tokens.slice(to)];
}
const textOf = (tokens: readonly Token[]): string => tokens.map(({ t }) => t).join(' ');

/** Each in its turn: "canines up above, none below". */
function eachInItsJaw(tokens: readonly Token[]): readonly Token[] {
  const put = inItsJaw(tokens);
  return put === tokens ? tokens : eachInItsJaw(put);
}

export const aboveBelow: readonly Rewording[] = [
  { rule: eachInItsJaw, needs: Object.keys(jawBehind) },
  { rule: otherJaw, needs: none },
  { rule: sameJaw, needs: ['same'] },
];
