/** Work of another day, told in the phrase itself. */
import { workOfThePast } from '../../lexicon/history.ts';
import { gather } from '../lists.ts';
import type { Made } from '../made.ts';
import { isHead, type Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';
import { anywhere } from '../trie.ts';
import { each, type Rule } from './rule.ts';

const isPast = anywhere(workOfThePast);
const pastYear = /\bin (?:19|20)\d\d\b/;
const compared = /\b(?:than|since|as|from|like|to) (?:it was )?(?:last \w+|before|previously)\b/g;
const past = (text: string): boolean => isPast(text.split(' ')) || pastYear.test(text);
const alsoNow = /\b(today|now|this time|(?<!\bnot \w+ (?:up )?)again|just)\b/;
/** "... and it has not come back": said of work, that was on another day. */
function notBackSince({ marks: own }: Made, marks: readonly Mark[]): boolean {
  const at = marks.findIndex(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.kind === 'return'));
  return at > 0 && own.includes(marks.slice(0, at).findLastIndex(isHead));
}
/** "two oh nine extracted last year", "in twenty twenty": work of the past on a tooth is how the tooth stands. */
export const longAgo: Rule = (reads, { marks, tokens: all }) => {
  if (!reads.some(({ made }) => made.some(({ body }) => body?.kind === 'treatment'))) return reads;
  const tokens = unclaimed(marks, all);
  const whole = tokens.map(({ t }) => t).join(' ');
  const isNotBack = (made: Made): boolean => notBackSince(made, marks);
  return !past(whole.replaceAll(compared, '')) && !reads.some(({ made }) => made.some(isNotBack))
    ? reads
    : each(reads, (made) => {
        const body = made.body;
        // "canines clean this time, scaled them last year": each clause has its own time, where it says one.
        const own = clauseOf(made, marks, tokens);
        const text = past(own) ? own : whole;
        // "last year we took four mil off it": what was done then is what is known of the visit before.
        if (
          body?.kind === 'treatment' &&
          ['done', 'attempted', 'part-done'].includes(body.state) &&
          (body.procedure !== 'extract' || body.place === null) &&
          !made.revises &&
          !alsoNow.test(text) &&
          (past(text) || isNotBack(made))
        )
          return {
            body: { kind: 'fact', about: 'earlier-treatment', said: text, value: null },
            marks: made.marks,
            doubts: [],
            rules: [...made.rules, 'work of the past'],
          };
        if (body?.kind !== 'treatment' || body.procedure !== 'extract' || body.state !== 'done' || body.place === null) return made;
        return {
          ...made,
          body: { kind: 'finding', condition: 'previously-extracted', presence: 'present', when: 'now', place: body.place },
          doubts: [],
          rules: [...made.rules, 'work of the past'],
        };
      });
};

/** "reduced the hook, recheck in march": the month is of what comes next, which another rule took. */
const unclaimed = (marks: readonly Mark[], tokens: readonly Token[]): readonly Token[] => {
  const claimed = marks.filter(({ terms }) => terms?.every(({ k }) => k === 'stop'));
  return claimed.length === 0
    ? tokens
    : tokens.map((token, at): Token => (claimed.some(({ from, to }) => from <= at && at < to) ? { ...token, t: '' } : token));
};

/** The words from the pause before a rule's own marks to the one behind them. */
function clauseOf({ marks: own }: Made, marks: readonly Mark[], tokens: readonly Token[]): string {
  const at = Math.max(
    ...own.filter((m) => marks[m]?.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')).map((m) => marks[m]?.from ?? 0),
    0,
  );
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  const end = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
  return tokens
    .slice(from, end < 0 ? tokens.length : end + 1)
    .map(({ t }) => t)
    .join(' ');
}

/** "wolf teeth out last year", "had his wolf teeth done as a two year old": work of the past, at no tooth that was named. */
export const wolfTeethBefore: Rule = (reads, { text }) => {
  if (!reads.some(({ made }) => made.some(({ body }) => body?.kind === 'finding' && body.condition === 'wolf-tooth'))) return reads;
  const bodies = reads.flatMap(({ made }) => gather(made, ({ body }) => body));
  const nowhere = bodies.every((body) => ('place' in body && body.place === null) || body.kind === 'fact');
  if (!nowhere || !past(text) || alsoNow.test(text) || !/\b(?:out|done|pulled|drawn|removed|taken|extracted|off)\b/.test(text))
    return reads;
  return reads.map((read, i) => ({
    ...read,
    made:
      i > 0
        ? []
        : [
            {
              body: { kind: 'fact', about: 'earlier-treatment', said: text, value: null },
              marks: reads.flatMap(({ made }) => made.flatMap(({ marks }) => marks)),
              doubts: [],
              rules: ['work of the past'],
            },
          ],
  }));
};
