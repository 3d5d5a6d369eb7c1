/** Tooth codes in every spoken form. A side or a number is never guessed: what is no code is not made one. */
import { digitWords, positionPlurals, teenWords } from '../lexicon/numbers.ts';
import { digitSounds } from '../lexicon/mishearings.ts';
import { deciduousTeeth, permanentTeeth, supernumeraryTeeth } from '../lexicon/teeth.ts';
import { digit, plainDigit } from './numbers.ts';
import type { Token } from './tokens.ts';
import { isOh, startsWithDigit } from './tokens.ts';

const legal = new Set([...permanentTeeth, ...deciduousTeeth]);
const extra = new Set(supernumeraryTeeth);

export interface Code {
  readonly quadrant: number;
  readonly position: number;
  readonly to: number;
  readonly repaired?: boolean;
}
export const codeOf = (quadrant: number, position: number): string => `${quadrant}${String(position).padStart(2, '0')}`;
export const isTooth = (code: string): boolean => legal.has(code);
export const isSupernumerary = (code: string): boolean => extra.has(code);
export const legalTeeth: readonly string[] = [...permanentTeeth, ...deciduousTeeth];
export const quadrantOf = (code: string): number => Number(code[0]);
export const positionOf = (code: string): number => Number(code.slice(1));

const at0 = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';

const beginnings = new Set([...Object.keys(digitWords), ...Object.keys(digitSounds), 'triple', 'hundred', 'a']);
/** Whether a code, or what is heard for one, can begin with this word. */
export const mayBeCode = (t: string): boolean => startsWithDigit(t) || beginnings.has(t);

/** Reads one code-shaped group: also 504 or 911, which the caller tells from teeth. */
export function readCode(tokens: readonly Token[], at: number): Code | undefined {
  const t = at0(tokens, at);
  if (isTheOne(tokens, at)) return undefined;
  const figures = startsWithDigit(t) ? /^([1-9])(\d\d)$/.exec(t) : null;
  if (figures) return { quadrant: Number(figures[1]), position: Number(figures[2]), to: at + 1 };
  if (t === 'triple' && at0(tokens, at + 1) === 'one') return { quadrant: 1, position: 11, to: at + 2 };
  const hundred = readHundred(tokens, at);
  if (hundred) return hundred;
  const first = plainDigit(t);
  if (first === undefined) return readSoundAlike(tokens, at);
  if (first === 0) return undefined;
  // "the chipped one, one oh one": a number begins behind the comma.
  if (tokens[at]?.ends === true && first === 1 && plainDigit(at0(tokens, at + 1)) !== undefined && readPosition(tokens, at + 2))
    return undefined;
  const rest = readPosition(tokens, at + 1);
  return rest && { quadrant: first, position: rest.position, to: rest.to, ...(rest.repaired ? { repaired: true } : {}) };
}

const describesOne: ReadonlySet<string> = new Set([
  'another',
  'other',
  'second',
  'next',
  'similar',
  'wider',
  'bigger',
  'larger',
  'smaller',
  'deeper',
  'longer',
  'narrower',
  'tighter',
  'worse',
  'better',
  'small',
  'big',
  'large',
  'wide',
  'narrow',
  'tight',
  'tiny',
  'little',
  'deep',
  'shallow',
  'open',
  'valve',
]);
/** "a wider one nine ten": of a gap, before its two positions; no quadrant. */
export function isTheOne(tokens: readonly Token[], at: number): boolean {
  if (at0(tokens, at) !== 'one' || !describesOne.has(at0(tokens, at - 1))) return false;
  const position = (i: number): number | undefined => teenWords[at0(tokens, i)] ?? plainDigit(at0(tokens, i));
  const first = position(at + 1);
  return first !== undefined && first >= 6 && position(at + 2) === first + 1;
}

/** "oh six", "zero six", "ten", "one one", "double one": the position after a quadrant's digit. */
function readPosition(tokens: readonly Token[], at: number): { position: number; to: number; repaired?: boolean } | undefined {
  const t = at0(tokens, at);
  const next = at0(tokens, at + 1);
  if (isOh(t)) {
    const unit = plainDigit(next);
    if (unit !== undefined && unit > 0) return { position: unit, to: at + 2 };
    const heard = digitSounds[next];
    return heard === undefined || heard === 1 ? undefined : { position: heard, to: at + 2, repaired: true };
  }
  const teen = teenWords[t] ?? (startsWithDigit(t) && /^1\d$/.test(t) ? Number(t) : undefined);
  if (teen !== undefined) return { position: teen, to: at + 1 };
  if (t === 'double' && next === 'one') return { position: 11, to: at + 2 };
  if (t === 'double' && isOh(next)) return undefined;
  // "three one oh nine": a three, and one oh nine.
  if ((t === 'one' || t === '1') && isOh(next) && (plainDigit(at0(tokens, at + 2)) ?? 0) > 0) return undefined;
  if ((t === 'one' || t === '1') && (digit(next) ?? 9) <= 2 && at0(tokens, at + 2) !== 'point')
    return { position: 10 + (digit(next) as number), to: at + 2 };
  return undefined;
}

/** "one hundred and six", "a hundred and six", "hundred six". */
function readHundred(tokens: readonly Token[], at: number): Code | undefined {
  const t = at0(tokens, at);
  const quadrant = t === 'hundred' ? 1 : t === 'a' ? 1 : plainDigit(t);
  const hundredAt = t === 'hundred' ? at : at + 1;
  if (quadrant === undefined || quadrant === 0 || at0(tokens, hundredAt) !== 'hundred') return undefined;
  const unitAt = at0(tokens, hundredAt + 1) === 'and' ? hundredAt + 2 : hundredAt + 1;
  const position = plainDigit(at0(tokens, unitAt)) ?? teenWords[at0(tokens, unitAt)];
  return position === undefined || position === 0 ? undefined : { quadrant, position, to: unitAt + 1 };
}

/** "to oh eight", "for oh nine": the first word is mended only when "oh" and a digit follow it. */
function readSoundAlike(tokens: readonly Token[], at: number): Code | undefined {
  const quadrant = digitSounds[at0(tokens, at)];
  if (quadrant === undefined || !isOh(at0(tokens, at + 1))) return undefined;
  const rest = readPosition(tokens, at + 1);
  return rest && { quadrant, position: rest.position, to: rest.to, repaired: true };
}

/** After a code: "oh seven" names the next tooth of the same quadrant. */
export function readShort(tokens: readonly Token[], at: number): { readonly position: number; readonly to: number } | undefined {
  if (!isOh(at0(tokens, at))) return undefined;
  const unit = plainDigit(at0(tokens, at + 1));
  return unit === undefined || unit === 0 ? undefined : { position: unit, to: at + 2 };
}

/** "sixes", "elevens", "oh nines", "09s", "6s". */
export function readPlural(tokens: readonly Token[], at: number): { readonly position: number; readonly to: number } | undefined {
  const from = isOh(at0(tokens, at)) ? at + 1 : at;
  const t = at0(tokens, from);
  // "the last ones on the bottom": pointed at, and no first incisors.
  if (t === 'ones' && pointing.has(at0(tokens, at - 1))) return undefined;
  const position = positionPlurals[t] ?? (startsWithDigit(t) && /^(0?[1-9]|1[01])'?s$/.test(t) ? Number.parseInt(t, 10) : undefined);
  return position === undefined ? undefined : { position, to: from + 1 };
}

const pointing: ReadonlySet<string> = new Set(['last', 'back', 'rear', 'first', 'front', 'other', 'next', 'same', 'those', 'these']);

/** The opposite jaw: 1xx with 4xx, 2xx with 3xx. */
export const opposing = (code: string): string =>
  `${{ 1: 4, 2: 3, 3: 2, 4: 1, 5: 8, 6: 7, 7: 6, 8: 5 }[quadrantOf(code) as 1]}${code.slice(1)}`;
/** The other side of the same jaw: 1xx with 2xx, 3xx with 4xx. */
export const otherSide = (code: string): string =>
  `${{ 1: 2, 2: 1, 3: 4, 4: 3, 5: 6, 6: 5, 7: 8, 8: 7 }[quadrantOf(code) as 1]}${code.slice(1)}`;
export const isUpper = (code: string): boolean => [1, 2, 5, 6].includes(quadrantOf(code));
/** Neighbours in one row; the centre pairs 101/201 and 301/401 too. */
export const areNeighbours = (a: string, b: string): boolean =>
  (quadrantOf(a) === quadrantOf(b) && Math.abs(positionOf(a) - positionOf(b)) === 1) || (positionOf(a) === 1 && otherSide(a) === b);
