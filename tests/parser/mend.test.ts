/** Sound-alikes: what was heard stays as it was heard, what it was read as is marked, and numbers out of them are asked about. */
import { expect, test } from 'vitest';
import { expand } from '../../parser/grammar/template.ts';
import { emptyContext, parseText } from '../../parser/index.ts';
import { mishearings, numberMishearings } from '../../parser/lexicon/mishearings.ts';

const read = (say: string) => parseText('m/1', say, emptyContext());

test('a mended word keeps what was heard and says what it was read as', () => {
  const { utterance, items } = read('who kill points on the upper left row');
  expect(utterance.text).toBe('who kill points on the upper left row');
  expect(utterance.words.slice(0, 2)).toMatchObject([
    { w: 'who', repairedTo: 'buccal' },
    { w: 'kill', repairedTo: 'buccal' },
  ]);
  expect(items[0]?.evidence).toMatchObject({ repaired: true, words: expect.arrayContaining([0, 1]) as number[] });
});

test('what reads as it stands is never mended', () => {
  for (const say of ['one oh six rostral hook four mil', 'caries on two oh nine grade two', 'no hooks, waves or steps'])
    expect(read(say).utterance.words.filter(({ repairedTo }) => repairedTo !== undefined)).toEqual([]);
});

test('a tooth out of misheard words is asked about; a digit that sounds the same is marked', () => {
  expect(read('step at for all nine two mil').doubts).toMatchObject([
    { doubt: 'unsure', readings: [{ items: [{ condition: 'step' }] }, { items: [] }] },
  ]);
  expect(read('won oh six ramp')).toMatchObject({ doubts: [], utterance: { words: [{ w: 'won', repairedTo: 'one' }, {}, {}, {}] } });
});

test('a medicine half heard is asked about', () => {
  expect(read('rama fidin half a mil i v').doubts.map(({ doubt }) => doubt)).toEqual(['dose-unclear']);
});

test('no form is listed for two meanings, and none for itself', () => {
  const rows = [...mishearings, ...numberMishearings].flatMap(({ heard, means }) =>
    heard.flatMap(expand).map((words) => [words.join(' '), means] as const),
  );
  const meant = new Map<string, Set<string>>();
  for (const [heard, means] of rows) meant.set(heard, (meant.get(heard) ?? new Set()).add(means));
  expect([...meant].filter(([, means]) => means.size > 1).map(([heard]) => heard)).toEqual([]);
  expect(rows.filter(([heard, means]) => heard === means)).toEqual([]);
});
