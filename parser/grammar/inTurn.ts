/**
 * "on one oh six a hook, on three eleven a ramp": place before finding, in turn; without the "on" nothing else can be meant. So too "both a hook
 * and a ramp", and "hook and ramp on one oh six and three eleven respectively", where each is said again at its own place.
 */
import { prepositions } from './groups.ts';
import { digit } from './numbers.ts';
import { lastApart } from './restated.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const opening: ReadonlySet<string> = new Set(['on', 'in', 'at']);
const small: ReadonlySet<string> = new Set(['a', 'an', 'the', 'there', 'is', 'and', 'also', 'some', 'bit', 'of', 'we', 'i', 'have', 'got']);
const one: ReadonlySet<string> = new Set(['a', 'an']);

/** Without what is not needed. */
function pairs(said: readonly Token[]): readonly Token[] {
  if (!opening.has(said[0]?.t ?? '')) return said;
  const marks = scan(said).marks.filter((mark) => !isGlue(mark) && !describes(mark));
  const inPairs =
    marks.length > 3 &&
    marks.length % 2 === 0 &&
    marks.every((mark, i) => (i % 2 === 0 ? mark.place !== undefined && !isHead(mark) : isHead(mark) && mark.place === undefined));
  if (!inPairs) return said;
  const leads = new Set(marks.flatMap((mark, i) => (i % 2 === 0 ? [mark.from - 1] : [])));
  return said.filter(({ t }, i) => !(leads.has(i) && prepositions.has(t)));
}
const describes = ({ terms }: Mark): boolean =>
  terms?.every((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'filler') === true;

/** "both a hook and a ramp on one oh six", "on both the left cheek and the right cheek": of what is counted behind it, no sides. */
function withoutBoth(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => t === 'both' || t === 'either');
  if (at < 0) return tokens;
  const from = tokens.findIndex(({ t }, i) => i > at && !small.has(t));
  const [first, ...rest] = scan(tokens.slice(from)).marks;
  const next = rest.find((mark) => !isGlue(mark));
  const [joint] = first ? tokens.slice(from + first.to).filter(({ t }) => t === 'and' || t === 'or') : [];
  const joined = first && joint && tokens.slice(from + first.to, from + (next?.from ?? first.to)).includes(joint);
  const names = (mark: Mark | undefined): boolean => isHead(mark) && mark?.place === undefined;
  const second = rest.filter((mark) => !isGlue(mark))[1];
  // "both the hook on one oh six and the ramp on three eleven are small"
  const placed =
    joint?.t === 'and' &&
    names(first) &&
    next?.place !== undefined &&
    names(second) &&
    tokens.slice(from + next.to, from + (second?.from ?? 0)).includes(joint);
  const parts = (mark: Mark | undefined): boolean => mark?.place?.region !== undefined && mark.place.side !== undefined;
  return placed || (joined && ((joint.t === 'and' && names(first) && names(next)) || (parts(first) && parts(next))))
    ? tokens.filter((_, i) => i !== at)
    : tokens;
}

/** "grades one and three", "grade one and three respectively": each number is a grade. */
function eachGraded(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => t === 'grades' || t === 'grade');
  const many = at >= 0 && (tokens[at]?.t === 'grades' || tokens.at(-1)?.t === 'respectively');
  const and = many ? tokens.findIndex(({ t }, i) => i > at + 1 && t === 'and') : -1;
  const next = tokens[and + 1];
  return and < 0 || next === undefined || digit(next.t) === undefined || tokens.slice(at + 1, and).some(({ t }) => digit(t) === undefined)
    ? tokens
    : tokens.flatMap((token, i) => (i > at + 1 && i <= and + 1 && i !== and ? [{ t: 'grade', word: token.word }, token] : [token]));
}

/** "three and five mil": each number has the unit. */
function eachSized(tokens: readonly Token[]): readonly Token[] {
  const and = tokens.findIndex(
    ({ t }, i) => t === 'and' && digit(tokens[i - 1]?.t ?? '') !== undefined && digit(tokens[i + 1]?.t ?? '') !== undefined,
  );
  if (and < 0 || tokens[and - 2]?.t === 'between') return tokens;
  const { marks } = scan(tokens);
  const size = marks.find(({ from, measure }) => from === and + 1 && measure !== undefined);
  const number = marks.some(({ from, to, number: n, place }) => to === and && from === and - 1 && n !== undefined && place === undefined);
  const places = marks.filter(({ to, place }) => to < and && place !== undefined).flatMap((mark) => eachOf(mark, tokens));
  return size !== undefined && number && size.to === and + 3 && places.length > 1
    ? [...tokens.slice(0, and), { t: (tokens[and + 2] as Token).t, word: (tokens[and - 1] as Token).word }, ...tokens.slice(and)]
    : tokens;
}

/** As many findings as teeth, one after the other: each finding before its own tooth. */
function respectively(tokens: readonly Token[]): readonly Token[] {
  const last = tokens.findIndex(({ t }) => t === 'respectively');
  // "a hook and a ramp, one oh six and three eleven": one of each.
  const ones = last < 0 && tokens.filter(({ t }) => one.has(t)).length > 1 && one.has(tokens[0]?.t ?? '');
  if (last < 0 && !ones) return tokens;
  const { marks } = scan(tokens);
  const place = marks.findIndex((mark) => mark.place !== undefined);
  const names = marks.filter((mark) => isHead(mark) && mark.place === undefined);
  const firstName = marks.indexOf(names[0] as Mark);
  const places = marks.flatMap((mark) => (mark.place === undefined ? [] : eachOf(mark, tokens)));
  const between = marks.filter((mark) => mark.place === undefined && !names.includes(mark));
  const end = Math.max(names.at(-1)?.to ?? 0, places.at(-1)?.to ?? 0);
  if (
    names.length < 2 ||
    names.length !== places.length ||
    between.some((mark) => mark.from < end && !isGlue(mark) && !describes(mark)) ||
    !inOneRun(marks, firstName, names.at(-1) as Mark, (mark) => mark.place !== undefined) ||
    (last >= 0 && last < end) ||
    (ones && (place < firstName || !parted(tokens, names, places[0] as Mark)))
  )
    return tokens;
  const from = names.map((mark, i) => {
    const before = i > 0 ? (names[i - 1] as Mark).to : place < firstName ? (places.at(-1) as Mark).to : 0;
    let start = mark.from;
    while (start > before && tokens[start - 1]?.t !== 'and' && !tokens[start - 1]?.ends && !verbs.has(tokens[start - 1]?.t ?? ''))
      start -= 1;
    return start;
  });
  const behind = tokens.slice(end).filter(({ t }) => t !== 'respectively');
  return [
    ...names.flatMap((mark, i) => {
      const own = tokens.slice((places[i] as Mark).from, (places[i] as Mark).to);
      const said = [...tokens.slice(from[i], mark.to), { t: 'on', word: (own[0] as Token).word }, ...own];
      return said.map(({ t, word }, k) => ({ t, word, ...(k === said.length - 1 ? { ends: true as const } : {}) }));
    }),
    ...behind,
  ];
}
const verbs: ReadonlySet<string> = new Set(['has', 'have', 'with', 'is', 'are']);
/** Every name has its own "a", and a pause parts them from the places. */
const parted = (tokens: readonly Token[], names: readonly Mark[], place: Mark): boolean =>
  names.every(({ from }, i) => tokens.slice(names[i - 1]?.to ?? 0, from).some(({ t }) => one.has(t))) &&
  tokens[(names.at(-1) as Mark).to - 1]?.ends === true &&
  tokens.slice((names.at(-1) as Mark).to, place.from).every(({ t }) => t === 'the' || t === 'on');
const inOneRun = (marks: readonly Mark[], from: number, last: Mark, other: (mark: Mark) => boolean): boolean =>
  !marks.slice(from, marks.indexOf(last)).some(other);
/** Each tooth of a list by its own words; a list that cannot be taken apart stays as it is. */
function eachOf(mark: Mark, tokens: readonly Token[]): readonly Mark[] {
  const [rest, ...last] = lastApart(mark, tokens.slice(0, mark.to), 1, false).filter(({ place }) => place !== undefined);
  return rest === undefined || last.length === 0 ? [mark] : [...eachOf(rest, tokens), ...last];
}

export const inTurn: readonly Rewording[] = [
  { rule: withoutBoth, needs: ['both', 'either'] },
  { rule: eachGraded, needs: ['grade', 'grades'] },
  { rule: eachSized, needs: ['and'] },
  { rule: respectively, needs: ['respectively', ...one] },
  { rule: pairs, needs: opening },
];
