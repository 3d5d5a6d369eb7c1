/** From a clause to a finding of the record: presence, place, degree, grade, measures, surfaces. */
import type { Grade, Measure, Place } from '../contract/item.ts';
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import { saidInName } from '../lexicon/modifiers.ts';
import { positionOf } from '../lexicon/places.ts';
import { regions, type RegionId } from '../lexicon/regions.ts';
import { scales, type ScaleId } from '../lexicon/scales.ts';
import type { QualifierId, SeverityId, SurfaceId } from '../lexicon/surfaces.ts';
import type { ConditionEntry, MeasureName, PlaceKind } from '../lexicon/types.ts';
import { crested, type Clause } from './assemble.ts';
import type { Placing } from './groups.ts';
import type { FindingBody, Made, MadeDoubt } from './made.ts';
import type { RawPlace } from './places.ts';
import { neitherOf, resolvePlace, wantedBy } from './resolve.ts';
import { headSpan, type Mark } from './scan.ts';
import { sharesOf, whichUnsaid } from './shares.ts';
import type { Token } from './tokens.ts';
import type { Term } from './vocabulary.ts';

/** Findings at an end of a tooth: there rostral and caudal say which end, elsewhere they are surfaces. */
const ended = new Set<ConditionId>([
  'hook',
  'ramp',
  'step',
  'focal-overgrowth',
  'overlong',
  'infundibular-caries',
  'caries',
  'displaced',
  'drifted',
  'wolf-tooth',
  'blind-wolf-tooth',
  'fracture',
  'bit-seat-present',
]);

export interface Details {
  severity?: SeverityId;
  severitySaid?: string;
  change?: FindingBody['change'];
  grade?: Grade;
  gradeDoubt?: MadeDoubt;
  /** Two grades were said: neither is taken. */ gradesAsked?: readonly Grade[];
  measures: Measure[];
  surfaces: SurfaceId[];
  qualifiers: QualifierId[];
  pulpHorn?: number;
}

export function findingsOf(
  clause: Clause,
  marks: readonly Mark[],
  tokens: readonly Token[],
  missing: ReadonlySet<string>,
): readonly Made[] {
  const { id, strength, grade } = clause.head.condition as NonNullable<Clause['head']['condition']>;
  const details = detailsOf(id, clause.mods, marks, tokens, clause.head.mark, grade);
  const not = saidNot(clause, details, marks, tokens);
  const ruledOut = clause.scopes.includes('absent') !== (strength === 'absentSay');
  const presence = ruledOut ? ('absent' as const) : clause.scopes.includes('suspected') ? ('suspected' as const) : ('present' as const);
  const when = clause.scopes.includes('before') && !ruledOut && id !== 'previously-extracted' ? ('before' as const) : ('now' as const);
  const crestsAt = id === 'wave' && crested(tokens) ? clause.placings.flatMap(({ raw }) => raw.codes ?? []) : [];
  // "canines all through": there are four.
  const many =
    positionOf[id] !== undefined &&
    clause.head.condition?.strength !== 'absentSay' &&
    // "wolf teeth, one on the right", "..., just the left": one of them.
    !ofThemOne.test(
      tokens
        .slice(headSpan(marks, clause.head.mark)[1])
        .map(({ t }) => t)
        .join(' '),
    ) &&
    headWords(marks, tokens, clause.head.mark).some((word) => /^(canines|tushes|tusks|teeth|wolves|wolfies)$/.test(word));
  const four: readonly Placing[] =
    many && clause.placings.length > 0
      ? clause.placings.map((p) => ({ ...p, raw: { ...p.raw, plural: true } }))
      : id === 'canine-present' &&
          !ruledOut &&
          clause.placings.length === 0 &&
          headWords(marks, tokens, clause.head.mark).some((word) => ['canines', 'tushes', 'tusks'].includes(word))
        ? [{ raw: { positions: [4], plural: true }, marks: [] }]
        : clause.placings;
  const shares = apportioned(clause, details, marks, tokens) ?? contrasted(clause, marks);
  if (shares) return shares.flatMap((share) => findingsOf(share, marks, tokens, missing));
  const either = oneAndOther(clause, marks, tokens)?.map((way) => way.flatMap((share) => findingsOf(share, marks, tokens, missing)));
  if (either)
    return [
      {
        marks: [...new Set(either.flat().flatMap((one) => one.marks))],
        rules: ['finding', 'two readings'],
        doubts: [
          {
            doubt: 'two-readings',
            condition: id,
            readings: either.map((made) => ({ label: '', bodies: made.flatMap(({ body }) => body ?? []) })),
          },
        ],
      },
    ];
  const split =
    crestsAt.length > 0
      ? [clause.placings.filter(({ raw }) => raw.codes === undefined)]
      : placingsApart(four, (conditions[id] as ConditionEntry).places);
  // "no hook, three mil": what is not there has no size, unless the size bounds it ("no pockets over five mil").
  const sizedAway =
    ruledOut &&
    strength !== 'absentSay' &&
    details.measures.length > 0 &&
    !clause.mods.some(
      (m) =>
        marks[m]?.measure !== undefined &&
        tokens.slice(Math.max(0, (marks[m] as Mark).from - 3), (marks[m] as Mark).from + 1).some(({ t }) => bounding.has(t)),
    );
  return split.map((placings) => {
    const {
      place: found,
      doubts,
      distal,
    } = resolvePlace(clause.scopes.includes('absent') ? neitherOf(placings) : placings, wantedBy(id, missing, ruledOut));
    const home = (conditions[id] as ConditionEntry).home as RegionId | undefined;
    // "glands up": a paired region that the finding's own words name in the plural.
    const neither =
      found !== null &&
      'region' in found &&
      found.side === undefined &&
      regions[found.region].paired &&
      placings.some(({ marks: at }) => tokens[(marks[at[0] as number] as Mark).from - 1]?.t === 'neither');
    const place = neither
      ? { ...found, side: 'both' as const }
      : found === null &&
          placings.length === 0 &&
          home &&
          regions[home].paired &&
          headWords(marks, tokens, clause.head.mark).some((word) => /(gland|node|nostril)s$/.test(word))
        ? { region: home, side: 'both' as const }
        : found;
    const said = placings.map(({ raw }) => raw.elsewhere).find((word) => word !== undefined);
    // "inside the left cheek" is where the cheek is, no surface of a tooth.
    const inside = place !== null && 'region' in place && place.region !== 'gums';
    const surfaces = [
      ...new Set([
        ...plainly(details.surfaces, saidPlainly(id, clause.mods, marks, tokens), place).filter(
          (s) => !inside || (s !== 'buccal' && s !== 'lingual'),
        ),
        ...(distal ? ['distal' as const] : []),
      ]),
    ];
    const crest = crestsAt.length > 0 ? { crest: [...crestsAt] } : {};
    const body: FindingBody = {
      kind: 'finding',
      condition: id,
      presence,
      when,
      place,
      ...(surfaces.length > 0 ? { surfaces } : {}),
      ...(details.severity ? { severity: details.severity } : {}),
      ...(details.severitySaid ? { severitySaid: details.severitySaid } : {}),
      ...(details.grade ? { grade: details.grade } : {}),
      ...(details.measures.length > 0 ? { measures: details.measures } : {}),
      ...(details.qualifiers.length > 0 ? { qualifiers: details.qualifiers } : {}),
      ...(details.change ? { change: details.change } : {}),
      ...(details.pulpHorn !== undefined ? { pulpHorn: details.pulpHorn } : {}),
      ...(said ? { said } : {}),
      ...crest,
    };
    // "incisors edge to edge": of the whole bite, whatever was named beside it.
    const nowhere = (conditions[id] as ConditionEntry).places.every((kind) => kind === 'N');
    const own = doubts
      .filter((d) => !(d.doubt === 'no-place' && (presence === 'absent' || nowhere)))
      .map((d): MadeDoubt => ({
        doubt: d.doubt,
        condition: id,
        words: (d.said ?? []).join(' ') || undefined,
        ...(d.rule ? { rule: d.rule } : {}),
        ...(d.doubt === 'unlikely' ? { place } : {}),
        ...(d.readings ? { readings: d.readings.map((p: Place) => ({ label: '', bodies: [{ ...body, place: p }] })) } : {}),
      }));
    if (sizedAway)
      return {
        marks: [clause.head.mark, ...placings.flatMap((p) => p.marks), ...clause.mods, ...clause.cues],
        rules: ['finding', 'absent', 'two readings'],
        doubts: [sizedOrNot(body)],
      };
    return {
      body,
      marks: [
        clause.head.mark,
        ...(crestsAt.length > 0 ? clause.placings : placings).flatMap((p) => p.marks),
        ...clause.mods,
        ...clause.not,
        ...clause.cues,
      ],
      rules: ['finding', ...(ruledOut ? ['absent'] : [])],
      ...(placings.some((p) => p.marks.some((m) => marks[m]?.carried ?? tokens[(marks[m] as Mark).from]?.carried))
        ? { how: { place: 'carried' as const } }
        : {}),
      doubts: [
        ...own,
        ...not,
        ...(details.gradeDoubt ? [details.gradeDoubt] : []),
        ...(details.gradesAsked
          ? [
              {
                doubt: 'two-readings' as const,
                condition: id,
                readings: details.gradesAsked.map((one) => ({ label: `grade ${one.value}`, bodies: [{ ...body, grade: one }] })),
              },
            ]
          : []),
      ],
      ...(placings.some(({ raw }) => raw.repaired) ? { repaired: true } : {}),
    };
  });
}

/**
 * "not severe" is a degree in the speaker's own words. "buccal, not lingual" is buccal; the record has no field for a surface or a kind that was
 * ruled out, so one that stands alone is asked about.
 */
function saidNot({ not, mods }: Clause, details: Details, marks: readonly Mark[], tokens: readonly Token[]): readonly MadeDoubt[] {
  const kinds = (of: readonly number[]): readonly string[] =>
    of.flatMap((m) => (marks[m]?.measure ? ['measure'] : (marks[m]?.terms?.map(({ k }) => k.slice(0, 8)) ?? [])));
  const said = new Set(kinds(mods));
  const own = not.filter((_, i) => i % 2 === 1);
  const words = (m: number): string =>
    `not ${tokens
      .slice(marks[m]?.from, marks[m]?.to)
      .map(({ t }) => t)
      .join(' ')}`;
  const degree = own.find((m) => kinds([m]).includes('severity'));
  if (degree !== undefined && !said.has('severity')) details.severitySaid = words(degree);
  return own.filter((m) => m !== degree && kinds([m]).some((kind) => !said.has(kind))).map((m) => ({ doubt: 'unread', words: words(m) }));
}

/** The places that a finding was said to be at, one by one, and what was said behind them. */
function partsAndOwn(clause: Clause, marks: readonly Mark[]): { readonly parts: readonly Placing[]; readonly own: readonly number[] } {
  const each = clause.placings.map((placing) => partsOf(placing, clause.head.condition?.id as ConditionId));
  const parts = each.includes(undefined) ? [] : each.flatMap((own) => own ?? []);
  const last = Math.max(clause.head.mark, ...clause.placings.flatMap((placing) => placing.marks));
  return { parts, own: clause.mods.filter((m) => m > last && sharing(marks[m] as Mark)) };
}
/** A clause for each place, with what it shares with the others and what is its own. */
const apart = (
  clause: Clause,
  parts: readonly Placing[],
  own: readonly number[],
  shares: readonly (readonly number[])[],
): readonly Clause[] =>
  parts.map((placing, i) => ({
    ...clause,
    placings: [placing],
    mods: [...clause.mods.filter((m) => !own.includes(m)), ...own.filter((_, k) => (shares[k] as readonly number[]).includes(i))],
  }));

/** "hooks on one oh six and two oh six, three mil and five mil", "..., the latter worse", "ulcers on both cheeks, ...": each place has its own. */
function apportioned(clause: Clause, details: Details, marks: readonly Mark[], tokens: readonly Token[]): readonly Clause[] | undefined {
  if (details.pulpHorn !== undefined) return undefined;
  const named = partNamedAgain(clause, marks);
  if (named) return named;
  const { parts, own } = partsAndOwn(clause, marks);
  const shares = sharesOf(marks, tokens, own, parts.length);
  // What is said of all of them parts none.
  return shares === undefined || shares.every((of) => of.length === parts.length) ? undefined : apart(clause, parts, own, shares);
}
/** "ulcers on the left cheek and the right cheek, the right cheek worse": what stands behind a place named again is of that one. */
function partNamedAgain(clause: Clause, marks: readonly Mark[]): readonly Clause[] | undefined {
  const raws = clause.placings.map(({ raw }) => JSON.stringify(raw));
  const last = clause.placings.length - 1;
  const first = raws.indexOf(raws[last] as string);
  const at = clause.placings[last]?.marks.at(-1) ?? -1;
  const own = clause.mods.filter((m) => m > at && sharing(marks[m] as Mark));
  if (last < 2 || first === last || own.length === 0 || at < clause.head.mark) return undefined;
  const parts = clause.placings.slice(0, last);
  return apart(
    clause,
    parts,
    own,
    own.map(() => [first]),
  );
}
/** "..., one small, one large": either way round. */
function oneAndOther(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): readonly (readonly Clause[])[] | undefined {
  const { parts, own } = partsAndOwn(clause, marks);
  return whichUnsaid(marks, tokens, own, parts.length)
    ? [
        [[0], [1]],
        [[1], [0]],
      ].map((shares) => apart(clause, parts, own, shares))
    : undefined;
}
/** A size, a grade, a degree or a change; a surface is where it is. */
const sharing = ({ measure, grade, terms }: Mark): boolean =>
  (measure ?? grade) !== undefined || (terms ?? []).some(({ k }) => k === 'severity' || k === 'severityKept' || k === 'change');
/** The teeth of a list, one by one; a part of the mouth as it is. The two teeth of a gap are one place. */
function partsOf(placing: Placing, id: ConditionId): readonly Placing[] | undefined {
  const { codes = [], joined, repaired, region, side } = placing.raw;
  const gap = joined === 'adjacent' && (conditions[id] as ConditionEntry).places.includes('S');
  if (codes.length === 0)
    return region !== undefined && (side === 'left' || side === 'right' || (side === undefined && !regions[region].paired))
      ? [placing]
      : undefined;
  return gap || !['one', 'and', 'adjacent'].includes(joined ?? '')
    ? undefined
    : codes.map((code) => ({ ...placing, raw: { codes: [code], joined: 'one', ...(repaired ? { repaired: true } : {}) } }));
}

const ofThemOne = /^(?:(?:just|only) (?:the )?(?:one|left|right)|one)\b/;
const contrasts: readonly (readonly [QualifierId, QualifierId])[] = [
  ['rostral', 'caudal'],
  ['clinical', 'radiographic'],
];
/** "grade two in the mesial cup, distal cup grade one", "stage two radiographically, clinically one": each grade with what it is said of. */
function contrasted(clause: Clause, marks: readonly Mark[]): readonly Clause[] | undefined {
  const mods = [...clause.mods].sort((a, b) => a - b);
  const grades = mods.filter((m) => marks[m]?.grade !== undefined);
  const of = (pair: readonly QualifierId[]): readonly number[] =>
    mods.filter((m) => marks[m]?.terms?.some((t) => t.k === 'qualifier' && pair.includes(t.id)));
  const named = contrasts.map(of).find((own) => own.length === 2);
  if (grades.length !== 2 || named === undefined) return undefined;
  const kinds = mods
    .filter((m) => grades.includes(m) || named.includes(m))
    .map((m) => (grades.includes(m) ? 'g' : 'n'))
    .join('');
  const order = kinds === 'gnng' || kinds === 'ngng' || kinds === 'gngn' || kinds === 'nggn' ? [0, 1] : undefined;
  const rest = mods.filter((m) => !grades.includes(m) && !named.includes(m));
  return order?.map((k) => ({ ...clause, mods: [...rest, grades[k] as number, named[k] as number] }));
}

/** "no hook, three mil": nothing, or something of that size. */
export const sizedOrNot = (body: FindingBody): MadeDoubt => {
  const none = Object.fromEntries(Object.entries({ ...body, presence: 'absent' }).filter(([name]) => name !== 'measures')) as FindingBody;
  return {
    doubt: 'two-readings',
    condition: body.condition,
    readings: [none, { ...body, presence: 'present' as const }].map((one) => ({ label: '', bodies: [one] })),
  };
};

/** A size behind these says how big it is not. */
const bounding: ReadonlySet<string> = new Set(['over', 'above', 'than', 'beyond', 'exceeding', 'past']);

const isGroup = ({ codes, region, positions, row, jaw, side }: RawPlace): boolean =>
  codes === undefined && region === undefined && (positions !== undefined || row === true || (jaw !== undefined && side !== undefined));
/** The places that each have an item of their own. */
function placingsApart(placings: readonly Placing[], kinds: readonly PlaceKind[]): readonly (readonly Placing[])[] {
  const regions = placings.filter(({ raw, beside }) => raw.region !== undefined && raw.codes === undefined && !beside);
  // "tongue, cheeks and palate normal": each has its own item.
  if (new Set(regions.map(({ raw }) => raw.region)).size > 1 && regions.length === placings.length)
    return regions.map((placing) => [placing]);
  // "incisors and bars normal": teeth are no part of the region.
  const groups = placings.filter(({ raw, beside }) => isGroup(raw) && !beside);
  if (
    regions.length > 0 &&
    groups.length > 0 &&
    regions.length + groups.length === placings.length &&
    kinds.includes('G') &&
    kinds.includes('R')
  )
    return [...regions.map((placing) => [placing]), groups];
  return [placings];
}
/** Everything the modifiers say, apart from the place. */
export function detailsOf(
  id: ConditionId,
  mods: readonly number[],
  marks: readonly Mark[],
  tokens: readonly Token[],
  headMark: number,
  gradeOfHead?: string,
): Details {
  const entry = conditions[id] as ConditionEntry;
  const details: Details = { measures: [], surfaces: [], qualifiers: [] };
  if (gradeOfHead && entry.scale) details.grade = { scale: entry.scale as ScaleId, value: gradeOfHead };
  details.pulpHorn = marks[headMark]?.pulpHorn;
  const grades = mods.flatMap((m) => (marks[m] as Mark).grade ?? []);
  // "grade two and grade three": neither is taken.
  if (grades.length === 2 && grades[0]?.value !== grades[1]?.value)
    Object.assign(
      details,
      gradeOf(id, entry, { value: grades[0]?.value as string, or: grades[1]?.value as string }, marks, mods, headMark, tokens),
    );
  else for (const grade of grades) Object.assign(details, gradeOf(id, entry, grade, marks, mods, headMark, tokens));
  const words = headWords(marks, tokens, headMark);
  if (id === 'bit-seat-present' && words[0] === 'old') details.qualifiers.push('old');
  if (id === 'fracture' && words.includes('slab')) details.qualifiers.push('slab');
  // "the front infundibulum": the name says which.
  if (id === 'infundibular-caries') for (const term of marks[headMark]?.terms ?? []) addTerm(details, term, id);
  if (id === 'discharge' && words[0] === 'clear') details.qualifiers.push('clear');
  for (const word of words) if (saidInName[word]) details.qualifiers.push(saidInName[word]);
  if (ended.has(id)) for (const end of ['rostral', 'caudal'] as const) if (words.includes(end)) details.qualifiers.push(end);
  for (const m of mods) {
    const mark = marks[m] as Mark;
    if (mark.pulpHorn !== undefined) details.pulpHorn = mark.pulpHorn;
    if (mark.measure) details.measures.push(...measuresOf(entry, mark));
    for (const term of mark.terms ?? []) addTerm(details, term, id);
  }
  // "gums look a bit red": the degree stands inside the name.
  const inName =
    details.severity === undefined ? / (a (?:wee |little |tiny )?bit|a little|a touch|slightly) /.exec(words.join(' '))?.[1] : undefined;
  if (inName) Object.assign(details, { severity: 'slight', ...(inName === 'slightly' ? {} : { severitySaid: inName }) });
  // "looser than in the spring": the name compares.
  const [, end] = headMark < 0 ? [0, -1] : headSpan(marks, headMark);
  if (details.change === undefined && words.at(-1) === 'looser') {
    const at = headSpan(marks, headMark)[0] - 1;
    const no = ['no', 'not', 'any'].includes(tokens[at]?.t ?? '');
    const than = ['than', 'since'].includes(tokens[end]?.t ?? '');
    if (than || (no && at > 0 && tokens[at - 1]?.ends !== true)) details.change = no ? 'unchanged' : 'worse';
  }
  details.qualifiers = [...new Set(details.qualifiers)];
  // A surface that the finding's own name carries ("buccal points").
  for (const surface of ['buccal', 'lingual', 'palatal', 'labial'] as const) if (words.includes(surface)) details.surfaces.push(surface);
  if (words.some((w) => ['cheek', 'outside', 'outer'].includes(w)) && id === 'sharp-enamel-points') details.surfaces.push('buccal');
  if (words.some((w) => ['inside', 'inner'].includes(w)) && id === 'sharp-enamel-points') details.surfaces.push('lingual');
  details.surfaces = placingSurfaces(details.surfaces);
  return details;
}
/** "inside" and "outside" are said of any tooth: of an upper one it is the palate's side, of an incisor or a canine the lip's. */
const sidesOfTooth = new Set(['inside', 'insides', 'inner', 'outside', 'outsides', 'outer']);
export const saidPlainly = (id: ConditionId, mods: readonly number[], marks: readonly Mark[], tokens: readonly Token[]): boolean =>
  id !== 'sharp-enamel-points' &&
  mods.some((m) => tokens.slice((marks[m] as Mark).from, (marks[m] as Mark).to).some(({ t }) => sidesOfTooth.has(t)));
export function plainly(surfaces: readonly SurfaceId[], plain: boolean, place: Place | null): readonly SurfaceId[] {
  const teeth = place === null ? [] : 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : [];
  if (!plain || teeth.length === 0) return surfaces;
  const upper = teeth.every((t) => ['1', '2', '5', '6'].includes(t[0] as string));
  const front = teeth.every((t) => Number(t.slice(1)) <= 4);
  return surfaces.map((s) => (s === 'lingual' && upper ? 'palatal' : s === 'buccal' && front ? 'labial' : s));
}
const placingSurfaces = (surfaces: readonly SurfaceId[]): SurfaceId[] => [...new Set(surfaces)];
const headWords = (marks: readonly Mark[], tokens: readonly Token[], at: number): readonly string[] =>
  tokens.slice(...headSpan(marks, at)).map(({ t }) => t);

function addTerm(details: Details, term: Term, id: ConditionId): void {
  if (term.k === 'severity') {
    details.severity = term.id;
    if (!term.said.startsWith(term.id)) details.severitySaid = term.said;
  }
  if (term.k === 'severityKept') details.severitySaid = term.said;
  if (term.k === 'change') details.change = term.id;
  if (term.k === 'surface') details.surfaces.push(term.id);
  if (term.k !== 'qualifier') return;
  // Only a gap is open or a valve.
  if ((term.id === 'open' || term.id === 'valve') && !(conditions[id].places as readonly string[]).includes('S')) return;
  // "edge to edge at the front": a bite has no other end.
  if ((term.id === 'rostral' || term.id === 'caudal') && conditions[id].group === 'bite') return;
  if ((term.id === 'rostral' || term.id === 'caudal') && !ended.has(id)) details.surfaces.push(term.id);
  else details.qualifiers.push(term.id);
}

function measuresOf(entry: ConditionEntry, mark: Mark): readonly Measure[] {
  const { value, unit, about, what, said, second, secondWhat } = mark.measure as NonNullable<Mark['measure']>;
  const fallback = unit === 'degree' ? 'angle' : (entry.measure ?? 'width');
  const amount =
    value === undefined ? {} : { value: Array.isArray(value) ? ([value[0], value[1]] as [number, number]) : (value as number) };
  if (second !== undefined)
    return [
      { what: secondWhat ? (what as MeasureName) : 'length', ...amount, unit, about },
      { what: secondWhat ?? 'width', value: second, unit, about },
    ];
  return [{ what: what ?? fallback, ...amount, ...(unit ? { unit } : {}), about, ...(said ? { said } : {}) }];
}

function gradeOf(
  id: ConditionId,
  entry: ConditionEntry,
  { value, or, outOf }: { value: string; or?: string; outOf?: number },
  marks: readonly Mark[],
  mods: readonly number[],
  headMark: number,
  tokens: readonly Token[],
): Partial<Details> {
  const words = tokens
    .slice(Math.min(...[headMark, ...mods].map((m) => marks[m]?.from ?? 0)), (marks.at(-1) as Mark).to)
    .map(({ t }) => t)
    .join(' ');
  if (id === 'body-condition') return bodyCondition(value, tokens.some(({ t }) => t === 'henneke') ? 9 : outOf, words);
  // "grade one to two": neither is taken.
  if (or !== undefined)
    return { gradesAsked: [value, or].map((v): Grade => ({ scale: (entry.scale ?? 'spoken') as Grade['scale'], value: v })) };
  if (!entry.scale) return { grade: { scale: 'spoken', value } };
  const legal: readonly string[] = scales[entry.scale as ScaleId].values;
  return legal.includes(value)
    ? { grade: { scale: entry.scale as ScaleId, value } }
    : { gradeDoubt: { doubt: 'off-scale', condition: id, words, legal: [...legal] } };
}

/** Two scales are in use; which one is never assumed. */
function bodyCondition(value: string, outOf: number | undefined, words: string): Partial<Details> {
  const fits = (['body-condition', 'body-condition-0-5'] as const).filter(
    (scale) =>
      (scales[scale].values as readonly string[]).includes(value) &&
      (outOf === undefined || outOf === (scale === 'body-condition' ? 9 : 5)),
  );
  if (fits.length === 1) return { grade: { scale: fits[0] as ScaleId, value } };
  if (fits.length === 0)
    return { gradeDoubt: { doubt: 'off-scale', condition: 'body-condition', words, legal: [...scales['body-condition'].values] } };
  const reading = (scale: ScaleId) => ({
    label: scales[scale].label,
    bodies: [
      {
        kind: 'finding' as const,
        condition: 'body-condition' as const,
        presence: 'present' as const,
        when: 'now' as const,
        place: null,
        grade: { scale, value },
      },
    ],
  });
  return { gradeDoubt: { doubt: 'two-readings', condition: 'body-condition', words, readings: fits.map(reading) } };
}
