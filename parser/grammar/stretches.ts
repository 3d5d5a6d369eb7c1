/**
 * One breath may hold several things: "hook on one oh six three mil, rasped by hand, see him in six months". Each kind of
 * thing opens a stretch of its own, so that a rule that reads a whole sentence takes no word of another one.
 */
import { conditions } from '../lexicon/conditions.ts';
import { describingSay } from '../lexicon/modifiers.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { factAt, ofAFinding } from './facts.ts';
import { afterIn } from './followUps.ts';
import type { Mark } from './scan.ts';
import { supposed } from './supposed.ts';
import { toldBeside } from './told.ts';
import type { Token } from './tokens.ts';

/** Mark indices, the end exclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}
/** `mouth`: a finding or work done. `next`: what comes next. `dose`: sedation, a medicine. `visit`: a fact of the visit. */
interface Opening {
  readonly at: number;
  readonly kind: 'mouth' | 'next' | 'dose' | 'visit';
  readonly what: string;
  readonly to: number;
}

const nextWords = new Set(['recheck', 'refer', 'monitor', 'advise', 'report', 'noBit']);
/** Facts that speak of findings or work themselves: what stands behind them is theirs. */
const ofTheMouth = new Set(['history', 'earlier-treatment', 'photographs']);
/** How many words may stand between "back" and "in six months". */
const NEAR = 9;

export function stretches(marks: readonly Mark[], tokens: readonly Token[]): readonly Stretch[] {
  const words = tokens.map(({ t }) => t);
  const opened = openings(marks, tokens, words);
  const cuts: number[] = [];
  opened.reduce<Opening | undefined>((before, opening) => {
    if (before === undefined) return opening;
    if (!apart(before, opening, marks, tokens, words)) return { ...before, at: opening.at, to: opening.to };
    cuts.push(beginning(before, opening, marks, tokens));
    return opening;
  }, undefined);
  return [0, ...cuts].map((from, i): Stretch => ({ from, to: cuts[i] ?? marks.length })).filter(({ from, to }) => to > from);
}

function openings(marks: readonly Mark[], tokens: readonly Token[], words: readonly string[]): readonly Opening[] {
  const found: Opening[] = [];
  const told = toldBeside(marks, tokens);
  const may = supposed(tokens);
  let factTo = 0;
  marks.forEach((mark, at) => {
    const fact = mark.from >= factTo ? factAt(words, mark.from, told) : undefined;
    if (fact && !ofAFinding(marks, mark.from, fact.to)) {
      factTo = fact.to;
      found.push({ at, kind: 'visit', what: fact.about, to: fact.to });
      return;
    }
    // "ring me if he bleeds": nothing that was found.
    const supposedly = may[mark.from] === true && mark.terms?.some(({ k }) => k === 'condition') === true;
    if (mark.from < factTo || supposedly || ofSedation(marks, at, tokens)) return;
    const own = openingOf(mark, at, marks, tokens);
    // "gag on, took it fine": fine is what was said before it, where no part of the mouth is named.
    const ofTheFact =
      own?.what === 'abnormality' &&
      found.at(-1)?.kind === 'visit' &&
      !marks.some(({ place, from }) => place !== undefined && from >= factTo) &&
      !/\b(?:normal|healthy|clear|unremarkable|abnormal\w*|nothing|nil|n a d|limits)\b/.test(words.slice(mark.from, mark.to).join(' '));
    if (own && !ofTheFact) found.push(own);
  });
  return found;
}

const describes: ReadonlySet<string> = new Set(describingSay);
/** "good sedation", "nice deep sedation": how it took, and nothing of the mouth. */
function ofSedation(marks: readonly Mark[], at: number, tokens: readonly Token[]): boolean {
  const { from, to } = marks[at] as Mark;
  if (to - from !== 1 || !describes.has(tokens[from]?.t ?? '') || tokens[from]?.ends === true) return false;
  const next = marks
    .slice(at + 1)
    .find((mark) => !mark.terms?.every((t) => ['severity', 'severityKept', 'qualifier', 'glue'].includes(t.k)));
  return next?.terms?.some((t) => t.k === 'work' && ['sedate', 'agent', 'topUp'].includes(t.term.as)) === true;
}

function openingOf(mark: Mark, at: number, marks: readonly Mark[], tokens: readonly Token[]): Opening | undefined {
  for (const term of mark.terms ?? []) {
    if (
      term.k === 'condition' &&
      (term.strength !== 'withPlace' || marks.some(({ place }) => place !== undefined)) &&
      (conditions[term.id] as ConditionEntry).group !== 'normal'
    )
      return { at, kind: 'mouth', what: term.id, to: mark.to };
    if (term.k === 'condition' && term.strength !== 'withPlace') return { at, kind: 'mouth', what: term.id, to: mark.to };
    if (term.k !== 'work') continue;
    const { term: work } = term;
    if (
      work.as === 'procedure' &&
      work.done &&
      work.id !== 'nerve-block' &&
      (work.id !== 'extract' || marks.some(({ place, terms }) => place !== undefined || terms?.some((t) => t.k === 'condition')))
    )
      return { at, kind: 'mouth', what: work.id, to: mark.to };
    if (['sedate', 'agent', 'topUp'].includes(work.as)) return { at, kind: 'dose', what: work.as, to: mark.to };
    if (!nextWords.has(work.as)) continue;
    // "back", "review", "due": of what comes next only when a time stands near.
    const spoken =
      work.as !== 'recheck' ||
      /^(?:re|recheck|rechecks|follow|yearly|monthly)$/.test(tokens[mark.from]?.t ?? '') ||
      afterIn(tokens.slice(mark.to, mark.to + NEAR)) !== undefined;
    if (spoken && !(work.as === 'noBit' && afterIn(tokens.slice(mark.from)) === undefined))
      return { at, kind: 'next', what: work.as, to: mark.to };
  }
  return undefined;
}

/** Whether a second opening begins something new, and is no part of the first. */
function apart(a: Opening, b: Opening, marks: readonly Mark[], tokens: readonly Token[], words: readonly string[]): boolean {
  const between = words.slice(a.to, (marks[b.at] as Mark).from);
  const pause = paused(marks, tokens, a, b) >= 0;
  // "the gap between three oh nine and three ten": a place's own "and" joins nothing else.
  const joins = (word: string): boolean =>
    between.some((w, i) => w === word && !marks.some(({ place, from, to }) => place !== undefined && from <= a.to + i && to > a.to + i));
  const joined = pause || joins('and') || joins('then') || joins('but');
  if (a.kind === b.kind)
    return a.kind === 'next'
      ? joined && b.what !== a.what && !(a.what === 'advise' && !['recheck', 'refer'].includes(b.what))
      : a.kind === 'visit' && joined && a.what !== b.what && !ofTheMouth.has(a.what) && !ofTheMouth.has(b.what);
  if (b.kind === 'visit' && ofTheMouth.has(b.what) && !(pause && a.kind !== 'mouth')) return false;
  // "never been rasped, hooks on the upper sixes": of what was never done nothing was found.
  const never = a.what === 'earlier-treatment' && words.slice((marks[a.at] as Mark).from, a.to).some((w) => w === 'never' || w === 'ever');
  if (a.kind === 'visit' && ofTheMouth.has(a.what)) return pause && (never || b.kind === 'next' || b.kind === 'dose');
  const reason = between.some((w) => ['for', 'to', 'because', 'until', 'with', 'of', 'when', 'if', 'after'].includes(w));
  switch (a.kind) {
    // "a photo of it for the vet": what it is for.
    case 'mouth':
      return (
        !(pictures.has(a.what) && b.what === 'refer' && !joined && words[(marks[b.at] as Mark).from] === 'for') &&
        (b.kind !== 'next' || b.what !== 'advise' || joined || !reason)
      );
    case 'dose':
      return pause || (b.kind === 'next' ? joined || !reason : !reason && (b.kind !== 'mouth' || joined));
    case 'visit':
      // "heart rate forty before sedation": when it was counted.
      if (b.kind === 'dose' && a.what === 'heart-rate' && between.some((w) => ['before', 'prior', 'pre'].includes(w))) return false;
      return b.kind === 'dose' && a.what === 'consent' ? pause : joined || !reason;
    case 'next': {
      if (a.what === 'advise') return pause && b.kind === 'dose';
      if (a.what === 'refer') return pause && (b.kind !== 'mouth' || work(marks[b.at]));
      return joined || (!reason && afterIn(tokens.slice(a.to, (marks[b.at] as Mark).from)) !== undefined);
    }
  }
}

const pictures: ReadonlySet<string> = new Set(['photograph', 'radiograph']);
const work = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'work') ?? false;
/** The last mark between the two at whose end the writing pauses; -1 where there is none. */
function paused(marks: readonly Mark[], tokens: readonly Token[], a: Opening, b: Opening): number {
  for (let i = b.at - 1; i >= a.at; i -= 1) {
    const mark = marks[i] as Mark;
    if (mark.to >= a.to && tokens[mark.to - 1]?.ends) return i;
  }
  return -1;
}

/** Where the second one begins: behind the pause, or before the small words that lead to it. */
function beginning(a: Opening, b: Opening, marks: readonly Mark[], tokens: readonly Token[]): number {
  const pause = paused(marks, tokens, a, b);
  if (pause >= 0) return pause + 1;
  let from = b.at;
  const leads = (mark: Mark): boolean =>
    mark.from >= a.to &&
    mark.place === undefined &&
    mark.measure === undefined &&
    mark.number === undefined &&
    (mark.terms ?? []).some((t) => t.k === 'glue' || t.k === 'filler' || (b.kind === 'dose' && t.k === 'cue'));
  while (from > a.at + 1 && leads(marks[from - 1] as Mark)) from -= 1;
  return b.kind === 'dose' ? turnedFrom(marks, a, from) : from;
}
/** "she was that good we never needed any sedation": the word that rules it out stands before words of no trade. */
function turnedFrom(marks: readonly Mark[], a: Opening, from: number): number {
  for (let i = from - 1; i > a.at; i -= 1) {
    const { from: at, place, terms, unknown } = marks[i] as Mark;
    if (at < a.to || place !== undefined) return from;
    if (terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent')) return i;
    if (unknown !== true && !terms?.some((t) => t.k === 'glue' || t.k === 'filler')) return from;
  }
  return from;
}
