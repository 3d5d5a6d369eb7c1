/** How what was found before is named when it is spoken of again: its everyday names, and what tells one of several from the others. */
import type { ConditionId } from './conditions.ts';
import { foundAs, thingsSay } from './handling.ts';

const nouns: Readonly<Record<string, readonly ConditionId[]>> = {
  ridge: ['exaggerated-transverse-ridges'], crest: ['wave'], peak: ['wave'], excess: ['overlong', 'focal-overgrowth'], overhang: ['hook'],
  fracture: ['fracture'], chip: ['fracture'], crack: ['fracture'], break: ['fracture'], split: ['fracture'],
  ulcer: ['ulcer'], sore: ['ulcer', 'bit-injury'], rub: ['bit-injury'], cut: ['laceration', 'bit-injury'], lump: ['lump', 'mass', 'swelling'], swelling: ['swelling'], scar: ['scar'],
  recession: ['gingival-recession'], decay: ['infundibular-caries', 'peripheral-caries', 'caries'], caries: ['infundibular-caries', 'peripheral-caries', 'caries'],
};
/** A noun, in the singular or the plural, and what it may be. */
export const foundNouns: ReadonlyMap<string, readonly ConditionId[]> = new Map([
  ...Object.entries(nouns).flatMap(([word, ids]) => [word, `${word}s`].map((said) => [said, ids] as const)), ...foundAs,
]);
/** The one name of a finding that all words of work know. */
export const plainName = (id: ConditionId): string | undefined =>
  [...Object.entries(thingsSay), ...Object.entries(nouns)].find(([word, ids]) => ids[0] === id && word !== 'calculu')?.[0] ??
  Object.entries(thingsSay).find(([, ids]) => ids.includes(id))?.[0];

/** What one speaks of as one: "four ten's got one too". */
export const countedAsOne = (id: ConditionId): boolean => Object.values(thingsSay).some((ids) => ids.includes(id)) || ['ulcer', 'fracture', 'wolf-tooth'].includes(id);

/** "the loose one": what was found of it. */
export const foundWith: Readonly<Record<string, readonly ConditionId[]>> = {
  loose: ['loose-cap', 'mobility'], wobbly: ['mobility', 'loose-cap'], tight: ['retained-cap'], firm: ['retained-cap'], solid: ['retained-cap'],
  long: ['overlong'], overlong: ['overlong'], sharp: ['sharp', 'sharp-enamel-points'], broken: ['fracture'], cracked: ['fracture'], chipped: ['fracture'], fractured: ['fracture'],
  sore: ['pain', 'ulcer'], red: ['gingivitis'], blind: ['blind-wolf-tooth'], missing: ['missing'],
};
/** "the big one", "the deep one": the first or the last of several by their size, and words by which it may have been called so. */
export interface Sized {
  readonly most: boolean;
  /** The measure, where it is one alone. */ readonly what?: 'depth' | 'width';
  readonly called: readonly string[];
}
const big: Sized = { most: true, called: ['big', 'large', 'huge', 'massive', 'tall', 'great', 'severe', 'marked', 'whopping', 'monster', 'bad'] };
const small: Sized = { most: false, called: ['small', 'smaller', 'little', 'wee', 'tiny', 'slight', 'mild', 'minor'] };
const deep: Sized = { most: true, what: 'depth', called: ['deep', 'deeper'] };
const shallow: Sized = { most: false, what: 'depth', called: ['shallow', 'shallower'] };
const wide: Sized = { most: true, what: 'width', called: ['wide', 'wider'] };
const narrow: Sized = { most: false, what: 'width', called: ['narrow', 'narrower', 'tight'] };
export const foundSized: Readonly<Record<string, Sized>> = {
  big, bigger: big, biggest: big, large: big, larger: big, largest: big, tall: big, taller: big, tallest: big,
  small, smaller: small, smallest: small, little: small, wee: small, tiny: small,
  deep, deeper: deep, deepest: deep, shallow, shallower: shallow, shallowest: shallow, wide, wider: wide, widest: wide, narrow, narrower: narrow, narrowest: narrow,
};
/** Told of it, and of any. */
export const foundAny: ReadonlySet<string> = new Set(['old', 'same', 'nasty', 'horrible', 'bad', 'bloody', 'blooming', 'poor', 'two', 'three', 'four', 'five', 'of', 'the', 'those', 'these']);
export const howMany: Readonly<Record<string, number>> = { two: 2, three: 3, four: 4, five: 5 };
/** "that hook on the left", "the gap up top". */
export const foundWhere: Readonly<Record<string, { readonly side?: 'left' | 'right'; readonly jaw?: 'upper' | 'lower' }>> = {
  left: { side: 'left' }, right: { side: 'right' }, upper: { jaw: 'upper' }, top: { jaw: 'upper' }, lower: { jaw: 'lower' }, bottom: { jaw: 'lower' },
};
/** "the middle one": of three in a row, by where it stands. */
export const inTheRow: Readonly<Record<string, 'first' | 'middle' | 'last'>> = { middle: 'middle', back: 'last', front: 'first', rear: 'last', hindmost: 'last' };
/** What may be said of a place that was named by what was found there; nothing that would make a tooth of it ("the hook is gone"). */
export const besideFound: ReadonlySet<string> = new Set(['food-packing', 'bleeding', 'pain', 'heat', 'gingivitis', 'malodour', 'discharge', 'draining-tract', 'periodontal-pocket', 'bruising', 'swelling', 'sharp', 'sharp-enamel-points', 'calculus']);
/** "The hook's off", "those are all down now": what says that it is gone, and what may stand around it. */
export const isNowSay: readonly string[] = ['is', 'are', 'was', 'were', 'been', 'has', 'have', 'am'];
export const alreadySay: readonly string[] = ['now', 'all', 'both', 'well', 'just', 'already', 'right', 'nicely', 'nearly', 'about', 'come', 'came', 'gone'];
export const wentOffSay: readonly string[] = ['off', 'down', 'away', 'back'];
export const behindOffSay: readonly string[] = ['now', 'today', 'then', 'and', 'but', 'by', 'to', 'with', 'both', 'level', 'half', 'a', 'nicely', 'fine', 'okay', 'done', 'too', 'as', 'so', 'grand', 'lovely', 'good', 'at', 'under'];
/** "Those two nines": teeth by their number, of which something was found. */
export const theseTeeth: Readonly<Record<string, number>> = { twos: 2, threes: 3, fours: 4, fives: 5, sixes: 6, sevens: 7, eights: 8, nines: 9, tens: 10, elevens: 11 };
/** "None on the others", "nowhere else": of what was named before. */
export const noneElsewhereSay: readonly string[] = [
  '[(but|and|though|just)] (none|nothing like (that|it)|not) [(on|in|of|at)] (the others|the other ones|the other teeth|any others|any of the others|any other tooth|any other teeth)',
  '[(but|and|though)] (none|not|nothing like (that|it)) (on|in|of|at) the rest [of (them|the teeth)]', '[(but|and)] no others', '[(but|and)] none [of (them|those)] (elsewhere|anywhere else)', '[(but|and|though)] (nowhere|not anywhere) else',
];
/** Of four canines: "the other three absent". */
export const otherThree: readonly string[] = ['[(but|and)] [the] other three [(are|is)] (absent|missing|not there|not up|not through|not present|not in|not come)'];
/** What stands for several that were found one by one; for two of them; before it, and behind it. */
export const plurals: readonly string[] = ['[all of] (them|those|these)'];
export const countedPlurals: readonly string[] = ['either [of (them|those|these|the two)]', 'both [of (them|those|these)]', 'the (pair|two) of (them|those|these)', '(them|those|these) (two|both)'];
export const pluralLeads: readonly string[] = ['on', 'in', 'at', 'with'];
export const pluralBehind: readonly string[] = ['down', 'off', 'out', 'back', 'for', 'by', 'with', 'now', 'today', 'too', 'alone', 'till', 'until', 'next', 'again', 'level', 'both', 'all', 'as', 'in', 'and', 'but'];
/** Before what is said of both, and of neither. */
export const pluralSubjects: readonly string[] = ['(they|those|these) are both', 'both [of (them|those|these)] (are|have|feel|look|got)', '(they|those|these) both (are|have|feel|look|got)', 'the (pair|two) of (them|those) are'];
export const neitherSubjects: readonly string[] = ['neither [of (them|those|these)] (is|are|has|looks|feels)'];
