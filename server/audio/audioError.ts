/** Why a recording or a journal could not be used, in words for a person. */
export type AudioErrorCode =
  | 'missing'
  | 'empty'
  | 'not-audio'
  | 'unsupported'
  | 'truncated'
  | 'damaged'
  | 'silent'
  | 'no-space'
  | 'locked'
  | 'closed'
  | 'out-of-order'
  | 'erased';

export class AudioError extends Error {
  override readonly name = 'AudioError';
  readonly code: AudioErrorCode;
  constructor(code: AudioErrorCode, message: string, options?: { cause?: unknown }) {
    super(message, options);
    this.code = code;
  }
}
