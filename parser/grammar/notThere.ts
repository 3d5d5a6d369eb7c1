/**
 * "Not" between a finding and its place: "the crack is not in one oh nine" rules it out there, "it is on two oh nine" behind it says where it
 * is. Without a verb ("hook not on one oh six", "ramp three eleven not") it may be "noted" or "nought" that was said: both readings are offered.
 */
import { prepositions } from './groups.ts';
import type { Reading } from './read.ts';
import type { Head } from './roles.ts';
import { saidAs } from './bareNo.ts';
import { either } from './either.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Rewording, Way } from './said.ts';
import type { Token } from './tokens.ts';

const beings = new Set(['is', 'are', 'was', 'were']);
const they = new Set(['it', 'that', 'they', 'those']);
const leadsPlace = ({ t }: Token = { t: '' } as Token): boolean => prepositions.has(t);

/** @param at the mark that holds the "not"; @param head what was named before it */
export function saidNotThere(marks: readonly Mark[], tokens: readonly Token[], at: number, head: Head | undefined): boolean {
  const { to } = marks[at] as Mark;
  const next = marks.slice(at + 1).find((mark) => !isGlue(mark));
  return (
    head?.condition !== undefined &&
    tokens[to - 1]?.t === 'not' &&
    beings.has(tokens[to - 2]?.t ?? '') &&
    marks.slice(head.mark + 1, at).every(isGlue) &&
    leadsPlace(tokens[to]) &&
    isPlace(next)
  );
}

/** "..., it is on two oh nine" behind "is not on": said again of another place, as "but on two oh nine" is. */
function isThere(tokens: readonly Token[]): readonly Token[] {
  const not = tokens.findIndex(({ t }, i) => t === 'not' && beings.has(tokens[i - 1]?.t ?? '') && leadsPlace(tokens[i + 1]));
  const it =
    not < 0
      ? -1
      : tokens.findIndex(({ t }, i) => i > not && they.has(t) && beings.has(tokens[i + 1]?.t ?? '') && leadsPlace(tokens[i + 2]));
  return it < 0 ? tokens : tokens.map((token, i) => (i === it && tokens[i - 1]?.t !== 'but' ? { ...token, t: 'but' } : token));
}

const some: ReadonlySet<string> = new Set(['one', 'some', 'two', 'three', 'a', 'couple']);
/** "no hooks on one oh six, there is on two oh six": behind what was ruled out, as "but there is on two oh six". */
function thereIs(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => {
    if (i < 2 || t !== 'there' || tokens[i - 1]?.ends !== true || !['is', 'are'].includes(tokens[i + 1]?.t ?? '')) return false;
    let next = i + 2;
    while (some.has(tokens[next]?.t ?? '')) next += 1;
    return leadsPlace(tokens[next]) && tokens.slice(0, i).some(({ t: before }) => before === 'no' || before === 'none' || before === 'not');
  });
  return at < 0 ? tokens : [...tokens.slice(0, at), { t: 'but', word: (tokens[at] as Token).word, carried: true }, ...tokens.slice(at)];
}

/** "hook on one oh six yes, ramp on three eleven no": each behind its own finding. */
function yesAndNo(tokens: readonly Token[]): readonly Token[] {
  const ends = (at: number): boolean => at === tokens.length - 1 || tokens[at]?.ends === true;
  const yes = tokens.findIndex(({ t }, i) => t === 'yes' && i > 0 && ends(i));
  const no = yes < 0 ? -1 : tokens.findIndex(({ t }, i) => t === 'no' && i > yes + 1 && ends(i));
  if (no < 0 || !namesFinding(scan(tokens.slice(yes + 1, no)).marks[0])) return tokens;
  const { word } = tokens[no] as Token;
  const closed = tokens.slice(0, no - 1).concat({ ...(tokens[no - 1] as Token), ends: true }, tokens.slice(no + 1));
  return closed.flatMap((token, i) =>
    i === yes
      ? []
      : i === yes - 1
        ? [
            { ...token, ends: true as const },
            { t: 'no', word },
          ]
        : [token],
  );
}

const anything: ReadonlySet<string> = new Set(['anything', 'owt', 'whatever']);
const ofTheSort: ReadonlySet<string> = new Set([
  'like',
  'that',
  'it',
  'else',
  'of',
  'the',
  'this',
  'sort',
  'kind',
  'note',
  'really',
  'at',
  'all',
]);
/** "no lumps, bumps or anything like that, hook on one oh six": names nothing, and what was listed ends there. */
function orAnything(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => t === 'or' && i > 0 && anything.has(tokens[i + 1]?.t ?? ''));
  if (at < 0) return tokens;
  let to = at + 2;
  while (tokens[to - 1]?.ends !== true && ofTheSort.has(tokens[to]?.t ?? '')) to += 1;
  const closes = tokens[to - 1]?.ends === true;
  // "or anything abnormal" names it.
  if (!closes && to < tokens.length && !leadsPlace(tokens[to])) return tokens;
  const listed = tokens.slice(0, at);
  const heads = scan(listed).marks.filter(namesFinding);
  const last = heads.at(-1);
  if (last?.to !== at) return tokens;
  const or = heads.length > 1 && listed[last.from - 1]?.t !== 'or' ? [{ ...(tokens[at] as Token), ends: undefined }] : [];
  const name = listed.slice(last.from);
  const ended = closes ? [...name.slice(0, -1), { ...(name.at(-1) as Token), ends: true as const }] : name;
  return [...listed.slice(0, last.from), ...or, ...ended, ...tokens.slice(to)];
}

export const butThere: readonly Rewording[] = [
  { rule: orAnything, needs: anything },
  { rule: yesAndNo, needs: ['yes'] },
  { rule: isThere, needs: ['not'] },
  { rule: thereIs, needs: ['there'] },
];

/** @returns the word that is a "not" without a verb right behind a finding or its place, with nothing behind it that it could turn */
function bareNot(tokens: readonly Token[]): number | undefined {
  const at = tokens.findIndex(
    ({ t, word }, i) => t === 'not' && i > 0 && word !== tokens[i - 1]?.word && !beings.has(tokens[i - 1]?.t ?? ''),
  );
  if (at < 0) return undefined;
  const { marks } = scan(tokens);
  const here = marks.findIndex(({ from, to }) => from === at && to === at + 1);
  const before = marks.slice(0, Math.max(here, 0)).filter((mark) => !isGlue(mark));
  const behind = marks.slice(here + 1).filter((mark) => !isGlue(mark));
  const last = before.at(-1);
  const ofName =
    namesFinding(last) && (at === tokens.length - 1 || (leadsPlace(tokens[at + 1]) && behind.length === 1 && isPlace(behind[0])));
  const ofPlace =
    at === tokens.length - 1 &&
    before.filter(isPlace).length === 1 &&
    before.some(namesFinding) &&
    !tokens.slice(0, at).some(({ ends }) => ends);
  return here > 0 && (ofName || ofPlace) ? tokens[at]?.word : undefined;
}
const namesFinding = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'condition') ?? false;
const isPlace = (mark: Mark | undefined): boolean => mark?.place !== undefined && !isHead(mark);

/** Both readings of it, neither taken. */
function noticedOrNot(noticed: Reading, not: Reading, word: number): Reading {
  const marked = noticed.marks.flatMap(({ from, to }, m) =>
    noticed.tokens.slice(from, to).some((token) => token.word === word) ? [m] : [],
  );
  return either(noticed, not, 'a bare not', marked);
}

export const notedOrNot: Way = (tokens, { once }) => {
  const not = bareNot(tokens);
  return not === undefined ? undefined : noticedOrNot(once(saidAs(tokens, not, 'noted')), once(saidAs(tokens, not, 'not noted')), not);
};
