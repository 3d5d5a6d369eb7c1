/** The effects that the rest is handed: wall time and new names. */
import { randomUUID } from 'node:crypto';

/** ISO 8601. */
export const now = (): string => new Date().toISOString();
export const freshId = (): string => randomUUID();
