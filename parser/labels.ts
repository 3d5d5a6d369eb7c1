/** Ids as a person reads and hears them. The page and the papers take their words from here. */
import type { Item, Measure, Place } from './contract/item.ts';
import { conditions } from './lexicon/conditions.ts';
import { procedures } from './lexicon/procedures.ts';
import { regions, type RegionId } from './lexicon/regions.ts';
import { scales } from './lexicon/scales.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const plain = (id: string): string => id.replaceAll('-', ' ');

/** The label of any id of the lexicon; an id without one reads as its words. */
export function labelOf(id: string): string {
  const tables: readonly Readonly<Record<string, { readonly label: string }>>[] = [conditions, procedures, regions, scales];
  return tables.map((table) => table[id]?.label).find((label) => label !== undefined) ?? capital(plain(id));
}

const digits = ['oh', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const teens: Readonly<Record<string, string>> = { '10': 'ten', '11': 'eleven', '12': 'twelve' };
/** A tooth is written 106 and read "one oh six". */
export const sayTooth = (code: string): string => `${digits[Number(code[0])]} ${teens[code.slice(1)] ?? `oh ${digits[Number(code[2])]}`}`;

/** A part of the mouth within a sentence: "left cheek" less its side, "lower lip", "upper gums". */
export const partWords = (region: RegionId, jaw?: 'upper' | 'lower'): string => {
  const label = labelOf(region).replace(/^[A-Z](?![A-Z])/, (c) => c.toLowerCase());
  return jaw === undefined ? label : `${jaw} ${region === 'lips' ? 'lip' : label}`;
};

/** A place in words: "106, 107", "between 309 and 310", "left cheek". */
export function placeWords(place: Place | null | undefined, tooth: (code: string) => string = (code) => code): string {
  if (!place) return '';
  if ('teeth' in place) return place.teeth.map(tooth).join(', ');
  if ('spaces' in place) return place.spaces.map(([a, b]) => `between ${tooth(a)} and ${tooth(b)}`).join(', ');
  if ('rows' in place) return place.rows.map(plain).join(', ');
  const side = place.side === 'both' ? 'both sides' : place.side;
  const opposite = place.opposite ? `, level with ${place.opposite.map(tooth).join(', ')}` : '';
  const part = [side === 'both sides' ? undefined : side, partWords(place.region, place.jaw)].filter(Boolean).join(' ');
  return [part === partWords(place.region) ? labelOf(place.region) : part, side === 'both sides' ? ', both sides' : '', opposite].join('');
}

const amount = (value: number | readonly [number, number] | undefined): string =>
  value === undefined ? '' : typeof value === 'number' ? String(value) : `${value[0]} to ${value[1]}`;
const units: Readonly<Record<string, string>> = { mm: 'millimetres', cm: 'centimetres', degree: 'degrees' };
export const measureWords = (m: Measure): string =>
  m.said ?? `${m.about ? 'about ' : ''}${amount(m.value)} ${m.unit ? units[m.unit] : ''}`.trim();

/** Read-back in the practitioner's own order: "One oh six. Hook, rostral. Four millimetres." */
export function say(item: Item): string {
  const sentence = (parts: readonly (string | undefined)[]): string =>
    parts
      .filter((p): p is string => p !== undefined && p !== '')
      .map(capital)
      .join('. ') + '.';
  switch (item.kind) {
    case 'finding': {
      const label = labelOf(item.condition);
      const what =
        item.condition === 'abnormality' && item.presence === 'absent'
          ? 'Normal'
          : `${item.presence === 'absent' ? 'No ' : item.presence === 'suspected' ? 'Suspected ' : ''}${item.presence === 'present' ? label : label.replace(/^[A-Z](?![A-Z])/, (c) => c.toLowerCase())}`;
      const how = [...(item.qualifiers ?? []), ...(item.surfaces ?? [])].map(plain).join(', ');
      return sentence([
        placeWords(item.place, sayTooth),
        [what, how].filter(Boolean).join(', '),
        item.severity ?? item.severitySaid,
        item.grade ? `grade ${item.grade.value}` : undefined,
        ...(item.measures ?? []).map(measureWords),
        item.when === 'before' ? 'from before' : undefined,
      ]);
    }
    case 'treatment':
      return sentence([
        placeWords(item.place, sayTooth),
        item.state === 'done' ? procedures[item.procedure].done : `${labelOf(item.procedure)}, ${plain(item.state)}`,
        item.amountMm !== undefined ? `${amount(item.amountMm)} millimetres` : undefined,
        item.instrument,
      ]);
    case 'sedation':
      return sentence([
        item.given ? `Sedation${item.topUp ? ', top up' : ''}` : 'No sedation',
        item.agent,
        item.dose ? (item.dose.said ?? `${amount(item.dose.value)} ${item.dose.unit ?? ''}`) : undefined,
        item.route ? item.route.split('').join(' ') : undefined,
      ]);
    case 'medication':
      return sentence([
        item.agent,
        item.dose ? (item.dose.said ?? `${amount(item.dose.value)} ${item.dose.unit ?? ''}`) : undefined,
        item.state,
      ]);
    case 'follow-up':
      return sentence([
        plain(item.action),
        placeWords(item.place, sayTooth),
        item.after ? ('said' in item.after ? item.after.said : `in ${amount(item.after.value)} ${item.after.unit}s`) : undefined,
        item.reason,
        item.text,
      ]);
    case 'not-examined':
      return sentence([placeWords(item.place, sayTooth), 'not examined', item.reason]);
    case 'fact':
      return sentence([item.said]);
    case 'note':
      return sentence(['Note', item.text]);
  }
}

/** A reading that a person may choose, in a few words. */
export const labelReading = (items: readonly Item[]): string =>
  items
    .map((item) =>
      'place' in item && item.place
        ? `${item.kind === 'finding' && item.presence === 'absent' && item.condition !== 'abnormality' ? 'not at ' : ''}${placeWords(item.place)}`
        : say(item),
    )
    .join('; ') || 'nothing';
