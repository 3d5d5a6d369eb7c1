/** Any trouble as words for a person, and how bad it is. What was spoken or typed is never in it. */
import { AudioError } from '../audio/audioError.ts';
import { StoreError } from '../records/index.ts';
import { refusal, Refusal } from '../http/refusal.ts';

const statuses: Readonly<Record<string, number>> = {
  missing: 404,
  erased: 410,
  'disk-full': 507,
  'no-space': 507,
  locked: 409,
  stale: 409,
  exists: 409,
  closed: 409,
  'out-of-order': 409,
  empty: 422,
  'not-audio': 415,
  unsupported: 415,
  truncated: 422,
  damaged: 422,
  silent: 422,
  newer: 500,
  'cannot-write': 500,
};

/** @returns the refusal to answer with; an error of ours that nobody foresaw comes back as it is */
export function asRefusal(error: unknown): unknown {
  if (error instanceof AudioError || error instanceof StoreError) return refusal(statuses[error.code] ?? 500, error.code, error.message);
  return error;
}
/** For the socket, which has no status: always words. */
export function inWords(error: unknown): { code: string; message: string } {
  const plain = asRefusal(error);
  if (plain instanceof Refusal) return { code: plain.code, message: plain.message };
  return {
    code: 'trouble',
    message: 'This could not be read just now. The sound is kept and stays marked as unread; hear it again from the check screen.',
  };
}
