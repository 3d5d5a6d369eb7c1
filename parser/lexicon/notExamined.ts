/** How people say that they did not look or feel: a turn, then small words, then a verb; patterns over the words of a phrase. */
const turn = '(?:(?:could|can|did|have|has|had|was|were|is|are|am) not|(?:would|did|will) not let me|(?:wont|won\'t) let me|unable to|not able to|never|no (?:chance|hope|way|luck)(?: of| in| with)?|(?<!\\b(?:does|do) )not)';
const small = '(?: (?:really|quite|properly|fully|even|yet|get|got|getting|manage|managed|to|round|a|an|any|much|of|chance|been|be|able|just|simply|all|decent|good|proper|clear))*';
const seeing = '(?:see|seeing|seen|look at|looking at|looked at|visuali[sz]e|visuali[sz]ed|visuali[sz]ing|view|viewed|inspect|inspected|look at|view of|sight of|look in|looked in)';
const feeling = '(?:feel|feeling|felt round|felt properly|feel of|palpate|palpated|palpating|reach|reached|reaching|reachable|(?:my|a|the)? ?(?:hand|hands|finger|fingers|thumb) (?:back to|up to|right back to|in to|into|to|near|round|on|behind|back))';
const testing = '(?:examine|examined|examining|check|checked|checking|assess|assessed|assessing|evaluate|evaluated|probe|probed|probing|measure|measured|measuring|grade|graded|grading|judge|judged|percuss|percussed|get to|get at|get near|near)';

export interface NotLooked { readonly pattern: RegExp; readonly means?: 'seen' | 'felt'; /** What stands behind it may be a finding ruled out: "could not see any hooks". */ readonly sees?: true }
export const notLooked: readonly NotLooked[] = [
  { pattern: new RegExp(`\\b${turn}${small} ${testing}\\b`) },
  { pattern: new RegExp(`\\b(?:${turn}${small} ${seeing}|(?:could|can) not be seen|no (?:good |decent |clear |proper )?view of|not visible|out of sight)\\b`), means: 'seen', sees: true },
  { pattern: new RegExp(`\\b(?:${turn}${small} ${feeling}|(?:could|can) not be felt)\\b`), means: 'felt', sees: true },
  { pattern: /\b(?:skipped|missed out|left out|not (?:yet )?(?:covered|looked over))\b/ },
];
/** At the edges of a reason: words that give none. */
export const noReason: readonly string[] = ['properly', 'yet', 'today', 'at', 'all', 'either', 'really', 'fully', 'well', 'enough', 'clearly', 'though', 'because', 'as', 'since', 'due', 'to', 'of', 'for', 'cos', 'he', 'she', 'it', 'the', 'horse', 'and', 'on', 'in', 'so', 'again', 'this', 'time'];
