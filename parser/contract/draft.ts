/** The draft: an append-only list of events, and what they fold to. A draft is not a record until a person confirms it. */
import { z } from 'zod';
import { Command, Doubt, Hint } from './doubt.ts';
import { Item } from './item.ts';
import { HeardPhrase, Span } from './word.ts';

/** The account of one word (law 1): `item:ID`, `doubt:ID`, `command`, `filler` or `leftover`. */
export const WordAccount = z.object({ w: z.string(), as: z.string(), at: Span.optional(), repairedTo: z.string().optional() });
export type WordAccount = z.infer<typeof WordAccount>;

export const Utterance = z.object({
  id: z.string(),
  /** As it was heard, never repaired. */
  text: z.string(),
  at: Span.optional(),
  silenceBefore: z.number().optional(),
  words: z.array(WordAccount),
  /** The n-best texts. */
  heard: z.array(z.object({ text: z.string(), logProb: z.number(), posterior: z.number().optional() })).optional(),
  reader: z.enum(['first', 'second', 'typed', 'scripted']).optional(),
  /** Sound was playing from our own loudspeaker while this was heard. */
  overOwnVoice: z.boolean().optional(),
  /** The exam whose journal holds its sound, when it was moved here by a join or a split (`at` is then of that journal's clock). */
  sound: z.string().optional(),
});
export type Utterance = z.infer<typeof Utterance>;

export const Age = z.object({
  value: z.number(),
  unit: z.enum(['year', 'month', 'week', 'day']),
  rising: z.boolean().optional(),
  about: z.boolean().optional(),
  source: z.enum(['papers', 'owner', 'teeth']).optional(),
});
export const Horse = z
  .object({
    name: z.string(),
    age: Age.optional(),
    sex: z.enum(['mare', 'gelding', 'stallion', 'colt', 'filly']).optional(),
    breed: z.string().optional(),
    colour: z.string().optional(),
    height: z.string().optional(),
    use: z.string().optional(),
    microchip: z.string().optional(),
  })
  .partial({ name: true });
export type Horse = z.infer<typeof Horse>;
export const Header = z.object({
  horse: Horse.nullable(),
  owner: z.string().nullable(),
  yard: z.string().nullable(),
  examiner: z.string().nullable(),
  /** ISO 8601 with offset: the only wall time of the exam. */
  startedAt: z.string().nullable(),
  present: z.string().optional(),
});
export type Header = z.infer<typeof Header>;

/** What one call of `parse` gives. `context` is what the next call is handed. */
export const ParseResult = z.object({
  id: z.string(),
  text: z.string(),
  utterance: Utterance,
  items: z.array(Item),
  commands: z.array(Command),
  doubts: z.array(Doubt),
  hints: z.array(Hint),
  /** Ids of earlier doubts that this utterance settles. */
  settles: z.array(z.string()),
  leftovers: z.array(z.string()),
  /** Header facts spoken in this utterance ("nine year old gelding"). */
  header: z.object({ horse: Horse.optional(), owner: z.string().optional(), yard: z.string().optional() }).optional(),
  /** The grammar's memory for the next phrase: plain JSON, opaque to everyone else. */
  carry: z.unknown(),
});
export type ParseResult = z.infer<typeof ParseResult>;
/** The items that its own words made: what a phrase brings back was said before, and keeps its id. */
export function ownItems({ items, commands }: Pick<ParseResult, 'items' | 'commands'>): readonly Item[] {
  const back = commands.flatMap(({ command, targets = [] }) => (command === 'bring-back' ? targets : []));
  return back.length === 0 ? items : items.filter(({ id }) => !back.includes(id));
}

/** All that `parse` may know of what came before: values, handed in. */
export interface Context {
  readonly header: Header;
  /** Items that stand (neither struck nor revised), in order. */
  readonly items: readonly Item[];
  /** Doubts still open. */
  readonly doubts: readonly Doubt[];
  /** `carry` of the last ParseResult; undefined at an exam's start. */
  readonly carry: unknown;
}

export const itemStates = ['open', 'kept', 'struck', 'revised'] as const;
/** `was`: how it stood before it was struck or replaced, so that bringing it back is exact. */
const Standing = z.object({
  state: z.enum(itemStates),
  by: z.string().optional(),
  when: z.string().optional(),
  touched: z.boolean().optional(),
});
/** What the second reader made of the phrase of an item: the same in all that matters (then `sure` counts both readers), or not this item. */
export const SecondHeard = z.object({
  item: z.string(),
  heard: z.enum(['same', 'not-this']),
  text: z.string(),
  sure: z.number().min(0).max(1).optional(),
});
export type SecondHeard = z.infer<typeof SecondHeard>;
export const DraftItem = Standing.extend({ item: Item, was: Standing.optional(), second: SecondHeard.omit({ item: true }).optional() });
export type DraftItem = z.infer<typeof DraftItem>;
export const DraftDoubt = z.object({
  doubt: Doubt,
  settled: z
    .object({
      how: z.enum(['reading', 'kept-as-said', 'struck', 'completed']),
      by: z.string(),
      when: z.string(),
      reading: z.number().int().optional(),
    })
    .optional(),
});
export type DraftDoubt = z.infer<typeof DraftDoubt>;
/** What a join or a split carries from one draft to another. */
export const DraftPart = z.object({
  utterances: z.array(Utterance),
  items: z.array(DraftItem),
  doubts: z.array(DraftDoubt),
  commands: z.array(Command),
  hints: z.array(Hint),
});
export type DraftPart = z.infer<typeof DraftPart>;

const who = { by: z.string(), when: z.string() };
/** Every event has `seq` (1, 2, 3 ...) given by the store. `when` is ISO wall time. */
export const DraftEvent = z.discriminatedUnion('event', [
  /** `follows`: the exam from which a spoken change of horse led here; one phrase undoes it, also after a restart. */
  z.object({ event: z.literal('opened'), header: Header, follows: z.string().optional(), ...who }),
  /** Sound became hypotheses. */
  z.object({ event: z.literal('heard'), phrase: HeardPhrase, when: z.string() }),
  /** Hypotheses became a reading. */
  z.object({ event: z.literal('said'), result: ParseResult, when: z.string() }),
  z.object({ event: z.literal('header'), header: Header.partial(), ...who }),
  /** A person added an item or replaced one (then `item.revises` names it). */
  z.object({ event: z.literal('typed'), item: Item, ...who }),
  z.object({ event: z.literal('struck'), ids: z.array(z.string()), ...who }),
  z.object({ event: z.literal('restored'), ids: z.array(z.string()), ...who }),
  /** A person said yes to these items. */
  z.object({ event: z.literal('kept'), ids: z.array(z.string()), ...who }),
  z.object({
    event: z.literal('settled'),
    doubt: z.string(),
    how: z.enum(['reading', 'kept-as-said', 'struck', 'completed']),
    reading: z.number().int().optional(),
    ...who,
  }),
  /** A command given by touch: acts as the spoken one would. */
  z.object({ event: z.literal('commanded'), command: Command, ...who }),
  /** Utterances, with all they made, that now belong to another draft (join, split); and on that other side, what they were. */
  z.object({ event: z.literal('moved-out'), utterances: z.array(z.string()), to: z.string(), ...who }),
  z.object({ event: z.literal('moved-in'), from: z.string(), part: DraftPart, ...who }),
  /** A question raised after the fact (hearing again, second reader). */
  z.object({ event: z.literal('asked'), doubt: Doubt, when: z.string() }),
  /** The second reader read a phrase too: what it made of each item there. It changes no item. */
  z.object({ event: z.literal('compared'), utterance: z.string(), items: z.array(SecondHeard), when: z.string() }),
  /** The exam's own sound was listened to as far as this second, whatever was found in it. */
  z.object({ event: z.literal('listened'), to: z.number().min(0), when: z.string() }),
  z.object({ event: z.literal('gap'), at: Span, why: z.enum(['pause', 'lost', 'microphone', 'erased']), when: z.string() }),
  z.object({ event: z.literal('confirmed'), lexicon: z.string(), ...who }),
  /** Amending a confirmed record opens a new revision with its reason. */
  z.object({ event: z.literal('reopened'), reason: z.string(), ...who }),
]);
export type DraftEvent = z.infer<typeof DraftEvent>;

/** The fold of a draft's events: what the page shows. */
export const Draft = z.object({
  id: z.string(),
  header: Header,
  state: z.enum(['draft', 'confirmed']),
  revision: z.number().int(),
  utterances: z.array(Utterance),
  items: z.array(DraftItem),
  commands: z.array(Command),
  doubts: z.array(DraftDoubt),
  hints: z.array(Hint),
  gaps: z.array(z.object({ at: Span, why: z.string() })),
  revisions: z.array(
    z.object({
      revision: z.number().int(),
      by: z.string(),
      when: z.string(),
      reason: z.string().optional(),
      lexicon: z.string().optional(),
    }),
  ),
  /** Stretches of sound journalled but not read yet, in seconds. */
  unread: z.array(Span),
  paused: z.boolean(),
  /** How far its own sound was listened to after the fact, in seconds; live, the phrases themselves say it. */
  listenedTo: z.number().optional(),
  /** The exam before a change of horse that can still be undone. */
  follows: z.string().optional(),
  /** Header fields that a person typed (`owner`, `horse.name` ...): speech no longer changes them. */
  headerTyped: z.array(z.string()).optional(),
  /** Why a confirmed record is open again, until it is confirmed anew. */
  reopened: z.object({ reason: z.string(), by: z.string(), when: z.string() }).optional(),
  carry: z.unknown(),
  /** Number of the last event folded. */
  seq: z.number().int(),
});
export type Draft = z.infer<typeof Draft>;
