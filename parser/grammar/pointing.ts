/**
 * Words that point back: "that row", "behind it", "opposite tooth", "the other side". They are read as the place they point
 * to, marked as carried; with nothing to point to they stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { handledAs, handledSay } from '../lexicon/handling.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import { regions } from '../lexicon/regions.ts';
import { rowTeeth, type RowId } from '../lexicon/teeth.ts';
import { standing, type Carry } from './carry.ts';
import { readCodes } from './codes.ts';
import { readNumber } from './numbers.ts';
import { comparing, quadrantsOf } from './places.ts';
import { scan } from './scan.ts';
import { unitWords } from './sizes.ts';
import { areNeighbours, codeOf, opposing, otherSide, positionOf, quadrantOf } from './teeth.ts';
import { formAt, formsOf } from './forms.ts';
import { expand } from './template.ts';
import { isOh, type Token } from './tokens.ts';

const nameOf = (table: Readonly<Record<string, number>>, value: number): string =>
  Object.keys(table).find((word) => table[word] === value) ?? '';
/** A tooth as the words of its number. */
export const codeWords = (code: string): readonly string[] => {
  const position = Number(code.slice(1));
  return [nameOf(digitWords, Number(code[0])), ...(position < 10 ? ['oh', nameOf(digitWords, position)] : [nameOf(teenWords, position)])];
};
const list = (codes: readonly string[]): readonly string[] => codes.flatMap((code, i) => [...(i > 0 ? ['and'] : []), ...codeWords(code)]);

type Pointer = readonly [pattern: readonly string[], words: (place: Place) => readonly string[] | undefined];
const one = (place: Place): string | undefined => ('teeth' in place && place.teeth.length === 1 ? place.teeth[0] : undefined);
/** The row that a place lies in. */
export const rowOf = (place: Place): RowId | undefined =>
  'rows' in place
    ? place.rows[0]
    : 'teeth' in place
      ? (Object.keys(rowTeeth) as RowId[]).find((row) => rowTeeth[row].includes(place.teeth[0] as string))
      : 'spaces' in place
        ? rowOf({ teeth: [place.spaces[0]?.[0] as string] })
        : undefined;
const turnedOver = { left: 'right', right: 'left' } as const;
/** A place as words that name it, or those of its other side. */
const inWords =
  (other: boolean) =>
  (place: Place): readonly string[] | undefined => {
    const code = (tooth: string): string => (other ? otherSide(tooth) : tooth);
    if ('teeth' in place) return list(place.teeth.map(code).sort());
    if ('spaces' in place) return place.spaces.flatMap(([a, b]) => ['between', ...codeWords(code(a)), 'and', ...codeWords(code(b))]);
    if ('rows' in place)
      return place.rows.flatMap((row) =>
        row.split('-').map((word) => (other && (word === 'left' || word === 'right') ? turnedOver[word] : word)),
      );
    const named = expand(regions[place.region].say[0] as string)[0] as string[];
    if (place.side === 'left' || place.side === 'right') return [other ? turnedOver[place.side] : place.side, ...named];
    return other ? undefined : named;
  };
export const mirrored = inWords(true);
export const itself = inWords(false);
const fromOne =
  (words: (code: string) => readonly string[] | undefined) =>
  (place: Place): readonly string[] | undefined => {
    const code = one(place);
    return code === undefined ? undefined : words(code);
  };

const isGap = (place: Place): boolean => 'spaces' in place && place.spaces.length === 1;

/** The cheek tooth behind another, or in front of it; behind an 11 and in front of an 06 there is none. */
const nextTo = (code: string, step: 1 | -1): readonly string[] | undefined => {
  const position = positionOf(code) + step;
  return positionOf(code) >= 6 && position >= 6 && position <= 11 ? codeWords(codeOf(quadrantOf(code), position)) : undefined;
};

/** The gap behind another, or in front of it. */
const gapBeside = (place: Place, step: 1 | -1): readonly string[] | undefined => {
  const gap = 'spaces' in place && place.spaces.length === 1 ? place.spaces[0] : undefined;
  const [a, b] = gap ? [nextTo(gap[0] as string, step), nextTo(gap[1] as string, step)] : [];
  return a && b && ['between', ...a, 'and', ...b];
};
/** "the next one back": of a tooth the tooth, of a gap the gap. */
export const beside =
  (step: 1 | -1) =>
  (place: Place): readonly string[] | undefined => {
    const code = one(place);
    return code === undefined ? gapBeside(place, step) : nextTo(code, step);
  };
const orGap =
  (step: 1 | -1, words: (code: string) => readonly string[]) =>
  (place: Place): readonly string[] | undefined =>
    fromOne(words)(place) ?? gapBeside(place, step);
/** "and the next one too": which way is not said. */
export const eitherWay = (place: Place): readonly string[] | undefined => {
  const [back, front] = [beside(1)(place), beside(-1)(place)];
  return back && front && one(place) !== undefined ? [...front, 'or', ...back] : (back ?? front);
};
/** The teeth beside one. */
const neighbours = (code: string): readonly string[] | undefined => {
  const sides = [-1, 1].flatMap((step) => (nextTo(code, step as 1 | -1) ? [codeOf(quadrantOf(code), positionOf(code) + step)] : []));
  return sides.length > 0 ? list(sides) : undefined;
};
const behindIt = ['it', 'that', 'that one', 'that tooth'];
const backwards = ['back', 'along', 'behind', 'further back'];
const forwards = ['forward', 'forwards', 'in front', 'further forward'];

const pointers = formsOf<Pointer[1]>([
  ...['one', 'gap', 'tooth', 'space'].flatMap((word): Pointer[] => [
    ...backwards.flatMap((way): Pointer[] => [[['next', word, ...way.split(' ')], beside(1)]]),
    ...forwards.flatMap((way): Pointer[] => [[['next', word, ...way.split(' ')], beside(-1)]]),
    ...['too', 'as well', 'also', 'likewise', 'the same'].map((again): Pointer => [
      ['next', word, ...again.split(' ')],
      (place) => {
        const either = eitherWay(place);
        return either && [...either, ...again.split(' ')];
      },
    ]),
  ]),
  ...['there', 'here'].map((word): Pointer => [
    ['along', word],
    (place) => {
      const row = rowOf(place);
      return row && ['along', ...row.split('-'), ...(row.includes('incisors') ? [] : ['row'])];
    },
  ]),
  ...['row', 'arcade', 'quadrant'].flatMap((word): Pointer[] =>
    ['that', 'this', 'same'].map((which): Pointer => [
      [which, word],
      (place) => {
        const row = rowOf(place);
        return row && [...row.split('-'), ...(row.includes('incisors') ? [] : ['row'])];
      },
    ]),
  ),
  ...['one', 'tooth'].flatMap((word): Pointer[] => [
    ...[['that', 'one'], ['that'], ['it'], []].flatMap((of): Pointer[] => [
      [[word, 'behind', ...of], orGap(1, (code) => nextTo(code, 1) ?? ['behind', ...codeWords(code)])],
      [
        [word, 'in', 'front', ...(of.length > 0 ? ['of', ...of] : [])],
        orGap(-1, (code) => nextTo(code, -1) ?? ['in', 'front', 'of', ...codeWords(code)]),
      ],
    ]),
  ]),
  // "the teeth on either side of it are healthy", "its neighbours are normal": those teeth, and no gap.
  ...['either', 'both', 'each'].flatMap((which): Pointer[] =>
    ['teeth', 'teeth on', 'ones', 'ones on', 'tooth', 'tooth on'].flatMap((what): Pointer[] =>
      ['', ...behindIt.map((word) => ` of ${word}`)].map((of): Pointer => [
        `${what} ${which} ${which === 'both' ? 'sides' : 'side'}${of}`.split(' '),
        fromOne(neighbours),
      ]),
    ),
  ),
  ...['its neighbours', 'its neighbors', 'neighbours', 'neighbors', 'neighbouring teeth', 'neighboring teeth'].flatMap((words): Pointer[] =>
    ['is', 'are', 'look', 'looks', 'feel', 'both'].map((verb): Pointer => [
      [...words.split(' '), verb],
      fromOne((code) => {
        const beside = neighbours(code);
        return beside && [...beside, verb === 'both' ? 'are' : verb];
      }),
    ]),
  ),
  // "and its partner on the right": across the mouth, and of the same kind.
  ...['partner', 'mate', 'twin', 'opposite number', 'fellow'].flatMap((word): Pointer[] =>
    ['', ' on the left', ' on the right', ' opposite', ' on the other side'].map((where): Pointer => [
      `its ${word}${where}`.split(' '),
      mirrored,
    ]),
  ),
  // "recession on one oh two and one oh three, eotrh in that corner"
  [
    ['that', 'corner'],
    (place) => {
      const [code, ...more] = 'teeth' in place ? place.teeth : [];
      const one = code !== undefined && positionOf(code) <= 3 && more.every((tooth) => quadrantOf(tooth) === quadrantOf(code));
      return one ? codeWords(codeOf(quadrantOf(code), 3)) : undefined;
    },
  ],
  // "feed packed under it": at the tooth.
  ...['packed', 'packing', 'feed', 'food', 'stuck', 'trapped', 'in'].flatMap((what): Pointer[] =>
    ['under', 'underneath', 'beneath'].flatMap((where): Pointer[] =>
      behindIt.map((word): Pointer => [[what, where, ...word.split(' ')], fromOne((code) => [what, 'at', ...codeWords(code)])]),
    ),
  ),
  ...['it', 'that', 'this', 'that one', 'that tooth', 'this one'].flatMap((word): Pointer[] =>
    [
      ['behind', ...word.split(' ')],
      ['front', 'of', ...word.split(' ')],
    ].map((words): Pointer => [words, fromOne((code) => [...words.slice(0, words.length - word.split(' ').length), ...codeWords(code)])]),
  ),
  // "the gum beside it": at the tooth, where the phrase names one.
  ...['beside', 'around', 'round', 'alongside', 'next to', 'above', 'below', 'over', 'under'].flatMap((word): Pointer[] =>
    ['it', 'that one', 'that tooth'].map((what): Pointer => [
      ['gum', ...word.split(' '), ...what.split(' ')],
      fromOne((code) => ['gum', 'at', ...codeWords(code)]),
    ]),
  ),
  ...['opposite tooth', 'tooth opposite', 'opposite one', 'opposing tooth', 'one opposite', 'one below', 'one above'].map(
    (words): Pointer => [words.split(' '), fromOne((code) => codeWords(opposing(code)))],
  ),
  ...['that tooth', 'this tooth', 'same tooth', 'that one', 'same one'].map((words): Pointer => [
    words.split(' '),
    (place) => fromOne(codeWords)(place) ?? (words.endsWith('one') && isGap(place) ? itself(place) : undefined),
  ]),
  // "caries in four oh nine but the tooth itself is solid", "the tooth's still firm": it alone was named.
  ...['solid', 'firm', 'stable', 'sound'].flatMap((how): Pointer[] =>
    ['is', 'itself is', 'is still', 'itself is still'].map((verb): Pointer => [
      ['tooth', ...verb.split(' '), how],
      fromOne((code) => [...codeWords(code), 'is', how]),
    ]),
  ),
  // "one oh nine rotated and a diastema either side of it", "two oh eight is displaced, and between that and two oh nine there is a gap"
  ...['it', 'that', 'that one', 'that tooth'].flatMap((word): Pointer[] => [
    ...['either side of', 'both sides of', 'each side of'].map((beside): Pointer => [
      [...beside.split(' '), ...word.split(' ')],
      fromOne((code) => ['either', 'side', 'of', ...codeWords(code)]),
    ]),
    [['between', ...word.split(' '), 'and'], fromOne((code) => ['between', ...codeWords(code), 'and'])],
  ]),
  [['the', 'other', 'three'], fromOne((code) => list([1, 2, 3, 4].map((q) => `${q}${code.slice(1)}`).filter((other) => other !== code)))],
  ...[
    'extracted',
    'pulled',
    'removed',
    'taken',
    'reduced',
    'rasped',
    'buffed',
    'loose',
    'sharp',
    'long',
    'fractured',
    'normal',
    'blind',
    'out',
  ].map((next): Pointer => [
    ['both', next],
    (place) => ('teeth' in place && place.teeth.length === 2 ? [...list(place.teeth), next] : undefined),
  ]),
  ...['reduced', 'rasped', 'extracted', 'removed', 'pulled', 'buffed', 'rounded'].flatMap((work): Pointer[] =>
    ['both', 'them both', 'both of them'].map((words): Pointer => [
      [work, ...words.split(' ')],
      (place) => ('teeth' in place && place.teeth.length === 2 ? [work, ...list(place.teeth)] : undefined),
    ]),
  ),
  ...['them', 'those', 'these', 'the two', 'those two', 'these two', 'the pair'].map((words): Pointer => [
    ['between', ...words.split(' ')],
    (place) => ('teeth' in place && place.teeth.length === 2 ? ['between', ...list(place.teeth)] : undefined),
  ]),
  [['the', 'other', 'side'], mirrored],
  [['other', 'side'], mirrored],
  [['the', 'opposite', 'side'], mirrored],
  [['opposite', 'side'], mirrored],
]);

/** "make that one oh six" points at nothing: the "one" begins a number. */
const inNumber = new Set(['oh', 'o', 'zero', 'ten', 'eleven', 'twelve', 'one', 'hundred', 'double', 'point']);

/** "a", "an" or "another" a word or two before "one": of what was found, another. */
const ofAnother = (tokens: readonly Token[], at: number): boolean =>
  tokens.slice(Math.max(0, at - 3), at).some(({ t }) => t === 'a' || t === 'an' || t === 'another');

/** The tooth last named before a word. */
function codeBefore(tokens: readonly Token[], to: number): Place | undefined {
  for (let at = to - 2; at >= 0; at -= 1) {
    const codes = isOh(tokens[at]?.t) ? undefined : readCodes(tokens.slice(0, to), at)?.raw.codes;
    if (codes?.length) return { teeth: [...codes] };
  }
  return undefined;
}

/** "upper left eight is chipped and the one in front of it": the tooth last named by its row. */
function cornerBefore(tokens: readonly Token[], to: number): Place | undefined {
  const raw = scan(tokens.slice(0, to)).marks.findLast((mark) => mark.place !== undefined)?.place;
  const quadrants = raw?.positions?.length === 1 && raw.region === undefined ? quadrantsOf(raw) : [];
  return quadrants.length === 1 ? { teeth: [codeOf(quadrants[0] as number, raw?.positions?.[0] as number)] } : undefined;
}

/** "one ten fractured, one eleven loose, feed packed between them": the last two teeth named, where they are neighbours. */
function neighboursBefore(tokens: readonly Token[], to: number): Place | undefined {
  const named: string[] = [];
  for (let at = 0; at < to; at += 1) {
    const codes = isOh(tokens[at]?.t) ? undefined : readCodes(tokens.slice(0, to), at);
    if (codes) {
      named.push(...(codes.raw.codes ?? []));
      at = codes.to - 1;
    }
  }
  const [a, b] = named.slice(-2);
  return a !== undefined && b !== undefined && areNeighbours(a, b) ? { teeth: [a, b].sort() } : undefined;
}

/** "right cheek ulcerated", "the left one is clear": of a pair, the one on that side; where this phrase named no place, the pair named before. */
function ofPair(tokens: readonly Token[], at: number, place: Place | null | undefined): readonly string[] | undefined {
  const side = tokens[at]?.t;
  if (
    (side !== 'left' && side !== 'right') ||
    tokens[at + 1]?.t !== 'one' ||
    inNumber.has(tokens[at + 2]?.t ?? '') ||
    ['upper', 'lower', 'top', 'bottom'].includes(tokens[at - 1]?.t ?? '') ||
    !place
  )
    return undefined;
  if (scan(tokens.slice(0, at)).marks.some((mark) => mark.place !== undefined)) return undefined;
  if ('region' in place)
    return regions[place.region].paired ? [side, ...(expand(regions[place.region].say[0] as string)[0] as string[])] : undefined;
  const here = (code: string): boolean => (side === 'left') === [2, 3, 6, 7].includes(Number(code[0]));
  // "tartar on the lower canines", "the left one's sharp": of two that face each other across the mouth.
  const [code, other, ...more] = 'teeth' in place ? place.teeth : [];
  if (code === undefined || more.length > 0 || (other !== undefined && other !== otherSide(code))) return undefined;
  return codeWords(here(code) ? code : otherSide(code));
}

const jaws: Readonly<Record<string, 'upper' | 'lower'>> = { upper: 'upper', top: 'upper', lower: 'lower', bottom: 'lower' };
const ofTwo: ReadonlySet<string> = new Set(['two', 'pair']);
/** "the upper left canine's sharp, the upper right one's broken off, the lower two have tartar": by their corner, of what was named by another. */
function ofCorner(tokens: readonly Token[], at: number, carried: Place | null | undefined): readonly string[] | undefined {
  const jaw = jaws[tokens[at]?.t ?? ''];
  const side = tokens[at + 1]?.t;
  const two = ofTwo.has(side ?? '');
  const next = tokens[at + (two ? 2 : 3)]?.t ?? '';
  // "left the bottom pair": what was not done to them.
  const counted = two
    ? tokens[at - 2]?.t !== 'left' && (at === 0 || tokens[at - 1]?.ends === true || ['the', 'on'].includes(tokens[at - 1]?.t ?? ''))
    : (side === 'left' || side === 'right') && tokens[at + 2]?.t === 'one';
  if (jaw === undefined || !counted || inNumber.has(next) || unitWords.has(next) || digitWords[next] !== undefined) return undefined;
  const { marks } = scan(tokens.slice(0, at));
  const raw = marks.findLast(({ place }) => (place?.region ?? place?.codes ?? place?.positions) !== undefined)?.place;
  if (raw?.region !== undefined)
    return two || !regions[raw.region].paired
      ? undefined
      : [jaw, side as string, ...(expand(regions[raw.region].say[0] as string)[0] as string[])];
  const named =
    raw === undefined ? carried && 'teeth' in carried && carried.teeth.map(positionOf) : (raw.codes?.map(positionOf) ?? raw.positions);
  const [position, ...more] = new Set(named || []);
  if (position === undefined || more.length > 0) return undefined;
  const corner = (of: 'left' | 'right'): readonly string[] => codeWords(codeOf(quadrantsOf({ jaw, side: of })[0] as number, position));
  return two ? [...corner('right'), 'and', ...corner('left')] : corner(side as 'left' | 'right');
}

/** Two teeth named one after the other that still wait for what they have: "three oh nine", "three ten", "gap between them". */
function pairOf(context: Context, waiting: Context['doubts'][number] | undefined): Place | undefined {
  const before = context.doubts.filter(({ doubt, state, id }) => doubt === 'no-condition' && state === 'open' && id !== waiting?.id).at(-1);
  const [a, b] = [before, waiting].map((doubt) => (doubt?.place ? one(doubt.place) : undefined));
  return a !== undefined && b !== undefined && areNeighbours(a, b) ? { teeth: [a, b].sort() } : undefined;
}

/** "ulcer on the left cheek", "other cheek fine": the pair's other side, by its own name. */
function otherByName(tokens: readonly Token[], at: number, place: Place | null | undefined): readonly string[] | undefined {
  if (tokens[at]?.t !== 'other' || !place || !('region' in place) || !regions[place.region].paired) return undefined;
  return regions[place.region].say.some((form) => expand(form).some(([word, more]) => more === undefined && word === tokens[at + 1]?.t))
    ? mirrored(place)
    : undefined;
}

/** "left nostril running, the other one dry": of the pair named on one side in this phrase, what is said of the other. */
function otherOf(tokens: readonly Token[], at: number): readonly string[] | undefined {
  if (tokens[at]?.t !== 'other' || tokens[at + 1]?.t !== 'one' || inNumber.has(tokens[at + 2]?.t ?? '')) return undefined;
  const verb = ['is', 'was', 'are'].includes(tokens[at + 2]?.t ?? '') ? at + 3 : at + 2;
  // "..., the other one is smaller" may be a second one on the same side.
  if (['on', 'in', 'at', 'over', 'up', 'down', 'behind', 'a', 'about'].includes(tokens[verb]?.t ?? '')) return undefined;
  if (comparing.has(tokens[verb]?.t ?? '') || digitWords[tokens[verb]?.t ?? ''] !== undefined) return undefined;
  const [place, ...more] = scan(tokens.slice(0, at)).marks.flatMap(({ place: raw }) => raw ?? []);
  return place?.region !== undefined && more.length === 0 && (place.side === 'left' || place.side === 'right')
    ? mirrored({ region: place.region, side: place.side })
    : undefined;
}

const sides: ReadonlySet<string> = new Set(['side', 'sides']);

const way = { behind: 1, 'in front of': -1 } as const;
/** "the seven and eight behind it": in the row of the tooth named last, where they are. */
function numbersBeside(
  tokens: readonly Token[],
  at: number,
  place: Place | null | undefined,
  context: Context,
): { readonly words: readonly string[]; readonly to: number } | undefined {
  const named: number[] = [];
  let to = at;
  for (;;) {
    const number = readNumber(tokens, to);
    if (number === undefined || typeof number.value !== 'number') break;
    named.push(number.value);
    to = number.to;
    if (tokens[to]?.t === 'and') to += tokens[to + 1]?.t === 'the' ? 2 : 1;
    else break;
  }
  const behind = tokens.slice(to, to + 3).map(({ t }) => t);
  const which = behind[0] === 'behind' ? 'behind' : behind.join(' ') === 'in front of' ? 'in front of' : undefined;
  const points = which && tokens.slice(to + which.split(' ').length, to + which.split(' ').length + 2).map(({ t }) => t);
  const code = place ? (one(place) ?? one(lastTooth(context) ?? place)) : undefined;
  if (
    tokens[at - 1]?.t !== 'the' ||
    named.length === 0 ||
    !which ||
    !points ||
    code === undefined ||
    !['it', 'that'].includes(points[0] ?? '')
  )
    return undefined;
  const there = named.every((position) => position >= 6 && position <= 11 && Math.sign(position - positionOf(code)) === way[which]);
  const codes = named.map((position) => codeOf(quadrantOf(code), position)).sort();
  return there && positionOf(code) >= 6
    ? { words: list(codes), to: to + which.split(' ').length + (['one', 'tooth'].includes(points[1] ?? '') ? 2 : 1) }
    : undefined;
}
/** The tooth last spoken of, behind a part of the mouth: "that tooth" is no cheek. */
const lastTooth = ({ items }: Context): Place | undefined =>
  items.flatMap((item) => ('place' in item && item.place && one(item.place) !== undefined ? [item.place] : [])).at(-1);
/** What was found there, where that can be taken off or down by itself. */
const foundThere = ({ items }: Context, place: Place): Token['of'] => {
  const found = items.flatMap((item) =>
    item.kind === 'finding' &&
    item.presence === 'present' &&
    item.when === 'now' &&
    JSON.stringify(item.place) === JSON.stringify(place) &&
    handledAs[item.condition] !== 'tooth'
      ? [item.condition]
      : [],
  );
  return found.length > 0 ? found : undefined;
};

/** Whether a pointing word goes on as the name of what it stands before: no pause, no end, and none of the small words that say how much. */
const named = (tokens: readonly Token[], to: number): boolean =>
  tokens[to] !== undefined &&
  tokens[to - 1]?.ends !== true &&
  !['by', 'with', 'down', 'back', 'to', 'now', 'today', 'and'].includes(tokens[to].t);

/** "an open one behind": behind the tooth last named, which is not said again. */
function openEnded(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const word = tokens[at] as Token;
  const ends = at === tokens.length - 1 || word.ends === true;
  if (word.t !== 'behind' || !ends || tokens[at - 1]?.t !== 'one' || !ofAnother(tokens, at - 1)) return undefined;
  const place = codeBefore(tokens, at);
  const code = place && one(place);
  return code === undefined ? undefined : codeWords(code).map((t) => ({ t, word: word.word, carried: true }));
}

/** "hook on one oh six, let me check the other side": where the speaker goes next, and no finding there. */
const looksAt = (tokens: readonly Token[], at: number): boolean =>
  /\b(?:let me|let us|i will|will just) (?:just )?(?:check|see|feel|do|try|(?:have a )?look (?:at|in|down|along))(?: the)?$/.test(
    tokens
      .slice(Math.max(0, at - 7), at)
      .map(({ t }) => t)
      .join(' '),
  );
const gaps: ReadonlySet<string> = new Set(['gap', 'space']);
const verbs: ReadonlySet<string> = new Set(['is', "'s", 'being']);

const partsOfTooth: ReadonlySet<string> = new Set(['edge', 'edges', 'corner', 'tip', 'crown', 'root']);
/** "that tooth", "the sharp edge of that one". */
const ofTooth = (pattern: readonly string[], part: string | undefined): boolean =>
  pattern.length === 2 && (pattern[1] === 'tooth' || (pattern[1] === 'one' && partsOfTooth.has(part ?? '')));

/** Each pointer in turn, from `from` on: what one is read as may be what the next points to. */
export function pointed(tokens: readonly Token[], context: Context, carry: Carry, from = 0): readonly Token[] {
  const last = standing(context, carry.last);
  const waiting = context.doubts.find(({ id }) => id === carry.half?.doubt);
  const carried = waiting?.place ?? (last && 'place' in last ? last.place : undefined);
  for (let at = from; at < tokens.length; at += 1) {
    const paired = ofPair(tokens, at, carried) ?? otherOf(tokens, at) ?? otherByName(tokens, at, carried);
    if (paired)
      return pointed(
        [
          ...tokens.slice(0, at),
          ...paired.map((t, i): Token => ({ t, word: (tokens[at + Math.min(i, 1)] as Token).word, carried: true })),
          ...tokens.slice(at + 2),
        ],
        context,
        carry,
        at + paired.length,
      );
    const corner = ofCorner(tokens, at, carried);
    if (corner) {
      const behind = ofTwo.has(tokens[at + 1]?.t ?? '') ? 2 : 3;
      return pointed(
        [
          ...tokens.slice(0, at),
          ...corner.map((t, i): Token => ({ t, word: (tokens[at + Math.min(i, behind - 1)] as Token).word, carried: true })),
          ...tokens.slice(at + behind),
        ],
        context,
        carry,
        at + corner.length,
      );
    }
    const numbers = tokens[at - 1]?.t === 'the' ? numbersBeside(tokens, at, codeBefore(tokens, at - 1) ?? carried, context) : undefined;
    if (numbers) {
      const said = numbers.words.map((t, i): Token => ({
        t,
        word: (tokens[Math.min(at + i, numbers.to - 1)] as Token).word,
        carried: true,
      }));
      return pointed([...tokens.slice(0, at), ...said, ...tokens.slice(numbers.to)], context, carry, at + said.length);
    }
    const behind = openEnded(tokens, at);
    if (behind) return [...tokens.slice(0, at + 1), ...behind, ...tokens.slice(at + 1)];
    const pointer = formAt(
      pointers,
      tokens,
      at,
      ({ words }) =>
        !(words.at(-1) === 'one' && inNumber.has(tokens[at + words.length]?.t ?? '')) &&
        // "an open one behind": a gap, no tooth.
        !(words[0] === 'one' && words.length > 1 && ofAnother(tokens, at)) &&
        // "whipped them both out": what was done to both, which work itself looks up.
        !(words[0] === 'both' && words[1] === 'out' && handledSay.has(tokens[tokens[at - 1]?.t === 'them' ? at - 2 : at - 1]?.t ?? '')) &&
        // "reduced both upper hooks" names them.
        !(words.indexOf('both') > 0 && named(tokens, at + words.length)),
    );
    if (pointer === undefined) continue;
    const { words: pattern, means: wordsFor } = pointer;
    // "a step on two ten with a pocket behind it": what this phrase named comes before what an earlier one did.
    const two = pattern[0] === 'between';
    const place =
      (two ? neighboursBefore(tokens, at) : undefined) ??
      codeBefore(tokens, at) ??
      cornerBefore(tokens, at) ??
      (two ? pairOf(context, waiting) : undefined) ??
      (ofTooth(pattern, tokens[at - 2]?.t) && carried && 'region' in carried ? lastTooth(context) : undefined) ??
      carried;
    // "the tooth in front of it, two oh eight, is fine", "a gap either side of it, three oh eight three oh nine and three oh nine three ten": its
    // number is said as well; "next gap back is four oh seven four oh eight": and that it is a gap.
    const next = at + pattern.length + (verbs.has(tokens[at + pattern.length]?.t ?? '') ? 1 : 0);
    const counted = pattern.at(-1) === 'and' ? 0 : (readCodes(tokens, next)?.raw.codes?.length ?? 0);
    const several = counted > 1 && (pattern[0] === 'next' || sides.has(pattern[1] ?? ''));
    const numbered = pattern.length > 2 && (counted === 1 || several);
    const words = place ? (numbered ? pattern.map((t) => (gaps.has(t) ? t : 'the')) : wordsFor(place)) : undefined;
    if (
      words === undefined ||
      (pattern.includes('side') && looksAt(tokens, at)) ||
      (pattern.at(-1) === 'opposite' && tokens[at + pattern.length]?.t === 'the')
    )
      continue;
    const first = tokens[at] as Token;
    const of = pattern.length === 2 && pattern[1] === 'one' && place ? foundThere(context, place) : undefined;
    const said = words.map((t, i): Token => ({
      t,
      word: (tokens[at + Math.min(i, pattern.length - 1)] ?? first).word,
      carried: true,
      ...(of ? { of } : {}),
    }));
    return pointed([...tokens.slice(0, at), ...said, ...tokens.slice(at + pattern.length)], context, carry, at + said.length);
  }
  return tokens;
}
