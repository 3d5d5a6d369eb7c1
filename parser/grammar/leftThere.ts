/**
 * "Reduced one oh six and left two oh six alone", "rasped the uppers, lowers not touched": the work was done at the one place and not at the
 * other. Said again with the verb of the work, so that neither takes the other's.
 */
import { leftHow, notWorked, verbOfWork } from '../lexicon/plainWork.ts';
import { formAt, longestOf } from './forms.ts';
import { first } from './lists.ts';
import { endOfPart } from './saidPlainly.ts';
import { isGlue, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const how = longestOf([[leftHow, true as const]]);
const untouched = longestOf([[notWorked, true as const]]);
const joins: ReadonlySet<string> = new Set(['and', 'but']);

/** The verb of work that was done before, and nothing of the kind behind it. */
function verbBefore(tokens: readonly Token[]): string | undefined {
  const done = scan(tokens).marks.flatMap(({ terms }) =>
    (terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'procedure' && t.term.done ? [t.term.id] : [])),
  );
  return verbOfWork[done.at(-1) ?? ''];
}
/** Nothing but a place, or two; "one oh eight and left the lower left" is more. */
function isPlace(tokens: readonly Token[]): boolean {
  if (tokens.some(({ t }, i) => t === 'left' && joins.has(tokens[i - 1]?.t ?? ''))) return false;
  const marks = scan(tokens).marks.filter((mark) => !isGlue(mark));
  return marks.length > 0 && marks.every(({ place }) => place !== undefined && place.region === undefined);
}

/** What was left there, of the words that begin here; undefined where it is not told so. */
function leftAt(tokens: readonly Token[], at: number): { readonly from: number; readonly to: number; readonly end: number } | undefined {
  const part = endOfPart(tokens, at);
  const leaves = tokens[at]?.t === 'left';
  const from = leaves ? at + 1 : at;
  // The end is looked for first: "the lower left alone" is a place and "alone".
  return first(tokens.slice(from + 1, part), (_, i) => {
    const to = from + 1 + i;
    const left = !leaves && tokens[to]?.t === 'left' ? to + 1 : to;
    const behind = leaves || left > to ? formAt(how, tokens, left) : formAt(untouched, tokens, to);
    const end = left + (behind?.words.length ?? 0);
    return behind && end <= part && isPlace(tokens.slice(from, to)) ? { from, to, end } : undefined;
  });
}

function leftThere(tokens: readonly Token[]): readonly Token[] {
  return (
    first(tokens, ({ t }, i) => {
      const at = joins.has(t) ? i + 1 : i;
      if (i < 2 || !(joins.has(t) || tokens[i - 1]?.ends === true)) return undefined;
      const left = leftAt(tokens, at);
      const verb = left && verbBefore(tokens.slice(0, i));
      if (left === undefined || verb === undefined) return undefined;
      const heard = [...tokens.slice(at, left.from), ...tokens.slice(left.to, left.end)].map(({ word }) => word);
      const put = ['did', 'not', verb].map((one): Token => ({ t: one, word: heard[0] as number, heard }));
      const place = tokens.slice(left.from, left.to);
      const { t: word, ...last } = place.at(-1) as Token;
      const closed = [...place.slice(0, -1), { ...last, t: word, ends: tokens[left.end - 1]?.ends }];
      const before = [...tokens.slice(0, i - 1), { ...(tokens[i - 1] as Token), ends: true as const }];
      return [...before, ...put, ...closed, ...tokens.slice(left.end)];
    }) ?? tokens
  );
}

export const leftTo: readonly Rewording[] = [{ rule: leftThere, needs: ['left', 'not', 'untouched'] }];
