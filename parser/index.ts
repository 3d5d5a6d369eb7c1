/** The grammar's front door. Pure: no clock, no random, no I/O. */
import type { Context, Header } from './contract/draft.ts';

export type { Context } from './contract/draft.ts';

const noHeader: Header = { horse: null, owner: null, yard: null, examiner: null, startedAt: null };

/** The context of an exam in which nothing was said yet. */
export const emptyContext = (header: Partial<Header> = {}): Context => ({ header: { ...noHeader, ...header }, items: [], doubts: [], carry: undefined });
