/** Why the records could not be read or written, in words for a person: what happened, what is safe, what to do. */
export type StoreErrorCode = 'locked' | 'disk-full' | 'damaged' | 'newer' | 'missing' | 'stale' | 'erased' | 'exists' | 'cannot-write';

export class StoreError extends Error {
  override readonly name = 'StoreError';
  constructor(
    readonly code: StoreErrorCode,
    message: string,
    options?: { cause?: unknown },
  ) {
    super(message, options);
  }
}

/** Turns the database's own troubles into ours; anything else passes unchanged. */
export function plainly(error: unknown): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('SQLITE_FULL') || code === 'ENOSPC')
    return new StoreError(
      'disk-full',
      'The disk is full, so this was not saved. Everything saved before is safe. Make room on the disk, then try again.',
      { cause: error },
    );
  if (code.startsWith('SQLITE_BUSY'))
    return new StoreError(
      'locked',
      'The records are being written by another process. Nothing was changed. Close the other one, then try again.',
      { cause: error },
    );
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB')
    return new StoreError(
      'damaged',
      'The records file is damaged and was left untouched. Put back a backup of it, or copy the folder away and start with a new one.',
      { cause: error },
    );
  if (
    code.startsWith('SQLITE_IOERR') ||
    code.startsWith('SQLITE_READONLY') ||
    code.startsWith('SQLITE_CANTOPEN') ||
    code === 'EACCES' ||
    code === 'EROFS'
  )
    return new StoreError(
      'cannot-write',
      'The data folder cannot be used, so nothing was saved. See that the disk is present and that this user may write there.',
      { cause: error },
    );
  return error;
}
export function asStoreError<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw plainly(error);
  }
}
