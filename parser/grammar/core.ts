/**
 * When the words around a finding make it talk. A finding has a core: a name and a place in the mouth, or a name that is
 * ruled out. The stronger the core, the less the words around it count; what takes the name as its own object ("the hook on
 * the door") makes it talk, and so does an everyday name that stands alone among other words.
 */
import { conditions } from '../lexicon/conditions.ts';
import { light } from '../lexicon/fillers.ts';
import { timesOfYear } from '../lexicon/history.ts';
import { tradeStems } from '../lexicon/tradeNames.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import type { Clause } from './assemble.ts';
import type { Carry } from './carry.ts';
import type { Made } from './made.ts';
import type { RawPlace } from './places.ts';
import type { Roles } from './roles.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

export interface Around {
  readonly marks: readonly Mark[];
  readonly tokens: readonly Token[];
  readonly role: Roles['role'];
  readonly carry: Carry;
}

const lightWords = new Set(light);
const objectLinks = new Set([
  'on',
  'in',
  'into',
  'onto',
  'of',
  'at',
  'by',
  'for',
  'from',
  'to',
  'up',
  'over',
  'under',
  'near',
  'round',
  'around',
  'with',
  'through',
  'across',
  'between',
  'behind',
  'off',
  'down',
  'along',
  'against',
  'next',
  'outside',
  'inside',
  'beside',
]);
/** Parts of a head that everyone has and everyone speaks of. */
const ownHead = new Set(['head', 'face', 'eye', 'nostril', 'mouth', 'lips', 'poll', 'tongue', 'cheek', 'gums', 'mucosa', 'bars']);

const insideMouth = new Set(['tongue', 'gums', 'bars', 'cheek', 'mucosa', 'palate', 'lips']);

const textOf = ({ marks, tokens }: Around, at: number): readonly string[] => tokens.slice(marks[at]?.from, marks[at]?.to).map(({ t }) => t);
/** Words that name something else, less those that only hold a sentence together ("you", "when", "let"). */
const strangers = (around: Around, from: number, to: number): number =>
  around.role.slice(from, to).filter((r, i) => r === 'unknown' && !textOf(around, from + i).every((t) => lightWords.has(t))).length;
const unknowns = ({ role }: Around, from = 0, to = role.length): number => role.slice(from, to).filter((r) => r === 'unknown').length;

/** Nothing here names anything outside the record. */
export const onlyLight = (around: Around): boolean => strangers(around, 0, around.role.length) === 0;

/** A name of the trade alone, that nobody says of anything else. */
export const isTechnical = (said: string, strength: 'say' | 'withPlace' | 'absentSay'): boolean =>
  strength === 'say' && tradeWord.test(said);
const tradeWord = new RegExp(`(?:^| )(?:${tradeStems.join('|')})`);

/** `tooth`: a tooth, a row, a group of one jaw or side. `region`: a named part. `loose`: a side, a jaw, a whole mouth. */
type Standing = 'tooth' | 'region' | 'own head' | 'loose' | 'none';
function standingOf(raws: readonly RawPlace[]): Standing {
  if (
    raws.some(
      ({ codes, jaw, side, positions, row, quadrants, plural }) =>
        codes !== undefined ||
        quadrants !== undefined ||
        (jaw !== undefined && (side !== undefined || positions !== undefined || row)) ||
        (positions !== undefined && (side !== undefined || plural)),
    )
  )
    return 'tooth';
  const regions = raws.flatMap(({ region, side }) =>
    region === undefined
      ? []
      : [
          ownHead.has(region) && !(side !== undefined && ['cheek', 'nostril', 'eye', 'bars'].includes(region))
            ? ('own head' as const)
            : ('region' as const),
        ],
  );
  return regions.includes('region') ? 'region' : (regions[0] ?? (raws.length > 0 ? 'loose' : 'none'));
}

/** Behind a small word of place: who or where it is, or when ("an ulcer here in october"). */
const noObject: ReadonlySet<string> = new Set([
  ...['here', 'there', 'opening', 'closing', 'palpation', 'pressure', 'examination'],
  ...['mare', 'gelding', 'stallion', 'pony', 'horse', 'lad', 'fella'],
  ...timesOfYear,
]);

/** "a hook over the stable door": a small word of place right behind the name, then something that is no place in a mouth. */
function takenAsObject(around: Around, at: number): boolean {
  let linked = false;
  for (let i = at + 1; i < around.role.length; i += 1) {
    const words = textOf(around, i);
    // "no caps left to take off": what remains, and what for.
    if (words.includes('left')) return false;
    if (around.role[i] === 'glue') {
      linked ||= words.some((t) => objectLinks.has(t));
      continue;
    }
    return linked && around.role[i] === 'unknown' && !words.every((t) => noObject.has(t));
  }
  return false;
}

/** "the wolf hound": the name is half of another thing's. */
export const partOfAnother = (around: Omit<Around, 'carry'>, at: number): boolean =>
  around.role[at + 1] === 'unknown' &&
  around.tokens[around.marks[at]?.to ?? -1]?.t !== undefined &&
  !lightWords.has(around.tokens[around.marks[at]?.to ?? -1]?.t as string) &&
  ['the', 'a', 'that', 'this', 'his', 'her', 'my', 'your'].includes(around.tokens[(around.marks[at]?.from ?? 0) - 1]?.t ?? '');

/** "there's a nasty hook here": all that is not known stands between the article and the name. */
function onlyDescribed(around: Around, at: number): boolean {
  let from = at;
  while (from > 0 && (around.role[from - 1] === 'unknown' || around.role[from - 1] === 'mod')) from -= 1;
  const opens = textOf(around, from - 1).at(-1);
  return (opens === 'a' || opens === 'an') && unknowns(around) === unknowns(around, from, at) && unknowns(around, from, at) <= 2;
}

/** "no steps, no lift": in a list of what is not there stands something that no mouth has. */
const ruledOutBesides = (around: Around): boolean =>
  around.role.some(
    (r, i) =>
      r === 'cue' &&
      textOf(around, i).join(' ') === 'no' &&
      around.role[i + 1] === 'unknown' &&
      textOf(around, i + 1).some((t) => !lightWords.has(t)),
  );

/** From the pause before these marks to the one behind them. */
function stretchOf({ marks, tokens }: Around, from: number, to: number): readonly [number, number] {
  const pause = ({ to: end }: Mark): boolean => tokens[end - 1]?.ends === true;
  const end = marks.findIndex((mark, i) => i >= to && pause(mark));
  return [marks.slice(0, from).findLastIndex(pause) + 1, end < 0 ? marks.length : end + 1];
}

/** Whether another horse, or horses altogether, are spoken of up to the nearest pauses. */
function others({ marks, tokens }: Around, at: number): boolean {
  const pause = ({ to }: Mark): boolean => tokens[to - 1]?.ends === true;
  const from = marks.slice(0, at).findLastIndex(pause) + 1;
  const end = marks.findIndex((mark, i) => i >= at && pause(mark));
  return marks
    .slice(from, end < 0 ? marks.length : end + 1)
    .some(({ terms }) => terms?.some((t) => t.k === 'talk' && (t.other || t.general)));
}

const speakers =
  /(?:^| )(?:(?:i|we) (?:am|are|'m|was|were)|my(?: \w+){0,2}|the other (?:one|horse|pony|mare) (?:is|was))$|(?:^|, )(?:that|the|this) other (?:one|horse|pony|mare)(?: is| was| has been)?$/;
const ofSpeaker = ({ marks, tokens }: Around, at: number): boolean =>
  speakers.test(
    tokens
      .slice(0, marks[at]?.from)
      .map(({ t }) => t)
      .join(' '),
  );

/** "choke on the tractor", "eats on the left of the stable": names that a thing behind them takes for its own. */
const ofPart: ReadonlySet<string> = new Set(['choke', 'one-sided-chewing']);

/** Which of the findings of one clause are believed among the words that stand around them. */
export function believed(clause: Clause, made: readonly Made[], said: string, around: Around): readonly Made[] {
  const { strength, plural, id } = clause.head.condition as NonNullable<Clause['head']['condition']>;
  const entry = conditions[id] as ConditionEntry;
  const at = clause.head.mark;
  // "I'm slow eating these days", "my breath's bad": the speaker's.
  if (entry.group === 'horse' && ofSpeaker(around, at)) return [];
  if (unknowns(around) === 0) return made;
  const technical = isTechnical(said, strength);
  const places = clause.placings.flatMap((p) => p.marks);
  const [from, to] = [Math.min(at, ...places), Math.max(at, ...places)];
  // "well that's nice and easy, all four rows normal": what is said before a pause is no part of it.
  const [begins, ends] = stretchOf(around, from, to);
  const all = unknowns(around, begins, ends);
  const inside = strangers(around, from, to);
  const outside = strangers(around, begins, ends) - inside;
  // What is said of the whole horse has no place: a side beside it is a rein's.
  const standing = entry.group === 'horse' ? 'none' : standingOf(clause.placings.map(({ raw }) => raw));
  const codes = clause.placings.some(({ raw }) => raw.codes !== undefined);
  const inMouth = clause.placings.every(({ raw }) => raw.region === undefined || insideMouth.has(raw.region));
  // "no pain on palpation of the left masseter": what comes before the place is part of the finding.
  const object = takenAsObject(around, at) && !places.some((p) => p > at);
  const ruledOut = clause.scopes.includes('absent') && clause.cues.some((cue) => cue < at && strangers(around, cue + 1, at) === 0);
  // "my daughter has a gap between her front teeth": of someone else.
  const theirs = around.marks.some(
    (mark, i) =>
      i < at &&
      mark.terms?.some((t) => t.k === 'talk' && t.other) &&
      ['has', 'had', 'have', 'got', 'is'].includes(around.tokens[mark.to]?.t ?? '') &&
      around.role.slice(i + 1, at).every((r) => r === 'glue' || r === 'mod'),
  );
  // "slides over fourteen mil to the left but barely six to the right": of nothing else in a stable is that measured.
  const measured = entry.measure === 'excursion' && clause.mods.some((m) => around.marks[m]?.measure?.unit !== undefined);
  // "young horses don't get hooks": of other horses, or of none.
  const elsewhere = others(around, at);
  const anotherHorse = elsewhere && around.marks.some(({ terms }) => terms?.some((t) => t.k === 'talk' && t.horse));
  return made.filter(({ body, doubts }) => {
    if (body?.kind !== 'finding' || measured) return true;
    if ((!codes && theirs) || anotherHorse) return false;
    if (codes || doubts.some(({ doubt }) => doubt === 'no-such-tooth')) return inside <= (strength === 'withPlace' ? 1 : 4);
    if (elsewhere && !codes && (ruledOut || standing === 'none' || standing === 'loose')) return false;
    if (ruledOut && (plural || technical || (strength === 'say' && all <= 1)) && strength !== 'absentSay')
      return technical || (!object && !ruledOutBesides(around));
    if (standing === 'tooth' || standing === 'region')
      return inside <= (technical ? 4 : strength === 'say' ? 2 : 0) && (technical || !object) && (strength === 'say' || outside <= 3);
    // "ulcer on the tip of the tongue, healing nicely": inside the mouth, and named outright right beside it.
    if (
      standing === 'own head' &&
      entry.group === 'soft' &&
      strength === 'say' &&
      clause.placings.length > 0 &&
      inMouth &&
      inside === 0 &&
      outside <= 2 &&
      !object
    )
      return true;
    if (standing === 'own head' || standing === 'loose')
      return technical
        ? inside <= 2 && !object
        : body.place !== null && !object && inside === 0 && outside === 0 && all <= 2 && (inMouth || onlyLight(around));
    // "the other horse was quidding": of someone else.
    if (around.marks.some((mark) => mark.terms?.some((t) => t.k === 'talk' && t.other))) return false;
    if (technical || (strength === 'say' && entry.group === 'horse' && (!ofPart.has(id) || !object)))
      return !partOfAnother(around, at) && strangers(around, 0, around.role.length) <= (technical ? 5 : 3);
    if (around.carry.half !== undefined && all <= 1) return true;
    return strength === 'say' && entry.group !== 'bite' && entry.group !== 'horse' && onlyDescribed(around, at);
  });
}
