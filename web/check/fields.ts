/** What can be changed about an item, and the legal values: from the lexicon and the contract, so that nothing else can be chosen. Pure. */
import type { Item, ItemKind } from '../../parser/contract/item.ts';
import { qualifierIds, severityIds, surfaceIds } from '../../parser/lexicon/surfaces.ts';
import type { PlaceKind } from '../../parser/lexicon/types.ts';
import {
  actionLabels,
  capital,
  condition,
  conditionGroups,
  conditions,
  plain,
  presenceLabels,
  procedures,
  routeLabels,
  scales,
  stateLabels,
  whenLabels,
} from '../labels.ts';

export interface Option {
  readonly value: string;
  readonly label: string;
  readonly group?: string;
}
export type Field =
  | {
      readonly control: 'one';
      readonly name: string;
      readonly label: string;
      readonly options: readonly Option[];
      readonly needed: boolean;
      readonly long?: boolean;
    }
  | { readonly control: 'many'; readonly name: string; readonly label: string; readonly options: readonly Option[] }
  | { readonly control: 'place'; readonly name: 'place'; readonly label: string; readonly kinds: readonly PlaceKind[] }
  | {
      readonly control: 'grade';
      readonly name: 'grade';
      readonly label: string;
      readonly scale: string;
      readonly options: readonly Option[];
    }
  | { readonly control: 'measure'; readonly name: 'measures'; readonly label: string }
  | { readonly control: 'amount'; readonly name: string; readonly label: string; readonly unit: string }
  | { readonly control: 'dose'; readonly name: 'dose'; readonly label: string }
  | { readonly control: 'after'; readonly name: 'after'; readonly label: string }
  | { readonly control: 'words'; readonly name: string; readonly label: string; readonly needed: boolean }
  | { readonly control: 'yes'; readonly name: string; readonly label: string; readonly needed?: boolean };

const from = (labels: Readonly<Record<string, string>>): readonly Option[] =>
  Object.entries(labels).map(([value, label]) => ({ value, label }));
const ids = (values: readonly string[]): readonly Option[] =>
  values.map((value) => ({ value, label: value === 'rostral' ? 'front (rostral)' : value === 'caudal' ? 'back (caudal)' : plain(value) }));
const one = (name: string, label: string, options: readonly Option[], needed = false, long = false): Field => ({
  control: 'one',
  name,
  label,
  options,
  needed,
  long,
});
const words = (name: string, label: string, needed = false): Field => ({ control: 'words', name, label, needed });
const place = (...kinds: PlaceKind[]): Field => ({ control: 'place', name: 'place', label: 'Place', kinds });
const surfaces: Field = { control: 'many', name: 'surfaces', label: 'Surface', options: ids(surfaceIds) };

export const conditionOptions: readonly Option[] = Object.entries(conditions).map(([value, { label, group }]) => ({
  value,
  label,
  group: conditionGroups[group],
}));
const procedureOptions: readonly Option[] = Object.entries(procedures).map(([value, { label }]) => ({ value, label }));
const people = ids(['veterinarian', 'practitioner']);
const about = [
  'behaviour',
  'consent',
  'present',
  'history',
  'use',
  'feed',
  'bit',
  'vaccination',
  'heart-rate',
  'gag',
  'light',
  'photographs',
  'earlier-treatment',
  'method',
  'account',
  'medication',
  'tetanus',
  'horse',
  'yard',
  'owner',
] as const satisfies readonly Extract<Item, { kind: 'fact' }>['about'][];

/** Units a measure may have: an angle is in degrees, all else in mm or cm. */
export const unitsOf = (what: string): readonly string[] => (what === 'angle' ? ['degree'] : ['mm', 'cm']);
export const measureNames = ['height', 'depth', 'width', 'length', 'angle', 'excursion'] as const;
export const doseUnits = ['ml', 'mg', 'mcg', 'mg/kg', 'mcg/kg'] as const;

const every = ['T', 'S', 'R', 'G', 'N'] as const;
/** Where a condition may stand. Teeth and rows stand for each other; what was ruled out may be so anywhere. */
export const placeKinds = (places: readonly PlaceKind[] | undefined, ruledOut: boolean): readonly PlaceKind[] =>
  every.filter(
    (kind) =>
      !places ||
      places.includes(kind) ||
      (kind === 'T' && places.includes('R')) ||
      (kind === 'R' && places.includes('T')) ||
      (ruledOut && (kind === 'N' || kind === 'G')),
  );
type ScaleName = keyof typeof scales;
/** The scales of a condition. Body condition has two in use, and which one is meant is never assumed. */
const scalesOf = (scale: string | undefined): readonly ScaleName[] =>
  (Object.keys(scales) as ScaleName[]).filter(
    (id) => id === scale || (scale?.startsWith('body-condition') && id.startsWith('body-condition')),
  );

type Form = Readonly<Record<string, unknown>>;
/** The fields of an item as it stands in the form; a condition brings its own places, scale and qualifiers. */
export function fieldsOf(form: Form): readonly Field[] {
  switch (form.kind as ItemKind) {
    case 'finding': {
      const entry = form.condition ? condition(form.condition as string) : undefined;
      const own = entry?.qualifiers?.length ? entry.qualifiers : qualifierIds;
      return [
        one('condition', 'What', conditionOptions, true, true),
        one('presence', 'Found, or not', from(presenceLabels), true),
        place(...placeKinds(entry?.places, form.presence === 'absent')),
        one('severity', 'How much', ids(severityIds)),
        ...scalesOf(entry?.scale).map(
          (scale) =>
            ({
              control: 'grade',
              name: 'grade',
              label: scale.startsWith('body-condition') ? scales[scale].label : 'Grade',
              scale,
              options: scales[scale].values.map((value) => ({ value, label: value })),
            }) as const,
        ),
        { control: 'measure', name: 'measures', label: 'Measures' },
        surfaces,
        { control: 'many', name: 'qualifiers', label: 'More exactly', options: ids(own) },
        one('when', 'When', from(whenLabels), true),
        one('change', 'Since last time', ids(['new', 'better', 'worse', 'unchanged'])),
      ];
    }
    case 'treatment':
      return [
        one('procedure', 'What', procedureOptions, true, true),
        one('state', 'Done, or not', from(stateLabels), true),
        place('T', 'S', 'R', 'G', 'N'),
        { control: 'amount', name: 'amountMm', label: 'How much', unit: 'mm' },
        surfaces,
        one('instrument', 'With', ids(['hand', 'motorised', 'fingers', 'forceps', 'elevator'])),
        { control: 'yes', name: 'waterCooled', label: 'Water cooled' },
        one('by', 'By', people),
        one('outcome', 'Outcome', ids(['complete', 'root-retained'])),
        words('reason', 'Why'),
      ];
    case 'sedation':
      return [
        { control: 'yes', name: 'given', label: 'Given', needed: true },
        words('agent', 'What was given'),
        { control: 'dose', name: 'dose', label: 'Dose' },
        one('route', 'How', from(routeLabels)),
        one('by', 'By', people),
        words('byName', 'Name'),
        { control: 'yes', name: 'topUp', label: 'Top-up' },
        words('time', 'Time'),
        words('effect', 'Effect'),
      ];
    case 'medication':
      return [
        words('agent', 'What', true),
        { control: 'dose', name: 'dose', label: 'Dose' },
        one('route', 'How', from(routeLabels)),
        words('for', 'For'),
        one('by', 'By', people),
        one('state', 'Given, or not', ids(['given', 'prescribed', 'declined', 'planned'])),
      ];
    case 'follow-up':
      return [
        one('action', 'What', from(actionLabels), true, true),
        { control: 'after', name: 'after', label: 'When' },
        place('T', 'S', 'R', 'G', 'N'),
        words('reason', 'Why'),
        words('to', 'To whom'),
        words('text', 'Words'),
        one('state', 'State', ids(['not-needed', 'declined', 'done', 'planned'])),
      ];
    case 'not-examined':
      return [place('T', 'S', 'R', 'G'), one('means', 'Which way', ids(['seen', 'felt'])), words('reason', 'Why')];
    case 'fact':
      return [
        one(
          'about',
          'About',
          about.map((value) => ({ value, label: capital(plain(value)) })),
          true,
          true,
        ),
        words('said', 'What was said', true),
      ];
    case 'note':
      return [words('text', 'Words', true)];
  }
}

/** What is still missing before the form can be kept, as labels of its fields. */
export function missing(form: Form): readonly string[] {
  return fieldsOf(form).flatMap((field) =>
    'needed' in field && field.needed && (form[field.name] === undefined || form[field.name] === '') ? [field.label] : [],
  );
}
/** A new item of a kind: nothing is filled in but the time of what is being looked at now, which the form shows. */
export const blank = (kind: ItemKind, at?: unknown): Form => ({
  kind,
  ...(kind === 'finding' ? { when: 'now' } : {}),
  ...(kind === 'sedation' ? { topUp: false } : {}),
  ...(['finding', 'treatment', 'not-examined', 'follow-up'].includes(kind) ? { place: at ?? null } : {}),
});
/** A changed condition drops what it cannot have: a grade of another scale, a place it does not stand at. */
export function fitted(form: Form): Form {
  if (form.kind !== 'finding' || !form.condition) return form;
  const entry = condition(form.condition as string);
  const grade = form.grade as { scale: string } | undefined;
  const fits = !grade || grade.scale === 'spoken' || (scalesOf(entry.scale) as readonly string[]).includes(grade.scale);
  return fits ? form : { ...form, grade: undefined };
}
