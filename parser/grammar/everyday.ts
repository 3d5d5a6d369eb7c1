/** "That'll do him for twelve months", "we'll see how one oh nine goes", "ride him in a headcollar for a week": said again with the trade's plain words. */
import { everydaySay, telling } from '../lexicon/everyday.ts';
import { afterIn } from './followUps.ts';
import { firstWords, formAt, longestOf, type Forms } from './forms.ts';
import { first } from './lists.ts';
import type { Rewording } from './said.ts';
import { endOfPart, plainly } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const rows = everydaySay.map(({ say, plain, time, closing, close, behind }) => ({
  say: longestOf([[say, true as const]]),
  plain: plain.split(' '),
  time,
  closing: closing && longestOf([[closing, true as const]]),
  behind: behind && longestOf([[behind, true as const]]),
  close: close === 'as said' ? undefined : (close?.split(' ') ?? []),
}));
const tells: ReadonlySet<string> = new Set(telling);
/** "told mum he'll need looking at again before winter": what comes, and no advice. */
const comes: ReadonlySet<string> = new Set(['will', 'would']);
type Everyday = (typeof rows)[number];

function saidSo(
  { say, plain, time, closing, close, behind }: Everyday,
  tokens: readonly Token[],
  at: number,
): readonly Token[] | undefined {
  const form = formAt(say, tokens, at);
  if (form === undefined) return undefined;
  const to = at + form.words.length;
  const end = endOfPart(tokens, at);
  // "told the owner to leave the bit out": advice is kept in its own words.
  if (tokens.slice(0, at).some(({ t }) => tells.has(t)) && !comes.has(tokens[at - 1]?.t ?? '')) return undefined;
  if (to > end || (time === true && afterIn([...plainly(tokens, at, to, plain), ...tokens.slice(to, end)]) === undefined)) return undefined;
  // "just a routine rasp, nothing abnormal": what was found is told with it, and no plan.
  if (behind && ((at > 0 && tokens[at - 1]?.ends !== true) || formAt(behind, tokens, to) === undefined)) return undefined;
  const last = closing && first(tokens.slice(to, end), (_, i) => closedAt(closing, tokens, to + i));
  if (closing && last === undefined) return undefined;
  return [
    ...tokens.slice(0, at),
    ...plainly(tokens, at, to, plain),
    ...tokens.slice(to, last?.from ?? end),
    ...(last ? (close ? plainly(tokens, last.from, last.to, close) : tokens.slice(last.from, last.to)) : []),
    ...tokens.slice(last?.to ?? end),
  ];
}
const closedAt = (
  closing: Forms<true>,
  tokens: readonly Token[],
  from: number,
): { readonly from: number; readonly to: number } | undefined => {
  const form = formAt(closing, tokens, from);
  return form && { from, to: from + form.words.length };
};

function inPlainWords(tokens: readonly Token[]): readonly Token[] {
  return first(tokens, (_, at) => first(rows, (row) => saidSo(row, tokens, at))) ?? tokens;
}

export const everyday: readonly Rewording[] = [{ rule: inPlainWords, needs: firstWords(...rows.map(({ say }) => say)) }];
