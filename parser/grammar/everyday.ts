/** "That'll do him for twelve months", "we'll see how one oh nine goes", "ride him in a headcollar for a week": said again with the trade's plain words. */
import { everydaySay, telling } from '../lexicon/everyday.ts';
import { afterIn } from './followUps.ts';
import { firstWords, formAt, longestOf, type Forms } from './forms.ts';
import { first } from './lists.ts';
import type { Rewording } from './said.ts';
import { endOfPart, plainly } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const rows = everydaySay.map(({ say, plain, time, closing, close }) => ({
  say: longestOf([[say, true as const]]),
  plain: plain.split(' '),
  time,
  closing: closing && longestOf([[closing, true as const]]),
  close: close === 'as said' ? undefined : (close?.split(' ') ?? []),
}));
const tells: ReadonlySet<string> = new Set(telling);
type Everyday = (typeof rows)[number];

function saidSo({ say, plain, time, closing, close }: Everyday, tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(say, tokens, at);
  if (form === undefined) return undefined;
  const to = at + form.words.length;
  const end = endOfPart(tokens, at);
  // "told the owner to leave the bit out": advice is kept in its own words.
  if (tokens.slice(0, at).some(({ t }) => tells.has(t))) return undefined;
  if (to > end || (time === true && afterIn([...plainly(tokens, at, to, plain), ...tokens.slice(to, end)]) === undefined)) return undefined;
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

const untilThen: ReadonlySet<string> = new Set(['till', 'until', 'til']);
const ofTooth: ReadonlySet<string> = new Set(['wolf', 'tooth', 'extraction']);
const wounds: ReadonlySet<string> = new Set(['site', 'sites', 'socket', 'sockets', 'hole', 'holes', 'wound']);
/** "no bit till the wolf tooth site has healed": the day it is over, and no tooth of today. */
function siteHealed(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => untilThen.has(t));
  const from = at + 2;
  let to = from;
  while (ofTooth.has(tokens[to]?.t ?? '')) to += 1;
  const site = tokens[to];
  return at > 0 && site && wounds.has(site.t) && tokens.slice(0, at).some(({ t }) => t === 'bit')
    ? [...tokens.slice(0, from), { ...site, t: 'site' }, ...tokens.slice(to + 1)]
    : tokens;
}

export const everyday: readonly Rewording[] = [
  { rule: siteHealed, needs: untilThen },
  { rule: inPlainWords, needs: firstWords(...rows.map(({ say }) => say)) },
];
