/** What a rule makes before it gets its id: a body, the marks it took, how its fields came, and what it doubts. */
import type { Doubt } from '../contract/doubt.ts';
import type { How, Item, Place } from '../contract/item.ts';

type Body<I> = I extends Item ? Omit<I, 'id' | 'evidence' | 'how' | 'revises'> : never;
export type ItemBody = Body<Item>;
export type FindingBody = Extract<ItemBody, { kind: 'finding' }>;
export type TreatmentBody = Extract<ItemBody, { kind: 'treatment' }>;

export interface MadeDoubt extends Partial<Pick<Doubt, 'condition' | 'rule' | 'why' | 'source' | 'legal'>> {
  readonly doubt: Doubt['doubt'];
  readonly place?: Place | null;
  /** Marks it is about, when they differ from the item's. */
  readonly marks?: readonly number[];
  readonly words?: string;
  readonly readings?: readonly { readonly label: string; readonly bodies: readonly ItemBody[] }[];
}

export interface Made {
  /** Absent when only a doubt came of it. */
  readonly body?: ItemBody;
  readonly marks: readonly number[];
  readonly how?: Readonly<Record<string, How>>;
  readonly doubts: readonly MadeDoubt[];
  readonly rules: readonly string[];
  /** The earlier item that this one corrects, and what changed. */
  readonly revises?: { readonly id: string; readonly was: Record<string, unknown>; readonly now: Record<string, unknown> };
  readonly settles?: readonly string[];
  readonly repaired?: boolean;
  /** Left out of a place that is still to come from the phrase before: "normal apart from two oh nine". */
  readonly less?: readonly Place[];
}
