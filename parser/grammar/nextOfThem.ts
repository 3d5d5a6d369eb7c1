/**
 * A list that goes on from phrase to phrase: "one oh nine one ten, pocket, six mil", "one ten one eleven, eight mil". A place with the
 * kind of figure that the last finding had is the next of its kind, where nothing else of that figure could be there.
 */
import type { Item, Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import type { Alone } from './alone.ts';
import { detailsOf } from './findings.ts';
import type { Placing } from './groups.ts';
import type { Made } from './made.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import { glueMarks, said } from './sameAgain.ts';
import { positionOf } from './teeth.ts';

type Finding = Extract<Item, { kind: 'finding' }>;
type Details = ReturnType<typeof detailsOf>;

/** @returns undefined where the words are no next one of the last finding */
export function nextOfThem(
  last: Finding,
  placings: readonly Placing[],
  input: Alone,
  mods: readonly number[],
): readonly Made[] | undefined {
  if (last.presence !== 'present' || last.when !== 'now' || last.place === null || placings.length === 0 || mods.length === 0)
    return undefined;
  if (input.role.includes('cue') || input.role.includes('stop')) return undefined;
  const details = detailsOf(last.condition, mods, input.marks, input.tokens, -1);
  const { place, doubts } = resolvePlace(placings, wantedBy(last.condition, input.missing));
  if (place === null || doubts.length > 0 || details.gradeDoubt || !goesOn(last, place, details)) return undefined;
  return [
    {
      body: { kind: 'finding', condition: last.condition, presence: 'present', when: 'now', place, ...said(details) },
      marks: [...input.places, ...mods, ...glueMarks(input)],
      how: { condition: 'carried' },
      rules: ['next of them'],
      doubts: [],
    },
  ];
}

function goesOn(last: Finding, place: Place, { measures, grade, qualifiers }: Details): boolean {
  const { places, scale } = conditions[last.condition] as ConditionEntry;
  const alike = last.place !== null && Object.keys(last.place)[0] === Object.keys(place)[0];
  const elsewhere = JSON.stringify(last.place) !== JSON.stringify(place);
  if (!alike || !elsewhere) return false;
  const ofKind = (last.qualifiers ?? []).some((id) => kindsOfGap.has(id)) && qualifiers.some((id) => kindsOfGap.has(id));
  if (grade !== undefined) return last.grade !== undefined && scale !== undefined && grade.scale === last.grade.scale;
  if (measures.length === 0) return ofKind && measures.length === (last.measures ?? []).length;
  if (measures.length !== 1 || last.measures?.length !== 1) return false;
  // "hook on one oh six, three mil", "three eleven, four mil" may be a ramp: what grows from a tooth goes on at its like only.
  return !(places as readonly string[]).every((kind) => kind === 'T') || sameTooth(last.place, place);
}
const kindsOfGap: ReadonlySet<string> = new Set(['open', 'valve']);
const sameTooth = (a: Place | null, b: Place): boolean =>
  a !== null &&
  'teeth' in a &&
  'teeth' in b &&
  a.teeth.length === 1 &&
  b.teeth.length === 1 &&
  positionOf(a.teeth[0] as string) === positionOf(b.teeth[0] as string);
