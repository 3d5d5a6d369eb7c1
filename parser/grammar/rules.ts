/**
 * Rules that doubt, never delete: legal, but against anatomy, age or an earlier item. One row a rule, each with its source
 * (published: as cited; otherwise marked). The item stays as it was spoken.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { rowTeeth } from '../lexicon/teeth.ts';
import { isUpper, positionOf, quadrantOf } from './teeth.ts';
import type { ItemBody } from './made.ts';

export interface Rule {
  readonly name: string;
  readonly why: string;
  readonly source: string;
  readonly broken: (body: ItemBody, context: Context) => boolean;
}

const teeth = (body: ItemBody | Item): readonly string[] =>
  'place' in body && body.place && 'teeth' in body.place ? body.place.teeth : [];
const finding = (body: ItemBody): Extract<ItemBody, { kind: 'finding' }> | undefined =>
  body.kind === 'finding' && body.presence !== 'absent' ? body : undefined;
const is = (body: ItemBody, ...conditions: readonly string[]): boolean => conditions.includes(finding(body)?.condition ?? '');
const isDeciduous = (code: string): boolean => quadrantOf(code) > 4;
const size = (body: ItemBody, what: string): number =>
  Math.max(
    0,
    ...(finding(body)?.measures ?? [])
      .filter((m) => m.what === what && m.value !== undefined)
      .map((m) => {
        const v = typeof m.value === 'number' ? m.value : (m.value as [number, number])[1];
        return m.unit === 'cm' ? v * 10 : v;
      }),
  );
const years = (context: Context): number | undefined => {
  const age = context.header.horse?.age;
  return age && { year: age.value, month: age.value / 12, week: age.value / 52, day: age.value / 365 }[age.unit];
};

/** Earliest ages in years at which a permanent tooth is published to erupt: the lower ends of several tables, joined. */
export const earliestEruption: Readonly<Record<number, number>> = {
  1: 2,
  2: 3,
  3: 4,
  4: 3.5,
  5: 0.4,
  6: 2,
  7: 2.5,
  8: 3,
  9: 0.75,
  10: 2,
  11: 2,
};

/** What was found and is ruled out later, of a place or of the whole mouth. */
export const ruledOutLater = { rule: 'found-then-ruled-out', why: 'This was recorded here before it was ruled out.', source: 'logic' };

/** "points on one oh six, one oh seven and one oh eight clear": which of them is clear was not said. */
export const foundAndClear = {
  rule: 'found-and-clear',
  why: 'In one breath something was found here and it was called clear.',
  source: 'logic',
};

export const rules: readonly Rule[] = [
  {
    name: 'two-sizes',
    why: 'Two sizes were said of one thing; which of them is where was not understood.',
    source: 'logic',
    broken: (body) => {
      const { place, measures = [] } = finding(body) ?? { place: null };
      const spots = !place ? [] : 'spaces' in place ? place.spaces : 'teeth' in place ? place.teeth : [];
      return spots.length > 1 && new Set(measures.map(({ what }) => what)).size < measures.length;
    },
  },
  {
    name: 'no-infundibulum-below',
    why: 'Lower cheek teeth have no infundibulum.',
    source: 'veterinary-practice.com, Aetiopathogenesis of infundibular caries',
    broken: (body) => is(body, 'infundibular-caries') && teeth(body).some((t) => !isUpper(t) && positionOf(t) >= 6),
  },
  {
    name: 'infundibulum-in-cheek-teeth',
    why: 'Infundibular caries is a finding of upper cheek teeth.',
    source: 'veterinary-practice.com, Aetiopathogenesis of infundibular caries',
    broken: (body) => is(body, 'infundibular-caries') && teeth(body).some((t) => positionOf(t) < 6),
  },
  {
    name: 'hook-at-the-ends',
    why: 'A hook stands at the front of an 06 or the back of an 11.',
    source: 'SAEVA Proceedings 2014, Dental Wetlab p. 7',
    broken: (body) => is(body, 'hook') && teeth(body).some((t) => ![6, 11].includes(positionOf(t)) && positionOf(t) > 3),
  },
  {
    name: 'cap-on-permanent-number',
    why: 'A cap is a deciduous tooth: 06, 07 or 08 of the five to eight hundreds, or an incisor.',
    source: 'Floyd 1991; Merck Veterinary Manual, Dental Development',
    broken: (body) =>
      (is(body, 'retained-cap', 'loose-cap', 'cap-shed') || (body.kind === 'treatment' && body.procedure === 'remove-cap')) &&
      teeth(body).some((t) => !isDeciduous(t)),
  },
  {
    name: 'cap-age',
    why: 'Caps are shed between about two and five years.',
    source: 'CK Equine Hospital, dentistry page: deciduous teeth lost between about 2.5 and 5 years',
    broken: (body, context) =>
      is(body, 'retained-cap', 'loose-cap') &&
      years(context) !== undefined &&
      ((years(context) as number) > 6 || (years(context) as number) < 1.5),
  },
  {
    name: 'not-yet-erupted',
    why: 'By the published tables this tooth has not erupted at this age.',
    source: 'eruption tables: encyclopaedia copy, The Veterinary Care of the Horse p. 1064, Colorado clinic table (union of ranges)',
    // What is coming through may be a year early.
    broken: (body, context) => {
      const age = years(context);
      const f = finding(body);
      return (
        age !== undefined &&
        f !== undefined &&
        !['unerupted', 'missing', 'impacted', 'abnormality', 'blind-wolf-tooth', 'wolf-tooth'].includes(f.condition) &&
        f.place !== null &&
        'teeth' in f.place &&
        f.place.from !== 'group' &&
        f.place.teeth.some((t) => !isDeciduous(t) && age < (earliestEruption[positionOf(t)] ?? 0) - (f.condition === 'erupting' ? 1 : 0))
      );
    },
  },
  {
    name: 'missing-has-finding',
    why: 'This tooth was said to be missing.',
    source: 'logic',
    broken: (body, context) => {
      const f = finding(body);
      return (
        f !== undefined &&
        f.when === 'now' &&
        ![
          'missing',
          'previously-extracted',
          'root-remnant',
          'retained-fragment',
          'abnormality',
          'pain',
          'gingivitis',
          'food-packing',
          'bleeding',
        ].includes(f.condition) &&
        teeth(body).some((t) =>
          context.items.some(
            (item) =>
              item.kind === 'finding' &&
              ['missing', 'previously-extracted'].includes(item.condition) &&
              item.presence === 'present' &&
              teeth(item).includes(t),
          ),
        )
      );
    },
  },
  {
    name: 'finding-then-missing',
    why: 'A finding was recorded at this tooth before it was said to be missing.',
    source: 'logic',
    broken: (body, context) =>
      is(body, 'missing') &&
      teeth(body).some((t) =>
        context.items.some(
          (item) =>
            item.kind === 'finding' &&
            item.presence === 'present' &&
            item.when === 'now' &&
            [
              'hook',
              'ramp',
              'step',
              'overlong',
              'infundibular-caries',
              'peripheral-caries',
              'caries',
              'mobility',
              'fracture',
              'sharp',
              'worn',
            ].includes(item.condition) &&
            teeth(item).includes(t),
        ),
      ),
  },
  {
    name: 'gap-without-teeth',
    why: 'A gap lies between two teeth; both were said to be missing.',
    source: 'UK-Vet Equine, Cheek teeth diastemata',
    broken: (body, context) =>
      is(body, 'missing') &&
      context.items.some(
        (item) =>
          item.kind === 'finding' &&
          item.condition === 'diastema' &&
          item.presence === 'present' &&
          item.when === 'now' &&
          item.place !== null &&
          'spaces' in item.place &&
          item.place.spaces.some((space) => space.every((tooth) => teeth(body).includes(tooth))),
      ),
  },
  {
    name: 'wolf-tooth-is-05',
    why: 'A wolf tooth is the 05.',
    source: 'Griffin, The first premolar (wolf) teeth',
    broken: (body) => is(body, 'wolf-tooth', 'blind-wolf-tooth') && teeth(body).some((t) => positionOf(t) !== 5),
  },
  {
    name: 'canine-is-04',
    why: 'A canine is the 04.',
    source: 'Floyd 1991',
    broken: (body) => is(body, 'canine-present') && teeth(body).some((t) => positionOf(t) !== 4),
  },
  {
    name: 'overgrowth-size',
    why: 'Larger than the overgrowths measured in the literature (at most 17.9 mm).',
    source: 'Marshall, Shaw & Dixon 2012, Vet J 193:53-57; the limit of 20 mm is a judgement',
    broken: (body) => is(body, 'hook', 'ramp', 'step', 'focal-overgrowth', 'overlong') && size(body, 'height') > 20,
  },
  {
    name: 'pocket-size',
    why: 'Deeper than pockets met in practice.',
    source: 'common practice, no source; the limit of 25 mm is a judgement',
    broken: (body) => is(body, 'periodontal-pocket') && size(body, 'depth') > 25,
  },
  {
    name: 'points-side',
    why: 'Points are usual on the cheek side of the uppers and the tongue side of the lowers.',
    source: 'SAEVA Proceedings 2014, Dental Wetlab p. 7',
    broken: (body) => {
      const f = finding(body);
      return (
        is(body, 'sharp-enamel-points') &&
        f !== undefined &&
        teeth(body).some(
          (t) =>
            (isUpper(t) && (f.surfaces ?? []).some((s) => s === 'lingual' || s === 'palatal') && !(f.surfaces ?? []).includes('buccal')) ||
            (!isUpper(t) && (f.surfaces ?? []).includes('buccal') && !(f.surfaces ?? []).includes('lingual')),
        )
      );
    },
  },
  {
    name: 'surface-of-the-jaw',
    why: 'Palatal is said of upper teeth, lingual of lower ones.',
    source: 'SAEVA Proceedings 2014, Dental Wetlab p. 3',
    broken: (body) => {
      const f = finding(body);
      return (
        f !== undefined &&
        teeth(body).some(
          (t) =>
            (isUpper(t) && (f.surfaces ?? []).includes('lingual') && !is(body, 'sharp-enamel-points')) ||
            (!isUpper(t) && (f.surfaces ?? []).includes('palatal')),
        )
      );
    },
  },
  {
    name: 'eotrh-place',
    why: 'EOTRH is a disease of incisors and canines.',
    source: 'UK-Vet Equine, EOTRH review',
    broken: (body) => is(body, 'eotrh') && teeth(body).some((t) => positionOf(t) > 4),
  },
  {
    name: 'eotrh-age',
    why: 'EOTRH is rare before ten years.',
    source: 'UK-Vet Equine, EOTRH review',
    broken: (body, context) => is(body, 'eotrh') && years(context) !== undefined && (years(context) as number) < 10,
  },
  {
    name: 'pulp-horn-number',
    why: 'This tooth has no pulp horn of that number.',
    source: 'Dacre, Kempson & Dixon 2008, Vet J 178:311-320; labels of horns 7 and 8 from memory',
    broken: (body) => {
      const horn = finding(body)?.pulpHorn;
      return (
        horn !== undefined &&
        teeth(body).some(
          (t) =>
            !(
              horn >= 1 &&
              (horn <= 5 ||
                (horn === 6 && positionOf(t) === 6) ||
                (horn === 7 && positionOf(t) === 11) ||
                (horn === 8 && positionOf(t) === 11 && isUpper(t)))
            ),
        )
      );
    },
  },
  {
    name: 'extract-without-finding',
    why: 'Nothing was found at this tooth before it was taken out.',
    source: 'usual care',
    broken: (body, context) =>
      body.kind === 'treatment' &&
      body.procedure === 'extract' &&
      body.state === 'done' &&
      teeth(body).some(
        (t) => !context.items.some((item) => item.kind === 'finding' && item.presence !== 'absent' && teeth(item).includes(t)),
      ),
  },
  {
    name: 'deciduous-finding',
    why: 'This number is a deciduous tooth; the horse is past the age of caps.',
    source: 'CK Equine Hospital, dentistry page',
    broken: (body, context) => {
      const age = years(context);
      return (
        age !== undefined &&
        age > 6 &&
        finding(body) !== undefined &&
        !is(body, 'retained-cap', 'loose-cap', 'cap-shed', 'deciduous-present') &&
        teeth(body).some(isDeciduous)
      );
    },
  },
  {
    name: ruledOutLater.rule,
    why: ruledOutLater.why,
    source: ruledOutLater.source,
    broken: (body, context) =>
      body.kind === 'finding' &&
      body.presence === 'absent' &&
      body.when === 'now' &&
      body.condition !== 'abnormality' &&
      body.place?.from !== 'group' &&
      context.items.some(
        (item, i) =>
          // What is said in the same breath is one thought: "no hooks apart from one oh six".
          item.id !== undefined &&
          item.kind === 'finding' &&
          item.presence === 'present' &&
          item.when === 'now' &&
          item.condition === body.condition &&
          (body.place && 'spaces' in body.place
            ? JSON.stringify(item.place) === JSON.stringify(body.place)
            : reach(item).some((t) => reach(body).includes(t))) &&
          !context.items.slice(i + 1).some((later) => later.kind === 'treatment' && reach(later).some((t) => reach(body).includes(t))),
      ),
  },
];

/** Teeth a place stands for; a row its cheek teeth. */
const reach = (body: ItemBody | Item): readonly string[] => {
  const place = 'place' in body ? body.place : undefined;
  return !place
    ? []
    : 'teeth' in place
      ? place.teeth
      : 'rows' in place
        ? place.rows.flatMap((row) => rowTeeth[row])
        : 'spaces' in place
          ? place.spaces.flat()
          : [`${place.region}/${place.side ?? ''}`];
};

/** "Normal" said over a place that holds a finding, or that was not examined. */
export const conflictRule = {
  name: 'normal-over-a-finding',
  why: 'Something was recorded here before it was said to be normal.',
  source: 'logic',
};
export function conflicts(body: ItemBody, context: Context): boolean {
  if (
    body.kind !== 'finding' ||
    body.condition !== 'abnormality' ||
    body.presence !== 'absent' ||
    body.when === 'after-treatment' ||
    body.place?.from === 'group'
  )
    return false;
  const here = new Set(reach(body));
  return context.items.some(
    (item) =>
      ((item.kind === 'finding' && item.presence !== 'absent' && item.when === 'now' && item.condition !== 'abnormality') ||
        item.kind === 'not-examined') &&
      reach(item).some((t) => here.has(t)),
  );
}

export const gapRule = {
  name: 'gap-between-neighbours',
  why: 'A gap lies between two neighbouring teeth of one row.',
  source: 'UK-Vet Equine, Cheek teeth diastemata',
};
export const broken = (body: ItemBody, context: Context): readonly Rule[] => rules.filter((rule) => rule.broken(body, context));
