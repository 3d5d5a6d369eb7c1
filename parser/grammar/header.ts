/** Facts of the horse spoken in passing: "nine year old gelding", "rising four", "bay, sixteen hands two, eventer". */
import type { Horse } from '../contract/draft.ts';
import { breedSay, bringingAnother, called, colourSay, describing, noName, otherHorses, presenting, useSay } from '../lexicon/horse.ts';
import { readNumber } from './numbers.ts';
import { readCodes } from './codes.ts';
import type { Reading } from './read.ts';
import { formAt, formsOf } from './forms.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';
import { buildTrie, longest, type Trie } from './trie.ts';

const sexes: Readonly<Record<string, NonNullable<Horse['sex']>>> = {
  mare: 'mare',
  gelding: 'gelding',
  stallion: 'stallion',
  colt: 'colt',
  filly: 'filly',
};
type Kind = 'colour' | 'breed' | 'use';
const looks: Trie<Kind> = buildTrie(
  (
    [
      ['colour', colourSay],
      ['breed', breedSay],
      ['use', useSay],
    ] as const
  ).flatMap(([kind, say]) => say.flatMap((form) => expand(form).map((words) => [words, kind] as const))),
);
const small = new Set(describing);
const anotherHorse = new Set(bringingAnother);

/** What the horse is, and which words said so; undefined when nothing was spoken as such. */
export function headerIn({
  tokens,
  made,
  scanned,
}: Reading): { readonly header: { horse: Horse }; readonly words: readonly number[] } | undefined {
  const taken = new Set<number>();
  const horse: Horse = { ...(besideSex(tokens, taken) ?? putRight(tokens, ageIn(tokens, taken), taken)) };
  // "the other one is a nine year old mare", "I did a nine year old mare this morning"
  if (horse.age !== undefined && (ofOther(tokens, Math.min(...taken)) || didAnother.test(tokens.map(({ t }) => t).join(' '))))
    return undefined;
  const aged = horse.age !== undefined;
  const look = lookIn(tokens);
  // A colour or a breed counts in a phrase of nothing but such words: "they sold the grey one" is talk.
  const of = (at: number): boolean =>
    taken.has(at) ||
    look.taken.has(at) ||
    sexes[tokens[at]?.t as string] !== undefined ||
    small.has(tokens[at]?.t ?? '') ||
    takingBack.has(tokens[at]?.t ?? '') ||
    ['i', 'not', 'that'].includes(tokens[at]?.t ?? '');
  const guess = aged ? undefined : agedAtEnd(tokens, (at) => of(at));
  if (guess) {
    horse.age = guess.age;
    for (let i = guess.from; i < tokens.length; i += 1) taken.add(i);
  }
  const described = tokens.every((_, at) => of(at));
  // "six year old thoroughbred filly off the track": right beside the age that was told.
  const beside = (at: number): boolean =>
    aged &&
    [...taken].some((told) => {
      for (let i = Math.min(at, told); i <= Math.max(at, told); i += 1) if (!of(i)) return false;
      return true;
    });
  const kinds = (Object.keys(look.at) as Kind[]).filter((kind) => described || beside(look.at[kind] as number));
  kinds.forEach((kind) => {
    horse[kind] = look.horse[kind] as string;
  });
  if (described && look.horse.height) horse.height = look.horse.height;
  look.taken.forEach((at) => {
    if (
      described ||
      kinds.some(
        (kind) => at >= (look.at[kind] as number) && at < (look.at[kind] as number) + (look.horse[kind] as string).split(' ').length,
      )
    )
      taken.add(at);
  });
  const told = tokens.flatMap(({ t }, at) => (sexes[t] !== undefined && !ofAnother(tokens, at) ? [at] : []));
  const sexAt = told.find((at, i) => told[i + 1] === undefined || !takenBack(tokens, at, told[i + 1] as number)) ?? -1;
  if (sexAt >= 0 && (aged || described || tokens.length <= 3)) {
    horse.sex = sexes[tokens[sexAt]?.t as string] as NonNullable<Horse['sex']>;
    taken.add(sexAt);
  }
  const name = nameIn(
    tokens,
    taken,
    (at) => scanned.some(({ unknown, from, to }) => unknown === true && at >= from && at < to),
    aged || horse.sex !== undefined,
  );
  if (name) {
    horse.name = tokens
      .slice(...name)
      .map(({ t }) => t.charAt(0).toUpperCase() + t.slice(1))
      .join(' ');
    for (let i = name[0]; i < name[1]; i += 1) taken.add(i);
  }
  const words = [...taken].sort((a, b) => a - b).map((at) => (tokens[at] as Token).word);
  return words.length === 0 || (made.length > 0 && !aged) ? undefined : { header: { horse }, words };
}

/** "colt, sorry, gelding", "not a colt, a mare": what was said first is taken back. */
const takenBack = (tokens: readonly Token[], at: number, next: number): boolean =>
  tokens.slice(at + 1, next).some(({ t }) => takingBack.has(t)) ||
  ['not', 'no'].includes(tokens[['a', 'an'].includes(tokens[at - 1]?.t ?? '') ? at - 2 : at - 1]?.t ?? '');
const takingBack: ReadonlySet<string> = new Set(['no', 'sorry', 'correction', 'mean', 'rather', 'make', 'actually']);

/** "the owner has a grey mare too", "shares with the other gelding": in the same clause words that bring in another horse. */
function ofAnother(tokens: readonly Token[], at: number): boolean {
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  return tokens.slice(from, at).some(({ t }) => anotherHorse.has(t));
}

const ofOther = (tokens: readonly Token[], at: number): boolean => {
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  return tokens.slice(from, at).some(({ t }) => otherHorse.has(t));
};
const otherHorse = new Set(otherHorses);
const didAnother =
  /\b(?:i|we) (?:just )?(?:did|saw|had|rasped|floated|treated|have done|have just done|went to see|went to|have|have got|know|bought|sold|used to have) (?:a|an|another|her|his|their) |\b(?:they|he|she|owner|somebody|someone) (?:just )?(?:bought|sold|lost|got|have|have got) (?:a|an|another) |\b(?:his|her|their) (?:brother|sister|mother|dam|sire|mate|friend|companion) /;

/** Words that present a horse, and whether what follows them is said to be its name. */
const presents = formsOf([...presenting, ...called].map((form) => [form.split(' '), called.includes(form)] as const));
const unnamed = new Set([...describing.filter((word) => word !== 'old'), ...noName]);
/** A name is at most so many words. */
const LONGEST_NAME = 3;

/** "this is Juniper, a nine year old gelding", "called Juniper": the name's tokens, none of them a word of the trade (`free`). Without what it is, only what is said to be a name is one. */
function nameIn(
  tokens: readonly Token[],
  taken: ReadonlySet<number>,
  free: (at: number) => boolean,
  told: boolean,
): readonly [number, number] | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    const form = formAt(presents, tokens, at);
    if (form === undefined || !(told || form.means)) continue;
    const from = at + form.words.length;
    const ends = (i: number): boolean =>
      i >= tokens.length || taken.has(i) || unnamed.has(tokens[i]?.t ?? '') || (i > from && tokens[i - 1]?.ends === true);
    let to = from;
    while (!ends(to)) to += 1;
    if (
      to > from &&
      to - from <= LONGEST_NAME &&
      tokens.slice(from, to).every(({ t }, i) => /^\p{L}+$/u.test(t) && (free(from + i) || (t === 'old' && from + i < to - 1)))
    )
      return [from, to];
  }
  return undefined;
}

function ageIn(tokens: readonly Token[], taken: Set<number>): Pick<Horse, 'age'> {
  if (!tokens.some(({ t }) => ageWords.has(t))) return {};
  const told = tokens.some(({ t }) => tellingAge.has(t));
  for (let at = 0; at < tokens.length; at += 1) {
    const sourced = told ? sourcedAge(tokens, at) : undefined;
    if (sourced) {
      for (let i = sourced.from; i < sourced.to; i += 1) taken.add(i);
      return { age: sourced.age };
    }
    const rising = tokens[at - 1]?.t === 'rising';
    const number = readNumber(tokens, at);
    if (!number || ofThatDay(tokens, at)) continue;
    const plain = plainAge(tokens, at, number);
    if (plain) {
      for (let i = plain.from; i < number.to; i += 1) taken.add(i);
      return { age: plain.age };
    }
    const unit = tokens[number.to]?.t;
    const old = tokens[number.to + 1]?.t === 'old' || sexes[tokens[number.to + 1]?.t ?? ''] !== undefined;
    if (!Number.isFinite(number.value) || !((/^(year|years|month|months)$/.test(unit ?? '') && old) || rising)) continue;
    const about = ['about', 'around', 'roughly'].includes(tokens[at - 1]?.t ?? '');
    const to = unit && /^(year|month)/.test(unit) ? number.to + (tokens[number.to + 1]?.t === 'old' ? 2 : 1) : number.to;
    for (let i = rising || about ? at - 1 : at; i < to; i += 1) taken.add(i);
    return {
      age: {
        value: number.value,
        unit: /^month/.test(unit ?? '') ? 'month' : 'year',
        ...(rising ? { rising } : {}),
        ...(about ? { about } : {}),
      },
    };
  }
  return {};
}

/** "wolf teeth out as a three year old": how old the horse was then. "between eight and ten": no one number. */
const ofThatDay = (tokens: readonly Token[], at: number): boolean =>
  (['a', 'an'].includes(tokens[at - 1]?.t ?? '') && ['as', 'like'].includes(tokens[at - 2]?.t ?? '')) ||
  (tokens[at - 1]?.t === 'and' && tokens.slice(0, at - 1).some(({ t }) => t === 'between'));

const back =
  /^(?:(?:mare|gelding|stallion|colt|filly) )?(?:(?:no|sorry|correction|wait|actually|make that|make it|i mean|or rather|rather|it is|he is|she is|rising) )*(?:no|sorry|correction|make that|make it|i mean|or rather|rather)(?: (?:it is|he is|she is))? /;
/** "she's twelve, no, thirteen": the age said last is the age. */
function putRight(tokens: readonly Token[], told: Pick<Horse, 'age'>, taken: Set<number>): Pick<Horse, 'age'> {
  if (told.age === undefined) return told;
  const end = Math.max(...taken) + 1;
  const words = tokens.slice(end).map(({ t }) => t);
  const skipped = back
    .exec(`${words.join(' ')} `)?.[0]
    .trim()
    .split(' ').length;
  const number = skipped === undefined ? undefined : readNumber(tokens, end + skipped);
  if (number === undefined || !Number.isInteger(number.value) || number.value < 1 || number.value > 40) return told;
  let to = number.to;
  // "thirteen, thirteen year old": said once more, and in full.
  if (readNumber(tokens, to)?.value === number.value) to = (readNumber(tokens, to) as { to: number }).to;
  while (/^(?:year|years|old)$/.test(tokens[to]?.t ?? '')) to += 1;
  for (let i = end; i < to; i += 1) taken.add(i);
  return putRight(tokens, { age: { ...told.age, value: number.value } }, taken);
}

/** "gelding, eighteen", "fourteen now, mare": a number between two pauses, right beside the sex. */
function besideSex(tokens: readonly Token[], taken: Set<number>): Pick<Horse, 'age'> | undefined {
  const closes = (at: number): boolean => at < 0 || at >= tokens.length - 1 || tokens[at]?.ends === true;
  const sex = tokens.findIndex(({ t }, at) => sexes[t] !== undefined && !ofAnother(tokens, at));
  if (sex < 0) return undefined;
  for (let at = 0; at < tokens.length; at += 1) {
    const number = readNumber(tokens, at);
    if (number === undefined || readCodes(tokens, at)) continue;
    const to = ['now', 'odd', 'ish'].includes(tokens[number.to]?.t ?? '') ? number.to + 1 : number.to;
    const guessed = ['about', 'around', 'roughly', 'maybe'].includes(tokens[at - 1]?.t ?? '');
    const about = guessed || (to > number.to && tokens[number.to]?.t !== 'now');
    const from = guessed ? at - 1 : at;
    const clause = closes(from - 1) && closes(to - 1) && Number.isInteger(number.value) && number.value >= 2 && number.value <= 40;
    if (!clause || !(from === sex + 1 || to === sex)) continue;
    for (let i = from; i < to; i += 1) taken.add(i);
    return { age: { value: number.value, unit: 'year', ...(about ? { about } : {}) } };
  }
  return undefined;
}

const sources: readonly (readonly [RegExp, 'papers' | 'teeth' | 'owner'])[] = [
  [/\b(?:passport|papers|paperwork)\b/, 'papers'],
  [/\b(?:teeth|incisors|mouth|dentition|age|put)\b/, 'teeth'],
  [/\b(?:owner|she|they|mum)\b/, 'owner'],
];
const ageBehind =
  /^(?:year old |years old |year |years |old )?(?:(?:by|from|on|according to|going (?:by|on|off)|to go (?:by|on)|judging by|off|in) (?:the|his|her|its|their|my)? ?(?:passport|papers|paperwork|teeth|incisors|mouth|dentition)|(?:the|his|her) (?:passport|papers) (?:says?|has|say)|(?:the )?owner (?:says|reckons|thinks)|(?:so )?(?:they|she) (?:say|says|reckons))\b/;
const ageBefore =
  /\b(?:(?:i 'd|i would|i|'d|would) (?:age|put|say) (?:him|her|it) (?:at|as|around)|aged (?:him|her|it)? ?(?:at|as)|(?:the|his|her)? ?(?:passport|papers|paperwork|teeth|incisors|owner) (?:says?|has|have|put|puts|reckons|thinks|makes?)(?: (?:he|she|him|her|it))?(?: (?:is|at|as|to be|down as))*|down as)(?: (?:about|around|roughly|maybe|a))?$/;
/** What tells an age is one of these, or tells it by one of these. */
const tellingAge = new Set([
  'passport',
  'papers',
  'paperwork',
  'teeth',
  'incisors',
  'mouth',
  'dentition',
  'owner',
  'they',
  'she',
  'age',
  'aged',
  'put',
  'say',
  'down',
]);
/** Beside every number that is an age stands one of these. */
const ageWords = new Set([...tellingAge, 'is', 'rising', 'year', 'years', 'month', 'months', 'turned', 'coming']);
/** "nine by the passport", "I'd age him at twelve": an age told by where it was read. */
function sourcedAge(
  tokens: readonly Token[],
  at: number,
): { readonly age: NonNullable<Horse['age']>; readonly from: number; readonly to: number } | undefined {
  const number = readNumber(tokens, at);
  if (!number || !Number.isInteger(number.value) || number.value > 40 || readCodes(tokens, at) || ofThatDay(tokens, at)) return undefined;
  const words = tokens.map(({ t }) => t);
  const behind = ageBehind.exec(words.slice(number.to).join(' '))?.[0];
  const before = ageBefore.exec(words.slice(0, at).join(' '))?.[0];
  // What is behind a number told as an age is a unit of time or nothing that it counts.
  if (
    behind === undefined &&
    (before === undefined ||
      (tokens[number.to - 1]?.ends !== true && !/^(?:$|year|years|rising|maybe|or|old|ish|but|by|from|,)/.test(words[number.to] ?? '')))
  )
    return undefined;
  const told = `${before ?? ''} ${behind ?? ''}`;
  const source = sources.find(([said]) => said.test(told))?.[1];
  const about = /\b(?:about|around|roughly|maybe)$/.test(words.slice(0, at).join(' '));
  return {
    age: { value: number.value, unit: 'year', ...(about ? { about } : {}), ...(source ? { source } : {}) },
    from: at - (before?.trim().split(' ').length ?? 0),
    to: number.to + (behind?.trim().split(' ').length ?? 0),
  };
}

const plainly =
  /\b(?:he|she|this one|this horse|this pony|this lad|this mare) is(?: (?:about|around|roughly|maybe|nearly|only|just|probably))*$|\b(?:he|she|has|just) (?:just )?turned$|^(?:he is |she is )?(?:age|aged)(?: is)?(?: (?:about|around|roughly))?$|^(?:(?:he|she) is )?coming(?: up to| up)?$|\b(?:he|she) will be(?: only| about| just)?$/;
/** "he's fourteen": a number that counts nothing else, said of the horse itself. */
const saidOut = (tokens: readonly Token[], to: number): boolean => {
  const rest =
    /^(?:now|or so|or thereabouts|ish|i think|i reckon|(?:this|next) (?:year|spring|summer|autumn|winter|month|week|time|birthday)|last (?:month|week|spring)|today|off|odd|(?:in|come) (?:the )?(?:spring|summer|autumn|winter|january|february|march|april|may|june|july|august|september|october|november|december))+$/;
  const pause = tokens.findIndex(({ ends }, i) => i >= to - 1 && ends === true);
  const clause = tokens.slice(to, pause < 0 ? tokens.length : pause + 1);
  const behind = clause.map(({ t }) => t).join(' ');
  return (
    clause.length === 0 ||
    to - 1 === pause ||
    rest.test(behind) ||
    /^(?:and|but) (?:never|has|he|she|is|still|not|no|does|was)\b/.test(behind)
  );
};
/** Of the young ones halves are told: "she's two and a half". */
const yearsOrHalf = (value: number): boolean => Number.isInteger(value) || (value < 6 && Number.isInteger(value * 2));
function plainAge(
  tokens: readonly Token[],
  at: number,
  number: { readonly value: number; readonly to: number },
): { readonly age: NonNullable<Horse['age']>; readonly from: number } | undefined {
  const ends = saidOut(tokens, number.to) || sexes[tokens[number.to]?.t as string] !== undefined;
  const behind = tokens
    .slice(number.to)
    .map(({ t }) => t)
    .join(' ');
  const before =
    !ends || number.value < 2 || number.value > 40 || !yearsOrHalf(number.value) || readCodes(tokens, at)
      ? undefined
      : plainly.exec(
          tokens
            .slice(0, at)
            .map(({ t }) => t)
            .join(' '),
        )?.[0];
  return before === undefined
    ? undefined
    : {
        age: {
          value: number.value,
          unit: 'year',
          ...(/coming|will be/.test(before) ? { rising: true } : {}),
          ...(/about|around|roughly|maybe|nearly|probably/.test(before) || /^(?:or so|or thereabouts|ish|odd)/.test(behind)
            ? { about: true }
            : {}),
        },
        from: at - before.split(' ').length,
      };
}

/** "bay cob gelding, about fifteen": a number at the end of what describes the horse, all of it. */
function agedAtEnd(
  tokens: readonly Token[],
  describes: (at: number) => boolean,
): { readonly age: NonNullable<Horse['age']>; readonly from: number } | undefined {
  const from = tokens.findLastIndex(({ t }) => ['about', 'around', 'roughly', 'maybe', 'aged'].includes(t));
  const number = from < 1 ? undefined : readNumber(tokens, from + 1);
  if (number === undefined || number.to !== tokens.length || number.value > 40 || !Number.isInteger(number.value)) return undefined;
  const horse = tokens.slice(0, from).some(({ t }) => sexes[t] !== undefined) && tokens.slice(0, from).every((_, at) => describes(at));
  return horse ? { age: { value: number.value, unit: 'year', ...(tokens[from]?.t === 'aged' ? {} : { about: true }) }, from } : undefined;
}

/** Colour, breed, use and height as they were said. */
function lookIn(tokens: readonly Token[]): {
  readonly horse: Horse;
  readonly taken: ReadonlySet<number>;
  /** Where each begins. */ readonly at: Partial<Record<Kind, number>>;
} {
  const words = tokens.map(({ t }) => t);
  const horse: Horse = {};
  const taken = new Set<number>();
  const where: Partial<Record<Kind, number>> = {};
  for (let at = 0; at < words.length; at += 1) {
    const found = longest(looks, words, at);
    const kind = found?.values[0];
    if (!found || !kind || (horse[kind] !== undefined && !takenBack(tokens, where[kind] as number, at))) continue;
    horse[kind] = words.slice(at, found.to).join(' ');
    where[kind] = at;
    for (let i = at; i < found.to; i += 1) taken.add(i);
    at = found.to - 1;
  }
  const height = taken.size === 0 && !tokens.some(({ t }) => measured.has(t)) ? undefined : heightIn(tokens);
  if (height) {
    horse.height = words.slice(...height).join(' ');
    for (let i = height[0]; i < height[1]; i += 1) taken.add(i);
  }
  return { horse, taken, at: where };
}

const measured: ReadonlySet<string> = new Set(['hands', 'hh', 'stands', 'standing', 'height', 'measures']);
/** "sixteen hands two", "fifteen two", "fourteen hands": from eight to nineteen hands, and up to three inches. */
function heightIn(tokens: readonly Token[]): [number, number] | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    const hands = readNumber(tokens, at);
    if (!hands || hands.value < 8 || hands.value > 19 || !Number.isInteger(hands.value)) continue;
    const unit = /^(hands?|hh)$/.test(tokens[hands.to]?.t ?? '') ? hands.to + 1 : hands.to;
    const inches = readNumber(tokens, unit);
    const end =
      inches && inches.value >= 1 && inches.value <= 3
        ? /^(hands?|hh)$/.test(tokens[inches.to]?.t ?? '')
          ? inches.to + 1
          : inches.to
        : unit;
    if (end > hands.to) return [at, end];
  }
  return undefined;
}
