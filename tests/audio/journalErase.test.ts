import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openJournal, viewJournal } from '../../server/audio/journal.ts';
import { eraseStretch } from '../../server/audio/journalErase.ts';

test('one stretch becomes silence on the disk itself; the clock and all around it stays', async () => {
  const dir = await mkdtemp(join(tmpdir(), 'quidnote-erase-'));
  const journal = await openJournal(dir);
  for (const sequence of [0, 1, 2]) await journal.append({ epoch: 1, sequence, samples: new Int16Array(100).fill(1000 + sequence) });
  await expect(eraseStretch(dir, 50, 250)).rejects.toMatchObject({ code: 'locked' });
  await journal.close();
  await eraseStretch(dir, 50, 250);
  const view = await viewJournal(dir);
  expect(view.length()).toBe(300);
  expect(view.parts().map((part) => part.kind)).toEqual(['sound', 'sound', 'sound']);
  const read = Array.from(await view.read(0, 300), (v) => Math.round(v * 32768));
  await view.close();
  expect(read.slice(0, 50).every((v) => Math.abs(v - 1000) <= 1)).toBe(true);
  expect(read.slice(50, 250).every((v) => v === 0)).toBe(true);
  expect(read.slice(250).every((v) => Math.abs(v - 1002) <= 1)).toBe(true);
  const bytes = await readFile(join(dir, 'sound.journal'));
  const wanted = Buffer.alloc(2);
  wanted.writeInt16LE(1001);
  expect(bytes.includes(Buffer.concat([wanted, wanted, wanted]))).toBe(false);
  await rm(dir, { recursive: true, force: true });
});
