/** A confirmed exam, as exported and stored (contract section 1). */
import { z } from 'zod';
import { Command, Doubt, Hint } from './doubt.ts';
import { Header, Utterance } from './draft.ts';
import { Item } from './item.ts';

export const Exam = Header.extend({
  id: z.string(),
  utterances: z.array(Utterance),
  items: z.array(Item),
  commands: z.array(Command),
  doubts: z.array(Doubt),
  hints: z.array(Hint),
  revisions: z.array(
    z.object({
      revision: z.number().int(),
      by: z.string(),
      when: z.string(),
      reason: z.string().optional(),
      lexicon: z.string().optional(),
    }),
  ),
});
export type Exam = z.infer<typeof Exam>;
