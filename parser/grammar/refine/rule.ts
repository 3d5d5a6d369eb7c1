/** What every rule between the findings of one phrase works with. */
import type { Context } from '../../contract/draft.ts';
import type { Clause } from '../assemble.ts';
import type { Carry } from '../carry.ts';
import type { Exception } from '../except.ts';
import type { FindingBody, ItemBody, Made } from '../made.ts';
import type { Said } from '../said.ts';
import type { Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';

export interface Read {
  readonly clause: Clause;
  readonly made: readonly Made[];
  /** The words of its head. */ readonly said: string;
}
export interface Around {
  readonly context: Context;
  readonly carry: Carry;
  readonly marks: readonly Mark[];
  readonly tokens: readonly Token[];
  /** All words of the phrase, and the same as one line. */ readonly words: readonly string[];
  readonly text: string;
  readonly said: Said;
  /** What is left out of what is said. */ readonly excepts: readonly Exception[];
}
export type Rule = (reads: readonly Read[], around: Around) => readonly Read[];

export const finding = ({ body }: Made): FindingBody | undefined => (body?.kind === 'finding' ? body : undefined);
export const teethOf = (body: ItemBody | FindingBody | undefined): readonly string[] =>
  body && 'place' in body && body.place && 'teeth' in body.place ? body.place.teeth : [];
/** The same, and the two teeth of a gap. */
export const teethAt = (body: ItemBody | FindingBody): readonly string[] =>
  'place' in body && body.place && 'spaces' in body.place ? body.place.spaces.flat() : teethOf(body);
export const each = (reads: readonly Read[], change: (made: Made, read: Read) => Made): readonly Read[] =>
  reads.map((read) => {
    const made = read.made.map((one) => change(one, read));
    return made.every((one, i) => one === read.made[i]) ? read : { ...read, made };
  });
export const become = (made: Made, more: Partial<FindingBody>, rule: string): Made => ({
  ...made,
  body: { ...(made.body as FindingBody), ...more },
  rules: [...made.rules, rule],
});
/** Two readings stand level: none is taken. */
export const asked = (made: Made, bodies: readonly ItemBody[]): Made => ({
  marks: made.marks,
  rules: [...made.rules, 'two readings'],
  doubts: [{ doubt: 'two-readings', readings: bodies.map((body) => ({ label: '', bodies: [body] })) }],
});
