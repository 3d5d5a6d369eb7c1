/** What is read aloud, short and in the practitioner's own order: place, what, how much. Pure. */
import type { Item } from '../../parser/contract/item.ts';
import { capital } from '../labels.ts';
import { placeOfItem } from '../mouth/marks.ts';
import { placeWords, spokenNumber } from '../mouth/names.ts';
import { itemWords } from '../words.ts';

/** Words as they are spoken: "106" is "one oh six", "4 mm" is "4 millimetres". */
export const aloud = (text: string): string =>
  text
    .replace(/\b[1-8](?:0[1-9]|1[0-2])\b/g, spokenNumber)
    .replace(/(\d) mm\b/g, '$1 millimetres')
    .replace(/(\d) cm\b/g, '$1 centimetres')
    .replace(/(\d)°/g, '$1 degrees')
    .replaceAll('/', ', ');

/** "One oh six. Hook, front, 4 millimetres height." */
export const readBack = (item: Item): string => {
  const place = placeOfItem(item);
  const { title, more } = itemWords(item);
  return [place && placeWords(place), [title, ...more].join(', ')]
    .filter((part): part is string => !!part)
    .map((part) => `${capital(aloud(part))}.`)
    .join(' ');
};
