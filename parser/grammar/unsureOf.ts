/**
 * "Fracture of one oh nine, possibly sagittal": the fracture is certain, and whether it is sagittal is not. "More buccal than palatal": the
 * one, or both. With and without are offered. "Buccal rather than palatal" is the first alone.
 */
import { either } from './either.ts';
import type { Way } from './said.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const unsure: ReadonlySet<string> = new Set(['possibly', 'maybe', 'perhaps', 'probably', 'could', 'might', 'may']);
const being: ReadonlySet<string> = new Set(['be', 'it', 'is', 'well', 'a', 'bit', 'slightly']);
export const unsureWords: readonly string[] = [...unsure, 'than'];
const tells = (mark: Mark): boolean =>
  !isHead(mark) && (mark.terms ?? []).some(({ k }) => k === 'surface' || k === 'qualifier' || k === 'severity');

/** Words with it, and words without. */
interface Ways {
  readonly kept: readonly Token[];
  readonly left?: readonly Token[];
}

export const unsureOf: Way = (tokens, { once: readAs }) => {
  const ways = possibly(tokens) ?? than(tokens);
  if (ways === undefined) return undefined;
  return ways.left ? either(readAs(ways.kept), readAs(ways.left), 'said as unsure') : readAs(ways.kept);
};

const without = (tokens: readonly Token[], from: number, to: number): readonly Token[] => {
  const closes = tokens[to - 1]?.ends === true && from > 0;
  return [
    ...tokens.slice(0, from).map((token, i) => (closes && i === from - 1 ? { ...token, ends: true as const } : token)),
    ...tokens.slice(to),
  ];
};

/** Behind a finding: words that say that something is not sure, and to the pause nothing but how it is. */
function possibly(tokens: readonly Token[]): Ways | undefined {
  const at = tokens.findIndex(({ t }, i) => i > 1 && unsure.has(t));
  if (at < 0) return undefined;
  const pause = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
  const end = pause < 0 ? tokens.length : pause + 1;
  let to = at + 1;
  while (to < end && being.has(tokens[to]?.t ?? '')) to += 1;
  const begins = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  // "sagittal possibly"
  const from = to === end ? begins : at;
  const told = to === end ? tokens.slice(begins, at) : tokens.slice(to, end);
  const marks = scan(told).marks;
  const said = scan(tokens.slice(0, from)).marks;
  // "suspected fracture, possibly sagittal": unsure already.
  const sure = !said.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'suspected'));
  return sure && said.some(isHead) && marks.some(tells) && marks.every((mark) => tells(mark) || isGlue(mark))
    ? { kept: without(tokens, at, to), left: without(tokens, from, end) }
    : undefined;
}

/** "more X than Y", "X rather than Y". */
function than(tokens: readonly Token[]): Ways | undefined {
  const at = tokens.findIndex(({ t }) => t === 'than');
  const { marks } = scan(tokens);
  const next = marks.find((mark) => mark.from >= at + 1);
  const before = marks.findLast((mark) => mark.to <= at && tells(mark));
  if (at < 1 || next === undefined || next.from !== at + 1 || !tells(next) || before === undefined || !marks.some(isHead)) return undefined;
  if (tokens[at - 1]?.t === 'rather' && before.to === at - 1) return { kept: without(tokens, at - 1, next.to) };
  const more = before.from - 1;
  return before.to === at && tokens[more]?.t === 'more'
    ? { kept: without(without(tokens, at, next.to), more, more + 1), left: without(without(tokens, at, at + 1), more, more + 1) }
    : undefined;
}
