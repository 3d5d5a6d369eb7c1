/** Regions outside and inside the mouth (contract section 4). */
export interface RegionEntry { readonly label: string; readonly where: 'outside' | 'inside'; readonly paired: boolean; readonly say: readonly string[] }
export const regions = {
  'temporomandibular-joint': { label: 'Jaw joint', where: 'outside', paired: true, say: ['temporomandibular joint(s)'] },
  masseter: { label: 'Masseter', where: 'outside', paired: true, say: ['masseter(s)'] },
  temporalis: { label: 'Temporalis', where: 'outside', paired: true, say: ['temporalis'] },
  mandible: { label: 'Lower jaw bone', where: 'outside', paired: true, say: ['mandible(s)'] },
  maxilla: { label: 'Upper jaw bone', where: 'outside', paired: true, say: ['maxilla'] },
  sinus: { label: 'Sinus', where: 'outside', paired: true, say: ['sinus(es)'] },
  'frontal-sinus': { label: 'Frontal sinus', where: 'outside', paired: true, say: ['frontal sinus(es)'] },
  'maxillary-sinus': { label: 'Maxillary sinus', where: 'outside', paired: true, say: ['maxillary sinus(es)'] },
  'lymph-nodes': { label: 'Lymph nodes', where: 'outside', paired: true, say: ['lymph node(s)'] },
  'salivary-gland': { label: 'Salivary gland', where: 'outside', paired: true, say: ['salivary gland(s)'] },
  poll: { label: 'Poll', where: 'outside', paired: false, say: ['poll'] },
  nostril: { label: 'Nostril', where: 'outside', paired: true, say: ['nostril(s)'] },
  eye: { label: 'Eye', where: 'outside', paired: true, say: ['eye(s)'] },
  face: { label: 'Face', where: 'outside', paired: false, say: ['face'] },
  head: { label: 'Head', where: 'outside', paired: false, say: ['head'] },
  lips: { label: 'Lips', where: 'inside', paired: false, say: ['lip(s)'] },
  commissure: { label: 'Corner of the mouth', where: 'inside', paired: true, say: ['commissure(s)'] },
  gums: { label: 'Gums', where: 'inside', paired: false, say: ['gum(s)'] },
  bars: { label: 'Bars', where: 'inside', paired: true, say: ['bar(s)'] },
  tongue: { label: 'Tongue', where: 'inside', paired: false, say: ['tongue'] },
  cheek: { label: 'Cheek', where: 'inside', paired: true, say: ['cheek(s)'] },
  palate: { label: 'Palate', where: 'inside', paired: false, say: ['palate'] },
  'floor-of-mouth': { label: 'Floor of the mouth', where: 'inside', paired: false, say: ['floor of [the] mouth'] },
  mucosa: { label: 'Mucosa', where: 'inside', paired: false, say: ['mucosa'] },
  mouth: { label: 'Mouth', where: 'inside', paired: false, say: ['mouth'] },
  incisors: { label: 'Incisors', where: 'inside', paired: false, say: ['incisor(s)'] },
  'cheek-teeth': { label: 'Cheek teeth', where: 'inside', paired: false, say: ['cheek teeth'] },
  'jaw-movement': { label: 'Jaw movement', where: 'inside', paired: false, say: ['jaw movement'] },
} as const satisfies Record<string, RegionEntry>;
export type RegionId = keyof typeof regions;
export const regionIds = Object.keys(regions) as [RegionId, ...RegionId[]];
