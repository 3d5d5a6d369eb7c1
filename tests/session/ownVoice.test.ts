import { describe, expect, test } from 'vitest';
import { ownWords } from '../../server/session/ownVoice.ts';

const said = ['One oh six. Hook, front. Four millimetres.', 'Not sure: three oh nine, or two oh nine?'];
/** The heard words that are not ours. */
const left = (heard: string, spoken: readonly string[] = said): string => {
  const words = heard.split(' ');
  return words.filter((_, i) => !ownWords(spoken, words)[i]).join(' ');
};

describe('what is heard while our own voice sounds', () => {
  test.each([
    ['one oh six hook front four millimetres'],
    ['106 hook front 4 mm'],
    ['one zero six, hook, front, four mil'],
    ['hook front four millimetres not sure three oh nine or two oh nine'],
    ['oh six hook front'],
    ['hook'],
  ])('is ours: "%s"', (heard) => expect(left(heard)).toBe(''));

  test('a word misheard in the middle of ours is ours: nobody spoke it', () => {
    expect(left('one oh six hook front five millimetres')).toBe('');
    expect(left('one oh six look front four millimetres')).toBe('');
  });

  test.each([
    ['two oh seven ramp', 'two oh seven ramp'],
    ['one oh six hook front four millimetres two oh seven ramp', 'two oh seven ramp'],
    ['no one oh seven', 'no one oh seven'],
    ['scratch that', 'scratch that'],
    ['the second one', 'the second one'],
    ['wave on the upper left hook front four millimetres whoa steady', 'wave on the upper left whoa steady'],
    ['a hook on the two oh six', 'a hook on the two oh six'],
  ])('the person speaks over it: "%s"', (heard, theirs) => expect(left(heard)).toBe(theirs));

  test('when we said nothing, nothing is ours', () => expect(left('one oh six hook', [])).toBe('one oh six hook'));
  test('every word gets its answer, none is dropped', () => {
    for (const heard of ['', '...', 'one-oh-six hook', 'é ü']) expect(ownWords(said, heard.split(' '))).toHaveLength(heard.split(' ').length);
  });
});
