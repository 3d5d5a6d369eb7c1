/** What one utterance may yield (contract section 2). Ids are stable; labels come from the lexicon. */
import { z } from 'zod';
import { conditionIds } from '../lexicon/conditions.ts';
import { procedureIds } from '../lexicon/procedures.ts';
import { regionIds } from '../lexicon/regions.ts';
import { scaleIds } from '../lexicon/scales.ts';
import { qualifierIds, severityIds, surfaceIds } from '../lexicon/surfaces.ts';
import { deciduousTeeth, permanentTeeth, rowIds, supernumeraryTeeth } from '../lexicon/teeth.ts';
import { Span } from './word.ts';

const teeth = [...permanentTeeth, ...deciduousTeeth, ...supernumeraryTeeth];
/** A tooth of the modified Triadan system, as three digits: "106". */
export const Tooth = z.enum(teeth as [string, ...string[]]);
export type Tooth = string;

/** How a field came to be. There is no fourth way. */
export const How = z.enum(['spoken', 'carried', 'typed']);
export type How = z.infer<typeof How>;

/** A number, a spoken range with both ends, or words that cannot be a number (then `said`). */
export const Amount = z.union([z.number(), z.tuple([z.number(), z.number()])]);
export type Amount = z.infer<typeof Amount>;

const Side = z.enum(['left', 'right', 'both']);
const extra = { opposite: z.array(Tooth).optional(), from: z.literal('group').optional(), said: z.string().optional() };
export const Place = z.union([
  z.object({ teeth: z.array(Tooth).min(1), ...extra }),
  z.object({ spaces: z.array(z.tuple([Tooth, Tooth])).min(1), ...extra }),
  z.object({ rows: z.array(z.enum(rowIds)).min(1), ...extra }),
  z.object({ region: z.enum(regionIds), side: Side.optional(), jaw: z.enum(['upper', 'lower']).optional(), ...extra }),
]);
export type Place = z.infer<typeof Place>;

export const Measure = z.object({
  what: z.enum(['height', 'depth', 'width', 'length', 'angle', 'excursion']),
  value: Amount.optional(),
  unit: z.enum(['mm', 'cm', 'degree']).optional(),
  about: z.boolean().default(false),
  /** Words that cannot be a number: "pea-sized". */
  said: z.string().optional(),
});
export type Measure = z.infer<typeof Measure>;

export const Grade = z.object({ scale: z.enum([...scaleIds, 'spoken']), value: z.string() });
export type Grade = z.infer<typeof Grade>;

/** Where an item came from: law 6, every item can explain itself. */
export const Evidence = z.object({
  utterance: z.string(),
  /** Indices into the utterance's words. */
  words: z.array(z.number().int().min(0)),
  at: Span.optional(),
  /** Posterior mass of the hypotheses that yield the item, 0 to 1; absent where nothing was heard (typed lines). */
  sure: z.number().min(0).max(1).optional(),
  /** Names of the rules that made it, in order. */
  rules: z.array(z.string()),
  repaired: z.boolean().optional(),
  /** Typed by a person: who and when (ISO). */
  by: z.string().optional(),
  when: z.string().optional(),
});
export type Evidence = z.infer<typeof Evidence>;

const common = {
  id: z.string(),
  evidence: Evidence,
  /** Field name to how it came; a field that is not listed was spoken. */
  how: z.record(z.string(), How).default({}),
  /** The earlier item that this one corrects. */
  revises: z.string().optional(),
};
const Who = z.object({ role: z.string().optional(), name: z.string().optional() });
const By = z.union([z.string(), Who]);
const Dose = z.object({
  value: Amount.optional(),
  unit: z.enum(['ml', 'mg', 'mcg', 'mg/kg', 'mcg/kg']).optional(),
  said: z.string().optional(),
});
const Route = z.enum(['iv', 'im', 'oral', 'sublingual']);
const When = z.enum(['now', 'before', 'after-treatment']);

export const Finding = z.object({
  kind: z.literal('finding'),
  condition: z.enum(conditionIds),
  presence: z.enum(['present', 'absent', 'suspected']),
  when: When,
  place: Place.nullable(),
  surfaces: z.array(z.enum(surfaceIds)).optional(),
  severity: z.enum(severityIds).optional(),
  severitySaid: z.string().optional(),
  grade: Grade.optional(),
  measures: z.array(Measure).optional(),
  qualifiers: z.array(z.enum(qualifierIds)).optional(),
  change: z.enum(['new', 'better', 'worse', 'unchanged']).optional(),
  pulpHorn: z.number().int().optional(),
  crest: z.array(Tooth).optional(),
  long: z.string().optional(),
  said: z.string().optional(),
  ...common,
});
export const Treatment = z.object({
  kind: z.literal('treatment'),
  procedure: z.enum(procedureIds),
  state: z.enum(['done', 'planned', 'advised', 'declined', 'not-done', 'attempted', 'part-done']),
  place: Place.nullable(),
  amountMm: Amount.optional(),
  amountBasis: z.enum(['by', 'to', 'level']).optional(),
  amountSaid: z.string().optional(),
  surfaces: z.array(z.enum(surfaceIds)).optional(),
  qualifiers: z.array(z.enum(qualifierIds)).optional(),
  instrument: z.enum(['hand', 'motorised', 'fingers', 'forceps', 'elevator']).optional(),
  waterCooled: z.boolean().optional(),
  by: By.optional(),
  supervisedBy: By.optional(),
  outcome: z.enum(['complete', 'root-retained']).optional(),
  reason: z.string().optional(),
  ...common,
});
export const Sedation = z.object({
  kind: z.literal('sedation'),
  given: z.boolean(),
  agent: z.string().optional(),
  dose: Dose.optional(),
  route: Route.optional(),
  by: By.optional(),
  byName: z.string().optional(),
  topUp: z.boolean().default(false),
  time: z.string().optional(),
  effect: z.string().optional(),
  ...common,
});
export const Medication = z.object({
  kind: z.literal('medication'),
  agent: z.string(),
  dose: Dose.optional(),
  route: Route.optional(),
  for: z.string().optional(),
  by: By.optional(),
  state: z.enum(['given', 'prescribed', 'declined', 'planned']).optional(),
  ...common,
});
export const FollowUp = z.object({
  kind: z.literal('follow-up'),
  action: z.enum(['recheck', 'refer-to-veterinarian', 'monitor', 'advise-owner', 'send-report', 'rest-from-bit']),
  after: z
    .union([
      z.object({ value: Amount, unit: z.enum(['day', 'week', 'month', 'year']), about: z.boolean().optional() }),
      z.object({ said: z.string() }),
    ])
    .optional(),
  place: Place.nullable().optional(),
  reason: z.string().optional(),
  state: z.enum(['not-needed', 'declined', 'done', 'planned']).optional(),
  to: z.string().optional(),
  urgency: z.string().optional(),
  text: z.string().optional(),
  ...common,
});
export const NotExamined = z.object({
  kind: z.literal('not-examined'),
  place: Place.nullable(),
  reason: z.string().optional(),
  means: z.enum(['seen', 'felt']).optional(),
  ...common,
});
export const Fact = z.object({
  kind: z.literal('fact'),
  about: z.enum([
    'behaviour',
    'consent',
    'present',
    'history',
    'use',
    'feed',
    'bit',
    'vaccination',
    'heart-rate',
    'gag',
    'light',
    'photographs',
    'earlier-treatment',
    'method',
    'account',
    'medication',
    'tetanus',
    'horse',
    'yard',
    'owner',
  ]),
  said: z.string(),
  value: z.union([z.object({ value: Amount, unit: z.string() }), z.null()]).optional(),
  for: z.enum(['exam', 'treatment', 'sedation', 'extraction']).optional(),
  given: z.boolean().optional(),
  fromWhom: z.string().optional(),
  ...common,
});
export const Note = z.object({ kind: z.literal('note'), text: z.string(), ...common });

export const Item = z.discriminatedUnion('kind', [Finding, Treatment, Sedation, Medication, FollowUp, NotExamined, Fact, Note]);
export type Item = z.infer<typeof Item>;
export type ItemKind = Item['kind'];
export type Finding = z.infer<typeof Finding>;
export type Treatment = z.infer<typeof Treatment>;
