import { expect, test } from 'vitest';
import { parseText } from '../../parser/index.ts';
import { commands } from '../../parser/lexicon/commands.ts';
import { afterStrike } from '../parser/corpus.ts';
import { shortest } from '../../parser/lexicon/shortest.ts';

test('what the page offers to say is plain words', () => {
  expect(shortest('finish [(this|the)] exam')).toBe('finish exam');
  expect(shortest('[no] what have i (left [out]|not (done|covered)) [yet]')).toBe('what have i left');
  for (const { say } of Object.values(commands)) for (const form of say) expect(shortest(form)).toMatch(/^[a-z' ]+$/);
});
test('and steers when it is said', () => {
  // An answer and a correction need something to answer or correct; a note is an item.
  for (const [id, { say }] of Object.entries(commands).filter(([id]) => !['answer', 'amend', 'note', 'resume'].includes(id))) {
    for (const form of say)
      expect([form, parseText('e:1', shortest(form), afterStrike).commands.map((c) => c.command)]).toEqual([form, [id]]);
  }
});
