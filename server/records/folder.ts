/** The data folder on disk: for its owner's eyes only, one writer at a time. */
import Database from 'better-sqlite3';
import { chmodSync, closeSync, existsSync, mkdirSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { asStoreError, StoreError } from './storeError.ts';

export type Db = Database.Database;
export const recordsFile = (dir: string): string => join(dir, 'records.sqlite');

/** Makes the folder (0700) and the file (0600); the write-ahead log beside it gets the file's mode from SQLite. */
export function prepareFolder(dir: string): void {
  asStoreError(() => {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
    chmodSync(dir, 0o700);
    touch(recordsFile(dir));
  });
}
function touch(file: string): void {
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
}

/**
 * One live writer a folder: a lock of the operating system on a small file, held while the store is open and
 * let go by the system itself when the process dies.
 * @returns what lets go of it; @throws StoreError `locked`
 */
export function takeLock(dir: string): () => void {
  const file = join(dir, 'writer.lock');
  asStoreError(() => touch(file));
  const lock = new Database(file, { timeout: 0 });
  try {
    lock.pragma('journal_mode = MEMORY');
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY'))
      throw new StoreError(
        'locked',
        'This data folder is in use by another running Quidnote. Nothing was changed. Stop that one first, or name another folder.',
        { cause: error },
      );
    throw error;
  }
  return () => lock.close();
}

/** Opens the database; `write: false` reads beside a live writer and changes nothing. */
export function openDatabase(dir: string, write: boolean): Db {
  if (!write && !existsSync(recordsFile(dir))) throw new StoreError('missing', 'There are no records in this folder yet.');
  return asStoreError(() => {
    const db = new Database(recordsFile(dir), { readonly: !write, timeout: 2000 });
    if (write) {
      db.pragma('journal_mode = WAL');
      db.pragma('synchronous = FULL');
      db.pragma('secure_delete = ON');
    }
    db.pragma('foreign_keys = ON');
    return db;
  });
}
