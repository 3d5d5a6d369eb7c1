/** Two readers of one phrase, on words that recognisers do confuse; read by the real grammar. */
import { describe, expect, test } from 'vitest';
import { emptyContext, parseText } from '../../parser/index.ts';
import { compareReaders, type Read } from '../../server/session/readers.ts';

function read(text: string): Read {
  const { items, utterance } = parseText('u', text, emptyContext());
  return { text, items, loose: utterance.words.filter(({ as }) => as === 'leftover').length };
}
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
  expect(compare('look at that', 'two oh nine fractured').doubts).toMatchObject([{ doubt: 'readers-differ', readings: [{ items: [] }, { items: [{ kind: 'finding', condition: 'fracture' }] }] }]);
});
test('talk in both is nothing', () => {
  expect(compare('good boy stand up now', 'good boy stand up')).toEqual({ agreed: [], alone: [], doubts: [] });
});
