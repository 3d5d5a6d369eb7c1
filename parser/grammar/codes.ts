/** Runs of tooth codes: one, a list, a range, the two of a gap. What is no code is not made one. */
import { teenWords } from '../lexicon/numbers.ts';
import { digit } from './numbers.ts';
import type { PlaceSpan, RawPlace } from './places.ts';
import {
  areNeighbours,
  codeOf,
  isSupernumerary,
  isTheOne,
  isTooth,
  mayBeCode,
  positionOf,
  quadrantOf,
  readCode,
  readShort,
  type Code,
} from './teeth.ts';
import { isOh, type Token } from './tokens.ts';

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';

/** What may stand before the first code of a run and belongs to it. */
const leads: ReadonlySet<string> = new Set(['between', 'behind', 'front', 'either', 'both', 'each']);

/** A run of codes: "one oh six", "one oh six and one oh seven", "two oh seven to two ten", "between ... and ...", "one oh six seven and eight". */
export function readCodes(tokens: readonly Token[], start: number): PlaceSpan | undefined {
  const begun = text(tokens, start);
  if (!mayBeCode(begun) && !leads.has(begun)) return undefined;
  let at = start;
  const between = begun === 'between';
  const relative =
    text(tokens, at) === 'behind'
      ? ('behind' as const)
      : text(tokens, at) === 'front' && text(tokens, at + 1) === 'of' && text(tokens, at - 1) === 'in'
        ? ('front' as const)
        : undefined;
  // "either side of three oh eight", "both sides of four ten"
  const either =
    ['either', 'both', 'each'].includes(text(tokens, at)) &&
    ['side', 'sides'].includes(text(tokens, at + 1)) &&
    text(tokens, at + 2) === 'of';
  if (between || relative === 'behind') at += 1;
  // "between the four ten and the four eleven"
  const the = (i: number): number => (between && text(tokens, i) === 'the' ? i + 1 : i);
  at = the(at);
  if (either) at += 3;
  if (relative === 'front') at += 2;
  const voiced = readCode(tokens, at);
  const first = voiced ?? readUnvoiced(tokens, at, between);
  if (first === undefined) return undefined;
  const links: string[] = [];
  const codes = [codeOf(first.quadrant, first.position)];
  let repaired = first.repaired ?? false;
  let joined = (between ? 'between' : 'one') as NonNullable<RawPlace['joined']>;
  let to = first.to;
  let quadrant = first.quadrant;
  for (;;) {
    const two = ['up to', 'through to', 'down to', 'back to', 'on to', 'and then', 'and also', 'as well as'].includes(
      `${text(tokens, to)} ${text(tokens, to + 1)}`,
    );
    const slash = ['slash', 'stroke'].includes(text(tokens, to));
    const link = two
      ? text(tokens, to) === 'and'
        ? 'and'
        : 'to'
      : ['and', 'to', 'through', 'thru', 'or', 'plus'].includes(text(tokens, to))
        ? text(tokens, to)
        : '';
    const after = the(slash ? to + 1 : link === '' ? to : two ? to + 2 : to + 1);
    const next =
      readCode(tokens, after) ??
      readUnvoiced(tokens, after, between, codes.at(-1)) ??
      (link === 'and' ? readUnvoiced(tokens, after, between) : undefined);
    const short =
      next === undefined ? (readShort(tokens, after) ?? (between && codes.length === 1 ? bare(tokens, after) : undefined)) : undefined;
    const listed =
      next === undefined && short === undefined
        ? readListed(tokens, to, codeOf(quadrant, 0), positionOf(codes.at(-1) as string), voiced === undefined)
        : undefined;
    if (listed) {
      codes.push(...listed.codes);
      joined =
        joined === 'between'
          ? 'between'
          : listed.beside && joined === 'one'
            ? 'adjacent'
            : listed.range && joined !== 'and'
              ? 'range'
              : 'and';
      to = listed.to;
      continue;
    }
    if (next === undefined && short === undefined) break;
    // "behind one oh nine and three oh eight three oh nine": a gap, and another that its two teeth name.
    if (relative && codes.length === 1 && next && namesGap(tokens, next)) break;
    const code = next ? codeOf(next.quadrant, next.position) : codeOf(quadrant, (short as { position: number }).position);
    // "one oh six and two oh six, one oh six is four mil": said again it begins anew.
    const ofNextGap = link === '' && codes.length % 2 === 1 && codes.length > 1 && areNeighbours(codes.at(-1) as string, code);
    if (codes.includes(code) && codes.at(-1) !== code && !(ofNextGap && twosBefore(codes))) break;
    if (next?.repaired) {
      if (link === '' && text(tokens, after) === 'to') break;
      repaired = true;
    }
    const paused = link === '' && tokens[to - 1]?.ends === true;
    quadrant = next?.quadrant ?? quadrant;
    to = (next ?? (short as { to: number })).to;
    if (
      (link === 'to' || link === 'through' || link === 'thru') &&
      quadrantOf(codes.at(-1) as string) === quadrantOf(code) &&
      positionOf(code) > positionOf(codes.at(-1) as string)
    ) {
      const last = codes.at(-1) as string;
      for (let p = positionOf(last) + 1; p <= positionOf(code); p += 1) codes.push(codeOf(quadrant, p));
      joined = 'range';
    } else {
      codes.push(code);
      links[codes.length - 1] = paused ? ',' : link;
      if (joined !== 'between')
        joined =
          joined === 'range'
            ? 'range'
            : link === ''
              ? joined === 'and' || joined === 'or'
                ? joined
                : 'adjacent'
              : link === 'or'
                ? 'or'
                : 'and';
    }
    if (between && codes.length === 2) break;
  }
  // "from three oh seven back", "three oh seven onwards", "three oh seven to the back": to the end of the row.
  const back = text(tokens, to) === 'to' ? ['the back', 'the end'].includes(`${text(tokens, to + 1)} ${text(tokens, to + 2)}`) : false;
  const onwards =
    codes.length === 1 &&
    (back ||
      ['backwards', 'onwards', 'onward'].includes(text(tokens, to)) ||
      (text(tokens, start - 1) === 'from' && text(tokens, to) === 'back'))
      ? 11
      : undefined;
  if (onwards !== undefined && quadrantOf(codes[0] as string) <= 4) {
    for (let p = positionOf(codes[0] as string) + 1; p <= onwards; p += 1) codes.push(codeOf(quadrant, p));
    joined = 'range';
    to += back ? 3 : 1;
  }
  if (inPairs(codes, links)) joined = links.includes('or') ? 'orPairs' : 'pairs';
  const good = codes.filter((code) => isTooth(code) || isSupernumerary(code));
  const bad = codes.filter((code) => !isTooth(code) && !isSupernumerary(code));
  return {
    raw: {
      codes: good,
      joined,
      ...(bad.length > 0 ? { notTeeth: bad } : {}),
      ...(either ? { relative: 'either' as const } : relative ? { relative } : {}),
      ...(repaired ? { repaired: true } : {}),
    },
    from: start,
    to,
  };
}

/** "three nine three ten": the nought is left out where two neighbours of one row are named together, or between two teeth. */
function readUnvoiced(tokens: readonly Token[], at: number, between: boolean, before?: string): Code | undefined {
  const quadrant = digit(text(tokens, at));
  const position = digit(text(tokens, at + 1));
  if (isTheOne(tokens, at)) return undefined;
  if (
    quadrant === undefined ||
    position === undefined ||
    quadrant < 1 ||
    quadrant > 4 ||
    position < 6 ||
    measuring.has(text(tokens, at + 2)) ||
    isOh(text(tokens, at))
  )
    return undefined;
  const own: Code = { quadrant, position, to: at + 2 };
  if (before !== undefined) return areNeighbours(before, codeOf(quadrant, position)) ? own : undefined;
  const from = ['and', 'slash', 'stroke'].includes(text(tokens, at + 2)) ? at + 3 : at + 2;
  const next = readCode(tokens, from) ?? readUnvoiced(tokens, from, between, codeOf(quadrant, position));
  // "three nine ten", of a gap; "one nine ten", whose last word counts no units by itself.
  const neighbour =
    teenWords[text(tokens, from)] ?? (from === at + 2 && tokens.some(({ t }) => gapWords.has(t)) ? digit(text(tokens, from)) : undefined);
  if (next === undefined && (from === at + 2 || between) && neighbour === position + 1 && !measuring.has(text(tokens, from + 1)))
    return own;
  return next !== undefined &&
    (from === at + 2 || between || text(tokens, at + 2) !== 'and') &&
    areNeighbours(codeOf(quadrant, position), codeOf(next.quadrant, next.position))
    ? own
    : undefined;
}

/** All but the last are neighbours by twos. */
const twosBefore = (codes: readonly string[]): boolean =>
  codes.slice(0, -1).every((code, i) => i % 2 === 0 || areNeighbours(codes[i - 1] as string, code));

/** Right behind it the number of its neighbour. */
function namesGap(tokens: readonly Token[], { quadrant, position, to }: Code): boolean {
  const other = readCode(tokens, to);
  return other !== undefined && areNeighbours(codeOf(quadrant, position), codeOf(other.quadrant, other.position));
}

/** "three oh seven three oh eight and three ten three eleven": neighbours by twos, each two a gap of their own. */
function inPairs(codes: readonly string[], links: readonly string[]): boolean {
  if (codes.length < 4 || codes.length % 2 === 1) return false;
  const twos = codes.every((code, i) => i % 2 === 0 || ((links[i] ?? '') === '' && areNeighbours(codes[i - 1] as string, code)));
  return twos && codes.some((code, i) => i > 0 && i % 2 === 0 && (['and', 'or', ','].includes(links[i] ?? '') || code === codes[i - 1]));
}

/** "between three oh nine and ten", "one oh six and seven". */
function bare(tokens: readonly Token[], at: number): { position: number; to: number } | undefined {
  const t = text(tokens, at) === 'and' ? text(tokens, at + 1) : text(tokens, at);
  const to = text(tokens, at) === 'and' ? at + 2 : at + 1;
  const position = teenWords[t] ?? digit(t);
  return position !== undefined && position >= 1 && position <= 11 ? { position, to } : undefined;
}
/** Words of a gap between two teeth. */
export const gapWords: ReadonlySet<string> = new Set(['diastema', 'diastemas', 'diastemata', 'gap', 'gaps', 'space', 'spaces', 'between']);
/** What stands in gaps: beside it two neighbours are one, but for a size that follows its tooth. */
const inGaps: ReadonlySet<string> = new Set([
  'pocket',
  'pockets',
  'packing',
  'packed',
  'impaction',
  'impacted',
  'hay',
  'haylage',
  'feed',
  'grass',
]);
const sizing: ReadonlySet<string> = new Set(['deep', 'high', 'wide', 'long', 'tall', 'across', 'proud']);
/** Words of what is done at a gap. */
const gapWork: ReadonlySet<string> = new Set(['flushed', 'flush', 'hosed', 'widened', 'widen', 'widening', 'plugged', 'irrigated']);
/** Words that make the number before them a size. */
export const measuring = new Set([
  'mil',
  'mils',
  'mill',
  'mills',
  'millimetre',
  'millimetres',
  'millimeter',
  'millimeters',
  'mm',
  'cm',
  'centimetre',
  'centimetres',
  'degrees',
  'degree',
  'point',
  'months',
  'month',
  'weeks',
  'week',
  'half',
  'ml',
  'mg',
  'oh',
  'hundred',
  'hundreds',
  'day',
  'days',
  'year',
  'years',
]);
/**
 * "two oh six seven and eight", "three oh nine to eleven": after a code the further positions of its quadrant, rising. A last number
 * that a unit makes a size is none, nor its range's other end; a single one without "and" or "to" may be anything.
 */
function readListed(
  tokens: readonly Token[],
  start: number,
  quadrant: string,
  first: number,
  unvoiced: boolean,
): { codes: readonly string[]; to: number; range: boolean; beside?: true } | undefined {
  const found: { position: number; link: string; to: number }[] = [];
  for (let at = start; ;) {
    const link = ['and', 'to', 'through', 'thru', 'plus'].includes(text(tokens, at)) ? text(tokens, at) : '';
    const from = link === '' ? at : at + 1;
    const position = teenWords[text(tokens, from)] ?? digit(text(tokens, from));
    if (position === undefined || position < 6 || position > 11 || position <= (found.at(-1)?.position ?? first) || readCode(tokens, from))
      break;
    found.push({ position, link: link === 'plus' ? 'and' : link === '' ? '' : link === 'and' ? 'and' : 'to', to: from + 1 });
    at = from + 1;
  }
  const after = text(tokens, found.at(-1)?.to ?? start);
  const counted =
    measuring.has(after) ||
    ['hundred', 'hundreds', 'percent', 'point'].includes(after) ||
    sizing.has(after) ||
    (['to', 'or', 'by'].includes(after) && digit(text(tokens, (found.at(-1)?.to ?? start) + 1)) !== undefined);
  if (counted) {
    const last = found.pop();
    if (last?.link === 'to') found.pop();
  }
  // "gap three oh nine ten": beside a gap the next tooth; "one nine ten" is two teeth or none.
  const neighbour =
    found.length === 1 &&
    found[0]?.link === '' &&
    found[0].position === first + 1 &&
    (unvoiced || tokens.some(({ t }) => gapWords.has(t) || gapWork.has(t) || inGaps.has(t)));
  if (neighbour) return { codes: [codeOf(Number(quadrant[0]), first + 1)], to: found[0]?.to as number, range: false, beside: true };
  if (
    found.length === 0 ||
    (found.length === 1 && found[0]?.link === '') ||
    (found.length > 1 && found.every(({ link }) => link === '') && found.some(({ position }, i) => position !== first + i + 1))
  )
    return undefined;
  const positions = found.flatMap(({ position, link }, i) => {
    const last = found[i - 1]?.position ?? first;
    return link === 'to' ? Array.from({ length: position - last }, (_, k) => last + 1 + k) : [position];
  });
  return {
    codes: positions.map((p) => codeOf(Number(quadrant[0]), p)),
    to: (found.at(-1) as { to: number }).to,
    range: found.some(({ link }) => link === 'to'),
  };
}

/** The two teeth of a gap, in order; undefined where they are no neighbours. */
export const gapOf = (codes: readonly string[]): readonly [string, string] | undefined => {
  const [a, b] = codes as [string, string];
  return codes.length === 2 && areNeighbours(a, b) ? (Number(a) < Number(b) ? [a, b] : [b, a]) : undefined;
};
