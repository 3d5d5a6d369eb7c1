/** Work told by where it was done or refused, and no more: "and one oh six the same", "owner declined the left one". */
import type { Item, Place } from '../contract/item.ts';
import { procedureOf } from '../lexicon/handling.ts';
import type { ProcedureId } from '../lexicon/procedures.ts';
import type { Alone } from './alone.ts';
import type { Placing } from './groups.ts';
import type { Made, MadeDoubt, TreatmentBody } from './made.ts';
import { resolvePlace, type Resolved } from './resolve.ts';
import { glueMarks, noLess, sideOfLast } from './sameAgain.ts';
import type { Mark } from './scan.ts';

type Treatment = Extract<Item, { kind: 'treatment' }>;

const again = /\b(?:same|ditto|likewise|identical)\b|\b(?:as well|too|also)$/;
/** "and the lowers", behind work that named its own place. */
const goesOn = /^(?:and|also|plus|then) (?!(?:not?|the rest|that|it)\b)/;
/** "same again off four oh eight", "did the same on one oh six": these say no more than that it was done. */
const idle = ({ terms }: Mark): boolean =>
  terms?.every((t) => t.k === 'work' && (t.term.as === 'off' || (t.term.as === 'state' && t.term.state === 'done'))) === true;
const kindsOf = (place: Place | null): readonly ('T' | 'S' | 'R' | 'G')[] =>
  place === null || 'teeth' in place ? ['T'] : 'spaces' in place ? ['S'] : 'rows' in place ? ['R', 'T'] : ['G'];

/** "reduced two oh six by hand", "and one oh six the same": the work said last, there too. How much was taken off only where it was no less. */
export function sameWork(
  last: Treatment,
  words: string,
  placings: readonly Placing[],
  input: Alone,
  mods: readonly number[],
): readonly Made[] | undefined {
  const meant = again.test(words) || (goesOn.test(words) && last.state === 'done' && last.how.place !== 'carried');
  if (placings.length === 0 || !meant || !mods.every((m) => idle(input.marks[m] as Mark))) return undefined;
  const { place, doubts } = there(last, placings, input);
  if (place === null || doubts.length > 0 || JSON.stringify(place) === JSON.stringify(last.place)) return undefined;
  const { procedure, state, instrument, by, waterCooled, amountMm, amountBasis } = last;
  const much = amountMm !== undefined && (noLess.test(words) || /\bsame (?:again )?off\b/.test(words));
  const body: TreatmentBody = {
    kind: 'treatment',
    procedure,
    state,
    place,
    ...(instrument ? { instrument } : {}),
    ...(by ? { by } : {}),
    ...(waterCooled !== undefined ? { waterCooled } : {}),
    ...(much ? { amountMm, ...(amountBasis ? { amountBasis } : {}) } : {}),
  };
  const carried = Object.keys(body).filter((field) => field !== 'kind' && field !== 'place');
  return [
    {
      body,
      marks: [...input.places, ...mods, ...glueMarks(input)],
      how: Object.fromEntries(carried.map((field) => [field, 'carried' as const])),
      rules: ['same work'],
      doubts: procedure === 'extract' && state === 'done' ? [irreversible(place)] : [],
    },
  ];
}
const irreversible = (place: Place): MadeDoubt => ({
  doubt: 'irreversible',
  place,
  why: 'Taking a tooth out cannot be undone: it counts once you have said yes.',
  source: 'usual care; local law decides who may extract',
});
const there = (last: Treatment, placings: readonly Placing[], { missing }: Alone): Resolved => {
  const bySide = last.place ? sideOfLast(last, placings, missing) : { place: null, doubts: [] };
  return bySide.place ? bySide : resolvePlace(placings, { kinds: kindsOf(last.place), missing });
};

type FollowUp = Extract<Item, { kind: 'follow-up' }>;
/** "monitor one oh six", "and three oh nine": what comes next, there too. */
export function sameNext(
  last: FollowUp,
  words: string,
  placings: readonly Placing[],
  input: Alone,
  mods: readonly number[],
): readonly Made[] | undefined {
  const meant = again.test(words) || (goesOn.test(words) && last.how.place !== 'carried');
  if (placings.length === 0 || !meant || mods.length > 0 || !last.place || 'region' in last.place || last.state !== undefined)
    return undefined;
  const { place, doubts } = resolvePlace(placings, { kinds: ['T', 'R'], missing: input.missing });
  if (place === null || doubts.length > 0 || JSON.stringify(place) === JSON.stringify(last.place)) return undefined;
  const { action, after } = last;
  return [
    {
      body: { kind: 'follow-up', action, place, ...(after ? { after } : {}) },
      marks: [...input.places, ...glueMarks(input)],
      how: { action: 'carried' as const, ...(after ? { after: 'carried' as const } : {}) },
      rules: ['same work'],
      doubts: [],
    },
  ];
}

/** "owner declined the left one", "she said no to two oh five": the work that was found to be needed there. */
export function declinedThere(placings: readonly Placing[], input: Alone, mods: readonly number[]): readonly Made[] | undefined {
  const { marks, context, missing } = input;
  if (placings.length === 0 || mods.length === 0 || !mods.every((m) => isDeclined(marks[m] as Mark))) return undefined;
  const { place, doubts } = resolvePlace(placings, { kinds: ['T'], missing });
  const procedure = place && doubts.length === 0 && 'teeth' in place ? neededAt(place.teeth, context.items) : undefined;
  return procedure === undefined
    ? undefined
    : [
        {
          body: { kind: 'treatment', procedure, state: 'declined', place },
          marks: [...input.places, ...mods, ...glueMarks(input)],
          how: { procedure: 'carried' },
          rules: ['declined there'],
          doubts: [],
        },
      ];
}
const isDeclined = ({ terms }: Mark): boolean =>
  terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state === 'declined') === true;
/** What a finding that all of these teeth have takes; none where they have two that take other work. */
function neededAt(teeth: readonly string[], items: readonly Item[]): ProcedureId | undefined {
  const needed = new Set(
    items.flatMap((item) =>
      item.kind === 'finding' &&
      item.presence === 'present' &&
      item.when === 'now' &&
      item.place &&
      'teeth' in item.place &&
      holds(item.place.teeth, teeth)
        ? (procedureOf(item.condition) ?? [])
        : [],
    ),
  );
  return needed.size === 1 ? [...needed][0] : undefined;
}
const holds = (all: readonly string[], some: readonly string[]): boolean => some.every((tooth) => all.includes(tooth));
