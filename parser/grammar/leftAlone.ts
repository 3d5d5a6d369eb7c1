/** "left the lower left canine alone", "leaving the hook on one oh six be", "leave the wave till autumn": what is left stands between the two words that say so. */
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const leaving: ReadonlySet<string> = new Set(['left', 'leave', 'leaving']);
const alone: ReadonlySet<string> = new Set(['alone', 'be', 'till', 'until']);
/** How many words may stand between them. */
const SPAN = 9;

/** "both ramps left for next time", "the hook I've left till spring": behind what is left. */
const later =
  /^left (?:alone|be|as (?:it|they) (?:is|are)|for (?:now|today|(?:the )?next|another|later|the vet)|(?:till|until) \w+|to (?:the )?next)\b/;
function leftBehind(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] | undefined {
  const at = tokens.findIndex(
    ({ t }, i) =>
      t === 'left' &&
      later.test(
        tokens
          .slice(i, i + 4)
          .map((token) => token.t)
          .join(' '),
      ) &&
      marks.some(
        (mark) =>
          mark.to <= i &&
          tokens.slice(mark.to, i).every((token) => between.has(token.t)) &&
          mark.terms?.some((term) => term.k === 'condition' && term.strength === 'say'),
      ),
  );
  if (at < 0) return undefined;
  const end = tokens.findIndex((token, i) => i >= at && token.ends === true);
  const to = end < 0 ? tokens.length : end + 1;
  const left: Mark = { from: at, to, terms: [{ k: 'work', term: { as: 'state', state: 'not-done' } }] };
  return [...marks.filter((mark) => mark.to <= at), left, ...marks.filter((mark) => mark.from >= to)];
}
const between: ReadonlySet<string> = new Set(['i', 'we', 'have', 'has', 'been', 'was', 'were', 'is', 'are', 'just', 'both', 'all']);

export function leftAlone(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const behind = leftBehind(marks, tokens);
  if (behind) return behind;
  const last = tokens.findIndex(
    ({ t }, at) => alone.has(t) && (t !== 'be' || at === tokens.length - 1 || tokens[at]?.ends === true) && leaves(tokens, at) >= 0,
  );
  const first = last < 0 ? -1 : leaves(tokens, last);
  // "left it alone" is written out in the lexicon.
  const between = marks.some(
    ({ from, to, place, terms }) => from > first && to <= last && (place !== undefined || terms?.some(({ k }) => k === 'condition')),
  );
  const apart = (at: number): boolean => marks.some(({ from, to }) => from === at && to === at + 1);
  if (first < 0 || !between || !apart(first) || !apart(last)) return marks;
  // "floated lightly, left the lower left alone": the same work, and not there.
  const pause = tokens[first - 1]?.ends === true;
  const worked = pause
    ? marks.findLast((mark) => mark.to <= first && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done))
    : undefined;
  const onlyPlace = !marks.some(({ from, terms }) => from > first && from < last && terms?.some(({ k }) => k === 'condition'));
  return marks.map((mark): Mark =>
    mark.from === first
      ? { from: mark.from, to: mark.to, terms: worked?.terms && onlyPlace ? worked.terms : [{ k: 'glue' }] }
      : mark.from === last
        ? { from: mark.from, to: mark.to, terms: [{ k: 'work', term: { as: 'state', state: 'not-done' } }] }
        : mark,
  );
}

/** Where the leaving is said, in the same clause and not as a side: "bottom left canine". */
function leaves(tokens: readonly Token[], at: number): number {
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  return tokens.findIndex(
    ({ t }, i) =>
      i >= Math.max(from, at - SPAN) &&
      i < at &&
      leaving.has(t) &&
      !/^(?:upper|lower|top|bottom|the|on|his|her)$/.test(tokens[i - 1]?.t ?? ''),
  );
}
