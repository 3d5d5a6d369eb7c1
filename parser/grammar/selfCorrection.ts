/** "one oh six hook sorry one oh seven": inside one utterance only the final word counts; what was taken back stays visible. */
import { correctionSay, onlyAtStart } from '../lexicon/corrections.ts';
import { isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const markers: readonly (readonly string[])[] = correctionSay.filter((form) => !onlyAtStart.includes(form)).map((form) => form.split(' ')).sort((a, b) => b.length - a.length);

/** A plain "no" takes back only where a tooth or a size comes right behind it: "two oh six hook, no, one oh six". */
function plainNo(tokens: readonly Token[], at: number): boolean {
  if (tokens[at]?.t !== 'no') return false;
  const after = scan(tokens.slice(at + 1, at + 8)).marks;
  const next = after.find((mark) => !mark.terms?.some((t) => t.k === 'glue'));
  if (next?.place?.codes !== undefined || next?.measure !== undefined) return true;
  if (next?.place === undefined && next?.number === undefined) return false;
  // "on the left, no the right cheek": another side of what was said last; "three mil, no four": another number.
  const last = scan(tokens.slice(0, at)).marks.findLast((mark) => !mark.terms?.some((t) => t.k === 'glue'));
  if (next.number !== undefined) return last?.measure !== undefined || last?.grade !== undefined;
  return last?.place?.side !== undefined && next.place?.side !== undefined && last.place.side !== next.place.side && !scan(tokens.slice(at + 1)).marks.some(isHead);
}
const firstWords = new Set(markers.map(([first]) => first));
const markerAt = (tokens: readonly Token[], at: number): number => (!firstWords.has(tokens[at]?.t) ? plainNo(tokens, at) ? 1 : 0 : markers.find((m) => m.every((word, i) => tokens[at + i]?.t === word))?.length ?? (plainNo(tokens, at) ? 1 : 0));

/** So often at most may one phrase take itself back: reading stays linear in its length. */
const TAKES_BACK = 6;

/** Where a correction begins the phrase it amends an earlier item: not this rule's work. */
export function selfCorrected(tokens: readonly Token[], left = TAKES_BACK): { readonly tokens: readonly Token[]; readonly takenBack: readonly number[]; /** Words looked at. */ readonly steps: number } {
  let tries = left;
  let steps = 0;
  for (let at = 1; at < tokens.length && tries > 0; at += 1) {
    const length = markerAt(tokens, at);
    if (length === 0) continue;
    tries -= 1;
    steps += tokens.length;
    const before = tokens.slice(0, at);
    const after = tokens.slice(at + length);
    const beforeMarks = scan(before).marks;
    if (after.length === 0 || !beforeMarks.some(isSomething)) continue;
    const merged = merge(before, beforeMarks, after, scan(after).marks);
    if (merged === undefined) continue;
    const kept = new Set(merged.map(({ word }) => word));
    const rest = selfCorrected(merged, tries);
    return { steps: steps + rest.steps, tokens: rest.tokens, takenBack: [...rest.takenBack, ...tokens.map(({ word }) => word).filter((word) => !kept.has(word))] };
  }
  return { tokens, takenBack: [], steps: steps + tokens.length };
}

const isSomething = (mark: Mark): boolean => isHead(mark) || mark.place !== undefined || mark.measure !== undefined || mark.grade !== undefined || mark.number !== undefined;

/** Puts what was said last in the place of what it corrects; undefined where it corrects nothing here. */
function merge(before: readonly Token[], beforeMarks: readonly Mark[], after: readonly Token[], afterMarks: readonly Mark[]): readonly Token[] | undefined {
  const place = beforeMarks.findLast((mark) => mark.place !== undefined);
  // "three mil, no four, on one oh six hook": the number alone is put right, what follows goes on.
  const [number] = afterMarks;
  const sized = beforeMarks.at(-1);
  if (number?.number !== undefined && afterMarks.length > 1 && (sized?.measure ?? sized?.grade)) return [...(swapNumber(before, sized, after.slice(number.from, number.to)) as readonly Token[]), ...after.slice(number.to)];
  if (afterMarks.some(isHead)) {
    if (afterMarks.some((mark) => mark.place) || place === undefined) return [...before.slice(0, lastClause(beforeMarks)), ...after];
    return [...before.slice(place.from, place.to), ...after];
  }
  // "hook three mil, make that four mil, on two oh six": each takes the place of its like, what is new comes on.
  const size = beforeMarks.findLast((mark) => mark.measure);
  if (place === undefined && size && afterMarks[0]?.measure && afterMarks.some((mark) => mark.place)) return [...before.slice(0, size.from), ...after.slice(0, afterMarks[0].to), ...before.slice(size.to), ...after.slice(afterMarks[0].to)];
  const swap = (old: Mark | undefined): readonly Token[] | undefined => old && [...before.slice(0, old.from), ...after, ...before.slice(old.to)];
  if (afterMarks.some((mark) => mark.place)) return swap(place);
  if (afterMarks.some((mark) => mark.measure)) return swap(beforeMarks.findLast((mark) => mark.measure) ?? (beforeMarks.at(-1)?.number !== undefined ? beforeMarks.at(-1) : undefined));
  if (afterMarks.some((mark) => mark.grade)) return swap(beforeMarks.findLast((mark) => mark.grade));
  if (afterMarks.every((mark) => mark.number !== undefined)) return swapNumber(before, beforeMarks.findLast((mark) => mark.measure ?? mark.grade), after);
  const kind = afterMarks[0]?.terms?.[0]?.k;
  return swap(beforeMarks.findLast((mark) => kind !== undefined && mark.terms?.some((t) => t.k === kind)));
}

/** Where the last finding of several begins; earlier ones stand. */
function lastClause(marks: readonly Mark[]): number {
  const heads = marks.flatMap((mark, i) => (isHead(mark) ? [i] : []));
  if (heads.length < 2) return 0;
  const [previous, last] = heads.slice(-2) as [number, number];
  const place = marks.findIndex((mark, i) => i > previous && i < last && mark.place !== undefined);
  return (marks[place >= 0 && marks.slice(0, previous).some((mark) => mark.place) ? place : last] as Mark).from;
}

/** "four mil no make that six": the unit stays. */
function swapNumber(before: readonly Token[], old: Mark | undefined, after: readonly Token[]): readonly Token[] | undefined {
  if (old === undefined) return undefined;
  return old.measure ? [...before.slice(0, old.from), ...after, ...before.slice(old.to - 1)] : [...before.slice(0, old.from + 1), ...after, ...before.slice(old.to)];
}
