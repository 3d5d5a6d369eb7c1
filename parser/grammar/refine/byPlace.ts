/** Words that name one thing here and another there: the place decides. */
import type { Place } from '../../contract/item.ts';
import { standing } from '../carry.ts';
import type { FindingBody } from '../made.ts';
import type { ConditionId } from '../../lexicon/conditions.ts';
import type { RegionId } from '../../lexicon/regions.ts';
import type { Made } from '../made.ts';
import { resolvePlace, wantedBy } from '../resolve.ts';
import { isPaired, type RawPlace } from '../places.ts';
import { positionOf } from '../teeth.ts';
import { asked, become, each, finding, type Rule } from './rule.ts';

/** "overhang": at a first or last cheek tooth a hook, at the incisors an overjet, alone either. */
export const overhang: Rule = (reads) =>
  each(reads, (made, { said }) => {
    const body = finding(made);
    if (!said.startsWith('overhang') || body === undefined || body.presence === 'absent') return made;
    const place = body.place;
    if (place !== null && 'teeth' in place && place.teeth.every((t) => positionOf(t) > 5)) return made;
    const asWidth = (body.measures ?? []).map((m) => ({ ...m, what: 'width' as const }));
    if (place !== null)
      return become(
        made,
        { condition: 'overjet', place: null, ...(asWidth.length > 0 ? { measures: asWidth } : {}) },
        'overhang of the incisors',
      );
    return asked(made, [body, { ...body, condition: 'overjet' }]);
  });

const soft: ReadonlySet<RegionId | undefined> = new Set<RegionId>(['lips', 'commissure', 'tongue', 'cheek', 'gums', 'palate', 'mucosa']);
const opening: ReadonlySet<RegionId | undefined> = new Set<RegionId>(['nostril', 'eye']);
/** What words name where these places are said, and not what they name elsewhere. */
const otherwise: readonly {
  readonly of: ConditionId;
  readonly said: RegExp;
  readonly at: (raw: RawPlace) => boolean;
  readonly is: ConditionId;
  readonly why: string;
}[] = [
  // "the corner of the mouth is split": a cut, no broken tooth.
  { of: 'fracture', said: /^splits?$/, at: ({ region }) => soft.has(region), is: 'laceration', why: 'split of what is soft' },
  // "the tens are hollow": no wasted muscle.
  {
    of: 'muscle-wasting',
    said: /^(?:hollow|sunken|wast)/,
    at: ({ codes, positions }) => codes !== undefined || positions !== undefined,
    is: 'cupped-out',
    why: 'hollow teeth',
  },
  // "nothing coming down that nostril": no tooth.
  { of: 'erupting', said: /^com(?:ing|es)\b/, at: ({ region }) => opening.has(region), is: 'discharge', why: 'what comes from an opening' },
];
export const otherThere: Rule = (reads) =>
  reads.map((read) => {
    const { head, placings } = read.clause;
    const row = otherwise.find(({ of, said }) => of === head.condition?.id && said.test(read.said));
    const there = row === undefined ? [] : placings.filter(({ raw }) => row.at(raw));
    if (row === undefined || there.length === 0 || (there.length < placings.length && row.is === 'laceration')) return read;
    const { place } = resolvePlace(there, wantedBy(row.is, new Set()));
    if (place === null) return read;
    const named = (made: Made): Made => {
      const body = finding(made);
      if (body === undefined) return made;
      return { ...become({ ...made, body: { ...body, surfaces: undefined } }, { condition: row.is, place }, row.why), doubts: [] };
    };
    return { ...read, made: read.made.map(named) };
  });

/** "the gum over three oh one is overgrown": of a gum it is no long tooth. */
export const grownGum: Rule = (reads, { text }) =>
  each(reads, (made, { said }) =>
    finding(made)?.condition === 'overlong' &&
    said === 'overgrown' &&
    /\bgums? (?:is |has |are |have )?(?:over|at|round|around|above|below|by|between|of|on) .*\bovergrown\b/.test(text)
      ? become(made, { condition: 'gingival-hyperplasia' }, 'a gum that has grown')
      : made,
  );

/** "the left joint is sore and the excursion is reduced to that side": how the jaw moves, whatever part was named before it. */
export const ofTheJaw: Rule = (reads) =>
  each(reads, (made) => {
    const body = finding(made);
    const place = body?.condition === 'reduced-excursion' && body.place && 'region' in body.place ? body.place : undefined;
    return place === undefined || place.region === 'jaw-movement'
      ? made
      : become(made, { place: { region: 'jaw-movement', ...(place.side ? { side: place.side } : {}) } }, 'movement of the jaw');
  });

const ofTheGum: ReadonlySet<string> = new Set(['bleeding', 'gingivitis', 'gingival-recession', 'gingival-hyperplasia']);
/** "three oh eight three oh nine, open diastema, gum bleeding": one gum is that of the tooth or the gap named before it, in this breath or the last one. */
export const gumThere: Rule = (reads, { words, context, carry }) => {
  const atTooth = (place: Place | null | undefined): Place | undefined =>
    place && ('teeth' in place || 'spaces' in place) ? place : undefined;
  const last = standing(context, carry.last);
  const before = atTooth(last?.kind === 'finding' ? last.place : undefined);
  const there = reads.map(({ made }) => made.map(finding).flatMap((body) => atTooth(body?.place) ?? [])[0]);
  const elsewhere = reads.some(({ clause }) => clause.placings.some(({ raw }) => raw.region !== 'gums'));
  return reads.map((read, i) => {
    const near = there.slice(0, i).findLast((place) => place !== undefined) ?? (elsewhere ? undefined : before);
    const [only, ...more] = read.clause.placings;
    const bare = more.length === 0 && only?.raw.region === 'gums' && Object.keys(only.raw).length === 1;
    if (near === undefined || !bare || words.includes('gums')) return read;
    return {
      ...read,
      made: read.made.map((made) =>
        ofTheGum.has(finding(made)?.condition ?? '') ? become(made, { place: near }, 'gum of the tooth named') : made,
      ),
    };
  });
};

/** A swollen lymph node has a name of its own. */
export const nodes: Rule = (reads) =>
  each(reads, (made) => {
    const body = finding(made);
    // "glands up under the jaw on the right": that is where they are.
    if (body?.condition === 'lymph-node-enlargement' && body.place !== null && 'region' in body.place && body.place.region === 'mandible')
      return become(made, { place: { ...body.place, region: 'lymph-nodes' } }, 'swelling of a node');
    return body?.condition === 'swelling' && body.place !== null && 'region' in body.place && body.place.region === 'lymph-nodes'
      ? become(made, { condition: 'lymph-node-enlargement' }, 'swelling of a node')
      : made;
  });

/** What any part of the head or the mouth may have or lack. */
const anywhere: ReadonlySet<string> = new Set([
  ...['abnormality', 'ulcer', 'laceration', 'scar', 'swelling', 'lump', 'mass', 'bruising', 'bleeding', 'heat', 'pain', 'bit-injury'],
]);
/** "left node up, right one normal", "a scar on the left cheek, no ulcers either side": a side alone is that side of the part that was named, and no row. */
export const sideOfPart: Rule = (reads) =>
  reads.map((read, i) => {
    const [only] = read.clause.placings.length === 1 ? read.clause.placings : [];
    const { side, ...more } = only?.raw ?? {};
    const bare = side !== undefined && Object.values(more).every((value) => value === undefined);
    const named = bare
      ? reads
          .slice(0, i)
          .flatMap(({ made }) => made.flatMap((one) => finding(one)?.place ?? []))
          .at(-1)
      : undefined;
    const part = named !== undefined && 'region' in named && isPaired(named.region) ? named.region : undefined;
    if (part === undefined || side === undefined) return read;
    const ofPart = (body: FindingBody): boolean =>
      side === 'both' ? body.presence === 'absent' && anywhere.has(body.condition) : body.condition === 'abnormality';
    return {
      ...read,
      made: read.made.map((one) => {
        const body = finding(one);
        return body && ofPart(body) ? { ...become(one, { place: { region: part, side } }, 'side of the part named'), doubts: [] } : one;
      }),
    };
  });

const oneMore: ReadonlySet<string> = new Set(['and', 'another', 'plus', 'also', 'second', 'other', 'one', 'then', 'no']);
/** "he's bitten his tongue, there's a cut on the left side of it": where on the part that was named, no second cut. */
export const sideOfIt: Rule = (reads, { tokens, marks }) => {
  const found = reads.map(({ made }) => (made.length === 1 && made[0] ? finding(made[0]) : undefined));
  const sameCut = (i: number): unknown => {
    const [whole, part] = [found[i - 1], found[i]];
    const [from, to] = [marks[reads[i - 1]?.clause.head.mark ?? -1], marks[reads[i]?.clause.head.mark ?? -1]];
    return (
      from !== undefined &&
      to !== undefined &&
      whole?.place &&
      part?.place &&
      'region' in whole.place &&
      'region' in part.place &&
      whole.place.region === part.place.region &&
      whole.place.side === undefined &&
      part.place.side !== undefined &&
      part.place.side !== 'both' &&
      whole.condition === part.condition &&
      whole.presence === 'present' &&
      part.presence === 'present' &&
      whole.measures === undefined &&
      !tokens.slice(from.from, to.from).some(({ t }) => oneMore.has(t)) &&
      tokens.slice(from.from, to.from).some(({ ends }) => ends)
    );
  };
  return reads.flatMap((read, i) => {
    if (sameCut(i + 1)) return [];
    const whole = sameCut(i) ? (reads[i - 1]?.made[0]?.marks ?? []) : [];
    return [
      whole.length === 0 ? read : { ...read, made: read.made.map((made) => ({ ...made, marks: [...new Set([...whole, ...made.marks])] })) },
    ];
  });
};
