/**
 * "The gap behind it has opened up", "a gap's opened up there", "it's opened up since last year": a gap that opens by itself is wider, and nobody
 * widened it. "Opened the gap up", "gap's opened up with the burr" is work.
 */
import { changedSince, gapNames, openingBy } from '../lexicon/becoming.ts';
import { first } from './lists.ts';
import { endOfPart, plainly } from './saidPlainly.ts';
import { isGlue, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const gaps: ReadonlySet<string> = new Set(gapNames);
const opens: ReadonlySet<string> = new Set(openingBy);
const since: ReadonlySet<string> = new Set(changedSince);
const pointing: ReadonlySet<string> = new Set(['it', 'that', 'this']);
const isHas: ReadonlySet<string> = new Set(['is', 'are', 'has', 'have']);
const between: ReadonlySet<string> = new Set(['just', 'now', 'really', 'only', 'also', 'definitely', 'clearly']);
const wider = ['has', 'got', 'wider'];
/** "a gap has opened up": none was known that is wider now. */
const there = ['there'];

/** A thing that somebody opens, or what with. */
const worksOn: ReadonlySet<string> = new Set(['the', 'it', 'that', 'this', 'them', 'those', 'him', 'her']);
const tools: ReadonlySet<string> = new Set(['with', 'using']);
const upTo = (tokens: readonly Token[], verb: number): number => (['up', 'out'].includes(tokens[verb + 1]?.t ?? '') ? verb + 2 : verb + 1);
/** Where the words begin that say so, of the verb at this word; undefined where somebody did it, or it is not of a gap. */
function beginsAt(tokens: readonly Token[], verb: number, from: number): number | undefined {
  const behind = tokens.slice(upTo(tokens, verb), endOfPart(tokens, verb)).map(({ t }) => t);
  if (worksOn.has(behind[0] ?? '') || behind.some((t) => tools.has(t) || gaps.has(t))) return undefined;
  const compares = behind.some((t) => since.has(t));
  let at = verb;
  while (between.has(tokens[at - 1]?.t ?? '')) at -= 1;
  const said = isHas.has(tokens[at - 1]?.t ?? '') ? tokens[at - 1]?.t : undefined;
  const begins = said === undefined ? at : at - 1;
  const subject = tokens.slice(from, begins);
  if (compares && subject.length > 0 && pointing.has(subject.at(-1)?.t ?? '')) return begins;
  const gap = subject.findLastIndex(({ t }) => gaps.has(t));
  const placed = scan(subject.slice(gap + 1)).marks.every((mark) => mark.place !== undefined || isGlue(mark));
  if (gap < 0 || !placed) return undefined;
  const itself =
    said === 'has' || said === 'have' || (said !== undefined && (tokens[verb]?.t.endsWith('ing') || subject[gap - 1]?.t === 'a'));
  return compares || itself ? begins : undefined;
}

function openedItself(tokens: readonly Token[]): readonly Token[] {
  return (
    first(tokens, ({ t }, verb) => {
      if (!opens.has(t)) return undefined;
      const begins = beginsAt(tokens, verb, tokens.slice(0, verb).findLastIndex(({ ends }) => ends) + 1);
      if (begins === undefined) return undefined;
      const to = upTo(tokens, verb);
      const isNew = tokens.slice(0, begins).findLast(({ t }, i) => t === 'a' && gaps.has(tokens[i + 1]?.t ?? '')) !== undefined;
      return [...tokens.slice(0, begins), ...plainly(tokens, begins, to, isNew ? there : wider), ...tokens.slice(to)];
    }) ?? tokens
  );
}

export const opened: readonly Rewording[] = [{ rule: openedItself, needs: openingBy }];
