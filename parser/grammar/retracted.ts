/**
 * "thought there was a hook on one oh six but there isn't", "looked like caries, no, nothing there": what was supposed and is
 * denied in the same breath is ruled out. The word of supposing becomes one of ruling out, and the denial has done its work.
 */
import type { ScopeCue } from '../lexicon/scopes.ts';
import { first } from './lists.ts';
import { isHead, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const denial =
  /^(?:(?:but|and|then|actually|well|oh|no|nope) )*(?:(?:there|it|that|they|he|she) (?:is|was|are|has|does) (?:not|no|none|nothing)(?: there| one| any| it| so| have it| have one)?|(?:is|was) not(?: there| one| any)?|nothing(?: there| at all| after all)?|not there|none|no|(?:could|can|did) not (?:find|feel|see) (?:it|one|any|anything)(?: again)?)(?: at all| after all| in the end)?$/;
const absent: ScopeCue = { say: [], means: 'absent', looks: 'forward' };
const supposing = (mark: Mark | undefined): boolean =>
  first(mark?.terms ?? [], (t) => (t.k === 'cue' && t.cue.means === 'suspected' && t.cue.looks === 'forward' ? true : undefined)) ?? false;

export function retracted(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  // "thought two eleven was loose": supposed of the tooth named right behind it.
  const cue = marks.findIndex((mark, i) => supposing(mark) || (tokens[mark.from]?.t === 'thought' && marks[i + 1]?.place !== undefined));
  const head = marks.findIndex((mark, i) => i > cue && isHead(mark));
  if (cue < 0 || head < 0) return marks;
  for (let at = head + 1; at < marks.length; at += 1) {
    const end = marks.findLastIndex(
      (mark, i) =>
        i >= at &&
        (i === marks.length - 1 || tokens[mark.to - 1]?.ends === true) &&
        denial.test(
          tokens
            .slice(marks[at]?.from, mark.to)
            .map(({ t }) => t)
            .join(' '),
        ),
    );
    if (end < 0) continue;
    const { from, to } = marks[cue] as Mark;
    return [
      ...marks.slice(0, cue),
      { from, to, terms: [{ k: 'cue', cue: absent }] },
      ...marks.slice(cue + 1, at),
      { from: (marks[at] as Mark).from, to: (marks[end] as Mark).to, terms: [{ k: 'glue' }] },
      ...marks.slice(end + 1),
    ];
  }
  return marks;
}
