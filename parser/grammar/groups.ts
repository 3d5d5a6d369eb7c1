/** Places that stand together, and how two marks are tied to each other: by the small words between them. */
import { within, type RawPlace } from './places.ts';
import type { Head, Roles } from './roles.ts';
import type { Mark } from './scan.ts';
import { otherSide, positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

export const prepositions = new Set(['on', 'of', 'at', 'in', 'around', 'from', 'to', 'for', 'by', 'along', 'over', 'across', 'off']);
const besideWords = new Set(['level', 'opposite', 'beside', 'next', 'alongside', 'adjacent']);
export interface Placing {
  readonly raw: RawPlace;
  readonly marks: readonly number[];
  readonly beside?: boolean;
  /** Said as "and the rest of ...", "and on both lower elevens": as much a place as the teeth named beside it. */ readonly rest?: boolean;
}
export type Link = 'and' | 'or' | 'nor' | 'stop' | 'prep' | 'beside' | '';

/** "next to none on four oh four": how much, and not where. */
export const isHowMuch = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.t === 'next' && tokens[at + 1]?.t === 'to' && ['no', 'none'].includes(tokens[at + 2]?.t ?? '');

/** "and", "plus", "as well as" */
const joins = (between: readonly string[]): boolean =>
  between.includes('and') || between.includes('plus') || between.join(' ').includes('as well as');

/** How two marks are tied: the strongest small word between them, when nothing else stands there. */
export function linkBetween(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], a: number, b: number): Link {
  const between = tokens.slice((marks[a] as Mark).to, (marks[b] as Mark).from).map(({ t }) => t);
  if (role.slice(a + 1, b).includes('stop')) return 'stop';
  for (const word of ['nor', 'or'] as const) if (between.includes(word)) return word;
  const beside = (t: string, i: number): boolean =>
    besideWords.has(t) ? !isHowMuch(tokens, (marks[a] as Mark).to + i) : t === 'across' && between[i + 1] === 'from';
  if (between.some(beside)) return 'beside';
  const last = (tokens[(marks[b] as Mark).from - 1]?.t ?? '') === 'the' ? between.at(-2) : between.at(-1);
  if (last !== undefined && prepositions.has(last)) return 'prep';
  return joins(between) ? 'and' : '';
}

export interface PlaceGroup {
  readonly marks: readonly number[];
  readonly placings: readonly Placing[];
  /** Said as "between ..." or "behind ...". */ readonly bound: boolean;
  /** The head that is said of it: "the right bar is bruised". */ readonly subject?: number;
}

/** Places that stand together: "upper left and lower right", "the gum at three oh nine", "left cheek level with two oh eight". */
export function placeGroups(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  link: (a: number, b: number) => Link,
): readonly PlaceGroup[] {
  const ruledOut = marks.some(({ terms }) =>
    terms?.some((t) => (t.k === 'cue' && t.cue.means === 'absent') || (t.k === 'condition' && t.strength === 'absentSay')),
  );
  const groups: { marks: number[]; placings: Placing[]; bound: boolean; subject?: number; list?: true }[] = [];
  marks.forEach((mark, i) => {
    if (role[i] !== 'place' || mark.place === undefined) return;
    const last = groups.at(-1);
    const lastMark = last?.marks.at(-1);
    const subject = subjectOf(marks, tokens, role, heads, i);
    // "an ulcer on the right cheek and the left bar is bruised": each finding has its own.
    const another =
      lastMark !== undefined &&
      heads.some((head) => head.mark < lastMark) &&
      (subject !== undefined ||
        (link(lastMark, i) === 'and' && otherKind(marks, role, heads, lastMark, i)) ||
        opensOwn(marks, tokens, role, heads, lastMark, i));
    const joined = lastMark !== undefined && link(lastMark, i) === 'and';
    const plural =
      joined &&
      ((['are', 'were', 'have', 'look', 'feel', 'seem'].includes(tokens[mark.to]?.t ?? '') &&
        freshSubject(marks, tokens, last?.marks[0] as number)) ||
        aroundThem(marks, tokens, lastMark));
    const apart = lastMark === undefined || (another && !plural) || role.slice(lastMark + 1, i).some((r) => r !== 'glue' && r !== 'mod');
    // "hook on one oh six, rest of the upper right fine": no part of where the hook is.
    const rest = lastMark !== undefined && tokens.slice(marks[lastMark]?.to, mark.from).some(({ t }) => t === 'rest');
    // "points on one oh six and the rest of the upper right": with nothing said of it, it is.
    const goesOn = rest && heads.some((head) => head.mark < lastMark) && endsHere(marks, tokens, role, i);
    const tied = lastMark === undefined || (rest && !goesOn) ? '' : link(lastMark, i);
    // "nothing wrong with the incisors or the canines": of what is not there "or" names both.
    const before = last?.placings.at(-1)?.raw;
    const areGroups = isGroup(mark.place) && isGroup(before);
    const bond =
      (tied === 'or' || tied === 'nor') &&
      ruledOut &&
      (areGroups || (before && (teethBeside(before, mark.place) !== undefined || (isGap(before) && isGap(mark.place)))))
        ? 'and'
        : tied;
    const bound = mark.place.joined === 'between' || mark.place.relative !== undefined;
    const surfacesBetween =
      lastMark !== undefined && marks.slice(lastMark + 1, i).some(({ terms }) => terms?.some((t) => t.k === 'surface'));
    // "ulcer on the right cheek, bars fine": the last one waits for what comes behind it.
    const next = heads.findIndex((head) => head.mark > i);
    const waits =
      next > 0 &&
      heads.some((head) => head.mark < (lastMark ?? -1)) &&
      (!role.slice((heads[next] as Head).mark, heads[next + 1]?.mark).includes('place') ||
        ownClause(marks, tokens, i, (heads[next] as Head).mark));
    // "bars, canines and incisors unremarkable": listed before what is said of them.
    const listed =
      lastMark === i - 1 &&
      bond === '' &&
      tokens[mark.from - 1]?.ends === true &&
      !heads.some((head) => head.mark < i) &&
      isPart(mark.place) &&
      isPart(last?.placings.at(-1)?.raw) &&
      !mark.place.positions?.some((p) => last?.placings.at(-1)?.raw.positions?.includes(p));
    // "the bars, the left one is ulcerated": one of the pair that was named.
    const one = last?.placings.at(-1)?.raw;
    if (
      last &&
      lastMark !== undefined &&
      one?.region !== undefined &&
      one.region === mark.place.region &&
      one.side === undefined &&
      mark.place.side !== undefined &&
      role.slice(lastMark + 1, i).every((r) => r === 'glue') &&
      !tokens.slice(marks[lastMark]?.to, mark.from).some(({ t }) => t === 'and')
    ) {
      last.marks.push(i);
      last.placings.push({ raw: mark.place, marks: [...(last.placings.pop() as Placing).marks, i] });
      return;
    }
    const regions = !waits && mark.place.region !== undefined && last?.placings.at(-1)?.raw.region !== undefined && bond === '';
    const onList = lastMark !== undefined && bond === '' && isListed(marks, tokens, role, heads, lastMark, i, link, ruledOut);
    if (last && !apart && !surfacesBetween && (regions || listed || onList || ['and', 'prep', 'beside'].includes(bond))) {
      last.marks.push(i);
      const placing = last.placings.at(-1);
      const raw = goesOn
        ? ofItsRow(mark.place, before)
        : ((endsHere(marks, tokens, role, i) ? facing(before, mark.place) : undefined) ?? mark.place);
      const between = tokens.slice(marks[lastMark as number]?.to, mark.from).map(({ t }) => t);
      const parted =
        joins(between) ||
        ((tied === 'or' || tied === 'nor') && bond === 'and') ||
        tokens[(marks[lastMark as number] as Mark).to - 1]?.ends === true;
      const also = before && parted ? teethBeside(before, raw) : undefined;
      if (placing && also === 'first') last.placings.splice(-1, 1, { ...placing, rest: true });
      const rests = goesOn || also === 'second';
      if (onList) last.list = true;
      last.placings.push({ raw, marks: [i], ...(bond === 'beside' ? { beside: true } : {}), ...(rests ? { rest: true } : {}) });
    } else if (last && !apart && surfacesBetween && bond !== '') {
      last.marks.push(i);
      last.placings.push({ raw: mark.place, marks: [i] });
    } else groups.push({ marks: [i], placings: [{ raw: mark.place, marks: [i] }], bound, ...(subject !== undefined ? { subject } : {}) });
  });
  return groups.map((group) => (group.list ? { ...group, placings: eachOfItsOwn(group.placings) } : group));
}

/** Of a list each group of teeth that holds none of the teeth named beside it is one more place. */
export const eachOfItsOwn = (placings: readonly Placing[]): readonly Placing[] => {
  const teeth = placings.filter(({ raw }) => raw.codes !== undefined);
  return placings.map((one) =>
    one.raw.codes === undefined && teeth.length > 0 && teeth.every(({ raw }) => teethBeside(one.raw, raw) !== undefined)
      ? { ...one, rest: true }
      : one,
  );
};

/** "calculus on one oh six, the lower left and two ten": behind what was found, with commas and one "and", and nothing said behind them. */
function isListed(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  before: number,
  at: number,
  link: (a: number, b: number) => Link,
  ruledOut: boolean,
): boolean {
  const next = role.findIndex((r, i) => i > at && r === 'place');
  const own = marks[at]?.place?.joined;
  if (tokens[(marks[before] as Mark).to - 1]?.ends !== true || !heads.some(({ mark }) => mark < before)) return false;
  // "..., one oh seven and one oh eight": the two teeth that end it are one mark.
  const tie: Link | undefined = next >= 0 ? link(at, next) : own === 'and' || own === 'or' ? own : undefined;
  const small = tokens
    .slice((marks[before] as Mark).to, (marks[at] as Mark).from)
    .every(({ t }) => ['the', 'both', 'on', 'all'].includes(t));
  return (
    small &&
    (tie === 'and' || (ruledOut && (tie === 'or' || tie === 'nor'))) &&
    role.slice(before + 1).every((r) => r === 'place' || r === 'glue') &&
    (next < 0 || role.slice(next + 1).every((r) => r === 'glue')) &&
    marks.every(({ place }) => place?.region === undefined)
  );
}

/** "hook on one oh six and on the left": the same tooth of the side that is named. */
function facing(before: RawPlace | undefined, { side, ...more }: RawPlace): RawPlace | undefined {
  const [code, another] = before?.codes ?? [];
  const onlySide = (side === 'left' || side === 'right') && Object.values(more).every((value) => value === undefined);
  const opposite = code !== undefined && (side === 'left') !== [2, 3, 6, 7].includes(quadrantOf(code));
  return onlySide && opposite && another === undefined ? { codes: [otherSide(code)], joined: 'one' } : undefined;
}
/** "hooks on both upper sixes and on three oh six": which of the two is a group of teeth, that the others are not of. */
function teethBeside(a: RawPlace, b: RawPlace): 'first' | 'second' | undefined {
  const [group, codes] = a.codes === undefined ? [a, b.codes] : [b, a.codes];
  const named =
    group.codes === undefined && group.region === undefined && (group.jaw !== undefined || group.row === true || group.plural === true);
  // The cheek teeth of a quarter, and one of its incisors: no part of them.
  const inFront = group.positions === undefined && codes?.every((code) => positionOf(code) < 6);
  return named && codes !== undefined && (inFront || !codes.some((code) => within(group, [code])))
    ? group === a
      ? 'first'
      : 'second'
    : undefined;
}
/** "between ...", "behind ...", "three oh nine three ten": two teeth, or one of them, say which gap. */
const isGap = (raw: RawPlace): boolean => raw.relative !== undefined || ['between', 'adjacent', 'pairs'].includes(raw.joined ?? '');
/** "..., tongue clear, ...": between two pauses a place and what is said of it. */
const ownClause = (marks: readonly Mark[], tokens: readonly Token[], place: number, head: number): boolean => {
  const { from } = marks[place] as Mark;
  const start = tokens[from - 1]?.t === 'the' ? from - 1 : from;
  return tokens[start - 1]?.ends === true && !tokens.slice(from, (marks[head] as Mark).to - 1).some(({ ends }) => ends);
};
/** A part of the mouth, or a group of teeth, by its name. */
const isPart = (raw: RawPlace | undefined): boolean =>
  raw?.codes === undefined && (raw?.region !== undefined || (raw?.positions !== undefined && raw.plural === true));
const isGroup = (raw: RawPlace | undefined): boolean => raw !== undefined && raw.codes === undefined;

/** Nothing is said of this place behind it: the phrase ends, or a comma and another place follow. */
const endsHere = (marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], at: number): boolean =>
  tokens[(marks[at] as Mark).to - 1]?.ends === true || !role.slice(at + 1).some((r) => r === 'head' || r === 'cue' || r === 'unknown');

/** "the rest of the row": the one that the tooth named before it stands in. */
const ofItsRow = (raw: RawPlace, before: RawPlace | undefined): RawPlace => {
  const [code] = before?.codes ?? [];
  const open = raw.row === true && raw.jaw === undefined && raw.side === undefined && raw.quadrants === undefined;
  return open && code !== undefined ? { ...raw, quadrants: [quadrantOf(code)] } : raw;
};

/** "ulcers on both cheeks, the lips and the tongue are clear": no small word ties it to what was said before. */
const freshSubject = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean => {
  const from = (marks[at] as Mark).from;
  return tokens[(tokens[from - 1]?.t === 'the' ? from - 1 : from) - 1]?.ends === true;
};

const around: ReadonlySet<string> = new Set(['round', 'around', 'beside', 'at', 'above', 'under']);
/** "the gum round one oh two and one oh three is bleeding": both of them are where the gum is. */
const aroundThem = (marks: readonly Mark[], tokens: readonly Token[], first: number): boolean => {
  const { from, place } = marks[first] as Mark;
  return place?.codes !== undefined && around.has(tokens[from - 1]?.t ?? '') && /^gums?$/.test(tokens[from - 2]?.t ?? '');
};

const verbs: ReadonlySet<string> = new Set([
  'is',
  'are',
  'has',
  'have',
  "'s",
  'was',
  'were',
  'feels',
  'feel',
  'looks',
  'look',
  'seems',
  'seem',
  'appears',
  'appear',
]);
/** "the right bar is bruised", "the six oh seven cap is loose": the head that a place is said to have. */
function subjectOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  at: number,
): number | undefined {
  const { from, to } = marks[at] as Mark;
  const h = heads.findIndex(({ mark }) => mark > at);
  const head = heads[h]?.mark ?? 0;
  const parted = tokens.slice(to, marks[head]?.from).some(({ t, ends }) => t === 'and' || ends) || tokens[to - 1]?.ends === true;
  if (h < 0 || parted || marks[head]?.again || role.slice(at + 1, head).some((r) => r !== 'glue' && r !== 'mod' && r !== 'cue'))
    return undefined;
  const verb =
    verbs.has(tokens[to]?.t ?? '') ||
    (['tooth', 'teeth', 'one', 'ones', 'side'].includes(tokens[to]?.t ?? '') && verbs.has(tokens[to + 1]?.t ?? ''));
  const named = head === at + 1 && ['the', 'his', 'her'].includes(tokens[from - 1]?.t ?? '') && tokens[from - 2]?.t === 'and';
  return verb || named ? h : undefined;
}

/** "hook on one oh six and on three eleven a ramp": before a finding with its "a" and no other place, the second is that one's. */
function opensOwn(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  a: number,
  b: number,
): boolean {
  const h = heads.findIndex(({ mark }) => mark > b);
  const [before, mark] = [marks[a] as Mark, marks[b] as Mark];
  return (
    h > 0 &&
    ['a', 'an', 'some'].includes(tokens[mark.to]?.t ?? '') &&
    tokens.slice(before.to, mark.from).some(({ t }) => t === 'and') &&
    prepositions.has(tokens[tokens[mark.from - 1]?.t === 'the' ? mark.from - 2 : mark.from - 1]?.t ?? '') &&
    role.slice(b + 1, heads[h]?.mark).every((r) => r === 'glue' || r === 'mod') &&
    !role.slice(heads[h]?.mark, heads[h + 1]?.mark).includes('place')
  );
}

/** "smooth lower right, and one oh nine cupped": a row and a tooth, or a region and a tooth, are not one place where a finding follows. */
function otherKind(marks: readonly Mark[], role: Roles['role'], heads: readonly Head[], a: number, b: number): boolean {
  const [x, y] = [marks[a]?.place, marks[b]?.place];
  const h = heads.findIndex(({ mark }) => mark > b);
  const kind = (raw: RawPlace | undefined): string => (raw?.codes ? 'tooth' : raw?.region ? 'region' : 'group');
  return (
    h >= 0 &&
    kind(x) !== kind(y) &&
    !role.slice(a + 1, b).includes('head') &&
    !role.slice((heads[h] as Head).mark, heads[h + 1]?.mark).includes('place') &&
    !marks[(heads[h] as Head).mark]?.again &&
    role.slice(b + 1, (heads[h] as Head).mark).every((r) => r === 'glue' || r === 'mod')
  );
}
