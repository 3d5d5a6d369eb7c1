/** The writing side of a journal: appends in order, syncs in groups, and rolls back what a full disk refused. */
import type { FileHandle } from 'node:fs/promises';
import { AudioError } from './audioError.ts';
import type { Journal } from './journal.ts';
import { endOf, readRange } from './journalRead.ts';
import type { Part, Placed } from './journalRecord.ts';
import { encodeRecord, recordBytes } from './journalRecord.ts';

/** What a journal needs of a disk; handed in so that a full one can be tried. */
export type Disk = Pick<FileHandle, 'write' | 'datasync' | 'truncate' | 'read' | 'close'>;

/** Chunks that come within this time share one sync. */
const GROUP_MS = 200;

type Waiting = { resolve(): void; reject(error: unknown): void };

/** @param found the parts that are on the disk already; @param letGo called once, after the file is closed */
export function writer(disk: Disk, found: readonly Placed[], letGo: () => Promise<void>): Journal {
  const parts: Placed[] = [...found];
  /** How many parts are known to be on the disk. */
  let synced = parts.length;
  let waiting: Waiting[] = [];
  let timer: NodeJS.Timeout | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let over: AudioError | undefined;
  let closing: Promise<void> | undefined;

  const inOrder = <T>(work: () => Promise<T>): Promise<T> => {
    const done = queue.then(() => {
      if (over !== undefined) throw over;
      return work();
    });
    queue = done.catch(() => undefined);
    return done;
  };
  const settle = (how: (one: Waiting) => void): void => {
    const all = waiting;
    waiting = [];
    all.forEach(how);
  };
  /** Back to what is surely on the disk: everybody who was not told otherwise has to send again. */
  const rollBack = async (cause: unknown): Promise<AudioError> => {
    parts.length = synced;
    const error = diskError(cause);
    try {
      await disk.truncate(fileLength(parts));
    } catch (second) {
      over = new AudioError(
        'closed',
        'The journal could not be mended after a failed write. What was acknowledged is safe; open the exam again.',
        { cause: second },
      );
    }
    settle(({ reject }) => reject(error));
    return error;
  };
  const syncNow = async (): Promise<void> => {
    clearTimeout(timer);
    timer = undefined;
    try {
      await disk.datasync();
    } catch (cause) {
      await rollBack(cause);
      return;
    }
    synced = parts.length;
    settle(({ resolve }) => resolve());
  };
  const nextSync = (): Promise<void> => {
    timer ??= setTimeout(() => {
      inOrder(syncNow).catch((error: unknown) => settle(({ reject }) => reject(error)));
    }, GROUP_MS);
    return new Promise((resolve, reject) => {
      waiting.push({ resolve, reject });
    });
  };
  const write = async (part: Part, sound?: Int16Array): Promise<void> => {
    const record = encodeRecord(part, sound);
    const offset = fileLength(parts);
    try {
      for (let done = 0; done < record.length;) done += (await disk.write(record, done, record.length - done)).bytesWritten;
    } catch (cause) {
      throw await rollBack(cause);
    }
    parts.push({ ...part, offset });
  };
  const expected = (): { epoch: number; sequence: number } => {
    const last = parts.at(-1);
    return last === undefined
      ? { epoch: 0, sequence: 0 }
      : { epoch: last.epoch, sequence: last.sequence + (last.kind === 'sound' ? 1 : 0) };
  };
  const isNext = (epoch: number, sequence: number): boolean => {
    const due = expected();
    return epoch === due.epoch ? sequence === due.sequence : sequence === 0 && (epoch > due.epoch || parts.length === 0);
  };

  return {
    length: () => endOf(parts),
    parts: () => parts,
    expected,
    read: (from, to) => readRange(disk, parts, from, to),
    async append({ epoch, sequence, samples }) {
      const { onDisk, ...placed } = await inOrder(async () => {
        const at = endOf(parts);
        if (isNext(epoch, sequence)) {
          await write({ kind: 'sound', epoch, sequence, from: at, samples: samples.length }, samples);
          return { at, duplicate: false, onDisk: nextSync() };
        }
        const known = parts.findLast((part) => part.kind === 'sound' && part.epoch === epoch && part.sequence === sequence);
        if (known !== undefined) return { at: known.from, duplicate: true, onDisk: nextSync() };
        const due = expected();
        throw new AudioError(
          'out-of-order',
          `Sound ${epoch}/${sequence} came where ${due.epoch}/${due.sequence} was due. Nothing is lost here: send it again from there.`,
        );
      });
      await onDisk;
      return placed;
    },
    async gap({ kind, samples, epoch, next }) {
      const { onDisk } = await inOrder(async () => {
        const due = expected();
        const inEpoch = epoch ?? due.epoch;
        await write({ kind, epoch: inEpoch, sequence: next ?? (inEpoch === due.epoch ? due.sequence : 0), from: endOf(parts), samples });
        return { onDisk: nextSync() };
      });
      await onDisk;
    },
    close: () =>
      (closing ??= (async () => {
        await inOrder(syncNow);
        over = new AudioError('closed', "This exam's journal is closed.");
        await disk.close();
      })().finally(letGo)),
  };
}

/** Bytes of a file that holds these parts; the last of them is never a damaged one, which has no record. */
function fileLength(parts: readonly Placed[]): number {
  const last = parts.at(-1);
  return last === undefined ? 0 : last.offset + recordBytes(last);
}

function diskError(cause: unknown): AudioError {
  const { code } = cause as NodeJS.ErrnoException;
  const full = code === 'ENOSPC' || code === 'EDQUOT' || code === 'EFBIG';
  return new AudioError(
    full ? 'no-space' : 'damaged',
    full
      ? 'The disk is full. What was acknowledged is safe; free some space and go on.'
      : `The sound could not be written (${code ?? 'unknown error'}). What was acknowledged is safe; check the disk.`,
    { cause },
  );
}
