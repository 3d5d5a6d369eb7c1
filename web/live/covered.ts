/** What of a whole exam was spoken of, and what was not yet: the places that have no tooth in the drawing. Pure. */
import type { DraftItem } from '../../parser/contract/draft.ts';
import type { RegionId } from '../../parser/lexicon/regions.ts';
import { stands } from '../fold.ts';
import { regions } from '../labels.ts';

/** The stations of an exam in the order hands usually go: outside first, then in. Common practice, no source. */
export const stations: readonly { readonly label: string; readonly regions: readonly RegionId[] }[] = [
  { label: 'Head', regions: ['head', 'face', 'poll', 'eye', 'nostril'] },
  { label: 'Jaw joints', regions: ['temporomandibular-joint', 'jaw-movement'] },
  { label: 'Muscles', regions: ['masseter', 'temporalis'] },
  { label: 'Jaw bones', regions: ['mandible', 'maxilla'] },
  { label: 'Sinuses', regions: ['sinus', 'frontal-sinus', 'maxillary-sinus'] },
  { label: 'Nodes', regions: ['lymph-nodes', 'salivary-gland'] },
  { label: 'Lips', regions: ['lips', 'commissure'] },
  { label: 'Bars', regions: ['bars'] },
  { label: 'Gums', regions: ['gums', 'mucosa'] },
  { label: 'Tongue', regions: ['tongue', 'floor-of-mouth'] },
  { label: 'Cheeks', regions: ['cheek'] },
  { label: 'Palate', regions: ['palate'] },
];

/** For each station: spoken of, one side of it spoken of, said not to be examined, or not looked at yet. */
export type Station = {
  readonly label: string;
  readonly state: 'seen' | 'half' | 'not-examined' | 'open';
  /** The side that is left, where it is half. */ readonly left?: 'left' | 'right';
};
const sides = ['left', 'right'] as const;

export const coverage = (items: readonly DraftItem[]): readonly Station[] => {
  const spoken = items.filter(stands).flatMap(({ item }) => {
    const place = 'place' in item ? item.place : null;
    return place && 'region' in place ? [{ region: place.region, side: place.side, unseen: item.kind === 'not-examined' }] : [];
  });
  return stations.map(({ label, regions: here }): Station => {
    const of = spoken.filter(({ region }) => here.includes(region));
    const seen = of.filter(({ unseen }) => !unseen);
    const left = sides.filter(
      (side) => !seen.some((one) => one.side === undefined || one.side === 'both' || one.side === side || !regions[one.region].paired),
    );
    if (left.length === 1) return { label, state: 'half', left: left[0]! };
    return { label, state: left.length === 0 ? 'seen' : of.length > 0 ? 'not-examined' : 'open' };
  });
};
