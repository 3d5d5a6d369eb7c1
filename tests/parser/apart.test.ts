import { expect, test } from 'vitest';
import { soundsApart } from '../../parser/index.ts';

test.each([
  ['one oh six hook four millimetres', '106 hook 4mm'],
  ['three ten', '310'],
  ['four eleven', '411'],
  ['grade one point two', 'grade 1.2'],
  ['twenty five', '25'],
])('%s and %s sound nearly the same', (one, other) => {
  expect(soundsApart(one, other)).toBeLessThan(0.1);
});
test('the nearer in sound, the nearer; nothing is far from everything', () => {
  expect(soundsApart('rostral hook', 'roster hook')).toBeLessThan(soundsApart('rostral hook', 'wolf tooth'));
  expect(soundsApart('hook', '')).toBeGreaterThan(0.5);
});
