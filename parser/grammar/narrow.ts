/**
 * A place said in general and then in particular: "missing on the lower right, four oh nine and four ten", "gaps lower left,
 * eight nine and nine ten", "three ten gap three eleven". What was said last is where; the general word only led to it.
 */
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { first, gather, where } from './lists.ts';
import { quadrantsOf, within, type RawPlace } from './places.ts';
import { ofOneTooth } from './resolve.ts';
import { isGlue, isHead, type Mark } from './scan.ts';
import { areNeighbours, codeOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

export const narrowed = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] => {
  if (!marks.some((mark) => mark.place) || marks.length < 3) return marks;
  return led(partOf(aroundItsName(gapsByNumber(underHeading(marks, tokens), tokens)), tokens));
};

const headings: ReadonlySet<string> = new Set(['mucosa', 'mouth', 'head']);
/** "soft tissue, ulcer right cheek, tongue clear": the part of the exam that follows, no place of what was found. */
function underHeading(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const first = marks.findIndex((mark) => !small(mark));
  const mark = marks[first];
  const heading =
    mark?.place?.region !== undefined &&
    headings.has(mark.place.region) &&
    mark.place.side === undefined &&
    tokens[mark.to - 1]?.ends === true;
  return heading && marks.some(({ place }, i) => i > first && place?.region !== undefined)
    ? marks.map((one, i) => (i === first ? glue(one) : one))
    : marks;
}

const glue = ({ from, to }: Mark): Mark => ({ from, to, terms: [{ k: 'glue' }] });
const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const conditionOf = (mark: Mark | undefined): ConditionId | undefined =>
  first(mark?.terms ?? [], (t) => (t.k === 'condition' && t.strength !== 'absentSay' ? t.id : undefined));
const ofGaps = (id: ConditionId | undefined): boolean => id !== undefined && (conditions[id] as ConditionEntry).places.includes('S');
const isGap = (mark: Mark | undefined): boolean => conditionOf(mark) === 'diastema';
const small = (mark: Mark): boolean => isGlue(mark) || mark.terms?.some((t) => t.k === 'filler') === true;

/** "diastema eight nine lower right": two numbers one after the other, of the quadrant named beside them, are a gap. */
function gapsByNumber(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  if (!marks.some((mark) => isGap(mark) || conditionOf(mark) === 'food-packing') && !tokens.some(({ t }) => t === 'between')) return marks;
  const out: Mark[] = [];
  const left = new Set<number>();
  for (let i = 0; i < marks.length; i += 1) {
    const first = marks[i] as Mark;
    let next = i + 1;
    while (marks[next] && ['and', 'slash', 'the'].includes(text(tokens, (marks[next] as Mark).from)) && !marks[next]?.place) next += 1;
    const [low, high] = [first.number, marks[next]?.number];
    const whose =
      typeof low === 'number' && typeof high === 'number' && low >= 6 && high === low + 1 && high <= 11
        ? quarterBeside(marks, i, next)
        : undefined;
    if (whose === undefined) {
      out.push(left.has(i) ? glue(first) : first);
      continue;
    }
    const [q, place] = whose;
    if (place > i) left.add(place);
    const codes = [codeOf(q, low as number), codeOf(q, high as number)];
    const between =
      text(tokens, first.from - 1) === 'between'
        ? first.from - 1
        : text(tokens, first.from - 1) === 'the' && text(tokens, first.from - 2) === 'between'
          ? first.from - 2
          : -1;
    const led = between >= 0 && out.some(({ from }) => from === between);
    while (led && (out.at(-1)?.from ?? -1) >= between) out.pop();
    const start = led ? between : first.from;
    const before = out.findLast((mark) => !small(mark));
    const to = (marks[next] as Mark).to;
    // One gap after another of the same quadrant: all of them, by twos.
    if (!led && before?.place?.joined === 'pairs' && quadrantOf(before.place.codes?.[0] as string) === q) {
      out[out.indexOf(before)] = { ...before, place: { codes: [...(before.place.codes ?? []), ...codes], joined: 'pairs' } };
      out.push(glue({ from: start, to }));
    } else {
      const own = isGap(out.at(-1)) && tokens[to - 1]?.ends === true;
      out.push({ from: start, to, place: { codes, joined: led ? 'between' : 'pairs' }, ...(own ? { own } : {}) });
    }
    i = next;
  }
  return out;
}

/** The one quadrant that a word of place beside the numbers names, and where it stands. */
function quarterBeside(marks: readonly Mark[], from: number, to: number): readonly [number, number] | undefined {
  const one = (at: number): readonly [number, number] | undefined => {
    const raw = marks[at]?.place;
    const quadrants =
      raw &&
      raw.codes === undefined &&
      raw.positions === undefined &&
      raw.region === undefined &&
      ((raw.jaw !== undefined && raw.side !== undefined) || raw.quadrants !== undefined)
        ? (raw.quadrants ?? quadrantsOf(raw))
        : [];
    return quadrants.length === 1 ? [quadrants[0] as number, at] : undefined;
  };
  const after = marks.findIndex((mark, i) => i > to && !small(mark) && typeof mark.number !== 'number');
  const before = marks.slice(0, from).findLastIndex(({ place }) => place !== undefined);
  // "gap three ten three eleven, a wider one nine ten": in the row of the gap before.
  const quadrants = new Set((marks[before]?.place?.codes ?? []).map(quadrantOf));
  return (
    one(after) ??
    one(before) ??
    (quadrants.size === 1 && marks[after]?.place === undefined ? [[...quadrants][0] as number, before] : undefined)
  );
}

/** "three ten gap three eleven": the gap's two teeth stand around its name. */
const aroundItsName = (marks: readonly Mark[]): readonly Mark[] => {
  const name = marks.findIndex(isGap);
  const [before, after] = [marks[name - 1]?.place, marks[name + 1]?.place];
  const [a, b] = [before?.codes?.[0], after?.codes?.[0]];
  if (
    name < 1 ||
    a === undefined ||
    b === undefined ||
    before?.codes?.length !== 1 ||
    after?.codes?.length !== 1 ||
    !areNeighbours(a, b) ||
    isHead(marks.slice(name + 2).find((mark) => !small(mark)))
  )
    return marks;
  return marks.map((mark, i) =>
    i === name - 1 ? glue(mark) : i === name + 1 ? { ...mark, place: { codes: [a, b], joined: 'between' } } : mark,
  );
};

const counts: ReadonlySet<string> = new Set(['one', 'two', 'three', 'four', 'five', 'couple', 'some', 'few', 'several', 'most', 'half']);
/** "not one of the incisors", "every single one of them": all of the group. */
const wholly: ReadonlySet<string> = new Set(['not', 'every', 'each', 'any']);
const ofAll = (tokens: readonly Token[], of: number): boolean =>
  text(tokens, of) === 'one' &&
  wholly.has(text(tokens, text(tokens, of - 1) === 'single' ? of - (text(tokens, of - 2) === 'a' ? 3 : 2) : of - 1));
/** "two of the lower incisors": which of them is not said by the group's name. */
const partOf = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  !tokens.some(({ t }) => t === 'of')
    ? marks
    : marks.map((mark, i) => {
        const of =
          text(tokens, mark.from - 2) === 'of' && ['the', 'his', 'her', 'these', 'those'].includes(text(tokens, mark.from - 1))
            ? mark.from - 3
            : text(tokens, mark.from - 1) === 'of'
              ? mark.from - 2
              : -1;
        if (of >= 0 && mark.place?.positions !== undefined && counts.has(text(tokens, of)) && !ofAll(tokens, of))
          return { ...mark, place: { ...mark.place, part: true } };
        const counted =
          counts.has(text(tokens, mark.from)) &&
          mark.to - mark.from === 1 &&
          text(tokens, mark.to) === 'of' &&
          marks.slice(i + 1, i + 4).some(({ place }) => place?.positions !== undefined);
        return counted ? glue(mark) : mark;
      });

/** "missing on the lower right, four oh nine and four ten": the teeth that follow with nothing of their own are where. */
function led(marks: readonly Mark[]): readonly Mark[] {
  const particular = marks.findIndex(({ place }) => place?.codes !== undefined);
  const general = where(marks, ({ place }, i) => place !== undefined && i < particular);
  if (general.length === 0) return marks;
  // "..., nothing like that on the lower right": another place, of what is not there.
  const turn = marks.findIndex(
    (mark, i) => i > particular && mark.terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind === undefined),
  );
  const named = gather(marks, ({ place }, i) => (i >= particular && (turn < 0 || i < turn) ? place : undefined));
  const ids = gather(marks, (mark) => (mark.place ? undefined : conditionOf(mark)));
  const [id] = ids;
  if (id === undefined || ids.length !== 1 || marks.some(turns)) return marks;
  const raws = general.map((i) => marks[i]?.place as RawPlace);
  const open = raws.every(
    (raw) =>
      (opens(raw, id) || sideOnly(raw, id, marks, particular)) && named.every(({ codes }) => codes !== undefined && within(raw, codes)),
  );
  // "canine erupting one oh four": nothing but the name, and how it stands, lies between.
  // "upper left, three mil ramp on two eleven": a size that leads to the name is of what is at the tooth.
  const name = marks.findIndex((mark) => mark.place === undefined && conditionOf(mark) !== undefined);
  const close = marks
    .slice(general[0], particular)
    .every(
      (mark, i) =>
        ((mark.measure === undefined && mark.grade === undefined) || ((general[0] as number) + i < name && name < particular)) &&
        !mark.unknown,
    );
  return open && close ? marks.map((mark, i) => (general.includes(i) ? glue(mark) : mark)) : marks;
}

/** Work, a turn, something called normal or an exception in the phrase: its places may each be of something else. */
const turns = (mark: Mark): boolean =>
  mark.terms?.some(
    (t) =>
      t.k === 'stop' ||
      (t.k === 'condition' && t.strength === 'absentSay') ||
      (t.k === 'cue' && t.cue.means === 'except') ||
      (t.k === 'work' && t.term.as === 'procedure'),
  ) ?? false;

/** "calculus on the right side there, four oh four": a side, and behind it the teeth, which nothing more is said of. */
const sideOnly = (raw: RawPlace, id: ConditionId, marks: readonly Mark[], particular: number): boolean =>
  raw.side !== undefined &&
  Object.keys(raw).every((key) => key === 'side' || key === 'weak') &&
  !(conditions[id] as ConditionEntry).places.includes('R') &&
  id !== 'sharp-enamel-points' &&
  marks.slice(particular).every((mark) => mark.place !== undefined || small(mark));

/** Whether a general word leaves open at which of its teeth the finding is. */
function opens(raw: RawPlace, id: ConditionId): boolean {
  if (raw.codes !== undefined || raw.region !== undefined || raw.all || raw.elsewhere !== undefined || raw.row) return false;
  if (raw.part || raw.ends) return true;
  const row = (conditions[id] as ConditionEntry).places.includes('R');
  return raw.positions === undefined ? ofOneTooth.has(id) || (ofGaps(id) && !row) : raw.jaw === undefined && raw.side === undefined;
}
