/** Settling what two readers heard: the reading that is chosen stands, once, and nothing of the other beside it. */
import { expect, test } from 'vitest';
import type { Draft, DraftEvent } from '../../parser/contract/draft.ts';
import { emptyContext, parseText } from '../../parser/index.ts';
import { untraced } from '../../server/app/understand.ts';
import { compareReaders, readOf } from '../../server/session/readers.ts';
import { applyEvent, emptyDraft } from '../../server/session/reduce.ts';
import { stands } from '../../server/session/standing.ts';

const when = '2026-11-28T10:00:00.000+00:00';
/** A draft in which the first reader heard one text and the second another, and the question that came of it. */
function differing(first: string, second: string): { draft: Draft; id: string } {
  const mine = parseText('u', first, emptyContext());
  const other = parseText('v', second, emptyContext());
  const [doubt] = compareReaders({ id: 'u' }, readOf(mine, undefined), readOf(other, undefined), 'u/second').doubts;
  const result = untraced(mine);
  const events: DraftEvent[] = [
    { event: 'said', result, when },
    { event: 'asked', doubt: doubt!, when },
  ];
  return { draft: events.reduce(applyEvent, emptyDraft('e')), id: doubt!.id };
}
const teeth = (draft: Draft): readonly string[] =>
  draft.items
    .filter(stands)
    .flatMap(({ item }) => ('place' in item && item.place && 'teeth' in item.place ? item.place.teeth : []))
    .sort();
const choose = (draft: Draft, doubt: string, reading: number): Draft =>
  applyEvent(draft, { event: 'settled', doubt, how: 'reading', reading, by: 'person', when });

test('two items that differ: each reading is taken in whole', () => {
  const { draft, id } = differing('hook on one oh six, ramp on three oh nine', 'hook on two oh six, ramp on four oh nine');
  expect(teeth(draft)).toEqual(['106', '309']);
  expect(teeth(choose(draft, id, 0))).toEqual(['106', '309']);
  expect(teeth(choose(draft, id, 1))).toEqual(['206', '409']);
});
test('what both heard stays, whichever is chosen', () => {
  const { draft, id } = differing('hook on one oh six, ramp on three oh nine', 'hook on one oh six, ramp on four oh nine');
  expect(teeth(choose(draft, id, 0))).toEqual(['106', '309']);
  expect(teeth(choose(draft, id, 1))).toEqual(['106', '409']);
});
