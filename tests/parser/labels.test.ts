/** How an item is read back: nothing that tells one place from another is left out. Common practice, no source. */
import { expect, test } from 'vitest';
import { emptyContext, parseText, say } from '../../parser/index.ts';

const readBack = (text: string): string =>
  parseText('t/1', text, emptyContext())
    .items.map((item) => say(item))
    .join(' ');

test('a part of one jaw keeps its jaw and its side', () => {
  expect(readBack('an ulcer on the lower lip')).toBe('Lower lip. Ulcer.');
  expect(readBack('an ulcer on the upper lip')).toBe('Upper lip. Ulcer.');
  expect(readBack('an ulcer on the lower lip and on the left bar')).toBe('Lower lip. Ulcer. Left bars. Ulcer.');
  expect(readBack('a cut on the left cheek')).toBe('Left cheek. Laceration.');
  expect(readBack('ulcers on both cheeks')).toBe('Cheek, both sides. Ulcer.');
  expect(readBack('an ulcer on the tongue')).toBe('Tongue. Ulcer.');
});
