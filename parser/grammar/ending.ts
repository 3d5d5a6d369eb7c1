/** Where something may be said to its end. Behind "on the", before "is level" and between "left" and "cheek" a speaker who pauses looks for the next word. */
import {
  asksWith,
  behindNot,
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
  these,
  sidesOf,
  whichOf,
  withSides,
} from '../lexicon/endings.ts';
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { sidedNouns } from '../lexicon/sides.ts';
import type { Hypothesis } from '../contract/word.ts';
import { workWords } from './vocabulary.ts';

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
  denied = setOf(...workWords, ...behindNot),
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
    // "off the bit for a week" and "of course" are said by themselves.
    (behindOnly.has(next) && !ownStart.has(second) && !ownStart.has(third)) ||
    (ongoing.has(next) && !asking.has(second) && !aside.has(word)) ||
    (near.has(word) && times.has(next)) ||
    (jaw.has(word) && teeth.has(next)) ||
    (faces.has(word) && faceOf.has(next)) ||
    // "didn't, widen it": what was not done stands behind the pause.
    (denies.test(word) && denied.has(next))
  );
}
const ownStart: ReadonlySet<string> = new Set(['course', 'bit', 'side', 'fore', 'hind']);
const denies = /(?:n't|cannot)$/;

/** A pause where nobody ends is one of looking for a word. @returns the words as if nobody had paused there; the same object where all pauses stand */
export function withoutSearching(hypothesis: Hypothesis): Hypothesis {
  const { words } = hypothesis;
  const plain = words.map(({ w }) => w.toLowerCase().replace(marks, ''));
  const going = words.map((word, i) =>
    i + 1 < words.length && pause.test(word.w) && runsOn(plain, i + 1) ? { ...word, w: word.w.replace(pause, '') } : word,
  );
  return going.every((word, i) => word === words[i])
    ? hypothesis
    : { ...hypothesis, words: going, text: going.map(({ w }) => w).join(' ') };
}
const pause = /[,;:.!?]+$/;
const marks = /^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu;
