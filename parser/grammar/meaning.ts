import type { Item } from '../contract/item.ts';

const frame = new Set(['id', 'evidence', 'how', 'revises']);
/** What an item says, without what says where it came from. */
export const bodyOf = (item: Item): Record<string, unknown> =>
  Object.fromEntries(Object.entries(item).filter(([name, value]) => !frame.has(name) && value !== undefined));

/** An item's meaning as text: two items with the same meaning say the same of the same place, however they came. */
export const meaningOf = (item: Item): string =>
  JSON.stringify(bodyOf(item), (_key, value: unknown) =>
    value !== null && typeof value === 'object' && !Array.isArray(value)
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([, v]) => v !== undefined)
            .sort(([a], [b]) => (a < b ? -1 : 1)),
        )
      : value,
  );
