/**
 * The audio journal of one exam: an append-only file of 16 kHz 16-bit sound and of gaps, safe at every byte.
 * The exam's clock is its samples: a gap has its length on it, and reads as silence.
 */
import type { FileHandle } from 'node:fs/promises';
import { chmod, mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { AudioError } from './audioError.ts';
import { takeLock } from './journalLock.ts';
import { endOf, readRange } from './journalRead.ts';
import type { Part } from './journalRecord.ts';
import { scan } from './journalRecord.ts';
import type { Disk } from './journalWriter.ts';
import { writer } from './journalWriter.ts';
import { to16 } from './wav.ts';

export type { Part, PartKind } from './journalRecord.ts';

export type SoundChunk = {
  /** Which run of the stream: it grows when the sender starts anew. */
  readonly epoch: number;
  /** 0, 1, 2 ... within an epoch. */
  readonly sequence: number;
  readonly samples: Int16Array;
};

export type JournalView = {
  /** Samples of the exam so far, gaps included. */
  length(): number;
  /** Sound and gaps, in order. */
  parts(): readonly Part[];
  /** Samples in [from, to), within the exam; -1 to 1; silence where there is a gap. */
  read(from: number, to: number): Promise<Float32Array>;
  close(): Promise<void>;
};

export type Journal = JournalView & {
  /**
   * Resolves when the chunk is on the disk (at most a second later), with its first sample in the exam.
   * A chunk that is there already is dropped, and says so.
   * @throws AudioError `out-of-order` (chunks before it are missing: send those, or record the loss), `no-space`, `closed`
   */
  append(chunk: SoundChunk): Promise<{ readonly at: number; readonly duplicate: boolean }>;
  /** Records that sound is missing: a pause that was asked for, or a loss, with the number that the next chunk will have. */
  gap(gap: { readonly kind: 'pause' | 'lost'; readonly samples: number; readonly epoch?: number; readonly next?: number }): Promise<void>;
  /** The chunk to be sent next. */
  expected(): { readonly epoch: number; readonly sequence: number };
};

const SOUND = 'sound.journal',
  TOMBSTONE = 'erased.json';

/**
 * Opens an exam's journal for writing, and makes it where there is none. What a crash tore off the end is cut away: it was never acknowledged.
 * @throws AudioError `locked`, `erased`
 */
export async function openJournal(dir: string, wrap: (file: FileHandle) => Disk = (file) => file): Promise<Journal> {
  await mkdir(dir, { recursive: true, mode: 0o700 });
  await chmod(dir, 0o700);
  await refuseErased(dir);
  const letGo = await takeLock(dir);
  try {
    const path = join(dir, SOUND);
    const file = await open(path, 'a+', 0o600);
    const { parts, whole } = scan(await readFile(path));
    if ((await file.stat()).size > whole) await file.truncate(whole);
    await syncFolder(dir);
    return writer(wrap(file), parts, letGo);
  } catch (error) {
    await letGo();
    throw error;
  }
}

/** Opens an exam's journal for listening only, also while it is written. @throws AudioError `missing`, `erased` */
export async function viewJournal(dir: string): Promise<JournalView> {
  await refuseErased(dir);
  const path = join(dir, SOUND);
  if (!(await exists(path))) throw new AudioError('missing', 'There is no sound kept for this exam.');
  const file = await open(path, 'r');
  const { parts } = scan(await readFile(path));
  return {
    length: () => endOf(parts),
    parts: () => parts,
    read: (from, to) => readRange(file, parts, from, to),
    close: () => file.close(),
  };
}

/**
 * Erases an exam's sound for good and leaves a tombstone without words. Erasing twice is no error.
 * @param erasedAt ISO time, for the tombstone
 */
export async function eraseJournal(dir: string, erasedAt: string): Promise<void> {
  await mkdir(dir, { recursive: true, mode: 0o700 });
  const letGo = await takeLock(dir);
  try {
    const tombstone = join(dir, TOMBSTONE);
    if (!(await exists(tombstone))) {
      const file = await open(`${tombstone}.part`, 'w', 0o600);
      try {
        await file.writeFile(JSON.stringify({ erasedAt }));
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(`${tombstone}.part`, tombstone);
    }
    await rm(join(dir, SOUND), { force: true });
    await syncFolder(dir);
  } finally {
    await letGo();
  }
}

/** Samples in -1 to 1 as a chunk holds them. */
export const toInt16 = (samples: Float32Array): Int16Array => Int16Array.from(samples, to16);

async function refuseErased(dir: string): Promise<void> {
  if (await exists(join(dir, TOMBSTONE))) throw new AudioError('erased', 'The sound of this exam was erased.');
}

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return false;
      throw error;
    },
  );

/** A file's name is only safe once its folder is synced. */
async function syncFolder(dir: string): Promise<void> {
  const folder = await open(dir, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
