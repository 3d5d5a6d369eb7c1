/** Numbers as people say them: whole, with a point, halves and quarters, ranges. Spans are token indices, end exclusive. */
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { noughtSounds } from '../lexicon/mishearings.ts';
import type { Token } from './tokens.ts';
import { isOh, startsWithDigit } from './tokens.ts';

export interface NumberSpan {
  readonly value: number | readonly [number, number];
  readonly to: number;
  readonly about?: boolean;
}

const word = (tokens: readonly Token[], at: number): string | undefined => tokens[at]?.t;
const numberWords = new Set([
  ...Object.keys(digitWords),
  ...Object.keys(teenWords),
  ...Object.keys(tensWords),
  'half',
  'quarter',
  'point',
  'a',
  'oh',
  'o',
  'hundred',
]);
/** Whether a number can begin with this word. */
export const mayBeNumber = (t: string | undefined): boolean => t !== undefined && (startsWithDigit(t) || numberWords.has(t));
const noughts = new Set(noughtSounds);
/** Words that a number begins with, and what is heard for a nought before a point. */
const beginnings = new Set([...numberWords, ...noughts]);
const figure = /^\d+(?:[.,]\d+)?$/;

/** A number of one reading at `at`, or undefined. "a" alone is no number here. */
export function readNumber(tokens: readonly Token[], at: number): { readonly value: number; readonly to: number } | undefined {
  const t = word(tokens, at);
  if (t === undefined || !(startsWithDigit(t) || beginnings.has(t))) return undefined;
  if (startsWithDigit(t) && figure.test(t)) return withHalf(tokens, Number(t.replace(',', '.')), at + 1);
  if (startsWithDigit(t) && /^\d\/\d$/.test(t)) return { value: Number(t[0]) / Number(t[2]), to: at + 1 };
  if (t === 'half') return { value: 0.5, to: word(tokens, at + 1) === 'a' || word(tokens, at + 1) === 'an' ? at + 2 : at + 1 };
  if (t === 'quarter' && word(tokens, at + 1) === 'of') return { value: 0.25, to: at + 2 };
  if (noughts.has(t) && word(tokens, at + 1) === 'point' && digit(word(tokens, at + 2)) !== undefined) return readNumber(tokens, at + 1);
  const whole = readWhole(tokens, at);
  const pointAt = whole?.to ?? at;
  if (word(tokens, pointAt) === 'point' && (whole || t === 'point')) {
    let digits = '';
    let to = pointAt + 1;
    for (let d = digit(word(tokens, to)); d !== undefined && !(digits !== '' && toothAhead(tokens, to)); d = digit(word(tokens, to))) {
      digits += d;
      to += 1;
    }
    if (digits !== '') return { value: Number(`${whole?.value ?? 0}.${digits}`), to };
  }
  return whole === undefined ? undefined : withHalf(tokens, whole.value, whole.to);
}

/** "grade one point one two ten": behind the point the digits end where a tooth begins. */
const toothAhead = (tokens: readonly Token[], at: number): boolean =>
  teenWords[word(tokens, at + 1) ?? ''] !== undefined || (isOh(word(tokens, at + 1)) && digit(word(tokens, at + 2)) !== undefined);

function withHalf(tokens: readonly Token[], value: number, to: number): { value: number; to: number } {
  const part = word(tokens, to) === 'and' && word(tokens, to + 1) === 'a' ? word(tokens, to + 2) : undefined;
  return part === 'half' ? { value: value + 0.5, to: to + 3 } : part === 'quarter' ? { value: value + 0.25, to: to + 3 } : { value, to };
}

const digits: ReadonlyMap<string | undefined, number> = new Map([
  ...Object.entries(digitWords),
  ...Array.from('0123456789', (figure, value) => [figure, value] as const),
]);
/** A word or a figure of one digit, from nought to nine. */
export const plainDigit = (t: string | undefined): number | undefined => digits.get(t);
/** The same, or an "oh" in the place of a nought. */
export const digit = (t: string | undefined): number | undefined => digits.get(t) ?? (isOh(t) ? 0 : undefined);

function readWhole(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const t = word(tokens, at) ?? '';
  const tens = tensWords[t];
  if (tens !== undefined) {
    const unit = digitWords[word(tokens, at + 1) ?? ''];
    return unit !== undefined && unit > 0 ? { value: tens + unit, to: at + 2 } : { value: tens, to: at + 1 };
  }
  const teen = teenWords[t];
  if (teen !== undefined) return { value: teen, to: at + 1 };
  const one = t === 'a' && word(tokens, at + 1) === 'hundred' ? 1 : digitWords[t];
  if (one === undefined) return undefined;
  if (word(tokens, at + 1) !== 'hundred') return { value: one, to: at + 1 };
  const rest = readWhole(tokens, word(tokens, at + 2) === 'and' ? at + 3 : at + 2);
  return rest && rest.value < 100 ? { value: one * 100 + rest.value, to: rest.to } : { value: one * 100, to: at + 2 };
}

/** A number or a range ("eight to ten", "two or three"). */
export function readAmount(tokens: readonly Token[], at: number): NumberSpan | undefined {
  const first = readNumber(tokens, at);
  if (first === undefined) return undefined;
  if (['to', 'or'].includes(word(tokens, first.to) ?? '')) {
    const second = readNumber(tokens, first.to + 1);
    if (second && second.value > first.value) return { value: [first.value, second.value], to: second.to };
  }
  return first;
}
