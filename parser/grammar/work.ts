/** Rules that claim whole stretches before findings are looked for: sedation and medicines, what comes next, what was not examined. */
import type { Context } from '../contract/draft.ts';
import type { Carry } from './carry.ts';
import { advisedThere } from './advised.ts';
import { followUps, followUpWords } from './followUps.ts';
import { imaging } from './imaging.ts';
import type { Made } from './made.ts';
import type { RawPlace } from './places.ts';
import { advisedWords } from '../lexicon/advising.ts';
import { imagingWords } from '../lexicon/imaging.ts';
import { oneNextWords } from '../lexicon/nextThings.ts';
import { notLookedWords } from '../lexicon/notExamined.ts';
import { toldToWords } from '../lexicon/toldToDo.ts';
import { nextWords, oneNext, severalNext, wholeNext } from './nextThings.ts';
import { notExamined } from './notExamined.ts';
import { saidNext, toldNext } from './saidNext.ts';
import type { Mark } from './scan.ts';
import { woken, type Said } from './said.ts';
import { stretches, type Stretch } from './stretches.ts';
import { sedations } from './sedations.ts';
import { facts, factWords } from './facts.ts';
import { toldIn, toldWords } from './told.ts';
import { toldFeed, toldToDo } from './toldToDo.ts';
import type { Token } from './tokens.ts';

export interface Claimed {
  readonly made: readonly Made[];
  readonly marks: ReadonlySet<number>;
}
export interface Before {
  readonly carry: Carry;
  readonly context: Context;
  /** Places said earlier in the same breath. */ readonly named?: readonly RawPlace[];
}
export type WorkRule = (marks: readonly Mark[], tokens: readonly Token[], before: Before) => readonly Made[];

/** In this order: a dose is no size; a referral names a tooth that is no finding; "not examined" is never "normal". */
const ordered = woken<WorkRule>([
  { rule: sedations, needs: ['agent', 'sedate', 'topUp', 'more', 'second', 'third', 'further', 'another', 'again'] },
  { rule: imaging, needs: imagingWords },
  { rule: toldToDo, needs: toldToWords },
  { rule: saidNext, needs: nextWords },
  { rule: followUps, needs: followUpWords },
  { rule: advisedThere, needs: advisedWords },
  { rule: toldNext, needs: nextWords },
  { rule: oneNext, needs: oneNextWords },
  { rule: notExamined, needs: notLookedWords },
  { rule: facts, needs: [...factWords, ...toldWords] },
]);

const tellsWhatIsNext: ReadonlySet<WorkRule> = new Set([saidNext, followUps, advisedThere, toldNext, oneNext]);
const nothing: Claimed = { made: [], marks: new Set() };
/** Claims by stretch of the phrase: one that names another thing is read by itself. */
export function workRules(marks: readonly Mark[], tokens: readonly Token[], before: Before, said: Said): Claimed {
  const awake = ordered(said);
  if (awake.length === 0) return nothing;
  // Who wants it is no fact by itself: "owner's happy to have it x-rayed".
  const pictures = awake.includes(imaging) ? imaging(marks, tokens, before) : [];
  if (pictures.length > 0) return { made: pictures, marks: new Set(pictures.flatMap((m) => m.marks)) };
  const told = awake.includes(toldToDo) ? toldToDo(marks, tokens, before) : [];
  if (told.length > 0) return { made: told, marks: new Set(told.flatMap((m) => m.marks)) };
  const whole = awake.includes(oneNext) ? wholeNext(marks, tokens, before) : [];
  if (whole.length > 0) return { made: whole, marks: new Set(whole.flatMap((m) => m.marks)) };
  const several = awake.some((rule) => tellsWhatIsNext.has(rule)) ? severalNext(marks, tokens, before) : [];
  if (several.length > 0) return { made: several, marks: new Set(several.flatMap((m) => m.marks)) };
  const fed = awake.includes(toldToDo) ? toldFeed(marks, tokens, before) : [];
  if (fed.length > 0) return { made: fed, marks: new Set(fed.flatMap((m) => m.marks)) };
  const parts = stretches(marks, tokens);
  const made =
    parts.length === 1 ? claimed(awake, marks, tokens, before) : parts.flatMap((part) => inStretch(awake, part, marks, tokens, before));
  return { made, marks: new Set(made.flatMap((m) => m.marks)) };
}

function inStretch(
  rules: readonly WorkRule[],
  { from, to }: Stretch,
  marks: readonly Mark[],
  tokens: readonly Token[],
  before: Before,
): readonly Made[] {
  const first = (marks[from] as Mark).from;
  const own = marks.slice(from, to).map((mark) => ({ ...mark, from: mark.from - first, to: mark.to - first }));
  // What was named earlier in the breath stands ready, as what an earlier phrase named does.
  const named = marks.slice(0, from).flatMap(({ place }) => place ?? []);
  const ready = named.length > 0 ? { ...before, carry: { ...before.carry, place: named }, named } : before;
  const later = (at: readonly number[]): readonly number[] => at.map((m) => m + from);
  return claimed(rules, own, tokens.slice(first, (marks[to - 1] as Mark).to), ready).map((one): Made => ({
    ...one,
    marks: later(one.marks),
    doubts: one.doubts.map((doubt) => (doubt.marks ? { ...doubt, marks: later(doubt.marks) } : doubt)),
  }));
}

function claimed(rules: readonly WorkRule[], marks: readonly Mark[], tokens: readonly Token[], before: Before): readonly Made[] {
  // "one twenty with the sedation": what it costs, and no dose.
  const paid = toldIn(tokens).get(0)?.about === 'account';
  for (const rule of paid ? rules.filter((one) => one === facts) : rules) {
    const made = rule(marks, tokens, before);
    if (made.length > 0) return made;
  }
  return [];
}
