/** Regions outside and inside the mouth (contract section 4). */
export interface RegionEntry { readonly label: string; readonly where: 'outside' | 'inside'; readonly paired: boolean; readonly say: readonly string[] }
export const regions = {
  'temporomandibular-joint': { label: 'Jaw joint', where: 'outside', paired: true, say: ['temporomandibular joint(s)', 't m j(s)', 'tmj(s)', 't m joint(s)', 'tm joint(s)', 'jaw joint(s)', 'joint(s)', 'temporo mandibular joint(s)'] },
  masseter: { label: 'Masseter', where: 'outside', paired: true, say: ['masseter(s)', 'masseter muscle(s)', 'masseteric muscle(s)', 'cheek muscle(s)', 'chewing muscle(s)', 'chewing muscles', 'jaw muscle(s)'] },
  temporalis: { label: 'Temporalis', where: 'outside', paired: true, say: ['temporalis', 'temporal', 'temporal muscle(s)', 'muscles above the eye(s)', 'temporalis muscle(s)', 'temporals'] },
  mandible: { label: 'Lower jaw bone', where: 'outside', paired: true, say: ['mandible(s)', 'lower jaw bone', 'lower jaw', 'bottom jaw', '(his|her|its) (bottom|lower) jaw', '(under|underneath|beneath) (the|his|her|its) jaw', '(underside|angle|edge|line) of the jaw', 'jaw line', 'jawline', 'mandibular (body|ramus|bone)', 'jaw bone(s)', 'ramus'] },
  maxilla: { label: 'Upper jaw bone', where: 'outside', paired: true, say: ['maxilla(s|e)', 'upper jaw', 'upper jaw bone'] },
  sinus: { label: 'Sinus', where: 'outside', paired: true, say: ['sinus(es)'] },
  'frontal-sinus': { label: 'Frontal sinus', where: 'outside', paired: true, say: ['frontal sinus(es)'] },
  'maxillary-sinus': { label: 'Maxillary sinus', where: 'outside', paired: true, say: ['maxillary sinus(es)'] },
  'lymph-nodes': { label: 'Lymph nodes', where: 'outside', paired: true, say: ['[(submandibular|mandibular)] lymph node(s)', 'submandibular node(s)', 'mandibular node(s)', 'node(s)', 'gland(s)', '[lymph] (node(s)|gland(s)) (under|beneath|below|between|behind) (the|his|her) (jaw|jaws)', 'lymph gland(s)', 'l n(s)', 'ln(s)'] },
  'salivary-gland': { label: 'Salivary gland', where: 'outside', paired: true, say: ['salivary gland(s)', 'parotid(s)', 'parotid gland(s)'] },
  poll: { label: 'Poll', where: 'outside', paired: false, say: ['poll'] },
  nostril: { label: 'Nostril', where: 'outside', paired: true, say: ['nostril(s)', 'nose', 'nasal', 'nares', 'nasal passage(s)', '(airflow|air flow)'] },
  eye: { label: 'Eye', where: 'outside', paired: true, say: ['eye(s)', 'ocular'] },
  face: { label: 'Face', where: 'outside', paired: false, say: ['face', 'facial', 'facial crest(s)'] },
  head: { label: 'Head', where: 'outside', paired: false, say: ['head', '(head|facial) (muscle|muscles|musculature)', '(muscles|musculature) of the head'] },
  lips: { label: 'Lips', where: 'inside', paired: false, say: ['lip(s)'] },
  commissure: { label: 'Corner of the mouth', where: 'inside', paired: true, say: ['commissure(s)', '(corner|corners) of (his|her|its) (mouth|lip|lips)', 'mouth corners', '[lip] corner(s) of the (mouth|lip|lips)', 'lip corner(s)', 'mouth corner(s)'] },
  gums: { label: 'Gums', where: 'inside', paired: false, say: ['gum(s)', 'gingiva(e)', 'gum line'] },
  bars: { label: 'Bars', where: 'inside', paired: true, say: ['bar(s)', '(bar|bars) of (the|his|her) mouth', 'bit space', 'interdental bar(s)'] },
  tongue: { label: 'Tongue', where: 'inside', paired: false, say: ['tongue', '(edge|side|tip|root|base|back|underside) of [(the|his|her)] tongue', 'tongue (tip|edge|edges)', 'frenulum'] },
  cheek: { label: 'Cheek', where: 'inside', paired: true, say: ['cheek(s)', 'buccal mucosa', 'cheek mucosa', '(inside|lining) of [(the|his|her)] cheek(s)', 'inside [(the|his|her)] cheek(s)'] },
  palate: { label: 'Palate', where: 'inside', paired: false, say: ['palate', 'hard palate', 'soft palate', 'roof of (the|his|her) mouth', 'palatine ridges', 'palatal mucosa'] },
  'floor-of-mouth': { label: 'Floor of the mouth', where: 'inside', paired: false, say: ['floor of [the] mouth', 'under the tongue', 'sublingual [(area|region|folds)]'] },
  mucosa: { label: 'Mucosa', where: 'inside', paired: false, say: ['mucosa', 'mucous membrane(s)', 'soft tissue(s)', 'oral mucosa'] },
  mouth: { label: 'Mouth', where: 'inside', paired: false, say: ['[rest of the] mouth', 'oral cavity'] },
  incisors: { label: 'Incisors', where: 'inside', paired: false, say: ['incisor(s)', 'front teeth'] },
  'cheek-teeth': { label: 'Cheek teeth', where: 'inside', paired: false, say: ['cheek teeth', 'cheek tooth', 'molars', 'grinders', 'back teeth'] },
  'jaw-movement': { label: 'Jaw movement', where: 'inside', paired: false, say: ['jaw (movement|motion|movements)', 'chewing movement', 'side to side movement'] },
} as const satisfies Record<string, RegionEntry>;
export type RegionId = keyof typeof regions;
export const regionIds = Object.keys(regions) as [RegionId, ...RegionId[]];
