/** A quarter of the mouth named behind front teeth: of those, or of the cheek teeth that it names by itself. */
import { conditions, type ConditionId } from '../../lexicon/conditions.ts';
import type { ConditionEntry } from '../../lexicon/types.ts';
import { quadrantsOf, type RawPlace } from '../places.ts';
import { codeOf } from '../teeth.ts';
import { each, finding, type Rule } from './rule.ts';

const lastOfFront = 5;
/** No front tooth has these: the quarter is its cheek teeth. */
const ofCheekTeeth: ReadonlySet<ConditionId> = new Set<ConditionId>([
  'sharp-enamel-points',
  'exaggerated-transverse-ridges',
  'infundibular-caries',
]);
/** A jaw and one side, and nothing else: the quadrant. */
function quadrantAlone(raw: RawPlace | undefined): number | undefined {
  const only = raw?.codes === undefined && raw?.positions === undefined && raw?.region === undefined && !raw?.row && !raw?.all;
  const quadrants = raw !== undefined && only && raw.jaw !== undefined && raw.side !== undefined ? quadrantsOf(raw) : [];
  return quadrants.length === 1 ? quadrants[0] : undefined;
}

/** "canines sharp, lower left has tartar": its canine, or its cheek teeth. */
export const quarterOfFront: Rule = (reads, { marks }) =>
  each(reads, (made, { clause }) => {
    const body = finding(made);
    const at = clause.placings[0]?.marks[0] ?? -1;
    const quadrant = clause.placings.length === 1 ? quadrantAlone(clause.placings[0]?.raw) : undefined;
    const before = marks.slice(0, Math.max(0, at)).findLast(({ place }) => place !== undefined)?.place;
    const front = before?.codes === undefined && before?.jaw === undefined && before?.side === undefined ? (before?.positions ?? []) : [];
    if (
      body?.presence !== 'present' ||
      quadrant === undefined ||
      front.length === 0 ||
      front.some((position) => position > lastOfFront) ||
      made.doubts.length > 0 ||
      ofCheekTeeth.has(body.condition) ||
      body.place === null ||
      !('teeth' in body.place) ||
      !(conditions[body.condition] as ConditionEntry).places.includes('T')
    )
      return made;
    const own = { ...body, place: { teeth: front.map((position) => codeOf(quadrant, position)) } };
    return {
      ...made,
      body: { ...body, place: null },
      rules: [...made.rules, 'a quarter behind front teeth'],
      doubts: [{ doubt: 'two-readings', readings: [own, body].map((one) => ({ label: '', bodies: [one] })) }],
    };
  });
