/**
 * Words that turn a finding: ruled out, suspected, from before, said not to have been looked at.
 * A scope ends at the next place, the next condition after a conjunction, "but", or a long pause; "or" and "nor" carry it on.
 */
export interface ScopeCue {
  readonly say: readonly string[];
  readonly means: 'absent' | 'suspected' | 'before' | 'not-examined' | 'except' | 'now';
  readonly looks: 'forward' | 'back' | 'both';
  /** pseudo: looks like a cue and turns nothing. */
  readonly kind?: 'pseudo';
}

export const scopeCues: readonly ScopeCue[] = [
  { say: ['not only', 'no doubt', 'not sure', 'no problem', 'no bother', 'no worries', 'no wonder', 'no idea'], means: 'absent', looks: 'forward', kind: 'pseudo' },
  { say: ['no [(obvious|visible|palpable|significant|further|other|more|new|evidence of|sign of|signs of|trace of|hint of)]', 'none of', 'nothing', 'not [(a|any|got any|got a|really|particularly)]', 'without [(a|any)]', '(free|clear) (of|from) [any]', 'nil', 'never', 'neither', 'nor [any]', 'absence of', 'negative for', '(has|have) no', '(does not|did not|do not) have [(a|any)]', "(doesn't|don't|didn't) have [(a|any)]", 'cannot (see|feel|find) [(a|any)]', "can't (see|feel|find) [(a|any)]", "(isn't|aren't|wasn't)", 'rule(d) out [(a|any)]'], means: 'absent', looks: 'forward' },
  { say: ['[is] ruled out', '[is] negative', 'nil', '[is|are] not present', '[is|are] (none|absent) [today]', 'none (seen|felt|found|there)', 'not (found|detected|there)'], means: 'absent', looks: 'back' },
  { say: ['possible', 'possibly', 'suspect(ed) [(a|an)]', 'suspicious (of|for)', 'suspicion of', 'query', 'queried', 'probable', 'probably', 'likely', 'maybe [(a|an)]', 'perhaps', '(might|may|could) (be|have) [(a|an)]', 'looks like it (might|may|could) (be|have)', 'think there (is|might be) [(a|an)]', 'not sure (if|whether) [(there is|it is)] [(a|an)]'], means: 'suspected', looks: 'forward' },
  { say: ['suspected', 'possibly', 'query', 'is (possible|suspected|likely)', 'i (suspect|think)', 'question mark'], means: 'suspected', looks: 'back' },
  { say: ['previous [history of]', 'previously', 'history of', 'has had [(a|an)]', 'had [(a|an)]', 'used to (have|be)', 'no longer [(a|any)]', 'there was [(a|an)]', 'past', 'healed', 'resolved'], means: 'before', looks: 'forward' },
  { say: ['(has|have|is|are) [(now|all)] (healed|closed|gone|resolved|cleared) [up]', 'healed [(up|over|well|nicely)]', 'closed up', 'last (time|year|visit)', 'before', 'previously', 'in the past', 'years ago', 'resolved', 'cleared up', 'has gone'], means: 'before', looks: 'back' },
  { say: ['apart from', 'except [for]', 'other than', 'but for', 'excepting'], means: 'except', looks: 'forward' },
];

/** Words that close whatever scope is open. */
export const scopeStops: readonly string[] = ['but', 'however', 'though', 'although', 'otherwise', 'whereas', 'then'];
