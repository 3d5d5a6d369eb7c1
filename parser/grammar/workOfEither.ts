/**
 * "Hook on one oh six and ramp on three eleven reduced", "hook on one oh six reduced ramp on three eleven": with no pause the verb may be of the
 * one or of both, of what stands before it or behind. Both readings are offered.
 */
import { either } from './either.ts';
import type { Reading } from './read.ts';
import type { Way } from './said.ts';
import { isGlue, scan, type Mark } from './scan.ts';
import { done, kindOf, placed } from './sharedWork.ts';
import type { Token } from './tokens.ts';
import { workWords } from './vocabulary.ts';

/** @returns where the verb is said once more, behind the first place: "hook on one oh six [reduced] and ramp on three eleven reduced" */
function ofBoth(tokens: readonly Token[]): readonly Token[] | undefined {
  const last = tokens.length - 1;
  const may =
    tokens.some(({ t, ends }, i) => t === 'and' && !ends && i > 1) && [last, last - 1].some((i) => workWords.has(tokens[i]?.t ?? ''));
  const [first, place, second, other, verb, ...more] = may ? scan(tokens).marks.filter((mark) => !isGlue(mark)) : [];
  const kind = kindOf(first);
  if (
    verb === undefined ||
    more.length > 0 ||
    !done(verb) ||
    kind === undefined ||
    kindOf(second) !== kind ||
    !placed(place) ||
    !placed(other) ||
    tokens.slice(0, verb.to - 1).some(({ ends }) => ends) ||
    !tokens.slice((place as Mark).to, (second as Mark).from).some(({ t }) => t === 'and')
  )
    return undefined;
  const to = (place as Mark).to;
  return [...tokens.slice(0, to), ...tokens.slice(verb.from, verb.to), ...tokens.slice(to)];
}
/** @returns with a pause behind the verb: "hook on one oh six reduced[,] ramp on three eleven", where it may be the work of either */
function ofFirst(tokens: readonly Token[]): readonly Token[] | undefined {
  const at = tokens.findIndex(({ t }, i) => i > 1 && workWords.has(t));
  if (at < 0 || at > tokens.length - 3 || tokens.slice(0, at + 1).some(({ ends }) => ends)) return undefined;
  const [first, place, verb, ...more] = scan(tokens.slice(0, at + 1)).marks.filter((mark) => !isGlue(mark));
  if (verb === undefined || !done(verb) || more.length > 0 || kindOf(first) === undefined || !placed(place)) return undefined;
  const [second, other] = scan(tokens.slice(at + 1)).marks.filter((mark) => !isGlue(mark));
  return kindOf(second) !== undefined && second?.from === 0 && placed(other)
    ? tokens.map((token, i) => (i === at ? { ...token, ends: true } : token))
    : undefined;
}
/** The question is about the verb. */
const workOf = (one: Reading, other: Reading): Reading => ({
  ...either(
    one,
    other,
    'work between or behind two findings',
    one.marks.flatMap((mark, m) => (done(mark) ? [m] : [])),
  ),
  oneSentence: true,
});
/** Of the last or of both; then of the first or of the second. */
export const workOfEither: Way = (tokens, { once }) => {
  const both = ofBoth(tokens);
  if (both) return workOf(once(tokens), once(both));
  const first = ofFirst(tokens);
  return first && workOf(once(first), once(tokens));
};
