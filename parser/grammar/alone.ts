/**
 * Phrases without a finding of their own lean on what was said before: a size, degree or tool alone amends the last item;
 * "same on the other side", "and three oh six", "nothing like that on the right" repeat its condition; a place alone waits.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { correctionSay } from '../lexicon/corrections.ts';
import { standing, type Carry } from './carry.ts';
import { detailsOf, sizedOrNot } from './findings.ts';
import { afterIn } from './followUps.ts';
import { bodyOf } from './meaning.ts';
import type { FindingBody, ItemBody, Made } from './made.ts';
import { resolvePlace, wantedBy, type Resolved } from './resolve.ts';
import { doseIn } from './sedations.ts';
import type { Roles } from './assemble.ts';
import { conditions } from '../lexicon/conditions.ts';
import { scales } from '../lexicon/scales.ts';
import type { Mark } from './scan.ts';
import { otherSide } from './teeth.ts';
import type { Token } from './tokens.ts';

export interface Alone { readonly marks: readonly Mark[]; readonly tokens: readonly Token[]; readonly role: Roles['role']; readonly places: readonly number[]; readonly unknown: number; /** What is unknown names nothing. */ readonly light: boolean; readonly carry: Carry; readonly context: Context; readonly missing: ReadonlySet<string> }
type Finding = Extract<Item, { kind: 'finding' }>;

export function alone(input: Alone): readonly Made[] {
  const { tokens, role, places, unknown, carry, context } = input;
  // "no, make it a year"
  const next = standing(context, carry.last);
  const after = next?.kind === 'follow-up' && correcting(tokens) ? afterIn(tokens) : undefined;
  if (next && after) return [revision(next, { after }, input.marks.map((_, i) => i), {})];
  if (unknown > 0) {
    const sure = places.filter((i) => { const { codes, jaw, side, positions } = (input.marks[i] as Mark).place as NonNullable<Mark['place']>; return codes !== undefined || (jaw !== undefined && (side !== undefined || positions !== undefined)); });
    const only = input.light && sure.length > 0 && sure.length === places.length && role.every((r) => r !== 'head' && r !== 'mod' && r !== 'cue');
    return only ? placeAlone(input, places.map((i) => ({ raw: (input.marks[i] as Mark).place as NonNullable<Mark['place']>, marks: [i] })), []) : numberAlone(input);
  }
  const words = lead(tokens);
  const last = standing(context, carry.last);
  const mods = role.flatMap((r, i) => (r === 'mod' ? [i] : []));
  const placings = places.map((i) => ({ raw: (input.marks[i] as Mark).place as NonNullable<Mark['place']>, marks: [i] }));
  if (last?.kind === 'finding') {
    if (/\bsame\b/.test(words)) return repeated(last, input, places, mods, placings.length > 0 ? onSide(last, placings, input.missing) : mirrored(words, last), 'present');
    // "two oh six no": not what was found before.
    if (/\b(no|none|not|nope|has not|does not|is not)$/.test(words) && placings.length > 0) return repeated(last, input, places, [], onSide(last, placings, input.missing), 'absent');
    if (/\b(nothing|none) (like that|of that|there|of it)\b/.test(words) && placings.length > 0) return repeated(last, input, places, [], onSide(last, placings, input.missing), 'absent');
    // "no ulcer on the left cheek" ... "there's one on the right", "but there is on two oh six": there is one there.
    if (last.presence === 'absent' && placings.length > 0 && /^(?:but |and |just |only )*(?:there (?:is|are) |(?:he|she|it) (?:has|does have) (?:got )?|found |got )?(?:one|some|two|three)? ?(?:up |down )?(?:on|at|in|along|around) |^(?:but )?there (?:is|are) (?:one |some |two )?|(?:has|does|is|has one|has got one|there is|there is one)$/.test(words) && !/\b(?:no|not|none|nothing|never)\b/.test(words) && (/\b(?:one|some|two|three|but)\b/.test(words.replace(/(?:one|two|three|four) (?:oh|o|zero|ten|eleven)/g, '')) || /(?:has|does|there is)$/.test(words))) return repeated({ ...last, presence: 'present' }, input, places, mods, onSide(last, placings, input.missing), 'present');
    if (/^(?:but |and )*none (?:on|at|in|of them (?:on|at))\b/.test(words) && placings.length > 0) return repeated(last, input, places, [], onSide(last, placings, input.missing), 'absent');
    const fits = placings.every(({ raw }) => raw.region === undefined || conditions[last.condition].places.some((kind) => kind === 'G'));
    if (placings.length > 0 && fits && (/^(and|also|plus|as well as|another|ditto|likewise|one more|and another)\b/.test(words) || /\b(as well|too|also|likewise|ditto)\b/.test(words))) return repeated(last, input, places, mods, onSide(last, placings, input.missing), last.presence);
  }
  const gone = placings.length === 1 && placings[0]?.raw.codes?.length === 1 && /\b(there is no|is no|there was no)\b/.test(words);
  if (gone) return [{ body: { kind: 'finding', condition: 'missing', presence: 'present', when: 'now', place: resolvePlace(placings, wantedBy('missing', new Set())).place }, marks: [...places, ...glueMarks(input)], rules: ['finding', 'no such tooth there'], doubts: [] }];
  const there = placings.length === 1 && input.tokens.some(({ t }) => ['present', 'there', 'in', 'through', 'up'].includes(t)) && input.marks.every(({ terms, place }) => place !== undefined || (terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
  const canines = placings.length === 1 && placings[0]?.raw.positions?.length === 1 && placings[0].raw.positions[0] === 4 && (there || input.marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind === undefined)));
  if (canines) { const { place } = resolvePlace(placings, wantedBy('canine-present', input.missing, true)); return [{ body: { kind: 'finding', condition: 'canine-present', presence: there ? 'present' : 'absent', when: 'now', place }, marks: [...places, ...glueMarks(input)], rules: there ? ['finding'] : ['finding', 'absent'], doubts: [] }]; }
  // "nothing on the upper left": nothing was found there.
  if (placings.length > 0 && /^(?:(?:and|there is|is) )?(?:nothing|not a thing)(?: (?:at all|there|else|much|really|to (?:see|find|report)))* (?:on|in|at|along|around|up|down)\b/.test(words)) {
    // "ulcer left cheek", "nothing on the right": of the part that was looked at.
    const side = last && 'place' in last && last.place && placings.every(({ raw }) => raw.codes === undefined && (raw.side === 'left' || raw.side === 'right') && raw.jaw === undefined && raw.region === undefined && raw.positions === undefined && !raw.row) ? onSide(last, placings, input.missing) : undefined;
    const { place, doubts } = side?.place ? side : resolvePlace(placings, wantedBy('abnormality', input.missing, true));
    if (place !== null && doubts.length === 0) return [{ body: { kind: 'finding', condition: 'abnormality', presence: 'absent', when: 'now', place }, marks: [...places, ...glueMarks(input)], rules: ['finding', 'absent'], doubts: [] }];
  }
  const untouched = mods.filter((m) => (input.marks[m] as Mark).terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state === 'not-done'));
  if (untouched.length > 0 && placings.length === 0) return leftAlone(last, untouched);
  if (placings.length > 0) return placeAlone(input, placings, mods);
  if (mods.length > 0 && last) return amended(last, input, mods);
  const molar = input.marks.findIndex(({ terms }) => terms?.some((t) => t.k === 'condition' && t.id === 'mobility' && t.grade !== undefined));
  if (molar >= 0 && placings.length === 0) return [{ marks: [molar], rules: ['mobility or molar'], doubts: [{ doubt: 'two-readings', readings: [{ label: 'mobility', bodies: [] }, { label: 'molar', bodies: [] }] }] }];
  return mods.length > 0 && worthADoubt(input, mods) ? [{ marks: mods, doubts: [{ doubt: 'no-condition' }], rules: ['half'] }] : [];
}

const overgrown = new Set(['hook', 'ramp', 'step', 'focal-overgrowth', 'overlong', 'wave', 'sharp-enamel-points', 'exaggerated-transverse-ridges']);
/** "not touched", "left alone": of an overgrowth just named it was not reduced; of anything else it is not clear what. */
const leftAlone = (last: Item | undefined, marks: readonly number[]): readonly Made[] => (last?.kind === 'finding' && overgrown.has(last.condition)
  ? [{ body: { kind: 'treatment', procedure: 'reduce', state: 'not-done', place: last.place }, marks, how: { place: 'carried' }, rules: ['left alone'], doubts: [] }]
  : [{ marks, rules: ['left alone'], doubts: [{ doubt: 'no-condition' }] }]);

/** "no, make that six": the number takes the place of the last one; its unit stays. */
function numberAlone({ marks, role, tokens, carry, context, unknown }: Alone): readonly Made[] {
  const last = standing(context, carry.last);
  const at = marks.findIndex(({ number }) => number !== undefined);
  const value = marks[at]?.number;
  if (unknown !== 1 || value === undefined || last?.kind !== 'finding' || !correcting(tokens) || role.some((r) => r === 'place' || r === 'head')) return [];
  const amount = typeof value === 'number' ? value : [value[0], value[1]] as [number, number];
  const measures = last.measures ?? [];
  if (measures.length > 0) return [revision(last, { measures: [...measures.slice(0, -1), { ...measures.at(-1), value: amount }] }, [at], {})];
  const legal: readonly string[] = last.grade && last.grade.scale !== 'spoken' ? scales[last.grade.scale].values : [String(value)];
  return last.grade && legal.includes(String(value)) ? [revision(last, { grade: { ...last.grade, value: String(value) } }, [at], {})] : [];
}

const worthADoubt = ({ marks }: Alone, mods: readonly number[]): boolean => mods.some((m) => (marks[m] as Mark).measure !== undefined || (marks[m] as Mark).grade !== undefined);

/** "same on the other side": the same jaw, the other side. */
function mirrored(words: string, last: Finding): Resolved | undefined {
  if (!/\b(other|opposite) side\b/.test(words) || last.place === null) return undefined;
  const place = last.place;
  if ('teeth' in place) return { place: { ...place, teeth: place.teeth.map(otherSide).sort() }, doubts: [] };
  if ('spaces' in place) return { place: { ...place, spaces: place.spaces.map(([a, b]) => [otherSide(a), otherSide(b)] as [string, string]) }, doubts: [] };
  if ('region' in place && (place.side === 'left' || place.side === 'right')) return { place: { ...place, side: place.side === 'left' ? 'right' : 'left' }, doubts: [] };
  if ('rows' in place) return { place: { ...place, rows: place.rows.map((row) => (row.includes('left') ? row.replace('left', 'right') : row.replace('right', 'left')) as typeof row) }, doubts: [] };
  return undefined;
}

/** "nothing like that on the right": the place of the last finding, on the side named. */
function onSide(last: Item, placings: { raw: NonNullable<Mark['place']>; marks: number[] }[], missing: ReadonlySet<string>): Resolved {
  const side = placings[0]?.raw.side;
  const bare = side !== undefined && placings[0]?.raw.jaw === undefined && placings[0]?.raw.region === undefined;
  if (last.kind !== 'finding') return { place: null, doubts: [] };
  if (bare && last.place !== null) {
    const is = (code: string): boolean => (side === 'left') === ['2', '3', '6', '7'].includes(code[0] as string);
    if ('region' in last.place) return { place: { region: last.place.region, side }, doubts: [] };
    if ('teeth' in last.place) return { place: { teeth: [...new Set(last.place.teeth.map((t) => (is(t) ? t : otherSide(t))))].sort() }, doubts: [] };
    if ('rows' in last.place) return { place: { rows: [...new Set(last.place.rows.map((row) => (row.endsWith('incisors') ? row : row.replace(/(left|right)$/, side) as typeof row)))].sort() }, doubts: [] };
    if ('spaces' in last.place) return { place: { spaces: last.place.spaces.map(([a, b]) => (is(a) ? [a, b] : [otherSide(a), otherSide(b)]) as [string, string]) }, doubts: [] };
  }
  return resolvePlace(placings, wantedBy(last.condition, missing));
}

function repeated(last: Finding, input: Alone, places: readonly number[], mods: readonly number[], where: Resolved | undefined, presence: Finding['presence']): readonly Made[] {
  if (where === undefined) return [];
  const details = detailsOf(last.condition, mods, input.marks, input.tokens, -1);
  const kept = presence === 'absent' ? {} : { ...(last.qualifiers ? { qualifiers: last.qualifiers } : {}), ...(last.surfaces ? { surfaces: last.surfaces } : {}) };
  const body: FindingBody = { kind: 'finding', condition: last.condition, presence: presence === 'absent' ? 'absent' : last.presence, when: last.when, place: where.place, ...kept, ...said(details) };
  if (body.presence === 'absent' && body.measures !== undefined) return [{ marks: [...places, ...mods, ...glueMarks(input)], rules: ['same again', 'two readings'], doubts: [sizedOrNot(body)] }];
  const how = { condition: 'carried' as const, ...(kept.qualifiers ? { qualifiers: 'carried' as const } : {}), ...(kept.surfaces ? { surfaces: 'carried' as const } : {}) };
  return [{ body, marks: [...places, ...mods, ...glueMarks(input)], how, rules: ['same again'], doubts: where.doubts.map((d) => ({ doubt: d.doubt, condition: last.condition, ...(d.rule ? { rule: d.rule } : {}), ...(d.readings ? { readings: d.readings.map((place) => ({ label: '', bodies: [{ ...body, place }] })) } : {}) })) }];
}
const glueMarks = ({ role }: Alone): readonly number[] => role.flatMap((r, i) => (r === 'glue' || r === 'cue' ? [i] : []));

const said = ({ severity, severitySaid, grade, measures, surfaces, qualifiers, change }: ReturnType<typeof detailsOf>) => ({
  ...(severity ? { severity } : {}), ...(severitySaid ? { severitySaid } : {}), ...(grade ? { grade } : {}), ...(measures.length > 0 ? { measures } : {}),
  ...(surfaces.length > 0 ? { surfaces } : {}), ...(qualifiers.length > 0 ? { qualifiers } : {}), ...(change ? { change } : {}),
});

/** A place said alone stands ready for the next phrase; a finding that waited for its place takes it. */
function placeAlone(input: Alone, placings: { raw: NonNullable<Mark['place']>; marks: number[] }[], mods: readonly number[]): readonly Made[] {
  const { carry, context, places, tokens } = input;
  const waiting = standing(context, carry.half?.item);
  const marked = tokens[0]?.t;
  if (waiting?.kind === 'finding' && waiting.place === null) {
    const { place, doubts } = resolvePlace(placings, wantedBy(waiting.condition, input.missing));
    const details = detailsOf(waiting.condition, mods, input.marks, tokens, -1);
    if (place !== null) return [revision(waiting, { place, ...said(details) }, [...places, ...mods], { settles: [carry.half?.doubt as string], doubts })];
  }
  const last = standing(context, carry.last);
  if (last && correcting(tokens)) return amendedPlace(last, input, placings);
  const { place, doubts } = resolvePlace(placings, { kinds: ['T', 'R', 'G'], missing: input.missing });
  const bareSide = placings.every(({ raw }) => raw.codes === undefined && raw.region === undefined && raw.positions === undefined && (raw.jaw === undefined || raw.side === undefined) && raw.quadrants === undefined);
  if (marked === undefined) return [];
  if (bareSide) return [];
  const wrong = doubts.filter(({ doubt }) => doubt !== 'no-place');
  return [{ marks: [...places, ...mods], rules: ['half'], doubts: wrong.length > 0 ? wrong.map((d) => ({ doubt: d.doubt, words: (d.said ?? []).join(' ') || undefined, ...(d.readings ? { readings: d.readings.map(() => ({ label: '', bodies: [] })) } : {}) })) : [{ doubt: 'no-condition', place }] }];
}

/** The words without what people say before they begin. */
const lead = (tokens: readonly Token[]): string => tokens.map(({ t }) => t).join(' ').replace(/^(?:(?:so|well|oh|okay|ok|now|then|the|yeah|hang on) )+/, '');
const fixes = correctionSay.map((form) => form.split(' '));
const leadWords = new Set(['so', 'well', 'oh', 'okay', 'ok', 'now', 'then', 'the', 'yeah', 'hang', 'on']);
const fixFirst = new Set(fixes.map(([first]) => first));
/** "correction two oh seven", "sorry I mean two oh seven": the phrase begins by taking back. */
export function corrects(tokens: readonly Token[]): boolean {
  // Most phrases begin with no word of taking back: told before anything is joined.
  if (!fixFirst.has(tokens[0]?.t as string) && !leadWords.has(tokens[0]?.t as string)) return false;
  const words = lead(tokens).split(' ');
  return fixes.some((form) => form.every((word, i) => words[i] === word));
}
/** Also "not one oh seven, two oh seven" and "no, two oh seven". */
const correcting = (tokens: readonly Token[]): boolean => corrects(tokens) || /^(not|no|that is|it is)\b/.test(lead(tokens));

function amendedPlace(last: Item, input: Alone, placings: { raw: NonNullable<Mark['place']>; marks: number[] }[]): readonly Made[] {
  if (!('place' in last)) return [];
  const side = onSide(last, placings, input.missing);
  if (placings.every(({ raw }) => raw.codes === undefined && raw.side !== undefined && raw.jaw === undefined && raw.region === undefined && raw.positions === undefined) && last.kind === 'finding' && side.place !== null) return [revision(last, { place: side.place }, [...input.places, ...glueMarks(input)], { doubts: side.doubts })];
  const raws = placings.map((p) => (p.raw.codes && p.raw.codes.length > 1 && lead(input.tokens).startsWith('not ') ? { ...p, raw: { ...p.raw, codes: p.raw.codes.slice(-1), joined: 'one' as const } } : p)).slice(-1);
  const wanted = last.kind === 'finding' ? wantedBy(last.condition, input.missing) : { kinds: ['T', 'S', 'R', 'G'] as const, missing: input.missing };
  const { place, doubts } = resolvePlace(raws, wanted);
  return place === null ? [{ marks: input.places, doubts: doubts.map((d) => ({ doubt: d.doubt, words: (d.said ?? []).join(' ') || undefined })), rules: ['correction'] }] : [revision(last, { place }, [...input.places, ...glueMarks(input)], { doubts })];
}

const thatDay = /\b(?:was|were|been)\b.*\b(?:last (?:time|year|visit|month|week|spring|summer|autumn|winter)|before|previously|(?:weeks?|months?|years?) ago)\b/;
/** A size, tool or degree said alone after an item amends it. */
function amended(last: Item, input: Alone, mods: readonly number[]): readonly Made[] {
  if (last.kind === 'sedation' || last.kind === 'medication') {
    const dose = doseIn(input.tokens, 0, input.tokens.length);
    const route = mods.flatMap((m) => ((input.marks[m] as Mark).terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'route' ? [t.term.route] : [])))[0];
    const now = { ...(dose?.unit ? { dose } : {}), ...(route ? { route } : {}) };
    return Object.keys(now).length === 0 ? [] : [revision(last, now, mods, {})];
  }
  if (last.kind === 'finding') {
    // A size belongs to nothing that was ruled out.
    if (last.presence === 'absent') return worthADoubt(input, mods) ? [{ marks: mods, doubts: [{ doubt: 'no-condition' }], rules: ['half'] }] : [];
    const details = detailsOf(last.condition, mods, input.marks, input.tokens, -1);
    const now = said(details);
    if (details.gradeDoubt) return [{ marks: mods, doubts: [details.gradeDoubt], rules: ['amend'] }];
    // "it was eight mil last time": how it was then changes nothing of how it is.
    if (Object.keys(now).length > 0 && thatDay.test(lead(input.tokens))) return [{ body: { ...bodyOf(last), ...now, when: 'before' } as ItemBody, marks: mods, how: { condition: 'carried', place: 'carried' }, rules: ['finding', 'as it was'], doubts: [] }];
    return Object.keys(now).length === 0 ? [] : [revision(last, now, mods, {})];
  }
  if (last.kind === 'treatment') {
    const now = treatmentDetails(input.marks, mods, input.tokens);
    return Object.keys(now).length === 0 ? [] : [revision(last, now, mods, {})];
  }
  return [];
}

export function treatmentDetails(marks: readonly Mark[], mods: readonly number[], tokens: readonly Token[]): Partial<Extract<ItemBody, { kind: 'treatment' }>> {
  const out: Record<string, unknown> = {};
  for (const m of mods) {
    const mark = marks[m] as Mark;
    if (mark.measure?.value !== undefined && (mark.measure.unit === 'mm' || mark.measure.unit === 'cm')) {
      const scale = mark.measure.unit === 'cm' ? 10 : 1;
      const value = mark.measure.value as number | readonly [number, number];
      out['amountMm'] = typeof value === 'number' ? value * scale : [value[0] * scale, value[1] * scale];
      const basis = tokens[mark.from - 1]?.t;
      if (basis === 'by' || basis === 'to') out['amountBasis'] = basis;
    }
    if (mark.measure?.said !== undefined && mark.measure.value === undefined) { out['amountSaid'] = mark.measure.said; if (tokens[mark.from - 1]?.t === 'by') out['amountBasis'] = 'by'; }
    for (const term of mark.terms ?? []) {
      if (term.k === 'work' && term.term.as === 'instrument' && !ruledOutBefore(marks, m)) out['instrument'] = term.term.instrument;
      if (term.k === 'work' && term.term.as === 'water') out['waterCooled'] = true;
      if (term.k === 'work' && term.term.as === 'level') out['amountBasis'] = 'level';
      if (term.k === 'work' && term.term.as === 'outcome') out['outcome'] = term.term.outcome;
      // "ground it back", "took the incisors back": how far, and no end of the tooth.
      const pushed = mark.to - mark.from === 1 && ['back', 'backwards'].includes(tokens[mark.from]?.t ?? '');
      if (term.k === 'qualifier' && ['rostral', 'caudal'].includes(term.id) && !pushed) out['qualifiers'] = [...((out['qualifiers'] as string[] | undefined) ?? []), term.id];
      if (term.k === 'surface') out['surfaces'] = [...((out['surfaces'] as string[] | undefined) ?? []), term.id];
    }
  }
  return out;
}

/** "no motorised": what was not used is no instrument. */
function ruledOutBefore(marks: readonly Mark[], at: number): boolean {
  const before = marks.slice(0, at).findLast(({ terms }) => !terms?.every((t) => t.k === 'glue'));
  return before?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent') ?? false;
}

/** The whole corrected item again, and what changed; the old reading stays. */
export function revision(old: Item, now: Record<string, unknown>, marks: readonly number[], more: { settles?: readonly string[]; doubts?: readonly { doubt: string; rule?: string }[] }): Made {
  const { id, how } = old;
  const body = bodyOf(old);
  const was = Object.fromEntries(Object.keys(now).map((key) => [key, body[key] ?? null]));
  const carried = Object.fromEntries(Object.keys(body).filter((key) => !(key in now) && !['kind', 'presence', 'when', 'topUp', 'given'].includes(key) && (body[key] ?? null) !== null).map((key) => [key, 'carried' as const]));
  return {
    body: { ...body, ...now } as ItemBody, marks, rules: [more.settles ? 'completed' : 'amend'], how: { ...how, ...carried },
    revises: { id, was, now }, ...(more.settles ? { settles: more.settles } : {}), doubts: (more.doubts ?? []).filter(({ doubt }) => doubt !== 'no-place').map((d) => ({ doubt: d.doubt as 'unlikely', ...(d.rule ? { rule: d.rule } : {}) })),
  };
}
