/** Items as sentences for paper: for an owner in plain words, for a veterinarian in the trade's. Nothing is added that an item does not hold. */
import type { Finding, Item, Measure, Place } from '../../parser/contract/item.ts';
import { labelOf, partWords } from '../../parser/labels.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { procedures } from '../../parser/lexicon/procedures.ts';
import { regions } from '../../parser/lexicon/regions.ts';
import { scales } from '../../parser/lexicon/scales.ts';
import type { ConditionEntry } from '../../parser/lexicon/types.ts';

export type Reader = 'owner' | 'vet';
type Amount = number | [number, number];

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
/** The first word in small letters, unless it is an abbreviation. */
export const small = (words: string): string => (/^[A-Z]{2}/.test(words) ? words : words.charAt(0).toLowerCase() + words.slice(1));
export const plain = (id: string): string => id.replaceAll('-', ' ');
export const listed = (words: readonly string[], and = 'and'): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${and} ${words.at(-1)}`;
export const sentence = (words: string): string => (/[.?!]$/.test(words) ? capital(words) : `${capital(words)}.`);

export const amountWords = (amount: Amount): string => (Array.isArray(amount) ? `${amount[0]} to ${amount[1]}` : String(amount));
const units = { mm: '\u00a0mm', cm: '\u00a0cm', degree: '°' } as const;
const direction = { height: ' high', depth: ' deep', width: ' wide', length: ' long', angle: '', excursion: '' } as const;
const measureWords = ({ what, value, unit, about, said }: Measure): string =>
  value === undefined
    ? (said ?? '')
    : `${about ? 'about ' : ''}${amountWords(value)}${unit ? units[unit] : ', no unit said'}${direction[what]}`;

/** Sides of a tooth in plain words; a veterinarian reads the terms. */
const sides: Readonly<Record<string, string>> = {
  buccal: 'cheek side',
  lingual: 'tongue side',
  palatal: 'palate side',
  labial: 'lip side',
  vestibular: 'outer side',
  occlusal: 'chewing surface',
  mesial: 'front side',
  distal: 'back side',
  rostral: 'front',
  caudal: 'back',
  interproximal: 'side towards its neighbour',
};
const sideWords = (surfaces: readonly string[]): string => listed(surfaces.map((s) => sides[s] ?? plain(s)));

/** "106 to 109, 111 and 206": three or more neighbours of a quarter in a row are a stretch. */
export function teethWords(teeth: readonly string[]): string {
  const runs: string[][] = [];
  for (const tooth of teeth) {
    const run = runs.at(-1);
    if (run && run[0]![0] === tooth[0] && Number(tooth) === Number(run.at(-1)) + 1) run.push(tooth);
    else runs.push([tooth]);
  }
  return listed(runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run)));
}
/** Where, without a preposition: "106 and 206", "309/310", "left cheek". */
export function placeWords(place: Place | null | undefined): string {
  if (!place) return '';
  if ('teeth' in place) return teethWords(place.teeth);
  if ('spaces' in place) return listed(place.spaces.map(([a, b]) => `${a}/${b}`));
  if ('rows' in place)
    return `${listed(place.rows.map(plain))}${place.rows.every((row) => row.endsWith('incisors')) ? '' : place.rows.length > 1 ? ' rows' : ' row'}`;
  const part = partWords(place.region, place.jaw);
  const side = place.side === 'both' ? `${part} on both sides` : `${place.side ? `${place.side} ` : ''}${part}`;
  return `${side}${place.opposite?.length ? `, level with ${listed(place.opposite)}` : ''}`;
}
/** `of`: an end or a side of the tooth was named just before ("at the front of 106"). */
const at = (place: Place | null | undefined, of = false): string => {
  if (!place) return '';
  // The jaw moves to a side; nothing is "at the movement".
  if ('region' in place && place.region === 'jaw-movement')
    return place.side === undefined ? '' : place.side === 'both' ? ' to both sides' : ` to the ${place.side}`;
  const words = placeWords(place);
  if (of && !('spaces' in place)) return ` of ${'teeth' in place ? '' : 'the '}${words}`;
  if ('teeth' in place) return ` at ${words}`;
  if ('spaces' in place)
    return ` between ${listed(
      place.spaces.map(([a, b]) => `${a} and ${b}`),
      'and between',
    )}`;
  return 'rows' in place ? ` along the ${words}` : ` at the ${words}`;
};

/** Conditions whose label says how a tooth is, not what it has. */
const adjectives = new Set([
  'overlong',
  'cupped-out',
  'worn',
  'out-of-occlusion',
  'sharp',
  'expired',
  'discoloured',
  'missing',
  'previously-extracted',
  'erupting',
  'unerupted',
  'impacted',
  'supernumerary',
  'displaced',
  'rotated',
  'overcrowded',
  'drifted',
  'in-wear',
  'erupted',
  'dull-percussion',
]);
const after = new Set(['left', 'right', 'upper', 'lower', 'clinical', 'radiographic']);
const isEnd = (q: string): boolean => q === 'rostral' || q === 'caudal';
/** Conditions of the incisors as a whole: where they are needs no saying. */
const ofBite = (f: Finding): boolean => (conditions[f.condition] as ConditionEntry).group === 'bite';

const gradeWords = ({ grade }: Finding): string => {
  if (!grade) return '';
  if (grade.scale === 'spoken') return ` grade ${grade.value} as said`;
  if (grade.scale.startsWith('body-condition'))
    return ` ${grade.value} on the scale of ${scales[grade.scale].label.match(/\((.*)\)/)?.[1] ?? ''}`;
  return ` ${/^\d/.test(grade.value) ? 'grade ' : ''}${grade.value}`;
};
/** What is found, without where: "valve diastema", "hook at the front". Two findings with the same words share a sentence. */
function what(f: Finding, reader: Reader): string {
  const qualifiers = f.qualifiers ?? [];
  const terms = reader === 'vet' ? [...qualifiers.filter(isEnd), ...(f.surfaces ?? [])] : [];
  const before = [
    f.change,
    f.severity ?? (f.severitySaid && `“${f.severitySaid}”`),
    ...qualifiers.filter((q) => !after.has(q) && !isEnd(q)).map(plain),
    ...terms,
  ].filter(Boolean);
  const later = qualifiers.filter((q) => after.has(q));
  const pulp = f.pulpHorn !== undefined ? `, pulp horn ${f.pulpHorn}` : '';
  const shape = `${f.crest?.length ? `, crest at ${listed(f.crest)}` : ''}${f.long ? `, long on the ${plain(f.long)}` : ''}`;
  return `${[...before, small(labelOf(f.condition))].join(' ')}${gradeWords(f)}${later.length ? ` (${listed(later.map(plain))})` : ''}${pulp}${shape}${reader === 'owner' ? endWords(f) : ''}`;
}
const endWords = (f: Finding): string => {
  const end = (f.qualifiers ?? []).filter(isEnd).map((q) => (q === 'rostral' ? 'front' : 'back'));
  return `${end.length ? ` at the ${listed(end)}` : ''}${f.surfaces?.length ? ` on the ${sideWords(f.surfaces)}` : ''}`;
};
const measured = (f: Finding): string => (f.measures?.length ? ` (${f.measures.map(measureWords).join(', ')})` : '');

/** Findings as sentences, those of one kind together: present and suspected first, then ruled out, then normal. */
export function findingSentences(findings: readonly Finding[], reader: Reader): readonly string[] {
  const normal = findings.filter((f) => f.condition === 'abnormality' && f.presence === 'absent');
  const out = findings.filter((f) => f.presence === 'absent' && !normal.includes(f));
  const found = findings.filter((f) => f.presence !== 'absent');
  const groups = grouped(found, (f) => `${f.presence} ${f.when} ${what(f, reader)}${f.said ?? ''}`);
  return [...groups.map((group) => present(group, reader)), ...ruledOut(out), ...(normal.length ? allNormal(normal) : [])].map(sentence);
}
const grouped = <T>(list: readonly T[], key: (one: T) => string): readonly (readonly T[])[] => {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups.values()];
};
const time: Readonly<Record<Finding['when'], string>> = { now: '', before: 'from before: ', 'after-treatment': 'after the work: ' };

function present(group: readonly Finding[], reader: Reader): string {
  const [first] = group as [Finding];
  const lead = `${time[first.when]}${first.presence === 'suspected' ? 'suspected ' : ''}`;
  const said = first.said ? ` (“${first.said}”)` : '';
  const placed = group.filter((f) => f.place && !ofBite(f));
  if (placed.length === 0) return `${lead}${what(first, reader)}${group.map(measured).join('')}${said}`;
  const teeth = placed.flatMap((f) => (f.place && 'teeth' in f.place ? f.place.teeth : []));
  if (adjectives.has(first.condition) && placed.every((f) => f.place && !('spaces' in f.place))) {
    const verb = first.presence === 'suspected' ? 'suspected' : teeth.length === 1 && placed.length === 1 ? 'is' : 'are';
    return `${time[first.when]}${listed(placed.map((f) => `${placeWords(f.place)}${measured(f)}`))} ${verb} ${what(first, reader)}${said}`;
  }
  const of = reader === 'owner' && endWords(first) !== '';
  const allTeeth = placed.every((f) => f.place && 'teeth' in f.place);
  const where = allTeeth
    ? `${of ? ' of' : ' at'} ${placed.every((f) => !f.measures?.length) ? teethWords([...teeth].sort()) : listed(placed.map((f) => `${placeWords(f.place)}${measured(f)}`))}`
    : ` ${listed(placed.map((f) => `${at(f.place, of)}${measured(f)}`.trim()))}`;
  return `${lead}${what(first, reader)}${where}${said}`;
}
/** "No hook, wave or step at 106": one sentence a place. */
const ruledOut = (out: readonly Finding[]): readonly string[] =>
  grouped(out, (f) => `${f.when}${at(f.place)}`).map(
    (group) =>
      `${time[group[0]!.when]}no ${listed(
        group.map((f) => `${small(labelOf(f.condition))}${f.surfaces?.length ? ` (${sideWords(f.surfaces)})` : ''}`),
        'or',
      )}${at(group[0]!.place)}`,
  );
const allNormal = (normal: readonly Finding[]): readonly string[] =>
  grouped(normal, (f) => f.when).map(
    (group) =>
      `${time[group[0]!.when]}${group.some((f) => !f.place) && group.length === 1 ? 'nothing abnormal' : `normal: ${listed(group.map((f) => placeWords(f.place) || 'the whole'))}`}`,
  );

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;
const who = (by: Of<'treatment'>['by']): string =>
  !by ? '' : typeof by === 'string' ? `by the ${plain(by)}` : `by ${[by.name, by.role && plain(by.role)].filter(Boolean).join(', ')}`;
const instruments: Readonly<Record<string, string>> = {
  hand: 'by hand',
  motorised: 'with a motorised instrument',
  fingers: 'with the fingers',
  forceps: 'with forceps',
  elevator: 'with an elevator',
};

/** "Reduced at 106 and 206, by 3 mm, with a motorised instrument, water cooled." */
export function treatmentSentence(t: Of<'treatment'>, reader: Reader): string {
  const { done, label } = procedures[t.procedure];
  const lead: Readonly<Record<typeof t.state, string>> = {
    done,
    planned: `planned: ${small(label)}`,
    advised: `advised: ${small(label)}`,
    declined: `declined: ${small(label)}`,
    'not-done': `not done: ${small(label)}`,
    attempted: `attempted: ${small(label)}`,
    'part-done': `partly ${done}`,
  };
  const amount =
    t.amountMm === undefined
      ? t.amountSaid
      : `${t.amountBasis === 'to' ? 'to' : t.amountBasis === 'level' ? 'level,' : 'by'} ${amountWords(t.amountMm)}\u00a0mm`;
  const more = [
    t.surfaces?.length && (reader === 'vet' ? listed(t.surfaces) : `on the ${sideWords(t.surfaces)}`),
    (t.qualifiers ?? []).map(plain).join(' '),
    amount,
    t.instrument && instruments[t.instrument],
    t.waterCooled === true && 'water cooled',
    t.waterCooled === false && 'without water',
    who(t.by),
    t.supervisedBy && `supervised ${who(t.supervisedBy)}`,
    t.outcome && plain(t.outcome),
    t.reason,
  ];
  return sentence([`${lead[t.state]}${at(t.place)}`, ...more].filter(Boolean).join(', '));
}
const routes = { iv: 'into the vein', im: 'into the muscle', oral: 'by mouth', sublingual: 'under the tongue' } as const;
const dose = (d: Of<'sedation'>['dose']): string =>
  !d ? '' : d.value === undefined ? (d.said ?? '') : `${amountWords(d.value)}${d.unit ? `\u00a0${d.unit}` : ', no unit said'}`;
export const sedationSentence = (s: Of<'sedation'>): string =>
  sentence(
    s.given
      ? [
          `sedation${s.topUp ? ', top-up' : ''}${s.agent ? `: ${s.agent}` : ''}`,
          dose(s.dose),
          s.route && routes[s.route],
          s.byName ? `by ${s.byName}` : who(s.by),
          s.time,
          s.effect,
        ]
          .filter(Boolean)
          .join(', ')
      : 'no sedation',
  );
export const medicationSentence = (m: Of<'medication'>): string =>
  sentence(
    [`${m.state ? `${m.state}: ` : ''}${m.agent}`, dose(m.dose), m.route && routes[m.route], m.for && `for ${m.for}`, who(m.by)]
      .filter(Boolean)
      .join(', '),
  );

const actions: Readonly<Record<Of<'follow-up'>['action'], string>> = {
  recheck: 'see again',
  'refer-to-veterinarian': 'refer to the veterinarian',
  monitor: 'keep an eye on',
  'advise-owner': 'for the owner',
  'send-report': 'send a report',
  'rest-from-bit': 'rest from the bit',
};
export function followUpSentence(f: Of<'follow-up'>): string {
  const time =
    f.after &&
    ('said' in f.after
      ? f.after.said
      : `in ${f.after.about ? 'about ' : ''}${amountWords(f.after.value)} ${f.after.unit}${f.after.value === 1 ? '' : 's'}`);
  const state = f.state && f.state !== 'planned' ? ` (${plain(f.state)})` : '';
  const about = [placeWords(f.place), f.reason, f.text].filter(Boolean).join(', ');
  return sentence(
    `${[actions[f.action], time, f.to && `to ${f.to}`, f.urgency].filter(Boolean).join(' ')}${state}${about ? `: ${about}` : ''}`,
  );
}
export const notExaminedSentence = (n: Of<'not-examined'>): string =>
  sentence(
    `not ${n.means === 'felt' ? 'felt' : n.means === 'seen' ? 'seen' : 'examined'}: ${placeWords(n.place) || 'the whole'}${n.reason ? ` (${n.reason})` : ''}`,
  );

/** The part of the exam under which a finding is read, in the order of an exam. */
export const parts = [
  'Outside the mouth',
  'Incisors',
  'Canines, wolf teeth and bars',
  'Upper cheek teeth',
  'Lower cheek teeth',
  'Cheeks, tongue and soft tissue',
  'The whole mouth and horse',
] as const;
export function partOf(finding: Finding): (typeof parts)[number] {
  const { place } = finding;
  if (ofBite(finding)) return parts[1];
  if (!place) return parts[6];
  if ('rows' in place)
    return place.rows.some((row) => row.endsWith('incisors'))
      ? parts[1]
      : place.rows.some((row) => row.startsWith('upper'))
        ? parts[3]
        : parts[4];
  if ('region' in place) {
    if (place.region === 'incisors') return parts[1];
    if (place.region === 'bars') return parts[2];
    if (place.region === 'cheek-teeth') return place.jaw === 'lower' ? parts[4] : parts[3];
    if (place.region === 'mouth' || place.region === 'jaw-movement') return parts[6];
    return regions[place.region].where === 'outside' ? parts[0] : parts[5];
  }
  const tooth = 'teeth' in place ? place.teeth[0]! : place.spaces[0]![1];
  const position = Number(tooth.slice(1));
  if (position <= 3) return parts[1];
  if (position <= 5) return parts[2];
  return [1, 2, 5, 6].includes(Number(tooth[0])) ? parts[3] : parts[4];
}
