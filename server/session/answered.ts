/**
 * "Three oh nine, or two oh nine?" is answered by saying "two oh nine": a place said alone, right behind a question between
 * readings of which just one stands there, is that answer. Behind anything else it stays what it was, half of a finding. Pure.
 */
import type { Draft, ParseResult } from '../../parser/contract/draft.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import { isOpen } from './standing.ts';

const samePlace = (a: Place, b: Place | null): boolean => b !== null && 'teeth' in a === 'teeth' in b && JSON.stringify(bare(a)) === JSON.stringify(bare(b));
/** Without how it was said: a group and its teeth are one place. */
const bare = (place: Place): unknown => ('teeth' in place ? place.teeth : 'spaces' in place ? place.spaces : 'rows' in place ? place.rows : [place.region, place.side ?? null, place.jaw ?? null]);
const standsAt = (place: Place, items: readonly Item[]): boolean => items.length > 0 && items.every((item) => 'place' in item && samePlace(place, item.place ?? null));

export function answered(draft: Draft, result: ParseResult): ParseResult {
  const [half] = result.doubts;
  if (result.items.length || result.commands.length || result.doubts.length !== 1 || half?.doubt !== 'no-condition' || !half.place) return result;
  const open = draft.doubts.findLast(({ doubt }) => (doubt.readings?.length ?? 0) > 1);
  if (!open || !isOpen(open) || open.doubt.utterance !== draft.utterances.at(-1)?.id) return result;
  const fits = open.doubt.readings!.flatMap(({ items }, n) => (standsAt(half.place!, items) ? [n] : []));
  if (fits.length !== 1) return result;
  const { utterance } = result;
  return {
    ...result, doubts: [],
    commands: [{ id: `${result.id}/answer`, command: 'answer', doubt: open.doubt.id, reading: fits[0]!, utterance: result.id, words: result.text }],
    utterance: { ...utterance, words: utterance.words.map((word) => (word.as.startsWith('doubt:') ? { ...word, as: 'command' } : word)) },
  };
}
