/** What a phrase holds, asked before a rule is run: most rules have nothing to do in most phrases. */
import { gather } from './lists.ts';
import type { Mark } from './scan.ts';
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

/** Rules in their order; asked which of them have something to do. One look at each thing that is said, for all rules that an integer holds. */
export function woken<R>(table: readonly Needing<R>[]): (...all: readonly Said[]) => readonly R[] {
  const later = table.length > BITS ? woken(table.slice(BITS)) : undefined;
  const first = table.slice(0, BITS);
  const wakes = new Map<string, number>();
  first.forEach(({ needs }, bit) => {
    for (const need of needs) wakes.set(need, (wakes.get(need) ?? 0) | (1 << bit));
  });
  return (...all) => {
    let awake = 0;
    for (const said of all) for (const one of said) awake |= wakes.get(one) ?? 0;
    const now = gather(first, ({ rule }, bit) => ((awake & (1 << bit)) === 0 ? undefined : rule));
    return later === undefined ? now : [...now, ...later(...all)];
  };
}
