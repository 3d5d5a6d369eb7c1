/**
 * Short phrases that say what they say by what stood before them: "same again opposite", "left is clear", "three on the other
 * side", "next one along is fine". Where they speak of is worked out from the place of the last finding, and they are then read as
 * what they are short for. Where that cannot be known they are asked about.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import { standing, type Carry } from './carry.ts';
import { gather } from './lists.ts';
import type { Made } from './made.ts';
import { beside, codeWords, eitherWay, mirrored } from './pointing.ts';
import type { Reading } from './read.ts';
import { noLess } from './sameAgain.ts';
import {
  amount,
  amountIn,
  askedAbout,
  asTalk,
  asWhole,
  at,
  bareAmount,
  compared,
  degree,
  figure,
  how,
  lead,
  place,
  positions,
  standingFor,
  tail,
  within,
  type Finding,
  type ReadShort,
} from './shortForms.ts';
import { codeOf, isUpper, opposing, positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

type Means = 'same' | 'there' | 'absent' | 'none' | 'clear' | 'sized' | 'graded' | 'compared' | 'moved' | 'both' | 'talk';
const degreeSaid = '(?<degree>(?:very )?(?:slight|mild|moderate|marked|severe|small|tiny|big|large|heavy|minor))';
const takingBack =
  "(?:no|oh|sorry|wait|hang on|hold on|actually|my mistake|i (?:mean|meant|said)|correction|(?:the )?wrong (?:side|tooth|one)|not that(?: one| side| tooth)?|(?:it|that) is|that's|(?:it|that) was|(?:it |that )?should (?:be|have been|say)|make (?:it|that)|move (?:it|that)(?: over)?)";
const forms: readonly (readonly [Means, RegExp])[] = [
  [
    'clear',
    `${place} (?:is |was |looks |feels |seems )?(?:all |absolutely |perfectly )?(?<clear>clear|fine|okay|ok|normal|good|clean|alright|all right|healthy|sound|grand)${tail}`,
  ],
  ['clear', `(?<clear>clear|fine|normal|clean|healthy|sound) (?:on|at|in) (?:the )?${place}${tail}`],
  ['compared', `(?:it is )?${degree}${compared} ${at}${place}${tail}`],
  ['compared', `${how}(?:the )?same(?: again)? ${at}${place} (?:but |though )?${degree}${compared}$`],
  ['compared', `${place} (?:is )?${degree}${compared}$`],
  ['absent', `(?:there is )?(?:none|nothing like (?:it|that)|no sign of (?:it|one|that)|not|nor|or|no such thing) ${at}${place}${tail}`],
  ['absent', `(?:it|that) is not (?:on|at|in) (?:the )?${place}${tail}`],
  ['absent', `(?:i )?(?:could|can|did) not (?:find|feel) (?:one|it|any|that) (?:on|at|in) (?:the )?${place}${tail}`],
  ['absent', `${place} (?:has not(?: got (?:one|it|any))?|does not(?: have (?:one|it|any))?|has none|has no such thing|neither)${tail}`],
  ['there', `(?:there is |he has |she has |got )?(?:one(?! tooth)|some) ${at}${place}${tail}`],
  ['there', `${place} (?:has|does)(?: (?:got )?(?:one|it))?${tail}`],
  ['same', `${how}(?:the )?same(?: again| thing| story| deal| there| also)* ${at}${place}${tail}`],
  [
    'same',
    `(?:there is )?(?:another|a matching|matching|(?:an )?identical|(?:a )?similar|repeat(?: that)?|copy that|likewise|ditto|again|also|so has|so is)(?: one| thing)? ${at}${place}${tail}`,
  ],
  ['same', `${place} (?:(?:is|has|looks) )?${how}(?:(?:the )?same|too|as well|also|likewise|ditto|got one too)${tail}`],
  ['same', `and ${at}${place}${tail}`],
  ['graded', `${degreeSaid} (?:one )?${at}${place}${tail}`],
  ['compared', `(?:there is )?(?:a |an )(?:${degree})?${compared} one ${at}${place}${tail}`],
  ['graded', `${place} (?:is|has|has got|was) (?:only |just )*(?:a |an )?(?<degree>(?:grade|stage) ${figure})(?: one)?$`],
  ['graded', `${place} (?:(?:is|was|looks) )?${degreeSaid}(?: one)?$`],
  ['none', `no (?<what>[a-z]+(?: [a-z]+)?) ${at}${place}$`],
  ['moved', `(?:${takingBack} )+${at}${place}(?: (?:sorry|instead))?$`],
  ['moved', `${place} (?:sorry|actually|i mean|i meant|instead|my mistake)$`],
  ['both', `(?:(?:it|that) is |that's |they are )?(?:on )?both sides(?: (?:actually|in fact|sorry))?$`],
  // Said to whoever holds the horse.
  [
    'talk',
    `(?:i will |let me |we will |can you |could you )?(?:just )?(?:come|go|pop|nip|walk|step|move|get|stand|swing|turn)(?: him| her| it| them)?(?: round| over| across| back)*(?: to| on)? the other side(?: then| now| please| of (?:him|her|me))*$`,
  ],
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
  ...['other', 'opposite', 'left', 'right', 'sides', 'bottom', 'lower', 'upper', 'top', 'opposing', 'below', 'above', 'underneath'],
  ...['next', 'behind', 'back', 'front', 'along', 'forward', 'forwards', ...positions.split('|')],
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
export function sideOf(near: Place): 'left' | 'right' | undefined {
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
  { groups = {}, input }: RegExpExecArray,
  last: Finding,
  tokens: readonly Token[],
  there: readonly string[],
): readonly Token[] | undefined {
  const { words, where: put } = standingFor(tokens);
  const where = put(there);
  const absent = last.presence === 'absent';
  switch (means) {
    case 'clear':
      return [...where, ...words('is', 'fine')];
    case 'absent':
      // "or on the left", of what is there: which, is asked.
      return absent ? [...words('same', 'on'), ...where] : input.startsWith('or ') ? undefined : [...words('none', 'on'), ...where];
    case 'none':
      // "no step on the next one": which way is not said.
      if (groups['next'] !== undefined && there.includes('or')) return undefined;
      return [...words('no'), ...within(tokens, input, groups['what'] as string), ...words('on'), ...where];
    case 'moved':
      // "move it to the other side": that, or the bucket.
      return absent || bareSide(input, groups) === 'asked' || /\bmove it\b/.test(input) ? undefined : [...words('correction'), ...where];
    case 'there':
      return absent ? [...where, ...words('has', 'one')] : [...words('same', 'on'), ...where];
    case 'graded':
      return absent ? undefined : [...words('same', 'on'), ...where, ...within(tokens, input, groups['degree'] as string)];
    case 'sized': {
      const said = groups['amount'] as string;
      const [unit, value] = [/ (?:mil|[cm]m|cent)/.test(said), amountIn(said)];
      // "seven on the left", behind four mil: a size or a tooth.
      if (absent || (!unit && (last.measures?.length !== 1 || value === undefined || value > 5))) return undefined;
      return [...words('same', 'on'), ...where, ...within(tokens, input, said)];
    }
    case 'same':
      return [...words(...(noLess.test(input) ? ['exact', 'same'] : /\bsame\b/.test(input) ? ['same'] : ['likewise']), 'on'), ...where];
    default:
      return [...words('likewise', 'on'), ...where];
  }
}
/** A side without "the" or "side" moves something where these take back; "that's right", "oh right", "what's left" do not. */
const takesBack = /\b(?:sorry|move|mean|meant|said|correction|should|make|wrong|not that|mistake|instead)\b/;
const hesitates = /\b(?:wait|hang on|hold on)\b/;
function bareSide(words: string, { side, noun }: Readonly<Record<string, string | undefined>>): 'moves' | 'asked' | 'talk' {
  if (side === undefined || noun || words.includes(`the ${side}`)) return 'moves';
  // "right, sorry": a word to begin with, or the side.
  if (takesBack.test(words)) return words === 'right sorry' ? 'asked' : 'moves';
  return !hesitates.test(words) ? 'talk' : side === 'right' ? 'asked' : 'moves';
}

/** "worse on the left": beside the one it leans on; no change since another day. */
const withDegree = (made: Made, compared: string | undefined): Made =>
  compared === undefined || made.body?.kind !== 'finding' ? made : { ...made, body: { ...made.body, severitySaid: compared } };

/** @returns undefined where the phrase leans on nothing in this way */
export function followed(tokens: readonly Token[], context: Context, carry: Carry, read: ReadShort): Reading | undefined {
  if (tokens.length > LONGEST || tokens.length < 2 || !tokens.some(({ t }) => pointing.has(t))) return undefined;
  if (carry.half !== undefined) return undefined;
  const words = tokens.map(({ t }) => t).join(' ');
  const [found] = gather(forms, ([means, form]) => {
    const match = form.exec(words);
    return match ? { means, match } : undefined;
  });
  const { side, compared } = found?.match.groups ?? {};
  // "right, good": a side and a pause are no side of anything.
  if (/^right (?:good|fine|okay|ok|lovely|great|grand|perfect|sound)$/.test(words) && tokens[0]?.ends) return asTalk(tokens);
  if (found === undefined || (side && tokens.some(({ t, ends }, i) => t === side && ends && i + 1 < tokens.length))) return undefined;
  if (found.means === 'talk') return asTalk(tokens);
  const lasts = lastFindings(context, carry);
  // A number by itself is put right as a size is; what was named is of no other finding.
  const others = found.match.groups ?? {};
  if (found.means === 'moved' && (others['number'] !== undefined || bareSide(words, others) === 'talk')) return undefined;
  if (found.means === 'none' && (others['side'] ?? others['other'] ?? others['number'] ?? others['facing']) !== undefined) return undefined;
  if (found.means === 'both') {
    const [last, ...more] = lasts;
    if (last === undefined || sideOf(last.place) === undefined) return undefined;
    return more.length > 0 ? askedAbout(tokens) : asWhole(read(standingFor(tokens).words('correction', 'both', 'sides'), carry));
  }
  if (found.means === 'moved' && lasts.length > 1) return askedAbout(tokens);
  const wheres = lasts.map((last) => wordsOf(found.match, last.place));
  // "it's not on the left", of what is on the left.
  if (lasts.length > 0 && wheres.includes('elsewhere') && /^(?:it|that) is not /.test(words)) return askedAbout(tokens);
  if (lasts.length === 0 || wheres.includes('elsewhere')) return undefined;
  const readings = gather(lasts, (last, i) => {
    const short = wheres[i] && shortFor(found.means, found.match, last, tokens, wheres[i] as readonly string[]);
    const reading = short && read(short, { ...carry, last: last.id });
    return reading?.made.length === 1 ? reading : undefined;
  });
  const [whole] = readings;
  if (whole === undefined || readings.length < lasts.length) return askedAbout(tokens);
  const made = readings.flatMap((one) => one.made);
  const once = made.filter(({ body }, i) => made.findIndex((one) => JSON.stringify(one.body) === JSON.stringify(body)) === i);
  return asWhole({ ...whole, made: once }, (one) => withDegree(one, compared));
}
