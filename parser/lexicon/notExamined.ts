/** How people say that they did not look or feel: a turn, then small words, then a verb; patterns over the words of a phrase. */
const turn = '(?:(?:could|can|did|have|has|had|was|were|is|are|am|do) not|(?:would|did|will) not (?:let|allow) me|(?:wont|won\'t) let me|unable to|not able to|never|no (?:chance|hope|way|luck|joy|point|time)(?: of| in| with| to)?|failed to|struggled to|gave up(?: on)?(?: trying to)?|(?<!\\b(?:does|do) )not)';
const small = '(?: (?:really|quite|properly|fully|even|yet|get|got|getting|manage|managed|to|round|a|an|any|much|of|chance|been|be|able|just|simply|all|decent|good|proper|clear|go|have|had|take|sensible|useful|thorough))*';
const seeing = '(?:see|saw|seeing|seen|look at|look past|look beyond|looking at|looked at|look in|look inside|visuali[sz]e|visuali[sz]ed|visuali[sz]ing|view|viewed|inspect|inspected|view of|look at|sight of|glimpse of|looked in|picture of|eyes on)';
const tools = '(?:mirror|scope|probe|light|torch|head ?torch|camera)';
const feeling = `(?:feel|feeling|felt|feel of|palpate|palpated|palpating|reach|reached|reaching|reachable|(?:put|get|got|getting|fit|fitting)? ?(?:my|a|the)? ?(?:hand|hands|finger|fingers|thumb) (?:all the way |right |far )?(?:back to|up to|in to|into|to|near|round|on|behind|back|in|past|down))`;
const testing = `(?:(?:look|looked|looking|check|checked|checking|test|tested|feel|felt) for|examine|examined|examining|check|checked|checking|assess|assessed|assessing|evaluate|evaluated|probe|probed|probing|measure|measured|measuring|grade|graded|grading|judge|judged|judging|percuss|percussed|(?:come|get|got) (?:well|good|properly|right) (?:at|to)|get at|get near|get to|get back to|got back to|getting back to|get as far as|got to|got at|got near|got as far as|get round to|got round to|getting to|getting at|getting near|go near|near|touch|handle|open|opened|comment on|speak for|vouch for|say (?:much|anything) (?:about|on)|bother(?:ed)? with|test|tested|testing|been over|gone over|go over|been round|(?:my|a|the)? ?${tools} (?:all the way |right |far )?(?:back to|up to|in to|into|to|near|round|on|behind|back|in|past|down))`;
/** "wouldn't open wide enough to see ...", "too sore to examine ...": why not, and then what. */
const hindered = '(?:(?:would|will) not (?:\\w+ ){1,5}?(?:to|for me to)|too (?:\\w+ ){1,3}?(?:to|for me to)|(?:could|can|did) not (?:\\w+ ){1,4}?enough (?:back |in |round |up )?(?:for me )?to|(?:not|never) (?:\\w+ ){0,2}enough (?:\\w+ ){0,2}?(?:to|for me to))';
/** "too dark for a proper look at ..." */
const noLook = '\\btoo (?:\\w+ ){1,3}?for (?:a|any|much of a) (?:\\w+ )?(?:look|view|sight|feel)(?: (?:at|of|in|round))?\\b';

export interface NotLooked { readonly pattern: RegExp; readonly means?: 'seen' | 'felt'; /** What stands behind it may be a finding ruled out: "could not see any hooks". */ readonly sees?: true }
export const notLooked: readonly NotLooked[] = [
  { pattern: new RegExp(noLook) },
  { pattern: /\b(?:could|can) not (?:really )?(?:say|tell you|comment)\b(?! (?:that|if|whether|there|no|for|it|he|she|what|how|why|much|anything|which|about|on))/ },
  { pattern: /\b(?:felt|by feel|palpated|by hand) (?:only )?(?:but|and|only|though)? ?(?:not|never|could not be) (?:seen|visuali[sz]ed|viewed)\b/, means: 'seen' },
  { pattern: /\b(?:seen|visuali[sz]ed|viewed|looked at) (?:only )?(?:but|and|only|though)? ?(?:not|never|could not be) (?:felt|palpated)\b/, means: 'felt' },
  { pattern: new RegExp(`\\b(?:${hindered}|${turn})${small} ${testing}\\b`) },
  { pattern: new RegExp(`\\b(?:(?:${hindered}|${turn})${small} ${seeing}|(?:could|can) not be seen|no (?:good |decent |clear |proper |real )?(?:view|sight|look) (?:of|at)|not (?:visible|in view)|out of sight|view blocked)\\b`), means: 'seen', sees: true },
  { pattern: new RegExp(`\\b(?:(?:${hindered}|${turn})${small} ${feeling}|(?:could|can) not be felt)\\b`), means: 'felt', sees: true },
  { pattern: /\b(?:skipped|missed out|left out|left unexamined|unexamined|unreachable|not reachable|no exam(?:ination)? of|not (?:yet )?(?:covered|looked over|accessible)|inaccessible|out of reach|beyond reach|not (?:done|tackled) (?:an )?exam(?:ination)? of)\b/ },
];
/** Each of the patterns holds one of these words: without any of them none has to be tried. */
export const notLookedWords: ReadonlySet<string> = new Set(['not', 'never', 'no', 'wont', 'won\'t', 'unable', 'failed', 'struggled', 'gave', 'too', 'out', 'blocked', 'skipped', 'missed', 'left', 'unexamined', 'unreachable', 'inaccessible', 'beyond']);
/** At the edges of a reason: words that give none. */
export const noReason: readonly string[] = ['properly', 'yet', 'today', 'at', 'all', 'either', 'really', 'fully', 'well', 'enough', 'clearly', 'though', 'because', 'as', 'since', 'due', 'to', 'of', 'for', 'cos', 'he', 'she', 'it', 'the', 'horse', 'and', 'on', 'in', 'so', 'again', 'this', 'time', 'but'];
