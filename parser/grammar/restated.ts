/**
 * Teeth said one after the other that are not one list: "hook on one oh six, two oh six ramped" (each finding its own tooth),
 * "one oh seven and one oh nine caries, grade two on the nine" (one of them again, with what is its own).
 */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { partedBy } from './lists.ts';
import { readCodes } from './codes.ts';
import { isGlue, isHead, type Mark } from './scan.ts';
import { areNeighbours } from './teeth.ts';
import type { Token } from './tokens.ts';

const joins = new Set(['and', 'or', 'to', 'plus', 'through', 'with']);

/** The last teeth of a list (one, or the two of a gap) as a place of their own; the list as it is where a small word ties them to the others. */
export function lastApart(mark: Mark, tokens: readonly Token[], count = 1, tied = true): readonly Mark[] {
  const codes = mark.place?.codes ?? [];
  if (codes.length <= count || mark.place?.joined === 'between') return [mark];
  const last = Array.from({ length: mark.to - mark.from - 1 }, (_, k) => mark.from + 1 + k).findLast((at) => {
    const rest = readCodes(tokens, at);
    return (
      rest?.to === mark.to &&
      rest.raw.codes?.length === count &&
      rest.raw.codes.every((code, n) => code === codes[codes.length - count + n])
    );
  });
  if (last === undefined || (tied && joins.has(tokens[last - 1]?.t ?? ''))) return [mark];
  const place = (own: readonly string[]): NonNullable<Mark['place']> => ({
    codes: own,
    joined:
      own.length === 1
        ? 'one'
        : /adjacent|pairs/i.test(mark.place?.joined ?? '') && own.length === 2 && areNeighbours(own[0] as string, own[1] as string)
          ? 'adjacent'
          : 'and',
  });
  const and = tokens[last - 1]?.t === 'and' ? [{ from: last - 1, to: last, terms: [{ k: 'stop' as const }] }] : [];
  return [
    { from: mark.from, to: last - and.length, place: place(codes.slice(0, -count)) },
    ...and,
    { from: last, to: mark.to, place: place(codes.slice(-count)) },
  ];
}

const isList = ({ place }: Mark): boolean => (place?.codes?.length ?? 0) > 1;

export function restated(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  if (!marks.some(isHead) || !marks.some(isList)) return marks;
  return partedBy(marks, (mark, i) => {
    if (!isList(mark)) return undefined;
    const alone = afterMissing(marks, i);
    const count = alone || twice(mark) || toldOf(marks, tokens, i) || notLookedAt(marks, tokens, i) ? 1 : betweenTwo(marks, tokens, i);
    return count === undefined ? undefined : lastApart(mark, tokens, count, !alone);
  });
}

/** A list that says one tooth twice: the second time it is said of that tooth alone. */
const twice = ({ place }: Mark): boolean =>
  place?.codes !== undefined &&
  !/pairs/i.test(place.joined ?? '') &&
  new Set(place.codes).size > 1 &&
  place.codes.slice(0, -1).includes(place.codes.at(-1) as string);

/** "retained cap on eight oh seven, seven oh seven's away": behind a comma the last tooth is what a verb says something of. */
const told: ReadonlySet<string> = new Set(['is', 'has', 'was', 'looks', 'feels']);
const toldOf = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  told.has(tokens[(marks[at] as Mark).to]?.t ?? '') &&
  tokens[(marks[at] as Mark).to + 1]?.t !== 'not' &&
  marks.slice(0, at).some(isHead) &&
  pausedWithin(marks[at] as Mark, tokens);
const pausedWithin = ({ from, to }: Mark, tokens: readonly Token[]): boolean => tokens.slice(from, to - 1).some(({ ends }) => ends);

/** "ramp on three eleven, four eleven not examined": the last one is what was not looked at. */
const notLookedAt = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean => {
  const { to, place } = marks[at] as Mark;
  return (
    place?.codes !== undefined &&
    marks.slice(0, at).some(isHead) &&
    tokens[to - 1]?.ends !== true &&
    /^(?:is |was )?not (?:examined|checked|seen|felt|looked|probed|assessed|done)\b/.test(
      tokens
        .slice(to, to + 3)
        .map(({ t }) => t)
        .join(' '),
    )
  );
};
/** "missing four oh seven and four oh eight drifted": what is gone has nothing else, so the last one is the second finding's. */
const afterMissing = (marks: readonly Mark[], at: number): boolean => {
  const gone = (mark: Mark | undefined): boolean =>
    mark?.terms?.some((t) => t.k === 'condition' && (t.id === 'missing' || t.id === 'previously-extracted')) ?? false;
  const next = marks[at + 1];
  return (
    (marks[at]?.place?.codes?.length ?? 0) > 1 &&
    gone(marks[at - 1]) &&
    !marks.slice(0, at - 1).some(isHead) &&
    next?.terms?.some((t) => t.k === 'condition') === true &&
    !gone(next) &&
    !marks.slice(at + 2).some(({ place }) => place !== undefined)
  );
};

const kindsOf = (mark: Mark | undefined): readonly string[] =>
  (mark?.terms ?? []).flatMap((t) => (t.k === 'condition' ? (conditions[t.id] as ConditionEntry).places : []));
/** A finding before and a finding behind that have no other place: so many of the last teeth are the second one's. */
function betweenTwo(marks: readonly Mark[], tokens: readonly Token[], at: number): 1 | 2 | undefined {
  const mark = marks[at] as Mark;
  const codes = mark.place?.codes ?? [];
  const first = marks.slice(0, at).findLastIndex(isHead);
  const second = marks.findIndex((m, i) => i > at && !describes(m));
  // Of a list with "and" in it the last one is apart only where it is of another row.
  const listed =
    mark.place?.joined === 'adjacent' ||
    (mark.place?.joined === 'pairs' && pausedWithin(mark, tokens)) ||
    (mark.place?.joined === 'and' && codes.at(-1)?.[0] !== codes.at(-2)?.[0]);
  if (
    codes.length < 2 ||
    !listed ||
    first < 0 ||
    !isHead(marks[second]) ||
    tokens[mark.to - 1]?.ends ||
    tokens.slice(mark.to, marks[second]?.from).some(({ t }) => joins.has(t))
  )
    return undefined;
  const third = marks.findIndex((m, i) => i > second && isHead(m));
  const before = marks.slice(0, first).findLastIndex(isHead);
  // "fracture of three oh eight, grade one caries on one oh nine, two oh nine missing": the first place is the first finding's.
  const ownBefore = marks
    .slice(before + 1, first)
    .some(({ place, to }) => place !== undefined && !(before >= 0 && tokens.slice(to - 1, marks[first]?.from).some(({ ends }) => ends)));
  const ownBehind = marks.slice(second + 1, third < 0 ? marks.length : third).some(({ place }) => place !== undefined);
  const bite = kindsOf(marks[second]).length > 0 && !kindsOf(marks[second]).includes('T');
  if (ownBefore || ownBehind || bite) return undefined;
  const gap = (a: number, finding: number): boolean =>
    areNeighbours(codes.at(a) as string, codes.at(a + 1) as string) && kindsOf(marks[finding]).includes('S');
  // "points on one oh six, one oh seven clear": parted by a pause they are no gap.
  if (codes.length === 2) return !pausedWithin(mark, tokens) && (gap(0, first) || gap(0, second)) ? undefined : 1;
  return gap(-2, second) ? 2 : codes.length > 3 || !gap(-2, first) ? 1 : undefined;
}
/** What may stand between a tooth and what was found there: how much, how large, which kind, ruled out. */
const describes = (mark: Mark): boolean =>
  isGlue(mark) ||
  mark.unknown === true ||
  mark.measure !== undefined ||
  mark.grade !== undefined ||
  (mark.terms ?? []).some((t) => ['severity', 'severityKept', 'qualifier', 'surface', 'cue', 'filler'].includes(t.k) && !isHead(mark));
