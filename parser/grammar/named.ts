/** Words of place that lean on a place named before in the same phrase: "on both", "the left one", "left worse than right". */
import { readCodes } from './codes.ts';
import { onSide } from './ellipsis.ts';
import { conditions } from '../lexicon/conditions.ts';
import type { RegionId } from '../lexicon/regions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { comparing, type RawPlace } from './places.ts';
import { isGlue, isHead, ofSoftTissue, type Mark } from './scan.ts';
import { positionOf } from '../lexicon/places.ts';
import type { Token } from './tokens.ts';

export const named = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  theOnes(bySide(withoutWorst(withoutLikeness(upOrDown(marks, tokens), tokens), tokens), tokens), tokens);
const heights: Readonly<Record<string, 'upper' | 'lower'>> = { up: 'upper', down: 'lower' };
/** "there's a wolf tooth up on the left side": of a tooth that is named by what it is, "up" is the jaw. */
function upOrDown(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const name = marks.findIndex(({ terms }) => terms?.some((t) => t.k === 'condition' && positionOf[t.id] !== undefined));
  if (name < 0) return marks;
  return marks.map((mark, i) => {
    const on = text(tokens, mark.from - 1) === 'the' ? mark.from - 2 : mark.from - 1;
    const jaw = i > name && bareSide(mark) && text(tokens, on) === 'on' ? heights[text(tokens, on - 1)] : undefined;
    return jaw === undefined ? mark : { ...mark, place: { ...mark.place, jaw } };
  });
}

/** "not as big as two oh six": the tooth it is compared with, and the turn is of the comparison. */
const withoutLikeness = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] => {
  const at = tokens.findIndex(
    ({ t }, i) =>
      (t === 'as' || t === 'so') &&
      text(tokens, i + 2) === 'as' &&
      !['far', 'soon', 'long', 'well', 'much'].includes(text(tokens, i + 1)) &&
      (readCodes(tokens, i + 3) ?? (text(tokens, i + 3) === 'the' ? readCodes(tokens, i + 4) : undefined)) !== undefined,
  );
  const end = at < 0 ? -1 : marks.findIndex((mark) => mark.from >= at + 3 && mark.place !== undefined);
  if (end < 0) return marks;
  const from = ['not', 'nowhere', 'quite', 'near'].includes(text(tokens, at - 1)) ? (text(tokens, at - 2) === 'not' ? at - 2 : at - 1) : at;
  return marks.map((mark, i) => (i <= end && mark.from >= from ? { from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] } : mark));
};
const bySide = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.some(bareSide)
    ? theOne(withBoth(withoutComparison(marks, tokens), tokens), tokens)
    : tokens.some(({ t }, i) => t === 'than' && (text(tokens, i + 1) === 'the' || readCodes(tokens, i + 1) !== undefined))
      ? withoutComparison(marks, tokens)
      : marks;

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
/** A side and nothing else. */
const bareSide = (mark: Mark | undefined): boolean =>
  mark?.place !== undefined && mark.place.side !== undefined && Object.keys(mark.place).every((key) => key === 'side' || key === 'weak');
const oneSide = (mark: Mark | undefined): boolean => bareSide(mark) && mark?.place?.side !== 'both';
const compares = (mark: Mark | undefined, tokens: readonly Token[]): boolean =>
  mark !== undefined && mark.place === undefined && comparing.has(text(tokens, mark.from));

/** "left worse than right", "worse on the left": one side beside the other, no change and no other place. */
function withoutComparison(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const at = marks.findIndex((mark) => compares(mark, tokens));
  if (at < 0) return marks;
  const glue = (mark: Mark | undefined): boolean =>
    mark?.terms?.some((t) => t.k === 'glue') === true || (mark?.unknown === true && text(tokens, mark.from) === 'than');
  let end = at + 1;
  while (end < marks.length && glue(marks[end])) end += 1;
  const than = text(tokens, (marks[at] as Mark).to) === 'than';
  if (!bareSide(marks[end]) && !than) return withoutOneSide(marks, tokens, at);
  // "higher than the ones either side": all that it is measured against.
  while (than && (glue(marks[end + 1]) || marks[end + 1]?.place) && !isHead(marks[end + 1])) end += 1;
  let start = at;
  while (start > 0 && glue(marks[start - 1])) start -= 1;
  // "points both sides, worse on the left": both are where it was found.
  const from = oneSide(marks[start - 1]) ? start - 1 : at;
  return marks.map((mark, i) =>
    i >= from && i <= (bareSide(marks[end]) || (than && marks[end]?.place) ? end : at)
      ? { from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] }
      : mark,
  );
}

/** "points on both sides, the left is worse": beside the other side, where both were named; with "than last time" behind it it is a change. */
function withoutOneSide(marks: readonly Mark[], tokens: readonly Token[], at: number): readonly Mark[] {
  const mark = marks[at] as Mark;
  const side = marks.slice(0, at).findLastIndex((one) => !isGlue(one));
  const both = marks.slice(0, side).findLast(({ place }) => place !== undefined)?.place;
  const ended = mark.to === tokens.length || tokens[mark.to - 1]?.ends === true;
  return mark.to - mark.from === 1 &&
    ended &&
    oneSide(marks[side]) &&
    both !== undefined &&
    both.codes === undefined &&
    (both.side ?? 'both') === 'both'
    ? marks.map((one, i) => (i === side || i === at ? { from: one.from, to: one.to, terms: [{ k: 'glue' as const }] } : one))
    : marks;
}

/** "points on the uppers, the sevens worst", "ridges all through, worst on the right": one part beside the rest, no other place. */
function withoutWorst(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const at = marks.findIndex((mark) => text(tokens, mark.to - 1) === 'worst' && mark.place === undefined);
  if (at < 0) return marks;
  const before = marks.slice(0, at).findLastIndex((mark) => !isGlue(mark));
  const after = marks.findIndex((mark, i) => i > at && !isGlue(mark));
  const part =
    marks[after]?.place !== undefined && ['on', 'at', 'in', 'of', 'by'].includes(text(tokens, (marks[at] as Mark).to))
      ? after
      : marks[before]?.place !== undefined
        ? before
        : -1;
  const others = marks.some(({ place }, i) => place !== undefined && i < Math.min(part, at));
  const glue = ({ from, to }: Mark): Mark => ({ from, to, terms: [{ k: 'glue' }], ...(marks[part] ? { whole: true as const } : {}) });
  return part >= 0 && others && !isHead(marks[part]) ? marks.map((mark, i) => (i === part || i === at ? glue(mark) : mark)) : marks;
}

/** "no hooks on one oh six and two oh six but points on both": the two that were named. */
const withBoth = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark, i) => {
    if (!mark.place?.weak || !bareSide(mark)) return mark;
    // "corners are hooked, both of them, on the top": said once more of what was named.
    if (
      /^of (?:them|these|those)$/.test(`${text(tokens, mark.to)} ${text(tokens, mark.to + 1)}`) &&
      marks.slice(0, i).some(({ place }) => place !== undefined && place.codes === undefined)
    )
      return { from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] };
    // "three oh six ramped and three eleven hooked, both moderate"
    const named = marks.slice(0, i).some(({ place }) => place?.codes !== undefined && place.codes.length === 2);
    if (
      (named || marks.slice(0, i).filter(isHead).length > 1) &&
      marks.slice(0, i).some(isHead) &&
      marks.length > i + 1 &&
      !marks.slice(i + 1).some((m) => isHead(m) || m.place)
    )
      return { from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] };
    const at = marks
      .slice(0, i)
      .findLastIndex(({ place }) => place?.codes !== undefined || place?.positions !== undefined || place?.region !== undefined);
    // "three oh four and three oh five both have tartar": said once more of the same two.
    if (at >= 0 && marks.slice(at + 1, i).every(isGlue)) return { from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] };
    const two = marks.slice(at, i).some(isHead) ? marks[at]?.place : undefined;
    return two && (two.codes?.length === 2 || two.side === 'both') && !marks.slice(i + 1).some(({ place }) => place)
      ? { ...mark, place: two }
      : mark;
  });

/** "both canines have tartar and the left one is loose": of the two that were named. */
const theOne = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark, i) => {
    const side = mark.place?.side;
    if (!bareSide(mark) || (side !== 'left' && side !== 'right')) return mark;
    const id = marks
      .slice(0, i)
      .flatMap(({ terms }) => terms ?? [])
      .find((t) => t.k === 'condition' && positionOf[t.id] !== undefined);
    const at = marks.slice(0, i).findLastIndex((m) => {
      const { place } = m;
      return (
        place !== undefined &&
        place.side !== side &&
        !bareSide(m) &&
        (place.side !== undefined ||
          place.region !== undefined ||
          place.plural === true ||
          (place.codes?.length ?? 0) > 1 ||
          (place.jaw !== undefined && id !== undefined))
      );
    });
    const group = marks[at]?.place;
    // "wolf teeth upper left and right, the left one's loose": the finding's own name says which tooth.
    const byName =
      group && group.positions === undefined && group.codes === undefined && group.region === undefined && id?.k === 'condition';
    const whole = byName ? { ...group, positions: [positionOf[id.id] as number], plural: true } : group;
    // "right jaw joint fine, left clicks": the other one of the same, once something was said of the first.
    // "ulcer on the right cheek and another on the left": of the part just named.
    const another =
      whole?.region !== undefined &&
      !marks.slice(at, i).some(isHead) &&
      tokens.slice(Math.max(0, mark.from - 4), mark.from).some(({ t }) => ['one', 'another', 'two', 'some', 'same'].includes(t));
    // "sore on the right, fine on the left": of the part, or the jaw, that was named for the other side.
    // "discharge from the left nostril, right is clear"
    const next = marks
      .slice(i + 1)
      .find((m) => !isGlue(m))
      ?.terms?.find((t) => t.k === 'condition');
    if (
      whole?.region !== undefined &&
      whole.side !== undefined &&
      whole.side !== 'both' &&
      marks.slice(0, i).some(isHead) &&
      next?.k === 'condition' &&
      next.id === 'abnormality'
    )
      return { ...mark, place: { ...whole, side } };
    // "nothing wrong up top except for a wave on the left": of the jaw that was spoken of.
    const left = marks.slice(0, i).findLastIndex((m) => m.terms?.some((t) => t.k === 'cue' && t.cue.means === 'except'));
    const jaw = left < 0 ? undefined : marks.slice(0, left).findLast((m) => m.place !== undefined)?.place;
    if (
      jaw?.jaw !== undefined &&
      jaw.jaw !== 'both' &&
      jaw.side === undefined &&
      jaw.codes === undefined &&
      jaw.region === undefined &&
      jaw.positions === undefined &&
      !marks.slice(left, i).some((m) => m.place)
    )
      return { ...mark, place: { jaw: jaw.jaw, side } };
    // "an ulcer on the left cheek and he's got a scar on the right": of the part that the last thing was found on.
    const soft = marks.slice(at + 1, i).findLast(isHead);
    const since = marks.slice(at + 1, i).some(({ place }) => place !== undefined);
    if (
      whole?.region !== undefined &&
      (whole.side === 'left' || whole.side === 'right') &&
      !since &&
      ofSoftTissue(soft?.terms) &&
      endsAt(tokens, mark)
    )
      return { ...mark, place: { ...whole, side } };
    const unsided = unsidedFor(marks, i, side);
    if (unsided) return { ...mark, place: { ...unsided, side } };
    // "two mil on the left, one on the right": counted.
    const one =
      /^ones?$/.test(text(tokens, mark.to)) &&
      tokens[mark.to - 1]?.ends !== true &&
      !['on', 'at', 'in'].includes(text(tokens, mark.to + 1));
    if (
      !another &&
      !one &&
      !(
        whole?.codes === undefined &&
        (whole?.side === 'left' || whole?.side === 'right') &&
        marks.slice(at, i).some(isHead) &&
        marks.slice(i + 1).some(isHead)
      )
    )
      return mark;
    if (whole?.region !== undefined && whole.side === undefined && marks.slice(at, i).some((m) => bareSide(m) && m.place?.side !== side))
      return { ...mark, place: { ...whole, side } };
    const part =
      whole && (whole.codes === undefined && whole.side !== undefined && whole.side !== 'both' ? { ...whole, side } : onSide(whole, side));
    return part ? { ...mark, place: part } : mark;
  });

/** "... on the right", and no more of where. */
const endsAt = (tokens: readonly Token[], { from, to }: Mark): boolean =>
  text(tokens, from - 1) === 'the' &&
  ['on', 'in'].includes(text(tokens, from - 2)) &&
  (to === tokens.length || tokens[to - 1]?.ends === true || ['and', 'but', 'too', 'as', 'now', 'today'].includes(text(tokens, to)));

/** The part or the jaw that a finding on the other side was said of, by its own words or by the finding's name. */
function unsidedFor(marks: readonly Mark[], at: number, side: 'left' | 'right'): RawPlace | undefined {
  const other = marks.slice(0, at).findLastIndex((m) => bareSide(m) && m.place?.side !== side && m.place?.side !== 'both');
  const last = marks.slice(0, at).findLastIndex((m) => m.place !== undefined && !bareSide(m));
  if (
    other < 0 ||
    !marks.slice(0, at).some(isHead) ||
    !isHead(marks.slice(at + 1).find((m) => !isGlue(m)) ?? marks.slice(other, at).find(isHead))
  )
    return undefined;
  if (last < 0) {
    const home = marks
      .slice(0, other)
      .flatMap(({ terms }) => terms ?? [])
      .flatMap((t) => (t.k === 'condition' ? [(conditions[t.id] as ConditionEntry).home] : []))
      .find((region) => region !== undefined) as RegionId | undefined;
    return home && { region: home };
  }
  const { place } = marks[last] as Mark;
  return last < other &&
    place !== undefined &&
    place.side === undefined &&
    place.codes === undefined &&
    (place.region !== undefined || place.jaw !== undefined)
    ? place
    : undefined;
}

/** "the canines, upper ones are clean": the ones named, not the centrals. */
const theOnes = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark, i) => {
    if (mark.place === undefined) return mark;
    // "the lower incisors are worn, the uppers are fine": the others of the same kind.
    const before = marks.slice(0, i).findLast(({ place }) => place !== undefined)?.place;
    const others =
      mark.place?.plural &&
      Object.keys(mark.place).every((key) => key === 'jaw' || key === 'plural') &&
      before?.positions !== undefined &&
      // "lower right six hooked, the uppers are fine": cheek teeth have rows of their own to be named by.
      before.positions.every((position) => position < 6) &&
      before.jaw !== undefined &&
      before.jaw !== 'both' &&
      before.jaw !== mark.place.jaw &&
      /^(uppers|lowers)$/.test(text(tokens, mark.to - 1));
    const fine = marks
      .slice(i + 1)
      .find(isHead)
      ?.terms?.some((t) => t.k === 'condition' && t.id === 'abnormality');
    // "EOTRH on the corners, stage two uppers, stage three lowers": those of the corners.
    const at = marks.slice(0, i).findLastIndex(({ place }) => place?.positions !== undefined);
    const group = marks[at]?.place;
    // "calculus on the lower right six, caries on the uppers", "..., rasped the uppers": of another thing.
    // "on the lower right six, but on the uppers": one tooth has no others.
    const ofRow =
      group?.positions?.every((position) => position >= 6) && !group.plural && group.side !== undefined && group.jaw !== undefined;
    const another =
      group?.positions?.every((position) => position >= 6) &&
      group.jaw !== undefined &&
      group.jaw !== 'both' &&
      marks.slice(at + 1, i).some(isHead);
    const shared =
      !another &&
      !ofRow &&
      mark.place !== undefined &&
      Object.keys(mark.place).every((key) => key === 'jaw' || key === 'plural') &&
      mark.place.jaw !== 'both' &&
      group?.positions !== undefined &&
      (group.jaw === undefined || group.jaw === 'both' || group.jaw !== mark.place.jaw) &&
      marks.slice(0, i).some(isHead) &&
      !marks.slice(i + 1).some(isHead);
    if (shared && group) return { ...mark, place: { ...group, jaw: mark.place?.jaw as 'upper', plural: true } };
    if (others && fine && marks.slice(0, i).some(isHead))
      return { ...mark, place: { ...mark.place, positions: before.positions as readonly number[] } };
    const ones =
      mark.place?.positions?.length === 1 && mark.place.positions[0] === 1 && text(tokens, mark.to - 1) === 'ones'
        ? marks.slice(0, i).findLast(({ place }) => place?.positions !== undefined && place.positions[0] !== 1)?.place
        : undefined;
    return ones?.positions && mark.place ? { ...mark, place: { ...mark.place, positions: ones.positions, plural: true } } : mark;
  });
