/** One pass from left to right: tokens become marks. A mark says what a stretch of words may be; nothing is decided yet. */
import { conditions } from '../lexicon/conditions.ts';
import { notATooth, notAToothBefore, paidAfter, paidBefore } from '../lexicon/numbers.ts';
import { piecesSay } from '../lexicon/handling.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { aboutAfter, aboutSay } from '../lexicon/modifiers.ts';
import { angleUnits, dimensionSay, gradeWords, lengthUnits } from '../lexicon/units.ts';
import type { MeasureName } from '../lexicon/types.ts';
import { readDoing } from './doing.ts';
import { formAt, formsOf } from './forms.ts';
import { partedBy } from './lists.ts';
import { named } from './named.ts';
import { narrowed } from './narrow.ts';
import { mayBeNumber, readAmount, readNumber } from './numbers.ts';
import { contradicts, gapWords, isBut, leavesIt, readCluster, readCodes, type RawPlace } from './places.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';
import { longest } from './trie.ts';
import { vocabulary, withoutTalk, type Term } from './vocabulary.ts';

export interface MeasureMark { readonly value?: number | readonly [number, number]; readonly unit?: 'mm' | 'cm' | 'degree'; readonly about: boolean; readonly what?: MeasureName; readonly said?: string; readonly second?: number }
export interface Mark {
  readonly from: number;
  readonly to: number;
  readonly place?: RawPlace;
  readonly measure?: MeasureMark;
  /** A grade's value as text, and the words that announced it; `outOf` for "seven out of nine". */
  readonly grade?: { readonly value: string; /** "one to two": the other end. */ readonly or?: string; readonly announced: boolean; readonly outOf?: number };
  /** A number with nothing to say what it counts. */
  readonly number?: number | readonly [number, number];
  readonly terms?: readonly Term[];
  readonly pulpHorn?: number;
  /** A finding put back where it was left unsaid: of no width here, spoken there. */
  readonly again?: { readonly from: number; readonly to: number; /** With all that was said of it: "ten the same". */ readonly same?: true };
  /** A place of which a part was said before. */
  readonly carried?: true;
  /** Names what the findings beside it share out: theirs, though none has it for its place. */
  readonly whole?: true;
  /** No word of the lexicon. */
  readonly unknown?: true;
}

/** The tokens that name a head, also where it was put back. */
export const headSpan = (marks: readonly Mark[], at: number): readonly [number, number] => { const mark = marks[at]; const { from, to } = mark?.again ?? mark ?? { from: 0, to: 0 }; return [from, to]; };

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';

export function scan(tokens: readonly Token[]): { readonly marks: readonly Mark[]; readonly steps: number } {
  // One look at every place in the phrase; the steps are counted so that a test can see that they grow with its length only.
  const words = tokens.map(({ t }) => t);
  const marks: Mark[] = [];
  let at = 0;
  let steps = 0;
  while (at < tokens.length) {
    steps += 1;
    const mark = readPulpHorn(tokens, at) ?? readTakenOff(tokens, at) ?? readTakenOut(tokens, at) ?? readDoing(tokens, at) ?? readBar(tokens, at) ?? readRightAlong(tokens, at) ?? readLeftAs(tokens, at) ?? readShortGrade(tokens, at, marks) ?? readCodePlace(tokens, at) ?? readGrade(tokens, at) ?? readMeasure(tokens, at) ?? readPlaceOrTerm(tokens, words, at) ?? readBareNumber(tokens, at) ?? { from: at, to: at + 1, unknown: true as const };
    marks.push(mark);
    at = mark.to;
  }
  return { marks: named(narrowed(partPlaces(mergeClusters(marks), tokens), tokens), tokens), steps };
}

function readCodePlace(tokens: readonly Token[], at: number): Mark | undefined {
  const codes = readCodes(tokens, at);
  if (codes === undefined) return undefined;
  const before = text(tokens, at - 1);
  // "diastema nine ten on the lower left": two positions, not 910.
  if (codes.raw.codes?.length === 0 && codes.raw.notTeeth?.[0] === '910' && tokens.some(({ t }) => gapWords.has(t))) return undefined;
  if (before === 'a' && text(tokens, at - 2) === 'the') return undefined;
  if (notATooth.includes(text(tokens, codes.to)) || notAToothBefore.includes(before) || gradeWords.includes(before)) return undefined;
  // "that's one ten today": the price of the visit.
  if (paidBefore.includes(before) && paidAfter.includes(text(tokens, codes.to))) return undefined;
  if (text(tokens, codes.to) === 'o' && text(tokens, codes.to + 1) === 'clock') return undefined;
  return { from: at, to: codes.to, place: codes.raw };
}

const horns = new Set(['horn', 'horns']);
/** "pulp horn three exposed", "pulp exposure, horn two": the number is the horn's. */
function readPulpHorn(tokens: readonly Token[], at: number): Mark | undefined {
  const from = text(tokens, at) === 'pulp' ? at + 1 : at;
  if (!horns.has(text(tokens, from))) return undefined;
  const number = readNumber(tokens, text(tokens, from + 1) === 'number' ? from + 2 : from + 1);
  if (number === undefined || readCodes(tokens, from + 1)) return undefined;
  const open = ['is', 'was'].includes(text(tokens, number.to)) ? number.to + 1 : number.to;
  const exposed = ['exposed', 'open', 'exposure'].includes(text(tokens, open));
  return { from: at, to: exposed ? open + 1 : number.to, pulpHorn: number.value, ...(exposed ? { terms: [{ k: 'condition', id: 'pulp-exposure', strength: 'say', plural: false }] } : {}) };
}

const takesOff = new Set(['took', 'taken', 'take', 'knocked', 'shaved', 'ground', 'got']);
/** "took four mil off two oh six": a reduction in the words of doing. */
function readTakenOff(tokens: readonly Token[], at: number): Mark | undefined {
  const verb = text(tokens, at);
  if (!takesOff.has(verb)) return undefined;
  const measure = readMeasure(tokens, text(tokens, at + 1) === 'off' ? at + 2 : at + 1);
  if (measure === undefined || !(text(tokens, at + 1) === 'off' || ['off', 'from'].includes(text(tokens, measure.to)))) return undefined;
  return { from: at, to: at + 1, terms: [{ k: 'work', term: { as: 'procedure', id: 'reduce', ...(verb === 'take' ? {} : { done: true }) } }] };
}

const takesOut = new Set(['took', 'taken', 'pulled', 'whipped', 'popped', 'lifted', 'had', 'got']);
/** "took both upper wolf teeth out", "pulled the cap on five oh six off": the verb of doing, its tooth or cap between. */
function readTakenOut(tokens: readonly Token[], at: number): Mark | undefined {
  if (!takesOut.has(text(tokens, at))) return undefined;
  const end = tokens.slice(at + 1, at + 9).findIndex(({ t }) => t === 'out' || t === 'off');
  const between = tokens.slice(at + 1, at + 1 + end);
  // "took the piece of three oh eight out": a piece is not the tooth.
  if (end < 1 || between.some(({ t }, i) => ['and', 'but'].includes(t) || piecesSay.has(t) || readMeasure(tokens, at + 1 + i))) return undefined;
  const cap = between.some(({ t }) => t === 'cap' || t === 'caps');
  const tooth = text(tokens, at + 1 + end) === 'out' && between.some(({ t }, i) => t === 'tooth' || t === 'teeth' || readCodes(tokens, at + 1 + i) !== undefined);
  return cap || tooth ? { from: at, to: at + 1, terms: [{ k: 'work', term: { as: 'procedure', id: cap ? 'remove-cap' : 'extract', done: true } }] } : undefined;
}

const except = [{ k: 'cue', cue: { say: ['bar'], means: 'except', looks: 'forward' } }] as const;
/** "all worn bar the sixes", "sound bar two oh nine", "every canine but one oh four": what is left out stands right behind. */
function readBar(tokens: readonly Token[], at: number): Mark | undefined {
  if (isBut(tokens, at)) return { from: at, to: at + 1, terms: except };
  // "no ulcers only the one on the left cheek"
  const only = text(tokens, at) === 'only' || text(tokens, at) === 'just' ? (text(tokens, at + 1) === 'the' ? at + 2 : at + 1) : undefined;
  if (only !== undefined && text(tokens, only) === 'one' && ['on', 'at', 'in'].includes(text(tokens, only + 1)) && tokens.slice(0, at).some(({ t }) => t === 'no' || t === 'not')) return { from: at, to: only + 1, terms: except };
  if (text(tokens, at) !== 'but') return undefined;
  const next = text(tokens, at + 1);
  const all = tokens.slice(0, at).some(({ t }) => t === 'all' || t === 'every' || t === 'everywhere' || t === 'everything' || t === 'nothing');
  // A finding behind the place would be its own: "all sharp but the sixes are hooked".
  const place = all ? readCodes(tokens, at + 1) ?? readCluster(tokens, tokens.map(({ t }) => t), next === 'the' ? at + 2 : at + 1) : undefined;
  const single = all && next === 'the' && /^(six|seven|eight|nine|ten|eleven)$/.test(text(tokens, at + 2)) ? at + 3 : undefined;
  const to = place?.to ?? single;
  return to !== undefined && (to === tokens.length || tokens[to - 1]?.ends === true) ? { from: at, to: at + 1, terms: except } : undefined;
}

/** "packed right down", "my hand right along the row": no side. */
function readRightAlong(tokens: readonly Token[], at: number): Mark | undefined {
  if (text(tokens, at) !== 'right' || !['down', 'along', 'up', 'through', 'round', 'around', 'across', 'into', 'to'].includes(text(tokens, at + 1))) return undefined;
  if (text(tokens, at + 1) === 'to' && text(tokens, at + 2) !== 'the') return undefined;
  const before = text(tokens, at - 1);
  // "right along the lower left": the side comes behind.
  const quarter = text(tokens, at + 2) === 'the' && ['upper', 'lower', 'top', 'bottom', 'left', 'right'].includes(text(tokens, at + 3)) && !['the', 'on', 'upper', 'lower', 'top', 'bottom'].includes(before);
  return quarter ? { from: at, to: at + 1, terms: [{ k: 'filler' }] } : before === '' || ['the', 'on', 'upper', 'lower', 'top', 'bottom', 'and', 'or', 'to', 'left', 'up', 'down', 'in', 'his', 'her'].includes(before) || longest(vocabulary, [before], 0)?.values.some((t) => t.k === 'condition' || t.k === 'group') ? undefined : { from: at, to: at + 1, terms: [{ k: 'filler' }] };
}

/** "left the uppers": what was left, unless the words say more by themselves ("left alone", "left a bit of root"). */
function readLeftAs(tokens: readonly Token[], at: number): Mark | undefined {
  return leavesIt(tokens, at) && !longest(vocabulary, tokens.slice(at, at + 6).map(({ t }) => t), 0)?.values.some(({ k }) => k === 'work' || k === 'talk') ? { from: at, to: at + 1, terms: [{ k: 'glue' }] } : undefined;
}

/** "mobility one", "two ten m two": a number right behind a finding that has a scale is its grade. */
function readShortGrade(tokens: readonly Token[], at: number, marks: readonly Mark[]): Mark | undefined {
  if (!mayBeNumber(text(tokens, at))) return undefined;
  // "mobility of two", "mobility is four"
  const of = ['of', 'is'].includes(text(tokens, at - 1)) && marks.at(-1)?.from === at - 1;
  const named = of ? marks.at(-2) : marks.at(-1);
  const scaled = named?.terms?.some((t) => t.k === 'condition' && (conditions[t.id] as ConditionEntry).scale !== undefined) ?? false;
  if (!scaled || readCodes(tokens, at)) return undefined;
  // "a loose one at three ten": counted by nothing.
  if (text(tokens, at) === 'one' && !of && ['a', 'an', 'the', 'another', 'that'].includes(text(tokens, (named?.from ?? 0) - 1))) return undefined;
  const number = readNumber(tokens, at);
  if (number === undefined || unitWords.has(text(tokens, number.to)) || text(tokens, number.to) === 'out') return undefined;
  // "nine has peripheral caries, ten the same": a position of the row, no grade of any scale but the body's.
  if (number.value >= 6 && number.value <= 11 && !of && !named?.terms?.some((t) => t.k === 'condition' && t.id === 'body-condition')) return undefined;
  const second = ['to', 'or'].includes(text(tokens, number.to)) && !readCodes(tokens, number.to + 1) ? readNumber(tokens, number.to + 1) : undefined;
  if (second && unitWords.has(text(tokens, second.to))) return undefined;
  if (second) return { from: at, to: second.to, grade: { value: String(number.value), or: String(second.value), announced: false } };
  return { from: at, to: number.to, grade: { value: String(number.value), announced: false } };
}

const numerals: Readonly<Record<string, string>> = { i: '1', ii: '2', iii: '3', iv: '4' };

const announcing = new Set(gradeWords);
function readGrade(tokens: readonly Token[], at: number): Mark | undefined {
  if (announcing.has(text(tokens, at))) {
    const from = at;
    const start = ['of', 'is', "'s", 'was'].includes(text(tokens, at + 1)) ? at + 2 : at + 1;
    const number = readNumber(tokens, start);
    if (number === undefined) return numerals[text(tokens, start)] ? { from, to: start + 1, grade: { value: numerals[text(tokens, start)] as string, announced: true } } : undefined;
    // "grade one one" is grade 1.1 in the mouth of someone who leaves out the point.
    const spelled = number.value === 1 && ['one', 'two'].includes(text(tokens, number.to)) && !readCodes(tokens, number.to) ? { value: number.value + (text(tokens, number.to) === 'one' ? 0.1 : 0.2), to: number.to + 1 } : number;
    if (unitWords.has(text(tokens, spelled.to))) return undefined;
    const second = ['to', 'or'].includes(text(tokens, spelled.to)) && !readCodes(tokens, spelled.to + 1) ? readNumber(tokens, spelled.to + 1) : undefined;
    if (second && !unitWords.has(text(tokens, second.to))) return { from, to: second.to, grade: { value: String(spelled.value), or: String(second.value), announced: true } };
    return outOf(tokens, { from, to: spelled.to, grade: { value: String(spelled.value), announced: true } });
  }
  const number = mayBeNumber(text(tokens, at)) ? readNumber(tokens, at) : undefined;
  if (number && text(tokens, number.to) === 'out' && text(tokens, number.to + 1) === 'of') return outOf(tokens, { from: at, to: number.to, grade: { value: String(number.value), announced: true } });
  return undefined;
}

function outOf(tokens: readonly Token[], mark: Mark): Mark {
  if (text(tokens, mark.to) !== 'out' || text(tokens, mark.to + 1) !== 'of') return mark;
  const top = readNumber(tokens, mark.to + 2);
  return top === undefined ? mark : { ...mark, to: top.to, grade: { ...(mark.grade as { value: string; announced: boolean }), outOf: top.value } };
}

const unitOf: ReadonlyMap<string, 'mm' | 'cm' | 'degree'> = new Map([...lengthUnits.mm.map((u) => [u, 'mm'] as const), ...lengthUnits.cm.map((u) => [u, 'cm'] as const), ...angleUnits.map((u) => [u, 'degree'] as const)]);
const unitWords = new Set(unitOf.keys());
const dimensions = formsOf(Object.entries(dimensionSay).flatMap(([what, forms]) => forms.map((form) => [form.split(' '), what as MeasureName] as const)));

const abouts = formsOf(aboutSay.flatMap(expand).map((form) => [form, true] as const));
const aboutsAfter = formsOf(aboutAfter.map((form) => [form.split(' '), true] as const));
/** "about four mil deep", "a centimetre and a half", "two by three centimetres", "pea sized". */
function readMeasure(tokens: readonly Token[], start: number): Mark | undefined {
  const about = formAt(abouts, tokens, start);
  const at = start + (about?.words.length ?? 0);
  const article = ['a', 'an', 'one'].includes(text(tokens, at)) && unitOf.get(text(tokens, at + 1));
  if (article && text(tokens, at) !== 'one') {
    const half = [2, 3, 4].map((i) => text(tokens, at + i)).join(' ') === 'and a half';
    return dimension(tokens, { from: start, to: at + (half ? 5 : 2), measure: { value: half ? 1.5 : 1, unit: article, about: about !== undefined } });
  }
  // "between eight and ten millimetres"
  if (text(tokens, at) === 'between') {
    const low = readNumber(tokens, at + 1);
    const high = low && text(tokens, low.to) === 'and' ? readNumber(tokens, low.to + 1) : undefined;
    const unit = high && unitOf.get(text(tokens, high.to));
    return low && high && unit && high.value > low.value ? dimension(tokens, { from: start, to: high.to + 1, measure: { value: [low.value, high.value], unit, about: about !== undefined } }) : undefined;
  }
  // "a couple of mil"
  const couple = (text(tokens, at) === 'a' ? at + 1 : at) + (text(tokens, (text(tokens, at) === 'a' ? at + 1 : at) + 1) === 'of' ? 2 : 1);
  if (text(tokens, couple - 1) === 'couple' || text(tokens, couple - 2) === 'couple') { const unit = unitOf.get(text(tokens, couple)); return unit && dimension(tokens, { from: start, to: couple + 1, measure: { value: 2, unit, about: true } }); }
  const amount = readAmount(tokens, at);
  if (amount === undefined) return text(tokens, start + 1) === 'sized' || text(tokens, start + 1) === 'size' ? { from: start, to: start + 2, measure: { about: false, said: `${text(tokens, start)} ${text(tokens, start + 1)}` } } : undefined;
  // "ten by five mil", "ten mil by five mil"
  const by = text(tokens, amount.to) === 'by' ? amount.to : unitOf.has(text(tokens, amount.to)) && text(tokens, amount.to + 1) === 'by' ? amount.to + 1 : undefined;
  const other = by === undefined ? undefined : readNumber(tokens, by + 1);
  const second = other;
  // "ten mil by five"
  if (second && by !== amount.to && !unitOf.has(text(tokens, second.to))) return dimension(tokens, { from: start, to: second.to, measure: { value: amount.value, unit: unitOf.get(text(tokens, amount.to)) as 'mm', about: about !== undefined, second: second.value } });
  const unitAt = second?.to ?? amount.to;
  const unit = unitOf.get(text(tokens, unitAt));
  if (unit === undefined || (second && by !== amount.to && unitOf.get(text(tokens, amount.to)) !== unit)) return undefined;
  return dimension(tokens, { from: start, to: unitAt + 1, measure: { value: amount.value, unit, about: about !== undefined, ...(second ? { second: second.value } : {}) } });
}

function dimension(tokens: readonly Token[], mark: Mark): Mark {
  const found = formAt(dimensions, tokens, mark.to);
  const sized = found ? { ...mark, to: mark.to + found.words.length, measure: { ...(mark.measure as MeasureMark), what: found.means } } : mark;
  const guess = formAt(aboutsAfter, tokens, sized.to);
  return guess ? { ...sized, to: sized.to + guess.words.length, measure: { ...(sized.measure as MeasureMark), about: true } } : sized;
}

function readPlaceOrTerm(tokens: readonly Token[], all: readonly string[], at: number): Mark | undefined {
  // "took the incisors back three mil": a size, and not the back three.
  const words = ['back', 'last', 'front', 'first'].includes(text(tokens, at)) && readMeasure(tokens, at + 1) !== undefined ? all.slice(0, at + 1) : all;
  // "one point one": a number, not the small word.
  if (text(tokens, at) === 'one' && text(tokens, at + 1) === 'point') return undefined;
  // "two oh four point two" is a number gone wrong, no enamel point.
  if (text(tokens, at) === 'point' && readNumber(tokens, at + 1) !== undefined && !unitWords.has(text(tokens, (readNumber(tokens, at + 1) as { to: number }).to))) return undefined;
  const closes = (i: number): boolean => tokens[i]?.ends === true;
  const any = longest(vocabulary, words, at, closes);
  const named = any && any.values.every(({ k }) => k === 'talk') && placeBehind(tokens, words, any.to) ? longest(withoutTalk, words, at, closes) : undefined;
  const found = named?.values.some(({ k }) => k === 'condition') ? named : any;
  const cluster = readCluster(tokens, words, at);
  const first = found;
  const isPlace = found?.values.some(({ k }) => ['side', 'jaw', 'row', 'hundreds', 'allRound', 'elsewhere', 'group', 'asked', 'region'].includes(k)) ?? false;
  if (cluster && (found === undefined || isPlace || cluster.raw.joined === 'between' || (cluster.to > found.to && found.values.every(({ k }) => k === 'glue' || k === 'filler' || k === 'qualifier')))) {
    // A word that is a place and something else besides ("incisor", "back") keeps both until its neighbours are known.
    const others = first && !cluster.raw.joined ? first.values.filter(({ k }) => ['condition', 'work', 'qualifier'].includes(k)) : [];
    return { from: at, to: cluster.to, place: cluster.raw, ...(others.length > 0 && cluster.to === first?.to ? { terms: others } : {}) };
  }
  return found && { from: at, to: found.to, terms: found.values };
}

const leadsToPlace: ReadonlySet<string> = new Set(['on', 'in', 'at']);
/** "a crack on the palatal side of two ten": the small word in an everyday phrase leads to a tooth or a quadrant. */
function placeBehind(tokens: readonly Token[], words: readonly string[], to: number): boolean {
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
export const isHead = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'condition' || (t.k === 'work' && t.term.as === 'procedure')) ?? false;

const singular: ReadonlySet<string> = new Set(['is', 'has', 'was', "'s", 'feels', 'looks', 'seems', 'appears', 'needs']);
/** "a crack in one oh nine and one oh eight is mobile": one tooth behind "and", with a verb of its own, is the next finding's. */
function ownVerb(marks: readonly Mark[], tokens: readonly Token[], i: number): readonly Mark[] | undefined {
  const mark = marks[i] as Mark;
  const codes = mark.place?.codes ?? [];
  if (codes.length < 2 || !singular.has(text(tokens, mark.to)) || !marks.slice(0, i).some(isHead)) return undefined;
  const after = marks.slice(i + 1).findIndex((m) => !isGlue(m) && !m.terms?.some((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'cue' || t.k === 'qualifier'));
  if (after < 0 || !isHead(marks[i + 1 + after])) return undefined;
  const and = Array.from({ length: mark.to - mark.from }, (_, k) => mark.to - 1 - k).find((at) => text(tokens, at) === 'and' && readCodes(tokens, at + 1)?.to === mark.to);
  const first = and === undefined ? undefined : readCodes(tokens.slice(0, and), mark.from);
  const last = and === undefined ? undefined : readCodes(tokens, and + 1);
  return first && last && and !== undefined && first.to === and ? [{ from: mark.from, to: and, place: first.raw }, { from: and, to: and + 1, terms: [{ k: 'glue' }] }, { from: and + 1, to: mark.to, place: last.raw }] : undefined;
}

/** Where the second of two teeth has a verb of its own, each is of its own finding. */
const partPlaces = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] => partedBy(marks, (_, i) => ownVerb(marks, tokens, i));

/** "upper right one oh six": words of place beside a code say the same place, or something is wrong. */
function mergeClusters(marks: readonly Mark[]): readonly Mark[] {
  return marks.reduce<Mark[]>((done, mark) => {
    const last = done.at(-1);
    const code = mark.place?.codes?.[0];
    const agrees = code !== undefined && last?.place !== undefined && last.place.jaw === undefined && (last.place.side === 'left' || last.place.side === 'right') && !contradicts(last.place, code) && last.to === mark.from;
    const quadrants = last?.place && last.place.codes === undefined && (agrees || last.place.jaw !== undefined && last.place.side !== undefined) && last.place.positions === undefined && last.place.region === undefined;
    if (last?.place && code !== undefined && quadrants) {
      const raw = contradicts(last.place, code) ? { ...mark.place, jaw: last.place.jaw, side: last.place.side } : mark.place;
      return [...done.slice(0, -1), { ...mark, from: last.from, place: raw as RawPlace }];
    }
    return [...done, mark];
  }, []);
}

/** A word of what a gap was filled with. */
export const isFilling = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'work' && t.term.as === 'filling') ?? false;
