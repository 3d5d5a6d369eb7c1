/** The fold over wire messages, and what is left to look at. */
import { expect, test } from 'vitest';
import { Draft } from '../../parser/contract/draft.ts';
import { fold } from '../../web/fold.ts';
import { left } from '../../web/check/notLooked.ts';
import { sampleDraft, sampleLength } from '../page/check.sample.ts';

test('the sample is a draft of the contract', () => {
  expect(() => Draft.parse(sampleDraft())).not.toThrow();
});
test('parts that changed are put in by id; nothing else moves', () => {
  const before = sampleDraft(5);
  const after = sampleDraft(6);
  const fresh = after.items.filter((i) => !before.items.some((b) => b.item.id === i.item.id));
  const kept = { ...before.items[0]!, state: 'kept' as const };
  const folded = fold(before, {
    type: 'changed',
    exam: before.id,
    seq: 6,
    parts: { items: [kept, ...fresh], utterances: after.utterances.slice(5) },
  })!;
  expect(folded.items.length).toBe(after.items.length);
  expect(folded.items[0]).toEqual(kept);
  expect(folded.items[1]).toBe(before.items[1]);
  expect(folded.utterances).toEqual(after.utterances);
  expect(folded.header).toBe(before.header);
  expect(folded.seq).toBe(6);
});
test('the whole draft, folded phrase by phrase, is the draft', () => {
  let folded = sampleDraft(0);
  for (let n = 1; n <= sampleLength; n++) {
    const { items, utterances, doubts } = sampleDraft(n);
    folded = fold(folded, { type: 'changed', exam: folded.id, seq: n, parts: { items, utterances, doubts } })!;
  }
  expect(folded).toEqual(sampleDraft());
});
test('a message of another exam or an older state changes nothing', () => {
  const draft = sampleDraft(5);
  expect(fold(draft, { type: 'changed', exam: 'another', seq: 9, parts: { paused: true } })).toBe(draft);
  expect(fold(draft, { type: 'changed', exam: draft.id, seq: 2, parts: { paused: true } })).toBe(draft);
  expect(fold(draft, { type: 'ack', epoch: 1, sequence: 1 })).toBe(draft);
  expect(fold(null, { type: 'draft', draft })).toBe(draft);
});
test('an empty draft leaves all six rows and the regions; a spoken tooth is no longer left, nor are the two of a gap', () => {
  expect(
    left([])
      .slice(0, 6)
      .map((o) => 'rows' in o.place && o.place.rows[0]),
  ).toEqual(['upper-right', 'upper-left', 'lower-left', 'lower-right', 'upper-incisors', 'lower-incisors']);
  const open = left(sampleDraft().items);
  const lower = open.find((o) => o.label === 'Lower left cheek teeth')!;
  expect(lower.place).toEqual({ teeth: ['307', '308'] });
  expect(open.some((o) => o.label === 'Upper right cheek teeth')).toBe(false);
  expect(open.some((o) => o.label === 'Tongue')).toBe(false);
});
test('"not examined" takes a place off the list', () => {
  const draft = sampleDraft(1);
  const item = { ...sampleDraft().items[0]!.item, kind: 'not-examined', place: { rows: ['lower-right'] } } as never;
  const open = left([...draft.items, { item, state: 'open' }]);
  expect(open.some((o) => o.label === 'Lower right cheek teeth')).toBe(false);
});
