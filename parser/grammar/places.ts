/** Reading places in words: sides, jaws, rows, groups, regions. What was said is kept raw; the finding decides what it can mean. */
import { notATooth, ohWords, ordinalWords, positionPlurals, teenWords } from '../lexicon/numbers.ts';
import { regions, type RegionId } from '../lexicon/regions.ts';
import { measuring, readCodes } from './codes.ts';
import { digit, readNumber } from './numbers.ts';
import { codeOf, isTooth, positionOf, quadrantOf, readCode, readPlural } from './teeth.ts';
import { isOh, startsWithDigit, type Token } from './tokens.ts';
import { longest } from './trie.ts';
import { placeWords, vocabulary, withoutTalk, type Term } from './vocabulary.ts';

export type Side = 'left' | 'right' | 'both';
export type Jaw = 'upper' | 'lower' | 'both';

/** A place as it was said. */
export interface RawPlace {
  /** Codes in the order spoken, and how they were put together. */
  readonly codes?: readonly string[];
  /** `orPairs`: "three oh nine three ten or three ten three eleven", one gap or another. */
  readonly joined?: 'one' | 'adjacent' | 'and' | 'or' | 'between' | 'range' | 'pairs' | 'orPairs';
  /** Code-shaped, but no tooth: "504". */
  readonly notTeeth?: readonly string[];
  readonly quadrants?: readonly number[];
  readonly positions?: readonly number[];
  readonly asked?: readonly [number, number];
  readonly jaw?: Jaw;
  readonly side?: Side;
  /** "row", "arcade": the cheek teeth of that quadrant. */
  readonly row?: boolean;
  readonly all?: boolean;
  readonly region?: RegionId;
  readonly plural?: boolean;
  /** Behind or in front of a tooth: counts from it. */
  readonly relative?: 'behind' | 'front' | 'either';
  /** "both" without a noun. */
  readonly weak?: true | undefined;
  readonly elsewhere?: string;
  /** "two of the lower incisors": some of them. */
  readonly part?: true;
  /** "either end of the lower left": its first and its last tooth. */
  readonly ends?: true;
  readonly repaired?: boolean;
  /** Another quadrant was said beside the code: "upper left one oh six". */
  readonly against?: number;
}

export interface PlaceSpan {
  readonly raw: RawPlace;
  readonly from: number;
  readonly to: number;
}

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const glueInside = new Set(['the', 'of', 'on', 'in', 'to', 'all', 'four', 'hand', 'and', 'both']);

/** "the left side of her face". */
const ofWhom = (tokens: readonly Token[], at: number): boolean =>
  ['his', 'her', 'its'].includes(text(tokens, at)) && text(tokens, at - 1) === 'of' && text(tokens, at - 2) === 'side';
const determiners = new Set(['the', 'his', 'her', 'its', 'that', 'those', 'these', 'them', 'it', 'both']);
/** "scaled the lower canines, left the uppers": where something new begins, before what was left, a verb and no side. */
export const leavesIt = (tokens: readonly Token[], at: number): boolean =>
  remains(tokens, at) ||
  (text(tokens, at) === 'left' &&
    tokens[at]?.ends !== true &&
    determiners.has(text(tokens, at + 1)) &&
    (at === 0 || tokens[at - 1]?.ends === true || ['and', 'but', 'i', 'we', 'just'].includes(text(tokens, at - 1))));

const goneSo: ReadonlySet<string> = new Set(['worn', 'broken', 'snapped', 'sheared', 'gone', 'cracked', 'split']);
const ofASide: ReadonlySet<string> = new Set(['', 'the', 'on', 'upper', 'lower', 'top', 'bottom', 'his', 'her', 'left', 'and', 'or']);
const behindDown: ReadonlySet<string> = new Set(['', 'to', 'at', 'there', 'here', 'and', 'from', 'with']);
/** "worn the centrals right down", "right down to the gum", "broken right off": how far, and no side. */
export const allTheWay = (tokens: readonly Token[], at: number): boolean =>
  text(tokens, at) === 'right' &&
  tokens[at]?.ends !== true &&
  !ofASide.has(text(tokens, at - 1)) &&
  (text(tokens, at + 1) === 'down'
    ? tokens[at + 1]?.ends === true || behindDown.has(text(tokens, at + 2))
    : ['off', 'through', 'away'].includes(text(tokens, at + 1)) && goneSo.has(text(tokens, at - 1)));

const sheds: ReadonlySet<string> = new Set(['caps', 'wolves', 'teeth']);
const ofNoRow: ReadonlySet<string> = new Set(['on', 'in', 'now', 'anywhere', 'today', 'at', 'that', 'then']);
const quarters = new Set(['upper', 'lower', 'top', 'bottom', 'left', 'right', 'other', 'both']);
/** "no caps left to take off", "none left anywhere", "a bit of hook left on one oh six": what remains, where it is told as such or has a side of its own behind it. */
function remains(tokens: readonly Token[], at: number): boolean {
  if (
    text(tokens, at) !== 'left' ||
    at === 0 ||
    tokens[at]?.ends === true ||
    ['the', 'his', 'her', 'and', 'or', 'to', 'on', 'in', ...quarters].includes(text(tokens, at - 1))
  )
    return false;
  const next = text(tokens, at + 1);
  const place = text(tokens, at + 2) === 'the' ? at + 3 : at + 2;
  // "no caps left": what sheds or is drawn leaves others.
  if (sheds.has(text(tokens, at - 1)) && tokens.slice(0, at - 1).some(({ t }) => t === 'no') && (next === '' || ofNoRow.has(next)))
    return true;
  if (next === 'to')
    return text(tokens, at + 2) !== 'the' && !quarters.has(text(tokens, at + 2)) && readNumber(tokens, at + 2) === undefined;
  if (['on', 'in', 'at'].includes(next)) return quarters.has(text(tokens, place)) || readCodes(tokens, place) !== undefined;
  // "the tongue left unexamined"
  if (next.startsWith('un')) return true;
  return next === 'anywhere' || (next === 'at' && text(tokens, at + 2) === 'all');
}

/** Words that a place can begin with. */
const beginnings: ReadonlySet<string> = new Set([
  ...placeWords,
  ...Object.keys(positionPlurals),
  ...ohWords,
  ...Object.keys(ordinalWords),
  ...['last', 'rearmost', 'front', 'between', 'four', 'every', 'each', 'either'],
]);

const speaks: ReadonlySet<string> = new Set([
  'i',
  'we',
  'he',
  'she',
  'they',
  'you',
  'it',
  "let's",
  'lets',
  'so',
  'then',
  'there',
  'vet',
  'owner',
]);

/** Somebody did it: "i've photographed ...", "photographed ...". */
const speaksOf = (tokens: readonly Token[], at: number): boolean =>
  speaks.has(text(tokens, at)) ||
  longest(vocabulary, [text(tokens, at)], 0)?.values.some((t) => t.k === 'work' && t.term.as === 'procedure') === true;
const closesAt = (tokens: readonly Token[], at: number): boolean => tokens[at]?.ends === true;
/** A jaw and a side, in whichever order. */
const cornerAt = (tokens: readonly Token[], at: number): boolean => {
  const [a, b] = [text(tokens, at), text(tokens, at + 1)];
  const side = (word: string): boolean => word === 'left' || word === 'right';
  return (side(a) && jawWords[b] !== undefined) || (side(b) && jawWords[a] !== undefined);
};

const openings: ReadonlySet<string> = new Set(['okay', 'ok', 'so', 'and', 'now', 'yeah', 'yes', 'well', 'oh']);
/** "right, I have floated the lot", "okay right, the lower right nine": it only begins what is said, which has a corner of its own. */
function opens(tokens: readonly Token[], at: number): boolean {
  if (at === 0 && speaks.has(text(tokens, 1))) return true;
  // "right and the corners, all four"
  if (at === 0 && text(tokens, 1) === 'and' && text(tokens, 2) === 'the') return true;
  // "hold still, right, i've photographed one oh nine": between two pauses, before a tooth and behind no place.
  const alone = closesAt(tokens, at) && (at === 0 || closesAt(tokens, at - 1) || tokens.slice(0, at).every(({ t }) => openings.has(t)));
  const tooth = (i: number): boolean => readCodes(tokens, i) !== undefined;
  if (
    alone &&
    speaksOf(tokens, at + 1) &&
    tokens.some((_, i) => i > at && tooth(i)) &&
    !tokens.slice(0, at).some(({ t }, i) => tooth(i) || beginnings.has(t))
  )
    return true;
  const next = text(tokens, at + 1) === 'the' ? at + 2 : at + 1;
  return closesAt(tokens, at) && cornerAt(tokens, next) && tokens.slice(0, at).every(({ t }) => openings.has(t));
}

/** The positional part: sides, jaws, rows, groups, plurals, regions, in whatever order they were said. */
export function readCluster(tokens: readonly Token[], words: readonly string[], start: number): PlaceSpan | undefined {
  const begun = text(tokens, start);
  if (!startsWithDigit(begun) && !beginnings.has(begun)) return undefined;
  // "right, I have floated the lot": a word to begin with, and no side.
  if (begun === 'right' && opens(tokens, start)) return undefined;
  const between = begun === 'between';
  // "four canines", "four sixes": all of them, for there are four.
  const four =
    text(tokens, start) === 'four' &&
    /^(canines|tushes|tusks|ones|twos|threes|fours|fives|sixes|sevens|eights|nines|tens|elevens|corners|centrals)$/.test(
      text(tokens, start + 1),
    );
  let at = between ? start + 1 : start;
  let to = start;
  let raw: RawPlace = between ? { joined: 'between' } : four ? { all: true } : {};
  if (four) to = at = start + 1;
  // "no caps left upper right": remaining.
  if (
    text(tokens, start) === 'left' &&
    ['upper', 'lower', 'top', 'bottom'].includes(text(tokens, start + 1)) &&
    text(tokens, start + 2) === 'right'
  )
    return undefined;
  // "both left sixes": top and bottom.
  if (text(tokens, start) === 'both' && ['left', 'right'].includes(text(tokens, start + 1)) && readPlural(tokens, start + 2))
    to = at = start + 1;
  let ordinal: Ordinal | undefined;
  // "every upper six": all of them.
  const every = ['every', 'each', 'either'].includes(text(tokens, start))
    ? (everyOne(tokens, start + 1) ?? ofEachSide(words, start + 1))
    : undefined;
  if (every) return { raw: every.raw, from: start, to: every.to };
  const closes = (i: number): boolean => tokens[i]?.ends === true;
  while (at < tokens.length) {
    if (at > start && (leavesIt(tokens, at) || allTheWay(tokens, at))) break;
    const plural = readPlural(tokens, at);
    // "wave on the left top and bottom, right is straight": behind a comma a place that something is said of begins anew.
    if (
      to > start &&
      tokens[text(tokens, at - 1) === 'the' ? at - 2 : at - 1]?.ends === true &&
      toldAt(tokens, plural?.to ?? (nounsBehind.has(text(tokens, at + 1)) ? at + 2 : at + 1)) &&
      (cornerWords.has(text(tokens, at)) || jawWords[text(tokens, at)] !== undefined || plural !== undefined)
    )
      break;
    // "tens cupped on the bottom, nines on the top": of another jaw.
    if (
      plural &&
      tokens[at - 1]?.ends === true &&
      raw.jaw !== undefined &&
      raw.positions === undefined &&
      ['on', 'in', 'at', 'along'].includes(text(tokens, plural.to)) &&
      jawSaid(tokens, plural.to + 1) !== undefined &&
      jawSaid(tokens, plural.to + 1) !== raw.jaw
    )
      break;
    // "tartar on all four canines and the lower canines are sharp": what is said behind it is of those of one jaw.
    const those = raw.positions !== undefined && raw.plural ? partAt(tokens, words, at) : undefined;
    const joint = text(tokens, at - 1) === 'the' ? at - 2 : at - 1;
    if (those && (tokens[joint]?.ends === true || text(tokens, joint) === 'and') && toldAt(tokens, those)) break;
    // "points on the uppers, the sevens worst": part of what was named, beside the rest of it.
    if (plural && to > start && text(tokens, text(tokens, plural.to) === 'the' ? plural.to + 1 : plural.to) === 'worst') break;
    if (plural) {
      const last = raw.positions?.at(-1);
      const range = last !== undefined && ['to', 'through'].includes(text(tokens, at - 1));
      const positions = range
        ? Array.from({ length: plural.position - (last as number) }, (_, i) => (last as number) + 1 + i)
        : [plural.position];
      raw = { ...raw, positions: [...(raw.positions ?? []), ...positions], plural: true };
      to = at = plural.to;
      continue;
    }
    // "on all the sixes, uppers four mil, lowers two": a part of them.
    if (
      raw.positions !== undefined &&
      tokens[at - 1]?.ends === true &&
      /^(uppers|lowers|tops|bottoms)$/.test(text(tokens, at)) &&
      (digit(text(tokens, at + 1)) !== undefined || ['about', 'grade', 'stage', 'only'].includes(text(tokens, at + 1)))
    )
      break;
    // "hooks on the sixes, the left upper four mil": one of them, with a size of its own.
    if (raw.positions !== undefined && raw.plural && cornerSized(tokens, at)) break;
    // "the canines, upper ones clean": other ones of the same.
    if (raw.positions !== undefined && (text(tokens, at) === 'ones' || text(tokens, at + 1) === 'ones')) break;
    if (between && at === start + 1 && text(tokens, at) === 'the' && text(tokens, at + 1) === 'two') {
      at += 2;
      continue;
    }
    if (at === ordinal?.nounAt) {
      to = at = ordinal.to;
      continue;
    }
    if (ordinal === undefined && raw.positions === undefined && raw.region === undefined) {
      ordinal = readOrdinal(tokens, at);
      if (ordinal) {
        raw = { ...raw, positions: [ordinal.position] };
        to = at = at + 1;
        continue;
      }
    }
    // "upper left M two": of a quadrant a molar, no mobility.
    const molar =
      text(tokens, at) === 'm' &&
      raw.jaw !== undefined &&
      (raw.side === 'left' || raw.side === 'right') &&
      raw.positions === undefined &&
      raw.region === undefined
        ? digit(text(tokens, at + 1))
        : undefined;
    if (molar !== undefined && molar >= 1 && molar <= 3) {
      raw = { ...raw, positions: [8 + molar] };
      to = at = at + 2;
      continue;
    }
    // "both sides of the lower jaw have a gap": its rows, and "the lower right jaw" is the bone.
    if (text(tokens, at) === 'jaw' && raw.jaw !== undefined && raw.side === 'both' && text(tokens, at - 3) === 'of') {
      to = at = at + 1;
      continue;
    }
    if (
      text(tokens, at) === 'jaw' &&
      !['joint', 'joints', 'muscle', 'muscles', 'bone', 'line'].includes(text(tokens, at + 1)) &&
      raw.jaw !== 'both' &&
      raw.side !== undefined &&
      raw.positions === undefined &&
      raw.region === undefined &&
      !raw.row
    ) {
      const { jaw, ...rest } = raw;
      raw = { ...rest, region: jaw === 'upper' ? 'maxilla' : 'mandible' };
      to = at = at + 1;
      continue;
    }
    const single = readSingle(tokens, at, raw, to > start);
    if (single) {
      // "eight nine and nine ten": by twos, where "and" stands between the twos alone.
      const held = raw.positions?.length ?? 0;
      const twos =
        text(tokens, at - 1) === 'and'
          ? held % 2 === 0 && (raw.joined === undefined || raw.joined === 'adjacent')
            ? { joined: 'pairs' as const }
            : raw.joined === 'pairs' && held % 2 === 1
              ? { joined: 'and' as const }
              : {}
          : held === 1 && raw.joined === undefined && !['to', 'through'].includes(text(tokens, at - 1))
            ? { joined: 'adjacent' as const }
            : {};
      raw = { ...raw, ...twos, ...(held > 0 ? { plural: true } : {}), positions: single.positions };
      to = at = single.to;
      continue;
    }
    // "both upper sixes, left worse than right": the side is compared, it is not where.
    if (to > start && comparing.has(text(tokens, at + 1)) && text(tokens, at + 2) === 'than' && !aTime.has(text(tokens, at + 3))) break;
    if (isBut(tokens, at)) break;
    // "upper left, cheek raw", "wave on the lower right and the masseter is wasted": there the part of the mouth is another place.
    if (
      (tokens[at - 1]?.ends === true || text(tokens, text(tokens, at - 1) === 'the' ? at - 2 : at - 1) === 'and') &&
      raw.jaw !== undefined &&
      raw.side !== undefined &&
      raw.region === undefined &&
      longest(vocabulary, words, at, closes)?.values.some(({ k }) => k === 'region')
    )
      break;
    // "the lower left in three months": behind a jaw a side is one.
    const found = longest(
      (raw.jaw !== undefined && raw.side === undefined) || theSide(tokens, at) ? withoutTalk : vocabulary,
      words,
      at,
      closes,
    );
    // "a scar on the tongue and the right bar is bruised", "the lower lip and on the left bar": the side is the next part's.
    if (
      found &&
      (raw.region ?? raw.positions) !== undefined &&
      (tokens[at - 1]?.ends === true || (at > to && text(tokens, text(tokens, at - 1) === 'the' ? at - 2 : at - 1) !== 'of')) &&
      leadsToPart(tokens, words, at)
    )
      break;
    // "tongue and palate both unremarkable": both of the two, no side.
    if (found && raw.region !== undefined && text(tokens, at) === 'both' && (!isPaired(raw.region) || ofTwo(tokens, start))) break;
    // "the lower elevens and both upper sixes": both of what comes.
    if (
      found &&
      text(tokens, at) === 'both' &&
      text(tokens, at - 1) === 'and' &&
      (raw.positions ?? raw.jaw) !== undefined &&
      longest(vocabulary, words, found.to)?.values.some(({ k }) => k === 'jaw')
    )
      break;
    if (found && secondQuarter(raw, found.values, longest(vocabulary, words, found.to)?.values)) break;
    // "points on the uppers and the lower left": no side is shared with what was named with an article of its own.
    if (found && ownQuarter(raw, tokens, at, found, words)) break;
    const next =
      found &&
      [...found.values]
        .sort((a, b) => Number(a.k === 'region') - Number(b.k === 'region'))
        .map((term) => grow(raw, term))
        .find((grown) => grown !== undefined);
    if (next && found) {
      raw = next;
      to = at = found.to;
      continue;
    }
    // Small words may stand inside a place, not at its end: "cheek on the right", "sixes at the bottom", "on the left at the top".
    if (
      (raw.positions ?? (raw.region === undefined ? raw.side : undefined)) !== undefined &&
      raw.jaw === undefined &&
      text(tokens, at) === 'at' &&
      jawSaid(tokens, at + 1)
    ) {
      at += 1;
      continue;
    }
    // "lower left at the bottom": the jaw twice.
    if (raw.jaw !== undefined && raw.side !== undefined && text(tokens, at + 1) === 'the' && jawWords[text(tokens, at + 2)] === raw.jaw) {
      // "lower left, and on the lower right six": another place.
      const another = text(tokens, at - 1) === 'and' || ['left', 'right'].includes(text(tokens, at + 3));
      if (!another && ['at', 'on'].includes(text(tokens, at)) && readSingle(tokens, at + 3, raw, true) === undefined) {
        to = at = at + 3;
        continue;
      }
    }
    if ((to > start || between) && (glueInside.has(text(tokens, at)) || ofWhom(tokens, at)) && at - to < 4) {
      at += 1;
      continue;
    }
    break;
  }
  // "both elevens below, six mil left", "the nines below are sharp": behind teeth named in the plural, and parted off, it is the jaw.
  const behind = raw.jaw === undefined && raw.positions !== undefined && raw.plural && to === at ? levels[text(tokens, to)] : undefined;
  const over = to === tokens.length - 1 || tokens[to]?.ends === true || /^(?:is|are|were|have|look|feel)$/.test(text(tokens, to + 1));
  if (behind && over) return { raw: { ...raw, jaw: behind }, from: start, to: to + 1 };
  if (raw.positions?.length === 1 && text(tokens, start - 1) === 'neither') raw = { ...raw, plural: true };
  return to > start ? { raw, from: start, to } : undefined;
}

/** "on the left at the top": with its "the" it is a side, and nobody left. */
export const theSide = (tokens: readonly Token[], at: number): boolean =>
  (text(tokens, at) === 'right' || text(tokens, at) === 'left') && text(tokens, at - 1) === 'the';

/** "right bar", "lower left lip": a side or a jaw right before the name of a part. */
function leadsToPart(tokens: readonly Token[], words: readonly string[], start: number): boolean {
  for (let at = start; ;) {
    const found = longest(vocabulary, words, at);
    if (!found) return false;
    if (at > start && found.values.some(({ k }) => k === 'region')) return true;
    if (!found.values.some(({ k }) => k === 'side' || k === 'jaw') || tokens[found.to - 1]?.ends === true) return false;
    at = found.to;
    // "the left side of the tongue"
    if (text(tokens, at) === 'of') at += text(tokens, at + 1) === 'the' ? 2 : 1;
  }
}

/** Where some of the teeth just named end: "lower canines", "left one". */
const partAt = (tokens: readonly Token[], words: readonly string[], at: number): number | undefined => {
  const [part, noun] = [text(tokens, at), text(tokens, at + 1)];
  if ((part === 'left' || part === 'right') && noun === 'one') return at + 2;
  if (jawWords[part] === undefined) return undefined;
  const named = longest(vocabulary, words, at + 1);
  return readPlural(tokens, at + 1)?.to ?? (named?.values.some(({ k }) => k === 'group') ? named.to : undefined);
};

/** A comma, a corner of the mouth and a size: of what was named only that part. */
function cornerSized(tokens: readonly Token[], at: number): boolean {
  const comma = text(tokens, at - 1) === 'the' ? at - 2 : at - 1;
  const [a, b] = [text(tokens, at), text(tokens, at + 1)];
  const side = (word: string): boolean => word === 'left' || word === 'right';
  const corner = (side(a) && jawWords[b] !== undefined) || (jawWords[a] !== undefined && side(b));
  const one = corner ? at + 2 : at + 1;
  const size = text(tokens, one) === 'one' ? one + 1 : one;
  return (
    tokens[comma]?.ends === true &&
    (corner || side(a)) &&
    (sized(tokens, size + 1) ||
      ['about', 'grade', 'stage', 'is'].includes(text(tokens, size)) ||
      (text(tokens, size) === 'a' && digit(text(tokens, size + 1)) !== undefined))
  );
}

/** "tongue and cheek both ulcerated": the part named before "and" is the other of the two. */
const ofTwo = (tokens: readonly Token[], start: number): boolean => {
  const and = text(tokens, start - 1) === 'the' ? start - 2 : start - 1;
  return (
    text(tokens, and) === 'and' &&
    tokens.slice(Math.max(0, and - 3), and).some((_, i, near) => {
      const words = near.slice(i).map(({ t }) => t);
      const found = longest(vocabulary, words, 0);
      return found?.to === words.length && found.values.some(({ k }) => k === 'region');
    })
  );
};

/** "six", "upper nine", "lower canine" behind "every": the teeth of that name. */
function everyOne(tokens: readonly Token[], at: number): { readonly raw: RawPlace; readonly to: number } | undefined {
  const jaw = jawWords[text(tokens, at)];
  const from = jaw ? at + 1 : at;
  const word = text(tokens, from);
  const position = /^(?:canine|tush|tusk)$/.test(word) ? 4 : (teenWords[word] ?? digit(word));
  if (
    position === undefined ||
    (position !== 4 && position < 6) ||
    position > 11 ||
    (position === 4 && !/^[ct]/.test(word)) ||
    readCode(tokens, from) ||
    sized(tokens, from + 1) ||
    measuring.has(text(tokens, from + 1)) ||
    notATooth.includes(text(tokens, from + 1))
  )
    return undefined;
  return { raw: { positions: [position], plural: true, ...(jaw ? { jaw } : {}) }, to: from + 1 };
}

/** "each cheek", "each masseter": there are two. */
function ofEachSide(words: readonly string[], at: number): { readonly raw: RawPlace; readonly to: number } | undefined {
  const found = longest(vocabulary, words, at);
  const part = found?.values.find((term) => term.k === 'region');
  return found && part?.k === 'region' && isPaired(part.id) ? { raw: { region: part.id, side: 'both' }, to: found.to } : undefined;
}

/** "everywhere bar the upper right", "sound bar two oh nine": leaves out what stands behind it, and is no part of a mouth. */
export function isBut(tokens: readonly Token[], at: number): boolean {
  if (text(tokens, at) !== 'bar') return false;
  const side = ['left', 'right', 'the', 'both', 'each', 'either'].includes(text(tokens, at - 1));
  return (
    readCodes(tokens, at + 1) !== undefined ||
    (!side && ['the', 'a', 'an', 'one', 'that', 'this', 'for', 'some', 'upper', 'lower', 'left', 'right'].includes(text(tokens, at + 1)))
  );
}

/** What is said of a place right behind it. */
const told = new Set([
  'is',
  'are',
  'has',
  'have',
  'was',
  'were',
  'looks',
  'feels',
  'nothing',
  'none',
  'not',
  'fine',
  'clear',
  'clean',
  'normal',
  'still',
  'will',
  'can',
  'next',
  'later',
  'tomorrow',
]);
const toldAt = (tokens: readonly Token[], at: number): boolean =>
  told.has(text(tokens, at)) || (text(tokens, at) === 'to' && ['do', 'come', 'go', 'finish'].includes(text(tokens, at + 1)));
/** Behind a side or a jaw, before what is said of it. */
const nounsBehind: ReadonlySet<string> = new Set(['side', 'one', 'hand', 'row', 'rows', 'arcade', 'arcades', 'teeth']);
const jawWords: Readonly<Record<string, Jaw>> = {
  upper: 'upper',
  uppers: 'upper',
  top: 'upper',
  lower: 'lower',
  lowers: 'lower',
  bottom: 'lower',
};
const levels: Readonly<Record<string, Jaw>> = { below: 'lower', underneath: 'lower', above: 'upper' };
const jawSaid = (tokens: readonly Token[], at: number): Jaw | undefined => jawWords[text(tokens, text(tokens, at) === 'the' ? at + 1 : at)];

interface Ordinal {
  readonly position: number;
  readonly nounAt: number;
  readonly to: number;
}
const between = new Set(['upper', 'lower', 'left', 'right', 'top', 'bottom', 'hand', 'side', 'maxillary', 'mandibular', 'near', 'off']);
/** "the third upper left cheek tooth", "last lower molar": the count may stand apart from what is counted. */
function readOrdinal(tokens: readonly Token[], at: number): Ordinal | undefined {
  const said = text(tokens, at);
  const count = said === 'last' || said === 'rearmost' ? ('last' as const) : said === 'front' ? 1 : ordinalWords[said];
  if (count === undefined) return undefined;
  let nounAt = at + 1;
  while (between.has(text(tokens, nounAt))) nounAt += 1;
  const noun =
    /^(molar|premolar)$/.exec(text(tokens, nounAt))?.[1] ??
    (text(tokens, nounAt) === 'cheek' && text(tokens, nounAt + 1) === 'tooth'
      ? 'cheek'
      : count === 'last' && text(tokens, nounAt) === 'tooth'
        ? 'tooth'
        : '');
  const n = count === 'last' ? { cheek: 6, molar: 3, premolar: 4, tooth: 6 }[noun] : count;
  const position = n === undefined ? undefined : { cheek: 5 + n, molar: 8 + n, premolar: 4 + n, tooth: 5 + n }[noun];
  return position !== undefined && (nounAt > at + 1 || noun === 'tooth') && position >= 6 && position <= 11
    ? { position, nounAt, to: noun === 'cheek' ? nounAt + 2 : nounAt + 1 }
    : undefined;
}

/**
 * "upper right six", "left nine", "upper left six to nine": a number right behind a side or a jaw is a position, when nothing
 * after it makes it a size or a count. "One" is left alone: "the upper left one" is no tooth.
 */
function readSingle(
  tokens: readonly Token[],
  at: number,
  raw: RawPlace,
  begun: boolean,
): { positions: readonly number[]; to: number } | undefined {
  const last = raw.positions?.at(-1);
  const link =
    last !== undefined &&
    (['to', 'and', 'through'].includes(text(tokens, at - 1)) || (teenWords[text(tokens, at - 1)] ?? digit(text(tokens, at - 1))) === last);
  if (
    !begun ||
    raw.region !== undefined ||
    raw.row ||
    (raw.positions !== undefined && !link) ||
    raw.side === 'both' ||
    raw.quadrants !== undefined
  )
    return undefined;
  if (!link && !cornerWords.has(text(tokens, at - 1))) return undefined;
  // "twelve mil left, nine right": what follows has a side of its own.
  if (!link && tokens[at - 1]?.ends === true && ['left', 'right'].includes(text(tokens, at + 1))) return undefined;
  const position = teenWords[text(tokens, at)] ?? digit(text(tokens, at));
  const lowest = raw.jaw !== undefined && raw.side !== undefined ? 2 : 6;
  if (
    position === undefined ||
    position < lowest ||
    position > 11 ||
    isOh(text(tokens, at)) ||
    sized(tokens, at + 1) ||
    (position < 6 && /[^uis]s$/.test(text(tokens, at + 1)))
  )
    return undefined;
  // "upper left two ten": the tooth 210, not the two and the ten.
  const code = readCode(tokens, at);
  if (code !== undefined && isTooth(codeOf(code.quadrant, code.position))) return undefined;
  if (!link) return { positions: [position], to: at + 1 };
  const range = ['to', 'through'].includes(text(tokens, at - 1)) && position > (last as number);
  return {
    positions: [
      ...(raw.positions ?? []),
      ...(range ? Array.from({ length: position - (last as number) }, (_, i) => (last as number) + 1 + i) : [position]),
    ],
    to: at + 1,
  };
}
/** A unit follows, or the other end of a range and then a unit. */
const sized = (tokens: readonly Token[], at: number): boolean =>
  (text(tokens, at) === 'to' &&
    text(tokens, at + 1) === 'the' &&
    !['vet', 'vets', 'veterinarian', 'back', 'front'].includes(text(tokens, at + 2))) ||
  (['and', 'to', 'or'].includes(text(tokens, at))
    ? (digit(text(tokens, at + 1)) ?? teenWords[text(tokens, at + 1)]) !== undefined &&
      measuring.has(text(tokens, at + 2)) &&
      readCode(tokens, at + 1) === undefined
    : measuring.has(text(tokens, at)));
const cornerWords = new Set(['left', 'right', 'upper', 'lower', 'top', 'bottom', 'hand', 'side']);

/** "bigger than last year": compared with itself, and no side with another. */
const aTime: ReadonlySet<string> = new Set(['last', 'before', 'previously', 'ever', 'it', 'in']);

export const comparing: ReadonlySet<string> = new Set([
  'worse',
  'better',
  'bigger',
  'larger',
  'smaller',
  'deeper',
  'longer',
  'wider',
  'sharper',
  'higher',
  'taller',
  'more',
  'less',
]);

/** "upper left and lower right": with jaw and side both said, another jaw, or a side with a jaw behind it, begins the next place. */
function secondQuarter(raw: RawPlace, values: readonly Term[], after: readonly Term[] | undefined): boolean {
  const turns = values.some(
    (term) =>
      (term.k === 'jaw' && raw.jaw !== undefined && term.id !== raw.jaw) ||
      (term.k === 'side' && raw.side !== undefined && raw.side !== 'both' && term.id !== raw.side),
  );
  if (raw.positions !== undefined && turns) return true;
  if (raw.jaw === undefined || raw.side === undefined) return false;
  const jaw = values.some(({ k }) => k === 'jaw');
  const side = values.some((term) => term.k === 'side' && term.id !== raw.side);
  return jaw || (side && (after?.some(({ k }) => k === 'jaw') ?? false));
}

/** "the uppers and the lower left", "up top, on the lower left", but "upper and lower left": another jaw with a side that is only its own. */
function ownQuarter(
  { jaw, side, plural, positions }: RawPlace,
  tokens: readonly Token[],
  at: number,
  found: { readonly values: readonly Term[]; readonly to: number },
  words: readonly string[],
): boolean {
  const next = longest(vocabulary, words, found.to)?.values;
  const told =
    next?.some(({ k }) => k === 'side' || k === 'group') ||
    ['left', 'right'].includes(text(tokens, found.to)) ||
    readPlural(tokens, found.to) !== undefined;
  // "on the lower elevens, and on the lower right six": the jaw again, of another place.
  if (positions !== undefined)
    return (
      jaw !== undefined &&
      told &&
      found.values.some((term) => term.k === 'jaw' && term.id === jaw) &&
      ['on', 'the'].includes(text(tokens, at - 1)) &&
      tokens.slice(Math.max(0, at - 3), at).some(({ t, ends }) => t === 'and' || ends === true)
    );
  if (jaw === undefined || side !== undefined) return false;
  const other = found.values.some((term) => term.k === 'jaw' && term.id !== jaw && term.id !== 'both');
  const and = tokens.slice(0, at).findLastIndex(({ t }) => t === 'and');
  // "the upper and the lower left": of an adjective the noun is still to come.
  const open = and > 0 && ['upper', 'lower'].includes(text(tokens, and - 1)) && tokens[and - 1]?.ends !== true;
  const apart = !open && (plural || tokens[at - 1]?.ends === true || ['the', 'on', 'in', 'at'].includes(text(tokens, at - 1)));
  return other && apart && told;
}

/** The place with one more word of place in it; undefined where the word adds nothing or would contradict. */
function grow(raw: RawPlace, term: Term): RawPlace | undefined {
  switch (term.k) {
    case 'side':
      return raw.side === undefined && term.weak
        ? { ...raw, side: term.id, weak: true }
        : raw.side === 'both' && raw.positions !== undefined && term.id !== 'both'
          ? { ...raw, side: term.id, plural: true }
          : raw.side === undefined
            ? { ...raw, side: term.id }
            : raw.jaw !== undefined && raw.positions === undefined && raw.side !== term.id && raw.side !== 'both' && term.id !== 'both'
              ? { ...raw, side: 'both' }
              : undefined;
    case 'jaw':
      return raw.jaw === undefined || raw.jaw === term.id
        ? { ...raw, jaw: term.id, ...(term.plural ? { plural: true } : {}) }
        : { ...raw, jaw: 'both' };
    case 'row':
      return { ...raw, row: true, ...(term.plural ? { plural: true } : {}) };
    case 'hundreds':
      return { ...raw, quadrants: [...(raw.quadrants ?? []), term.quadrant] };
    case 'allRound':
      return { ...raw, all: true };
    case 'elsewhere':
      return { ...raw, elsewhere: term.said };
    case 'group':
      return raw.positions === undefined && raw.region === undefined
        ? { ...raw, positions: term.positions, ...(term.plural ? { plural: true } : {}) }
        : undefined;
    case 'asked':
      return raw.positions === undefined ? { ...raw, asked: term.positions } : undefined;
    // "the last molar of the left mandible": beside a tooth the bone names its jaw.
    case 'region':
      return (term.id === 'mandible' || term.id === 'maxilla') && raw.positions !== undefined && raw.jaw === undefined
        ? { ...raw, jaw: term.id === 'mandible' ? 'lower' : 'upper' }
        : raw.region === undefined && raw.positions === undefined && raw.row === undefined
          ? { ...raw, region: term.id, ...(term.plural ? { plural: true } : {}) }
          : undefined;
    default:
      return undefined;
  }
}

/** Quadrant digits meant by a jaw and a side; empty when neither was said. */
export function quadrantsOf({ jaw, side }: { jaw?: Jaw; side?: Side }): readonly number[] {
  if (jaw === undefined && side === undefined) return [];
  return [1, 2, 3, 4].filter(
    (q) =>
      (jaw === undefined || jaw === 'both' || (jaw === 'upper') === q <= 2) &&
      (side === undefined || side === 'both' || (side === 'left') === (q === 2 || q === 3)),
  );
}

/** "upper left one oh six": the code's quadrant against the words beside it. */
export function contradicts(cluster: RawPlace, code: string): boolean {
  const quadrants = cluster.quadrants ?? quadrantsOf(cluster);
  return quadrants.length > 0 && !quadrants.map((q) => q % 4).includes(quadrantOf(code) % 4);
}

export const isPaired = (region: RegionId): boolean => regions[region].paired;

/** Whether the teeth named all lie in the place named in general. */
export function within(raw: RawPlace, codes: readonly string[]): boolean {
  const quadrants = raw.quadrants ?? quadrantsOf(raw);
  return codes.every(
    (code) =>
      (quadrants.length === 0 || quadrants.includes(((quadrantOf(code) - 1) % 4) + 1)) &&
      (raw.positions === undefined || raw.positions.includes(positionOf(code))),
  );
}
