/** A finding said without its place leans on the place spoken before, and is marked as carried; with none to lean on it is half a finding. */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { positionOf as positionByName } from '../lexicon/places.ts';
import { rowTeeth } from '../lexicon/teeth.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { missingTeeth, standing, type Carry } from './carry.ts';
import { less } from './except.ts';
import { plainly, saidPlainly } from './findings.ts';
import type { FindingBody, Made } from './made.ts';
import type { Reading } from './read.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import { ruledOutLater } from './rules.ts';
import { sideOfLast } from './sameAgain.ts';
import { isUpper, positionOf } from './teeth.ts';

/** "lower incisors" ... "tartar on the corners": of a group those that lie in the rows or the group that waits; undefined where that says no less. A tooth that waits is one of its own. */
function inWaiting(teeth: readonly string[], place: Place | null | undefined): string[] | undefined {
  const around = !place
    ? []
    : 'teeth' in place && place.from === 'group'
      ? place.teeth
      : 'rows' in place
        ? place.rows.flatMap((row) => rowTeeth[row])
        : [];
  const inside = teeth.filter((tooth) => around.includes(tooth));
  return inside.length > 0 && inside.length < teeth.length ? inside : undefined;
}

/** "ulcer left cheek", "the right's clear": a side alone is that side of what was named, and no row. */
function otherSideOf({ places, marks }: Reading, last: Item | undefined): Place | undefined {
  const [at, ...more] = places;
  const raw = marks[at ?? -1]?.place;
  const side = raw && more.length === 0 && Object.keys(raw).every((key) => key === 'side') && (raw.side === 'left' || raw.side === 'right');
  const sided =
    last?.kind === 'finding' && last.place && ('rows' in last.place || ('region' in last.place && last.place.side !== undefined));
  const jaws = new Set(
    (last?.kind === 'finding' && last.place && 'teeth' in last.place ? last.place.teeth : []).map((tooth) =>
      isUpper(tooth) ? 'upper' : 'lower',
    ),
  );
  if (side && jaws.size === 1) return { rows: [`${[...jaws][0] as 'upper' | 'lower'}-${raw.side as 'left' | 'right'}`] };
  return side && sided ? (sideOfLast(last, [{ raw, marks: [] }], new Set()).place ?? undefined) : undefined;
}
const others = /\b(?:other|others|another|more|further|else|elsewhere|apart|except|either|rest|only|just)\b/;
/** "there's no hook actually", where one was recorded and nothing was done to it. */
const foundBefore = (body: FindingBody, { tokens }: Reading, { items }: Context): boolean =>
  body.condition !== 'abnormality' &&
  body.when === 'now' &&
  !others.test(tokens.map(({ t }) => t).join(' ')) &&
  items.some(
    (item, i) =>
      item.kind === 'finding' &&
      item.presence === 'present' &&
      item.when === 'now' &&
      item.condition === body.condition &&
      !items.slice(i + 1).some(({ kind }) => kind === 'treatment'),
  );

/** Where the one finding of that name is; 'asked' where there are several at places of their own. */
function foundByName({ marks: own }: Made, body: FindingBody, { marks, tokens }: Reading, { items }: Context): Place | 'asked' | undefined {
  const head = own.find((m) => marks[m]?.terms?.some((t) => t.k === 'condition' && t.id === body.condition && !t.plural));
  const which = head === undefined ? undefined : tokens[(marks[head]?.from ?? 0) - 1]?.t;
  if (which !== 'the' && which !== 'that') return undefined;
  const places = items.flatMap((item) =>
    item.kind === 'finding' && item.condition === body.condition && item.presence === 'present' && item.when === 'now' && item.place
      ? [item.place]
      : [],
  );
  const one = new Set(places.map((place) => JSON.stringify(place))).size;
  return one === 0 ? undefined : one === 1 || which === 'that' ? places.at(-1) : 'asked';
}

const goneAlone: ReadonlySet<string> = new Set(['gone', 'it', 'is', 'that', "that's", 'has', 'all', 'now']);
const here =
  /\b(?:over here|(?:on )?this side|on this one|in this row|along here|in it|in there)\b|^(?:(?:and|but|so|no) )*(?:it|that one|this one) (?:is|was) not\b|\bthere(?: (?:either|now|today|at all|though|anyway))?$/;
export function withCarriedPlace(reading: Reading, carry: Carry, context: Context): readonly Made[] {
  const waiting = carry.half !== undefined && carry.half.item === undefined;
  const said = reading.places.length > 0;
  const last = standing(context, carry.last);
  let settled = false;
  return reading.made.map((made) => {
    const body = made.body;
    if (
      waiting &&
      !settled &&
      body?.kind === 'finding' &&
      body.place !== null &&
      'teeth' in body.place &&
      body.place.from === 'group' &&
      !made.revises
    ) {
      const teeth = inWaiting(body.place.teeth, context.doubts.find(({ id }) => id === carry.half?.doubt)?.place);
      if (teeth) {
        settled = true;
        return {
          ...made,
          body: { ...body, place: { ...body.place, teeth } },
          how: { ...made.how, place: 'carried' as const },
          rules: [...made.rules, 'carried place'],
          settles: [...(made.settles ?? []), carry.half?.doubt as string],
        };
      }
    }
    const other = body?.kind === 'finding' && body.condition === 'abnormality' && !made.revises ? otherSideOf(reading, last) : undefined;
    if (other && body?.kind === 'finding' && body.place && 'rows' in body.place && body.place.rows.length === 2)
      return {
        ...made,
        body: { ...body, place: other },
        how: { ...made.how, place: 'carried' as const },
        rules: [...made.rules, 'carried place'],
      };
    // "there was an ulcer last time", "gone": what was found, and not the tooth.
    if (
      body?.kind === 'finding' &&
      body.condition === 'missing' &&
      !waiting &&
      !said &&
      last?.kind === 'finding' &&
      reading.tokens.every(({ t }) => goneAlone.has(t))
    )
      return { ...made, body: undefined, doubts: [{ doubt: 'no-condition' as const, place: last.place }] };
    if (body?.kind !== 'finding' || body.place !== null || made.revises || body.said !== undefined) return made;
    const entry = conditions[body.condition] as ConditionEntry;
    if (
      (entry.places.includes('N') && !(waiting && body.condition === 'abnormality')) ||
      made.doubts.some(({ doubt }) => doubt === 'two-readings' || doubt === 'no-such-tooth')
    )
      return made;
    // "no hook over here": of the place spoken before, and not of the mouth.
    const ruledOut =
      body.presence === 'absent' &&
      !here.test(reading.tokens.map(({ t }) => t).join(' ')) &&
      !waiting &&
      !(made.less && body.condition === 'abnormality');
    if (ruledOut)
      return foundBefore(body, reading, context) ? { ...made, doubts: [...made.doubts, { doubt: 'unlikely', ...ruledOutLater }] } : made;
    const position = positionByName[body.condition];
    const leaned =
      // "wolf teeth gone": named by what they are, and never the tooth spoken of before.
      (position !== undefined &&
        !carry.place?.every(
          ({ codes, positions, region }) =>
            codes?.every((code) => positionOf(code) === position) ?? (positions === undefined && region === undefined),
        )) ||
      (said && !made.less) ||
      carry.place === undefined ||
      entry.home !== undefined
        ? null
        : resolvePlace(
            carry.place.map((raw) => ({ raw, marks: [] })),
            wantedBy(body.condition, missingTeeth(context), body.presence === 'absent'),
          );
    // "the wave I'll do in stages": by its name it is the one that was found, and at no place spoken of since.
    const found = said || body.presence === 'absent' ? undefined : foundByName(made, body, reading, context);
    if (found === 'asked' && !waiting)
      return { ...made, doubts: [...made.doubts.filter(({ doubt }) => doubt !== 'no-place'), { doubt: 'no-place' as const }] };
    if (leaned?.place) {
      const place = found && found !== 'asked' ? found : leaned.place;
      // "upper left", "sharp on the outside": cheek teeth are sharp by their enamel points.
      const points = body.condition === 'sharp' && 'teeth' in place && place.teeth.every((t) => positionOf(t) >= 6);
      const settles = waiting && !settled ? [carry.half?.doubt as string] : [];
      settled = true;
      return {
        ...made,
        body: {
          ...body,
          ...(points ? { condition: 'sharp-enamel-points' as const } : {}),
          place: made.less ? less(place, made.less) : place,
          // "gap one oh eight one oh nine", "pocket on the inside": of an upper tooth it is the palate's side.
          ...(body.surfaces
            ? { surfaces: [...plainly(body.surfaces, saidPlainly(body.condition, made.marks, reading.marks, reading.tokens), place)] }
            : {}),
        },
        how: { ...made.how, place: 'carried' as const },
        rules: [...made.rules, 'carried place'],
        doubts: made.doubts.filter(({ doubt }) => doubt !== 'no-place'),
        settles: [...(made.settles ?? []), ...settles],
      };
    }
    if (body.presence === 'absent') return made;
    if (entry.home)
      return {
        ...made,
        body: { ...body, place: { region: entry.home as never } },
        doubts: made.doubts.filter(({ doubt }) => doubt !== 'no-place'),
      };
    return made.doubts.some(({ doubt }) => doubt === 'no-place')
      ? made
      : { ...made, doubts: [...made.doubts, { doubt: 'no-place' as const }] };
  });
}
