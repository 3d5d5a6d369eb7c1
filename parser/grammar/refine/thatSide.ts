/** "no hook on that side": of a place that is shown and was not said; nowhere in the mouth would be more than was spoken. */
import { each, finding, type Rule } from './rule.ts';

const shown = /\b(?:on|in|at|along|down|up) (?:that|this) (?:side|tooth|row|quadrant|corner|spot)\b/;
export const thatSide: Rule = (reads, { text }) =>
  shown.test(text)
    ? each(reads, (made) =>
        finding(made)?.presence === 'absent' && finding(made)?.place === null && made.doubts.length === 0
          ? { ...made, rules: [...made.rules, 'shown and not said'], doubts: [{ doubt: 'no-place' }] }
          : made,
      )
    : reads;
