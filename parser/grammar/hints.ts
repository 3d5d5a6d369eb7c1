/** A hint is no doubt and never blocks: what a gap or an overlong tooth makes one look at. */
import type { Context } from '../contract/draft.ts';
import type { Hint } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import { opposing } from './teeth.ts';

export function hintsFor(items: readonly Item[], context: Context, utterance: string): Hint[] {
  const missing = items.flatMap((item) =>
    item.kind === 'finding' &&
    item.presence === 'present' &&
    ['missing', 'previously-extracted'].includes(item.condition) &&
    item.place &&
    'teeth' in item.place
      ? item.place.teeth.map((tooth) => ({ tooth, item: item.id }))
      : [],
  );
  if (missing.length === 0) return [];
  const looked = new Set(
    context.items.concat(items).flatMap((item) => ('place' in item && item.place && 'teeth' in item.place ? item.place.teeth : [])),
  );
  return missing
    .filter(({ tooth }) => !looked.has(opposing(tooth)))
    .map(({ tooth, item }, i) => ({
      id: `${utterance}/h${i + 1}`,
      hint: 'opposite-of-a-gap',
      say: `${tooth} is missing: was ${opposing(tooth)} looked at?`,
      place: { teeth: [opposing(tooth)] },
      item,
    }));
}
