/** Published scales (contract section 6), never edited once used: add a new one. `spoken` keeps any other grade as it was said. */
export interface ScaleEntry { readonly label: string; readonly values: readonly string[]; readonly source: string }
export const scales = {
  'infundibular-caries': { label: 'Infundibular caries', values: ['0', '1', '2', '3', '4'], source: 'Honma et al. 1962, modified by Dacre 2005' },
  'peripheral-caries': { label: 'Peripheral caries', values: ['0', '1', '1.1', '1.2', '2', '3', '4'], source: 'modified Honma, Borkent & Dixon 2017' },
  eotrh: { label: 'EOTRH', values: ['0', '1', '2', '3', '4'], source: 'Hüls, Bienert & Staszyk 2012; Rehrl et al. 2018' },
  'periodontal-disease': { label: 'Periodontal disease', values: ['0', '1', '2', '3', '4'], source: 'AVDC nomenclature' },
  mobility: { label: 'Mobility', values: ['0', '1', '2', '3'], source: 'AVDC tooth mobility index' },
  furcation: { label: 'Furcation', values: ['1', '2', '3'], source: 'AVDC furcation index' },
  fracture: { label: 'Fracture', values: ['EI', 'EF', 'UCF', 'CCF', 'UCRF', 'CCRF', 'RF'], source: 'AVDC tooth fracture classification' },
  'body-condition': { label: 'Body condition (1 to 9)', values: ['1', '1.5', '2', '2.5', '3', '3.5', '4', '4.5', '5', '5.5', '6', '6.5', '7', '7.5', '8', '8.5', '9'], source: 'Henneke et al. 1983' },
  'body-condition-0-5': { label: 'Body condition (0 to 5)', values: ['0', '0.5', '1', '1.5', '2', '2.5', '3', '3.5', '4', '4.5', '5'], source: 'used in Britain, Ireland, Australia, New Zealand; from memory, not confirmed' },
} as const satisfies Record<string, ScaleEntry>;
export type ScaleId = keyof typeof scales;
export const scaleIds = Object.keys(scales) as [ScaleId, ...ScaleId[]];

/** Fracture classes as they are said (AVDC tooth fracture classification); a class is only read from these words. */
export const fractureSay: Readonly<Record<string, readonly string[]>> = {
  EI: ['enamel infraction', 'e i', 'hairline crack'],
  EF: ['enamel fracture'],
  UCRF: ['uncomplicated crown root fracture', 'u c r f'],
  CCRF: ['complicated crown root fracture', 'c c r f'],
  UCF: ['uncomplicated crown fracture', 'u c f'],
  CCF: ['complicated crown fracture', 'c c f'],
  RF: ['root fracture', 'fractured root'],
};

/** "M two" behind a tooth is its mobility (AVDC); alone it may as well be the second molar, and is asked. */
export const mobilitySay: Readonly<Record<string, readonly string[]>> = { 1: ['m one', 'm1'], 2: ['m two', 'm2'], 3: ['m three', 'm3'] };
