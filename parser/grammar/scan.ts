/** One pass from left to right: tokens become marks. A mark says what a stretch of words may be; nothing is decided yet. */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { notATooth, notAToothBefore, paidAfter, paidBefore } from '../lexicon/numbers.ts';
import { gradeWords } from '../lexicon/units.ts';
import { gapWords, readCodes } from './codes.ts';
import { readDoing } from './doing.ts';
import { readGrade, readPulpHorn, readShortGrade } from './grades.ts';
import { first, partedBy } from './lists.ts';
import { named } from './named.ts';
import { narrowed } from './narrow.ts';
import { readAmount, readNumber } from './numbers.ts';
import { allTheWay, contradicts, isBut, leavesIt, readCluster, theSide, type RawPlace } from './places.ts';
import { comparedSay } from '../lexicon/modifiers.ts';
import { isTheOne } from './teeth.ts';
import { readMeasure, unitWords, type MeasureMark } from './sizes.ts';
import { isOh, type Token } from './tokens.ts';
import { longest } from './trie.ts';
import { isOfPlace, vocabulary, withoutTalk, type Term } from './vocabulary.ts';

export interface Mark {
  readonly from: number;
  readonly to: number;
  readonly place?: RawPlace;
  readonly measure?: MeasureMark;
  /** A grade's value as text, and the words that announced it; `outOf` for "seven out of nine". */
  readonly grade?: {
    readonly value: string;
    /** "one to two": the other end. */ readonly or?: string;
    readonly announced: boolean;
    readonly outOf?: number;
  };
  /** A place said right behind the name of what is there, in a list: no other finding's. */
  readonly own?: true;
  /** A number with nothing to say what it counts. */
  readonly number?: number | readonly [number, number];
  readonly terms?: readonly Term[];
  readonly pulpHorn?: number;
  /** A finding put back where it was left unsaid: of no width here, spoken there. */
  readonly again?: {
    readonly from: number;
    readonly to: number;
    /** With all that was said of it: "ten the same". */ readonly same?: true;
  };
  /** A place named by what was found there. */
  readonly of?: Token['of'];
  /** A place of which a part was said before. */
  readonly carried?: true;
  /** Names what the findings beside it share out: theirs, though none has it for its place. */
  readonly whole?: true;
  /** No word of the lexicon, or a place that nothing is said of. */
  readonly unknown?: true;
}

/** The tokens that name a head, also where it was put back. */
export const headSpan = (marks: readonly Mark[], at: number): readonly [number, number] => {
  const mark = marks[at];
  const { from, to } = mark?.again ?? mark ?? { from: 0, to: 0 };
  return [from, to];
};

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';

/** Reads what begins at a token. `before`: the marks so far; `words`: all words of the phrase. */
type Reader = (tokens: readonly Token[], at: number, before: readonly Mark[], words: readonly string[]) => Mark | undefined;
/** In this order: the first that reads something has it. */
const readers: readonly Reader[] = [
  readPulpHorn, // its number is no grade, and no tooth's
  readDoing, // "off" and "down" are no places
  readBar, // "bar" is a part of the mouth only where nothing is left out
  readCompared,
  readBitOf,
  readLight,
  readOpening,
  readHowFar, // "three mil back" is no end of a tooth
  readCount, // "the two sixes" counts them
  readAge, // of the horse: "a three year old" says nothing of a finding
  readOldOne, // "a scar, an old one" is the scar
  readRightAlong, // "right along the row" is no side
  readLeftAs, // nor is what was left
  readShortGrade, // behind a finding with a scale a number is its grade
  readCodePlace, // a tooth's number is no size
  readGrade,
  readMeasure,
  (tokens, at, before, words) => readPlaceOrTerm(tokens, words, at, before),
  readBareNumber,
];

/** One look at every place in the phrase. `steps` counts them, so that a test can see that they grow with its length only. */
export function scan(tokens: readonly Token[]): { readonly marks: readonly Mark[]; readonly steps: number } {
  const words = tokens.map(({ t }) => t);
  const marks: Mark[] = [];
  let steps = 0;
  for (let at = 0; at < tokens.length; steps += 1) {
    const mark = first(readers, (read) => read(tokens, at, marks, words)) ?? { from: at, to: at + 1, unknown: true as const };
    marks.push(mark);
    at = mark.to;
  }
  return { marks: named(narrowed(gapByPositions(partPlaces(mergeClusters(marks), tokens), tokens), tokens), tokens), steps };
}

function readCodePlace(tokens: readonly Token[], at: number): Mark | undefined {
  const codes = readCodes(tokens, at);
  if (codes === undefined) return undefined;
  const before = text(tokens, at - 1);
  // "diastema nine ten on the lower left": two positions, not 910.
  if (codes.raw.codes?.length === 0 && codes.raw.notTeeth?.[0] === '910' && tokens.some(({ t }) => gapWords.has(t))) return undefined;
  if (before === 'a' && text(tokens, at - 2) === 'the') return undefined;
  // "lost four oh seven years ago": with its "oh" the number is a tooth's, and what follows says when.
  const ago = text(tokens, codes.to + 1) === 'ago' && tokens.slice(at, codes.to).some(({ t }) => isOh(t));
  // "..., two oh six; second, a ramp": what is counted stands right behind its number. "reduced two ten hand rasp": by what.
  const parted = tokens[codes.to - 1]?.ends === true || (text(tokens, codes.to) === 'hand' && handTools.has(text(tokens, codes.to + 1)));
  if ((notATooth.includes(text(tokens, codes.to)) && !ago && !parted) || notAToothBefore.includes(before) || gradeWords.includes(before))
    return undefined;
  // "that's one ten today": the price of the visit.
  if (paidBefore.includes(before) && paidAfter.includes(text(tokens, codes.to))) return undefined;
  // "there's one hundred and ten steps up to her flat": counted, with its hundreds.
  if (
    tokens.slice(at, codes.to).some(({ t }) => t === 'hundred') &&
    tokens.slice(Math.max(0, at - 4), at).some(({ t }) => t === 'there') &&
    tokens[codes.to - 1]?.ends !== true &&
    longest(
      vocabulary,
      tokens.slice(codes.to, codes.to + 3).map(({ t }) => t),
      0,
    )?.values.some((t) => t.k === 'condition' && t.plural)
  )
    return undefined;
  if (text(tokens, codes.to) === 'o' && text(tokens, codes.to + 1) === 'clock') return undefined;
  return { from: at, to: codes.to, place: codes.raw };
}

const handTools: ReadonlySet<string> = new Set(['rasp', 'float', 'file', 'rasped', 'floated', 'filed', 'tool', 'tools', 'held', 'only']);

const except = [{ k: 'cue', cue: { say: ['bar'], means: 'except', looks: 'forward' } }] as const;
/** "all worn bar the sixes", "sound bar two oh nine", "every canine but one oh four": what is left out stands right behind. */
function readBar(tokens: readonly Token[], at: number): Mark | undefined {
  if (isBut(tokens, at)) return { from: at, to: at + 1, terms: except };
  // "no ulcers only the one on the left cheek"
  const only = text(tokens, at) === 'only' || text(tokens, at) === 'just' ? (text(tokens, at + 1) === 'the' ? at + 2 : at + 1) : undefined;
  if (
    only !== undefined &&
    text(tokens, only) === 'one' &&
    ['on', 'at', 'in'].includes(text(tokens, only + 1)) &&
    tokens.slice(0, at).some(({ t }) => t === 'no' || t === 'not')
  )
    return { from: at, to: only + 1, terms: except };
  if (text(tokens, at) !== 'but') return undefined;
  const next = text(tokens, at + 1);
  const all = tokens
    .slice(0, at)
    .some(({ t }) => t === 'all' || t === 'every' || t === 'everywhere' || t === 'everything' || t === 'nothing');
  // A finding behind the place would be its own: "all sharp but the sixes are hooked".
  const place = all
    ? (readCodes(tokens, at + 1) ??
      readCluster(
        tokens,
        tokens.map(({ t }) => t),
        next === 'the' ? at + 2 : at + 1,
      ))
    : undefined;
  const single = all && next === 'the' && /^(six|seven|eight|nine|ten|eleven)$/.test(text(tokens, at + 2)) ? at + 3 : undefined;
  const to = place?.to ?? single;
  return to !== undefined && (to === tokens.length || tokens[to - 1]?.ends === true) ? { from: at, to: at + 1, terms: except } : undefined;
}

const beginsBit: ReadonlySet<string> = new Set(['and', 'with', 'got', 'just', 'then', 'some']);
const definite: ReadonlySet<string> = new Set(['the', 'his', 'her', 'that', 'it', 'them', 'a', 'an']);
/** "bit of tartar on the canines": a bit of it, with its article swallowed; of what is known already it is a part. */
function readBitOf(tokens: readonly Token[], at: number): Mark | undefined {
  const begins = at === 0 || tokens[at - 1]?.ends === true || beginsBit.has(text(tokens, at - 1));
  if (!begins || text(tokens, at) !== 'bit' || text(tokens, at + 1) !== 'of' || definite.has(text(tokens, at + 2))) return undefined;
  const words = tokens.slice(at, at + 8).map(({ t }) => t);
  // "bit of cap left" has its own name.
  if ((longest(vocabulary, words, 0)?.to ?? 0) > 2) return undefined;
  return longest(vocabulary, words, 2)?.values.some(({ k }) => k === 'condition') === true
    ? { from: at, to: at + 2, terms: [{ k: 'severity', id: 'slight', said: 'bit of' }] }
    : undefined;
}
/** "light points on the uppers": how much, right before what is there; "bring the light over" is a lamp. */
function readLight(tokens: readonly Token[], at: number, _: readonly Mark[], words: readonly string[]): Mark | undefined {
  return text(tokens, at) === 'light' &&
    tokens[at]?.ends !== true &&
    longest(vocabulary, words, at + 1)?.values.some((t) => t.k === 'condition' && t.strength !== 'absentSay')
    ? { from: at, to: at + 1, terms: [{ k: 'severityKept', said: 'light' }] }
    : undefined;
}
const sentenceOpens: ReadonlySet<string> = new Set([
  ...[
    'no',
    'nothing',
    'so',
    'then',
    'now',
    'there',
    'he',
    'she',
    'that',
    'this',
    'i',
    'we',
    'let',
    'lets',
    'well',
    'okay',
    'the',
    'and',
    'vet',
    'owner',
    'what',
    'where',
  ],
]);
/** "right, no gaps": a sentence is opened, and no side is said. */
function readOpening(tokens: readonly Token[], at: number): Mark | undefined {
  return at === 0 && text(tokens, 0) === 'right' && tokens[0]?.ends === true && sentenceOpens.has(text(tokens, 1))
    ? { from: 0, to: 1, terms: [{ k: 'filler' }] }
    : undefined;
}

const determiners: ReadonlySet<string> = new Set(['the', 'these', 'those', 'his', 'her', 'its', 'their']);
const counts: ReadonlySet<string> = new Set(['two', 'three', 'six', 'twelve']);
/** "the two sixes at the bottom", "her two bottom canines": how many of a group that is named outright. */
function readCount(tokens: readonly Token[], at: number, _: readonly Mark[], words: readonly string[]): Mark | undefined {
  if (!counts.has(text(tokens, at)) || !determiners.has(text(tokens, at - 1))) return undefined;
  const raw = readCluster(tokens, words, at + 1)?.raw;
  return raw?.positions !== undefined && raw.plural === true && raw.joined === undefined
    ? { from: at, to: at + 1, terms: [{ k: 'glue' }] }
    : undefined;
}

const ageUnits: ReadonlySet<string> = new Set(['year', 'years', 'month', 'months', 'yr']);
/** "like you'd see on any three year old" */
function readAge(tokens: readonly Token[], at: number): Mark | undefined {
  return text(tokens, at) === 'old' && ageUnits.has(text(tokens, at - 1)) ? { from: at, to: at + 1, terms: [{ k: 'filler' }] } : undefined;
}

const ofTheHorse: ReadonlySet<string> = new Set(['this', 'he', 'she', 'is', 'horse', 'pony', 'mare', 'now']);
/** "scar on the left cheek, an old one": of the finding before the pause; "he's an old one" is the horse. */
function readOldOne(tokens: readonly Token[], at: number, before: readonly Mark[]): Mark | undefined {
  return text(tokens, at) === 'an' &&
    text(tokens, at + 1) === 'old' &&
    text(tokens, at + 2) === 'one' &&
    tokens[at - 1]?.ends === true &&
    !ofTheHorse.has(text(tokens, at + 3)) &&
    before.some(isHead)
    ? { from: at, to: at + 3, terms: [{ k: 'qualifier', id: 'old' }] }
    : undefined;
}

const farBack: ReadonlySet<string> = new Set(['', 'on', 'at', 'in', 'from', 'now', 'there', 'already']);
/** "receding, three mil back": how far, and no end of a tooth. */
function readHowFar(tokens: readonly Token[], at: number, before: readonly Mark[]): Mark | undefined {
  return text(tokens, at) === 'back' &&
    before.at(-1)?.measure?.unit !== undefined &&
    tokens[at - 1]?.ends !== true &&
    (tokens[at]?.ends === true || farBack.has(text(tokens, at + 1)))
    ? { from: at, to: at + 1, terms: [{ k: 'filler' }] }
    : undefined;
}

const compared = new Set(comparedSay);
/** "a wider one nine ten", "the one on four eleven's bigger": how much, beside what was named before. */
function readCompared(tokens: readonly Token[], at: number): Mark | undefined {
  if (!compared.has(text(tokens, at))) return undefined;
  const one = text(tokens, at + 1) === 'one' && (isTheOne(tokens, at + 1) || ['on', 'at', 'in'].includes(text(tokens, at + 2)));
  const told =
    ['is', 'are', 'one', 'ones', 'bit', 'much', 'slightly'].includes(text(tokens, at - 1)) &&
    (at === tokens.length - 1 || tokens[at]?.ends === true);
  return one || told ? { from: at, to: at + 1, terms: [{ k: 'severityKept', said: text(tokens, at) }] } : undefined;
}

const jaws: ReadonlySet<string> = new Set(['upper', 'lower', 'top', 'bottom']);
/** A finding, a part, a jaw: what a side that is said behind it may belong to. */
const ofTheMouth = (tokens: readonly Token[], at: number): boolean =>
  jaws.has(text(tokens, at)) ||
  readCodes(tokens, at) !== undefined ||
  longest(
    vocabulary,
    tokens.slice(at, at + 4).map(({ t }) => t),
    0,
  )?.values.some(({ k }) => k === 'condition' || k === 'region' || k === 'group') === true;
const copulas: ReadonlySet<string> = new Set(['is', 'are', 'was', 'were', 'be', 'been']);
/** "packed right down", "my hand right along the row": no side. */
function readRightAlong(tokens: readonly Token[], at: number): Mark | undefined {
  if (text(tokens, at) !== 'right') return undefined;
  const before = text(tokens, at - 1);
  // "good girl, right, top left, nothing": between two pauses it begins what comes next, which has a side of its own.
  const quarterNext = jaws.has(text(tokens, at + 1)) && ['left', 'right'].includes(text(tokens, at + 2));
  if (
    quarterNext &&
    tokens[at]?.ends === true &&
    tokens[at - 1]?.ends === true &&
    !tokens.slice(0, at).some((_, i) => ofTheMouth(tokens, i))
  )
    return { from: at, to: at + 1, terms: [{ k: 'filler' }] };
  // "worn right out": all the way.
  // "flushed that right out"
  if (['out', 'off', 'away'].includes(text(tokens, at + 1)) && ['worn', 'that', 'it', 'them', 'these', 'those'].includes(before))
    return { from: at, to: at + 1, terms: [{ k: 'filler' }] };
  // "they were right sharp": how sharp.
  if (copulas.has(before) && longest(vocabulary, [text(tokens, at + 1)], 0)?.values.some((t) => t.k === 'condition'))
    return { from: at, to: at + 1, terms: [{ k: 'filler' }] };
  // "worn the centrals right down", "right down to the gum": all the way, whatever stands before it.
  if (allTheWay(tokens, at)) return { from: at, to: at + 1, terms: [{ k: 'filler' }] };
  if (!['down', 'along', 'up', 'through', 'round', 'around', 'across', 'into', 'to'].includes(text(tokens, at + 1))) return undefined;
  if (text(tokens, at + 1) === 'to' && text(tokens, at + 2) !== 'the') return undefined;
  // "right along the lower left": the side comes behind.
  const quarter =
    text(tokens, at + 2) === 'the' &&
    ['upper', 'lower', 'top', 'bottom', 'left', 'right'].includes(text(tokens, at + 3)) &&
    !['the', 'on', 'upper', 'lower', 'top', 'bottom'].includes(before);
  return quarter
    ? { from: at, to: at + 1, terms: [{ k: 'filler' }] }
    : before === '' ||
        ['the', 'on', 'upper', 'lower', 'top', 'bottom', 'and', 'or', 'to', 'left', 'up', 'down', 'in', 'his', 'her'].includes(before) ||
        longest(vocabulary, [before], 0)?.values.some((t) => t.k === 'condition' || t.k === 'group')
      ? undefined
      : { from: at, to: at + 1, terms: [{ k: 'filler' }] };
}

/** "nothing sharp left": of what there was, and no side. */
const remains = (tokens: readonly Token[], at: number): boolean =>
  text(tokens, at) === 'left' &&
  (at + 1 === tokens.length || tokens[at]?.ends === true) &&
  tokens
    .slice(Math.max(0, at - 3), at)
    .some(({ t }, i, near) => t === 'nothing' && !near.slice(i).some(({ t: word, ends }) => ends ?? placing.has(word)));
const placing: ReadonlySet<string> = new Set(['on', 'the', 'upper', 'lower', 'top', 'bottom']);

/** "left the uppers": what was left, unless the words say more by themselves ("left alone", "left a bit of root"). */
function readLeftAs(tokens: readonly Token[], at: number): Mark | undefined {
  if (remains(tokens, at)) return { from: at, to: at + 1, terms: [{ k: 'glue' }] };
  return leavesIt(tokens, at) &&
    !longest(
      vocabulary,
      tokens.slice(at, at + 6).map(({ t }) => t),
      0,
    )?.values.some(({ k }) => k === 'work' || k === 'talk')
    ? { from: at, to: at + 1, terms: [{ k: 'glue' }] }
    : undefined;
}

function readPlaceOrTerm(tokens: readonly Token[], all: readonly string[], at: number, before: readonly Mark[]): Mark | undefined {
  // "took the incisors back three mil": a size, and not the back three.
  const words =
    ['back', 'last', 'front', 'first'].includes(text(tokens, at)) && readMeasure(tokens, at + 1) !== undefined ? all.slice(0, at + 1) : all;
  // "one point one": a number, not the small word.
  if (text(tokens, at) === 'one' && text(tokens, at + 1) === 'point') return undefined;
  // "two oh four point two" is a number gone wrong, no enamel point.
  if (
    text(tokens, at) === 'point' &&
    readNumber(tokens, at + 1) !== undefined &&
    !unitWords.has(text(tokens, (readNumber(tokens, at + 1) as { to: number }).to))
  )
    return undefined;
  const closes = (i: number): boolean => tokens[i]?.ends === true;
  const any = longest(vocabulary, words, at, closes);
  const named =
    any &&
    any.values.every(({ k }) => k === 'talk') &&
    (placeBehind(tokens, words, any.to) ||
      hasOne(tokens, at, before) ||
      theSide(tokens, at) ||
      (ofTeeth.has(text(tokens, any.to)) && ['back', 'front'].includes(text(tokens, any.to - 1))))
      ? longest(withoutTalk, words, at, closes)
      : undefined;
  const found =
    named?.values.some(({ k }) => k === 'condition') || (named && (ofTeeth.has(text(tokens, any?.to ?? -1)) || theSide(tokens, at)))
      ? named
      : any;
  const cluster = readCluster(tokens, words, at);
  const first = found;
  const isPlace = found?.values.some(isOfPlace) ?? false;
  if (
    cluster &&
    (found === undefined ||
      isPlace ||
      cluster.raw.joined === 'between' ||
      (cluster.to > found.to && found.values.every(({ k }) => k === 'glue' || k === 'filler' || k === 'qualifier')))
  ) {
    // A word that is a place and something else besides ("incisor", "back") keeps both until its neighbours are known.
    const others = first && !cluster.raw.joined ? first.values.filter(({ k }) => ['condition', 'work', 'qualifier'].includes(k)) : [];
    return { from: at, to: cluster.to, place: cluster.raw, ...(others.length > 0 && cluster.to === first?.to ? { terms: others } : {}) };
  }
  // "buccal ulcers": of the cheek, for no tooth has one.
  if (text(tokens, at) === 'buccal' && found?.to === at + 1 && ofSoftTissue(longest(vocabulary, words, at + 1)?.values))
    return { from: at, to: at + 1, place: { region: 'cheek' } };
  // "points to the cheek teeth": no side of a tooth.
  if (found?.values.every(({ k }) => k === 'surface') && ['tooth', 'teeth'].includes(text(tokens, found.to))) return undefined;
  return found && { from: at, to: found.to, terms: found.values };
}

export const ofSoftTissue = (terms: readonly Term[] | undefined): boolean =>
  terms?.some((t) => t.k === 'condition' && (conditions[t.id] as ConditionEntry).places.every((kind) => kind === 'G')) === true;
/** "decay in the back cup": the back of a tooth or of a row, and nobody's back. */
const ofTeeth: ReadonlySet<string> = new Set([
  'cup',
  'infundibulum',
  'tooth',
  'teeth',
  'molar',
  'molars',
  'corner',
  'edge',
  'end',
  'two',
  'three',
  'lowers',
  'uppers',
]);
const leadsToPlace: ReadonlySet<string> = new Set(['on', 'in', 'at']);
/** "four oh nine has a step on it": what a tooth has is no "step on it". */
const hasOne = (tokens: readonly Token[], at: number, before: readonly Mark[]): boolean => {
  if (!articles.has(text(tokens, at - 1)) || !having.has(text(tokens, at - 2))) return false;
  const place = before.findLast((mark) => mark.place !== undefined);
  return (
    place !== undefined &&
    (place.place?.codes !== undefined || place.place?.positions !== undefined) &&
    tokens.slice(place.to - 1, at).every(({ ends }) => ends !== true)
  );
};
const articles: ReadonlySet<string> = new Set(['a', 'an']);
const having: ReadonlySet<string> = new Set(['has', 'got', 'is', 'with', 'have']);
const softParts: ReadonlySet<string> = new Set(['tongue', 'lips', 'cheek', 'gums', 'palate', 'bars']);
/** "a crack on the palatal side of two ten": the small word in an everyday phrase leads to a tooth or a quadrant. */
function placeBehind(tokens: readonly Token[], words: readonly string[], to: number): boolean {
  // "he's cut the tongue"
  if (text(tokens, to - 1) === 'the') return softParts.has(readCluster(tokens, words, to)?.raw.region ?? '');
  if (!leadsToPlace.has(text(tokens, to - 1))) return false;
  const from = ['the', 'his', 'her'].includes(text(tokens, to)) ? to + 1 : to;
  const surface = longest(withoutTalk, words, from)?.values.some(({ k }) => k === 'surface');
  const raw = readCodes(tokens, from)?.raw ?? readCluster(tokens, words, from)?.raw;
  return surface === true || (raw !== undefined && (raw.codes !== undefined || raw.positions !== undefined || raw.jaw !== undefined));
}

function readBareNumber(tokens: readonly Token[], at: number): Mark | undefined {
  const amount = readAmount(tokens, at);
  return amount && { from: at, to: amount.to, number: amount.value };
}

export const isGlue = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'glue') ?? false;
export const isHead = (mark: Mark | undefined): boolean =>
  mark?.terms?.some((t) => t.k === 'condition' || (t.k === 'work' && t.term.as === 'procedure')) ?? false;

const singular: ReadonlySet<string> = new Set(['is', 'has', 'was', "'s", 'feels', 'looks', 'seems', 'appears', 'needs']);
/** "a crack in one oh nine and one oh eight is mobile": one tooth behind "and", with a verb of its own, is the next finding's. */
function ownVerb(marks: readonly Mark[], tokens: readonly Token[], i: number): readonly Mark[] | undefined {
  const mark = marks[i] as Mark;
  const codes = mark.place?.codes ?? [];
  if (codes.length < 2 || !singular.has(text(tokens, mark.to)) || !marks.slice(0, i).some(isHead)) return undefined;
  const after = marks
    .slice(i + 1)
    .findIndex(
      (m) => !isGlue(m) && !m.terms?.some((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'cue' || t.k === 'qualifier'),
    );
  if (after < 0 || !isHead(marks[i + 1 + after])) return undefined;
  const and = Array.from({ length: mark.to - mark.from }, (_, k) => mark.to - 1 - k).find(
    (at) => text(tokens, at) === 'and' && readCodes(tokens, at + 1)?.to === mark.to,
  );
  const first = and === undefined ? undefined : readCodes(tokens.slice(0, and), mark.from);
  const last = and === undefined ? undefined : readCodes(tokens, and + 1);
  return first && last && and !== undefined && first.to === and
    ? [
        { from: mark.from, to: and, place: first.raw },
        { from: and, to: and + 1, terms: [{ k: 'glue' }] },
        { from: and + 1, to: mark.to, place: last.raw },
      ]
    : undefined;
}

/** Where the second of two teeth has a verb of its own, each is of its own finding. */
const partPlaces = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  partedBy(marks, (_, i) => ownVerb(marks, tokens, i));

/** "upper right one oh six": words of place beside a code say the same place, or something is wrong. */
function mergeClusters(marks: readonly Mark[]): readonly Mark[] {
  const done: Mark[] = [];
  for (const mark of marks) {
    const last = done.at(-1);
    const code = mark.place?.codes?.[0];
    const agrees =
      code !== undefined &&
      last?.place !== undefined &&
      last.place.jaw === undefined &&
      (last.place.side === 'left' || last.place.side === 'right') &&
      !contradicts(last.place, code) &&
      last.to === mark.from;
    const quadrants =
      last?.place &&
      last.place.codes === undefined &&
      (agrees || (last.place.jaw !== undefined && last.place.side !== undefined)) &&
      last.place.positions === undefined &&
      last.place.region === undefined;
    if (last?.place && code !== undefined && quadrants) {
      const raw = contradicts(last.place, code) ? { ...mark.place, jaw: last.place.jaw, side: last.place.side } : mark.place;
      done[done.length - 1] = { ...mark, from: last.from, place: raw as RawPlace };
    } else done.push(mark);
  }
  return done;
}

/** "the nine ten gap on the lower right": two positions before the gap, and their row behind it. */
function gapByPositions(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const at = marks.findIndex(
    ({ number }, i) =>
      typeof number === 'number' &&
      number >= 6 &&
      number <= 10 &&
      marks[i + 1]?.number === number + 1 &&
      gapWords.has(text(tokens, marks[i + 1]?.to ?? -1)),
  );
  if (at < 0) return marks;
  const ofRow: number[] = [];
  let row: Pick<RawPlace, 'jaw' | 'side'> = {};
  for (let i = at + 3; i < marks.length && (marks[i]?.place !== undefined || !marks[i]?.unknown); i += 1) {
    const { jaw, side, ...more } = marks[i]?.place ?? {};
    if (Object.entries(more).some(([name, value]) => name !== 'plural' && value !== undefined) || (row.jaw && jaw) || (row.side && side))
      break;
    if (jaw === undefined && side === undefined) continue;
    row = { ...(jaw ? { jaw } : {}), ...(side ? { side } : {}), ...row };
    ofRow.push(i);
  }
  if (row.jaw === undefined || row.side === undefined) return marks;
  const n = marks[at]?.number as number;
  const place: RawPlace = { positions: [n, n + 1], joined: 'between', ...row };
  return marks.flatMap((mark, i) =>
    i === at
      ? [{ from: mark.from, to: (marks[at + 1] as Mark).to, place }]
      : i === at + 1
        ? []
        : ofRow.includes(i)
          ? [{ from: mark.from, to: mark.to, terms: [{ k: 'glue' as const }] }]
          : [mark],
  );
}

/** A word of what a gap was filled with. */
export const isFilling = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'work' && t.term.as === 'filling') ?? false;
