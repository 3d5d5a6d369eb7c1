/** Who looks for the next word pauses as well (common practice, no source): one thing is said all the same, and what two say stays two. */
import { expect, test } from 'vitest';
import { emptyContext, mayEnd, parseText, type Parsed } from '../../parser/index.ts';
import { bare } from '../match.ts';

const read = (text: string): Parsed => parseText('h/1', text, emptyContext());
const items = ({ items: all }: Parsed): readonly unknown[] => all.map((item) => bare(item));

test.each([
  'crepitus in the left jaw, joint',
  'recheck two ten, in three months',
  'her breath, is terrible',
  "can't, rule out a fracture of two oh nine",
  'two eleven marked focal, overgrowth',
  'took two mil, off the ramp on three eleven',
])('%s: as without the pause', (paused) => {
  const heard = read(paused);
  expect(items(heard)).toEqual(items(read(paused.replace(',', ''))));
  expect(heard.items.length).toBe(1);
  expect(heard.utterance.words.map(({ w }) => w).join(' ')).toBe(paused);
});

test('two things with a pause between them stay two', () => {
  const [hook, ramp] = ['hook on one oh six', 'ramp on three eleven'];
  expect(items(read(`${hook}, ${ramp}`))).toEqual([...items(read(hook)), ...items(read(ramp))]);
  expect(items(read('no hooks, ramp on four oh six'))).toEqual([...items(read('no hooks')), ...items(read('ramp on four oh six'))]);
  expect(read('good, upper left now').items).toEqual([]);
});

test('nobody ends behind "the", before "is level" or inside "this morning"', () => {
  const at = (text: string): boolean => {
    const [before = '', behind = ''] = text.split(' | ');
    return mayEnd([...before.split(' '), ...behind.split(' ')], before.split(' ').length);
  };
  expect(['looked at the | tongue', 'incisors | are level', 'seen this | morning', 'the tongue | side'].map(at)).toEqual([
    false,
    false,
    false,
    false,
  ]);
  expect(['incisors level | no overjet', 'seen him | this morning', 'was it loose | is it still'].map(at)).toEqual([true, true, true]);
});
