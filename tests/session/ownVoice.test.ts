import { describe, expect, test } from 'vitest';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { ownWords } from '../../server/session/ownVoice.ts';
import { withoutOwn } from '../../server/session/ownWordsOut.ts';

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
    for (const heard of ['', '...', 'one-oh-six hook', 'é ü'])
      expect(ownWords(said, heard.split(' '))).toHaveLength(heard.split(' ').length);
  });
});

describe('a phrase that lies wholly inside our own voice', () => {
  const inside = (heard: string, spoken: readonly string[] = said): string =>
    heard
      .split(' ')
      .filter((_, i, words) => !ownWords(spoken, words, true)[i])
      .join(' ');
  test.each([['three or nine'], ['one oh six book front for millimetres'], ['one oh five hook front'], ['no sure three oh nine']])(
    'is ours though numbers in it were misheard: "%s"',
    (heard) => expect(inside(heard)).toBe(''),
  );
  test.each([
    ['scratch that', 'scratch that'],
    ['two oh seven ramp', 'two oh seven ramp'],
    ['wave on the upper left', 'wave on the upper left'],
  ])('is a person\u2019s where it clearly differs: "%s"', (heard, theirs) => expect(inside(heard)).toBe(theirs));
  test('two teeth in a row are two numbers: ours goes, the other stays', () => {
    expect(inside('reduced two oh six two zero eight overlong today', ['Reduced two oh six.'])).toBe('two zero eight overlong today');
  });
});

describe('the rivals of what was heard', () => {
  const phrase = (...texts: readonly string[]): HeardPhrase => ({
    id: 'e1:1',
    reader: 'first',
    hypotheses: texts.map((text, n) => ({ text, logProb: -1 - n, words: text.split(' ').map((w) => ({ w })) })),
  });
  const voice = { spoken: ['Two oh eight. Overlong.'], inside: false };
  test('a weaker hypothesis never brings back what the best one knows as ours', () => {
    expect(withoutOwn(phrase('two oh eight overlong', 'two oh eight open ramp'), voice)?.hypotheses).toEqual([]);
  });
  test('rivals of a person\u2019s own words stay', () => {
    expect(
      withoutOwn(phrase('two oh eight overlong one oh six hook', 'two oh eight overlong one oh six book'), voice)?.hypotheses.map(
        (h) => h.text,
      ),
    ).toEqual(['one oh six hook', 'one oh six book']);
  });
});
