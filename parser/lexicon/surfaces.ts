/** Surfaces and qualifiers (contract section 5). */
export const surfaceIds = ['buccal', 'lingual', 'palatal', 'labial', 'vestibular', 'occlusal', 'mesial', 'distal', 'rostral', 'caudal', 'interproximal'] as const;
export type SurfaceId = (typeof surfaceIds)[number];
export const qualifierIds = ['rostral', 'caudal', 'open', 'valve', 'sagittal', 'slab', 'displaced', 'undisplaced', 'active', 'inactive', 'purulent', 'malodorous', 'clear', 'generalised', 'focal', 'early', 'healed', 'left', 'right', 'upper', 'lower', 'clinical', 'radiographic', 'old', 'chronic', 'acute'] as const;
export type QualifierId = (typeof qualifierIds)[number];
export const severityIds = ['slight', 'mild', 'moderate', 'marked', 'severe'] as const;
export type SeverityId = (typeof severityIds)[number];
