/** Numbers and tooth codes as they are said. */
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { chance, pick, weighted, type Random } from './draw.ts';

const nameOf = (table: Readonly<Record<string, number>>, value: number): string | undefined =>
  Object.entries(table).find(([word, n]) => n === value && !['nought', 'naught', 'aught', 'nil'].includes(word))?.[0];
const tens = (value: number): string =>
  `${nameOf(tensWords, value - (value % 10)) ?? ''}${value % 10 === 0 ? '' : ` ${nameOf(digitWords, value % 10)}`}`;

/** 0 to 99, whole or in halves ("four and a half") or with one decimal ("one point five"). */
export function sayNumber(value: number): string {
  const base = Math.floor(value);
  const name = nameOf(digitWords, base) ?? nameOf(teenWords, base) ?? tens(base);
  if (value === base) return name;
  const decimals = value
    .toFixed(2)
    .replace(/^\d+\./, '')
    .replace(/0$/, '');
  const point = `point ${decimals
    .split('')
    .map((d) => (d === '0' ? 'oh' : nameOf(digitWords, Number(d))))
    .join(' ')}`;
  return base === 0 ? `nought ${point}` : `${name} ${point}`;
}

/** One way to say a tooth's number: mostly "one oh six". */
export function sayTooth(random: Random, code: string): string {
  const quadrant = nameOf(digitWords, Number(code[0])) as string;
  const position = Number(code.slice(1));
  const digit = nameOf(digitWords, position % 10) as string;
  if (position < 10)
    return weighted(random, [
      [16, `${quadrant} oh ${digit}`],
      [3, `${quadrant} zero ${digit}`],
      [1, `${quadrant} hundred and ${digit}`],
    ]);
  if (position === 11)
    return weighted(random, [
      [16, `${quadrant} eleven`],
      [2, `${quadrant} one one`],
      [1, `${quadrant} double one`],
    ]);
  return weighted(random, [
    [18, `${quadrant} ${nameOf(teenWords, position)}`],
    [1, `${quadrant} one zero`],
  ]);
}

const jaws = { 1: ['upper', 'right'], 2: ['upper', 'left'], 3: ['lower', 'left'], 4: ['lower', 'right'] } as const;
const names: Readonly<Record<number, readonly string[]>> = {
  1: ['central incisor'],
  2: ['middle incisor', 'intermediate incisor'],
  3: ['corner incisor'],
  4: ['canine'],
  6: ['first cheek tooth', 'second premolar', 'six'],
  7: ['second cheek tooth', 'third premolar', 'seven'],
  8: ['third cheek tooth', 'fourth premolar', 'eight'],
  9: ['fourth cheek tooth', 'first molar', 'nine'],
  10: ['fifth cheek tooth', 'second molar', 'ten'],
  11: ['last cheek tooth', 'sixth cheek tooth', 'third molar', 'eleven'],
};
/** "upper right third cheek tooth", "lower left six"; undefined for what has no such name. */
export function sayByName(random: Random, code: string): string | undefined {
  const where = jaws[Number(code[0]) as 1];
  const name = names[Number(code.slice(1))];
  if (where === undefined || name === undefined) return undefined;
  const [jaw, side] = where;
  return `${chance(random, 0.7) ? `${jaw} ${side}` : `${side} ${jaw}`} ${pick(random, name)}`;
}
