/** An item as one phrase: "106: Hook, front, 4 mm high". */
import type { Item } from '../parser/contract/item.ts';
import { placeOfItem } from './mouth/marks.ts';
import { placeWords } from './mouth/names.ts';
import { itemWords } from './words.ts';

export function told(item: Item): string {
  const { title, more } = itemWords(item);
  const place = placeOfItem(item);
  return `${place ? `${placeWords(place)}: ` : ''}${[title, ...more].join(', ')}`;
}
