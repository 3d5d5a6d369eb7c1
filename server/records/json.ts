/** The one door for anything stored as JSON: checked on its way in and on its way out; what does not fit is refused, never guessed. */
import type { z } from 'zod';
import { StoreError } from './storeError.ts';

export function toJson<T extends z.ZodType>(schema: T, value: z.input<T>, what: string): string {
  const read = schema.safeParse(value);
  if (!read.success) throw new TypeError(`${what} does not fit the contract: ${where(read.error)}`);
  return JSON.stringify(read.data);
}
/** Fields that a later version gave a default are filled in with it here. @throws StoreError `damaged` */
export function fromJson<T extends z.ZodType>(schema: T, text: string, what: string): z.output<T> {
  const read = schema.safeParse(parsed(text, what));
  if (!read.success)
    throw new StoreError(
      'damaged',
      `${what} cannot be read (${where(read.error)}). It was left as it is; the other records are not touched. Put back a backup, or report this with the line above.`,
    );
  return read.data;
}
function parsed(text: string, what: string): unknown {
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new StoreError(
      'damaged',
      `${what} cannot be read: it is not whole. It was left as it is; the other records are not touched. Put back a backup.`,
      { cause },
    );
  }
}
/** Paths and kinds of trouble only: no value, so that no spoken word gets into a message or a log. */
const where = (error: z.ZodError): string =>
  error.issues
    .slice(0, 3)
    .map((i) => `${i.path.join('.') || 'whole'}: ${i.code}`)
    .join('; ');
