/** What phrases are made of that say little by themselves, and how they are read as what they are short for. */
import type { Item } from '../contract/item.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import type { Carry } from './carry.ts';
import type { Made } from './made.ts';
import type { Reading } from './read.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

export type Finding = Extract<Item, { kind: 'finding' }>;

/** Where, beside where the last finding is. */
export const positions = 'six|seven|eight|nine|ten|eleven';
export const place =
  '(?:(?<other>(?:the |its )?(?:other|opposite) (?:side|one|tooth|number)|the other|(?:the )?(?:one )?opposite)' +
  '|(?:the )?(?<side>left|right)(?<noun>(?: hand)?(?: (?:side|one))?)' +
  '|(?<facing>(?:the )?(?:(?:bottom|lower|upper|top|opposing)(?: (?:one|tooth|row))?|(?:its )?opposite number (?:below|above)|one (?:below|above|underneath)|below|above|underneath))(?: (?:it|that(?: one)?))?' +
  '|(?<back>(?:the )?(?:next (?:one|tooth) (?:along|back|down|up|behind)|(?:one|tooth) (?:behind|(?:further )?back)|one further along))(?: (?:it|that(?: one)?))?' +
  '|(?<front>(?:the )?(?:next (?:one|tooth) (?:forward|forwards)|(?:one|tooth) (?:in front(?: of)?|(?:further )?forward)))(?: (?:it|that(?: one)?))?' +
  '|(?<next>(?:the )?next(?: (?:one|tooth))?)' +
  `|(?:the )?(?<number>${positions})(?: one)?)`;
export const at = '(?:(?:over |down |up )?(?:on|at|in|for|with|to) (?:the )?)?';
export const how = '(?:(?:the )?(?:exactly|exact|very|just|much|pretty much|about|more or less) )?';
export const lead = '^(?:(?:and|but|so|yeah|yes|now|then|okay|well) )*';
export const tail = '(?: (?:too|as well|also|though|either|then|again))*$';
export const degree = '(?:a bit |bit |much |slightly |a little |even |far |quite )*';
export const compared =
  '(?<compared>worse|bigger|smaller|larger|deeper|wider|narrower|shallower|milder|longer|shorter|less|(?:not|nothing like) (?:as|so|quite as|quite so) (?:bad|big|deep|large|long|wide|tall|severe|marked))';
export const figure =
  '(?:half|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|twenty|\\d+(?:\\.\\d+)?)';
const sized = (unit: string): string =>
  `(?<amount>(?:(?:about|only|more like|maybe|nearer) )*${figure}(?: (?:to|or|point|and a) ${figure})?${unit})`;
const unit = ' (?:mil|mils|mm|millimetres?|millimeters?|centimetres?|centimeters?|cm)';
/** With its unit, without it, and either way. */
export const amount = sized(unit);
export const bareAmount = sized('');
export const anyAmount = sized(`(?:${unit})?`);
/** The number that an amount ends with, where it is one number. */
export const amountIn = (amount: string): number | undefined => {
  const word = amount
    .replace(/ (?:mil.*|mm|cm|cent.*)$/, '')
    .split(' ')
    .at(-1) as string;
  return digitWords[word] ?? teenWords[word] ?? (Number.isNaN(Number(word)) ? undefined : Number(word));
};

/** Reads what a phrase is short for, behind what was said before. */
export type ReadShort = (tokens: readonly Token[], carry: Carry) => Reading;

/** The phrase as other words, each of which stands for all that was heard. */
export const standingFor = (
  tokens: readonly Token[],
): { readonly words: (...all: readonly string[]) => Token[]; readonly where: (all: readonly string[]) => Token[] } => {
  const heard = tokens.map(({ word }) => word);
  const put = (t: string): Token => ({ t, word: heard[0] as number, heard });
  return { words: (...all) => all.map(put), where: (all) => all.map((t) => ({ ...put(t), carried: true })) };
};
/** Those words of the phrase that stand in a part of its text. */
export const within = (tokens: readonly Token[], text: string, part: string): readonly Token[] => {
  const from = text.slice(0, text.indexOf(part)).split(' ').length - 1;
  return tokens.slice(from, from + part.split(' ').length);
};

/** All words of the phrase are of each thing made. */
export function asWhole(reading: Reading, put: (made: Made) => Made = (made) => made): Reading {
  const marks = reading.marks.map((_, m) => m);
  return { ...reading, made: reading.made.map((made) => put({ ...made, marks })) };
}

/** What the words mean here is asked. */
export function askedAbout(tokens: readonly Token[]): Reading {
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
/** Nothing is made of it. */
export const asTalk = (tokens: readonly Token[]): Reading => ({ ...askedAbout(tokens), made: [] });
