/** Small tools of drawing. The random source is handed in: a function that gives numbers from 0 up to 1. */
import { expand } from '../grammar/template.ts';

export type Random = () => number;

export const chance = (random: Random, share: number): boolean => random() < share;
export const whole = (random: Random, from: number, to: number): number => from + Math.floor(random() * (to - from + 1));

/** @throws Error when there is nothing to pick from: wrong data of ours */
export function pick<T>(random: Random, list: readonly T[]): T {
  if (list.length === 0) throw new Error('Nothing to pick from');
  return list[Math.floor(random() * list.length)] as T;
}

/** Picks by weight: `[3, 'often'], [1, 'rarely']`. */
export function weighted<T>(random: Random, rows: readonly (readonly [number, T])[]): T {
  let left = random() * rows.reduce((sum, [weight]) => sum + weight, 0);
  for (const [weight, value] of rows) {
    left -= weight;
    if (left < 0) return value;
  }
  return (rows.at(-1) as readonly [number, T])[1];
}

/** One way to say one of the spoken forms. */
export const formOf = (random: Random, forms: readonly string[]): string =>
  pick(
    random,
    expand(pick(random, forms)).filter((words) => words.length > 0),
  ).join(' ');

export const join = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== '').join(' ');
