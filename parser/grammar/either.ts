/** Two ways to read the same words, neither of which is the better: what both make stays, what only one of them makes is one question. */
import type { ItemBody, Made } from './made.ts';
import type { Reading } from './read.ts';

const same = (a: Made, b: Made): boolean => JSON.stringify([a.body, a.revises]) === JSON.stringify([b.body, b.revises]);
const bodiesOf = (all: readonly Made[]): readonly ItemBody[] => all.flatMap(({ body }) => body ?? []);

/** @param why the rule that found them level; @param more marks of the first that the question is about besides those of its items */
export function either(first: Reading, second: Reading, why: string, more: readonly number[] = []): Reading {
  const own = first.made.filter((made) => !second.made.some((other) => same(made, other)));
  const others = second.made.filter((made) => !first.made.some((other) => same(made, other)));
  const readings = [own, others].map((all) => ({ label: '', bodies: bodiesOf(all) }));
  if (readings.every(({ bodies }) => bodies.length === 0)) return first;
  const marks = [...new Set([...own.flatMap((made) => made.marks), ...more])];
  // Talk, of which no word could be asked about.
  if (marks.length === 0) return first;
  const asked: Made = {
    marks,
    rules: [why],
    doubts: [{ doubt: 'two-readings', readings }],
  };
  return { ...first, made: [...first.made.filter((made) => !own.includes(made)), asked], steps: first.steps + second.steps };
}
