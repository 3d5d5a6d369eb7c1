/** The cases themselves are tried: an expectation that no record could hold would score the grammar for nothing. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { commandIds } from '../../parser/lexicon/commands.ts';
import { doubtKinds } from '../../parser/contract/doubt.ts';
import { Item } from '../../parser/contract/item.ts';
import { rowsOf } from '../parser/corpus.ts';

const fixtures = join(import.meta.dirname, '../../fixtures');
const common = { id: 'x', evidence: { utterance: 'u', words: [], rules: [] } };
const defaults = { presence: 'present', when: 'now', place: null };
/** A field left open ("*") is taken out before the item is tried. */
const closed = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(closed);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, v]) => v !== '*')
      .map(([k, v]) => [
        k,
        k === 'measures' && Array.isArray(v) ? v.map((m: object) => ({ what: 'width', ...(closed(m) as object) })) : closed(v),
      ]),
  );
};

describe.each(['held-out', 'gold/nothing', 'gold/exams', 'gold/found'])('%s', (folder) => {
  const rows = rowsOf(join(fixtures, folder));
  test('expects only what the contract can hold', () => {
    const faults = rows.flatMap(({ file, lines }) =>
      lines.flatMap(({ expect: e }, line) => [
        ...(Array.isArray(e.items) ? e.items : []).flatMap((item, i) => {
          const parsed = Item.safeParse({
            ...defaults,
            ...common,
            ...(item.kind === 'fact' ? { said: '' } : {}),
            ...(closed(item) as object),
          });
          const open = (name: unknown): boolean =>
            JSON.stringify((item as unknown as Record<string, unknown>)[String(name)])?.includes('"*"') ?? false;
          return parsed.success || parsed.error.issues.every(({ path }) => open(path[0]))
            ? []
            : [`${file} line ${line} item ${i}: ${parsed.error.issues[0]?.path.join('.')} ${parsed.error.issues[0]?.message}`];
        }),
        ...(e.commands ?? [])
          .filter((c) => !(commandIds as readonly unknown[]).includes(c['command']))
          .map((c) => `${file}: command ${String(c['command'])}`),
        ...(e.doubts ?? [])
          .filter((d) => !(doubtKinds as readonly unknown[]).includes(d['doubt']))
          .map((d) => `${file}: doubt ${String(d['doubt'])}`),
      ]),
    );
    expect(faults).toEqual([]);
  });
  test('asks no phrase twice in the same context', () => {
    const keys = rows.map(({ said, given }) => `${said} ${JSON.stringify(given ?? {})}`);
    expect(keys.filter((k, i) => keys.indexOf(k) !== i).length).toBe(0);
  });
});

test('what is held out stands nowhere in the gold corpus', () => {
  const gold = new Set(rowsOf(join(fixtures, 'gold')).flatMap(({ lines }) => (lines.length === 1 ? lines.map(({ say }) => say) : [])));
  expect(
    rowsOf(join(fixtures, 'held-out'))
      .filter(({ said }) => gold.has(said))
      .map(({ file }) => file),
  ).toEqual([]);
});
