/** Words of the trade that no rule could read: they ask for a person. Talk around them does not. */
import type { Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { otherNumbers } from '../lexicon/talk.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { rowTeeth } from '../lexicon/teeth.ts';
import { isTechnical, partOfAnother } from './core.ts';
import { digit } from './numbers.ts';
import { quadrantsOf } from './places.ts';
import type { Reading } from './read.ts';
import type { Mark } from './scan.ts';
import { supposed } from './supposed.ts';
import { positionOf, quadrantOf } from './teeth.ts';
import { timeAlone } from './followUps.ts';
import { isOh } from './tokens.ts';

/** What a finding or work is made of, beside its name: lost beside an item of the same breath, it would be lost in silence. */
const isPart = (mark: Mark): boolean =>
  mark.measure?.unit !== undefined ||
  mark.grade?.announced === true ||
  mark.pulpHorn !== undefined ||
  mark.place?.codes !== undefined ||
  outright(mark);
const outright = ({ terms }: Mark): boolean =>
  terms?.some((t) => (t.k === 'condition' && t.strength === 'say') || (t.k === 'work' && t.term.as === 'procedure' && t.term.done)) ??
  false;

/** "mobility of six on two ten", "two oh six only two": a number that counts nothing, right behind a finding or its place, was a size or a grade. */
function isFigure({ marks, tokens, made, takenBack }: Reading, at: number): boolean {
  const mark = marks[at] as Mark;
  if (
    takenBack.length > 0 ||
    tokens[mark.to]?.t === 'call' ||
    typeof mark.number !== 'number' ||
    made.some(({ body }) => body?.kind === 'finding' && body.condition === 'body-condition')
  )
    return false;
  const small = ({ terms, place }: Mark): boolean =>
    place === undefined && (terms ?? []).length > 0 && (terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler');
  const before = marks.slice(0, at).findLast((m) => !small(m));
  const after = marks[at + 1];
  const led = !['in', 'for', 'at', 'past', 'to', 'by', 'with', 'or'].includes(tokens[mark.from - 1]?.t ?? '');
  return (
    led &&
    before !== undefined &&
    (before.place !== undefined ||
      before.terms?.some((t) => t.k === 'condition' || t.k === 'surface' || t.k === 'qualifier') === true ||
      before.measure !== undefined) &&
    (after === undefined || tokens[mark.to - 1]?.ends === true || ['on', 'at', 'now', 'today'].includes(tokens[mark.to]?.t ?? ''))
  );
}

/** Teeth that a general word names and that nothing made is about: "..., nines on the top" behind tens that were read. One that only led to a place of its own says nothing more. */
function isElsewhere({ made, tokens }: Reading, { place, from, to }: Mark): boolean {
  if (
    place === undefined ||
    place.codes !== undefined ||
    place.region !== undefined ||
    !(
      place.positions !== undefined ||
      (place.jaw !== undefined && (place.side !== undefined || place.row === true || place.plural === true))
    )
  )
    return false;
  // "behind the incisors", "the corners off one oh six": part of where something else is.
  if (
    tokens.slice(Math.max(0, from - 2), from).some(({ t }) => t === 'behind' || t === 'opposite') ||
    ['off', 'of'].includes(tokens[to]?.t ?? '')
  )
    return false;
  const quadrants = place.quadrants ?? quadrantsOf(place);
  const named = (code: string): boolean =>
    (quadrants.length === 0 || quadrants.includes(((quadrantOf(code) - 1) % 4) + 1)) &&
    (place.positions?.includes(positionOf(code)) ?? true);
  return made.every(
    ({ body, doubts }) =>
      doubts.length === 0 &&
      (body?.kind === 'finding' || (body?.kind === 'treatment' && place.row === true)) &&
      body.place !== null &&
      !teethAt(body.place).some(named),
  );
}
const teethAt = (place: Place): readonly string[] =>
  'teeth' in place
    ? place.teeth
    : 'spaces' in place
      ? place.spaces.flat()
      : 'rows' in place
        ? place.rows.flatMap((row) => rowTeeth[row])
        : [];

/** "no waves, and he's just the ordinary points on the outside of the uppers": beside what was read, a finding with its place, of which nothing came. */
function isLostFinding({ marks, tokens }: Reading, at: number, claims: ReadonlyMap<number, string>): boolean {
  const mark = marks[at] as Mark;
  const lost = (m: Mark): boolean => tokens.slice(m.from, m.to).every(({ word }) => !claims.has(word));
  if (!mark.terms?.some((t) => t.k === 'condition') || !lost(mark)) return false;
  const begins = marks.slice(0, at).findLastIndex((m) => tokens[m.to - 1]?.ends === true) + 1;
  const end = marks.findIndex((m, i) => i >= at && tokens[m.to - 1]?.ends === true);
  return marks.slice(begins, end < 0 ? marks.length : end + 1).some((m) => m !== mark && m.place !== undefined && amongTeeth(m) && lost(m));
}

/** Indices of unread trade words; in a phrase with words from outside the trade, of which nothing was made, only those that nobody says of anything else. */
export function unreadIn(reading: Reading, claims: ReadonlyMap<number, string>): readonly number[] {
  // "twelve months": how long, and of what is not said.
  if (reading.made.length === 0 && timeAlone(reading.tokens))
    return reading.tokens.map(({ word }) => word).filter((word) => !claims.has(word));
  const talk = reading.unknown > 0;
  const clinical = reading.made.some(({ body }) => body?.kind === 'finding' || body?.kind === 'treatment');
  // "smaller than the one on one oh six": the tooth compared with is no place of a finding.
  const than = reading.tokens.findIndex(({ t }) => t === 'than');
  const may = supposed(reading.tokens);
  const theirs = reading.marks.some(({ terms }) => terms?.some((t) => t.k === 'talk' && (t.other || t.general)));
  const numbered = reading.tokens.some(({ t }) => numbers.has(t));
  const asks = (mark: Mark, i: number): boolean => {
    const code = mark.place?.codes !== undefined;
    // What may come to be is talk: it asks nobody.
    const certain = may[mark.from] !== true;
    if (clinical)
      return (
        ((isPart(mark) && (code || certain) && !(reading.role[i] === 'glue' && outright(mark))) ||
          isFigure(reading, i) ||
          isElsewhere(reading, mark) ||
          (certain && !theirs && isLostFinding(reading, i, claims))) &&
        (than < 0 || mark.from < than)
      );
    const head = certain && reading.role[i] === 'head';
    if (!talk) return code || (head && outright(mark));
    return (
      (certain && (!numbered || mark.place?.joined === 'between') && (saidAsTooth(reading, mark) || rowsOfBoth(reading, mark))) ||
      (certain && !theirs && reading.made.length === 0 && saidOfTeeth(reading, mark)) ||
      (head && !theirs && (ofTrade(reading, i) || reading.marks.some(amongTeeth)))
    );
  };
  return reading.marks.flatMap((mark, i) =>
    asks(mark, i)
      ? reading.tokens
          .slice(mark.from, mark.to)
          .map(({ word }) => word)
          .filter((word) => !claims.has(word))
      : [],
  );
}

const numbers: ReadonlySet<string> = new Set(otherNumbers);
/** "four eleven trimming off", "two oh nine looks dodgy": a tooth's number is a tooth, whatever the other words were meant to be; "at three ten" is a time. */
function saidAsTooth({ tokens }: Reading, { place, from, to }: Mark): boolean {
  const said = tokens.slice(from, to);
  // "at three ten three eleven": two of them are no hour.
  const time =
    (place?.codes ?? []).length < 2 &&
    ['at', 'by', 'till', 'until', 'before', 'after', 'past'].includes(tokens[from - 1]?.t ?? '') &&
    !said.some(({ t }) => isOh(t));
  return place?.codes !== undefined && said.some(({ t, carried }) => digit(t) !== undefined && !carried) && !time;
}

/** A group of teeth that names itself: "the uppers", "lower right", "the sixes". */
const amongTeeth = ({ place }: Mark): boolean =>
  place !== undefined &&
  (place.quadrants !== undefined ||
    place.row === true ||
    (place.positions !== undefined && (place.plural === true || place.jaw !== undefined)) ||
    (place.jaw !== undefined && (place.side !== undefined || place.plural === true)));

/** "did the top rows, the bottom rows will have to wait": rows of both jaws are of teeth. */
const rowsOfBoth = ({ marks }: Reading, { place }: Mark): boolean =>
  place?.row === true && place.jaw !== undefined && marks.some((mark) => mark.place?.row === true && mark.place.jaw !== place.jaw);

/** "three small teeth loose", "three small teeth left, one of them loose": what a tooth can be, said of teeth that are nobody's own. */
const saidOfTeeth = ({ tokens }: Reading, { terms, from }: Mark): boolean => {
  const verb = ['is', 'are', 'was', 'were', 'feels', 'feel'].includes(tokens[from - 1]?.t ?? '') ? from - 1 : from;
  const isTeeth = (at: number): boolean => ['tooth', 'teeth'].includes(tokens[at]?.t ?? '');
  const ofThem = tokens[verb - 2]?.t === 'of' && tokens[verb - 1]?.t === 'them';
  const named = ofThem ? tokens.findLastIndex((_, i) => i < verb && isTeeth(i)) : verb - 1;
  return (
    isTeeth(named) &&
    !tokens.slice(0, named).some(({ t }) => owned.has(t)) &&
    (terms ?? []).some((t) => t.k === 'condition' && (conditions[t.id] as ConditionEntry).places.includes('T'))
  );
};
const owned: ReadonlySet<string> = new Set(['my', 'your', 'our', 'their']);

/** A name that nobody says of anything else. */
function ofTrade(reading: Reading, at: number): boolean {
  const { from, to, terms } = reading.marks[at] as Mark;
  const said = reading.tokens
    .slice(from, to)
    .map(({ t }) => t)
    .join(' ');
  return !partOfAnother(reading, at) && (terms ?? []).some((t) => t.k === 'condition' && isTechnical(said, t.strength));
}
