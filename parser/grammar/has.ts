/** What a stretch of marks holds: a finding named outright, the number of a tooth. */
import type { Mark } from './scan.ts';

export const findingsIn = (marks: readonly Mark[]): boolean =>
  marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength === 'say'));
export const codesIn = (marks: readonly Mark[]): boolean => marks.some(({ place }) => place?.codes !== undefined);
