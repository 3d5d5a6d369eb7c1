/**
 * "Is there a hook on one oh six" states nothing: with its answer behind it ("no, there isn't") it does, and without one both readings are
 * offered. So too what was looked for, and what a "no" behind it may take back.
 */
import { ringIf } from '../lexicon/advising.ts';
import { conditions } from '../lexicon/conditions.ts';
import {
  askedOf,
  answersNo,
  answersYes,
  beforeAnswers,
  expected,
  hearsay,
  openQuestions,
  questions,
  questionVerbs,
  searching,
  turnedVerbs,
} from '../lexicon/framing.ts';
import { either } from './either.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import type { Reading } from './read.ts';
import type { Way } from './said.ts';
import { isGlue, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const asks = longestOf([[questions, true]]);
const looks = longestOf([[searching, true]]);
/** Whether it asks without an answer too. */
const opens = longestOf([
  [openQuestions, true],
  [expected, false],
]);
const others = longestOf([[hearsay, true]]);
/** Longest first, and whether it says yes. */
const answers = longestOf([
  [answersNo, false],
  [answersYes, true],
]);
const joining: ReadonlySet<string> = new Set(beforeAnswers);
const verbs: ReadonlySet<string> = new Set(questionVerbs);
const beings: ReadonlySet<string> = new Set(turnedVerbs);
const givers: ReadonlySet<string> = new Set(askedOf);
/** A sentence may begin with these and still ask. */
export const leads: ReadonlySet<string> = new Set([
  'and',
  'so',
  'but',
  'well',
  'now',
  'okay',
  'ok',
  'right',
  'then',
  'oh',
  'um',
  'er',
  'hang',
  'hold',
  'on',
  'wait',
  'just',
  'or',
]);
const articles: ReadonlySet<string> = new Set(['a', 'an', 'any', 'some']);
const definite: ReadonlySet<string> = new Set(['the', 'that', 'this', 'these', 'those', 'his', 'her', 'its']);
/** Words between what was looked at and "for". */
const NEAR = 8;

interface Framed {
  /** What is left when question and answer are taken away, and the same ruled out. */
  readonly found: readonly Token[];
  readonly ruledOut: readonly Token[];
  /** Where it was answered. */
  readonly yes?: boolean;
  readonly words: readonly number[];
}

function framed(tokens: readonly Token[]): Framed | undefined {
  const opener = openerOf(tokens);
  if (opener === undefined && answerOf(tokens, 2) === undefined) return undefined;
  const { marks } = scan(tokens);
  const named = marks.find(
    (mark) => mark.from >= (opener?.behind ?? 0) && (namesFinding(mark) || (opener?.turned === true && isAgent(mark))),
  );
  if (named === undefined) return undefined;
  const answer = answerOf(tokens, named.to);
  const article = tokens.findLastIndex(({ t }, i) => i < named.from && i >= (opener?.behind ?? 0) && articles.has(t) && i > named.from - 5);
  const lead = tokens[article < 0 ? named.from - 1 : article]?.t ?? '';
  // "is that sore" asks, "is that ramp meant to be that steep" says something else of it.
  const pronoun = named.from === opener?.behind && closes(tokens, named);
  if (
    opener
      ? (definite.has(lead) && !pronoun && !opener.turned) || (opener.answered && !answer)
      : !(answer && bareAnswer(marks, tokens, named, answer))
  )
    return undefined;
  const gone = new Set([...(opener?.at ?? []), ...(answer ? range(answer.at, answer.to) : [])]);
  const without = (no: boolean): readonly Token[] =>
    tokens.flatMap((token, i) => {
      const put = no && i === (article < 0 ? named.from : article) ? [{ t: 'no', word: token.word }] : [];
      return [...put, ...(gone.has(i) || (no && i === article) ? [] : [token])];
    });
  return {
    found: without(false),
    ruledOut: without(true),
    ...(answer && (opener || answer.to - answer.at > 1) ? { yes: answer.yes } : {}),
    words: [...gone].map((i) => (tokens[i] as Token).word),
  };
}

/** Both readings of a question that nobody answered. */
function answeredOrAsked(found: Reading, ruledOut: Reading, words: readonly number[]): Reading {
  const of = new Set(words);
  return either(
    found,
    ruledOut,
    'a question',
    found.marks.flatMap(({ from, to }, m) => (found.tokens.slice(from, to).some(({ word }) => of.has(word)) ? [m] : [])),
  );
}

/** "when was he last done": a fact or work of no place is asked of a person, who answers or does not. */
export const ofTheMouth = (reading: Reading): boolean =>
  reading.made.some(
    ({ body }) =>
      (body?.kind === 'finding' && (body.place !== null || conditions[body.condition].group !== 'horse' || !ofSomebody(reading))) ||
      (body?.kind === 'sedation' && (body.agent !== undefined || body.dose !== undefined || !ofSomebody(reading))) ||
      (body !== undefined && body.kind !== 'finding' && body.kind !== 'sedation' && 'place' in body && body.place !== null),
  );
/** "is he sedated", "have you noticed her dropping feed": how the horse is, asked of who knows it, is no sight of this mouth. "is he quidding, yes a bit" may be answered. */
const ofSomebody = ({ tokens }: Reading): boolean =>
  tokens.some(({ t }) => somebody.has(t)) &&
  !tokens.some(({ t }) => replies.has(t)) &&
  !tokens.slice(0, -NAME - 1).some(({ ends }, i) => ends === true && i > 1);
/** Words behind the question that may be a name. */
const NAME = 2;
const somebody: ReadonlySet<string> = new Set(['he', 'she', 'him', 'her', 'it', 'they', 'you']);
const replies: ReadonlySet<string> = new Set(['yes', 'yeah', 'yep', 'yup', 'aye', 'no', 'nope', 'nah']);

/** What is asked of a person is talk: nothing is made of it, and no name in it is left to be read. */
export const onlyAsked = (reading: Reading): Reading => ({
  ...reading,
  made: [],
  ...(reading.made.length > 0 ? { role: reading.role.map((role) => (role === 'head' ? ('glue' as const) : role)) } : {}),
});

/** A question with its answer, or both readings of it; what was looked for. */
const warns: ReadonlySet<string> = new Set(['any', 'if', 'so', 'and']);
export const questioned: Way = (tokens, { once }) => {
  // "any bleeding after tomorrow, phone me": nothing is asked.
  if (warns.has(tokens[0]?.t ?? '') && ringIf.test(tokens.map(({ t }) => t).join(' '))) return undefined;
  const frame = framed(tokens);
  if (frame === undefined) return undefined;
  const as = (words: readonly Token[]): Reading => ({ ...once(words), oneSentence: true });
  if (frame.yes !== undefined) return as(frame.yes ? frame.found : frame.ruledOut);
  const found = as(frame.found);
  if (!ofTheMouth(found)) return onlyAsked(found);
  // "has the vet reduced it": the work is asked about, and not done either way.
  const ruledOut = as(frame.ruledOut);
  const made = ruledOut.made.filter(({ body }) => body?.kind !== 'treatment');
  return answeredOrAsked(found, { ...ruledOut, made }, frame.words);
};
export const questionWords: readonly string[] = [...firstWords(asks, looks, opens, answers), ...verbs, ...beings];

const range = (from: number, to: number): readonly number[] => Array.from({ length: to - from }, (_, i) => from + i);
const closes = (tokens: readonly Token[], { to }: Mark): boolean => to === tokens.length || tokens[to - 1]?.ends === true;
const isAgent = (mark: Mark): boolean => mark.terms?.some((t) => t.k === 'work' && t.term.as === 'agent') ?? false;
const namesFinding = (mark: Mark): boolean => mark.terms?.some((t) => t.k === 'condition' && t.strength !== 'absentSay') ?? false;

interface Opener {
  readonly at: readonly number[];
  readonly behind: number;
  /** The verb stands before what it is said of. */
  readonly turned?: true;
  /** Asks only where it is answered. */
  readonly answered?: true;
}
/** The words that ask, and the first behind them. */
function openerOf(tokens: readonly Token[]): Opener | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    const word = tokens[at]?.t ?? '';
    // "no doubt there is a hook": there is.
    const open = word === 'doubt' && ['no', 'without'].includes(tokens[at - 1]?.t ?? '') ? undefined : formAt(opens, tokens, at);
    if (open)
      return { at: range(at, at + open.words.length), behind: at + open.words.length, ...(open.means ? {} : { answered: true as const }) };
    const for_ =
      formAt(looks, tokens, at) && tokens[at - 1]?.t !== 'not'
        ? tokens.findIndex(({ t }, i) => i > at && i < at + NEAR && t === 'for')
        : -1;
    if (for_ > 0) return { at: [at, for_], behind: for_ + 1 };
    const ask = formAt(asks, tokens, at);
    if (ask === undefined && !verbs.has(word) && !beings.has(word)) continue;
    const begins = tokens
      .slice(0, at)
      .every(({ t, ends }, i, before) => ends === true || leads.has(t) || before.slice(i).some((one) => one.ends));
    if (!begins) continue;
    if (turnedAt(tokens, at)) return { at: [at], behind: at + 1, turned: true };
    if (ask) return { at: range(at, at + ask.words.length), behind: at + ask.words.length };
    const have = verbs.has(word) ? tokens.findIndex(({ t }, i) => i > at && i < at + NEAR && (t === 'have' || t === 'got')) : -1;
    if (have > 0 && scan(tokens.slice(at + 1, have)).marks.some(({ place }) => place !== undefined))
      return { at: [at, have], behind: at + 1 };
  }
  return undefined;
}

/** "is the left cheek sore": a place and then, at the sentence's end, a finding; "did the vet use detomidine": somebody, and then a medicine. */
function turnedAt(tokens: readonly Token[], at: number): boolean {
  const marks = scan(tokens.slice(at + 1)).marks.filter((mark) => !isGlue(mark));
  if (verbs.has(tokens[at]?.t ?? '')) return givers.has(tokens[at + 1]?.t ?? '') && marks.some(isAgent);
  const [place, named] = marks;
  return (
    place?.place !== undefined && !namesFinding(place) && named !== undefined && namesFinding(named) && closes(tokens.slice(at + 1), named)
  );
}

/** The answer, at the end of a sentence. */
export function answerOf(
  tokens: readonly Token[],
  from: number,
): { readonly at: number; readonly to: number; readonly yes: boolean } | undefined {
  for (let at = from; at < tokens.length; at += 1) {
    const form = formAt(
      answers,
      tokens,
      at,
      ({ words }) => at + words.length === tokens.length || tokens[at + words.length - 1]?.ends === true,
    );
    if (form === undefined) continue;
    let start = at;
    while (start > from && joining.has(tokens[start - 1]?.t ?? '')) start -= 1;
    return { at: start, to: at + form.words.length, yes: form.means };
  }
  return undefined;
}

/** Without a question before it an answer counts behind one finding with one place, at the phrase's end, where it turns what was said. */
function bareAnswer(
  marks: readonly Mark[],
  tokens: readonly Token[],
  named: Mark,
  { at, to, yes }: { readonly at: number; readonly to: number; readonly yes: boolean },
): boolean {
  const before = marks.filter((mark) => mark.to <= at && !isGlue(mark));
  const turned = before.some((mark) => mark.terms?.some((t) => t.k === 'cue' && t.cue.kind !== 'pseudo'));
  return (
    !yes &&
    !turned &&
    to === tokens.length &&
    before.filter(({ place }) => place !== undefined).length === 1 &&
    before.filter(namesFinding).length === 1 &&
    before.every((mark) => mark === named || mark.place !== undefined || !mark.terms?.some((t) => t.k === 'work'))
  );
}

/** What another is said to have found today is asked about, and not what was done or was there before. */
export function hearsaid(tokens: readonly Token[], reading: Reading): Reading {
  if (!tokens.some((_, at) => formAt(others, tokens, at) !== undefined)) return reading;
  const made = reading.made.filter(
    ({ body }) => !(body?.kind === 'finding' && body.when === 'now' && body.place !== null && conditions[body.condition].group !== 'horse'),
  );
  return made.length === reading.made.length
    ? { ...reading, oneSentence: true }
    : { ...either(reading, { ...reading, made }, 'said by another'), oneSentence: true };
}
