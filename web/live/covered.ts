/** What of a whole exam was spoken of, and what was not yet: the places that have no tooth in the drawing. Pure. */
import type { DraftItem } from '../../parser/contract/draft.ts';
import type { RegionId } from '../../parser/lexicon/regions.ts';
import { stands } from '../fold.ts';

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

/** For each station: spoken of, said not to be examined, or not looked at yet. */
export type Station = { readonly label: string; readonly state: 'seen' | 'not-examined' | 'open' };
export const coverage = (items: readonly DraftItem[]): readonly Station[] => {
  const seen = new Set<string>();
  const unseen = new Set<string>();
  for (const { item } of items.filter(stands)) {
    const place = 'place' in item ? item.place : null;
    if (place && 'region' in place) (item.kind === 'not-examined' ? unseen : seen).add(place.region);
  }
  return stations.map(({ label, regions }) => ({ label, state: regions.some((r) => seen.has(r)) ? 'seen' : regions.some((r) => unseen.has(r)) ? 'not-examined' : 'open' }));
};
