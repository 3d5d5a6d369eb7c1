/** What a phrase holds, asked before a rule is run: most rules have nothing to do in most phrases. */
import { gather } from './lists.ts';
import type { Mark } from './scan.ts';
import type { Reading } from './read.ts';
import type { Token } from './tokens.ts';

/** Its words, and the kinds of work that its marks may name ("agent", "recheck"). */
export type Said = ReadonlySet<string>;
export function saidIn(tokens: readonly Token[], marks: readonly Mark[]): Said {
  const said = new Set<string>();
  for (const { t } of tokens) said.add(t);
  for (const { terms = [] } of marks) for (const term of terms) if (term.k === 'work') said.add(term.term.as);
  return said;
}

/** A rule with what it needs, any of it: without it the rule changes nothing. */
export interface Needing<R> {
  readonly rule: R;
  readonly needs: Iterable<string>;
}

/** An integer's bits, less its sign. */
const BITS = 31;

/** For each thing that may be said the rules that it wakes, as bits: one look at it is for all rules that an integer holds. */
function wakesOf(table: readonly Needing<unknown>[]): ReadonlyMap<string, number> {
  const wakes = new Map<string, number>();
  table.forEach(({ needs }, bit) => {
    for (const need of needs) wakes.set(need, (wakes.get(need) ?? 0) | (1 << bit));
  });
  return wakes;
}

/** Rules in their order; asked which of them have something to do. */
export function woken<R>(table: readonly Needing<R>[]): (...all: readonly Iterable<string>[]) => readonly R[] {
  const later = table.length > BITS ? woken(table.slice(BITS)) : undefined;
  const first = table.slice(0, BITS);
  const wakes = wakesOf(first);
  return (...all) => {
    let awake = 0;
    for (const said of all) for (const one of said) awake |= wakes.get(one) ?? 0;
    const now = gather(first, ({ rule }, bit) => ((awake & (1 << bit)) === 0 ? undefined : rule));
    return later === undefined ? now : [...now, ...later(...all)];
  };
}

/** Says the same in other words, which the rules behind it know; the same list where it has nothing to say. */
export type Reword = (tokens: readonly Token[]) => readonly Token[];
export type Rewording = Needing<Reword>;

/** Rewordings in their order, each over what the one before left. */
export function inOrder(table: readonly Rewording[]): Reword {
  const later = table.length > BITS ? inOrder(table.slice(BITS)) : undefined;
  const first = table.slice(0, BITS);
  const wakes = wakesOf(first);
  const wokenBy = (tokens: readonly Token[]): number => {
    let awake = 0;
    for (const { t } of tokens) awake |= wakes.get(t) ?? 0;
    return awake;
  };
  return (tokens) => {
    let said = tokens;
    let awake = wokenBy(tokens);
    first.forEach(({ rule }, bit) => {
      if ((awake & (1 << bit)) === 0) return;
      const before = said;
      said = rule(before);
      // Words that were put may be another's.
      if (said !== before) awake |= wokenBy(said);
    });
    return later?.(said) ?? said;
  };
}

/** How words are read by a way that puts others in their place. */
export interface As {
  /** By the ordered rules, in no other way. */
  readonly once: (tokens: readonly Token[]) => Reading;
  /** From the first way on. */
  readonly again: (tokens: readonly Token[]) => Reading;
  /** Nothing was recorded in this exam yet. */
  readonly fresh: boolean;
}
/** A way to read a phrase that is not what it says word by word: a question, an answer, one or the other. Nothing where it is none. */
export type Way = (tokens: readonly Token[], as: As) => Reading | undefined;
