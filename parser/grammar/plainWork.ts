/**
 * "Will do the hook next time", "the cap popped off", "dressed the ramp back", "left the wolf tooth in": what was done is told by a word of no
 * trade together with the thing. Each is said again with the plain verb of that thing, which the grammar governs and reads like any other.
 */
import type { Handled } from '../lexicon/handling.ts';
import { handledSay, handleSay, handling } from '../lexicon/handling.ts';
import {
  atTheEnd,
  backwards,
  describing,
  failing,
  generic,
  goesOn,
  halfDone,
  inVain,
  leadsVerb,
  leavingSay,
  leftHow,
  partedFrom,
  plainVerbs,
  portions,
  takeApart,
  takingApart,
  tools,
  touching,
  trying,
  unwanted,
  workedOn,
  type Verb,
} from '../lexicon/plainWork.ts';
import { formAt, longestOf, type Forms } from './forms.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

type Tokens = readonly Token[];
/** What is worked on, from its article to the end of where it is. */
interface Thing {
  readonly kind: Handled;
  readonly verb: Verb;
  readonly from: number;
  readonly to: number;
}

const forms = <T extends number>(say: readonly (readonly [string, T])[]): Forms<T> => longestOf(say.map(([form, at]) => [[form], at]));
const verbs = forms([
  [generic[0], 0],
  [generic[1], 1],
  [generic[2], 2],
  [touching[0], 0],
  [touching[1], 1],
  [touching[2], 2],
]);
const touches: ReadonlySet<string> = new Set(touching);
const withTool = longestOf([[tools, true]]);
const left = longestOf([[leftHow, true]]);
const couldNot = longestOf([[failing, true]]);
const tried = longestOf([[trying, true]]);
const vain = longestOf([[inVain, true]]);
const parts = longestOf([[portions, true]]);

const nouns: ReadonlySet<string> = new Set(Object.keys(workedOn).flatMap((noun) => [noun, `${noun}s`]));
const between: ReadonlySet<string> = new Set([
  'has',
  'have',
  'had',
  'been',
  'was',
  'were',
  'is',
  'are',
  'now',
  'just',
  'also',
  'all',
  'both',
  'easily',
  'nicely',
  'today',
  'got',
  'it',
  'only',
  'half',
  'way',
  'halfway',
  'partly',
  'being',
]);
/** Beside the things themselves: what is said of a tooth by its number. */
const wakes: ReadonlySet<string> = new Set(['half', 'out', 'leave', 'left']);
const particles: ReadonlySet<string> = new Set(['off', 'out', 'away', 'down', 'back', 'free']);
const links: ReadonlySet<string> = new Set(['on', 'at', 'in', 'of', 'the', 'to', 'and', 'from', 'his', 'her', 'side', 'up', 'there']);
const NEAR = 7;

/** @returns the tokens said plainly; the same list where nothing is */
export function plainWork(tokens: Tokens): Tokens {
  return tokens.some(({ t }) => nouns.has(t) || wakes.has(t)) ? rules.reduce((said, rule) => eachOnce(said, rule), tokens) : tokens;
}
type Rule = (tokens: Tokens, at: number) => Tokens | undefined;
const eachOnce = (tokens: Tokens, rule: Rule): Tokens => {
  for (let at = 0; at < tokens.length; at += 1) {
    const said = rule(tokens, at);
    if (said) return said;
  }
  return tokens;
};

const t = (tokens: Tokens, at: number): string => tokens[at]?.t ?? '';
const ended = (tokens: Tokens, from: number, to: number): boolean => tokens.slice(from, to).some(({ ends }) => ends);
const as = (said: string, { word, ends }: Token): Token => ({ t: said, word, ...(ends ? { ends } : {}) });
const stops = (tokens: Tokens, at: number): boolean => at >= tokens.length || tokens[at - 1]?.ends === true;

/** The thing whose name, or what describes it, begins here. */
function thingAt(tokens: Tokens, from: number): Thing | undefined {
  let at = from;
  while (describing.has(t(tokens, at)) && tokens[at]?.ends !== true) at += 1;
  const noun = t(tokens, at);
  const kind = workedOn[noun] ?? workedOn[noun.replace(/s$/, '')];
  const verb = kind && plainVerbs[kind];
  if (verb === undefined || kind === undefined || (kind === 'tooth' && t(tokens, at - 1) !== 'wolf')) return undefined;
  return { kind, verb, from, to: placed(tokens, at + 1) };
}
/** The same, or a tooth by its number. */
function toothAt(tokens: Tokens, from: number): Thing | undefined {
  const [mark] = scan(tokens.slice(from, from + NEAR)).marks;
  return mark?.place?.codes !== undefined && mark.from === 0
    ? { kind: 'tooth', verb: plainVerbs.tooth as Verb, from, to: from + mark.to }
    : undefined;
}
/** Where the words of place that begin here end. */
function placed(tokens: Tokens, from: number): number {
  if (tokens[from - 1]?.ends) return from;
  const marks = scan(tokens.slice(from)).marks;
  let to = from;
  for (const mark of marks) {
    if (mark.place !== undefined) to = from + mark.to;
    else if (!tokens.slice(from + mark.from, from + mark.to).every((token) => links.has(token.t))) break;
    if (tokens[from + mark.to - 1]?.ends) break;
  }
  return to;
}
/** The thing that ends where this word begins, with nothing but small words or a size between. */
function thingBefore(tokens: Tokens, at: number): Thing | undefined {
  for (let noun = at - 1; noun >= 0 && at - noun <= NEAR * 2; noun -= 1) {
    if (!nouns.has(t(tokens, noun))) continue;
    let from = noun;
    while (from > 0 && describing.has(t(tokens, from - 1)) && tokens[from - 1]?.ends !== true) from -= 1;
    const thing = thingAt(tokens, from);
    return thing && thing.to <= at && !ended(tokens, from, at) ? thing : undefined;
  }
  return undefined;
}
/** A tooth by its number is what was taken out. */
function toothBefore(tokens: Tokens, at: number): Thing | undefined {
  const marks = scan(tokens.slice(0, at)).marks;
  const last = marks.at(-1);
  return last?.place?.codes !== undefined ? { kind: 'tooth', verb: plainVerbs.tooth as Verb, from: last.from, to: last.to } : undefined;
}

/** "will do the hook", "didn't treat the ramp": the thing right behind. */
const done: Rule = (tokens, at) => {
  const form = formAt(verbs, tokens, at);
  if (form === undefined || ended(tokens, at, at + form.words.length)) return undefined;
  const thing = thingAt(tokens, at + form.words.length);
  const before = tokens.slice(Math.max(0, at - 5), at).map((token) => token.t);
  const touch = touches.has(form.words[0] as string);
  if (
    thing === undefined ||
    !(describing.has(t(tokens, at + form.words.length)) || form.means === 2) ||
    (touch && (!before.some((word) => unwanted.has(word)) || /(?:did|have|has) not$/.test(before.join(' ')))) ||
    (form.means === 0 && !leadsVerb.has(t(tokens, at - 1)))
  )
    return undefined;
  return [...tokens.slice(0, at), as(thing.verb[form.means], tokens[at] as Token), ...tokens.slice(at + form.words.length)];
};

/** A verb before the thing tells by itself what was done. */
const works = (word: string): boolean => didWords.has(word) || handledSay.has(word) || handleSay.has(word);

/** "won't have the hook on one oh six done": the thing before. */
const hadDone: Rule = (tokens, at) => {
  const form = formAt(verbs, tokens, at, ({ means }) => means === 1);
  const thing = form && t(tokens, at) !== 'did' ? thingBefore(tokens, at) : undefined;
  if (
    form === undefined ||
    thing === undefined ||
    ['all', 'well', 'is', 'not'].includes(t(tokens, at - 1)) ||
    (touches.has(form.words[0] as string) && !tokens.slice(0, at).some((token) => unwanted.has(token.t)))
  )
    return undefined;
  const gap = tokens.slice(thing.to, at).map((token) => token.t);
  // "only got half of that wave done": how much of it was done is said.
  if (tokens.slice(0, thing.from + 1).some((_, i) => formAt(parts, tokens, i) !== undefined)) return undefined;
  if (gap.length > NEAR || gap.some((word) => didWords.has(word)) || thingAt(tokens, at + form.words.length) !== undefined)
    return undefined;
  return [...tokens.slice(0, at), as(thing.verb[1], tokens[at + form.words.length - 1] as Token), ...tokens.slice(at + form.words.length)];
};

/** "the cap on five oh seven popped off", "the hook on one oh six two mil taken off", "off with the forceps". */
const parted: Rule = (tokens, at) => {
  const verb = partedFrom.has(t(tokens, at)) && particles.has(t(tokens, at + 1)) ? at + 1 : at;
  const particle = t(tokens, verb);
  if (!particles.has(particle) || (verb === at && !formAt(withTool, tokens, at + 1))) return undefined;
  const thing = thingBefore(tokens, at) ?? (particle === 'out' ? toothBefore(tokens, at) : undefined);
  if (thing === undefined || handling[thing.kind][particle] === undefined || works(t(tokens, thing.from - 1))) return undefined;
  const gap = tokens.slice(thing.to, at);
  const size = scan(gap).marks.find(({ measure }) => measure?.unit !== undefined);
  const plain = gap.filter((_, i) => size === undefined || i < size.from || i >= size.to);
  if (plain.some((token) => !between.has(token.t) && !describing.has(token.t))) return undefined;
  const amount = size ? [as('by', tokens[at] as Token), ...gap.slice(size.from, size.to).map((token) => as(token.t, token))] : [];
  return [
    ...tokens.slice(0, thing.to),
    ...plain.map((token) => as(token.t, token)),
    as(thing.verb[1], amount.length ? ({ ...(tokens[verb] as Token), ends: undefined } as unknown as Token) : (tokens[verb] as Token)),
    ...amount,
    ...tokens.slice(verb + 1),
  ];
};

/** "dressed the hook back", "eased back the ramp", "eased the points". */
const backed: Rule = (tokens, at) => {
  if (!backwards.has(t(tokens, at))) return undefined;
  const near = t(tokens, at + 1) === 'back' || t(tokens, at + 1) === 'down';
  const thing = thingAt(tokens, at + (near ? 2 : 1));
  if (thing === undefined || !describing.has(t(tokens, at + (near ? 2 : 1)))) return undefined;
  const far = !near && ['back', 'down'].includes(t(tokens, thing.to)) && !ended(tokens, at, thing.to);
  if (!(near || far ? handling[thing.kind].back !== undefined : t(tokens, at) === 'eased')) return undefined;
  return [
    ...tokens.slice(0, at),
    as(thing.verb[1], tokens[at] as Token),
    ...tokens.slice(at + (near ? 2 : 1), thing.to),
    ...tokens.slice(thing.to + (far ? 1 : 0)),
  ];
};

/** Where the words of how it is left end. */
function leftEnd(tokens: Tokens, at: number): number | undefined {
  const form = formAt(left, tokens, at);
  if (form) return at + form.words.length;
  return atTheEnd.has(t(tokens, at)) && (stops(tokens, at + 1) || goesOn.has(t(tokens, at + 1))) ? at + 1 : undefined;
}
/** "left the wolf tooth on the upper left in", "the cap on five oh seven left on", "can stay on": it was not done. */
const stays: Rule = (tokens, at) => {
  if (!leavingSay.has(t(tokens, at)) || tokens[at]?.ends) return undefined;
  return t(tokens, at).startsWith('l') ? (leaves(tokens, at) ?? staysThere(tokens, at)) : staysThere(tokens, at);
};
function leaves(tokens: Tokens, at: number): Tokens | undefined {
  const named = describing.has(t(tokens, at + 1)) ? thingAt(tokens, at + 1) : undefined;
  const ahead = named ?? toothAt(tokens, at + 1);
  if (ahead === undefined || ended(tokens, at, ahead.to)) return group(tokens, at);
  const end = leftEnd(tokens, ahead.to);
  return end === undefined || (named === undefined && t(tokens, ahead.to) !== 'in')
    ? group(tokens, at)
    : [
        ...tokens.slice(0, at),
        ...tokens.slice(at + 1, ahead.to),
        ...undone(ahead, tokens[at] as Token, tokens[end - 1] as Token),
        ...tokens.slice(end),
      ];
}
function staysThere(tokens: Tokens, at: number): Tokens | undefined {
  const end = leftEnd(tokens, at + 1);
  const thing =
    end === undefined ? undefined : (thingBefore(tokens, at) ?? (t(tokens, at + 1) === 'in' ? toothBefore(tokens, at) : undefined));
  return thing === undefined ||
    end === undefined ||
    tokens.slice(thing.to, at).some((token) => !between.has(token.t) && !describing.has(token.t))
    ? undefined
    : [...tokens.slice(0, thing.to), ...undone(thing, tokens[at] as Token, tokens[end - 1] as Token), ...tokens.slice(end)];
}
const undone = ({ verb }: Thing, first: Token, last: Token): Tokens => [
  as('not', { ...first, ends: undefined } as unknown as Token),
  as(verb[1], last),
];
/** "left the incisors for another day": left alone, and what was not done to them is not said. */
function group(tokens: Tokens, at: number): Tokens | undefined {
  const [article, mark] = scan(tokens.slice(at + 1)).marks;
  const of = article?.place ? article : mark;
  const to = at + 1 + (of?.to ?? 0);
  const form = of?.place?.positions !== undefined || of?.place?.codes !== undefined ? formAt(left, tokens, to) : undefined;
  const end = to + (form?.words.length ?? 0);
  return form === undefined || form.words.includes('alone') || ended(tokens, at, to)
    ? undefined
    : [...tokens.slice(0, to), as('alone', tokens[end - 1] as Token), ...tokens.slice(end)];
}

/** "couldn't get the wolf tooth", "had a go at the cap, no joy": tried. */
const unable: Rule = (tokens, at) => {
  const could = formAt(couldNot, tokens, at);
  const try_ = could ? undefined : formAt(tried, tokens, at);
  const form = could ?? try_;
  const thing = form && !ended(tokens, at, at + form.words.length) ? thingAt(tokens, at + form.words.length) : undefined;
  if (form === undefined || thing === undefined || !describing.has(t(tokens, at + form.words.length))) return undefined;
  const rest = tokens.slice(thing.to + (could && particles.has(t(tokens, thing.to)) ? 1 : 0));
  if (could && thing.kind === 'overgrowth' && rest.length === tokens.length - thing.to) return undefined;
  if (
    could &&
    rest.length > 0 &&
    !ended(tokens, at, tokens.length - rest.length) &&
    !/^(?:so|and|but|today|at|because|he|she|it)$/.test(rest[0]?.t ?? '')
  )
    return undefined;
  const fails = try_ ? rest.findIndex((_, i) => formAt(vain, rest, i) !== undefined) : 0;
  if (fails < 0) return undefined;
  const word = tokens[at] as Token;
  const tail = try_ ? ['but', 'could', 'not'].map((one) => as(one, { word: (rest[fails] as Token).word, t: one })) : rest;
  return [
    ...tokens.slice(0, at),
    as('tried', word),
    as('to', word),
    as(thing.verb[0], word),
    ...tokens.slice(at + form.words.length, thing.to).map((token) => as(token.t, token)),
    ...tail,
  ];
};

const vainly: ReadonlySet<string> = new Set(['manage', 'able', 'unable', 'failed', 'tried', 'trying', 'struggled']);
/** "let me take the wolf tooth out", "advised having two oh nine out": a verb of handling before the thing, the particle behind it. */
const apart: Rule = (tokens, at) => {
  const form = takeApart.indexOf(t(tokens, at)) >= 0 ? 0 : takingApart.indexOf(t(tokens, at)) >= 0 ? 2 : undefined;
  if (form === undefined || (form === 0 && (!leadsVerb.has(t(tokens, at - 1)) || ['i', 'we'].includes(t(tokens, at - 1)))))
    return undefined;
  // What was tried in vain, and what somebody will not have, other rules read.
  const before = tokens.slice(Math.max(0, at - 4), at).map((token) => token.t);
  if (
    (t(tokens, at - 1) === 'not' && ['have', 'can', 'could'].some((word) => word === t(tokens, at) || before.includes(word))) ||
    before.some((word) => vainly.has(word))
  )
    return undefined;
  const thing = (describing.has(t(tokens, at + 1)) ? thingAt(tokens, at + 1) : undefined) ?? toothAt(tokens, at + 1);
  const particle = thing ? t(tokens, thing.to) : '';
  if (
    thing === undefined ||
    handling[thing.kind][particle] === undefined ||
    (thing.kind === 'tooth' && particle !== 'out') ||
    scan(tokens.slice(thing.to + 1)).marks[0]?.place !== undefined ||
    ended(tokens, at, thing.to)
  )
    return undefined;
  return [
    ...tokens.slice(0, at),
    as(thing.verb[form], tokens[at] as Token),
    ...tokens.slice(at + 1, thing.to),
    ...tokens.slice(thing.to + 1),
  ];
};
/** "the cap on five oh seven to come off next visit" */
const toCome: Rule = (tokens, at) => {
  if (t(tokens, at) !== 'to' || t(tokens, at + 1) !== 'come' || !particles.has(t(tokens, at + 2))) return undefined;
  const thing = thingBefore(tokens, at);
  return thing === undefined ||
    thing.to !== at ||
    t(tokens, thing.from - 1) === 'no' ||
    handling[thing.kind][t(tokens, at + 2)] === undefined ||
    thing.kind === 'tooth'
    ? undefined
    : [...tokens.slice(0, at + 1), as('be', tokens[at + 1] as Token), as(thing.verb[1], tokens[at + 2] as Token), ...tokens.slice(at + 3)];
};

/** "got most of the tartar off", "got the hook half way down". */
const inPart: Rule = (tokens, at) => {
  const form = formAt(parts, tokens, at);
  const half = form === undefined && ['got', 'took', 'brought', 'have', 'had'].includes(t(tokens, at));
  const from = form ? at + form.words.length : at + 1;
  const thing = form || half ? thingAt(tokens, from) : undefined;
  if (thing === undefined || !describing.has(t(tokens, from)) || ended(tokens, at, thing.to)) return undefined;
  const way = t(tokens, thing.to) === 'halfway' ? 1 : t(tokens, thing.to) === 'half' ? (t(tokens, thing.to + 1) === 'way' ? 2 : 1) : 0;
  if (!particles.has(t(tokens, thing.to + way)) || (half && way === 0)) return undefined;
  const word = tokens[at] as Token;
  return [
    ...tokens.slice(0, at),
    as('partly', word),
    as(thing.verb[1], word),
    ...tokens.slice(from, thing.to),
    ...tokens.slice(thing.to + way + 1),
  ];
};

const halves: ReadonlySet<string> = new Set(halfDone);
/** "half extracted": in part. */
const halved: Rule = (tokens, at) =>
  t(tokens, at) === 'half' && halves.has(t(tokens, at + 1)) && !/^(?:a|the|by|about|over|nearly)$/.test(t(tokens, at - 1))
    ? [...tokens.slice(0, at), as('partly', tokens[at] as Token), ...tokens.slice(at + 1)]
    : undefined;

const rules: readonly Rule[] = [unable, inPart, stays, apart, toCome, done, hadDone, parted, backed, halved];
