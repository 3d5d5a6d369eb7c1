import type { Draft } from '../../parser/contract/draft.ts';

/** A draft in which nothing was said yet. */
export const emptyDraft = (id: string, more: Partial<Draft> = {}): Draft => ({
  id,
  header: { horse: null, owner: null, yard: null, examiner: null, startedAt: null },
  state: 'draft',
  revision: 0,
  utterances: [],
  items: [],
  commands: [],
  doubts: [],
  hints: [],
  gaps: [],
  revisions: [],
  unread: [],
  paused: false,
  carry: null,
  seq: 0,
  ...more,
});
