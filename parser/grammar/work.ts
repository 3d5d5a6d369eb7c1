/** Rules that claim whole stretches before findings are looked for: sedation and medicines, what comes next, what was not examined. */
import type { Context } from '../contract/draft.ts';
import type { Carry } from './carry.ts';
import { followUps } from './followUps.ts';
import type { Made } from './made.ts';
import { notExamined } from './notExamined.ts';
import type { Mark } from './scan.ts';
import { sedations } from './sedations.ts';
import { facts } from './facts.ts';
import type { Token } from './tokens.ts';

export interface Claimed { readonly made: readonly Made[]; readonly marks: ReadonlySet<number> }
export interface Before { readonly carry: Carry; readonly context: Context }
export type WorkRule = (marks: readonly Mark[], tokens: readonly Token[], before: Before) => readonly Made[];

/** In this order: a dose is no size; a referral names a tooth that is no finding; "not examined" is never "normal". */
const ordered: readonly WorkRule[] = [sedations, followUps, notExamined, facts];

export function workRules(marks: readonly Mark[], tokens: readonly Token[], before: Before): Claimed {
  return ordered.reduce<Claimed>((done, rule) => {
    if (done.made.length > 0) return done;
    const made = rule(marks, tokens, before);
    return { made: [...done.made, ...made], marks: new Set([...done.marks, ...made.flatMap((m) => m.marks)]) };
  }, { made: [], marks: new Set() });
}
