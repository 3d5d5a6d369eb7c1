import type { Item } from '../contract/item.ts';

/** An item's meaning as text: two items with the same meaning say the same of the same place, however they came. */
export function meaningOf(item: Item): string {
  const { id: _id, evidence: _evidence, how: _how, revises: _revises, ...body } = item;
  return JSON.stringify(body, (_key, value: unknown) => (value !== null && typeof value === 'object' && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined).sort(([a], [b]) => (a < b ? -1 : 1))) : value));
}
