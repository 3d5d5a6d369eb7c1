/**
 * "Three oh nine, or two oh nine?" is answered by saying "two oh nine": a place said alone, right behind a question between
 * readings of which just one stands there, is that answer. Behind anything else it stays what it was, half of a finding.
 * And only the question that is being asked can be answered. Pure.
 */
import type { Draft, DraftDoubt, ParseResult } from '../../parser/contract/draft.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import { isOpen } from './standing.ts';

const samePlace = (a: Place, b: Place | null): boolean =>
  b !== null && 'teeth' in a === 'teeth' in b && JSON.stringify(bare(a)) === JSON.stringify(bare(b));
/** Without how it was said: a group and its teeth are one place. */
const bare = (place: Place): unknown =>
  'teeth' in place
    ? place.teeth
    : 'spaces' in place
      ? place.spaces
      : 'rows' in place
        ? place.rows
        : [place.region, place.side ?? null, place.jaw ?? null];
const standsAt = (place: Place, items: readonly Item[]): boolean =>
  items.length > 0 && items.every((item) => 'place' in item && samePlace(place, item.place ?? null));

/** The question that the page asks now: of the phrase that was asked about last, one between readings before any other. */
export function askedNow(draft: Pick<Draft, 'doubts'>): DraftDoubt | undefined {
  const open = draft.doubts.filter(isOpen);
  const latest = open.filter(({ doubt }) => doubt.utterance === open.at(-1)?.doubt.utterance);
  return latest.findLast(({ doubt }) => (doubt.readings?.length ?? 0) > 1) ?? latest.at(-1);
}

export function answered(draft: Draft, result: ParseResult): ParseResult {
  const asked = askedNow(draft);
  if (result.commands.some(({ command, doubt }) => command === 'answer' && doubt !== asked?.doubt.id)) return unanswered(result);
  const [half] = result.doubts;
  if (result.items.length || result.commands.length || result.doubts.length !== 1 || half?.doubt !== 'no-condition' || !half.place)
    return result;
  if (!asked || asked.doubt.utterance !== draft.utterances.at(-1)?.id) return result;
  const fits = (asked.doubt.readings ?? []).flatMap(({ items }, n) => (standsAt(half.place!, items) ? [n] : []));
  if (fits.length !== 1) return result;
  const { utterance } = result;
  return {
    ...result,
    doubts: [],
    commands: [
      { id: `${result.id}/answer`, command: 'answer', doubt: asked.doubt.id, reading: fits[0]!, utterance: result.id, words: result.text },
    ],
    utterance: { ...utterance, words: utterance.words.map((word) => (word.as.startsWith('doubt:') ? { ...word, as: 'command' } : word)) },
  };
}

/** An answer to a question that nobody was asked just now settles nothing: its words stay as talk. */
const unanswered = (result: ParseResult): ParseResult => ({
  ...result,
  items: [],
  settles: [],
  commands: result.commands.filter(({ command }) => command !== 'answer'),
  leftovers: result.utterance.words.map(({ w }) => w),
  utterance: { ...result.utterance, words: result.utterance.words.map((word) => ({ ...word, as: 'leftover' })) },
});
