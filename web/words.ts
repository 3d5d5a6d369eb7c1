/** An item in words, as the trade writes it: a title, then what else was said. Nothing is added that the item does not hold. */
import type { Item, Measure } from '../parser/contract/item.ts';
import {
  actionLabels,
  capital,
  conditionLabel,
  plain,
  procedureLabel,
  regions,
  routeLabels,
  scaleLabel,
  small,
  stateLabels,
  whenLabels,
} from './labels.ts';

type Amount = number | [number, number];
export interface ItemWords {
  readonly title: string;
  readonly more: readonly string[];
}

export const amountWords = (amount: Amount): string => (Array.isArray(amount) ? `${amount[0]} to ${amount[1]}` : String(amount));
const asked = { height: ' high', depth: ' deep', width: ' wide', length: ' long', angle: '', excursion: ' excursion' } as const;
const unitWords = { mm: 'mm', cm: 'cm', degree: '°' } as const;
export function measureWords({ what, value, unit, about, said }: Measure): string {
  if (value === undefined) return `${said ?? ''} (${what})`;
  return `${about ? 'about ' : ''}${amountWords(value)}${unit ? `${unit === 'degree' ? '' : ' '}${unitWords[unit]}` : ''}${asked[what]}`;
}
const who = (by: unknown): string | undefined => {
  if (!by) return undefined;
  if (typeof by === 'string') return `by ${plain(by)}`;
  const { role, name } = by as { role?: string; name?: string };
  return `by ${[name, role && plain(role)].filter(Boolean).join(', ')}`;
};
const dose = (d: { value?: Amount; unit?: string; said?: string } | undefined): string | undefined =>
  d && (d.value === undefined ? d.said : `${amountWords(d.value)}${d.unit ? ` ${d.unit}` : ', no unit said'}`);

export function itemWords(item: Item): ItemWords {
  const { title, more } = told(item);
  return { title, more: more.filter((word): word is string => !!word) };
}
function told(item: Item): { title: string; more: (string | false | 0 | null | undefined)[] } {
  switch (item.kind) {
    case 'finding': {
      const label = conditionLabel(item.condition);
      const normal = item.condition === 'abnormality' && item.presence === 'absent';
      const ends = item.qualifiers?.map((q) => (q === 'rostral' ? 'front' : q === 'caudal' ? 'back' : plain(q))) ?? [];
      return {
        title: normal
          ? 'Normal'
          : item.presence === 'absent'
            ? `No ${small(label)}`
            : item.presence === 'suspected'
              ? `Suspected ${small(label)}`
              : label,
        more: [
          item.when !== 'now' && small(whenLabels[item.when]),
          ...ends,
          item.surfaces?.map(plain).join(' and '),
          item.severitySaid ?? item.severity,
          item.grade &&
            (item.grade.scale === 'spoken'
              ? `grade ${item.grade.value}, as said`
              : `${/^\d/.test(item.grade.value) ? 'grade ' : ''}${item.grade.value}${scaleLabel(item.grade.scale) === label ? '' : ` (${scaleLabel(item.grade.scale)})`}`),
          ...(item.measures ?? []).map(measureWords),
          item.change,
          item.pulpHorn !== undefined && `pulp horn ${item.pulpHorn}`,
          item.crest?.length && `crest at ${item.crest.join(', ')}`,
          item.long && `long on the ${plain(item.long)}`,
          item.said && `“${item.said}”`,
        ],
      };
    }
    case 'treatment':
      return {
        title: `${procedureLabel(item.procedure)}, ${small(stateLabels[item.state])}`,
        more: [
          item.amountMm !== undefined &&
            `${item.amountBasis === 'to' ? 'to ' : item.amountBasis === 'level' ? 'level, ' : ''}${amountWords(item.amountMm)} mm`,
          item.amountSaid,
          item.surfaces?.map(plain).join(' and '),
          ...(item.qualifiers ?? []).map(plain),
          item.instrument && plain(item.instrument),
          item.waterCooled && 'water cooled',
          who(item.by),
          item.supervisedBy && `supervised ${who(item.supervisedBy)}`,
          item.outcome && plain(item.outcome),
          item.reason,
        ],
      };
    case 'sedation':
      return {
        title: item.given ? capital(item.agent ?? 'Sedation') : 'No sedation',
        more: [
          dose(item.dose),
          item.route && routeLabels[item.route],
          item.byName ? `by ${item.byName}` : who(item.by),
          item.topUp && 'top-up',
          item.time,
          item.effect,
        ],
      };
    case 'medication':
      return {
        title: capital(item.agent),
        more: [item.state, dose(item.dose), item.route && routeLabels[item.route], item.for && `for ${item.for}`, who(item.by)],
      };
    case 'follow-up':
      return {
        title: actionLabels[item.action],
        more: [
          item.after &&
            ('said' in item.after
              ? item.after.said
              : `in ${item.after.about ? 'about ' : ''}${amountWords(item.after.value)} ${item.after.unit}${item.after.value === 1 ? '' : 's'}`),
          item.state && plain(item.state),
          item.reason,
          item.to && `to ${item.to}`,
          item.urgency,
          item.text,
        ],
      };
    case 'not-examined':
      return {
        title: 'Not examined',
        more: [item.means === 'felt' ? 'not felt' : item.means === 'seen' ? 'not seen' : undefined, item.reason],
      };
    case 'fact':
      return {
        title: capital(item.said),
        more: [
          capital(plain(item.about)),
          item.value && `${amountWords(item.value.value)} ${plain(item.value.unit)}`,
          item.for && `for ${plain(item.for)}`,
          item.fromWhom && `from ${item.fromWhom}`,
        ],
      };
    case 'note':
      return { title: item.text, more: [] };
  }
}

/** The part of the exam under which an item is read, in the order of an exam. */
export const parts = ['outside', 'incisors', 'bars', 'upper', 'lower', 'soft', 'horse', 'work', 'next', 'visit'] as const;
export type Part = (typeof parts)[number];
export const partLabels: Readonly<Record<Part, string>> = {
  outside: 'Outside the mouth',
  incisors: 'Incisors',
  bars: 'Canines, wolf teeth and bars',
  upper: 'Upper cheek teeth',
  lower: 'Lower cheek teeth',
  soft: 'Cheeks, tongue and soft tissue',
  horse: 'The whole mouth and horse',
  work: 'Work and medicines',
  next: 'What comes next',
  visit: 'About the visit',
};
export function partOf(item: Item): Part {
  if (item.kind === 'treatment' || item.kind === 'sedation' || item.kind === 'medication') return 'work';
  if (item.kind === 'follow-up') return 'next';
  if (item.kind === 'fact' || item.kind === 'note') return 'visit';
  const { place } = item;
  if (!place) return 'horse';
  if ('rows' in place)
    return place.rows.some((row) => row.endsWith('incisors'))
      ? 'incisors'
      : place.rows.some((row) => row.startsWith('upper'))
        ? 'upper'
        : 'lower';
  if ('region' in place) {
    if (place.region === 'incisors') return 'incisors';
    if (place.region === 'bars') return 'bars';
    if (place.region === 'mouth' || place.region === 'jaw-movement') return 'horse';
    if (place.region === 'cheek-teeth') return place.jaw === 'lower' ? 'lower' : 'upper';
    return regions[place.region].where === 'outside' ? 'outside' : 'soft';
  }
  const tooth = 'teeth' in place ? place.teeth[0]! : place.spaces[0]![1];
  const position = Number(tooth.slice(1));
  return position <= 3 ? 'incisors' : position <= 5 ? 'bars' : Number(tooth[0]) % 4 === 1 || Number(tooth[0]) % 4 === 2 ? 'upper' : 'lower';
}
