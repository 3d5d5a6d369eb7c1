/**
 * "Will do the hook next time", "the cap popped off", "dressed the ramp back": what was done is told by a word of no trade together with the
 * thing. Each is said again with the plain verb of that thing, which the grammar governs and reads like any other.
 */
import { handledSay, handleSay, handling } from '../lexicon/handling.ts';
import {
  backwards,
  describing,
  generic,
  halfDone,
  leadsVerb,
  partedFrom,
  portions,
  takeApart,
  takingApart,
  tools,
  touching,
  unwanted,
} from '../lexicon/plainWork.ts';
import { firstWords, formAt, longestOf, type Forms } from './forms.ts';
import { leftAsItIs, triedInVain } from './leftAsItIs.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';
import {
  as,
  between,
  eachOnce,
  ended,
  NEAR,
  particles,
  stops,
  t,
  thingAt,
  thingBefore,
  toothAt,
  toothBefore,
  type Rule,
  type Thing,
  type Tokens,
} from './worked.ts';

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
const parts = longestOf([[portions, true]]);

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

/** "hook on one oh six, not taken off", "tartar on four oh four, not chipped off today": what was named before the pause. */
const notParted: Rule = (tokens, at) => {
  if (t(tokens, at) !== 'not') return undefined;
  const verb = t(tokens, at + 1) === 'been' || t(tokens, at + 1) === 'yet' ? at + 2 : at + 1;
  const thing = partedFrom.has(t(tokens, verb)) && !tokens[verb]?.ends ? lastThing(tokens, at) : undefined;
  return thing === undefined || handling[thing.kind][t(tokens, verb + 1)] === undefined
    ? undefined
    : [...tokens.slice(0, verb), as(thing.verb[1], tokens[verb + 1] as Token), ...tokens.slice(verb + 2)];
};
function lastThing(tokens: Tokens, at: number): Thing | undefined {
  for (let noun = at - 1; noun >= 0; noun -= 1) {
    const thing = thingAt(tokens, noun);
    if (thing && thing.to <= at) return thing;
  }
  return undefined;
}

/** Between "which I" and the verb. */
const auxiliary: ReadonlySet<string> = new Set([
  'have',
  'had',
  'has',
  'will',
  'just',
  'already',
  'since',
  'now',
  'also',
  'then',
  'can',
  'could',
  'to',
  'managed',
]);
/** "a hook on one oh six which I've taken off by hand": what is told behind "which" is a sentence of its own, of that thing. */
const relative: Rule = (tokens, at) => {
  if (!relatives.includes(t(tokens, at)) || !['i', 'we'].includes(t(tokens, at + 1)) || tokens[at]?.ends) return undefined;
  let verb = at + 2;
  while (auxiliary.has(t(tokens, verb))) verb += 1;
  if (!works(t(tokens, verb)) || !particles.has(t(tokens, verb + 1)) || lastThing(tokens, at) === undefined) return undefined;
  const [before, said] = [tokens[at - 1] as Token, tokens[verb] as Token];
  return [
    ...tokens.slice(0, at - 1),
    { ...before, ends: true },
    ...tokens.slice(at + 1, verb + 1),
    { t: 'it', word: said.word },
    ...tokens.slice(verb + 1),
  ];
};
const relatives: readonly string[] = ['which', 'that'];

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

const vainly: ReadonlySet<string> = new Set(['manage', 'able', 'unable', 'failed', 'tried', 'trying', 'struggled']);
/** "let me take the wolf tooth out", "advised having two oh nine out": a verb of handling before the thing, the particle behind it. */
const apart: Rule = (tokens, at) => {
  const form = takeApart.indexOf(t(tokens, at)) >= 0 ? 0 : takingApart.indexOf(t(tokens, at)) >= 0 ? 2 : undefined;
  if (form === undefined || (form === 0 && (!leadsVerb.has(t(tokens, at - 1)) || ['i', 'we'].includes(t(tokens, at - 1)))))
    return undefined;
  // Consent is kept in its own words.
  if (tokens.slice(0, at).some((token) => token.t === 'consent')) return undefined;
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
/** "another four to come off in six months": how much of what was taken down before. */
const moreToCome = (tokens: Tokens, at: number): Tokens | undefined => {
  const from = tokens.slice(0, at).findLastIndex((token) => token.t === 'another');
  const said = from >= 0 ? scan(tokens.slice(from + 1, at)).marks : [];
  return t(tokens, at + 2) === 'off' && !ended(tokens, from, at) && said.length === 1 && (said[0]?.measure ?? said[0]?.number) !== undefined
    ? [
        ...tokens.slice(0, from),
        as('will', tokens[at] as Token),
        as('take', tokens[at + 1] as Token),
        ...tokens.slice(from, at),
        ...tokens.slice(at + 2),
      ]
    : undefined;
};

/** "the cap on five oh seven to come off next visit" */
const toCome: Rule = (tokens, at) => {
  if (t(tokens, at) !== 'to' || t(tokens, at + 1) !== 'come' || !particles.has(t(tokens, at + 2))) return undefined;
  const more = moreToCome(tokens, at);
  if (more) return more;
  const thing = thingBefore(tokens, at);
  return thing === undefined ||
    thing.to !== at ||
    t(tokens, thing.from - 1) === 'no' ||
    handling[thing.kind][t(tokens, at + 2)] === undefined ||
    thing.kind === 'tooth'
    ? undefined
    : [...tokens.slice(0, at + 1), as('be', tokens[at + 1] as Token), as(thing.verb[1], tokens[at + 2] as Token), ...tokens.slice(at + 3)];
};

const havingGot: ReadonlySet<string> = new Set(['got', 'took', 'brought', 'have', 'had']);
/** "got most of the tartar off", "got the hook half way down". */
const inPart: Rule = (tokens, at) => {
  const form = formAt(parts, tokens, at);
  const half = form === undefined && havingGot.has(t(tokens, at));
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

const pronouns: ReadonlySet<string> = new Set(['it', 'that', 'this', 'them', 'those', 'these', 'both']);
/** "reduced it part way", "ground that halfway down": in part. */
const partWay: Rule = (tokens, at) => {
  const one = ['halfway', 'partway'].includes(t(tokens, at));
  const way = one ? at + 1 : at + 2;
  if (!one && !(['half', 'part'].includes(t(tokens, at)) && t(tokens, at + 1) === 'way')) return undefined;
  if (!pronouns.has(t(tokens, at - 1)) || !didWords.has(t(tokens, at - 2)) || ended(tokens, at - 2, at)) return undefined;
  const rest = t(tokens, way) === 'down' && tokens[way - 1]?.ends !== true ? way + 1 : way;
  if (!stops(tokens, rest) && !['now', 'today', 'and', 'so'].includes(t(tokens, rest))) return undefined;
  const [verb, it] = [tokens[at - 2] as Token, tokens[at - 1] as Token];
  const heard = tokens.slice(at, rest).map(({ word }) => word);
  return [
    ...tokens.slice(0, at - 2),
    { t: 'partly', word: heard[0] as number, heard },
    verb,
    { ...it, ...(tokens[rest - 1]?.ends ? { ends: true as const } : {}) },
    ...tokens.slice(rest),
  ];
};

const halves: ReadonlySet<string> = new Set(halfDone);
/** "half extracted": in part. */
const halved: Rule = (tokens, at) =>
  t(tokens, at) === 'half' && halves.has(t(tokens, at + 1)) && !/^(?:a|the|by|about|over|nearly)$/.test(t(tokens, at - 1))
    ? [...tokens.slice(0, at), as('partly', tokens[at] as Token), ...tokens.slice(at + 1)]
    : undefined;

/** In this order. */
export const plainWork: readonly Rewording[] = [
  ...triedInVain,
  eachOnce(inPart, [...firstWords(parts), ...havingGot]),
  leftAsItIs,
  eachOnce(apart, [...takeApart, ...takingApart]),
  eachOnce(toCome, ['come']),
  eachOnce(done, firstWords(verbs)),
  eachOnce(hadDone, firstWords(verbs)),
  eachOnce(relative, relatives),
  eachOnce(notParted, partedFrom),
  eachOnce(parted, particles),
  eachOnce(backed, backwards),
  eachOnce(halved, ['half']),
  eachOnce(partWay, ['half', 'part', 'halfway', 'partway']),
];
