/** How far two texts are from each other in sound, whatever they mean and however their numbers are written. */
import { digitWords, teenWords, tensWords } from '../lexicon/numbers.ts';
import { distance, soundCodes, soundOf } from './sounds.ts';

/** The first word of each value: "nought" and "nil" are zero too. */
const names = new Map(
  [digitWords, teenWords, tensWords].flatMap((table) =>
    Object.entries(table)
      .reverse()
      .map(([word, value]) => [value, word] as const),
  ),
);
const digits = (figures: string): string => [...figures].map((one) => (one === '0' ? 'oh' : names.get(Number(one)))).join(' ');

/** "106" is said as a tooth is, "12" as a number, what is longer digit by digit. */
function said(figures: string): string {
  const [, front = '', pair = ''] = /^([1-9]?)([1-9]\d)$/.exec(figures) ?? [];
  const value = Number(pair);
  const tail = names.get(value) ?? `${names.get(value - (value % 10))} ${digits(String(value % 10))}`;
  return pair === '' ? digits(figures) : `${digits(front)} ${tail}`.trim();
}
const soundsOf = (text: string): Uint8Array =>
  soundCodes(
    soundOf(
      text
        .replace(/(\d)[.,](?=\d)/g, '$1 point ')
        .replace(/mm\b/g, ' millimetres')
        .replace(/\d+/g, (figures) => ` ${said(figures)} `),
    ),
  );

/** @returns 0 (the same sounds) to about 1 (nothing in common); see `distance` */
export const soundsApart = (one: string, other: string): number => distance(soundsOf(one), soundsOf(other));
