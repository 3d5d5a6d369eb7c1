/**
 * "My back is sore today, two ten pocket", "overgrowth three oh eight, undo the buckle would you": what is talk by itself, between pauses, is no part
 * of what is found beside it. Set aside, and the rest is read as if it alone had been said.
 */
import { light } from '../lexicon/fillers.ts';
import { approving, besideTalk, leaningWords, ofWhatWasSaid, people, tagQuestion } from '../lexicon/talkBeside.ts';
import type { ItemBody, Made } from './made.ts';
import { saysWhere } from './breaths.ts';
import { partsBegin } from './pauses.ts';
import type { Reading } from './read.ts';
import { scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const lightWords: ReadonlySet<string> = new Set(light),
  leaning: ReadonlySet<string> = new Set(leaningWords),
  ofBefore: ReadonlySet<string> = new Set(ofWhatWasSaid),
  person: ReadonlySet<string> = new Set(people);

const everyday = ({ terms }: Mark): boolean => terms?.some(({ k }) => k === 'talk') === true;
const strange = ({ unknown, from, to }: Mark, tokens: readonly Token[]): boolean =>
  unknown === true && !tokens.slice(from, to).every(({ t }) => lightWords.has(t));
/** A tooth, a row, a part. A bare side, jaw or number says nothing yet where people are spoken of ("we'd lovely hay off the top field"); else it may be half of a tooth, misheard. */
const tells = ({ place, number }: Mark, ofPeople: boolean): boolean =>
  (place !== undefined && (!ofPeople || saysWhere(place))) || (number !== undefined && !ofPeople);
/** Says how much, which side of a tooth, or what was done. */
const details = ({ measure, grade, terms }: Mark): boolean =>
  measure !== undefined || grade !== undefined || terms?.some(({ k }) => detailed.has(k)) === true;
const detailed: ReadonlySet<string> = new Set(['qualifier', 'surface', 'severity', 'work']);
/** "that one", "flushed it": and not "one of these days". */
const points = (tokens: readonly Token[], marks: readonly Mark[]): boolean =>
  tokens.some(({ t, ends }, i) => leaning.has(t) && (ends === true || !marks.some((mark) => mark.from === i + 1 && mark.unknown)));
/** "canines, he's got all four": of those that were named. */
const allOfThem: ReadonlySet<string> = new Set(['three', 'four', 'six']);
const ofWhatWas = (tokens: readonly Token[]): boolean =>
  tokens.some(
    ({ t }, i) =>
      (ofBefore.has(t) && !(t === 'one' && tokens[i + 1]?.t === 'of')) || (t === 'all' && allOfThem.has(tokens[i + 1]?.t ?? '')),
  );
/** What is fine without a place: of a clock, a day, anything. */
const fine = ({ body }: Made): boolean => body?.kind === 'finding' && body.condition === 'abnormality' && body.place === null;

/** Nothing is made of it, nothing in it says where or how much, and it holds words that are not the trade's. */
function isTalk({ made, scanned: marks, tokens }: Reading): boolean {
  if (!made.every(fine) || ofWhatWas(tokens)) return false;
  if (marks.some(everyday)) return !marks.some(({ place }) => place?.codes);
  const others = marks.filter((mark) => strange(mark, tokens)).length;
  const ofPeople = tokens.some(({ t }) => person.has(t));
  if (marks.some((mark) => tells(mark, ofPeople))) return false;
  const plain = made.length === 0 && !marks.some(details);
  const asks = tagQuestion.test(tokens.map(({ t }) => t).join(' '));
  if (plain && asks) return true;
  if (others < MANY && !asks && points(tokens, marks)) return false;
  if (plain && person.has(tokens[0]?.t ?? '')) return true;
  const finding = marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength !== 'absentSay'));
  return others >= (asks || (plain && (finding || ofPeople)) ? 1 : 2);
}
/** So many everyday words are no part of what was found, whatever they seem to point at. */
const MANY = 3;

/** Findings where they are, and work: nothing is asked of it, and nothing is of the line before. */
const sure = ({ made }: Reading, anew: boolean): boolean =>
  made.length > 0 &&
  made.every(
    ({ body, how, doubts }) =>
      body !== undefined &&
      how?.place !== 'carried' &&
      doubts.every(({ doubt }) => doubt === 'irreversible') &&
      // "I was at a wedding Saturday, head's still sore": where nothing was found with the talk, it may be the talk's.
      (!anew || !everyones(body)),
  );

/** A head that is sore, what is fine or to be done without a place ("he'll be off with the rasp"): anybody's. */
const everyones = (body: ItemBody): boolean =>
  body.kind === 'treatment'
    ? body.place === null && body.state !== 'done'
    : body.kind === 'finding' &&
      (body.place === null ? body.condition === 'abnormality' : 'region' in body.place && body.place.region === 'head');

/**
 * @param words of the phrase, as heard
 * @param heard how they read with the talk in them
 * @param became words that tell what became of what was found, and are no talk
 * @param alone reads words as if nothing had been said before
 * @param read reads words as if they alone had been said
 */
export function talkAside(
  words: readonly string[],
  heard: Reading,
  tokens: readonly Token[],
  became: ReadonlySet<number>,
  alone: (words: readonly string[]) => Reading,
  read: (words: readonly string[]) => Reading,
): Reading {
  const begin = partsBegin(tokens);
  if (begin.length < 2 || heard.takenBack.length > 0) return heard;
  const { marks } = scan(tokens);
  if (!marks.some((mark) => everyday(mark) || strange(mark, tokens)) && !tokens.some(({ t }) => person.has(t))) return heard;
  const parts = begin.map((from, i) => words.slice(from, begin[i + 1]));
  const next = heard.made.filter(({ body }) => body?.kind === 'follow-up').map((one) => wordsOf(one, heard));
  const toDecide = heard.made
    .filter(
      ({ body }) =>
        body?.kind === 'treatment' && (body.procedure === 'radiograph' || body.procedure === 'oroscopy') && body.state !== 'done',
    )
    .map((one) => wordsOf(one, heard));
  // "mash for a week, recheck in a month": a part of its own of what comes next.
  const comesNext = (from: number, to = words.length): boolean =>
    next.some((own) => own.length > 0 && own.every((word) => word >= from && word < to)) ||
    // "wants a scope, she's not keen"
    toDecide.some((own) => own.some((word) => word >= from && word < to));
  const talk = parts.map(
    (part, i) => !became.has(begin[i] as number) && !comesNext(begin[i] as number, begin[i + 1]) && isTalk(alone(part)),
  );
  parts.forEach((part, i) => {
    const said = part.join(' ').toLowerCase().replace(/\W+$/, '');
    if (talk[i - 1] === true && (approving.test(said) || besideTalk.test(said))) talk[i] = true;
  });
  // "hook on two oh six, no, stand still, one oh six": what the "no" is said to, nobody can tell.
  const toWhom = talk.some((is, i) => is && i > 0 && /^no\W*$/i.test((parts[i - 1] as readonly string[]).join(' ')));
  if (toWhom || !talk.includes(true) || !talk.includes(false)) return heard;
  const kept = parts.flatMap((part, i) => (talk[i] === true ? [] : part.map((_, w) => (begin[i] as number) + w)));
  const rest = read(kept.map((word) => words[word] as string));
  return sure(rest, heard.made.length === 0) ? inPlace(rest, kept) : heard;
}

const wordsOf = ({ marks }: Made, reading: Reading): readonly number[] =>
  marks.flatMap((m) => {
    const { from, to } = reading.marks[m] ?? { from: 0, to: 0 };
    return reading.tokens.slice(from, to).map(({ word }) => word);
  });

/** The reading of some words of the phrase, at their places in it. */
const inPlace = (reading: Reading, kept: readonly number[]): Reading => ({
  ...reading,
  tokens: reading.tokens.map((token) => ({
    ...token,
    word: kept[token.word] as number,
    ...(token.heard ? { heard: token.heard.map((word) => kept[word] as number) } : {}),
  })),
  takenBack: reading.takenBack.map((word) => kept[word] as number),
});
