/**
 * Short phrases that say what they say by what stood before them: "same again opposite", "left is clear", "three on the other
 * side", "next one along is fine". Where they speak of is worked out from the place of the last finding, and they are then read as
 * what they are short for. Where that cannot be known they are asked about.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import { standing, type Carry } from './carry.ts';
import { gather } from './lists.ts';
import type { Made } from './made.ts';
import { beside, codeWords, eitherWay, mirrored } from './pointing.ts';
import type { Reading } from './read.ts';
import { scan } from './scan.ts';
import { codeOf, isUpper, opposing, positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

type Finding = Extract<Item, { kind: 'finding' }>;

/** Where, beside where the last finding is. */
const numbers = 'six|seven|eight|nine|ten|eleven';
const place =
  '(?:(?<other>(?:the |its )?(?:other|opposite) (?:side|one|tooth|number)|(?:the )?(?:one )?opposite)' +
  '|(?:the )?(?<side>left|right)(?<noun>(?: hand)?(?: (?:side|one))?)' +
  '|(?<facing>(?:the )?(?:(?:bottom|lower|upper|top|opposing)(?: (?:one|tooth|row))?|one (?:below|above|underneath)|below|above|underneath))(?: (?:it|that(?: one)?))?' +
  '|(?<back>(?:the )?(?:next (?:one|tooth) (?:along|back|down|up|behind)|(?:one|tooth) (?:behind|(?:further )?back)|one further along))(?: (?:it|that(?: one)?))?' +
  '|(?<front>(?:the )?(?:next (?:one|tooth) (?:forward|forwards)|(?:one|tooth) (?:in front(?: of)?|(?:further )?forward)))(?: (?:it|that(?: one)?))?' +
  '|(?<next>(?:the )?next(?: (?:one|tooth))?)' +
  `|(?:the )?(?<number>${numbers})(?: one)?)`;
const at = '(?:(?:over |down |up )?(?:on|at|in|for|with|to) (?:the )?)?';
const how = '(?:(?:exactly|just|much|pretty much|about|more or less) )?';
const lead = '^(?:(?:and|but|so|yeah|yes|now|then|okay|well) )*';
const tail = '(?: (?:too|as well|also|though|either|then|again))*$';
const degree = '(?:a bit |bit |much |slightly |a little |even |far |quite )*';
const compared =
  '(?<compared>worse|bigger|smaller|larger|deeper|wider|narrower|shallower|milder|longer|shorter|less|(?:not|nothing like) (?:as|so|quite as|quite so) (?:bad|big|deep|large|long|wide|tall|severe|marked))';
const figure = '(?:half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|twenty|\\d+(?:\\.\\d+)?)';
const sized = (unit: string): string =>
  `(?<amount>(?:(?:about|only|more like|maybe|nearer) )*${figure}(?: (?:to|or|point|and a) ${figure})?${unit})`;
const amount = sized(' (?:mil|mils|mm|millimetres?|millimeters?|centimetres?|centimeters?|cm)');
const bareAmount = sized('');
type Means = 'same' | 'there' | 'absent' | 'clear' | 'sized' | 'compared';
const forms: readonly (readonly [Means, RegExp])[] = [
  [
    'clear',
    `${place} (?:is |was |looks |feels |seems )?(?:all |absolutely |perfectly )?(?<clear>clear|fine|okay|ok|normal|good|clean|alright|all right|healthy|sound|grand)${tail}`,
  ],
  ['compared', `(?:it is )?${degree}${compared} ${at}${place}${tail}`],
  ['compared', `${how}(?:the )?same(?: again)? ${at}${place} (?:but |though )?${degree}${compared}$`],
  ['compared', `${place} (?:is )?${degree}${compared}$`],
  ['absent', `(?:there is )?(?:none|nothing like (?:it|that)|no sign of (?:it|one|that)|not|nor|no such thing) ${at}${place}${tail}`],
  ['absent', `${place} (?:has not(?: got (?:one|it|any))?|does not(?: have (?:one|it|any))?|has none|has no such thing|neither)${tail}`],
  ['there', `(?:there is |he has |she has |got )?(?:one|some) ${at}${place}${tail}`],
  ['there', `${place} (?:has|does)(?: (?:got )?(?:one|it))?${tail}`],
  ['same', `${how}(?:the )?same(?: again| thing| story| there| also)* ${at}${place}${tail}`],
  ['same', `(?:there is )?(?:another|a matching|matching|likewise|ditto|again|also|so has|so is)(?: one)? ${at}${place}${tail}`],
  ['same', `${place} (?:(?:is|has|looks) )?${how}(?:(?:the )?same|too|as well|also|likewise|ditto|got one too)${tail}`],
  ['same', `and ${at}${place}${tail}`],
  ['sized', `${amount} ${at}${place}$`],
  ['sized', `${place} (?:is |was )?${amount}$`],
  ['sized', `${bareAmount} (?:on|at|in) (?:the )?${place}$`],
  ['sized', `${place} (?:is|was) ${bareAmount}$`],
].map(
  ([means, form]) =>
    [means as Means, new RegExp(`${form?.startsWith('and ') ? '^(?:(?:but|so|yeah|yes|then|okay|well) )*' : lead}${form}`)] as const,
);

/** Words of which one stands in every such phrase. */
const pointing: ReadonlySet<string> = new Set([
  ...['other', 'opposite', 'left', 'right', 'bottom', 'lower', 'upper', 'top', 'opposing', 'below', 'above', 'underneath'],
  ...['next', 'behind', 'back', 'front', 'along', 'forward', 'forwards', ...numbers.split('|')],
]);
const LONGEST = 10;

/** The words of the place that a form speaks of; undefined where there is none, "elsewhere" where it is no place beside the last. */
function wordsOf({ groups = {} }: RegExpExecArray, near: Place): readonly string[] | undefined | 'elsewhere' {
  const teeth = 'teeth' in near ? near.teeth : [];
  const only = teeth.length === 1 ? (teeth[0] as string) : undefined;
  if (groups['other'] !== undefined) return 'region' in near && near.side === undefined ? undefined : mirrored(near);
  if (groups['side'] !== undefined) {
    const there = sideOf(near);
    return there === undefined || there === groups['side'] ? 'elsewhere' : mirrored(near);
  }
  if (groups['facing'] !== undefined) {
    const [down, up] = [/bottom|lower|below|underneath/.test(groups['facing']), /top|upper|above/.test(groups['facing'])];
    return only === undefined || (down && !isUpper(only)) || (up && isUpper(only)) ? undefined : codeWords(opposing(only));
  }
  if (groups['back'] !== undefined) return beside(1)(near);
  if (groups['front'] !== undefined) return beside(-1)(near);
  if (groups['next'] !== undefined) return eitherWay(near);
  const position = teenWords[groups['number'] ?? ''] ?? digitWords[groups['number'] ?? ''];
  return only === undefined || position === undefined || positionOf(only) < 6 || positionOf(only) === position
    ? 'elsewhere'
    : codeWords(codeOf(quadrantOf(only), position));
}

/** The side that a place lies on, where it lies on one. */
function sideOf(near: Place): 'left' | 'right' | undefined {
  if ('region' in near) return near.side === 'both' ? undefined : near.side;
  const left =
    'rows' in near
      ? near.rows.map((row) => (row.endsWith('incisors') ? undefined : row.endsWith('left')))
      : ('teeth' in near ? near.teeth : near.spaces.flat()).map((tooth) => [2, 3, 6, 7].includes(quadrantOf(tooth)));
  return left.every((one) => one === true) ? 'left' : left.every((one) => one === false) ? 'right' : undefined;
}

/** Findings of the last phrase that made any, where it made nothing else: what is said of the other side is said of each. */
function lastFindings(context: Context, carry: Carry): readonly (Finding & { readonly place: Place })[] {
  const last = standing(context, carry.last);
  const all = carry.lastItems.includes(last?.id ?? '') ? carry.lastItems.map((id) => standing(context, id)) : [last];
  return all.every((item): item is Finding & { place: Place } => item?.kind === 'finding' && item.place !== null) ? all : [];
}

/** What the words are short for; undefined where they do not say it of such a finding. */
function shortFor(
  means: Means,
  { groups = {}, index, input, 0: said }: RegExpExecArray,
  last: Finding,
  tokens: readonly Token[],
  there: readonly string[],
): readonly Token[] | undefined {
  const heard = tokens.map(({ word }) => word);
  const first = heard[0] as number;
  const words = (...all: readonly string[]): readonly Token[] => all.map((t) => ({ t, word: first, heard }));
  const where = there.map((t): Token => ({ t, word: first, heard, carried: true }));
  const absent = last.presence === 'absent';
  switch (means) {
    case 'clear':
      return [...where, ...words('is', 'fine')];
    case 'absent':
      return [...words(absent ? 'same' : 'none', 'on'), ...where];
    case 'there':
      return absent ? [...words('there', 'is', 'one', 'on'), ...where] : [...words('same', 'on'), ...where];
    case 'sized': {
      const amount = groups['amount'] as string;
      const [unit, value] = [/[a-z]m$|mil|metre|meter/.test(amount), amountIn(amount)];
      // "seven on the left", behind four mil: a size or a tooth.
      if (absent || (!unit && (last.measures?.length !== 1 || value === undefined || value > 5))) return undefined;
      const from = input.slice(0, input.indexOf(amount, index)).split(' ').length - 1;
      return [...words('same', 'on'), ...where, ...tokens.slice(from, from + amount.split(' ').length)];
    }
    default:
      return said === '' ? undefined : [...words('same', 'on'), ...where];
  }
}
const amountIn = (amount: string): number | undefined => {
  const word = amount.split(' ').at(-1) as string;
  return digitWords[word] ?? teenWords[word] ?? (Number.isNaN(Number(word)) ? undefined : Number(word));
};

/** "worse on the left": beside the one it leans on; no change since another day. */
const withDegree = (made: Made, compared: string | undefined): Made =>
  compared === undefined || made.body?.kind !== 'finding' ? made : { ...made, body: { ...made.body, severitySaid: compared } };

/** What the words mean here is asked. */
function askedAbout(tokens: readonly Token[]): Reading {
  const { marks, steps } = scan(tokens);
  return {
    tokens,
    marks,
    scanned: marks,
    role: marks.map(() => 'glue'),
    made: [{ marks: marks.map((_, m) => m), rules: ['half'], doubts: [{ doubt: 'unread' }] }],
    places: [],
    unknown: 0,
    takenBack: [],
    steps,
  };
}

/** @returns undefined where the phrase leans on nothing in this way */
export function followed(
  tokens: readonly Token[],
  context: Context,
  carry: Carry,
  read: (tokens: readonly Token[], carry: Carry) => Reading,
): Reading | undefined {
  if (tokens.length > LONGEST || tokens.length < 2 || !tokens.some(({ t }) => pointing.has(t))) return undefined;
  if (carry.half !== undefined) return undefined;
  const words = tokens.map(({ t }) => t).join(' ');
  const [found] = gather(forms, ([means, form]) => {
    const match = form.exec(words);
    return match ? { means, match } : undefined;
  });
  const { side, compared } = found?.match.groups ?? {};
  // "right, good": a side and a pause are no side of anything.
  if (found === undefined || (side && tokens.some(({ t, ends }, i) => t === side && ends && i + 1 < tokens.length))) return undefined;
  const lasts = lastFindings(context, carry);
  const wheres = lasts.map((last) => wordsOf(found.match, last.place));
  if (lasts.length === 0 || wheres.includes('elsewhere')) return undefined;
  const readings = gather(lasts, (last, i) => {
    const short = wheres[i] && shortFor(found.means, found.match, last, tokens, wheres[i] as readonly string[]);
    const reading = short && read(short, { ...carry, last: last.id });
    return reading?.made.length === 1 ? reading : undefined;
  });
  const [whole] = readings;
  if (whole === undefined || readings.length < lasts.length) return askedAbout(tokens);
  const marks = whole.marks.map((_, m) => m);
  return { ...whole, made: readings.flatMap(({ made }) => made.map((one) => withDegree({ ...one, marks }, compared))) };
}
