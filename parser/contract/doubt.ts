/** Doubts, hints and commands (contract sections 8 and 9). */
import { z } from 'zod';
import { commandIds } from '../lexicon/commands.ts';
import { conditionIds } from '../lexicon/conditions.ts';
import { Item, Place } from './item.ts';
import { Span } from './word.ts';

export const doubtKinds = [
  'no-such-tooth',
  'off-scale',
  'two-readings',
  'no-place',
  'no-condition',
  'unread',
  'unheard',
  'unlikely',
  'unsure',
  'readers-differ',
  'irreversible',
  'state-unclear',
  'dose-unclear',
  'conflict',
] as const;
export const DoubtKind = z.enum(doubtKinds);
export type DoubtKind = z.infer<typeof DoubtKind>;

/** One reading a person may choose: what it would be called, and the items it stands for (empty: choosing it keeps none). */
export const Reading = z.object({ label: z.string(), items: z.array(Item) });
export type Reading = z.infer<typeof Reading>;

export const Doubt = z.object({
  id: z.string(),
  doubt: DoubtKind,
  /** The words it is about, as heard. */
  words: z.string(),
  utterance: z.string(),
  at: Span.optional(),
  state: z.enum(['open', 'settled']).default('open'),
  place: Place.nullable().optional(),
  condition: z.enum(conditionIds).optional(),
  /** The item it is about. */
  item: z.string().optional(),
  readings: z.array(Reading).optional(),
  /** For `unlikely` and `conflict`: the rule's name, its words for a person, and its source. */
  rule: z.string().optional(),
  why: z.string().optional(),
  source: z.string().optional(),
  /** For `off-scale`: the legal values. */
  legal: z.array(z.string()).optional(),
});
export type Doubt = z.infer<typeof Doubt>;

/** A hint is no doubt and never blocks. */
export const Hint = z.object({
  id: z.string(),
  hint: z.string(),
  say: z.string(),
  place: Place.nullable().optional(),
  item: z.string().optional(),
});
export type Hint = z.infer<typeof Hint>;

export const Command = z.object({
  id: z.string(),
  command: z.enum(commandIds),
  utterance: z.string(),
  words: z.string(),
  /** Ids it acts on: struck, brought back, amended, answered, flagged. */
  targets: z.array(z.string()).optional(),
  /** The single target of `amend`. */
  target: z.string().optional(),
  was: z.record(z.string(), z.unknown()).optional(),
  now: z.record(z.string(), z.unknown()).optional(),
  /** `next-horse`: the name spoken. */
  name: z.string().optional(),
  /** `answer`: which reading (0-based) of which doubt. */
  doubt: z.string().optional(),
  reading: z.number().int().min(0).optional(),
  text: z.string().optional(),
});
export type Command = z.infer<typeof Command>;
