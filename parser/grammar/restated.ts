/**
 * Teeth said one after the other that are not one list: "hook on one oh six, two oh six ramped" (each finding its own tooth),
 * "one oh seven and one oh nine caries, grade two on the nine" (one of them again, with what is its own).
 */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { quadrantsOf, readCodes, type RawPlace } from './places.ts';
import { isGlue, isHead, type Mark } from './scan.ts';
import { areNeighbours, codeOf } from './teeth.ts';
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
  return again(marks.flatMap((mark, i) => (betweenTwo(marks, tokens, i) || twice(mark) ? lastApart(mark, tokens) : [mark])), tokens);
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

const teethOf = (raw: RawPlace | undefined): readonly string[] => raw?.codes ?? (raw?.positions && raw.region === undefined && (raw.jaw !== undefined || raw.side !== undefined || raw.plural) ? (raw.jaw !== undefined || raw.side !== undefined ? quadrantsOf(raw) : [1, 2, 3, 4]).flatMap((q) => (raw.positions ?? []).map((p) => codeOf(q, p))) : []);
const isFigure = (mark: Mark | undefined): boolean => mark !== undefined && (mark.measure !== undefined || mark.grade !== undefined || (mark.terms ?? []).some((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'change'));

/** One tooth of those named said again with a size, grade or degree of its own: it leaves the others, and the finding is put back for it. */
function again(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const out = [...marks];
  for (let i = out.length - 1; i > 0; i -= 1) {
    const own = teethOf(out[i]?.place);
    const first = out.findIndex((mark, k) => k < i && teethOf(mark.place).length > 1 && own.every((code) => teethOf(mark.place).includes(code)));
    const heads = out.slice(0, i).filter(isHead).length;
    if (own.length !== 1 || first < 0 || heads !== 1 || out.slice(i + 1).some(isHead)) continue;
    const before = out.slice(0, i).findLastIndex((mark) => !isGlue(mark));
    const leads = isFigure(out[before]) && before > first && tokens.slice((out[before] as Mark).to, out[i]?.from).some(({ t }) => t === 'on' || t === 'at');
    const follows = isFigure(out.slice(i + 1).find((mark) => !isGlue(mark)));
    if (!leads && !follows) continue;
    const left = teethOf(out[first]?.place).filter((code) => !own.includes(code));
    out[first] = { ...(out[first] as Mark), place: { codes: left, joined: left.length === 1 ? 'one' : 'and' } };
    const at = leads && !follows ? before : i;
    const from = (out[at] as Mark).from;
    out.splice(at, 0, { from, to: from, terms: [{ k: 'cue', cue: { say: [], means: 'now', looks: 'forward' } }] });
    break;
  }
  return out;
}
