/** A place alone that says of itself what was said before: "same on the other side", "and three oh six", "nothing like that on the right", "two oh six no". */
import type { Item, Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import type { Alone } from './alone.ts';
import type { Placing } from './groups.ts';
import { detailsOf, sizedOrNot } from './findings.ts';
import { where } from './lists.ts';
import type { FindingBody, Made, MadeDoubt } from './made.ts';
import { resolvePlace, wantedBy, type Resolved } from './resolve.ts';
import { areNeighbours, otherSide, positionOf } from './teeth.ts';

type Finding = Extract<Item, { kind: 'finding' }>;

/** "two oh six no", "nothing like that on the right": it is not there. */
const notThere = /\b(?:no|none|not|nope|has not|does not|is not)$|\b(?:nothing|none) (?:like that|of that|there|of it)\b/;
/** "not on the left", "but not two oh six": it is not there; where the last one is, that is no other place. */
const notAlso = /^(?:(?:but|and|just|though) )*not (?!(?:that|this|it|just|only|so)\b)/;
/** "not on one oh seven and one oh eight": neither; "not one oh seven, two oh seven" sets one against the other. */
const listed = / (?:and|or|to|through) /;
const noneThere = /^(?:but |and )*none (?:on|at|in|behind|between|in front of|of them (?:on|at|behind|between))\b/;
/** "there's one on the right", "but there is on two oh six": of what was ruled out elsewhere. */
const thereAfterAll =
  /^(?:but |and |just |only )*(?:there (?:is|are) |(?:he|she|it) (?:has|does have) (?:got )?|found |got )?(?:one|some|two|three)? ?(?:up |down )?(?:on|at|in|along|around|behind|between) |^(?:but )?there (?:is|are) (?:one |some |two )?|(?:has|does|is|has one|has got one|there is|there is one)$/;
const oneOfThem = /\b(?:one|some|two|three|but)\b/,
  aTooth = /(?:one|two|three|four) (?:oh|o|zero|ten|eleven)/g;
/** "and three oh six", "two oh eight too" */
const another = /^(?:and|also|plus|as well as|another|ditto|likewise|one more|and another)\b|\b(?:as well|too|also|likewise|ditto)\b/;

/** @returns undefined where the words do not repeat the finding; nothing made where they do and name no place */
export function sameAgain(
  last: Finding,
  words: string,
  placings: readonly Placing[],
  input: Alone,
  mods: readonly number[],
): readonly Made[] | undefined {
  const same = /\b(?:same|identical)\b/.test(words);
  // "same as last time" tells how it is.
  if (placings.length === 0) return same && mods.length === 0 ? [] : undefined;
  const again = (presence: Finding['presence'], of = last, own = mods): readonly Made[] =>
    repeated(of, input, own, sideOfLast(last, placings, input.missing), presence);
  if (same) return again('present');
  // "two oh six no" is no other tooth that has it: what rules out is looked for first.
  if (notThere.test(words)) return again('absent', last, []);
  const counted =
    oneOfThem.test(words.replace(aTooth, '')) ||
    /(?:has|does|there is)$|^(?:but |and )*there (?:is|are) (?:on|at|in|behind|between) /.test(words);
  if (last.presence === 'absent' && counted && thereAfterAll.test(words) && !/\b(?:no|not|none|nothing|never)\b/.test(words))
    return again('present', { ...last, presence: 'present' });
  if (
    notAlso.test(words) &&
    placings.length === 1 &&
    ((placings[0]?.raw.codes?.length ?? 1) === 1 || listed.test(words) || isGap(placings[0]?.raw.codes ?? [], last))
  ) {
    const { place } = sideOfLast(last, placings, input.missing);
    if (place !== null && JSON.stringify(place) !== JSON.stringify(last.place)) return again('absent', last, []);
  }
  if (noneThere.test(words)) return again('absent', last, []);
  const fits = placings.every(({ raw }) => raw.region === undefined || conditions[last.condition].places.some((kind) => kind === 'G'));
  return fits && another.test(words) ? again(last.presence) : undefined;
}

/** "not at three ten three eleven", of what is at a gap: one gap, and no tooth set against another. */
export const isGap = (codes: readonly string[], last: Item): boolean =>
  codes.length === 2 && areNeighbours(codes[0] as string, codes[1] as string) && 'place' in last && !!last.place && 'spaces' in last.place;
const sides = ['left', 'right'] as const;
/** "nothing like that on the right": the place of the last finding, on the side named. */
export function sideOfLast(last: Item, placings: readonly Placing[], missing: ReadonlySet<string>): Resolved {
  const side = placings[0]?.raw.side;
  const bare = side !== undefined && placings[0]?.raw.jaw === undefined && placings[0]?.raw.region === undefined;
  if (!('place' in last) || !last.place)
    return last.kind === 'finding' ? resolvePlace(placings, wantedBy(last.condition, missing)) : { place: null, doubts: [] };
  if (bare && side === 'both' && last.place !== null) {
    const { place } = last;
    if ('region' in place) return { place: { region: place.region, side }, doubts: [] };
    if ('teeth' in place) return { place: { teeth: [...new Set(place.teeth.flatMap((t) => [t, otherSide(t)]))].sort() }, doubts: [] };
    if ('spaces' in place)
      return {
        place: {
          spaces: place.spaces.flatMap(([a, b]): [string, string][] => [
            [a, b],
            [otherSide(a), otherSide(b)],
          ]),
        },
        doubts: [],
      };
    if ('rows' in place)
      return {
        place: {
          rows: [
            ...new Set(
              place.rows.flatMap((row) =>
                row.endsWith('incisors') ? [row] : sides.map((one) => row.replace(/(left|right)$/, one) as typeof row),
              ),
            ),
          ].sort(),
        },
        doubts: [],
      };
  }
  if (bare && last.place !== null) {
    const is = (code: string): boolean => (side === 'left') === ['2', '3', '6', '7'].includes(code[0] as string);
    if ('region' in last.place) return { place: { region: last.place.region, side }, doubts: [] };
    if ('teeth' in last.place)
      return { place: { teeth: [...new Set(last.place.teeth.map((t) => (is(t) ? t : otherSide(t))))].sort() }, doubts: [] };
    if ('rows' in last.place)
      return {
        place: {
          rows: [
            ...new Set(last.place.rows.map((row) => (row.endsWith('incisors') ? row : (row.replace(/(left|right)$/, side) as typeof row)))),
          ].sort(),
        },
        doubts: [],
      };
    if ('spaces' in last.place)
      return {
        place: { spaces: last.place.spaces.map(([a, b]) => (is(a) ? [a, b] : [otherSide(a), otherSide(b)]) as [string, string]) },
        doubts: [],
      };
  }
  return last.kind === 'finding' ? resolvePlace(placings, wantedBy(last.condition, missing)) : { place: null, doubts: [] };
}

function repeated(last: Finding, input: Alone, mods: readonly number[], found: Resolved, presence: Finding['presence']): readonly Made[] {
  const { places } = input;
  const details = detailsOf(last.condition, mods, input.marks, input.tokens, -1);
  const kept = presence === 'absent' ? {} : keptFrom(endsKept(last, found.place), input, details);
  const body: FindingBody = {
    kind: 'finding',
    condition: last.condition,
    presence: presence === 'absent' ? 'absent' : last.presence,
    when: last.when,
    place: found.place,
    ...kept,
    ...said(details),
  };
  const marks = [...places, ...mods, ...glueMarks(input)];
  if (body.presence === 'absent' && body.measures !== undefined)
    return [{ marks, rules: ['same again', 'two readings'], doubts: [sizedOrNot(body)] }];
  const how = {
    condition: 'carried' as const,
    ...Object.fromEntries(Object.keys(kept).map((field) => [field, 'carried' as const])),
  };
  const doubts = found.doubts.map(({ doubt, rule, readings }): MadeDoubt => ({
    doubt,
    condition: last.condition,
    ...(rule ? { rule } : {}),
    ...(readings ? { readings: readings.map((place) => ({ label: '', bodies: [{ ...body, place }] })) } : {}),
  }));
  return [{ body, marks, how, rules: ['same again'], doubts }];
}
/** "hook on one oh six, front edge", "four eleven's got one too": at which end of the tooth holds for the same tooth of another row. */
function endsKept(last: Finding, place: Place | null): Finding {
  const at = (of: Place | null): string => (of && 'teeth' in of ? [...new Set(of.teeth.map(positionOf))].sort().join() : '');
  const qualifiers = last.qualifiers?.filter((one) => one !== 'rostral' && one !== 'caudal');
  return qualifiers === undefined || at(last.place) === at(place)
    ? last
    : { ...last, qualifiers: qualifiers.length > 0 ? qualifiers : undefined };
}
export const noLess = /\b(?:exact(?:ly)?|very) (?:the )?same\b|\bidentical\b/;
/**
 * Of what kind it is holds there too; how bad it is where the words are "the same" and say nothing else of it ("lower left the same");
 * its size and grade only where they say that it is no less ("the exact same on two oh six").
 */
function keptFrom(
  { qualifiers, surfaces, severity, severitySaid, measures, grade }: Finding,
  { tokens }: Alone,
  own: ReturnType<typeof detailsOf>,
): Partial<FindingBody> {
  const words = tokens.map(({ t }) => t).join(' ');
  const plain = /\bsame\b|\bidentical\b/.test(words) && !own.severity && !own.severitySaid && own.measures.length === 0 && !own.grade;
  return {
    ...(qualifiers ? { qualifiers } : {}),
    ...(surfaces ? { surfaces } : {}),
    ...(plain && severity ? { severity } : {}),
    ...(plain && severitySaid ? { severitySaid } : {}),
    ...(plain && noLess.test(words) && measures ? { measures } : {}),
    ...(plain && noLess.test(words) && grade ? { grade } : {}),
  };
}

/** Small words and turns, which are part of what was said. */
export const glueMarks = ({ role }: Pick<Alone, 'role'>): readonly number[] => where(role, (r) => r === 'glue' || r === 'cue');

/** What was said of a finding, without what was not. */
export const said = ({ severity, severitySaid, grade, measures, surfaces, qualifiers, change }: ReturnType<typeof detailsOf>) => ({
  ...(severity ? { severity } : {}),
  ...(severitySaid ? { severitySaid } : {}),
  ...(grade ? { grade } : {}),
  ...(measures.length > 0 ? { measures } : {}),
  ...(surfaces.length > 0 ? { surfaces } : {}),
  ...(qualifiers.length > 0 ? { qualifiers } : {}),
  ...(change ? { change } : {}),
});
