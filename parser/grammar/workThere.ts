/**
 * "Rasped the uppers", then "not one oh eight", "lowers next time", "two ten by three": a phrase of a place and little else, behind
 * work that named its own place, is of the same work. Said again with the verb of that work.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { verbOfWork } from '../lexicon/plainWork.ts';
import { isUnit, past } from './amountThere.ts';
import { standing, type Carry } from './carry.ts';
import { isPlace, laterAt, leftAt } from './leftThere.ts';
import { first } from './lists.ts';
import { digit } from './numbers.ts';
import type { Token } from './tokens.ts';

type Treatment = Extract<Item, { kind: 'treatment' }>;
const leads: ReadonlySet<string> = new Set(['and', 'but', 'then', 'so', 'just', 'now', 'also', 'plus']);

/** One of these stands in every such phrase. */
export const workThereWords: readonly string[] = [
  ...['not', 'by', 'next', 'later', 'back', 'wait', 'in', 'still', 'yet', 'alone', 'left', 'untouched'],
];

export function workThere(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const last = standing(context, carry.last);
  if (last?.kind !== 'treatment' || last.place === null || last.how.place === 'carried' || carry.half !== undefined) return tokens;
  const verb = verbOfWork[last.procedure];
  if (verb === undefined || tokens.slice(0, -1).some(({ ends }) => ends)) return tokens;
  return said(tokens, verb, last) ?? tokens;
}

function said(tokens: readonly Token[], verb: string, last: Treatment): readonly Token[] | undefined {
  const from = tokens.findIndex(({ t }) => !leads.has(t));
  if (from < 0) return undefined;
  const heard = tokens.slice(0, from).map(({ word }) => word);
  const put = (words: readonly string[], place: readonly Token[], more: readonly Token[] = []): readonly Token[] => [
    ...words.map((t): Token => ({ t, word: (tokens[from] as Token).word, ...(heard.length > 0 ? { heard } : { carried: true as const }) })),
    ...place,
    ...more,
  ];
  const left = leftAt(tokens, from);
  if (left?.end === tokens.length) return put(['did', 'not', verb], tokens.slice(left.from, left.to));
  const not = tokens[from]?.t === 'not' ? from + (['off', 'on'].includes(tokens[from + 1]?.t ?? '') ? 2 : 1) : -1;
  if (not > 0 && isPlace(tokens.slice(not))) return put(['did', 'not', verb], tokens.slice(not));
  const later = laterAt(tokens, from);
  if (later) return put(['will', verb], tokens.slice(later.from, later.to), tokens.slice(later.end));
  const by = amountBehind(tokens, from, last);
  return by && put([past(verb)], by.place, by.amount);
}

/** "two ten by three": as far, where the work before it was told so. */
function amountBehind(
  tokens: readonly Token[],
  from: number,
  { amountMm }: Treatment,
): { readonly place: readonly Token[]; readonly amount: readonly Token[] } | undefined {
  if (amountMm === undefined) return undefined;
  return first(tokens, ({ t }, at) => {
    if (t !== 'by' || at <= from || !isPlace(tokens.slice(from, at)) || digit(tokens[at + 1]?.t ?? '') === undefined) return undefined;
    const unit = tokens[at + 2];
    if (unit && !(isUnit(unit) && at + 3 === tokens.length)) return undefined;
    const mil: Token = unit ?? { t: 'mil', word: (tokens[at + 1] as Token).word, carried: true };
    return { place: tokens.slice(from, at), amount: [...tokens.slice(at, at + 2), mil] };
  });
}
