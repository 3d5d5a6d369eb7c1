/** A rule that is not run because nothing it needs was said would have changed nothing: every third gold row, read with every rule awake. */
import { expect, test, vi } from 'vitest';
import type { Reword, Rewording } from '../../parser/grammar/said.ts';
import { emptyContext, parseText } from '../../parser/index.ts';
import { goldRoot, rowsOf } from './corpus.ts';

test('rules that sleep would have changed nothing', { timeout: 120_000 }, async () => {
  vi.resetModules();
  vi.doMock('../../parser/grammar/said.ts', async (original) => ({
    ...(await original<object>()),
    woken: (table: readonly { readonly rule: unknown }[]) => () => table.map(({ rule }) => rule),
    inOrder:
      (table: readonly Rewording[]): Reword =>
      (tokens) =>
        table.reduce((said, { rule }) => rule(said), tokens),
  }));
  const awake = await import('../../parser/index.ts');
  expect(awake.parseText).not.toBe(parseText);
  const phrases = rowsOf(goldRoot).flatMap(({ lines }, i) => (i % 3 === 0 ? lines.map(({ say }) => say) : []));
  const differ = phrases.filter(
    (text) => JSON.stringify(parseText('t', text, emptyContext())) !== JSON.stringify(awake.parseText('t', text, awake.emptyContext())),
  );
  expect(differ, 'say in the table of these rules (read.ts, refine.ts, work.ts) what they need').toEqual([]);
});
