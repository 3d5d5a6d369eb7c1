/**
 * "hook on one oh six and ramp on three eleven, the hook three mil", "..., only the hook reduced", "reduced the hook, left the ramp": a finding
 * named again in the same breath, with no place of its own, stands where it was said to be.
 */
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const definite: ReadonlySet<string> = new Set(['the', 'that']);
const leads: ReadonlySet<string> = new Set(['on', 'at', 'in', 'of']);

/** The place put behind the second name. */
function placed(tokens: readonly Token[]): readonly Token[] {
  const heard = new Set<string>();
  const again = tokens.some(({ t }, i) => {
    const found = i > 1 && definite.has(tokens[i - 1]?.t ?? '') && heard.has(t) && !leads.has(tokens[i - 2]?.t ?? '');
    heard.add(t);
    return found;
  });
  if (!again) return tokens;
  const marks = scan(tokens).marks.filter((mark) => !isGlue(mark));
  const puts = new Map(
    marks.flatMap((mark, i) => {
      const name = nameOf(mark, tokens);
      const place = name && definite.has(tokens[name.at - 1]?.t ?? '') ? placeBefore(marks, tokens, i, name.id) : undefined;
      return place ? [[mark.to, place] as const] : [];
    }),
  );
  return puts.size === 0
    ? tokens
    : tokens.flatMap((token, i): readonly Token[] => {
        const place = puts.get(i + 1);
        if (place === undefined) return [token];
        const { t, word, ends } = token;
        const words: readonly Token[] = tokens.slice(place.from, place.to).map((own) => ({ t: own.t, word, carried: true }));
        const put: readonly Token[] = [{ t, word }, { t: 'on', word, carried: true }, ...words];
        return ends ? [...put.slice(0, -1), { ...(put.at(-1) as Token), ends }] : put;
      });
}

export const namedAgain: readonly Rewording[] = [{ rule: placed, needs: definite }];

/** The finding that a mark names, and by which of its words: "the hook reduced" is one name of work. */
export function nameOf(mark: Mark | undefined, tokens: readonly Token[]): { readonly id: string; readonly at: number } | undefined {
  if (mark === undefined || mark.place !== undefined) return undefined;
  const own = mark.terms?.flatMap((t) => (t.k === 'condition' && t.strength === 'say' ? [t.id] : []))[0];
  if (own !== undefined) return { id: own, at: mark.from };
  if (!mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done)) return undefined;
  for (let at = mark.from; at < mark.to; at += 1) {
    const id = conditionOf(scan(tokens.slice(at, at + 1)).marks[0]);
    if (id !== undefined) return { id, at };
  }
  return undefined;
}
const conditionOf = (mark: Mark | undefined): string | undefined =>
  mark?.terms?.flatMap((t) => (t.k === 'condition' && t.strength === 'say' ? [t.id] : []))[0];

/** Where the one finding of this name was said to be, where the second name has no place beside it. */
function placeBefore(marks: readonly Mark[], tokens: readonly Token[], at: number, id: string): Mark | undefined {
  const mark = marks[at] as Mark;
  const named = marks.slice(0, at).flatMap((one, i) => (conditionOf(one) === id ? [i] : []));
  const [first, ...more] = named;
  const next = marks[at + 1];
  const ownBehind = next?.place !== undefined && (!tokens[mark.to - 1]?.ends || leads.has(tokens[next.from - 1]?.t ?? ''));
  const ownBefore =
    marks[at - 1]?.place !== undefined &&
    !tokens[(marks[at - 1] as Mark).to - 1]?.ends &&
    !tokens.slice((marks[at - 1] as Mark).to, mark.from).some(({ t }) => t === 'but' || t === 'and');
  if (first === undefined || more.length > 0 || ownBehind || ownBefore) return undefined;
  const behind = marks.findIndex((one, i) => i > first && (one.place !== undefined || isHead(one)));
  const own = marks[behind];
  return own?.place !== undefined && behind < at && !isHead(own)
    ? own
    : marks[first - 1]?.place !== undefined
      ? marks[first - 1]
      : undefined;
}
