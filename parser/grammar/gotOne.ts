/**
 * "Seven oh seven's got one as well, but that's loose", "other side's got just the one, four ten four eleven": one of what was found last and is
 * counted, where more is said of it. Named, that is of it.
 */
import type { Context } from '../contract/draft.ts';
import { countedAsOne, plainName } from '../lexicon/namedBefore.ts';
import { isHead, scan } from './scan.ts';
import type { Token } from './tokens.ts';

const having: ReadonlySet<string> = new Set(['has', 'got', 'is', 'just', 'only', 'the']);
const again: ReadonlySet<string> = new Set(['too', 'also', 'as', 'well']);
const goesOn: ReadonlySet<string> = new Set(['but', 'though', 'only', 'just']);
const sideHas =
  /^(?:(?:and|but|so|then) )*(?:the )?(?:other|opposite|left|right) side (?:is|has)(?: got)?(?: just| only)*(?: the)? one(?: (?:too|as well|also))?$/;

/** The side that has one, where it is told by its number behind a pause. */
function byNumber(tokens: readonly Token[], to: number): readonly Token[] | undefined {
  const lead = tokens.slice(0, to).map(({ t }) => t);
  if (!tokens[to - 1]?.ends || !sideHas.test(lead.join(' '))) return undefined;
  const codes = scan(tokens.slice(to)).marks[0]?.place?.codes ?? [];
  const side = lead.find((word) => word === 'left' || word === 'right');
  const there = side === undefined || codes.every((code) => /^[2367]/.test(code) === (side === 'left'));
  return codes.length > 0 && there ? tokens.slice(to) : undefined;
}

/** The last of what is counted, less what the words name themselves: "..., no pocket". */
function nameOfLast(tokens: readonly Token[], { items }: Context): string | undefined {
  const names = items.flatMap((item) =>
    item.kind === 'finding' && item.presence === 'present' && countedAsOne(item.condition) ? [plainName(item.condition)] : [],
  );
  return names.findLast((name) => !tokens.some(({ t }) => t === name));
}

const there: ReadonlySet<string> = new Set(['at', 'on', 'between', 'in', 'behind', 'starting', 'coming', 'opening', 'developing']);
/** "Gap at ..., packed", "and one at four oh nine four ten": the gap, and not the feed in it. */
function oneThere(tokens: readonly Token[], context: Context): readonly Token[] | undefined {
  const at = tokens.findIndex(({ t, ends }, i) => (t === 'one' || t === 'another') && !ends && there.has(tokens[i + 1]?.t ?? ''));
  const last = context.items.at(-1);
  if (at < 0 || at > 3 || last?.kind !== 'finding' || countedAsOne(last.condition)) return undefined;
  const before = context.items.at(-2);
  const same = before?.kind === 'finding' && before.evidence.utterance === last.evidence.utterance && countedAsOne(before.condition);
  const name = same && JSON.stringify(before.place) === JSON.stringify(last.place) ? plainName(before.condition) : undefined;
  const { word } = tokens[at] as Token;
  return name === undefined ? undefined : [...tokens.slice(0, at), { t: 'a', word }, { t: name, word }, ...tokens.slice(at + 1)];
}

const excepting = /^(?:bar|except|save|only|but|from|for)$/;
/** "No hooks bar a small one on four eleven": one of those ruled out, as it is. */
function exceptOne(tokens: readonly Token[]): readonly Token[] | undefined {
  const no = tokens.findIndex(({ t }) => t === 'no');
  const except = tokens.findIndex(({ t }, i) => no >= 0 && i > no + 1 && i < no + 5 && excepting.test(t));
  const one = tokens.findIndex(
    ({ t, ends }, i) => i > except + 1 && i < except + 5 && t === 'one' && !ends && there.has(tokens[i + 1]?.t ?? ''),
  );
  if (except < 0 || one < 0 || !/^(?:a|an|the)$/.test(tokens[except + 1]?.t ?? '')) return undefined;
  const { marks } = scan(tokens.slice(no + 1, except));
  const name = marks.find((mark) => isHead(mark));
  const { word } = tokens[one] as Token;
  const words = name ? tokens.slice(no + 1 + name.from, no + 1 + name.to) : [];
  return words.length === 0
    ? undefined
    : [...tokens.slice(0, one), ...words.map(({ t }): Token => ({ t, word })), ...tokens.slice(one + 1)];
}

export function gotOne(tokens: readonly Token[], context: Context): readonly Token[] {
  const counted = exceptOne(tokens) ?? oneThere(tokens, context);
  if (counted) return counted;
  const at = tokens.findIndex(({ t }, i) => t === 'one' && having.has(tokens[i - 1]?.t ?? ''));
  const name = at < 0 ? undefined : nameOfLast(tokens, context);
  if (name === undefined) return tokens;
  let to = at + 1;
  while (again.has(tokens[to]?.t ?? '')) to += 1;
  const { word, ends } = tokens[at] as Token;
  const rest = byNumber(tokens, to);
  if (rest) return [{ t: name, word }, ...rest];
  const more = goesOn.has(tokens[to]?.t ?? '') && (tokens[at - 1]?.t === 'has' || tokens[at - 1]?.t === 'got');
  return more ? [...tokens.slice(0, at), { t: 'a', word }, { t: name, word, ...(ends ? { ends } : {}) }, ...tokens.slice(at + 1)] : tokens;
}
