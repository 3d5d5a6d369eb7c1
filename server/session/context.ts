import type { Context, Draft } from '../../parser/contract/draft.ts';
import { isOpen, stands } from './standing.ts';

/** All that the next reading may know of a draft: what stands, what is open, and the grammar's own memory. */
export const contextOf = (draft: Draft): Context => ({
  header: draft.header,
  items: draft.items.filter(stands).map((i) => i.item),
  doubts: draft.doubts.filter(isOpen).map((d) => d.doubt),
  carry: draft.carry,
});
