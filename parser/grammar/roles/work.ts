/** Words that name a finding, or work, or how the work came out. */
import type { ConditionId } from '../../lexicon/conditions.ts';
import { type Rule, workDone } from './phrase.ts';

/** "bit seats on the upper sixes done": work, no finding. */
export const bitSeats: Rule = ({ condition, seated, work }) =>
  condition?.id === 'bit-seat-present' && seated ? { work: work ?? { as: 'procedure', id: 'bit-seat' } } : undefined;

/** "packed the gap with putty": work, not feed. */
export const packedWith: Rule = ({ condition, work, filled }) =>
  work && condition?.id === 'food-packing' && filled ? { work } : undefined;

/** "two oh seven out in one piece": how a tooth came out says that it was taken out. */
export const tookOut: Rule = ({ marks, tokens, i, mark, outcome, drawn }) =>
  outcome &&
  !drawn &&
  ['out', 'away'].includes(tokens[mark.from]?.t ?? '') &&
  mark.to === mark.from + 1 &&
  marks.slice(0, i).findLast((m) => !m.terms?.every((t) => t.k === 'glue'))?.place?.codes
    ? { work: { as: 'procedure', id: 'extract', done: true } }
    : undefined;

/** "Root tip left behind" of a tooth taken out says how it came out. */
export const howItCameOut: Rule = ({ marks, tokens, i, mark, terms, drawn }) =>
  terms.some((t) => t.k === 'work' && t.term.as === 'outcome') &&
  (drawn ||
    (marks[i - 1]?.place?.codes === undefined && marks.some((m, k) => k < i && ['out', 'away'].includes(tokens[m.from]?.t ?? '')))) &&
  !workDone(mark)
    ? 'mod'
    : undefined;

/** "advised packing of the gap": work, not feed. */
export const packingAdvised: Rule = ({ marks, condition, work }) =>
  work &&
  condition?.id === 'food-packing' &&
  condition.strength === 'withPlace' &&
  marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && (t.term.as === 'state' || t.term.as === 'advise')))
    ? { work }
    : undefined;

const grownOff: Readonly<Record<string, ConditionId>> = { hook: 'hook', ramp: 'ramp' };
/** "a five mil hook off the front of two oh six": where it grows, with no verb that took it off. */
export const growsOff: Rule = ({ marks, tokens, i, mark, work }) => {
  const id = grownOff[tokens[mark.from]?.t ?? ''];
  const end = tokens[mark.to]?.t === 'the' ? tokens[mark.to + 1]?.t : undefined;
  return work?.id === 'reduce' &&
    id !== undefined &&
    tokens[mark.to - 1]?.t === 'off' &&
    (end === 'front' || end === 'back') &&
    !marks.slice(0, i).some(workDone)
    ? { condition: { id, strength: 'say', plural: false } }
    : undefined;
};

/** "smoothed the sharp bit off one oh three": taken off by the speaker, not broken off. */
export const takenOff: Rule = ({ marks, tokens, i, mark, condition }) =>
  condition?.id === 'fracture' &&
  /^(?:bit|corner|piece|chunk) off$/.test(
    tokens
      .slice(mark.from, mark.to)
      .map(({ t }) => t)
      .join(' '),
  ) &&
  marks.slice(0, i).some(workDone)
    ? 'glue'
    : undefined;

/** "rinsed the mouth out before I started": the water, and no tooth of before. */
export const rinsedOut: Rule = ({ marks, tokens, i, mark, condition }) =>
  condition?.id === 'previously-extracted' &&
  tokens[mark.from]?.t === 'out' &&
  marks.slice(0, i).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && wets.has(t.term.id)))
    ? 'mod'
    : undefined;
const wets: ReadonlySet<string> = new Set(['rinse', 'flush']);
