/** What makes a sentence ask for a finding instead of stating it, and what answers. */

/** At the beginning of a sentence, before a finding without "the". */
export const questions: readonly string[] = [
  '(is|was) [not] (there|that|this|it) [(still|any|also)]', '(if|whether) there (is|was|were)', 'who (said|says) [that] [there is]', '(are|were) (there|those|these|they) [(not|still|any|also)]', '(have|had) (i|we|you|they) [(not|still|also)] [got]', '(has|had) (he|she|it) [(not|still|also)] [got]',
  '(does|did) (he|she|it) [(not|still|also)] have', '(do|did|can|could|am|was) (i|we) [(not|still|just|really)] (feel|see|find|have|feeling|seeing|miss)', 'would (you|i|we) (call|say) [(that|this|it|there)] [is]', 'any', 'what about', 'how about',
];
/** Questions that a tooth stands inside: "does one oh six have a hook", "is one oh six hooked" is none. */
export const questionVerbs: readonly string[] = ['does', 'did', 'has'];
/** Questions that turn the verb before a place or a pronoun: "is the left cheek sore", "is that sore", with the finding last. */
export const turnedVerbs: readonly string[] = ['is', 'are', 'was', 'were'];
/** Who may have given what is asked about: "did the vet use detomidine". */
export const askedOf: readonly string[] = ['the', 'you', 'he', 'she', 'they', 'it', 'we', 'your', 'our'];
/** Looked for, and the finding comes behind "for": "checked one oh six for a hook". */
export const searching: readonly string[] = ['(check|look|feel|looked|looking|checked|checking|felt|feeling|searched|searching|hunted|hunting|palpated|palpating|probed|probing)'];
/** Not known yet, wherever it stands. */
export const openQuestions: readonly string[] = ['(see|check|checking|feel|ask|asked|find out) (if|whether) (there|that|this|it|he|she) (is|has)', '(expect|expecting|thought|think|imagined|reckoned) there (would|might|will) be', 'doubt [(if|whether|that)] (there|that|it|this|he|she) (is|has)', "doubt that's", 'unlikely (to be|there is|that there is|that it is)', '(can|could) not see there being'];
/** What was expected: only an answer makes these a question. */
export const expected: readonly string[] = ['(was|were) [half] expecting', '(was|were|did) not (expect|expecting) [to (see|find|feel)]', '(i|we) [had] expected [to (find|see|feel)]', '(thought|reckoned|expected|was sure|were sure) [that] there (was|were|is|would be) [no]', '(thought|reckoned) (he|she|it) (had|was) [no]'];
/** Somebody else's words, when they are of a tooth or a part of the mouth and of today. */
export const hearsay: readonly string[] = ['[the] (owner|vet|dentist|rider|groom|trainer|farrier|physio|yard manager|last (man|lady|dentist|one|person)) (said|says|thinks|thought|reckons|reckoned|told (me|us)|mentioned|is convinced|is sure|swears|was saying|saw|noticed|felt)', 'you (said|told me|mentioned|thought)', '(they|she|somebody|someone) (said|told (me|us)|mentioned) [that] there'];

const there = '[(there|here|here either|on this one|found|seen|felt|to (feel|find|see))]';
/** What answers at the end of a sentence, or of the phrase. Words of joining and a "no" or "yes" may stand before it. */
export const answersNo: readonly string[] = [
  `(no|nope|nah|none|nothing|neither) ${there}`, `nothing ${there}`, '[(there|that|it)] is (not|none|nothing) [(one|any|there|so|a thing)]', 'there is no (such thing|sign)', '(we|i|he|she|it) (have|has|do|does|did|had) not [(got|have)] [(one|any|it|that)]', '(can|could|did) not (find|see|feel) (it|one|any|anything)', 'found (none|nothing)', 'there (was|were) (none|nothing|not)', 'i (was|am) wrong',
];
export const answersYes: readonly string[] = [
  '(yes|yep|yeah|yup|aye) [there (is|are)] [(one|some)]', '(there|it|that) (is|was) [one]', '(found|got|have) (one|it)', 'there are [some]', '(yes|yep) (he|she|it|we|i) (has|have|do|does|did) [(got|have)] [one]',
];
/** Before an answer, and part of it. */
export const beforeAnswers: readonly string[] = ['but', 'and', 'well', 'oh', 'no', 'yes', 'yep', 'yeah'];

const subject = '(the|that|this|these|those|it|he|she|they|his|her|its)';
const we = '(i|we)';
/** A clause that begins with one of these asks, whatever it names: how it is, or whether something is to be done. */
export const asking: readonly string[] = [
  `(is|are|was|were) [not] ${subject}`, '(are|am|were) (we|i|you|they)', 'do (i|we|you|they)', 'did (i|we|you|he|she|they)', 'does (the|that|this|it|he|she)', `(should|shall|can|could|would|will|must) ${we}`, '(can|could) you (see|feel|hear|tell)', 'would you (call|say|describe|want|like|have|rather|refer|reduce|take|leave|do|rasp|float|pull|extract|watch|recheck)', '(will|would|can|could) (he|she|it) (need|want|have|be|do|stand|get)',
  'have (i|we|you|they)', '(has|have) the', '(has|had) (it|he|she|that|this|anyone|anybody|somebody|someone)', 'how (big|bad|deep|wide|long|large|high|much|many|loose|mobile|severe|sharp|far|old|steep|about|sore)', '(how|what|where|why|when) (is|are|was|were|did|do|does|should|shall|will|would) (the|that|this|it|he|she|you|we|i|they|his|her)', '(what|which) (grade|size|side|tooth|colour|stage|one|degree|way)', 'what about', 'which of (them|these|those|the)', 'what is (this|that|it) [(then|here|there)] (a|an)',
  '[(just|and|please)] (mind|watch) (your|the|those) (fingers|hands|toes|feet|head)', '[(just|and|be|please)] careful (when|while|with|of|on)',
];
/** Of these, the ones that ask also where no pause was made before them. */
export const askingAnywhere: readonly string[] = ['is it', 'would you (call|say)', 'do you (think|reckon|want)', 'did (i|you) say', 'should (i|we)', 'shall (i|we)'];
/** A verb before the place that it asks about: "does one oh six need the vet", "is one oh six the one". */
export const askingOfPlaces: readonly string[] = ['is', 'are', 'was', 'were', 'does', 'has', 'could', 'can', 'should', 'will', 'would'];
