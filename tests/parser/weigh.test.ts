/** How sure an item is among rival readings, and when a phrase that made nothing is asked about. Phrases and scores from trials with our recogniser on synthetic speech. */
import { expect, test } from 'vitest';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { emptyContext, parse } from '../../parser/index.ts';

const heard = (...texts: readonly (readonly [string, number])[]): HeardPhrase => ({ id: 'w/1', reader: 'first', at: [0, 2], hypotheses: texts.map(([text, share]) => ({ text, logProb: Math.log(share), words: text.split(' ').map((w) => ({ w })) })) });
const read = (...texts: readonly (readonly [string, number])[]) => parse(heard(...texts), emptyContext());
const unsure = (...texts: readonly (readonly [string, number])[]) => read(...texts).doubts.filter(({ doubt }) => doubt === 'unsure');

test('a rival that is no sentence of the trade counts little; one that is counts in full', () => {
  const nonsense = read(['No caries seen', 0.5], ['Two zero six nervous', 0.3], ['Two zero eight semester', 0.2]);
  expect(nonsense.doubts).toEqual([]);
  expect(nonsense.items[0]?.evidence.sure).toBeGreaterThan(0.8);
  expect(unsure(['Wolf tooth on two oh five', 0.5], ['Wolf tooth on one oh five', 0.5])).toHaveLength(1);
  expect(unsure(['Hook on one oh six', 0.55], ['No hook on one oh six', 0.45])).toHaveLength(1);
});

test('readings that say the same in other words add up', () => {
  const { items, doubts } = read(['Four eleven stepped nine millimetres', 0.5], ['Four eleven step nine millimetres', 0.4], ['Four eleven step five millimetres', 0.1]);
  expect(items[0]?.evidence.sure).toBeCloseTo(0.9, 2);
  expect(doubts).toEqual([]);
});

test('what the ear gave is told as it gave it: the share of belief shown beside a text is the ear\'s own', () => {
  expect(read(['No caries seen', 0.5], ['Two zero six nervous', 0.5]).utterance.heard?.map(({ posterior }) => posterior)).toEqual([0.5, 0.5]);
});

const asked = (text: string, share: number): readonly string[] => read([text, share], ['mumble', share / 2]).doubts.map(({ doubt, words }) => `${doubt}: ${words}`);

test('a phrase that made nothing, was heard badly and holds a word of the trade is asked about', () => {
  expect(asked('No T M D or malodour left', 0.02)).toEqual(['unread: No T M D or malodour left']);
  expect(asked('Enoch retained two on three zero three', 0.08)).toEqual(['unread: Enoch retained two on three zero three']);
});

test('talk is not asked about: neither what was heard well nor what holds no word of the trade', () => {
  expect(asked('What is left to examine', 0.9)).toEqual([]);
  expect(asked('The traffic was terrible this morning', 0.01)).toEqual([]);
  expect(asked('Fans feel pleased', 0.04)).toEqual([]);
  expect(asked('Do you ring it off', 0.05)).toEqual([]);
});

test('what is typed or scripted is not heard badly', () => {
  expect(parse({ id: 'w/1', reader: 'typed', hypotheses: [{ text: 'Enoch retained two on three zero three', logProb: 0, words: 'Enoch retained two on three zero three'.split(' ').map((w) => ({ w })) }] }, emptyContext()).doubts).toEqual([]);
});
