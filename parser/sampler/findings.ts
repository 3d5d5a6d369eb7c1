/** Findings as a practitioner says them, in either order, with what they mean. */
import type { Grade, Measure } from '../contract/item.ts';
import type { FindingBody } from '../grammar/made.ts';
import { conditionIds, conditions, type ConditionId } from '../lexicon/conditions.ts';
import { qualifierSay, severitySay, surfaceSay } from '../lexicon/modifiers.ts';
import { fractureSay, scales, type ScaleId } from '../lexicon/scales.ts';
import { severityIds, type QualifierId, type SeverityId, type SurfaceId } from '../lexicon/surfaces.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { chance, formOf, join, pick, weighted, whole, type Random } from './draw.ts';
import { drawPlace, drawRegion, drawRow, drawTeeth, type Said } from './places.ts';
import { sayNumber } from './spoken.ts';

/** What is met every day is drawn more often. */
const daily = new Set<ConditionId>([
  'sharp-enamel-points',
  'hook',
  'ramp',
  'step',
  'wave',
  'diastema',
  'food-packing',
  'periodontal-pocket',
  'mobility',
  'fracture',
  'ulcer',
  'wolf-tooth',
  'retained-cap',
  'overlong',
  'missing',
  'infundibular-caries',
  'peripheral-caries',
  'exaggerated-transverse-ridges',
  'calculus',
  'displaced',
]);
const drawn = conditionIds.filter((id) => id !== 'abnormality' && conditions[id].say.length > 0);
export const drawCondition = (random: Random): ConditionId =>
  pick(random, chance(random, 0.6) ? drawn.filter((id) => daily.has(id)) : drawn);

/** Which qualifiers a condition takes, by the words of the record. */
const qualifiersOf: Readonly<Partial<Record<ConditionId, readonly QualifierId[]>>> = {
  hook: ['rostral', 'caudal'],
  ramp: ['rostral', 'caudal'],
  diastema: ['open', 'valve'],
  fracture: ['sagittal', 'slab', 'undisplaced'],
  'peripheral-caries': ['active', 'inactive'],
  discharge: ['purulent', 'malodorous'],
  swelling: ['acute', 'chronic'],
  ulcer: ['chronic', 'acute'],
};
const surfacesOf: Readonly<Partial<Record<ConditionId, readonly SurfaceId[]>>> = {
  'periodontal-pocket': ['buccal', 'lingual', 'palatal'],
  displaced: ['buccal', 'lingual'],
};
const units = { mm: ['mil', 'mil', 'mil', 'millimetres', 'mills'], cm: ['centimetres'], degree: ['degrees'] } as const;

export function drawMeasure(random: Random, what: Measure['what']): Said<Measure> {
  const unit = what === 'angle' ? ('degree' as const) : ('mm' as const);
  const value = unit === 'degree' ? whole(random, 10, 45) : chance(random, 0.08) ? whole(random, 0, 9) + 0.5 : whole(random, 1, 12);
  const until = unit === 'mm' && Number.isInteger(value) && chance(random, 0.08) ? value + whole(random, 1, 3) : undefined;
  const about = chance(random, 0.1);
  const amount =
    until === undefined
      ? value % 1 === 0.5 && value > 1 && chance(random, 0.5)
        ? `${sayNumber(value - 0.5)} and a half`
        : sayNumber(value)
      : `${sayNumber(value)} to ${sayNumber(until)}`;
  return {
    say: join(about ? pick(random, ['about', 'around', 'roughly']) : '', amount, pick(random, units[unit])),
    means: { what, value: until === undefined ? value : [value, until], unit, about },
  };
}

function drawGrade(random: Random, scale: ScaleId): Said<Grade> {
  const value = pick(
    random,
    scales[scale].values.filter((v) => /^[\d.]+$/.test(v) && v !== '1.2'),
  );
  const out = scale === 'body-condition' ? ' out of nine' : scale === 'body-condition-0-5' ? ' out of five' : '';
  const number = sayNumber(Number(value)).replace('nought point', 'zero point');
  return {
    say: out === '' ? `${pick(random, scale === 'eotrh' ? ['grade', 'stage'] : ['grade'])} ${number}` : `${number}${out}`,
    means: { scale, value },
  };
}

function drawSeverity(random: Random): Said<{ severity: SeverityId; severitySaid?: string }> {
  const severity = pick(random, severityIds);
  const say = formOf(
    random,
    severitySay[severity].filter((form) => !/\[/.test(form)),
  );
  return { say: say.replace(/ly$/, ''), means: { severity, ...(say.startsWith(severity) ? {} : { severitySaid: say }) } };
}

const isNoun = (form: string): boolean => !/(ed|ing|en|ly|wavy|loose|mobile|wobbly|sore|red|ready)$/.test(form.split(' ').at(-1) ?? '');

/** One finding that is there, suspected or ruled out. */
export function drawFinding(random: Random, id = drawCondition(random)): Said<FindingBody> {
  if (id === 'body-condition') return scored(random);
  return weighted(random, [
    [7, () => present(random, id)],
    [1, () => suspected(random, id)],
    [2, () => absent(random, id)],
  ])();
}

function scored(random: Random): Said<FindingBody> {
  const { say, means } = drawGrade(random, chance(random, 0.5) ? 'body-condition' : 'body-condition-0-5');
  return {
    say: `${pick(random, ['body condition score', 'body condition', 'condition score'])} ${say}`,
    means: finding('body-condition', { grade: means }),
  };
}

const finding = (condition: ConditionId, more: Partial<FindingBody>): FindingBody => ({
  kind: 'finding',
  condition,
  presence: 'present',
  when: 'now',
  place: null,
  ...more,
});

/** The plain names of a condition: what a degree or a quality may stand before. */
function nameOf(random: Random, id: ConditionId, noun: boolean, plain = false): string {
  // A name with a side of the tooth in it is a finding with a surface: left out where nothing else is told.
  const forms = (conditions[id] as ConditionEntry).say.filter(
    (form) => !(plain && form.includes('buccal|lingual')) && !form.includes('rostral|caudal'),
  );
  for (let i = 0; i < 8; i += 1) {
    const form = formOf(random, forms);
    if (!noun || isNoun(form)) return form;
  }
  return formOf(random, forms);
}

function present(random: Random, id: ConditionId): Said<FindingBody> {
  const entry = conditions[id] as ConditionEntry;
  const place = drawPlace(random, id);
  const [graded, klass] =
    id === 'fracture' && chance(random, 0.15)
      ? [undefined, pick(random, Object.keys(fractureSay))]
      : [entry.scale && id !== 'fracture' && chance(random, 0.5) ? drawGrade(random, entry.scale as ScaleId) : undefined, undefined];
  const measure = entry.measure && graded === undefined && chance(random, 0.5) ? drawMeasure(random, entry.measure) : undefined;
  const degree = graded === undefined && measure === undefined && chance(random, 0.3) ? drawSeverity(random) : undefined;
  const qualifier = klass === undefined && qualifiersOf[id] && chance(random, 0.3) ? pick(random, qualifiersOf[id]) : undefined;
  const surface = surfacesOf[id] && qualifier === undefined && chance(random, 0.3) ? pick(random, surfacesOf[id]) : undefined;
  const name = klass
    ? formOf(random, fractureSay[klass] as readonly string[])
    : nameOf(random, id, degree !== undefined || qualifier !== undefined || surface !== undefined);
  const quality = join(
    degree?.say,
    surface && formOf(random, surfaceSay[surface].slice(0, 1)).replace(/ly$/, ''),
    qualifier && formOf(random, qualifierSay[qualifier].slice(0, 1)).replace(/ly$/, ''),
  );
  const size = join(graded?.say, measure?.say);
  const named =
    id === 'sharp-enamel-points'
      ? /\b(buccal|cheek|outside|outer)\b/.test(name)
        ? ('buccal' as const)
        : /\b(lingual|inside|inner)\b/.test(name)
          ? ('lingual' as const)
          : undefined
      : undefined;
  const means = finding(id, {
    ...(named ? { surfaces: [named] } : {}),
    place: place?.means ?? null,
    ...(graded ? { grade: graded.means } : klass ? { grade: { scale: 'fracture', value: klass } } : {}),
    ...(measure ? { measures: [measure.means] } : {}),
    ...(degree?.means ?? {}),
    ...(qualifier
      ? { qualifiers: [qualifier] }
      : id === 'discharge' && name.startsWith('clear ')
        ? { qualifiers: ['clear' as const] }
        : {}),
    ...(surface ? { surfaces: [surface] } : {}),
    ...homeOf(entry),
  });
  const say =
    place === undefined
      ? join(quality, name, size)
      : weighted(random, [
          [6, () => join(place.say, quality, name, size)],
          [3, () => join(quality, name, place.joint, place.say, size)],
          [2, () => join(quality, name, size, place.joint, place.say)],
        ])();
  return { say, means };
}

const homeOf = (entry: ConditionEntry): Partial<FindingBody> =>
  entry.home === undefined ? {} : { place: { region: entry.home as 'nostril' } };

function suspected(random: Random, id: ConditionId): Said<FindingBody> {
  const place = drawPlace(random, id);
  const name = nameOf(random, id, true, true);
  const cue = pick(random, ['possible', 'suspected', 'query', 'probable', 'suspect']);
  const say =
    place === undefined ? join(cue, name) : chance(random, 0.5) ? join(place.say, cue, name) : join(cue, name, place.joint, place.say);
  return { say, means: finding(id, { presence: 'suspected', place: place?.means ?? null, ...homeOf(conditions[id]) }) };
}

function absent(random: Random, id: ConditionId): Said<FindingBody> {
  const place = chance(random, 0.4) ? drawPlace(random, id) : undefined;
  const name = nameOf(random, id, true, true);
  const tail = chance(random, 0.2) ? pick(random, ['seen', 'found', 'felt']) : '';
  return {
    say:
      place === undefined
        ? join('no', name, tail)
        : chance(random, 0.6)
          ? join('no', name, place.joint, place.say)
          : join(place.say, 'no', name),
    means: finding(id, { presence: 'absent', place: place?.means ?? null }),
  };
}

/** "no hooks waves or steps". */
export function drawRuledOut(random: Random): Said<readonly FindingBody[]> {
  const ids = ['hook', 'ramp', 'wave', 'step', 'ulcer', 'diastema', 'fracture'] as const;
  const start = whole(random, 0, ids.length - 3);
  const [a, b, c] = ids.slice(start, start + 3) as [ConditionId, ConditionId, ConditionId];
  const plural = {
    hook: 'hooks',
    ramp: 'ramps',
    wave: 'waves',
    step: 'steps',
    ulcer: 'ulcers',
    diastema: 'diastemata',
    fracture: 'fractures',
  } as Record<string, string>;
  return { say: `no ${plural[a]} ${plural[b]} or ${plural[c]}`, means: [a, b, c].map((id) => finding(id, { presence: 'absent' })) };
}

/** "upper right all normal", "tongue unremarkable". */
export function drawNormal(random: Random): Said<FindingBody> {
  const place = weighted(random, [
    [3, () => drawRow(random)],
    [2, () => drawRegion(random, ['tongue', 'cheek', 'lips', 'palate', 'bars', 'temporomandibular-joint', 'masseter', 'lymph-nodes'])],
    [1, () => drawTeeth(random)],
  ])();
  return {
    say: join(place.say.replace(/^the /, ''), pick(random, ['normal', 'all normal', 'healthy', 'unremarkable', 'clear', 'looks normal'])),
    means: finding('abnormality', { presence: 'absent', place: place.means }),
  };
}
