/** Where something ruled out was meant, when its own words do not say: nowhere in the mouth would be more than was spoken. */
import { become, each, finding, type Rule } from './rule.ts';

const shown =
  /\b(?:on|in|at|along|down|up) (?:that|this) (?:side|tooth|row|quadrant|corner|spot)\b|\b(?:other|that) one\b|\b(?:other|that|this) tooth\b/;
/** "no hook on that side", "the other one is fine": of a place that is shown and was not said. */
export const thatSide: Rule = (reads, { text }) =>
  shown.test(text)
    ? each(reads, (made) =>
        finding(made)?.presence === 'absent' && finding(made)?.place === null && made.doubts.length === 0
          ? { ...made, rules: [...made.rules, 'shown and not said'], doubts: [{ doubt: 'no-place' }] }
          : made,
      )
    : reads;

const notA = /\bnot (?:really |quite |actually |exactly )?(?:a|an)$/;
/** "not a hook, a ramp on one oh six": what it is not is said of the place of what it is. */
export const notThisBut: Rule = (reads, { marks, tokens }) =>
  reads.map((read, i) => {
    const [one, then] = [read.made[0], reads[i + 1]?.made[0]];
    const [denied, instead] = [one && finding(one), then && finding(then)];
    const from = marks[read.clause.head.mark]?.from ?? 0;
    const before = tokens.slice(Math.max(0, from - 3), from).map(({ t }) => t);
    return one &&
      read.made.length === 1 &&
      denied?.presence === 'absent' &&
      denied.place === null &&
      instead?.presence === 'present' &&
      instead.place &&
      notA.test(before.join(' '))
      ? { ...read, made: [become(one, { place: instead.place }, 'said of the same place')] }
      : read;
  });
