/** Two readers of one phrase, on words that recognisers do confuse; read by the real grammar. */
import { describe, expect, test } from 'vitest';
import { emptyContext, parseText } from '../../parser/index.ts';
import { compareReaders, readOf, type Read } from '../../server/session/readers.ts';

const read = (text: string, nats = 0): Read => ({ ...readOf({ ...parseText('u', text, emptyContext()), text }, undefined), nats });
const compare = (first: string, second: string) => compareReaders({ id: 'u' }, read(first), read(second), 'u/second');

describe('the same said in another way is agreement', () => {
  test.each([
    ['one oh six rostral hook four millimetres', '106 rostral hook 4mm'],
    ['peripheral caries three oh eight grade one point two', 'peripheral caries 308 grade 1.2'],
    ['diastema between three oh nine and three ten', 'diastema between 309 and 310'],
    ['detomidine nought point three mil i v by the vet', 'detomidine 0.3 ml iv by the vet'],
  ])('%s / %s', (first, second) => {
    const { agreed, doubts } = compare(first, second);
    expect(agreed).toHaveLength(1);
    expect(doubts).toEqual([]);
  });
});

describe('a difference in what matters is asked, with both readings', () => {
  test.each([
    ['tooth', 'three oh nine hook', 'two oh nine hook'],
    ['side', 'ulcer on the left cheek', 'ulcer on the right cheek'],
    ['presence', 'no hook on one oh six', 'a hook on one oh six'],
    ['number', 'one oh six hook four mil', 'one oh six hook five mil'],
    ['unit', 'lump on the left mandible one centimetre', 'lump on the left mandible one millimetre'],
    ['grade', 'two ten mobility grade one', 'two ten mobility grade two'],
    ['gap', 'diastema between three oh nine and three ten', 'diastema between three ten and three eleven'],
    ['agent', 'xylazine five mil i v by the vet', 'romifidine five mil i v by the vet'],
    ['dose', 'detomidine nought point three mil i v by the vet', 'detomidine three mil i v by the vet'],
    ['state', 'plan to extract one oh five', 'extracted one oh five'],
  ])('%s', (_what, first, second) => {
    const { doubts } = compare(first, second);
    expect(doubts).toMatchObject([{ doubt: 'readers-differ', readings: [{ label: first }, { label: second }] }]);
    expect(doubts[0]?.readings?.every(({ items }) => items.length === 1)).toBe(true);
  });
});

test('a second reader that understood nothing raises no doubt, and the item is known to stand alone', () => {
  expect(compare('one oh six hook', 'when oh sits hook')).toMatchObject({ agreed: [], alone: ['u/i1'], doubts: [] });
});
test('what only the second heard, whole, is asked', () => {
  expect(compare('look at that', 'two oh nine fractured').doubts).toMatchObject([
    { doubt: 'readers-differ', readings: [{ items: [] }, { items: [{ kind: 'finding', condition: 'fracture' }] }] },
  ]);
});
describe('words that neither was sure of, and that sound otherwise, are asked about, also when the grammar makes nothing of the second', () => {
  const [first, second] = ['No hook on four oh six', 'the look on for all sick'];
  const asked = (sure: number, other: number, heard = second) =>
    compareReaders({ id: 'u' }, read(first, sure), read(heard, other), 'u/second').doubts;
  test('both texts are offered, the first with its items', () => {
    expect(asked(-0.6, -0.4)).toMatchObject([
      {
        doubt: 'readers-differ',
        item: 'u/i1',
        why: expect.stringContaining('sure') as string,
        readings: [
          { label: first, items: [{ id: 'u/i1' }] },
          { label: second, items: [] },
        ],
      },
    ]);
  });
  test('a first that was sure, a second that babbles, or the same sounds written otherwise raise nothing', () => {
    expect(asked(-0.001, -0.4)).toEqual([]);
    expect(asked(-0.3, -6)).toEqual([]);
    expect(asked(-0.6, -0.4, 'no hooke on 406')).toEqual([]);
  });
  test('talk is not asked about', () => {
    expect(compareReaders({ id: 'u' }, read('stand over there you', -0.9), read('sandover the new', -0.4), 'u/second').doubts).toEqual([]);
  });
});
test('talk in both is nothing', () => {
  expect(compare('good boy stand up now', 'good boy stand up')).toMatchObject({ agreed: [], alone: [], doubts: [] });
});
