/** A phrase between its pauses. */
import { light } from '../lexicon/fillers.ts';
import { gather } from './lists.ts';
import type { Reading } from './read.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const lightWords: ReadonlySet<string> = new Set(light);

/** The words where a part begins, the first of them too: one number where nobody paused. */
export const partsBegin = (tokens: readonly Token[]): readonly number[] => [
  0,
  ...gather(tokens, ({ ends }, i) => (ends === true ? tokens[i + 1]?.word : undefined)),
];

/** Whether something that was made took words on both sides of a pause, or may have: what rules out, what is past and a reason reach further than their own words. */
export function reachesOver({ made, marks, tokens }: Reading): boolean {
  const part: number[] = [];
  let at = 0;
  for (const { ends } of tokens) {
    part.push(at);
    if (ends === true) at += 1;
  }
  return made.some((one) => {
    if (one.body?.kind === 'not-examined' && one.body.reason !== undefined) return true;
    if (one.body?.kind === 'finding' && (one.body.presence !== 'present' || one.body.when !== 'now')) return true;
    const parts = gather(one.marks, (m) => part[marks[m]?.from ?? -1]);
    return parts.some((p) => p !== parts[0]);
  });
}

/** The tokens between pauses. */
export function partsOf(tokens: readonly Token[]): readonly (readonly Token[])[] {
  const ends = [...gather(tokens, ({ ends: pause }, i) => (pause === true && i + 1 < tokens.length ? i + 1 : undefined)), tokens.length];
  return ends.map((to, i) => tokens.slice(ends[i - 1] ?? 0, to));
}

/** How many words between the same two pauses as a mark name nothing that is known: what is told behind a pause is another thing. */
export function strangeBeside(marks: readonly Mark[], tokens: readonly Token[], at: number): number {
  const ends = (mark: Mark): boolean => tokens[mark.to - 1]?.ends === true;
  const from = marks.slice(0, at).findLastIndex(ends) + 1;
  const end = marks.findIndex((mark, i) => i >= at && ends(mark));
  return marks
    .slice(from, end < 0 ? marks.length : end + 1)
    .filter((mark) => mark.unknown && !tokens.slice(mark.from, mark.to).every(({ t }) => lightWords.has(t))).length;
}
