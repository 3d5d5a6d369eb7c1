/**
 * Where a tooth is, said beside its number: "one ten above it is overlong", "a hook on the tooth at the front, one oh six", "at the back three
 * eleven has a ramp". The number says it all; no end of the tooth and no other tooth is meant.
 */
import { formAt, longestOf } from './forms.ts';
import { readCodes } from './codes.ts';
import { readNumber } from './numbers.ts';
import { quadrantsOf, type RawPlace } from './places.ts';
import { codeWords } from './pointing.ts';
import { isGlue, scan } from './scan.ts';
import { areNeighbours, codeOf, opposing, positionOf, quadrantOf } from './teeth.ts';
import { isOh, type Token } from './tokens.ts';

type Beside = (tooth: string, named: string) => boolean;
const behind: Beside = (tooth, named) => quadrantOf(tooth) === quadrantOf(named) && positionOf(tooth) === positionOf(named) + 1;
const across: Beside = (tooth, named) => opposing(named) === tooth;
const ways = longestOf<Beside>([
  [['[(just|right)] (above|below|opposite|over|under|underneath) (it|that|that one)'], across],
  [['[(just|right)] behind (it|that|that one)'], behind],
  [['[(just|right)] in front of (it|that|that one)'], (tooth, named) => behind(named, tooth)],
  [['[(just|right)] (beside|next to|alongside) (it|that|that one)'], areNeighbours],
]);
const ofTheMouth = longestOf([[['[right] at the (back|front|rear) [(here|there)]'], true]]);
const loosely = longestOf<'upper' | 'lower' | 'front'>([
  [['[(right|up|down)] [(at|on|in)] the top [(here|there)]'], 'upper'],
  [['[(right|up|down)] [(at|on|in)] the bottom [(here|there)]'], 'lower'],
  [['[right] at the front [(here|there)]'], 'front'],
]);
const opens: ReadonlySet<string> = new Set(['and', 'then', 'but', 'so', 'also', 'right', 'well', 'okay']);
const tooth: ReadonlySet<string> = new Set(['one', 'tooth', 'teeth', 'ones', 'two', 'middle']);
const pointed: ReadonlySet<string> = new Set(['the', 'last', 'these', 'those', 'that', 'this']);

/** The teeth whose numbers stand at this word, and where they end. */
function teethAt(tokens: readonly Token[], at: number): { readonly codes: readonly string[]; readonly to: number } | undefined {
  const read = isOh(tokens[at]?.t) ? undefined : readCodes(tokens, at);
  return read?.raw.codes?.length ? { codes: read.raw.codes, to: read.to } : undefined;
}

/** "two oh seven's gone and three oh seven below it": the words behind the last number. */
function besideOther(tokens: readonly Token[]): readonly [number, number] | undefined {
  let named: string | undefined;
  for (let at = 0; at < tokens.length; at += 1) {
    const said = teethAt(tokens, at);
    if (said === undefined) continue;
    const way = formAt(ways, tokens, said.to);
    const before = said.codes.at(-2) ?? named;
    if (way && before !== undefined && way.means(said.codes.at(-1) as string, before)) return [said.to, said.to + way.words.length];
    named = said.codes.at(-1);
    at = said.to - 1;
  }
  return undefined;
}

/** "the tooth at the front, one oh six", "and at the back one eleven has": where in the mouth to look for it. */
function inTheMouth(tokens: readonly Token[]): readonly [number, number] | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    const form = formAt(ofTheMouth, tokens, at);
    if (form === undefined) continue;
    const to = at + form.words.length;
    const pause = tokens[to - 1]?.ends === true;
    const before = tokens[at - 1];
    const ofTooth = tooth.has(before?.t ?? '') && pointed.has(tokens[at - 2]?.t ?? '');
    const begins = (!pause || form.words[0] === 'right') && (before === undefined || before.ends === true || opens.has(before.t));
    // "and no ramps at the back": of those teeth, and not of an end of one.
    const ruledOut = /[^su]s$/.test(before?.t ?? '') && ['no', 'or', 'nor'].includes(tokens[at - 2]?.t ?? '');
    if (ruledOut && tokens[to]?.t !== 'of') return [at, to];
    const number = tokens[to]?.t === 'the' || tokens[to]?.t === 'between' ? to + 1 : to;
    if ((ofTooth || begins || (!pause && tokens[to]?.t === 'between')) && teethAt(tokens, number)) return [at, to];
  }
  return undefined;
}

const within = (place: RawPlace, where: 'upper' | 'lower' | 'front'): boolean =>
  where === 'front'
    ? place.region === 'incisors' || (place.positions ?? place.codes?.map(positionOf) ?? [4]).every((position) => position <= 3)
    : place.jaw === where || place.codes?.every((code) => (/^[1256]/.test(code) ? 'upper' : 'lower') === where) === true;
/** "overcrowded at the bottom there, the lower incisors", "sharp up the top there, the upper canines": the teeth named behind it are all that is meant. */
function thenNamed(tokens: readonly Token[]): readonly [number, number] | undefined {
  for (let at = 0; at < tokens.length; at += 1) {
    const form = formAt(loosely, tokens, at);
    if (form === undefined) continue;
    const to = at + form.words.length;
    // "a hook at the front, one oh six" keeps its end.
    if (tokens[to - 1]?.ends !== true || to === tokens.length || scan(tokens.slice(0, at)).marks.some(({ place }) => place !== undefined))
      continue;
    const next = scan(tokens.slice(to, to + LONGEST)).marks.find((mark) => mark.place !== undefined || !isGlue(mark))?.place;
    if (next && next.row !== true && (next.positions ?? next.codes ?? next.region) !== undefined && within(next, form.means))
      return [at, to];
  }
  return undefined;
}
const LONGEST = 8;

const nearby = longestOf<1 | -1>([
  [['[(just|right)] behind (it|that|that one)'], 1],
  [['[(just|right)] in front of (it|that|that one)'], -1],
]);
/** "decay in the upper left ten and in the nine in front of it": by its number and by where it is, one tooth. */
function bySelf(tokens: readonly Token[]): readonly Token[] | undefined {
  for (let at = 2; at < tokens.length - 1; at += 1) {
    const way = formAt(nearby, tokens, at);
    const position = way && readNumber(tokens, at - 1)?.value;
    if (position === undefined || tokens[at - 2]?.t !== 'the') continue;
    const place = scan(tokens.slice(0, at - 2)).marks.findLast((mark) => mark.place !== undefined)?.place;
    const [named, ...more] =
      place?.codes ??
      (place?.positions?.length === 1 ? quadrantsOf(place).map((quadrant) => codeOf(quadrant, place.positions?.[0] as number)) : []);
    if (named === undefined || more.length > 0 || positionOf(named) + (way?.means ?? 0) !== position) continue;
    const to = at + (way?.words.length ?? 0);
    const heard = tokens.slice(at - 2, to).map(({ word }) => word);
    // Named by its quarter the first tooth has the number alone behind it: "lower right eight and in the nine".
    const words = place?.codes ? codeWords(codeOf(quadrantOf(named), position)) : ['the', tokens[at - 1]?.t ?? ''];
    const put = words.map((t, i, all): Token => ({
      t,
      word: heard[Math.min(i, heard.length - 1)] as number,
      heard,
      ...(i === all.length - 1 && tokens[to - 1]?.ends ? { ends: true as const } : {}),
    }));
    return [...tokens.slice(0, at - 2), ...put, ...tokens.slice(to)];
  }
  return undefined;
}

export function apposed(tokens: readonly Token[]): readonly Token[] {
  const named = bySelf(tokens);
  if (named) return apposed(named);
  const words = besideOther(tokens) ?? inTheMouth(tokens) ?? thenNamed(tokens);
  if (words === undefined) return tokens;
  const [from, to] = words;
  const last = tokens[from - 1];
  const before = last && tokens[to - 1]?.ends ? [...tokens.slice(0, from - 1), { ...last, ends: true as const }] : tokens.slice(0, from);
  return apposed([...before, ...tokens.slice(to)]);
}
export const apposedWords: readonly string[] = ['it', 'that', 'at', 'top', 'bottom'];
