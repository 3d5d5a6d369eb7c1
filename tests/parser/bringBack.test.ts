/** Record contract, section 11.12: what is brought back comes with its item, which was said and weighed before and keeps its id. */
import { expect, test } from 'vitest';
import { ownItems } from '../../parser/contract/draft.ts';
import { emptyContext, parse, parseText } from '../../parser/index.ts';
import { after } from './corpus.ts';

const hook = parseText('e/1', 'hook on one oh six', emptyContext());
const struck = after(after(emptyContext(), hook), parseText('e/2', 'scratch that', after(emptyContext(), hook)));

test('the item keeps its id and its own words; the phrase made none', () => {
  const back = parseText('e/3', 'bring that back', struck);
  expect(back.items).toEqual(hook.items);
  expect(ownItems(back)).toEqual([]);
  expect(after(struck, back).items).toEqual(hook.items);
});

test('a command that was not well heard asks nothing of the item that it brings back', () => {
  const heard = (text: string, logProb: number) => ({ text, logProb, words: text.split(' ').map((w) => ({ w })) });
  const back = parse({ id: 'e/3', reader: 'first', hypotheses: [heard('bring that back', -1), heard('bring that bag', -1.1)] }, struck);
  expect(back.commands).toMatchObject([{ command: 'bring-back' }]);
  expect(back.items).toEqual(hook.items);
  expect(back.doubts).toEqual([]);
});
