/** What leans on the phrase before, said in one breath with another thing: its place, its words and its silence. */
import { expect, test } from 'vitest';
import { emptyContext, parse, parseText, type Context, type Parsed } from '../../parser/index.ts';
import { after } from './corpus.ts';

const behind = (text: string): Context => after(emptyContext(), parseText('p/1', text, emptyContext()));
const heard = (text: string, context: Context, silenceBefore?: number): Parsed =>
  parse(
    {
      id: 'p/2',
      at: [0, 1],
      reader: 'first',
      hypotheses: [{ text, words: text.split(' ').map((w) => ({ w })), logProb: 0 }],
      ...(silenceBefore !== undefined && { silenceBefore }),
    },
    context,
  );
const placesOf = ({ items }: Parsed): readonly unknown[] => items.map((item) => ('place' in item ? item.place : undefined));
const cap = behind('cap on six oh seven, loose');
const text = 'just popping that off with the forceps now, five oh seven still got its cap on';

test('the work is where the phrase before was, and the finding where it was said', () => {
  expect(placesOf(heard(text, cap))).toEqual([{ teeth: ['607'] }, { teeth: ['507'] }]);
});

test('ids count through, every word has its account, and each item the words that it came from', () => {
  const { items, utterance } = heard(text, cap);
  expect(items.map(({ id }) => id)).toEqual(['p/2/i1', 'p/2/i2']);
  expect(utterance.words.map(({ w }) => w)).toEqual(text.split(' '));
  expect(utterance.id).toBe('p/2');
  const [work, finding] = items.map(({ evidence }) => evidence);
  expect(Math.max(...(work?.words ?? []))).toBeLessThan(Math.min(...(finding?.words ?? [])));
  expect(finding?.words.map((i) => text.split(' ')[i])).toContain('cap');
  for (const [i, { as }] of utterance.words.entries())
    if (as.startsWith('item:')) expect(items.find(({ id }) => as === `item:${id}`)?.evidence.words).toContain(i);
});

test('behind a long silence nothing leans', () => {
  expect(placesOf(heard(text, cap, 60))).not.toContainEqual({ teeth: ['607'] });
});
