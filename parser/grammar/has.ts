import type { Mark } from './scan.ts';

/** Whether a finding is named outright. */
export const findingsIn = (marks: readonly Mark[]): boolean => marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength === 'say'));
export const codesIn = (marks: readonly Mark[]): boolean => marks.some(({ place }) => place?.codes !== undefined);
