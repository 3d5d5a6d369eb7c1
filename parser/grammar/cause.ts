/**
 * "Step on four oh nine because one oh nine is missing, reduced by four mil": nothing is reduced that is missing, so what is told for a reason
 * stands aside, and what follows is of what was told before it. The reason is read last.
 */
import { handledAs } from '../lexicon/handling.ts';
import type { Rewording } from './said.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const reasons: ReadonlySet<string> = new Set(['because', 'cos', 'since', 'seeing']);
const isWork = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') === true;
/** "ulcer left cheek because one oh eight is sharp, rasped that": of the reason itself. */
const workedOn = ({ terms }: Mark): boolean =>
  terms?.some((t) => t.k === 'condition' && (handledAs[t.id] ?? (t.id === 'sharp' ? 'points' : undefined)) !== undefined) === true;
const placed = (marks: readonly Mark[]): boolean => marks.some(({ place }) => place !== undefined);

function aside(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => i > 0 && reasons.has(t));
  const end = at < 0 ? -1 : tokens.findIndex(({ ends }, i) => i > at && ends === true);
  if (end < 0 || end === tokens.length - 1) return tokens;
  const [told, reason, rest] = [tokens.slice(0, at), tokens.slice(at, end + 1), tokens.slice(end + 1)];
  const [before, why, behind] = [scan(told).marks, scan(reason).marks, scan(rest).marks];
  const first = behind.find((mark) => !isGlue(mark));
  const leans = first !== undefined && isWork(first) && !placed(behind);
  if (!leans || !placed(before) || !before.some(isHead) || !placed(why) || !why.some(isHead) || why.some(workedOn)) return tokens;
  const closed = (all: readonly Token[]): readonly Token[] => [...all.slice(0, -1), { ...(all.at(-1) as Token), ends: true }];
  return [...closed(told), ...closed(rest), ...reason];
}

export const cause: readonly Rewording[] = [{ rule: aside, needs: reasons }];
