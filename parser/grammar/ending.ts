/** Where something may be said to its end. Behind "on the", before "is level" and between "left" and "cheek" a speaker who pauses looks for the next word. */
import {
  asksWith,
  behindNot,
  behindNotBeen,
  besideThis,
  closesAsides,
  goesOn,
  grading,
  halfNumbers,
  jaws,
  neverBegins,
  neverEnds,
  ofSeveral,
  ofTheNumber,
  openEnds,
  positions,
  saidByThemselves,
  these,
  sidesOf,
  whichOf,
  withSides,
} from '../lexicon/endings.ts';
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { sidedNouns } from '../lexicon/sides.ts';
import type { Hypothesis } from '../contract/word.ts';

const setOf = (...words: readonly string[]): ReadonlySet<string> => new Set(words);
const never = setOf(...neverEnds),
  open = setOf(...openEnds, ...neverEnds),
  unended = setOf(...halfNumbers),
  units = setOf(...ofTheNumber),
  graded = setOf(...grading),
  sides = setOf(...whichOf),
  sided = setOf(...sidedNouns, ...ofSeveral),
  ongoing = setOf(...goesOn),
  asking = setOf(...asksWith),
  aside = setOf(...closesAsides),
  behindOnly = setOf(...neverBegins),
  byItself = setOf(...saidByThemselves),
  denied = setOf(...behindNot),
  notBeen = setOf(...behindNotBeen),
  faces = setOf(...withSides),
  faceOf = setOf(...sidesOf),
  jaw = setOf(...jaws),
  teeth = setOf(...positions),
  near = setOf(...these),
  times = setOf(...besideThis),
  counting = setOf(
    ...[digitWords, teenWords, tensWords].flatMap((words) => Object.keys(words)),
    ...halfNumbers,
    ...ofTheNumber,
    'millimetres',
  );

/** Whether a thing that somebody says may end with the first `count` of the words. Lower case, without marks. */
export function mayEnd(words: readonly string[], count: number): boolean {
  const [before = '', word = '', next = ''] = [words[count - 2], words[count - 1], words[count]];
  // "one oh six, four mil" and "grade two, two ten": a number that is said to its end. "One, oh six" is not.
  const figures = counting.has(word) && counting.has(next);
  const said = !unended.has(word) && !units.has(next) && (counting.has(before) || graded.has(before));
  return !open.has(word) && (!figures || said) && !(sides.has(word) && sided.has(next)) && !runsOn(words, count);
}

/** Nobody ends there, however it was written: behind "the", before "is level", inside "this morning". */
function runsOn(words: readonly string[], count: number): boolean {
  const [word = '', next = '', second = '', third = ''] = words.slice(count - 1, count + 3);
  return (
    never.has(word) ||
    // "right cheek, level with one oh seven": one place; "down to level, with the hand rasp" is said to its end.
    (word === 'level' && next === 'with' && (counting.has(second) || (second === 'the' && teeth.has(third)))) ||
    // "off the bit for a week" and "of course" are said by themselves.
    (behindOnly.has(next) && !byItself.has(second) && !byItself.has(third)) ||
    (ongoing.has(next) && !asking.has(second) && !aside.has(word)) ||
    (near.has(word) && times.has(next)) ||
    (jaw.has(word) && teeth.has(next)) ||
    (faces.has(word) && faceOf.has(next) && second !== 'to' && !(second === 'of' && asking.has(third))) ||
    // "didn't, widen it": what was not done stands behind the pause.
    (denies.test(word) && denied.has(next)) ||
    (isNot.test(word) && notBeen.has(next))
  );
}
const denies = /^(?:(?:did|do|does|ca|could|wo|would|should)n't|cannot)$/;
const isNot = /^(?:is|are|was|were|has|have|had)n't$/;

/** The words as if nobody had paused behind those; the same object where nobody did. */
export function withoutPauses(hypothesis: Hypothesis, behind: (at: number) => boolean): Hypothesis {
  const words = hypothesis.words.map((word, i) => (pause.test(word.w) && behind(i) ? { ...word, w: word.w.replace(pause, '') } : word));
  return words.every((word, i) => word === hypothesis.words[i])
    ? hypothesis
    : { ...hypothesis, words, text: words.map(({ w }) => w).join(' ') };
}
const pause = /[,;:.!?]+$/;

/** A pause where nobody ends is one of looking for a word. */
export function withoutSearching(hypothesis: Hypothesis): Hypothesis {
  const plain = hypothesis.words.map(({ w }) => w.toLowerCase().replace(marks, ''));
  return withoutPauses(hypothesis, (at) => at + 1 < plain.length && runsOn(plain, at + 1));
}
const marks = /^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu;
