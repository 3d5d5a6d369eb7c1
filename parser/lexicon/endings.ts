/** Where something may be said to its end: words behind which a speaker who pauses looks for the next. */
export const openEnds: readonly string[] = [
  'a', 'an', 'the', 'of', 'in', 'on', 'at', 'to', 'by', 'for', 'with', 'from', 'and', 'or', 'but', 'no', 'not', 'is', 'are', 'was', 'were', 'has', 'have', 'had', 'got', 'between', 'behind', 'about', 'than', 'as', 'very', 'quite', 'some', 'any', 'these', 'those', 'his', 'its', 'my', 'our', 'your', 'their', 'um', 'uh', 'er', 'grade', 'stage',
];
/** No number ends with these. */
export const halfNumbers: readonly string[] = ['oh', 'zero', 'nought', 'point', 'hundred', 'half'];
/** Behind a number these are still of it. */
export const ofTheNumber: readonly string[] = ['mil', 'mils', 'millimetres', 'millimetre', 'point', 'half'];
/** Before a number: it is said to its end. */
export const grading: readonly string[] = ['grade', 'stage'];
/** Which of several, and what has several, beside those of `sidedNouns`: "the left", "cheek" is one place. */
export const whichOf: readonly string[] = ['left', 'right', 'upper', 'lower', 'top', 'bottom', 'near', 'off', 'first', 'second', 'third', 'last'];
export const ofSeveral: readonly string[] = ['left', 'right', 'premolar', 'molar', 'wolf', 'tooth', 'teeth', 'cap'];
