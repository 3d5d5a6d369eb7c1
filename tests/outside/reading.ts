/** One phrase, read alone. */
import { emptyContext, parseText, type Parsed } from '../../parser/index.ts';
import type { Item } from '../../parser/contract/item.ts';
import { headerOf, type GoldCase } from '../parser/corpus.ts';

export const read = (text: string, given?: GoldCase['given']): Parsed => parseText('t/1', text, emptyContext(headerOf(given)));

type Finding = Extract<Item, { kind: 'finding' }>;
export const findings = ({ items }: Parsed): readonly Finding[] => items.filter((item): item is Finding => item.kind === 'finding');
/** "condition place grade ..." of each finding, to compare at a glance. */
export const teethOf = (finding: Finding | undefined): readonly string[] =>
  finding?.place && 'teeth' in finding.place ? finding.place.teeth : [];
export const doubtsOf = ({ doubts }: Parsed): readonly string[] => doubts.map(({ doubt }) => doubt);

const digit = ['oh', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
/** A code as it is spoken: 106 "one oh six", 110 "one ten". */
export const spoken = (code: string): string => {
  const [first, rest] = [Number(code[0]), Number(code.slice(1))];
  return rest < 10 ? `${digit[first]} oh ${digit[rest]}` : `${digit[first]} ${digit[rest]}`;
};
