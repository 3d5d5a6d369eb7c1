/** Marks that name nothing themselves. */
import type { Rule } from './phrase.ts';

const details: ReadonlySet<string> = new Set(['surface', 'qualifier', 'severity', 'severityKept', 'change', 'work']);

export const place: Rule = ({ mark }) => (mark.place && !mark.unknown ? 'place' : undefined);
export const procedure: Rule = ({ work }) => work && { work };
export const figure: Rule = ({ mark }) => (mark.measure || mark.grade || mark.pulpHorn !== undefined ? 'mod' : undefined);

/** "two fractures": how many there are. */
export const howMany: Rule = ({ marks, i, mark }) =>
  mark.number !== undefined && marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.plural || t.strength === 'say'))
    ? 'glue'
    : undefined;

/** Among it "whole", "in one piece": of nothing that was taken out. */
export const notKnown: Rule = ({ mark, terms }) =>
  mark.unknown ||
  mark.number !== undefined ||
  terms.some((t) => t.k === 'talk') ||
  (terms.length > 0 && terms.every((t) => t.k === 'work' && t.term.as === 'outcome'))
    ? 'unknown'
    : undefined;

export const turn: Rule = ({ terms, notOnly }) => {
  if (notOnly && terms.some((t) => t.k === 'stop')) return 'glue';
  if (terms.some((t) => t.k === 'stop' || (t.k === 'cue' && t.cue.means === 'except'))) return 'stop';
  return terms.some((t) => t.k === 'cue') ? 'cue' : undefined;
};

export const detail: Rule = ({ terms }) => (terms.some((t) => details.has(t.k)) ? 'mod' : undefined);
