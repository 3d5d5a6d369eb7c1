/** Stretches of capture and what lies between them: the journal and the voice activity are the real ones; nobody speaks, so the ear is never asked. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { earOf, type Ear } from '../../server/app/ear.ts';
import { noHeader } from '../../server/app/exams.ts';
import { openJournals, type Journals } from '../../server/app/journals.ts';
import { now } from '../../server/app/now.ts';
import { openSittings, type Sittings } from '../../server/app/sittings.ts';
import { read } from '../../server/app/understand.ts';
import { openStore, type Store } from '../../server/records/index.ts';
import { scriptedEngine } from '../../server/speech/scripted.ts';

const rate = 16_000;
let dir: string, store: Store, journals: Journals, sittings: Sittings;
/** Samples that voice activity was run over. */
let listened = 0;

const open = (): void => {
  const ear = earOf(scriptedEngine([]), inject('weights').vad);
  const counting: Ear = {
    ...ear,
    segmenter: async (from) => {
      const inner = await ear.segmenter(from);
      return {
        ...inner,
        push: (samples) => {
          listened += samples.length;
          return inner.push(samples);
        },
      };
    },
  };
  store = openStore(dir);
  journals = openJournals(dir);
  sittings = openSittings(store, journals, counting, read);
};
const close = async (): Promise<void> => {
  await sittings.closeAll();
  store.close();
};
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'quidnote-epoch-'));
  open();
  store.createExam('e1', noHeader, 'person', now());
});
afterEach(async () => {
  await close();
  rmSync(dir, { recursive: true, force: true });
});

/** Quarter seconds of quiet, numbered. Sent without waiting, as a page does. */
const send = async (exam: string, epoch: number, seconds: number, from = 0): Promise<void> => {
  const { sitting } = await sittings.of(exam);
  await Promise.all(
    Array.from({ length: seconds * 4 }, (_, n) =>
      sitting.sound({ epoch, sequence: from + n, samples: new Int16Array(rate / 4), ownVoiceMs: 0 }, n === 0),
    ),
  );
};
const gaps = (exam: string) =>
  journals.view(exam, async (journal) =>
    journal
      .parts()
      .filter(({ kind }) => kind !== 'sound')
      .map(({ kind, from, samples }) => [kind, from / rate, samples / rate]),
  );

test('a page that was away leaves its absence on the clock of the exam, in the journal and in the draft', async () => {
  await send('e1', 1000, 5);
  // Two seconds after the first stretch ended.
  await send('e1', 1007, 3);
  expect(await gaps('e1')).toEqual([['lost', 5, 2]]);
  expect(await journals.view('e1', async (journal) => journal.length() / rate)).toBe(10);
  expect(sittings.draft('e1').gaps).toEqual([{ at: [5, 7], why: 'lost' }]);
});

test('sound of an older stretch that comes late, and the newer one right behind it, leave no time between them', async () => {
  await send('e1', 1000, 2);
  await Promise.all([send('e1', 1000, 3, 8), send('e1', 1005, 2)]);
  expect(await gaps('e1')).toEqual([]);
  expect(await journals.view('e1', async (journal) => journal.length() / rate)).toBe(7);
});

test('numbers that are missing at the head of a new stretch are lost sound as well', async () => {
  await send('e1', 1000, 2);
  await send('e1', 1005, 1, 4);
  expect(await gaps('e1')).toEqual([
    ['lost', 2, 3],
    ['lost', 5, 1],
  ]);
  expect(sittings.draft('e1').gaps).toEqual([{ at: [2, 6], why: 'lost' }]);
});

test('while paused it is part of the pause', async () => {
  await send('e1', 1000, 2);
  const { sitting } = await sittings.of('e1');
  await sitting.live.command('pause', 'person');
  await send('e1', 1006, 1);
  await sitting.live.command('resume', 'person');
  await send('e1', 1006, 1, 4);
  expect((await gaps('e1'))[0]).toEqual(['pause', 2, 4]);
  expect(sittings.draft('e1').gaps).toEqual([{ at: [2, 7], why: 'pause' }]);
});

test('after a change of horse and back nothing is missing: what was said meanwhile lies in the other journal', async () => {
  await send('e1', 1000, 2);
  const { sitting } = await sittings.of('e1');
  await sitting.live.command('next-horse', 'person', 'Teasel');
  const other = sitting.live.draft().id;
  await send(other, 1002, 3);
  await sitting.live.command('bring-back', 'person');
  expect(sitting.live.draft().id).toBe('e1');
  await send('e1', 1005, 1);
  expect(await gaps('e1')).toEqual([]);
});

test('a draft that ends in a long silence is listened to once after a start, not at every start', async () => {
  await send('e1', 1000, 6);
  await close();
  listened = 0;
  open();
  await sittings.of('e1');
  expect(listened).toBe(6 * rate);
  await close();
  listened = 0;
  open();
  await sittings.of('e1');
  expect(listened).toBe(0);
  expect(sittings.draft('e1')).toMatchObject({ listenedTo: 6, unread: [] });
});

test('a gap at the end is passed over, not listened to', async () => {
  await send('e1', 1000, 1);
  await send('e1', 4600, 1);
  await close();
  listened = 0;
  open();
  await sittings.of('e1');
  expect(listened).toBe(2 * rate);
  expect(sittings.draft('e1').listenedTo).toBe(3601);
});
