import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openStore } from '../../server/records/index.ts';
import { foldDraft } from '../../server/session/reduce.ts';

/** Kills a writing process once it has acknowledged `lines` lines, at no particular place. @returns what it had acknowledged */
const killed = (dir: string, run: string, lines: number): Promise<readonly string[]> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'tests/records/writer.ts', dir, run], { stdio: ['ignore', 'pipe', 'pipe'] });
    let out = '';
    let trouble = '';
    child.stderr.on('data', (part: Buffer) => {
      trouble += part.toString();
    });
    child.stdout.on('data', (part: Buffer) => {
      out += part.toString();
      if (out.split('\n').length > lines) child.kill('SIGKILL');
    });
    child.on('close', (_code, signal) =>
      signal === 'SIGKILL' ? resolve(out.split('\n').slice(0, -1)) : reject(new Error(`The writer ended by itself: ${trouble}`)),
    );
  });

test('killed at any moment, all that was acknowledged is there and nothing is half there', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'quidnote-crash-'));
  const acknowledged: string[] = [];
  for (const [run, lines] of [
    ['a', 3],
    ['b', 17],
    ['c', 40],
  ] as const) {
    acknowledged.push(...(await killed(join(dir, 'data'), run, lines)));
    const store = openStore(join(dir, 'data'));
    const rows = new Map(store.exams().map((row) => [row.id, row]));
    for (const line of acknowledged) {
      const [id, what] = line.split(' ') as [string, string];
      if (what === 'confirmed') expect(store.revision(id, 1).items).toHaveLength(24);
      else expect(store.events(id).length).toBeGreaterThanOrEqual(Number(what));
    }
    for (const row of rows.values()) {
      const draft = foldDraft(row.id, store.events(row.id));
      // Two phrases and the confirming go in one step each: never one without the other.
      expect(draft.utterances.length % 2).toBe(0);
      expect([row.items, row.state, row.revision]).toEqual([draft.items.length, draft.state, draft.revision]);
      expect(store.search({ horse: `Horse ${row.id}`, limit: 500 }).filter((hit) => hit.exam === row.id)).toHaveLength(
        draft.state === 'confirmed' ? 24 : 0,
      );
    }
    store.close();
  }
  expect(acknowledged.length).toBeGreaterThan(59);
  rmSync(dir, { recursive: true, force: true });
});
