import { expect, test } from 'vitest';
import { expectedNames, expecting } from '../../server/app/expected.ts';
import type { Ear, Stretch } from '../../server/app/ear.ts';

const header = {
  horse: { name: 'Mistral' },
  owner: 'Mrs Abernethy',
  yard: 'Larkfield Stables',
  examiner: 'Doctor Vane',
  present: 'Beth Sallow',
  startedAt: '2026-11-25T09:00:00+00:00',
};
const exam = (horse: string | null, startedAt: string | null, erased = false) => ({
  horse,
  owner: null,
  yard: 'Larkfield Stables',
  startedAt,
  erased,
});

test("the exam's own names come first, then those of the same day, then the horses known at its yard; nothing erased, nothing twice", () => {
  const exams = [
    exam('Quince', '2026-11-25T08:00:00+00:00'),
    exam('Zebedee', '2026-11-20T08:00:00+00:00'),
    exam('Hobson', '2026-11-25T08:30:00+00:00', true),
    exam(null, null),
  ];
  const horses = [
    { name: 'Pumpkin', owner: 'Mrs Abernethy', yard: 'Larkfield Stables' },
    { name: 'Nimrod', owner: 'Miss Orchard', yard: 'Five Elms' },
  ];
  expect(expectedNames(header, { exams, horses })).toEqual([
    'Mistral',
    'Mrs Abernethy',
    'Larkfield Stables',
    'Doctor Vane',
    'Beth Sallow',
    'Quince',
    'Pumpkin',
  ]);
});

test('an exam without names expects none, and a long list is cut', () => {
  expect(
    expectedNames(
      { horse: null, owner: null, yard: null, examiner: null, startedAt: null },
      { exams: [exam('Quince', null)], horses: [{ name: 'Pumpkin', owner: null, yard: null }] },
    ),
  ).toEqual([]);
  const many = Array.from({ length: 200 }, (_, i) => exam(`Horse ${i}`, '2026-11-25T08:00:00+00:00'));
  expect(expectedNames(header, { exams: many, horses: [] })).toHaveLength(60);
});

test('the ear is told the names of the exam whose sound it hears', async () => {
  const told: Stretch[] = [];
  const ear = {
    name: 'x',
    hear: async (stretch: Stretch) => {
      told.push(stretch);
      return { id: 'a', hypotheses: [], reader: 'first' as const };
    },
  } as unknown as Ear;
  await expecting(ear, (id) => [`${id} horse`]).hear({ exam: 'e7', from: 0, samples: new Float32Array(0) });
  expect(told[0]?.names).toEqual(['e7 horse']);
});
