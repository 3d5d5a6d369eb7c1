/**
 * "Is the hook on one oh six mild", "should I refer two oh nine", "how much detomidine did he get": a clause that asks states nothing. What
 * would come of it is offered, beside what the phrase says without it; with its answer behind it there is nothing to offer.
 */
import { asking, askingAnywhere, askingOfPlaces } from '../lexicon/framing.ts';
import { either } from './either.ts';
import { answerOf, leads, ofTheMouth, onlyAsked } from './framed.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import type { Way } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

const forms = longestOf([[asking, true]]);
const anywhere = longestOf([[askingAnywhere, true]]);
const verbs: ReadonlySet<string> = new Set(askingOfPlaces);
/** "is not it", "are they": asks for assent to what was said. */
const tags: ReadonlySet<string> = new Set(['is', 'are', 'was', 'were', 'does', 'has', 'not', 'it', 'they', 'he', 'she', 'that']);

interface Clause {
  readonly from: number;
  readonly to: number;
}

/** The clause that asks. */
function askedIn(tokens: readonly Token[]): Clause | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    // "or is it two nine": the speaker's own second thought.
    if (tokens[at - 1]?.t === 'or') continue;
    const opens = begins(tokens, at);
    if (!(formAt(opens ? forms : anywhere, tokens, at) || (opens && verbs.has(tokens[at]?.t ?? '') && placeAt(tokens, at + 1)))) continue;
    const pause = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
    const to = pause < 0 ? tokens.length : pause + 1;
    if (!tokens.slice(at, to).every(({ t }) => tags.has(t))) return { from: at, to };
  }
  return undefined;
}

const begins = (tokens: readonly Token[], at: number): boolean => {
  for (let i = at - 1; i >= 0 && tokens[i]?.ends !== true; i -= 1) if (!leads.has(tokens[i]?.t ?? '')) return false;
  return true;
};
const placeAt = (tokens: readonly Token[], at: number): boolean => scan(tokens.slice(at, at + 4)).marks[0]?.place !== undefined;

export const asked: Way = (tokens, { once: readAs }) => {
  const clause = askedIn(tokens);
  if (clause === undefined) return undefined;
  const answer = answerOf(tokens, clause.to);
  const rest = [...tokens.slice(0, clause.from), ...tokens.slice(answer?.to ?? clause.to)];
  const found = readAs(answer ? [...tokens.slice(0, answer.at), ...tokens.slice(answer.to)] : tokens);
  if (answer?.yes) return { ...found, oneSentence: true };
  const without = rest.length > 0 ? readAs(rest) : ofTheMouth(found) ? { ...found, made: [] } : onlyAsked(found);
  if (answer) return { ...without, oneSentence: true };
  if (!ofTheMouth(found)) return { ...without, oneSentence: true };
  // What a question would change of an item that stands is no item to choose.
  const kept = found.made.map((one) =>
    one.revises === undefined || without.made.some(({ revises }) => JSON.stringify(revises) === JSON.stringify(one.revises))
      ? one
      : { marks: one.marks, rules: ['a question'], doubts: [{ doubt: 'unread' as const }] },
  );
  return { ...either({ ...found, made: kept }, without, 'a question'), oneSentence: true };
};
export const askedWords: readonly string[] = [...firstWords(forms, anywhere), ...verbs];
