/** What can go wrong with the second reader; each message says what happened and what to do. The first reader works on. */
export type SecondReaderCode =
  | 'not-installed'
  | 'no-compiler'
  | 'build-failed'
  | 'bad-weights'
  | 'bad-checksum'
  | 'download-failed'
  | 'disk-full'
  | 'died'
  | 'hung'
  | 'closed';

/** There is no room: the disk, the user's share of it, or a limit on the size of a file. */
const full: ReadonlySet<unknown> = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);
export const isFull = (error: unknown): boolean => error instanceof Error && 'code' in error && full.has(error.code);
/** The same, in the words of a compiler. */
export const saysFull = (words: string): boolean => /no space left|quota exceeded|file too large|file size limit/i.test(words);

export class SecondReaderError extends Error {
  constructor(
    readonly code: SecondReaderCode,
    message: string,
  ) {
    super(message);
    this.name = 'SecondReaderError';
  }
}
