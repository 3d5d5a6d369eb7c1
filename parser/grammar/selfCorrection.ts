/** "one oh six hook sorry one oh seven": inside one utterance only the final word counts; what was taken back stays visible. */
import { scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const markers: readonly (readonly string[])[] = ['sorry i mean', 'sorry no', 'no sorry', 'no make that', 'no wait make that', 'make that', 'no i mean', 'i mean', 'no wait', 'correction', 'sorry', 'rather', 'scratch that', 'no scratch that', 'or rather'].map((m) => m.split(' ')).sort((a, b) => b.length - a.length);

const markerAt = (tokens: readonly Token[], at: number): number => markers.find((m) => m.every((word, i) => tokens[at + i]?.t === word))?.length ?? 0;

/** Where a correction begins the phrase it amends an earlier item: not this rule's work. */
export function selfCorrected(tokens: readonly Token[]): { readonly tokens: readonly Token[]; readonly takenBack: readonly number[] } {
  for (let at = 1; at < tokens.length; at += 1) {
    const length = markerAt(tokens, at);
    if (length === 0) continue;
    const before = tokens.slice(0, at);
    const after = tokens.slice(at + length);
    const beforeMarks = scan(before).marks;
    if (after.length === 0 || !beforeMarks.some(isSomething)) continue;
    const merged = merge(before, beforeMarks, after, scan(after).marks);
    if (merged === undefined) continue;
    const kept = new Set(merged.map(({ word }) => word));
    const rest = selfCorrected(merged);
    return { tokens: rest.tokens, takenBack: [...rest.takenBack, ...tokens.map(({ word }) => word).filter((word) => !kept.has(word))] };
  }
  return { tokens, takenBack: [] };
}

const isHead = (mark: Mark): boolean => mark.terms?.some((t) => t.k === 'condition' || (t.k === 'work' && t.term.as === 'procedure')) ?? false;
const isSomething = (mark: Mark): boolean => isHead(mark) || mark.place !== undefined || mark.measure !== undefined || mark.grade !== undefined;

/** Puts what was said last in the place of what it corrects; undefined where it corrects nothing here. */
function merge(before: readonly Token[], beforeMarks: readonly Mark[], after: readonly Token[], afterMarks: readonly Mark[]): readonly Token[] | undefined {
  const place = beforeMarks.findLast((mark) => mark.place !== undefined);
  if (afterMarks.some(isHead)) {
    if (afterMarks.some((mark) => mark.place) || place === undefined) return after;
    return [...before.slice(place.from, place.to), ...after];
  }
  const swap = (old: Mark | undefined): readonly Token[] | undefined => old && [...before.slice(0, old.from), ...after, ...before.slice(old.to)];
  if (afterMarks.some((mark) => mark.place)) return swap(place);
  if (afterMarks.some((mark) => mark.measure)) return swap(beforeMarks.findLast((mark) => mark.measure));
  if (afterMarks.some((mark) => mark.grade)) return swap(beforeMarks.findLast((mark) => mark.grade));
  if (afterMarks.every((mark) => mark.number !== undefined)) return swapNumber(before, beforeMarks.findLast((mark) => mark.measure ?? mark.grade), after);
  const kind = afterMarks[0]?.terms?.[0]?.k;
  return swap(beforeMarks.findLast((mark) => kind !== undefined && mark.terms?.some((t) => t.k === kind)));
}

/** "four mil no make that six": the unit stays. */
function swapNumber(before: readonly Token[], old: Mark | undefined, after: readonly Token[]): readonly Token[] | undefined {
  if (old === undefined) return undefined;
  return old.measure ? [...before.slice(0, old.from), ...after, ...before.slice(old.to - 1)] : [...before.slice(0, old.from + 1), ...after, ...before.slice(old.to)];
}
