/**
 * Where a tooth is, said beside its number: "one ten above it is overlong", "a hook on the tooth at the front, one oh six", "at the back three
 * eleven has a ramp". The number says it all; no end of the tooth and no other tooth is meant.
 */
import { formAt, longestOf } from './forms.ts';
import { readCodes } from './codes.ts';
import { areNeighbours, opposing, positionOf, quadrantOf } from './teeth.ts';
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
const ofTheMouth = longestOf([[['at the (back|front|rear)', 'right at the (back|front)'], true]]);
const opens: ReadonlySet<string> = new Set(['and', 'then', 'but', 'so', 'also', 'right', 'well', 'okay']);
const tooth: ReadonlySet<string> = new Set(['one', 'tooth', 'teeth', 'ones']);

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
    const ofTooth = tooth.has(before?.t ?? '') && ['the', 'last'].includes(tokens[at - 2]?.t ?? '');
    const begins = !pause && (before === undefined || before.ends === true || opens.has(before.t));
    // "and no ramps at the back": of those teeth, and not of an end of one.
    const ruledOut = /[^su]s$/.test(before?.t ?? '') && ['no', 'or', 'nor'].includes(tokens[at - 2]?.t ?? '');
    if (ruledOut && tokens[to]?.t !== 'of') return [at, to];
    const number = tokens[to]?.t === 'the' || tokens[to]?.t === 'between' ? to + 1 : to;
    if ((ofTooth || begins || (!pause && tokens[to]?.t === 'between')) && teethAt(tokens, number)) return [at, to];
  }
  return undefined;
}

export function apposed(tokens: readonly Token[]): readonly Token[] {
  const words = besideOther(tokens) ?? inTheMouth(tokens);
  if (words === undefined) return tokens;
  const [from, to] = words;
  const last = tokens[from - 1];
  const before = last && tokens[to - 1]?.ends ? [...tokens.slice(0, from - 1), { ...last, ends: true as const }] : tokens.slice(0, from);
  return apposed([...before, ...tokens.slice(to)]);
}
export const apposedWords: readonly string[] = ['it', 'that', 'at'];
