/** Where something may be said to its end: words behind which a speaker who pauses looks for the next. */
export const openEnds: readonly string[] = [
  'a', 'an', 'the', 'of', 'in', 'on', 'at', 'to', 'by', 'for', 'with', 'from', 'and', 'or', 'but', 'no', 'not', 'is', 'are', 'was', 'were', 'has', 'have', 'had', 'got', 'between', 'behind', 'about', 'than', 'as', 'very', 'quite', 'some', 'any', 'these', 'those', 'his', 'its', 'my', 'our', 'your', 'their', 'um', 'uh', 'er', 'grade', 'stage',
];
/** Nobody ends with these, however it was written. */
export const neverEnds: readonly string[] = ['apart', 'a', 'an', 'the', 'of', 'his', 'its', 'my', 'our', 'your', 'their', 'very', 'quite', 'might', 'must', 'should', 'would', "i'd", "i'm", "i've", "i'll", "he's", "she's", "it's", "there's", "what's", "they're", "we've", "you've"];
/** No number ends with these. */
export const halfNumbers: readonly string[] = ['oh', 'zero', 'nought', 'point', 'hundred', 'half'];
/** Behind a number these are still of it. */
export const ofTheNumber: readonly string[] = ['mil', 'mils', 'millimetres', 'millimetre', 'point', 'half'];
/** Before a number: it is said to its end. */
export const grading: readonly string[] = ['grade', 'stage'];
/** Which of several, and what has several, beside those of `sidedNouns`: "the left", "cheek" is one place. */
export const whichOf: readonly string[] = ['left', 'right', 'upper', 'lower', 'top', 'bottom', 'near', 'off', 'first', 'second', 'third', 'last'];
export const ofSeveral: readonly string[] = ['left', 'right', 'premolar', 'molar', 'wolf', 'tooth', 'teeth', 'cap'];
/** Behind a pause, a sentence of its own: one that begins with these, or with what it is about and one of the verbs. */
export const beginsAnew: readonly string[] = [
  'no', 'not', 'none', 'nothing', 'nobody', 'i', 'it', 'he', 'she', 'they', 'we', 'you', 'that\'s', 'there', 'now', 'today', 'tomorrow', 'sorry', 'give', 'come', 'look', 'looks', 'smells', 'feels', 'sounds', 'is', 'isn\'t', 'did', 'do', 'does', 'any', 'and', 'but', 'so', 'because', 'though', 'unless', 'if', 'let\'s', 'please', 'another', 'same',
];
export const finite: readonly string[] = [
  'is', 'are', 'was', 'were', 'am', 'has', 'have', 'had', 'will', 'would', 'can', 'could', 'did', 'does', 'do', 'wants', 'needs', 'looks', 'feels', 'that\'s', 'declined', 'agreed', 'said',
];
/** They go on with what was said, where no question begins with them. */
export const goesOn: readonly string[] = ['is', 'are', 'was', 'were', 'has', 'have', 'had', 'will', 'would', 'must', 'should', 'ought', 'needs', 'wants'];
export const asksWith: readonly string[] = ['it', 'he', 'she', 'they', 'you', 'i', 'we', 'that', 'this', 'these', 'those', 'there', 'the', 'his', 'her', 'your', 'my', 'a', 'any', 'not', 'have'];
/** "this morning", "next time" are one. */
export const these: readonly string[] = ['this', 'that', 'next', 'last'];
export const besideThis: readonly string[] = ['morning', 'afternoon', 'evening', 'week', 'month', 'year', 'time', 'visit', 'spring', 'summer', 'autumn', 'fall', 'winter', 'tooth', 'side', 'row'];
/** Before a pause they close an aside: "the right one, I would say, is nearer six". */
export const closesAsides: readonly string[] = ['say', 'think', 'reckon', 'guess', 'suppose', 'believe', 'know'];
/** Nothing by itself: what these begin, and name no finding in, is of what was said before the pause. */
export const attaching: readonly string[] = ['in', 'for', 'on', 'at', 'to', 'by', 'with', 'from', 'into', 'off', 'until', 'till', 'between', 'behind', 'under'];
/** A jaw and teeth of it are one place: "the lower, nines". */
export const jaws: readonly string[] = ['upper', 'lower', 'top', 'bottom'];
export const positions: readonly string[] = ['sixes', 'sevens', 'eights', 'nines', 'tens', 'elevens'];
/** Nothing begins with these. */
export const neverBegins: readonly string[] = ['per', 'of', 'off', 'out', 'away', 'than', 'ago'];
/** Behind "didn't" and "can't", behind "wasn't" and "hasn't": what is not so. No words of what was done instead: "couldn't, flushed it". */
export const behindNot: readonly string[] = ['rule', 'feel', 'touch', 'reach', 'need', 'want', 'bother', 'widen', 'reduce', 'rasp', 'float', 'flush', 'pack', 'extract', 'pull', 'scale', 'rinse', 'buff', 'remove', 'restore', 'sedate', 'smooth', 'grind', 'trim'];
export const behindNotBeen: readonly string[] = ['needed', 'grown', 'been', 'seen', 'felt', 'found', 'healed', 'meeting'];
/** Of what it is, and which of its sides: "the tongue, side of it". */
export const withSides: readonly string[] = ['cheek', 'tongue', 'palate', 'buccal', 'lingual', 'palatal', 'labial', 'lip', 'hand', 'either', 'other', 'outer', 'inner'];
export const sidesOf: readonly string[] = ['side', 'sides', 'edge', 'edges', 'aspect', 'surface', 'surfaces', 'margin'];
/** Said behind what may be so. */
export const hedging: readonly string[] = ['possibly', 'maybe', 'perhaps', 'probably', 'think', 'reckon', 'suspect', 'likely'];
/** But what these follow: "off the bit for a week", "of course", "off side". */
export const saidByThemselves: readonly string[] = ['course', 'bit', 'side', 'fore', 'hind'];
