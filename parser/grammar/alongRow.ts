/**
 * "A ramp on the six, points all the way back", "from the eight to the eleven", where the same phrase named the one corner of the
 * mouth that is spoken of: the row, or that stretch of it. With no such corner the words stay as they are.
 */
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import { measuring, readCodes } from './codes.ts';
import { codeWords } from './pointing.ts';
import { quadrantsOf } from './places.ts';
import { isHead, scan } from './scan.ts';
import { codeOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

const FIRST = 6;
const LAST = 11;
const positionOf = (word: string | undefined): number | undefined => {
  const figure = digitWords[word ?? ''] ?? teenWords[word ?? ''] ?? (/^\d+$/.test(word ?? '') ? Number(word) : undefined);
  return figure !== undefined && figure >= FIRST && figure <= LAST ? figure : undefined;
};
const back: readonly string[] = [
  'all the way back',
  'all the way along',
  'all the way down',
  'right to the back',
  'to the back',
  'to the last',
  'back',
];
const onwards: readonly string[] = ['to', 'through', 'through to', 'back to', 'along to', 'down to', 'all the way to', 'right back to'];

/** How many words of one of these phrases begin here. */
function phraseAt(phrases: readonly string[], tokens: readonly Token[], at: number): number {
  const found = phrases
    .map((phrase) => phrase.split(' '))
    .filter((words) => words.every((word, i) => tokens[at + i]?.t === word))
    .sort((a, b) => b.length - a.length)[0];
  return found?.length ?? 0;
}
const skipThe = (tokens: readonly Token[], at: number): number => (tokens[at]?.t === 'the' ? at + 1 : at);

interface Stretch {
  readonly from: number;
  readonly to: number;
  /** The first and the last position. */
  readonly ends: readonly [number, number];
  /** No tooth to begin at was said: it needs a tooth or a row named before, and no place behind. */
  readonly whole: boolean;
}

function stretchAt(tokens: readonly Token[], at: number): Stretch | undefined {
  if (tokens[at]?.t === 'from') {
    const first = skipThe(tokens, at + 1);
    const start = positionOf(tokens[first]?.t);
    if (start === undefined || tokens[first]?.ends) return undefined;
    const far = phraseAt(back, tokens, first + 1);
    const link = phraseAt(onwards, tokens, first + 1);
    const last = skipThe(tokens, first + 1 + link);
    const end = link > 0 ? positionOf(tokens[last]?.t) : undefined;
    if (end !== undefined && end > start && !measuring.has(tokens[last + 1]?.t ?? ''))
      return { from: at, to: last + 1, ends: [start, end], whole: false };
    return far > 0 ? { from: at, to: first + 1 + far, ends: [start, LAST], whole: false } : undefined;
  }
  const far = tokens[at]?.t === 'all' ? phraseAt(back.slice(0, 3), tokens, at) : 0;
  return far > 0 ? { from: at, to: at + far, ends: [FIRST, LAST], whole: true } : undefined;
}

/** The one quarter of the mouth that the words before speak of, or those right behind. */
function quarterOf(tokens: readonly Token[], stretch: Stretch): number | undefined {
  const named = (part: readonly Token[]): readonly number[] =>
    scan(part).marks.flatMap(({ place }) => {
      if (place?.region !== undefined) return [];
      if (place?.codes !== undefined) return place.codes.map(quadrantOf);
      return place?.jaw !== undefined && place.side !== undefined ? quadrantsOf(place) : [];
    });
  const quarters = new Set(named(tokens.slice(0, stretch.from)));
  const behind = new Set(named(tokens.slice(stretch.to)));
  const [one, ...more] = quarters.size > 0 ? quarters : stretch.whole ? [] : behind;
  return one !== undefined && one <= 4 && more.length === 0 ? one : undefined;
}

/** "points all the way back upper left", "upper left points all the way back": the finding has its place beside it. */
function placed(tokens: readonly Token[], { from, to }: Stretch): boolean {
  const clause = tokens.slice(0, from).findLastIndex(({ ends }) => ends === true) + 1;
  const end = tokens.findIndex(({ ends }, i) => i >= to - 1 && ends === true);
  const { marks } = scan([...tokens.slice(clause, from), ...tokens.slice(to, end < 0 ? tokens.length : end + 1)]);
  const head = marks.findIndex(isHead);
  return (
    head < 0 || marks.some(({ place }, i) => place !== undefined && (i < head || marks.slice(head + 1, i).every((mark) => !isHead(mark))))
  );
}

/** "lower left points from the eight to the eleven": the corner that the stretch is part of, said before what was found in it. */
function cornerOf(tokens: readonly Token[], { from }: Stretch): readonly [number, number] | undefined {
  const clause = tokens.slice(0, from).findLastIndex(({ ends }) => ends === true) + 1;
  const { marks } = scan(tokens.slice(clause, from));
  const at = marks.findIndex((mark) => mark.place !== undefined || isHead(mark));
  const mark = marks[at];
  return mark?.place?.jaw !== undefined && mark.place.codes === undefined && mark.place.positions === undefined
    ? [clause + mark.from, clause + mark.to]
    : undefined;
}

export function alongRow(tokens: readonly Token[]): readonly Token[] {
  for (let at = 0; at < tokens.length; at += 1) {
    const stretch = stretchAt(tokens, at);
    if (stretch === undefined || (stretch.whole && placed(tokens, stretch))) continue;
    if (readCodes(tokens, at) !== undefined) continue;
    const quarter = quarterOf(tokens, stretch);
    if (quarter === undefined) continue;
    const [first, last] = stretch.ends.map((position) => codeWords(codeOf(quarter, position))) as [readonly string[], readonly string[]];
    const words = ['on', ...first, 'to', ...last];
    const corner = cornerOf(tokens, stretch);
    const heard = corner && tokens.slice(...corner).map(({ word }) => word);
    const said = words.map((t, i): Token => ({
      t,
      word: (tokens[Math.min(at + i, stretch.to - 1)] as Token).word,
      carried: true,
      ...(i === 1 && heard ? { heard: [...heard, (tokens[Math.min(at + i, stretch.to - 1)] as Token).word] } : {}),
      ...(i === words.length - 1 && tokens[stretch.to - 1]?.ends ? { ends: true as const } : {}),
    }));
    const before = tokens.slice(0, at).filter((_, i) => corner === undefined || i < corner[0] || i >= corner[1]);
    return alongRow([...before, ...said, ...tokens.slice(stretch.to)]);
  }
  return tokens;
}
