/** "Missing", "absent", "gone": a tooth that is not there, a finding ruled out, or what something has become. */
import type { Mark } from '../scan.ts';
import type { Term } from '../vocabulary.ts';
import type { Token } from '../tokens.ts';
import { isHeadMark, type Rule } from './phrase.ts';

/** "three oh seven has gone brown": what it has become, and it is still there; so it is where the lexicon has no word for it. */
export const hasBecome: Rule = ({ marks, tokens, i, condition }) =>
  condition?.id === 'missing' && becomes(marks, tokens, i) ? 'glue' : undefined;

const partsOfATooth: ReadonlySet<string> = new Set(['tip', 'corner', 'cusp', 'chunk', 'piece', 'edge', 'half']);
/** "the tip of four oh four is missing": a part of it has broken off, and the tooth stands. */
export const partGone: Rule = ({ marks, tokens, i, condition }) => {
  if (condition?.id !== 'missing') return undefined;
  const at = marks.slice(0, i).findLast(({ place }) => place !== undefined);
  const of = at === undefined ? -1 : tokens[at.from - 1]?.t === 'the' ? at.from - 2 : at.from - 1;
  return at?.place?.region === undefined && tokens[of]?.t === 'of' && partsOfATooth.has(tokens[of - 1]?.t ?? '')
    ? { condition: { id: 'fracture', strength: 'say', plural: false } }
    : undefined;
};

/** "wolf teeth absent": said of a finding it rules that out; "slab gone" is not the tooth. */
export const goneOfFinding: Rule = ({ marks, i, condition, terms }) => {
  if (condition?.id !== 'missing' || condition.strength !== 'withPlace') return undefined;
  const cue = terms.some((t) => t.k === 'cue');
  if (cue && ofCanines(marks, i)) return 'cue';
  if (saidOfFinding(marks, i) && cue) return 'cue';
  if (ownTooth(marks, i) || !notOfTooth(marks, i)) return undefined;
  return cue && saidOf(marks, i) ? 'cue' : 'glue';
};

/** "has gone" with what it has gone to right behind it. */
function becomes(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (
    tokens[to - 1]?.t !== 'gone' ||
    tokens[to - 1]?.ends === true ||
    !tokens.slice(Math.max(0, from - 1), to).some(({ t }) => ['has', 'have', 'is', 'are'].includes(t))
  )
    return false;
  // "have gone to grade three"
  if (tokens[to]?.t === 'to') return true;
  // "has gone a bit brown"
  const next = marks.slice(at + 1).find(({ terms }) => !terms?.some(({ k }) => k === 'severity'));
  const last = next !== undefined && (marks.indexOf(next) + 1 === marks.length || tokens[next.to - 1]?.ends === true);
  return (
    next?.terms?.some((t) => t.k === 'condition' && t.id !== 'missing') === true ||
    (last && next.unknown === true && !/(?:tely|tally|rely)$|^altogether$/.test(tokens[to]?.t ?? ''))
  );
}

/** What a word like "absent" or "gone" is said of: the nearest word before it that means something. */
const beforeIt = (marks: readonly Mark[], at: number): Mark | undefined =>
  marks.slice(0, at).findLast(({ terms, unknown }) => unknown || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
const saidOf = (marks: readonly Mark[], at: number): boolean => beforeIt(marks, at)?.terms?.some((t) => t.k === 'condition') ?? false;
/** "lower canines absent": a mare has none, and has lost none (record contract, section 3: `canine-present` absent). */
const ofCanines = (marks: readonly Mark[], at: number): boolean => {
  const before = marks.slice(0, at).filter(({ place, terms }) => place !== undefined || !(terms ?? []).every((t) => t.k === 'glue'));
  return (
    before.some(({ place }) => place?.positions?.join() === '4') &&
    before.every(({ place }) => place !== undefined && place.codes === undefined)
  );
};
/** "the pocket at three ten gone", "swelling over the maxilla, gone now": said of what stands at that place, not of a tooth. */
const ofThen = (term: Term | { readonly k: 'place' }): boolean => term.k === 'cue' && term.cue.means === 'before';
const saidOfFinding = (marks: readonly Mark[], at: number): boolean => {
  // "that hook on one oh six we saw last year has gone": words of when and how it was met stand between.
  const place = marks
    .slice(0, at)
    .findLastIndex(
      ({ terms, unknown }) => !unknown && !(terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler' || ofThen(t)),
    );
  const name = marks
    .slice(0, Math.max(place, 0))
    .findLast(
      (mark) =>
        !(mark.terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler' || t.k === 'surface' || t.k === 'severity'),
    );
  const alone = !marks.slice(0, Math.max(place, 0)).some((mark) => mark.place !== undefined);
  return (
    alone &&
    marks[place]?.place !== undefined &&
    (name?.terms ?? []).some((t) => t.k === 'condition' && t.strength !== 'absentSay') &&
    marks[at + 1]?.place === undefined
  );
};
/** "one ten has a step, four ten's gone": of a tooth of its own, once the finding before had its place before it. */
const ownTooth = (marks: readonly Mark[], at: number): boolean => {
  const own = marks
    .slice(0, at)
    .findLastIndex(({ terms }) => terms === undefined || !terms.every((t) => t.k === 'glue' || t.k === 'filler'));
  const place = marks.slice(0, Math.max(own, 0)).findIndex((mark) => mark.place !== undefined);
  return marks[own]?.place?.codes?.length === 1 && place >= 0 && place < marks.findIndex(isHeadMark);
};
const notOfTooth = (marks: readonly Mark[], at: number): boolean => {
  const before = beforeIt(marks, at);
  const named = ({ terms }: Mark): boolean => (terms ?? []).some((t) => ['condition', 'qualifier', 'surface'].includes(t.k));
  return (
    before !== undefined &&
    (named(before) ||
      (before.unknown === true && marks.slice(marks.slice(0, at).findLastIndex(({ place }) => place !== undefined) + 1, at).some(named))) &&
    (marks[at + 1]?.place === undefined || Object.keys(marks[at + 1]?.place as object).every((key) => key === 'side'))
  );
};
