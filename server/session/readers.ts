/**
 * Two ears that learned differently seldom make the same mistake. Where their readings of one phrase differ on what matters
 * (tooth, gap, number, unit, side, presence, grade, agent, dose, route, state), a person must look. Pure.
 */
import type { Doubt } from '../../parser/contract/doubt.ts';
import type { Item } from '../../parser/contract/item.ts';
import type { Utterance } from '../../parser/contract/draft.ts';

export interface Read { readonly text: string; readonly items: readonly Item[]; /** Words that no item, command or filler took. */ readonly loose: number }

export interface Compared {
  /** Items of the first reader that the second says too, the same in all that matters. */
  readonly agreed: readonly string[];
  /** Items that only the first reader yields, where the second understood something else or nothing. */
  readonly alone: readonly string[];
  readonly doubts: readonly Doubt[];
}

/** What an item is about, whatever it says of it. */
const topic = (item: Item): string => (item.kind === 'finding' ? `finding ${item.condition}` : item.kind === 'treatment' ? `treatment ${item.procedure}` : item.kind === 'follow-up' ? `follow-up ${item.action}` : item.kind === 'fact' ? `fact ${item.about}` : item.kind);

/** The fields two readers must agree on; words kept as said may differ. */
export function matters(item: Item): string {
  const place = 'place' in item && item.place ? { ...item.place, from: undefined, said: undefined } : null;
  switch (item.kind) {
    case 'finding': return JSON.stringify([place, item.presence, item.when, item.grade, item.measures, item.surfaces?.toSorted(), item.qualifiers?.toSorted()]);
    case 'treatment': return JSON.stringify([place, item.state, item.amountMm, item.instrument, item.by]);
    case 'sedation': return JSON.stringify([item.given, item.agent, item.dose, item.route, item.by, item.topUp]);
    case 'medication': return JSON.stringify([item.agent, item.dose, item.route, item.by, item.state]);
    case 'follow-up': return JSON.stringify([place, item.after, item.state]);
    default: return JSON.stringify([place]);
  }
}

/** @param id of the doubt that may come of it: one a phrase */
export function compareReaders(utterance: Pick<Utterance, 'id' | 'at'>, first: Read, second: Read, id: string): Compared {
  const pool = [...second.items];
  const agreed: string[] = [];
  const differing: Item[] = [];
  const alone: Item[] = [];
  for (const item of first.items) {
    const same = pool.findIndex((other) => topic(other) === topic(item) && matters(other) === matters(item));
    if (same >= 0) { pool.splice(same, 1); agreed.push(item.id); continue; }
    const near = pool.findIndex((other) => topic(other) === topic(item) || (placeOf(other) !== null && placeOf(other) === placeOf(item)));
    if (near >= 0) { pool.splice(near, 1); differing.push(item); } else alone.push(item);
  }
  // What only the second heard counts when the first made nothing of the phrase, or when the phrase is read whole by the second.
  const unmatched = pool.filter((item) => item.kind !== 'fact' && item.kind !== 'note');
  const secondKnows = second.items.length > 0 && second.loose === 0;
  const ask = differing.length > 0 || (unmatched.length > 0 && secondKnows) || (alone.length > 0 && secondKnows);
  if (!ask) return { agreed, alone: alone.map((item) => item.id), doubts: [] };
  const about = differing[0] ?? alone[0];
  const doubt: Doubt = {
    id, doubt: 'readers-differ', words: first.text, utterance: utterance.id, state: 'open', ...(utterance.at ? { at: utterance.at } : {}), ...(about ? { item: about.id } : {}),
    ...(about && 'place' in about && about.place ? { place: about.place } : {}),
    readings: [{ label: first.text, items: [...differing, ...alone] }, { label: second.text, items: second.items.filter((item) => !agreedWith(item, first.items)).map((item, i) => ({ ...item, id: `${id}/r2.${i + 1}` })) }],
  };
  return { agreed, alone: alone.map((item) => item.id), doubts: [doubt] };
}

/**
 * How much likelier a right item is to be heard the same by both readers than a wrong one: measured, not chosen
 * (even phrases of the second reader's bench, `tests/bench/FIGURES.md`).
 */
export const AGREEMENT = 10;
/** Belief in an item that both readers heard, from the first reader's own (0 to 1). */
export const sureOfBoth = (sure: number): number => (sure * AGREEMENT) / (sure * AGREEMENT + 1 - sure);

const placeOf = (item: Item): string | null => ('place' in item && item.place ? JSON.stringify({ ...item.place, from: undefined, said: undefined }) : null);
const agreedWith = (item: Item, firsts: readonly Item[]): boolean => firsts.some((other) => topic(other) === topic(item) && matters(other) === matters(item));
