/** Visits side by side. */
import { expect, test } from 'vitest';
import { compareRows } from '../../web/book/compare.ts';
import { sampleDraft } from '../page/check.sample.ts';

const items = sampleDraft().items.map((i) => i.item);
const rows = compareRows({
  horse: 'Juniper',
  visits: [
    { exam: 'a', startedAt: null, items: items.slice(0, 5) },
    { exam: 'b', startedAt: null, items },
  ],
});
const row = (key: string) => rows.find((r) => r.key === key);

test('every finding, piece of work and "not examined" of every visit stands in its column, once for each tooth', () => {
  expect(row('106')!.cells.map((c) => c.length)).toEqual([1, 2]);
  expect(row('309-310')!.cells.map((c) => c.length)).toEqual([0, 3]);
  expect(row('Cheek, both sides, level with 108, 208')!.cells[1]!.length).toBe(1);
  expect(row('Whole mouth')!.cells[1]!.map((i) => i.kind)).toEqual(['finding', 'treatment']);
  const shown = new Set(rows.flatMap((r) => r.cells[1]!.map((i) => i.id)));
  expect(items.filter((i) => ['finding', 'treatment', 'not-examined'].includes(i.kind)).every((i) => shown.has(i.id))).toBe(true);
});
test('rows follow the order of an exam: outside the mouth first', () => {
  expect(rows[0]!.label).toMatch(/Jaw joint|Masseter/);
  expect(rows.every((r) => r.cells.length === 2)).toBe(true);
});
