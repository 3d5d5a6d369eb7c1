/** Sizes as they are said: a number and its unit, two of them, an article for one, what it is a size of, and how sure it is. */
import { aboutAfter, aboutSay, guessAfter } from '../lexicon/modifiers.ts';
import type { MeasureName } from '../lexicon/types.ts';
import { angleUnits, dimensionSay, lengthUnits } from '../lexicon/units.ts';
import { formAt, formsOf } from './forms.ts';
import { readAmount, readNumber } from './numbers.ts';
import type { Mark } from './scan.ts';
import { expand } from './template.ts';
import { placeWords } from './vocabulary.ts';
import type { Token } from './tokens.ts';

type Unit = 'mm' | 'cm' | 'degree';
export interface MeasureMark {
  readonly value?: number | readonly [number, number];
  readonly unit?: Unit;
  readonly about: boolean;
  readonly what?: MeasureName;
  /** Where it is no number: "pea sized". */
  readonly said?: string;
  /** "ten by five". */
  readonly second?: number;
  /** "ten mil long by five wide": what the second is a size of. */
  readonly secondWhat?: MeasureName;
}
/** A size, and the token behind it. */
interface Size {
  readonly to: number;
  readonly value: NonNullable<MeasureMark['value']>;
  readonly unit: Unit;
  readonly second?: number;
  readonly about?: true;
}

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const unitOf: ReadonlyMap<string, Unit> = new Map(
  (
    [
      ['mm', lengthUnits.mm],
      ['cm', lengthUnits.cm],
      ['degree', angleUnits],
    ] as const
  ).flatMap(([unit, words]) => words.map((word) => [word, unit] as const)),
);
/** Words that make the number before them a size. */
export const unitWords = new Set(unitOf.keys());
const unitAt = (tokens: readonly Token[], at: number): Unit | undefined => unitOf.get(text(tokens, at));

const dimensions = formsOf(
  Object.entries(dimensionSay).flatMap(([what, forms]) => forms.map((form) => [form.split(' '), what as MeasureName] as const)),
);
const abouts = formsOf(aboutSay.flatMap(expand).map((form) => [form, true] as const));
const aboutsAfter = formsOf(aboutAfter.map((form) => [form.split(' '), true] as const));

const guesses = formsOf(guessAfter.flatMap(expand).map((form) => [form, true] as const));
/** Behind the words that say that a figure is a guess, where a pause or the end follows them: "grade two i think, and ...". */
export function behindGuess(tokens: readonly Token[], at: number): number | undefined {
  if (tokens[at - 1]?.ends === true) return undefined;
  const guess = formAt(guesses, tokens, at);
  const to = at + (guess?.words.length ?? 0);
  return guess && (to === tokens.length || tokens[to - 1]?.ends === true) ? to : undefined;
}

/** "about four mil deep", "a centimetre and a half", "two by three centimetres", "pea sized". */
export function readMeasure(tokens: readonly Token[], start: number): Mark | undefined {
  const about = formAt(abouts, tokens, start);
  const from = start + (about?.words.length ?? 0);
  // "about a five mil step"
  const at =
    about && ['a', 'an'].includes(text(tokens, from)) && unitAt(tokens, from + 1) === undefined && counted(tokens, from + 1)
      ? from + 1
      : from;
  const size = article(tokens, at) ?? between(tokens, at) ?? couple(tokens, at) ?? counted(tokens, at);
  if (size) {
    const { to, ...measure } = size;
    return dimension(tokens, { from: start, to, measure: { about: about !== undefined, ...measure } });
  }
  // "quarter of an inch": no unit of the record, so kept as it was said.
  const inches = inched.exec(
    tokens
      .slice(at, at + 6)
      .map(({ t }) => t)
      .join(' '),
  )?.[0];
  // "if it's an inch": said so, and no size.
  const swears = ['is', "it's"].includes(text(tokens, at - 1)) && tokens.slice(Math.max(0, at - 3), at).some(({ t }) => t === 'if');
  if (inches && !swears)
    return dimension(tokens, { from: start, to: at + inches.split(' ').length, measure: { about: about !== undefined, said: inches } });
  // "down by half"
  const share =
    text(tokens, at - 1) === 'by'
      ? /^(?:half|a third|two thirds|a quarter)(?! (?:past|an?|inch|of|mil|cm)\b)/.exec(
          tokens
            .slice(at, at + 3)
            .map(({ t }) => t)
            .join(' '),
        )?.[0]
      : undefined;
  if (share) return { from: start, to: at + share.split(' ').length, measure: { about: about !== undefined, said: share } };
  const few = !vague.has(text(tokens, at))
    ? undefined
    : /^(?:a few|a couple|several|few) (\w+)$/.exec(
        tokens
          .slice(at, at + (text(tokens, at) === 'a' ? 3 : 2))
          .map(({ t }) => t)
          .join(' '),
      );
  if (few && unitOf.has(few[1] as string))
    return dimension(tokens, { from: start, to: at + few[0].split(' ').length, measure: { about: about !== undefined, said: few[0] } });
  const like = from === start ? likenedTo(tokens, text(tokens, start) === 'the' ? start + 1 : start) : undefined;
  if (like)
    return {
      from: start,
      to: like,
      measure: {
        about: false,
        said: tokens
          .slice(start, like)
          .map(({ t }) => t)
          .join(' '),
      },
    };
  const likened = ['sized', 'size'].includes(text(tokens, start + 1)) && readNumber(tokens, at) === undefined;
  return likened
    ? { from: start, to: start + 2, measure: { about: false, said: `${text(tokens, start)} ${text(tokens, start + 1)}` } }
    : undefined;
}

const inched =
  /^(?:(?:an?|one|two|three) (?:and a (?:half|quarter) )?|(?:a )?(?:half|quarter|eighth)(?: of)?(?: an?)? |(?:three|two) quarters?(?: of)?(?: an?)? |(?:an? )?(?:sixteenth|eighth)(?: of)?(?: an)? )inch(?:es)?\b/;
const sizeOf = /^size of (?:a|an|my|your) \w/;
const closing: ReadonlySet<string> = new Set([
  'on',
  'in',
  'at',
  'by',
  'inside',
  'under',
  'over',
  'behind',
  'below',
  'above',
  'near',
  'and',
  'just',
  'or',
]);
/** "size of a five pence", "the size of my thumb nail": up to a pause, a small word or three words. */
function likenedTo(tokens: readonly Token[], at: number): number | undefined {
  if (text(tokens, at) !== 'size') return undefined;
  const words = tokens.slice(at, at + 7).map(({ t }) => t);
  if (!sizeOf.test(words.join(' '))) return undefined;
  let to = at + 4;
  while (
    to < at + 6 &&
    to < tokens.length &&
    tokens[to - 1]?.ends !== true &&
    !closing.has(text(tokens, to)) &&
    !placeWords.has(text(tokens, to))
  )
    to += 1;
  return to;
}

/** What begins a size that is no number: "a few mil". */
const vague: ReadonlySet<string> = new Set(['a', 'few', 'several']);
/** "a centimetre", "a centimetre and a half" */
function article(tokens: readonly Token[], at: number): Size | undefined {
  // "a good centimetre" reads "a good" as what makes it an estimate.
  const whole = text(tokens, at - 1) === 'good' && text(tokens, at - 2) === 'a' ? unitAt(tokens, at) : undefined;
  if (whole) return { to: at + 1, value: 1, unit: whole };
  const unit = ['a', 'an'].includes(text(tokens, at)) ? unitAt(tokens, at + 1) : undefined;
  if (unit === undefined) return undefined;
  const half = text(tokens, at + 2) === 'and' && text(tokens, at + 3) === 'a' && text(tokens, at + 4) === 'half';
  return { to: at + (half ? 5 : 2), value: half ? 1.5 : 1, unit };
}

/** "between eight and ten millimetres" */
function between(tokens: readonly Token[], at: number): Size | undefined {
  const low = text(tokens, at) === 'between' ? readNumber(tokens, at + 1) : undefined;
  const high = low && text(tokens, low.to) === 'and' ? readNumber(tokens, low.to + 1) : undefined;
  const unit = high && unitAt(tokens, high.to);
  return low && high && unit && high.value > low.value ? { to: high.to + 1, value: [low.value, high.value], unit } : undefined;
}

/** "a couple of mil" */
function couple(tokens: readonly Token[], at: number): Size | undefined {
  const word = text(tokens, at) === 'a' ? at + 1 : at;
  const behind = text(tokens, word + 1) === 'of' ? word + 2 : word + 1;
  const unit = text(tokens, word) === 'couple' ? unitAt(tokens, behind) : undefined;
  return unit && { to: behind + 1, value: 2, unit, about: true };
}

/** "four mil", "ten by five mil", "ten mil by five mil", "ten mil by five" */
function counted(tokens: readonly Token[], at: number): Size | undefined {
  const amount = readAmount(tokens, at);
  if (amount === undefined) return undefined;
  const { value } = amount;
  const own = unitAt(tokens, amount.to);
  const by = own ? amount.to + 1 : amount.to;
  const second = text(tokens, by) === 'by' ? readNumber(tokens, by + 1) : undefined;
  if (second === undefined) return own && { to: amount.to + 1, value, unit: own };
  const unit = unitAt(tokens, second.to);
  if (own && !unit) return { to: second.to, value, unit: own, second: second.value };
  return unit && (own ?? unit) === unit ? { to: second.to + 1, value, unit, second: second.value } : undefined;
}

type Sized = Mark & { readonly measure: MeasureMark };
function dimension(tokens: readonly Token[], mark: Sized): Mark {
  const found = formAt(dimensions, tokens, mark.to);
  const sized = found ? { ...mark, to: mark.to + found.words.length, measure: { ...mark.measure, what: found.means } } : mark;
  const both = otherWay(tokens, sized) ?? sized;
  const guess = formAt(aboutsAfter, tokens, both.to);
  const to = guess ? both.to + guess.words.length : behindGuess(tokens, both.to);
  return to === undefined ? both : { ...both, to, measure: { ...both.measure, about: true } };
}

/** "ten mil long by five wide", "two centimetres long and one across", "eight mil deep, three wide": the other way, in the same unit. */
function otherWay(tokens: readonly Token[], { from, to, measure }: Sized): Sized | undefined {
  if (measure.what === undefined || measure.second !== undefined || measure.unit === undefined || measure.unit === 'degree')
    return undefined;
  const joined = ['by', 'and'].includes(text(tokens, to));
  const number = joined || tokens[to - 1]?.ends === true ? readNumber(tokens, joined ? to + 1 : to) : undefined;
  const what = number && formAt(dimensions, tokens, number.to);
  return number && what && what.means !== measure.what
    ? { from, to: number.to + what.words.length, measure: { ...measure, second: number.value, secondWhat: what.means } }
    : undefined;
}
