import { appendFile, mkdtemp, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Journal } from '../../server/audio/journal.ts';
import { eraseJournal, openJournal, toInt16, viewJournal } from '../../server/audio/journal.ts';
import { HEAD } from '../../server/audio/journalRecord.ts';

let home: string, dir: string, sound: string;

beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'quidnote-journal-'));
  dir = join(home, 'exam');
  sound = join(dir, 'sound.journal');
});
afterEach(() => rm(home, { recursive: true, force: true }));

const chunk = (sequence: number, length = 40, epoch = 0) => ({
  epoch,
  sequence,
  samples: Int16Array.from({ length }, (_, i) => 100 * (sequence + 1) + i),
});
const using = async <T>(work: (journal: Journal) => Promise<T>): Promise<T> => {
  const journal = await openJournal(dir);
  try {
    return await work(journal);
  } finally {
    await journal.close();
  }
};
/** The chunks' own numbers, back from the samples. */
const values = (samples: Float32Array): number[] => [...samples].map((sample) => Math.round(sample * 32_768));

test('what was acknowledged is read back, across chunks, after a new start', async () => {
  await using(async (journal) => {
    const acks = await Promise.all([0, 1, 2].map((n) => journal.append(chunk(n))));
    expect(acks).toEqual([0, 40, 80].map((at) => ({ at, duplicate: false })));
  });
  await using(async (journal) => {
    expect(journal.length()).toBe(120);
    expect(journal.expected()).toEqual({ epoch: 0, sequence: 3 });
    expect(values(await journal.read(38, 42))).toEqual([138, 139, 200, 201]);
    expect(await journal.read(110, 500)).toHaveLength(10);
  });
});

test('a duplicate is acknowledged and not written; a jump is refused; a recorded loss lets it go on', async () => {
  await using(async (journal) => {
    await journal.append(chunk(0));
    expect(await journal.append(chunk(0))).toEqual({ at: 0, duplicate: true });
    await expect(journal.append(chunk(3))).rejects.toMatchObject({ name: 'AudioError', code: 'out-of-order' });
    await journal.gap({ kind: 'lost', samples: 80, next: 3 });
    expect(await journal.append(chunk(3))).toEqual({ at: 120, duplicate: false });
    expect(values(await journal.read(38, 124))).toEqual([138, 139, ...Array<number>(80).fill(0), 400, 401, 402, 403]);
    expect(journal.parts().map(({ kind, samples }) => [kind, samples])).toEqual([
      ['sound', 40],
      ['lost', 80],
      ['sound', 40],
    ]);
  });
});

test('a new epoch begins at 0; chunks of the old one that are known stay duplicates', async () => {
  await using(async (journal) => {
    await journal.append(chunk(0));
    await journal.append(chunk(0, 10, 1));
    await expect(journal.append(chunk(0))).resolves.toMatchObject({ duplicate: true });
    await expect(journal.append(chunk(1, 10, 2))).rejects.toMatchObject({ code: 'out-of-order' });
    expect(journal.expected()).toEqual({ epoch: 1, sequence: 1 });
  });
});

test('cut at every byte, it opens with the whole chunks before the cut and goes on from there', async () => {
  await using((journal) => Promise.all([0, 1, 2].map((n) => journal.append(chunk(n, 8)))));
  const whole = await readFile(sound);
  const record = HEAD + 16;
  expect(whole.length).toBe(3 * record);
  for (let cut = 0; cut <= whole.length; cut += 1) {
    await writeFile(sound, whole.subarray(0, cut));
    const journal = await openJournal(dir);
    const kept = Math.floor(cut / record);
    expect(journal.length()).toBe(8 * kept);
    expect(journal.expected().sequence).toBe(kept);
    // Closing syncs at once, which spares the wait for a group.
    const [acknowledged] = await Promise.all([journal.append(chunk(kept, 8)), journal.close()]);
    expect(acknowledged).toEqual({ at: 8 * kept, duplicate: false });
    const view = await viewJournal(dir);
    expect(values(await view.read(0, Infinity))).toEqual(Array.from({ length: kept + 1 }, (_, n) => [...chunk(n, 8).samples]).flat());
    await view.close();
  }
}, 120_000);

test('rubbish after the end is cut away', async () => {
  await using((journal) => journal.append(chunk(0)));
  const { size } = await stat(sound);
  await appendFile(sound, Buffer.from('QNJ1 and then nothing that makes sense, whatever the disk held here before'));
  await using(async (journal) => expect(journal.length()).toBe(40));
  expect((await stat(sound)).size).toBe(size);
});

test('a spoilt byte never passes for sound, and costs no other chunk', async () => {
  await using((journal) => Promise.all([0, 1, 2].map((n) => journal.append(chunk(n, 8)))));
  const whole = await readFile(sound);
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 0, max: whole.length - 1 }), fc.integer({ min: 1, max: 255 }), async (at, flip) => {
      const spoilt = Buffer.from(whole);
      spoilt[at] = (spoilt[at] as number) ^ flip;
      await writeFile(sound, spoilt);
      const bad = Math.floor(at / (HEAD + 16));
      const view = await viewJournal(dir);
      const heard = values(await view.read(0, 24));
      await view.close();
      const expected = [0, 1, 2].flatMap((n) => (n === bad ? Array<number>(8).fill(0) : [...chunk(n, 8).samples]));
      expect(heard).toEqual(bad === 2 ? expected.slice(0, 16) : expected);
    }),
    { numRuns: 60 },
  );
});

test('any mix of chunks and gaps reads back as it was given', async () => {
  const parts = fc.array(
    fc.oneof(fc.record({ gap: fc.integer({ min: 0, max: 300 }) }), fc.record({ sound: fc.int16Array({ maxLength: 200 }) })),
    { maxLength: 12 },
  );
  await fc.assert(
    fc.asyncProperty(parts, async (given) => {
      await rm(dir, { recursive: true, force: true });
      let sequence = 0;
      await using(async (journal) => {
        const done = given.map((part) =>
          'gap' in part
            ? journal.gap({ kind: 'pause', samples: part.gap })
            : journal.append({ epoch: 0, sequence: sequence++, samples: part.sound }),
        );
        await Promise.all(done);
      });
      const expected = given.flatMap((part) => ('gap' in part ? Array<number>(part.gap).fill(0) : [...part.sound]));
      await using(async (journal) => expect(values(await journal.read(0, Infinity))).toEqual(expected));
    }),
    { numRuns: 15 },
  );
}, 120_000);

test('one live writer; a lock left by a dead process is taken over; nobody else may read the files', async () => {
  const journal = await openJournal(dir);
  await expect(openJournal(dir)).rejects.toMatchObject({ code: 'locked' });
  await journal.append(chunk(0));
  expect((await stat(dir)).mode & 0o777).toBe(0o700);
  expect((await stat(sound)).mode & 0o777).toBe(0o600);
  await journal.close();
  // Above the largest process number that Linux gives out.
  await writeFile(join(dir, 'writer.lock'), '4194999');
  await using(async (again) => expect(again.length()).toBe(40));
  // A live process that is not this one.
  await writeFile(join(dir, 'writer.lock'), String(process.ppid));
  await expect(openJournal(dir)).rejects.toMatchObject({ code: 'locked' });
});

test('a full disk refuses the chunk, keeps what was acknowledged, and takes the chunk once there is room', async () => {
  let room = 3 * (HEAD + 80) - 10;
  const small = (file: FileHandle) =>
    ({
      read: file.read.bind(file),
      datasync: file.datasync.bind(file),
      truncate: file.truncate.bind(file),
      close: file.close.bind(file),
      // A real disk takes what still fits, and fails on the rest.
      write: async (record: Buffer, from: number, length: number) => {
        if (room === 0) throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
        const written = await file.write(record, from, Math.min(room, length));
        room -= written.bytesWritten;
        return written;
      },
    }) as never;
  const journal = await openJournal(dir, small);
  await journal.append(chunk(0));
  await journal.append(chunk(1));
  await expect(journal.append(chunk(2))).rejects.toMatchObject({ code: 'no-space' });
  expect(journal.expected()).toEqual({ epoch: 0, sequence: 2 });
  room = 10_000;
  expect(await journal.append(chunk(2))).toEqual({ at: 80, duplicate: false });
  await journal.close();
  await using(async (again) => expect(values(await again.read(0, 120))).toEqual([0, 1, 2].flatMap((n) => [...chunk(n).samples])));
});

test('a failed sync acknowledges nothing that it covered', async () => {
  let broken = true;
  const flaky = (file: FileHandle) =>
    ({
      read: file.read.bind(file),
      write: file.write.bind(file),
      truncate: file.truncate.bind(file),
      close: file.close.bind(file),
      datasync: async () => {
        if (broken) throw Object.assign(new Error('input/output error'), { code: 'EIO' });
        await file.datasync();
      },
    }) as never;
  const journal = await openJournal(dir, flaky);
  const both = await Promise.allSettled([journal.append(chunk(0)), journal.append(chunk(1))]);
  expect(both.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  broken = false;
  expect(await journal.append(chunk(0))).toEqual({ at: 0, duplicate: false });
  await journal.close();
});

test('erased sound is gone, the tombstone holds no words, and the exam cannot be written again', async () => {
  await using((journal) => journal.append(chunk(0)));
  await eraseJournal(dir, '2026-03-04T09:12:00Z');
  await eraseJournal(dir, '2026-03-05T09:12:00Z');
  await expect(stat(sound)).rejects.toMatchObject({ code: 'ENOENT' });
  expect(JSON.parse(await readFile(join(dir, 'erased.json'), 'utf8'))).toEqual({ erasedAt: '2026-03-04T09:12:00Z' });
  await expect(openJournal(dir)).rejects.toMatchObject({ code: 'erased' });
  await expect(viewJournal(dir)).rejects.toMatchObject({ code: 'erased' });
});

test('closing twice is one closing, and nothing is taken after it', async () => {
  const journal = await openJournal(dir);
  await Promise.all([journal.close(), journal.close()]);
  await expect(journal.append(chunk(0))).rejects.toMatchObject({ code: 'closed' });
});

test('samples become 16-bit numbers, the loudest clipped', () => {
  expect([...toInt16(Float32Array.of(0, 0.5, -1, 1, 2, NaN))]).toEqual([0, 16_384, -32_768, 32_767, 32_767, 0]);
});

test('sizes that a truncated disk leaves are no crash', async () => {
  await using((journal) => journal.append(chunk(0)));
  await truncate(sound, HEAD - 1);
  const view = await viewJournal(dir);
  expect(view.length()).toBe(0);
  await view.close();
});
