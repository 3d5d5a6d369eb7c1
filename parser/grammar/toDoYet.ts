/**
 * "Rasped the uppers, lowers next time": what is still to come is said of the place behind the pause, so the work is said of it once
 * more, without its verb of doing; the part that was done stays done.
 */
import type { Mark } from './scan.ts';
import { isGlue, isHead } from './scan.ts';
import type { Token } from './tokens.ts';

const workOf = (mark: Mark): NonNullable<Mark['terms']>[number] | undefined =>
  mark.terms?.find((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done === true);
const toCome = (mark: Mark | undefined): boolean =>
  mark?.terms?.some((t) => t.k === 'work' && t.term.as === 'state' && (t.term.state === 'planned' || t.term.state === 'not-done')) ?? false;

export function toDoYet(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const done = marks.findIndex((mark) => workOf(mark) !== undefined);
  const work = marks[done] && workOf(marks[done]);
  if (work?.k !== 'work' || work.term.as !== 'procedure' || marks.filter(isHead).length !== 1) return marks;
  const first = marks.findIndex((mark, i) => i > done && mark.place !== undefined);
  const next = marks.findIndex((mark, i) => i > first && mark.place !== undefined);
  if (first < 0 || next < 0 || marks.filter(({ place }) => place !== undefined).length !== 2) return marks;
  const paused = tokens.slice((marks[first] as Mark).to - 1, (marks[next] as Mark).from).some(({ ends }) => ends);
  const state = marks.findIndex((mark, i) => i > next && !isGlue(mark));
  if (!paused || !toCome(marks[state])) return marks;
  const { from, to } = marks[done] as Mark;
  const at = (marks[next] as Mark).from;
  const again: Mark = { from: at, to: at, terms: [{ k: 'work', term: { ...work.term, done: undefined } }], again: { from, to } };
  return [...marks.slice(0, next), again, ...marks.slice(next)];
}
