/**
 * Teeth said one after the other that are not one list: "hook on one oh six, two oh six ramped" (each finding its own tooth),
 * "one oh seven and one oh nine caries, grade two on the nine" (one of them again, with what is its own).
 */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { readCodes } from './places.ts';
import { isGlue, isHead, type Mark } from './scan.ts';
import { areNeighbours } from './teeth.ts';
import type { Token } from './tokens.ts';

const joins = new Set(['and', 'or', 'to', 'plus', 'through', 'with']);

/** The last tooth of a list as a place of its own; the list as it is where a small word ties it to the others. */
export function lastApart(mark: Mark, tokens: readonly Token[]): readonly Mark[] {
  const codes = mark.place?.codes ?? [];
  if (codes.length < 2 || mark.place?.joined === 'between') return [mark];
  const last = Array.from({ length: mark.to - mark.from - 1 }, (_, k) => mark.from + 1 + k).find((at) => { const rest = readCodes(tokens, at); return rest?.to === mark.to && rest.raw.codes?.length === 1 && rest.raw.codes[0] === codes.at(-1); });
  if (last === undefined || joins.has(tokens[last - 1]?.t ?? '')) return [mark];
  const rest = codes.slice(0, -1);
  return [{ from: mark.from, to: last, place: { codes: rest, joined: rest.length === 1 ? 'one' : 'and' } }, { from: last, to: mark.to, place: { codes: codes.slice(-1), joined: 'one' } }];
}

export function restated(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  if (!marks.some(isHead) || !marks.some(({ place }) => (place?.codes?.length ?? 0) > 0)) return marks;
  return marks.flatMap((mark, i) => (betweenTwo(marks, tokens, i) || twice(mark) ? lastApart(mark, tokens) : [mark]));
}

/** A list that says one tooth twice: the second time it is said of that tooth alone. */
const twice = ({ place }: Mark): boolean => place?.codes !== undefined && new Set(place.codes).size > 1 && place.codes.slice(0, -1).includes(place.codes.at(-1) as string);

const kindsOf = (mark: Mark | undefined): readonly string[] => (mark?.terms ?? []).flatMap((t) => (t.k === 'condition' ? (conditions[t.id] as ConditionEntry).places : []));
/** A finding before and a finding behind that have no other place: the last tooth is the second one's. */
function betweenTwo(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const mark = marks[at] as Mark;
  const codes = mark.place?.codes ?? [];
  const first = marks.slice(0, at).findLastIndex(isHead);
  const second = marks.findIndex((m, i) => i > at && !isGlue(m) && !m.terms?.some((t) => t.k === 'severity' || t.k === 'severityKept'));
  if (codes.length < 2 || mark.place?.joined !== 'adjacent' || first < 0 || !isHead(marks[second]) || tokens[mark.to - 1]?.ends || tokens.slice(mark.to, marks[second]?.from).some(({ t }) => joins.has(t))) return false;
  const third = marks.findIndex((m, i) => i > second && isHead(m));
  const ownBefore = marks.slice(marks.slice(0, first).findLastIndex(isHead) + 1, first).some(({ place }) => place !== undefined);
  const ownBehind = marks.slice(second + 1, third < 0 ? marks.length : third).some(({ place }) => place !== undefined);
  const gap = areNeighbours(codes.at(-2) as string, codes.at(-1) as string) && [first, second].some((i) => kindsOf(marks[i]).includes('S'));
  const bite = kindsOf(marks[second]).length > 0 && !kindsOf(marks[second]).includes('T');
  return !ownBefore && !ownBehind && !gap && !bite;
}
