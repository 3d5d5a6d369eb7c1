/** How a place is called: aloud for a screen reader, short for the eye. Positions per the modified Triadan system (Floyd 1991). */
import type { Place } from '../../parser/contract/item.ts';
import { partWords } from '../../parser/labels.ts';
import { regions, type RegionId } from '../../parser/lexicon/regions.ts';
import type { RowId } from '../../parser/lexicon/teeth.ts';

const digit = ['oh', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const positions = [
  '',
  'central incisor',
  'middle incisor',
  'corner incisor',
  'canine',
  'wolf tooth',
  'first cheek tooth',
  'second cheek tooth',
  'third cheek tooth',
  'fourth cheek tooth',
  'fifth cheek tooth',
  'sixth cheek tooth',
  'tooth behind the eleven',
];
const quadrants = ['', 'upper right', 'upper left', 'lower left', 'lower right'];

export const quadrantOf = (tooth: string): 1 | 2 | 3 | 4 => (((Number(tooth[0]) - 1) % 4) + 1) as 1 | 2 | 3 | 4;
export const positionOf = (tooth: string): number => Number(tooth.slice(1));
export const isCap = (tooth: string): boolean => Number(tooth[0]) > 4;

/** "106" to "one oh six". */
export function spokenNumber(tooth: string): string {
  const position = positionOf(tooth);
  return `${digit[Number(tooth[0])]} ${position < 10 ? `oh ${digit[position]}` : digit[position]}`;
}
/** "one oh six, upper right, first cheek tooth". */
export function spokenTooth(tooth: string): string {
  const position = positionOf(tooth);
  const cap = !isCap(tooth) ? '' : position < 4 ? ', milk tooth' : ', cap';
  return `${spokenNumber(tooth)}, ${quadrants[quadrantOf(tooth)]}, ${positions[position]}${cap}`;
}
export const spokenSpace = (a: string, b: string): string =>
  `gap between ${spokenNumber(a)} and ${spokenNumber(b)}, ${quadrants[quadrantOf(b)]}`;

export const rowWords: Readonly<Record<RowId, string>> = {
  'upper-right': 'Upper right cheek teeth',
  'upper-left': 'Upper left cheek teeth',
  'lower-left': 'Lower left cheek teeth',
  'lower-right': 'Lower right cheek teeth',
  'upper-incisors': 'Upper incisors',
  'lower-incisors': 'Lower incisors',
};

/** Neighbouring teeth are told as a run: "106 to 109, 206". */
export function teethWords(teeth: readonly string[]): string {
  const runs: string[][] = [];
  for (const tooth of [...teeth].sort()) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && Number(tooth) === Number(last) + 1) run.push(tooth);
    else runs.push([tooth]);
  }
  return runs.map((run) => (run.length > 2 ? `${run[0]} to ${run.at(-1)}` : run.join(', '))).join(', ');
}
/** Rows that make a whole are told as the whole: both upper rows are "Upper cheek teeth". */
function rowsWords(rows: readonly RowId[]): string {
  const left = new Set(rows);
  const taken = wholes.flatMap(([label, ...whole]) =>
    whole.every((row) => left.has(row)) ? (whole.forEach((row) => left.delete(row)), [label]) : [],
  );
  return [...taken, ...[...left].map((row) => rowWords[row])].join(', ');
}
const wholes: readonly (readonly [string, ...RowId[]])[] = [
  ['All cheek teeth', 'upper-right', 'upper-left', 'lower-left', 'lower-right'],
  ['Upper cheek teeth', 'upper-right', 'upper-left'],
  ['Lower cheek teeth', 'lower-left', 'lower-right'],
  ['Incisors', 'upper-incisors', 'lower-incisors'],
];
/** A region with its side: "Left cheek", "Both cheeks" stays "Cheek, both sides". */
export function regionWords(region: RegionId, side?: 'left' | 'right' | 'both', jaw?: 'upper' | 'lower'): string {
  const words = partWords(region, jaw);
  const jawed = jaw ? words.charAt(0).toUpperCase() + words.slice(1) : regions[region].label;
  if (side === 'both') return `${jawed}, both sides`;
  return side ? `${jawed}, ${side}` : jawed;
}
/** A place for the eye. A missing place says so: nothing is filled in. */
export function placeWords(place: Place | null | undefined): string {
  if (!place) return 'No place said';
  if ('teeth' in place) return teethWords(place.teeth);
  if ('spaces' in place) return place.spaces.map(([a, b]) => `gap ${a}/${b}`).join(', ');
  if ('rows' in place) return rowsWords(place.rows);
  return regionWords(place.region, place.side, place.jaw) + (place.opposite?.length ? `, level with ${teethWords(place.opposite)}` : '');
}
