/** "on one oh six a hook, on three eleven a ramp": place before finding, in turn; without the "on" nothing else can be meant. So too "both a hook and a ramp". */
import { prepositions } from './groups.ts';
import { isGlue, isHead, scan } from './scan.ts';
import type { Token } from './tokens.ts';

const opening: ReadonlySet<string> = new Set(['on', 'in', 'at']);
const small: ReadonlySet<string> = new Set(['a', 'an', 'the', 'there', 'is', 'and', 'also', 'some', 'bit', 'of', 'we', 'i', 'have', 'got']);

/** @returns the tokens without what is not needed; the same list where nothing stands in turn */
export function inTurn(tokens: readonly Token[]): readonly Token[] {
  const said = withoutBoth(tokens);
  if (!opening.has(said[0]?.t ?? '')) return said;
  const marks = scan(said).marks.filter(
    (mark) => !isGlue(mark) && !mark.terms?.every((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'filler'),
  );
  const inPairs =
    marks.length > 3 &&
    marks.length % 2 === 0 &&
    marks.every((mark, i) => (i % 2 === 0 ? mark.place !== undefined && !isHead(mark) : isHead(mark) && mark.place === undefined));
  if (!inPairs) return said;
  const leads = new Set(marks.flatMap((mark, i) => (i % 2 === 0 ? [mark.from - 1] : [])));
  return said.filter(({ t }, i) => !(leads.has(i) && prepositions.has(t)));
}

/** "both a hook and a ramp on one oh six": of findings, no sides. */
function withoutBoth(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => t === 'both');
  if (at < 0) return tokens;
  const from = tokens.findIndex(({ t }, i) => i > at && !small.has(t));
  const [first, ...rest] = scan(tokens.slice(from)).marks;
  const next = rest.find((mark) => !isGlue(mark));
  const and = first && tokens.slice(from + first.to, from + (next?.from ?? first.to)).some(({ t }) => t === 'and');
  return isHead(first) && first?.place === undefined && and && isHead(next) && next?.place === undefined
    ? tokens.filter((_, i) => i !== at)
    : tokens;
}
