/** Sizes as they are said: a number and its unit, two of them, an article for one, what it is a size of, and how sure it is. */
import { aboutAfter, aboutSay } from '../lexicon/modifiers.ts';
import type { MeasureName } from '../lexicon/types.ts';
import { angleUnits, dimensionSay, lengthUnits } from '../lexicon/units.ts';
import { formAt, formsOf } from './forms.ts';
import { readAmount, readNumber } from './numbers.ts';
import type { Mark } from './scan.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';

export interface MeasureMark { readonly value?: number | readonly [number, number]; readonly unit?: 'mm' | 'cm' | 'degree'; readonly about: boolean; readonly what?: MeasureName; readonly said?: string; readonly second?: number }

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const unitOf: ReadonlyMap<string, 'mm' | 'cm' | 'degree'> = new Map([...lengthUnits.mm.map((u) => [u, 'mm'] as const), ...lengthUnits.cm.map((u) => [u, 'cm'] as const), ...angleUnits.map((u) => [u, 'degree'] as const)]);
/** Words that make the number before them a size. */
export const unitWords = new Set(unitOf.keys());
const dimensions = formsOf(Object.entries(dimensionSay).flatMap(([what, forms]) => forms.map((form) => [form.split(' '), what as MeasureName] as const)));

const abouts = formsOf(aboutSay.flatMap(expand).map((form) => [form, true] as const));
const aboutsAfter = formsOf(aboutAfter.map((form) => [form.split(' '), true] as const));
/** "about four mil deep", "a centimetre and a half", "two by three centimetres", "pea sized". */
export function readMeasure(tokens: readonly Token[], start: number): Mark | undefined {
  const about = formAt(abouts, tokens, start);
  const at = start + (about?.words.length ?? 0);
  const article = ['a', 'an', 'one'].includes(text(tokens, at)) && unitOf.get(text(tokens, at + 1));
  if (article && text(tokens, at) !== 'one') {
    const half = [2, 3, 4].map((i) => text(tokens, at + i)).join(' ') === 'and a half';
    return dimension(tokens, { from: start, to: at + (half ? 5 : 2), measure: { value: half ? 1.5 : 1, unit: article, about: about !== undefined } });
  }
  // "between eight and ten millimetres"
  if (text(tokens, at) === 'between') {
    const low = readNumber(tokens, at + 1);
    const high = low && text(tokens, low.to) === 'and' ? readNumber(tokens, low.to + 1) : undefined;
    const unit = high && unitOf.get(text(tokens, high.to));
    return low && high && unit && high.value > low.value ? dimension(tokens, { from: start, to: high.to + 1, measure: { value: [low.value, high.value], unit, about: about !== undefined } }) : undefined;
  }
  // "a couple of mil"
  const couple = (text(tokens, at) === 'a' ? at + 1 : at) + (text(tokens, (text(tokens, at) === 'a' ? at + 1 : at) + 1) === 'of' ? 2 : 1);
  if (text(tokens, couple - 1) === 'couple' || text(tokens, couple - 2) === 'couple') { const unit = unitOf.get(text(tokens, couple)); return unit && dimension(tokens, { from: start, to: couple + 1, measure: { value: 2, unit, about: true } }); }
  const amount = readAmount(tokens, at);
  if (amount === undefined) return text(tokens, start + 1) === 'sized' || text(tokens, start + 1) === 'size' ? { from: start, to: start + 2, measure: { about: false, said: `${text(tokens, start)} ${text(tokens, start + 1)}` } } : undefined;
  // "ten by five mil", "ten mil by five mil"
  const by = text(tokens, amount.to) === 'by' ? amount.to : unitOf.has(text(tokens, amount.to)) && text(tokens, amount.to + 1) === 'by' ? amount.to + 1 : undefined;
  const other = by === undefined ? undefined : readNumber(tokens, by + 1);
  const second = other;
  // "ten mil by five"
  if (second && by !== amount.to && !unitOf.has(text(tokens, second.to))) return dimension(tokens, { from: start, to: second.to, measure: { value: amount.value, unit: unitOf.get(text(tokens, amount.to)) as 'mm', about: about !== undefined, second: second.value } });
  const unitAt = second?.to ?? amount.to;
  const unit = unitOf.get(text(tokens, unitAt));
  if (unit === undefined || (second && by !== amount.to && unitOf.get(text(tokens, amount.to)) !== unit)) return undefined;
  return dimension(tokens, { from: start, to: unitAt + 1, measure: { value: amount.value, unit, about: about !== undefined, ...(second ? { second: second.value } : {}) } });
}

function dimension(tokens: readonly Token[], mark: Mark): Mark {
  const found = formAt(dimensions, tokens, mark.to);
  const sized = found ? { ...mark, to: mark.to + found.words.length, measure: { ...(mark.measure as MeasureMark), what: found.means } } : mark;
  const guess = formAt(aboutsAfter, tokens, sized.to);
  return guess ? { ...sized, to: sized.to + guess.words.length, measure: { ...(sized.measure as MeasureMark), about: true } } : sized;
}
