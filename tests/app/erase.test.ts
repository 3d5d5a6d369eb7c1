import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { eraseExam } from '../../server/app/erase.ts';
import { openJournals } from '../../server/app/journals.ts';
import { openStore } from '../../server/records/index.ts';
import { split } from '../../server/session/move.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { add } from '../records/exam.ts';
import { by, header, hook, said, when } from '../session/made.ts';

test('an exam that was split off is erased with its sound, which lies in the journal of the other; the other keeps its own', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'quidnote-erase-'));
  const store = openStore(dir);
  const journals = openJournals(dir);
  store.createExam('e1', header('Juniper'), by, when);
  const journal = await journals.open('e1');
  await journal.append({ epoch: 1, sequence: 0, samples: new Int16Array(16_000 * 3).fill(1000) });
  const draft = add(
    store,
    'e1',
    said('e1:0', 'one oh six hook', { items: [hook('106')] }, [0, 1]),
    said('e1:16000', 'two oh six hook', { items: [hook('206')] }, [1, 2]),
  );
  const moved = split(draft, 'e1:16000', 'e2', {}, { by, when })!;
  store.appendAll([
    { exam: 'e2', events: moved.into, draft: foldDraft('e2', moved.into), fresh: true },
    { exam: 'e1', events: moved.from, draft: moved.from.reduce(applyEvent, draft) },
  ]);
  await eraseExam(store, journals, 'e2', when);
  const loud = await journals.view('e1', async (view) =>
    [await view.read(0, 16_000), await view.read(16_000, 32_000), await view.read(32_000, 48_000)].map((part) =>
      part.every((v) => v !== 0),
    ),
  );
  expect(loud).toEqual([true, false, true]);
  expect(store.exams().find((row) => row.id === 'e2')!.erased).toBe(true);
  expect(foldDraft('e1', store.events('e1')).items).toHaveLength(1);
  await eraseExam(store, journals, 'e1', when);
  expect(existsSync(join(dir, 'sound', 'e1', 'sound.journal'))).toBe(false);
  await journals.closeAll();
  store.close();
  rmSync(dir, { recursive: true, force: true });
});
