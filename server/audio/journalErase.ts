/** Erasing one stretch of an exam's sound (words that were moved to another exam and erased there). */
import { open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { takeLock } from './journalLock.ts';
import { encodeRecord, HEAD, scan } from './journalRecord.ts';

/**
 * Writes silence over samples [from, to), in place, and syncs. The clock and everything else stays.
 * A crash half way leaves a record that reads as damaged, never one that still sounds whole.
 * @throws AudioError `locked`
 */
export async function eraseStretch(dir: string, from: number, to: number): Promise<void> {
  const letGo = await takeLock(dir);
  try {
    const path = join(dir, 'sound.journal');
    const bytes = await readFile(path);
    const file = await open(path, 'r+');
    try {
      for (const part of scan(bytes).parts) {
        if (part.kind !== 'sound' || part.from >= to || part.from + part.samples <= from) continue;
        const sound = Int16Array.from({ length: part.samples }, (_, i) =>
          part.from + i >= from && part.from + i < to ? 0 : bytes.readInt16LE(part.offset + HEAD + 2 * i),
        );
        const record = encodeRecord(part, sound);
        await file.write(record, 0, record.length, part.offset);
      }
      await file.datasync();
    } finally {
      await file.close();
    }
  } finally {
    await letGo();
  }
}
