import { expect, test } from 'vitest';
import type { Hint } from '../../parser/contract/doubt.ts';
import type { DraftItem } from '../../parser/contract/draft.ts';
import { Item } from '../../parser/contract/item.ts';
import { hintsLeft } from '../../web/check/notLooked.ts';

const held = (id: string, fields: object, state: DraftItem['state'] = 'open'): DraftItem => ({
  state,
  item: Item.parse({ id, evidence: { utterance: 'u', words: [], rules: [] }, ...fields }),
});
const missing = (state?: DraftItem['state']) =>
  held('a', { kind: 'finding', condition: 'missing', presence: 'present', when: 'now', place: { teeth: ['309'] } }, state);
const hint: Hint = { id: 'h', hint: 'opposite-of-a-gap', say: '309 is missing: was 209 looked at?', place: { teeth: ['209'] }, item: 'a' };

test('a hint is shown until somebody looked there, or said that it was not looked at', () => {
  expect(hintsLeft([hint], [missing()])).toEqual([hint]);
  expect(
    hintsLeft(
      [hint],
      [missing(), held('b', { kind: 'finding', condition: 'overlong', presence: 'absent', when: 'now', place: { teeth: ['209'] } })],
    ),
  ).toEqual([]);
  expect(hintsLeft([hint], [missing(), held('b', { kind: 'not-examined', place: { rows: ['upper-left'] } })])).toEqual([]);
});
test('it goes with the finding that raised it', () => expect(hintsLeft([hint], [missing('struck')])).toEqual([]));
