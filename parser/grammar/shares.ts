/**
 * What is said behind several things and is not all of theirs: "..., three mil and five mil respectively", "..., the first small, the second
 * large", "..., the latter worse", "..., both mild". By the order in which the things were said; what names no one of them is left as it was.
 */
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

/** Which of so many things a word names. */
const named: Readonly<Record<string, (many: number) => number>> = {
  first: () => 0,
  former: () => 0,
  second: () => 1,
  third: () => 2,
  fourth: () => 3,
  latter: (many) => many - 1,
  last: (many) => many - 1,
};
/** Words that stand for one of the things that were named. */
export const onesWords: ReadonlySet<string> = new Set(Object.keys(named));
/** Which of so many it stands for. */
export const namedBy = (word: string, many: number): number | undefined => {
  const one = named[word]?.(many);
  return one !== undefined && one < many ? one : undefined;
};
const every: ReadonlySet<string> = new Set(['both', 'each', 'all']);
const between: ReadonlySet<string> = new Set([
  'is',
  'was',
  'are',
  'were',
  'being',
  'at',
  'about',
  'a',
  'one',
  'only',
  'just',
  'tooth',
  'of',
  'them',
]);
/** What joins sizes that are said in the order of their things. */
const joins: ReadonlySet<string> = new Set(['and', 'then', 'respectively']);

const kindOf = ({ measure, grade, terms }: Mark): string =>
  measure ? `measure ${measure.what ?? ''}` : grade ? 'grade' : (terms?.[0]?.k ?? '').replace('severityKept', 'severity');

/** The things that the words right before a size or a degree name; undefined where none is named. */
function namedBefore(tokens: readonly Token[], { from }: Mark, many: number): readonly number[] | undefined {
  let at = from - 1;
  while (between.has(tokens[at]?.t ?? '') && tokens[at]?.ends !== true) at -= 1;
  const word = tokens[at]?.ends ? '' : (tokens[at]?.t ?? '');
  if (every.has(word)) return Array.from({ length: many }, (_, k) => k);
  const one = namedBy(word, many);
  return one === undefined ? undefined : [one];
}

/** "severe on the latter" */
function namedBehind(tokens: readonly Token[], { to }: Mark, many: number): readonly number[] | undefined {
  const one =
    /^(?:on|at|in)$/.test(tokens[to]?.t ?? '') && tokens[to + 1]?.t === 'the' ? namedBy(tokens[to + 2]?.t ?? '', many) : undefined;
  return one === undefined ? undefined : [one];
}
const isOther = (tokens: readonly Token[], { from }: Mark): boolean => /\bother(?: one)?(?: is| was| being)?$/.test(words(tokens, from));
const words = (tokens: readonly Token[], to: number): string =>
  tokens
    .slice(Math.max(0, to - 4), to)
    .map(({ t }) => t)
    .join(' ');

/**
 * @param own marks of sizes, grades, degrees and changes behind the last of the things
 * @param many how many things there are
 * @returns for each of the marks the things that it is said of; undefined where the words do not tell
 */
export function sharesOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  own: readonly number[],
  many: number,
): readonly (readonly number[])[] | undefined {
  const [first] = own;
  if (many < 2 || first === undefined) return undefined;
  let of: readonly number[] | undefined;
  const told = own.map((m) => {
    const mark = marks[m] as Mark;
    // "the first three mil, the other five": the one that was not named.
    const other = many === 2 && of?.length === 1 && isOther(tokens, mark) ? [1 - (of[0] as number)] : undefined;
    return (of = other ?? namedBefore(tokens, mark, many) ?? namedBehind(tokens, mark, many) ?? of);
  });
  if (told.some((one) => one !== undefined)) return told.every((one) => one !== undefined) ? told : undefined;
  // "..., mild both of them"
  const behind = tokens[(marks[own.at(-1) as number] as Mark).to]?.t ?? '';
  if (every.has(behind)) return own.map(() => Array.from({ length: many }, (_, k) => k));
  const kind = kindOf(marks[first] as Mark);
  const listed = own.every(
    (m, k) =>
      kindOf(marks[m] as Mark) === kind &&
      (k === 0 || tokens.slice((marks[own[k - 1] as number] as Mark).to, (marks[m] as Mark).from).every(({ t }) => joins.has(t))),
  );
  return listed && own.length === many ? own.map((_, k) => [k]) : undefined;
}

/** "hooks on one oh six and two oh six, one small, one large": which of the two is which was not said. */
export const whichUnsaid = (marks: readonly Mark[], tokens: readonly Token[], own: readonly number[], many: number): boolean =>
  many === 2 &&
  own.length === 2 &&
  own.every((m) => {
    const { from } = marks[m] as Mark;
    return (
      kindOf(marks[m] as Mark) === kindOf(marks[own[0] as number] as Mark) &&
      /^(?:one|other)$/.test(tokens[['is', 'was', 'a'].includes(tokens[from - 1]?.t ?? '') ? from - 2 : from - 1]?.t ?? '')
    );
  });
