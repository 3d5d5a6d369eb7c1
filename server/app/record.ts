import type { Draft } from '../../parser/contract/draft.ts';
import type { Exam } from '../../parser/contract/record.ts';
import { stands } from '../session/standing.ts';

/** An exam as it is kept and exported: what stands, every word, and how each question was settled. */
export const recordOf = (draft: Draft): Exam => ({
  ...draft.header,
  id: draft.id,
  utterances: draft.utterances,
  items: draft.items.filter(stands).map((i) => i.item),
  commands: draft.commands,
  doubts: draft.doubts.map(({ doubt, settled }) => ({ ...doubt, state: settled ? 'settled' : doubt.state })),
  hints: draft.hints,
  revisions: draft.revisions,
});
