/**
 * A verb of work is governed by what stands before it: "managed to reduce" is done, "would not let me reduce" and "decided not to" are not, "the
 * hook should be reduced" is advised, "she doesn't want it reduced" declined. Each is said again in the plain words that the grammar reads.
 */
import {
  governing,
  halfwaySay,
  irregular,
  laterSay,
  offering,
  passive,
  refusing,
  turnedDown,
  urging,
  wishAsked,
  type Governing,
} from '../lexicon/governing.ts';
import { handleSay } from '../lexicon/handling.ts';
import { firstWords, formAt, longestOf, type Form, type Forms } from './forms.ts';
import type { Rewording } from './said.ts';
import { scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

const governs = longestOf(governing.map((row) => [row.say, row] as const));
const passives = longestOf(passive.map((row) => [row.say, row] as const));
const withThing = longestOf([
  [refusing, 'declined' as const],
  [urging, 'advised' as const],
]);
const offers = longestOf([[offering, true]]);
const turns = longestOf([[turnedDown, true]]);
const wishes = longestOf([[wishAsked, true]]);
const later = longestOf([[laterSay, true]]);
const halfway = longestOf([[halfwaySay, true]]);
/** Words between a governing word and its verb, and between a thing and what is to be done to it. */
const small: ReadonlySet<string> = new Set([
  'just',
  'also',
  'really',
  'quickly',
  'carefully',
  'gently',
  'even',
  'then',
  'fully',
  'properly',
  'completely',
  'well',
  'better',
  'all',
  'both',
  'being',
  'having',
]);
/** Who is opened or turned, and no part of a mouth. */
const persons: ReadonlySet<string> = new Set(['him', 'her', 'me', 'us', 'you']);
const speakers: ReadonlySet<string> = new Set(['i', 'we']);
/** How far a participle may stand from what refuses it. */
const NEAR = 14;

/** The plain words of each state, before a past form and before the thing it is done to. */
const plainly: Readonly<Record<Governing['state'], readonly string[]>> = {
  done: [],
  'not-done': ['not'],
  declined: ['owner', 'declined'],
  planned: ['planned'],
  advised: ['advised'],
  'part-done': ['partly'],
};

function plainlySaid(tokens: readonly Token[]): readonly Token[] {
  let said = tokens;
  for (let at = 0; at < said.length; at += 1)
    said = soon(said, at) ?? offered(said, at) ?? wanted(said, at) ?? refused(said, at) ?? inPassive(said, at) ?? before(said, at) ?? said;
  return said;
}

const put = (words: readonly string[], { word }: Token): readonly Token[] => words.map((t) => ({ t, word }));
const over = (tokens: readonly Token[], from: number, to: number): boolean => tokens.slice(from, to).some(({ ends }) => ends);
const some = <T>(forms: Forms<T>, tokens: readonly Token[], from: number): boolean =>
  tokens.some((_, i) => i >= from && formAt(forms, tokens, i) !== undefined);
const past = (at: number, form: Form<unknown>): number => at + form.words.length;

const present: ReadonlySet<string> = new Set(['am', 'is', 'are']);
const gerunds = new Map(
  [...handleSay].flatMap((verb) => [`${verb}ing`, `${verb.replace(/e$/, '')}ing`, `${verb}${verb.at(-1)}ing`].map((ing) => [ing, verb])),
);
/** "the vet's taking those out next month": what somebody is doing then, he will do. */
function soon(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const verb = present.has(tokens[at]?.t ?? '') ? gerunds.get(tokens[at + 1]?.t ?? '') : undefined;
  return verb !== undefined && !over(tokens, at, at + 1) && some(later, tokens, at + 2)
    ? [...tokens.slice(0, at), { ...(tokens[at] as Token), t: 'will' }, { ...(tokens[at + 1] as Token), t: verb }, ...tokens.slice(at + 2)]
    : undefined;
}

/** "managed to reduce", "will not be reducing": the verb in its past form, behind plain words. */
function before(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(
    governs,
    tokens,
    at,
    (one) => (!one.means.later || some(later, tokens, past(at, one))) && (!one.means.halfway || some(halfway, tokens, past(at, one))),
  );
  if (form === undefined || over(tokens, at, past(at, form))) return at === 0 ? bare(tokens) : undefined;
  let verb = past(at, form);
  while (small.has(tokens[verb]?.t ?? '')) verb += 1;
  const did = persons.has(tokens[verb + 1]?.t ?? '') || opensWide(tokens, verb) ? undefined : pastAt(tokens, verb);
  if (did === undefined || (form.means.gerund && !tokens[verb]?.t.endsWith('ing')) || (form.means.tried && did.procedure === 'extract'))
    return undefined;
  return [
    ...tokens.slice(0, at),
    ...put(plainly[form.means.state], tokens[at] as Token),
    { ...(tokens[verb] as Token), t: did.t },
    ...(form.means.halfway ? withoutHalfway(tokens.slice(verb + 1)) : tokens.slice(verb + 1)),
  ];
}
/** "he won't open that far": his mouth, and no gap. */
const opensWide = (tokens: readonly Token[], verb: number): boolean =>
  tokens[verb]?.t === 'open' && (tokens[verb + 1] === undefined || tokens[verb]?.ends === true || howWide.has(tokens[verb + 1]?.t ?? ''));
const howWide: ReadonlySet<string> = new Set([
  'that',
  'far',
  'wide',
  'up',
  'his',
  'her',
  'enough',
  'any',
  'wider',
  'further',
  'properly',
  'for',
]);
/** "stopped rasping part way through": "partly" says it. */
function withoutHalfway(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => formAt(halfway, tokens, i) !== undefined);
  const end = at + (formAt(halfway, tokens, at)?.words.length ?? 0);
  const to = tokens[end]?.t === 'through' && !over(tokens, at, end) ? end + 1 : end;
  return tokens.map((token, i) => (at <= i && i < to ? { ...token, t: 'so' } : token));
}

/** "reduce the hook on one oh six next time": an infinitive with nothing before it is for later where the phrase says so. */
function bare(tokens: readonly Token[]): readonly Token[] | undefined {
  if (!some(later, tokens, 1)) return undefined;
  const from = tokens[0]?.t === 'to' ? 1 : 0;
  const did = tokens[from]?.t.endsWith('ing') ? undefined : pastAt(tokens, from);
  // "lower left" is a place.
  return did && scan(tokens.slice(from)).marks[0]?.place === undefined
    ? [...put(plainly.planned, tokens[0] as Token), { ...(tokens[from] as Token), t: did.t }, ...tokens.slice(from + 1)]
    : undefined;
}

/** "should be reduced", "has been reduced": the participle stands as it is. */
function inPassive(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(passives, tokens, at);
  const been = form ? undefined : beenAt(tokens, at);
  if (form === undefined && been === undefined) return undefined;
  let verb = form ? past(at, form) : (been as number);
  while (small.has(tokens[verb]?.t ?? '')) verb += 1;
  const did = form ? (doneAt(tokens, verb) ?? pastAt(tokens, verb)?.procedure) : doneAt(tokens, verb);
  const placed = scan(tokens.slice(0, at)).marks.some(({ place }) => place !== undefined);
  if (did === undefined || (been !== undefined && did === 'extract') || !placed || over(tokens, at - 1, verb)) return undefined;
  const t = form ? (pastAt(tokens, verb)?.t ?? (tokens[verb] as Token).t) : (tokens[verb] as Token).t;
  const state = form ? plainly[form.means.state] : [];
  return [...tokens.slice(0, at), ...put(state, tokens[at] as Token), { ...(tokens[verb] as Token), t }, ...tokens.slice(verb + 1)];
}
const beings: ReadonlySet<string> = new Set(['is', 'are', 'was', 'were', 'been', 'got']);
/** Behind "has been", "was", "got": where the participle stands, if it is one. */
const beenAt = (tokens: readonly Token[], at: number): number | undefined => {
  const has = ['has', 'have', 'had'].includes(tokens[at]?.t ?? '') && tokens[at + 1]?.t === 'been';
  return has ? at + 2 : beings.has(tokens[at]?.t ?? '') && tokens[at + 1]?.t !== 'not' ? at + 1 : undefined;
};

/** "does not want the hook on one oh six reduced": declined, and the verb before the thing. */
function refused(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(withThing, tokens, at);
  if (form === undefined) return undefined;
  const from = past(at, form);
  const verb = tokens.findIndex((_, i) => i > from && i < from + NEAR && doneAt(tokens, i) !== undefined && !over(tokens, at, i));
  const state = form.means === 'declined' && speakers.has(tokens[at - 1]?.t ?? '') ? 'not-done' : form.means;
  const [before, plain] = [tokens.slice(0, at), put(plainly[state], tokens[at] as Token)];
  if (verb >= 0) {
    const to = verb + lengthAt(tokens, verb);
    return [...before, ...plain, ...tokens.slice(verb, to), ...tokens.slice(from, verb), ...tokens.slice(to)];
  }
  // "said no to x rays of three oh eight": the work is named by its noun.
  const noun = articles.has(tokens[from]?.t ?? '') ? from + 1 : from;
  const [named] = scan(tokens.slice(noun, noun + 4)).marks;
  if (named?.from === 0 && isWork(named)) return [...before, ...plain, ...tokens.slice(noun)];
  // "will not have the bit seats done"
  const done = tokens.findIndex(({ t }, i) => i > from && i < from + NEAR && t === 'done' && !over(tokens, at, i));
  return done > 0 && scan(tokens.slice(from, done)).marks.some(isWork)
    ? [...before, ...plain, ...tokens.slice(from, done), ...tokens.slice(done + 1)]
    : undefined;
}

const articles: ReadonlySet<string> = new Set(['the', 'any', 'an', 'a']);
const isWork = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') === true;
/** How many words the participle here has: "x rayed", "taken down". */
const lengthAt = (tokens: readonly Token[], at: number): number => scan(tokens.slice(at, at + 4)).marks[0]?.to ?? 1;

/** "do you want them rasped": asked, and so work without a verb of doing. */
function wanted(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(wishes, tokens, at);
  if (form === undefined) return undefined;
  const from = past(at, form);
  const verb = tokens.findIndex((_, i) => i >= from && i < from + NEAR && doneAt(tokens, i) !== undefined && !over(tokens, at, i));
  const did = tokens[verb];
  const noun = did && nounOf(did.t);
  return noun === undefined
    ? undefined
    : [...tokens.slice(0, at), ...tokens.slice(from, verb), { ...did, t: noun } as Token, ...tokens.slice(verb + 1)];
}
/** The gerund of a past form by the rule: "rasped", "rasping". */
const nounOf = (t: string): string | undefined => (t.endsWith('ed') ? `${t.slice(0, -2)}ing` : undefined);

/** "offered to reduce the hook but she declined". */
function offered(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const form = formAt(offers, tokens, at);
  const did = form && pastAt(tokens, past(at, form));
  if (form === undefined || did === undefined) return undefined;
  const verb = past(at, form);
  const no = tokens.findIndex((_, i) => i > verb && formAt(turns, tokens, i) !== undefined);
  if (no < 0) return undefined;
  const words = formAt(turns, tokens, no)?.words.length ?? 0;
  return [
    ...tokens.slice(0, at),
    ...put(plainly.declined, tokens[at] as Token),
    { ...(tokens[verb] as Token), t: did.t },
    ...tokens.slice(verb + 1, no),
    ...tokens.slice(no + words),
  ];
}

/** What was done in the words that begin here, where they are a past form. */
function doneAt(tokens: readonly Token[], at: number): string | undefined {
  if (!didWords.has(tokens[at]?.t ?? '')) return undefined;
  const [mark] = scan(tokens.slice(at, at + 4)).marks;
  const work = mark?.from === 0 ? mark.terms?.find((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done) : undefined;
  return work?.k === 'work' && work.term.as === 'procedure' ? work.term.id : undefined;
}

/** The past form of the infinitive or gerund that stands here, where it is a verb of work. */
function pastAt(tokens: readonly Token[], at: number): { readonly t: string; readonly procedure: string } | undefined {
  const token = tokens[at];
  if (token === undefined || !/^[a-z]+$/.test(token.t)) return undefined;
  for (const t of pastsOf(token.t)) {
    const procedure = doneAt([{ ...token, t }, ...tokens.slice(at + 1, at + 4)], 0);
    if (procedure !== undefined) return { t, procedure };
  }
  return undefined;
}
const irregulars = new Map(Object.entries(irregular));
function pastsOf(verb: string): readonly string[] {
  const known = irregulars.get(verb);
  if (known !== undefined) return [known];
  const stem = verb.endsWith('ing') ? verb.slice(0, -3) : verb;
  return stem.endsWith('e')
    ? [`${stem}d`]
    : [`${stem}ed`, `${stem}${stem.at(-1) ?? ''}ed`, ...(stem.endsWith('y') ? [`${stem.slice(0, -1)}ied`] : [])];
}

export const governed: readonly Rewording[] = [
  {
    rule: plainlySaid,
    needs: [...firstWords(governs, passives, withThing, offers, wishes, later), ...beings, 'has', 'have', 'had'],
  },
];
