/** Numbers that name a degree or a part: grades, and the horns of the pulp. */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { gradeWords } from '../lexicon/units.ts';
import { readCodes } from './codes.ts';
import { mayBeNumber, readNumber } from './numbers.ts';
import type { Mark } from './scan.ts';
import { behindGuess, unitWords } from './sizes.ts';
import type { Token } from './tokens.ts';

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';

const horns = new Set(['horn', 'horns']);
const ordinals: Readonly<Record<string, number>> = { first: 1, second: 2, third: 3, fourth: 4, fifth: 5, sixth: 6 };
/** "number two horn", "the third pulp horn": the number before its name. */
function countedHorn(tokens: readonly Token[], at: number): { readonly value: number; readonly to: number } | undefined {
  const ordinal = ordinals[text(tokens, at)];
  const number =
    ordinal !== undefined ? { value: ordinal, to: at + 1 } : text(tokens, at) === 'number' ? readNumber(tokens, at + 1) : undefined;
  const horn = number && (text(tokens, number.to) === 'pulp' ? number.to + 1 : number.to);
  return number && horn !== undefined && text(tokens, horn) === 'horn' ? { value: number.value, to: horn + 1 } : undefined;
}

/** "pulp horn three exposed", "pulp exposure, horn two": the number is the horn's. */
export function readPulpHorn(tokens: readonly Token[], at: number): Mark | undefined {
  const counted = countedHorn(tokens, at);
  if (counted) return exposedHorn(tokens, at, counted);
  const from = text(tokens, at) === 'pulp' ? at + 1 : at;
  if (!horns.has(text(tokens, from))) return undefined;
  const number = readNumber(tokens, text(tokens, from + 1) === 'number' ? from + 2 : from + 1);
  return number === undefined || readCodes(tokens, from + 1) ? undefined : exposedHorn(tokens, at, number);
}

/** The horn with its number, and that it is exposed where that stands right behind. */
function exposedHorn(tokens: readonly Token[], at: number, number: { readonly value: number; readonly to: number }): Mark {
  const open = ['is', 'was'].includes(text(tokens, number.to)) ? number.to + 1 : number.to;
  const exposed = ['exposed', 'open', 'exposure'].includes(text(tokens, open));
  return {
    from: at,
    to: exposed ? open + 1 : number.to,
    pulpHorn: number.value,
    ...(exposed ? { terms: [{ k: 'condition', id: 'pulp-exposure', strength: 'say', plural: false }] } : {}),
  };
}

/** How a tooth is, and no name of what is graded. */
const describing: ReadonlySet<string> = new Set([
  'loose',
  'wobbly',
  'mobile',
  'wiggly',
  'rocking',
  'moving',
  'carious',
  'decayed',
  'rotten',
  'fractured',
]);
/** "grade two i think": a guess at the grade, and not at what has it. */
const guessedAt = (mark: Mark | undefined, tokens: readonly Token[]): Mark | undefined =>
  mark && { ...mark, to: behindGuess(tokens, mark.to) ?? mark.to };

export const readShortGrade = (tokens: readonly Token[], at: number, marks: readonly Mark[]): Mark | undefined =>
  guessedAt(shortGrade(tokens, at, marks), tokens);
export const readGrade = (tokens: readonly Token[], at: number): Mark | undefined => guessedAt(grade(tokens, at), tokens);

/** "mobility one", "two ten m two": a number right behind a finding that has a scale is its grade. */
function shortGrade(tokens: readonly Token[], at: number, marks: readonly Mark[]): Mark | undefined {
  if (!mayBeNumber(text(tokens, at))) return undefined;
  // "mobility of two", "mobility is four"
  const of = ['of', 'is'].includes(text(tokens, at - 1)) && marks.at(-1)?.from === at - 1;
  const named = of ? marks.at(-2) : marks.at(-1);
  const scaled = named?.terms?.some((t) => t.k === 'condition' && (conditions[t.id] as ConditionEntry).scale !== undefined) ?? false;
  if (!scaled || readCodes(tokens, at)) return undefined;
  // "a loose one at three ten": counted by nothing.
  if (text(tokens, at) === 'one' && !of && ['a', 'an', 'the', 'another', 'that'].includes(text(tokens, (named?.from ?? 0) - 1)))
    return undefined;
  // "loose one on the right": a tooth, and no grade of an adjective.
  if (
    text(tokens, at) === 'one' &&
    !of &&
    ['on', 'in', 'at', 'up', 'down', 'over', 'here', 'there'].includes(text(tokens, at + 1)) &&
    describing.has(text(tokens, at - 1))
  )
    return undefined;
  const number = readNumber(tokens, at);
  // "three ten loose, three nine not": a number begins a tooth behind a pause.
  if (
    number !== undefined &&
    tokens[at - 1]?.ends === true &&
    number.value <= 4 &&
    (readNumber(tokens, number.to)?.value ?? 0) >= 6 &&
    (readNumber(tokens, number.to)?.value ?? 12) <= 11
  )
    return undefined;
  if (number === undefined || unitWords.has(text(tokens, number.to)) || text(tokens, number.to) === 'out') return undefined;
  // "nine has peripheral caries, ten the same": a position of the row, no grade of any scale but the body's.
  if (number.value >= 6 && number.value <= 11 && !of && !named?.terms?.some((t) => t.k === 'condition' && t.id === 'body-condition'))
    return undefined;
  const second =
    ['to', 'or'].includes(text(tokens, number.to)) && !readCodes(tokens, number.to + 1) ? readNumber(tokens, number.to + 1) : undefined;
  if (second && unitWords.has(text(tokens, second.to))) return undefined;
  if (second) return { from: at, to: second.to, grade: { value: String(number.value), or: String(second.value), announced: false } };
  return { from: at, to: number.to, grade: { value: String(number.value), announced: false } };
}

const numerals: Readonly<Record<string, string>> = { i: '1', ii: '2', iii: '3', iv: '4' };

const announcing = new Set(gradeWords);
const whatIsGraded: ReadonlySet<string> = new Set(['it', 'that', 'this', 'them', 'these', 'those']);
/** "i'd stage it at two", "scoring that as a three": where the number stands. */
function gradedAs(tokens: readonly Token[], at: number): number | undefined {
  if (!whatIsGraded.has(text(tokens, at + 1))) return undefined;
  const lead = ['at', 'as'].includes(text(tokens, at + 2)) ? at + 3 : at + 2;
  const article = text(tokens, lead) === 'a' ? lead + 1 : lead;
  return article > at + 2 ? article : undefined;
}
function grade(tokens: readonly Token[], at: number): Mark | undefined {
  if (announcing.has(text(tokens, at))) {
    const from = at;
    const start = ['of', 'is', "'s", 'was'].includes(text(tokens, at + 1)) ? at + 2 : (gradedAs(tokens, at) ?? at + 1);
    const number = readNumber(tokens, start);
    if (number === undefined)
      return numerals[text(tokens, start)]
        ? { from, to: start + 1, grade: { value: numerals[text(tokens, start)] as string, announced: true } }
        : undefined;
    // "grade one one" is grade 1.1 in the mouth of someone who leaves out the point.
    const spelled =
      number.value === 1 && ['one', 'two'].includes(text(tokens, number.to)) && !readCodes(tokens, number.to)
        ? { value: number.value + (text(tokens, number.to) === 'one' ? 0.1 : 0.2), to: number.to + 1 }
        : number;
    if (unitWords.has(text(tokens, spelled.to))) return undefined;
    const second =
      ['to', 'or'].includes(text(tokens, spelled.to)) && !readCodes(tokens, spelled.to + 1)
        ? readNumber(tokens, spelled.to + 1)
        : undefined;
    if (second && !unitWords.has(text(tokens, second.to)))
      return { from, to: second.to, grade: { value: String(spelled.value), or: String(second.value), announced: true } };
    return outOf(tokens, { from, to: spelled.to, grade: { value: String(spelled.value), announced: true } });
  }
  const number = mayBeNumber(text(tokens, at)) ? readNumber(tokens, at) : undefined;
  if (number && text(tokens, number.to) === 'out' && text(tokens, number.to + 1) === 'of')
    return outOf(tokens, { from: at, to: number.to, grade: { value: String(number.value), announced: true } });
  return undefined;
}

function outOf(tokens: readonly Token[], mark: Mark): Mark {
  if (text(tokens, mark.to) !== 'out' || text(tokens, mark.to + 1) !== 'of') return mark;
  const top = readNumber(tokens, mark.to + 2);
  return top === undefined
    ? mark
    : { ...mark, to: top.to, grade: { ...(mark.grade as { value: string; announced: boolean }), outOf: top.value } };
}
