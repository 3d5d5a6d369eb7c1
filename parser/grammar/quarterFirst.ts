/**
 * Teeth of a quarter in whatever order they were said, put the way the reader of places knows them: "six and seven on the upper right" as
 * "upper right six and seven", "upper right oh six" without its nought, "the back tooth, lower left" as its eleven. Read apart, the quarter
 * alone would be all of its row.
 */
import { conditions } from '../lexicon/conditions.ts';
import { jawSay, sideSay } from '../lexicon/quarters.ts';
import { ordinalWords, teenWords } from '../lexicon/numbers.ts';
import { measuring } from './codes.ts';
import { digit } from './numbers.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import { isOh, type Token } from './tokens.ts';

const jaws = new Map(Object.entries(jawSay)),
  sides = new Map(Object.entries(sideSay));
const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const joins: ReadonlySet<string> = new Set(['and', 'to', 'through', 'or']);
const leads: ReadonlySet<string> = new Set(['on', 'in', 'of', 'at', 'up', 'down', 'along', 'the', 'back']);
const rowNouns: ReadonlySet<string> = new Set(['row', 'arcade', 'quadrant', 'side']);
const lastWords: ReadonlySet<string> = new Set(['back', 'last', 'rearmost', 'hindmost', 'furthest', 'farthest']);
const corners = [undefined, ['upper', 'right'], ['upper', 'left'], ['lower', 'left'], ['lower', 'right']] as const;

/** One of the cheek teeth; where the quarter is said right before it, any tooth. */
const positionAt = (tokens: readonly Token[], at: number): number | undefined => {
  const n = teenWords[text(tokens, at)] ?? digit(text(tokens, at));
  return n !== undefined && n >= 6 && n <= 11 && !isOh(text(tokens, at)) ? n : undefined;
};

interface Quarter {
  readonly words: readonly Token[];
  readonly to: number;
}
/** "upper right", "left maxillary", "quadrant one", "one hundreds". */
function quarterAt(tokens: readonly Token[], at: number): Quarter | undefined {
  const [a, b] = [text(tokens, at), text(tokens, at + 1)];
  if (tokens[at]?.ends !== true && ((jaws.get(a) && sides.get(b)) || (sides.get(a) && jaws.get(b)))) {
    const jaw = (jaws.get(a) ?? jaws.get(b)) as string;
    const side = (sides.get(a) ?? sides.get(b)) as string;
    const words = [
      { ...(tokens[at] as Token), t: jaw },
      { ...(tokens[at + 1] as Token), t: side },
    ];
    return { words: words.map(({ ends: _, ...word }) => word), to: at + 2 };
  }
  const n = a === 'quadrant' ? digit(b) : b === 'hundreds' ? digit(a) : undefined;
  const corner = n === undefined ? undefined : corners[n];
  return corner && tokens[at]?.ends !== true
    ? { words: corner.map((t, i) => ({ t, word: (tokens[at + i] as Token).word })), to: at + 2 }
    : undefined;
}

/** "six and seven", "eight to the ten", "first and second cheek teeth", "the very back tooth": the numbers and what joins them. */
function teethAt(tokens: readonly Token[], at: number): { readonly words: readonly Token[]; readonly to: number } | undefined {
  let from = at;
  while (['the', 'from', 'number', 'very'].includes(text(tokens, from))) from += 1;
  const named = from > at;
  if (lastWords.has(text(tokens, from)) && (named || text(tokens, from) === 'back')) {
    const noun = text(tokens, from + 1) === 'back' ? from + 2 : from + 1;
    return text(tokens, noun) === 'tooth' ? { words: [{ t: 'eleven', word: (tokens[from] as Token).word }], to: noun + 1 } : undefined;
  }
  if (named && text(tokens, from) === 'first' && text(tokens, from + 1) === 'tooth')
    return { words: [{ t: 'six', word: (tokens[from] as Token).word }], to: from + 2 };
  const counted = ordinalsAt(tokens, from) ?? someAt(tokens, from);
  if (counted) return counted;
  const words: Token[] = [];
  let to = from;
  for (;;) {
    if (positionAt(tokens, to) === undefined || isOh(text(tokens, to - 1))) break;
    words.push(tokens[to] as Token);
    to += 1;
    // "six through to eleven"
    const join = text(tokens, to) === 'through' && text(tokens, to + 1) === 'to' ? to + 1 : to;
    const the = text(tokens, join + 1) === 'the' ? join + 2 : join + 1;
    if (joins.has(text(tokens, to)) && positionAt(tokens, the) !== undefined) {
      words.push({ ...(tokens[to] as Token), t: text(tokens, to) === 'through' ? 'to' : text(tokens, to) });
      to = the;
    } else if (positionAt(tokens, to) === undefined) return { words, to };
  }
  return undefined;
}
const numbers = ['', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'] as const;
/** "first and second cheek teeth". One alone the reader of places knows. */
function ordinalsAt(tokens: readonly Token[], from: number): { readonly words: readonly Token[]; readonly to: number } | undefined {
  const words: Token[] = [];
  let to = from;
  while (words.length < 11) {
    const n = text(tokens, to) === 'last' ? 6 : ordinalWords[text(tokens, to)];
    const number = n === undefined ? undefined : numbers[n];
    if (number === undefined) return undefined;
    words.push({ ...(tokens[to] as Token), t: number });
    to += 1;
    if (text(tokens, to) === 'cheek' && text(tokens, to + 1) === 'teeth') return words.length > 1 ? { words, to: to + 2 } : undefined;
    if (!joins.has(text(tokens, to))) continue;
    words.push(tokens[to] as Token);
    to += 1;
  }
  return undefined;
}

/** "the first three", "first and last", with no noun right behind: the reader of places knows those that have one, and the last ones. */
function someAt(tokens: readonly Token[], from: number): { readonly words: readonly Token[]; readonly to: number } | undefined {
  if (!['first', 'front'].includes(text(tokens, from))) return undefined;
  const [next, last] = [text(tokens, from + 1), text(tokens, from + 2)];
  const ends = next === 'and' && lastWords.has(last);
  const said = ends ? ['six', 'and', 'eleven'] : counts[`first ${next}`];
  const to = from + (ends ? 3 : 2);
  const noun = ['ones', 'teeth'].includes(text(tokens, to)) ? to + 1 : to;
  const within = text(tokens, quarterAt(tokens, to)?.to ?? to) === 'cheek';
  return said && !within ? { words: said.map((t) => ({ t, word: (tokens[from] as Token).word })), to: noun } : undefined;
}

const counts: Readonly<Record<string, readonly string[]>> = {
  'first two': ['six', 'and', 'seven'],
  'first three': ['six', 'to', 'eight'],
  'last two': ['ten', 'and', 'eleven'],
  'last three': ['nine', 'to', 'eleven'],
};
/** "the last three lower left cheek teeth": the quarter stands between the count and what is counted. */
function quarterWithin(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const end = { first: 'first', front: 'first', last: 'last', back: 'last' }[text(tokens, at)];
  const said = end && counts[`${end} ${text(tokens, at + 1)}`];
  const quarter = said && quarterAt(tokens, at + 2);
  if (!quarter || text(tokens, quarter.to) !== 'cheek' || text(tokens, quarter.to + 1) !== 'teeth') return undefined;
  const teeth = said.map((t) => ({ t, word: (tokens[at] as Token).word }));
  return [...tokens.slice(0, at), ...quarter.words, ...closed(teeth, tokens[quarter.to + 1]), ...tokens.slice(quarter.to + 2)];
}

/** "bottom left, points on the inside, six through to eleven": the quarter first, and its teeth at the end, of what has no size to be told in numbers. */
function teethAtTheEnd(tokens: readonly Token[]): readonly Token[] | undefined {
  const quarter = quarterAt(tokens, 0);
  const last = tokens.slice(0, -1).findLastIndex(({ ends }) => ends) + 1;
  const teeth = quarter && tokens[quarter.to - 1]?.ends && last > quarter.to ? teethAt(tokens, last) : undefined;
  if (!quarter || !teeth || teeth.to !== tokens.length || teeth.words.length < 3) return undefined;
  const between = scan(tokens.slice(quarter.to, last)).marks;
  const ids = between.flatMap(({ terms }) => (terms ?? []).flatMap((t) => (t.k === 'condition' ? [t.id] : [])));
  const plain =
    ids.length > 0 &&
    ids.every((id) => !('measure' in conditions[id])) &&
    between.every(({ number, place }) => number === undefined && !place);
  return plain ? [...quarter.words, ...closed(teeth.words, tokens[quarter.to - 1]), ...tokens.slice(quarter.to, last)] : undefined;
}

const named: ReadonlySet<string> = new Set([...jaws.keys(), 'quadrant', 'hundreds']);
function turned(tokens: readonly Token[]): readonly Token[] {
  const quarters = tokens.some(({ t }) => named.has(t));
  let said = (quarters ? teethAtTheEnd(tokens) : undefined) ?? tokens;
  for (let at = 0; at < said.length; at += 1) {
    if (text(said, at + 1) === 'and') said = bothQuarters(said, at) ?? said;
    if (quarters)
      said =
        besideCode(said, at) ??
        ofBothSides(said, at) ??
        quarterWithin(said, at) ??
        quarterBehind(said, at) ??
        quarterBefore(said, at) ??
        said;
  }
  return said;
}

/** Each such place the other way round. */
export const quarterFirst: readonly Rewording[] = [{ rule: turned, needs: [...named, 'and'] }];

/** "six and seven on the upper right": no size before, no other number. */
function quarterBehind(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const teeth = teethAt(tokens, at);
  // "between eight and nine and between nine and ten on the lower right": the quarter is of all of them.
  const gaps = text(tokens, at - 1) === 'between' && tokens.filter(({ t }) => t === 'between').length > 1;
  const within = joins.has(text(tokens, at - 1)) && positionAt(tokens, at - 2) !== undefined;
  if (teeth === undefined || gaps || within || isNumber(tokens, at - 1) || tokens.slice(at, teeth.to).some(({ ends }) => ends))
    return undefined;
  let to = teeth.to;
  while (leads.has(text(tokens, to))) to += 1;
  const quarter = quarterAt(tokens, to);
  // "the back tooth on the upper right": a number of its own behind the quarter is another tooth.
  if (quarter === undefined || (isNumber(tokens, quarter.to) && !measuring.has(text(tokens, quarter.to + 1)))) return undefined;
  const end = text(tokens, quarter.to) === 'hand' ? quarter.to + 1 : quarter.to;
  const after = rowNouns.has(text(tokens, end)) ? end + 1 : quarter.to;
  const closes = tokens[after - 1]?.ends === true;
  const words = [...quarter.words, ...teeth.words];
  return [
    ...tokens.slice(0, at),
    ...words.slice(0, -1),
    { ...(words.at(-1) as Token), ...(closes ? { ends: true as const } : {}) },
    ...tokens.slice(after),
  ];
}

/** "one and two oh six": the same tooth of two quarters. */
function bothQuarters(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const [a, b] = [digit(text(tokens, at)), digit(text(tokens, at + 2))];
  if (text(tokens, at + 1) !== 'and' || a === undefined || b === undefined || a === b || a > 4 || b > 4 || a === 0 || b === 0)
    return undefined;
  const rest = tokens.slice(at + 3, isOh(text(tokens, at + 3)) ? at + 5 : at + 4);
  const whole = rest.length === 2 ? digit(rest[1]?.t ?? '') !== undefined : ['ten', 'eleven'].includes(rest[0]?.t ?? '');
  if (!whole || isNumber(tokens, at - 1) || scaled.has(text(tokens, at - 1)) || tokens.slice(at, at + 3).some(({ ends }) => ends))
    return undefined;
  return [...tokens.slice(0, at + 1), ...rest.map(({ ends: _, ...token }) => token), ...tokens.slice(at + 1)];
}
const scaled: ReadonlySet<string> = new Set(['grade', 'stage', 'degree', 'score', 'number', 'or', 'to', 'and']);

/** Where the number of a tooth that begins here ends: "two oh six", "three eleven". */
const codeAt = (tokens: readonly Token[], at: number): number | undefined => {
  const quadrant = digit(text(tokens, at));
  if (quadrant === undefined || quadrant < 1 || quadrant > 8) return undefined;
  if (isOh(text(tokens, at + 1))) return digit(text(tokens, at + 2)) === undefined ? undefined : at + 3;
  return teenWords[text(tokens, at + 1)] === undefined ? undefined : at + 2;
};
const behindAnd: ReadonlySet<string> = new Set(['in', 'on', 'at', 'the', 'of']);
/** "in the upper right six and in two oh six": beside a tooth by its number a tooth of a quarter is put by its number too; read apart, one of the two would be lost. */
function besideCode(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const quarter = quarterAt(tokens, at);
  const tooth = quarter && (teenWords[text(tokens, quarter.to)] ?? digit(text(tokens, quarter.to)));
  if (quarter === undefined || tooth === undefined || tooth < 1 || tooth > 11 || isOh(text(tokens, quarter.to))) return undefined;
  const to = quarter.to + 1;
  let next = text(tokens, to) === 'and' ? to + 1 : tokens.length;
  while (behindAnd.has(text(tokens, next))) next += 1;
  let last = at - 1;
  while (behindAnd.has(text(tokens, last))) last -= 1;
  const before = text(tokens, last) === 'and' && [last - 3, last - 2].some((from) => codeAt(tokens, from) === last);
  if (codeAt(tokens, next) === undefined && !(before && !isNumber(tokens, to) && !measuring.has(text(tokens, to)))) return undefined;
  const corner = corners.findIndex((words) => words?.every((word, i) => word === quarter.words[i]?.t) === true);
  const words = [digitNames[corner] as string, ...(tooth > 9 ? [] : ['oh']), text(tokens, quarter.to)];
  const heard = tokens.slice(at, to).map(({ word }) => word);
  return [
    ...tokens.slice(0, at),
    ...closed(
      words.map((t, i) => ({ t, word: heard[i] as number, heard })),
      tokens[to - 1],
    ),
    ...tokens.slice(to),
  ];
}
const digitNames = ['', 'one', 'two', 'three', 'four'] as const;

const plurals = ['', 'sixes', 'sevens', 'eights', 'nines', 'tens', 'elevens'] as const;
/** "the first upper cheek teeth", "the last ones on the bottom": those of both sides. */
function ofBothSides(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  if (
    text(tokens, at + 1) === 'ones' &&
    (text(tokens, at) === 'last' || (lastWords.has(text(tokens, at)) && text(tokens, at - 1) === 'both'))
  ) {
    const to = at + (text(tokens, at + 3) === 'the' ? 4 : 3);
    const where = ['on', 'at', 'in'].includes(text(tokens, at + 2)) ? jaws.get(text(tokens, to)) : undefined;
    return where === undefined || quarterAt(tokens, to)
      ? undefined
      : [
          ...tokens.slice(0, at),
          { t: where, word: (tokens[to] as Token).word },
          ...closed([{ t: 'elevens', word: (tokens[at] as Token).word }], tokens[to]),
          ...tokens.slice(to + 1),
        ];
  }
  const n = text(tokens, at) === 'last' ? 6 : ordinalWords[text(tokens, at)];
  const jaw = jaws.get(text(tokens, at + 1));
  const plural = n === undefined ? undefined : plurals[n];
  if (!jaw || !plural || text(tokens, at + 2) !== 'cheek' || text(tokens, at + 3) !== 'teeth') return undefined;
  const [, jawToken, , teeth] = tokens.slice(at, at + 4) as [Token, Token, Token, Token];
  return [...tokens.slice(0, at), { ...jawToken, t: jaw }, { ...teeth, t: plural }, ...tokens.slice(at + 4)];
}

/** "upper right oh six", "quadrant one six", "upper right back tooth", "upper right eight through ten". */
function quarterBefore(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const quarter = quarterAt(tokens, at);
  if (quarter === undefined || tokens[quarter.to - 1]?.ends === true) return undefined;
  const nought = isOh(text(tokens, quarter.to)) || text(tokens, quarter.to) === 'zero' || text(tokens, quarter.to) === 'nought';
  const number = digit(text(tokens, quarter.to + 1));
  if (nought && number !== undefined && number > 0) return [...tokens.slice(0, at), ...quarter.words, ...tokens.slice(quarter.to + 1)];
  // "the lower left lateral is long": an incisor, and no word about the row.
  if (text(tokens, quarter.to) === 'lateral' && (tokens[quarter.to]?.ends || lateralTold.has(text(tokens, quarter.to + 1))))
    return [
      ...tokens.slice(0, at),
      ...quarter.words,
      ...closed(
        [
          { t: 'lateral', word: (tokens[quarter.to] as Token).word },
          { t: 'incisor', word: (tokens[quarter.to] as Token).word },
        ],
        tokens[quarter.to],
      ),
      ...tokens.slice(quarter.to + 1),
    ];
  const teeth = teethAt(tokens, quarter.to);
  const same = teeth === undefined || measuring.has(text(tokens, teeth.to)) || plainAlready(tokens, at, quarter, teeth);
  return same
    ? undefined
    : [...tokens.slice(0, at), ...quarter.words, ...closed(teeth.words, tokens[teeth.to - 1]), ...tokens.slice(teeth.to)];
}
const lateralTold: ReadonlySet<string> = new Set(['', 'is', 'has', 'was', 'looks', 'feels', 'with', 'and']);
const closed = (words: readonly Token[], last: Token | undefined): readonly Token[] =>
  words.map((word, i) => (i === words.length - 1 && last?.ends ? { ...word, ends: true as const } : word));
const plainAlready = (
  tokens: readonly Token[],
  at: number,
  quarter: Quarter,
  teeth: { readonly words: readonly Token[]; readonly to: number },
): boolean =>
  [...quarter.words, ...teeth.words].map(({ t }) => t).join(' ') ===
  tokens
    .slice(at, teeth.to)
    .map(({ t }) => t)
    .join(' ');
const isNumber = (tokens: readonly Token[], at: number): boolean =>
  at >= 0 &&
  ((digit(text(tokens, at)) ?? teenWords[text(tokens, at)]) !== undefined || isOh(text(tokens, at)) || text(tokens, at) === 'hundred');
