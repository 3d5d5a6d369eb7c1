import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { differing } from '../../web/check/differs.ts';

describe('where readings differ', () => {
  test('is told by the words that are not of all of them', () => {
    expect(differing(['with the rasp under water.', 'with the rasp on the water.'])).toEqual([
      { before: 'with the rasp', own: 'under', after: 'water.' },
      { before: 'with the rasp', own: 'on the', after: 'water.' },
    ]);
    expect(differing(['309', '209'])).toEqual([
      { before: '', own: '309', after: '' },
      { before: '', own: '209', after: '' },
    ]);
    expect(differing(['no hook', 'hook'])).toEqual([
      { before: '', own: 'no', after: 'hook' },
      { before: '', own: '', after: 'hook' },
    ]);
  });
  test('one reading differs from nothing, and none are none', () => {
    expect(differing(['hook'])).toEqual([{ before: '', own: 'hook', after: '' }]);
    expect(differing([])).toEqual([]);
  });
  test('no word is lost, and none of all is called its own at an end', () => {
    const words = fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1, maxLength: 8 }).map((all) => all.join(' '));
    fc.assert(
      fc.property(fc.array(words, { minLength: 2, maxLength: 4 }), (readings) => {
        const parts = differing(readings);
        expect(parts.map(({ before, own, after }) => [before, own, after].filter((part) => part !== '').join(' '))).toEqual(readings);
        const heads = new Set(parts.map(({ own }) => own.split(' ')[0]));
        expect(heads.size > 1 || parts.some(({ own }) => own === '') || new Set(readings).size === 1).toBe(true);
      }),
    );
  });
});
