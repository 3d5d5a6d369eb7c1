/** An invented book for pictures: what the server would answer. Not a test of records. */
import type { Caution, Comparison, DueRow, ExamRow, HorseRow, NetworkState, SearchHit } from '../../parser/contract/wire.ts';
import { sampleDraft } from './check.sample.ts';

const items = sampleDraft().items.map((i) => i.item);
const row = (id: string, state: ExamRow['state'], horse: string | null, startedAt: string, more: Partial<ExamRow> = {}): ExamRow => ({
  id,
  state,
  horse,
  owner: 'R. Alder',
  yard: 'Low Meadow',
  startedAt,
  confirmedAt: null,
  items: items.length,
  doubts: 0,
  revision: state === 'confirmed' ? 1 : 0,
  erased: false,
  ...more,
});
const exams: readonly ExamRow[] = [
  row('a', 'draft', 'Juniper', '2026-11-24T09:12:00+00:00', { doubts: 4 }),
  row('b', 'confirmed', 'Bramble', '2026-11-23T14:02:00+00:00', { yard: 'High Barn' }),
  row('e', 'draft', null, '2026-11-20T10:00:00+00:00', { items: 12 }),
  row('c', 'confirmed', 'Juniper', '2026-03-04T09:12:00+00:00', { revision: 2 }),
  row('d', 'confirmed', 'Juniper', '2025-03-01T09:12:00+00:00'),
  row('f', 'confirmed', 'Sorrel', '2025-02-11T09:12:00+00:00', { yard: 'High Barn' }),
];
const horses: readonly HorseRow[] = [
  { name: 'Bramble', owner: 'M. Thorn', yard: 'High Barn', visits: 1, lastAt: '2026-11-23T14:02:00+00:00' },
  { name: 'Juniper', owner: 'R. Alder', yard: 'Low Meadow', visits: 3, lastAt: '2026-11-24T09:12:00+00:00' },
  { name: 'Sorrel', owner: 'M. Thorn', yard: 'High Barn', visits: 1, lastAt: '2025-02-11T09:12:00+00:00' },
];
const again = items.find((i) => i.kind === 'follow-up')!;
const due: readonly DueRow[] = [
  {
    horse: 'Juniper',
    owner: 'R. Alder',
    yard: 'Low Meadow',
    exam: 'c',
    startedAt: '2026-03-04T09:12:00+00:00',
    item: again,
    due: '2026-09-04',
  },
  {
    horse: 'Bramble',
    owner: 'M. Thorn',
    yard: 'High Barn',
    exam: 'b',
    startedAt: '2026-11-23T14:02:00+00:00',
    item: { ...again, after: { said: 'in the spring' } } as typeof again,
    due: null,
  },
];
const compare: Comparison = {
  horse: 'Juniper',
  visits: [
    { exam: 'd', startedAt: '2025-03-01T09:12:00+00:00', items: items.slice(0, 14) },
    { exam: 'c', startedAt: '2026-03-04T09:12:00+00:00', items },
  ],
};
const hits: readonly SearchHit[] = [
  {
    exam: 'c',
    horse: 'Juniper',
    startedAt: '2026-03-04T09:12:00+00:00',
    utterance: 'u',
    text: 'one oh six hook front four millimetres',
    item: items[4]!,
    at: [1, 3],
    audio: true,
  },
  {
    exam: 'd',
    horse: 'Juniper',
    startedAt: '2025-03-01T09:12:00+00:00',
    utterance: 'u',
    text: 'hook again on one oh six',
    item: items[4]!,
    at: null,
    audio: false,
  },
];
/** A made-up square: what a camera would read off it is nothing. */
const square = Array.from({ length: 33 }, (_, y) =>
  Array.from({ length: 33 }, (_, x) => ((x * 7 + y * 13 + x * y) % 3 === 0 ? '1' : '0')).join(''),
);
const network: NetworkState = {
  here: true,
  devices: [
    { id: 'a', name: 'Barn phone', pairedAt: '2026-11-20T09:12:00+00:00' },
    { id: 'b', name: 'Tablet', pairedAt: '2026-11-23T09:12:00+00:00' },
  ],
  open: {
    address: 'https://192.0.2.10:4718/pair',
    code: 'WDC5Q8K5',
    until: '2026-11-25T16:06:00+00:00',
    print: Array.from({ length: 32 }, (_, n) => (n * 7 + 16).toString(16).toUpperCase().padStart(2, '0')).join(':'),
    square,
  },
};
export const bookAnswers: Readonly<Record<string, unknown>> = {
  '/api/network': network,
  '/api/exams': exams,
  '/api/horses': horses,
  '/api/due': due,
  '/api/horses/Juniper/compare': compare,
  '/api/search': hits,
};
export const sampleCautions: readonly Caution[] = [
  {
    id: 'motorised',
    say: 'Motorised reduction: heat and depth can open a pulp horn. How much, how often and by whom is for local law and the veterinarian in charge.',
    source: 'Common practice; no source.',
  },
];
