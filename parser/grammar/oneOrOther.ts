/** "one oh six has either a hook or a ramp", "ulcer on the right cheek or the left cheek": two findings, or places, of which one is meant, and neither is taken. */
import { either } from './either.ts';
import type { Reading } from './read.ts';
import type { Way } from './said.ts';
import { isGlue, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const articles: ReadonlySet<string> = new Set(['a', 'an', 'the', 'some']);
const names = (mark: Mark | undefined): boolean =>
  mark?.place === undefined && mark?.terms?.some((t) => t.k === 'condition' && t.strength !== 'absentSay') === true;
/** What turns both: "no hook or ramp". */
const turns = (mark: Mark): boolean => mark.terms?.some((t) => t.k === 'cue' && t.cue.means !== 'suspected') === true;
const describes = (mark: Mark): boolean =>
  mark.terms?.some((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'qualifier') === true;

/** @returns the words with the one name only, and with the other only; undefined where no "or" stands between two names */
function eachAlone(tokens: readonly Token[]): readonly [readonly Token[], readonly Token[]] | undefined {
  const or = tokens.findIndex(({ t }) => t === 'or');
  if (or < 1 || or === tokens.length - 1) return undefined;
  const before = scan(tokens.slice(0, or)).marks;
  const after = scan(tokens.slice(or + 1)).marks;
  const first = before.findLast((mark) => !isGlue(mark));
  const second = after.find((mark) => !isGlue(mark) && !describes(mark));
  if (before.some(turns)) return undefined;
  const parts = [first, second].every((mark) => mark?.place?.region !== undefined && mark.place.side !== undefined) && before.some(names);
  if (!parts && !(names(first) && names(second))) return undefined;
  let from = (first as Mark).from;
  while (from > 0 && !articles.has(tokens[from]?.t ?? '') && before.some((mark) => mark.to === from && describes(mark))) from -= 1;
  if (articles.has(tokens[from - 1]?.t ?? '')) from -= 1;
  return [
    [...tokens.slice(0, or), ...tokens.slice(or + 1 + (second as Mark).to)],
    [...tokens.slice(0, from), ...tokens.slice(or + 1)],
  ];
}

const found = ({ made }: Reading): boolean =>
  made.length > 0 && made.every(({ body }) => body?.kind === 'finding' && body.presence !== 'absent' && body.place !== null);
/** One question for both, where at once both were recorded. */
const eitherOf = (asHeard: Reading, first: Reading, second: Reading): Reading =>
  found(asHeard) && found(first) && found(second) ? either(first, second, 'one or the other') : asHeard;

export const oneOrOther: Way = (tokens, { once }) => {
  const others = eachAlone(tokens);
  return others && eitherOf(once(tokens), once(others[0]), once(others[1]));
};
