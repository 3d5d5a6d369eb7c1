/** Units and the words of dimension that go with them. */
export const lengthUnits: Readonly<Record<'mm' | 'cm', readonly string[]>> = {
  mm: ['mm', 'mil', 'mils', 'mill', 'mills', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'cent'],
};
export const angleUnits: readonly string[] = ['degree', 'degrees', '°'];
export const volumeUnits: readonly string[] = ['ml', 'mil', 'mils', 'mill', 'mills', 'millilitre', 'millilitres', 'milliliter', 'milliliters', 'cc', 'ccs'];
export const massUnits: Readonly<Record<'mg' | 'mcg', readonly string[]>> = { mg: ['mg', 'mgs', 'milligram', 'milligrams'], mcg: ['mcg', 'mcgs', 'microgram', 'micrograms', 'mikes', 'mics', 'mic', 'mike'] };
export const perKilo: readonly string[] = ['per kilo', 'per kilogram', 'per kg', 'a kilo'];
export const timeUnits: Readonly<Record<'day' | 'week' | 'month' | 'year', readonly string[]>> = { day: ['day', 'days'], week: ['week', 'weeks', 'fortnight', 'weekly'], month: ['month', 'months', 'monthly'], year: ['year', 'years', 'yearly'] };
/** After a measure: which dimension it is. */
export const dimensionSay: Readonly<Record<'height' | 'depth' | 'width' | 'length', readonly string[]>> = {
  height: ['high', 'tall', 'proud', 'in height'], depth: ['deep', 'in depth', 'down'], width: ['wide', 'across', 'in width', 'in diameter'], length: ['long', 'in length'],
};
/** Words that announce a grade. */
export const gradeWords: readonly string[] = ['grade', 'grades', 'stage', 'class', 'degree', 'index', 'score', 'scores', 'scored', 'scoring', 'graded', 'grading', 'staged', 'staging'];
/** Right behind a size, at the end of what is said of it. */
export const behindSize: readonly string[] = ['at (least|most|the most|the very least|a push)', 'if (that|even that)', 'easily', 'easy', 'tops', 'max', 'maximum', 'minimum', 'at the deepest', 'at its (deepest|widest|longest|tallest)'];
/** Between a size and the next bigger one, which it may be as well. */
export const orEven: readonly string[] = ['(maybe|perhaps|possibly|could be|might be|may be|maybe even|if not|going on|nearer|nearly|verging on|well maybe|well call it|or maybe|or possibly|or even)'];
/** Right before a size: a guess at it, and not at what has it. */
export const guessBefore: readonly string[] = ['probably', 'possibly', 'perhaps', 'maybe'];
/** Before a size or a grade: who says so, and of what. "i'd put that at four mil". */
export const judgedSay: readonly string[] = ["(put|measure|measured|gauge|gauged) (that|it|this|them|those|him|her) [down] (at|as|around|about|to be)", "i 'd put (that|it|this|them|those|him|her) (at|as|around|about)", '(measure|measured|gauge|gauged) (that|it|this)'];
/** Before a size that was settled on behind others: "six, seven, call it seven mil". */
export const settledSay: readonly string[] = ["[(let us|let's|we will)] (call it|say|call that|make it|go with|settle on)", "[(it|that)] is"];
/** Asked of oneself before the size is read off the probe: "how deep are you now". */
export const askedOfSize: readonly string[] = ['how (deep|big|long|wide|tall|high|bad|far|loose) (is|are) (it|that|this|you|we|they|those|he|she) [(now|then|in there|there|this time)]'];
