/** What can go wrong with the second reader; each message says what happened and what to do. The first reader works on. */
export type SecondReaderCode = 'not-installed' | 'no-compiler' | 'build-failed' | 'bad-weights' | 'bad-checksum' | 'download-failed' | 'disk-full' | 'died' | 'hung' | 'closed';

export class SecondReaderError extends Error {
  constructor(readonly code: SecondReaderCode, message: string) {
    super(message);
    this.name = 'SecondReaderError';
  }
}
