/** One text to what it yields, before ids: the ordered rules at work on one reading. Pure. */
import type { Context } from '../contract/draft.ts';
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { assemble, roles, type Clause, type Roles } from './assemble.ts';
import { carryOf, missingTeeth, type Carry } from './carry.ts';
import { findingsOf } from './findings.ts';
import { alone } from './alone.ts';
import type { Made } from './made.ts';
import { scan, type Mark } from './scan.ts';
import { selfCorrected } from './selfCorrection.ts';
import { tokenise, type Token } from './tokens.ts';
import { treatmentsOf } from './treatments.ts';
import { workRules } from './work.ts';

export interface Reading {
  readonly tokens: readonly Token[];
  readonly marks: readonly Mark[];
  readonly role: Roles['role'];
  readonly made: readonly Made[];
  /** Places as said, for the phrase that follows. */
  readonly places: readonly number[];
  readonly unknown: number;
  /** Words taken back by the speaker in the same breath. */
  readonly takenBack: readonly number[];
  readonly steps: number;
}

export function read(words: readonly string[], context: Context, carry: Carry = carryOf(context)): Reading {
  const { tokens, takenBack } = selfCorrected(tokenise(words));
  const { marks, steps } = scan(tokens);
  const claimed = workRules(marks, tokens, { carry, context });
  const free = marks.map((mark, i) => (claimed.marks.has(i) ? { from: mark.from, to: mark.to, terms: [] } : mark));
  const shared = roles(free, (carry.place ?? []).length > 0);
  const unknown = shared.role.filter((r, i) => r === 'unknown' && !claimed.marks.has(i)).length;
  const missing = missingTeeth(context);
  const clauses = assemble(free, tokens, shared);
  const made = clauses.flatMap((clause, i) => (clause.head.work
    ? treatmentsOf(clause, free, tokens, { missing, carry, context, unknown })
    : believed(clause, findingsOf(packedAtGap(clause, clauses, i), free, tokens, missing), unknown, carry)));
  const all = [...claimed.made, ...made];
  const places = shared.role.flatMap((r, i) => (r === 'place' && !claimed.marks.has(i) ? [i] : []));
  const rest = all.length > 0 || clauses.some(({ head }) => head.condition || head.work) && unknown > 0 ? [] : alone({ marks: free, tokens, role: shared.role, places, unknown, carry, context, missing });
  return { tokens, marks, role: shared.role, made: [...all, ...rest], places, unknown, takenBack, steps };
}

/** "valve diastema packed": after a gap it is feed that is packed. */
function packedAtGap(clause: Clause, _all: readonly Clause[], _at: number): Clause { return clause; }

/**
 * Talk that holds a word of the trade is still talk: "a hook on the door". What is believed without a place, or on a
 * word that people use for everything, must stand in a phrase made of nothing but the trade's words.
 */
function believed(clause: Clause, made: readonly Made[], unknown: number, carry: Carry): readonly Made[] {
  const { id, strength } = clause.head.condition as NonNullable<Clause['head']['condition']>;
  const entry = conditions[id] as ConditionEntry;
  return made.filter(({ body, doubts }) => {
    if (body?.kind !== 'finding') return true;
    const coded = body.place !== null && !('region' in body.place);
    if (strength === 'absentSay' && id === 'abnormality' && body.place === null) return unknown === 0 && wholeMouth(clause);
    if (coded || doubts.some(({ doubt }) => doubt === 'no-such-tooth')) return strength === 'say' || unknown <= 1;
    if (body.place !== null) return unknown <= (strength === 'say' ? 2 : 0);
    if (entry.group === 'horse') return unknown <= 3;
    return unknown === 0 || (carry.half !== undefined && unknown <= 1);
  });
}
const wholeMouth = (clause: Clause): boolean => clause.placings.length > 0 || clause.head.condition?.strength === 'absentSay';
