/** The parts of the hearing bench that count: where two texts differ, and the list of a day. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayList } from '../bench/hearing/names.ts';
import { difference } from '../bench/hearing/parts.ts';

test('what differs is found between the words that stand in both', () => {
  expect(difference('one oh six rostral hook'.split(' '), 'one oh six rustle hook'.split(' '))).toEqual([
    { meant: 'rostral', heard: 'rustle' },
  ]);
  expect(difference('hook on one oh six'.split(' '), 'ocon one oh six'.split(' '))).toEqual([{ meant: 'hook on', heard: 'ocon' }]);
  expect(difference(['same'], ['same'])).toEqual([]);
});

test('the stretches that differ, put back in their places, make the other text', () => {
  const words = fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 8 });
  fc.assert(
    fc.property(words, words, (meant, heard) => {
      const parts = difference(meant, heard);
      const count = (side: 'meant' | 'heard'): number => parts.flatMap((part) => part[side].split(' ').filter(Boolean)).length;
      // What is left on either side is the same number of shared words.
      expect(meant.length - count('meant')).toBe(heard.length - count('heard'));
    }),
  );
});

test('the list of a day holds the name that is said, each name once, and is the same each time', () => {
  expect(dayList('x', 'Nimrod')).toContain('Nimrod');
  expect(new Set(dayList('x', 'Nimrod')).size).toBe(dayList('x', 'Nimrod').length);
  expect(dayList('x')).toEqual(dayList('x'));
});
