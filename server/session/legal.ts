/** Whether what a person typed is a value the trade's tables allow. Only changed fields are asked about: what was kept as said stays legal. Pure. */
import type { Finding, Item, Measure } from '../../parser/contract/item.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { scales } from '../../parser/lexicon/scales.ts';
import type { ConditionEntry, PlaceKind } from '../../parser/lexicon/types.ts';

/** A sentence for the person, or null when everything typed is legal. */
export function illegal(item: Item, typed: ReadonlySet<string>): string | null {
  if (item.kind !== 'finding') return null;
  const entry: ConditionEntry = conditions[item.condition];
  return (
    (typed.has('grade') || typed.has('condition') ? badGrade(item, entry) : null) ??
    (typed.has('place') || typed.has('condition') ? badPlace(item, entry) : null) ??
    (typed.has('measures') ? ((item.measures ?? []).map(badMeasure).find((bad) => bad !== null) ?? null) : null)
  );
}

function badGrade({ grade }: Finding, entry: ConditionEntry): string | null {
  if (!grade || grade.scale === 'spoken') return null;
  const scale = scales[grade.scale];
  const own = entry.scale === grade.scale || (entry.scale?.startsWith('body-condition') && grade.scale.startsWith('body-condition'));
  if (!own) return `${entry.label} has no grade of the scale "${scale.label}".`;
  return (scale.values as readonly string[]).includes(grade.value) ? null : `${scale.label} has the grades ${scale.values.join(', ')}.`;
}

const kindOf = (place: Finding['place']): PlaceKind =>
  !place ? 'N' : 'teeth' in place ? 'T' : 'spaces' in place ? 'S' : 'rows' in place ? 'R' : 'G';
const placeWords: Readonly<Record<PlaceKind, string>> = {
  T: 'teeth',
  S: 'a gap between two teeth',
  R: 'a row',
  G: 'a region',
  N: 'no place',
};
/** Teeth and rows stand for each other (a row is its teeth); what was ruled out may be so anywhere. */
function badPlace({ place, presence }: Finding, entry: ConditionEntry): string | null {
  const kind = kindOf(place);
  const allowed = new Set<PlaceKind>(entry.places);
  if (allowed.has('T')) allowed.add('R');
  if (allowed.has('R')) allowed.add('T');
  if (presence === 'absent') return kind === 'N' || kind === 'G' || allowed.has(kind) ? null : wrong();
  return allowed.has(kind) ? null : wrong();
  function wrong(): string {
    return `${entry.label} stands at ${entry.places.map((p) => placeWords[p]).join(' or ')}.`;
  }
}

function badMeasure({ what, unit, value }: Measure): string | null {
  const [from, to] = Array.isArray(value) ? value : [value ?? 0, value ?? 0];
  if (from < 0 || to < from) return 'A measure is a number of at least zero, or two with the smaller one first.';
  if (unit && (what === 'angle') !== (unit === 'degree')) return what === 'angle' ? 'An angle is in degrees.' : 'A length is in mm or cm.';
  return null;
}
