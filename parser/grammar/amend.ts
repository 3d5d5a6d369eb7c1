/** What a later phrase puts right or adds to an item that stands: "correction, two oh seven", "no, make that six", "about four mil", "by hand". The old reading stays. */
import type { Item, Place } from '../contract/item.ts';
import { correctionSay } from '../lexicon/corrections.ts';
import { scales } from '../lexicon/scales.ts';
import type { Alone } from './alone.ts';
import type { Placing } from './groups.ts';
import { standing } from './carry.ts';
import { detailsOf } from './findings.ts';
import { formAt, formsOf } from './forms.ts';
import { first } from './lists.ts';
import { bodyOf } from './meaning.ts';
import type { ItemBody, Made } from './made.ts';
import type { RawPlace } from './places.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import { glueMarks, isGap, sideOfLast, said } from './sameAgain.ts';
import type { Mark } from './scan.ts';
import { doseIn } from './sedations.ts';
import type { Token } from './tokens.ts';
import { treatmentDetails } from './treatmentDetails.ts';

/** The words without what people say before they begin. */
export const lead = (tokens: readonly Token[]): string =>
  tokens
    .map(({ t }) => t)
    .join(' ')
    .replace(/^(?:(?:so|well|oh|okay|ok|now|then|the|yeah|hang on) )+/, '');
const leadWords = new Set(['so', 'well', 'oh', 'okay', 'ok', 'now', 'then', 'the', 'yeah', 'hang', 'on']);
const fixes = formsOf(correctionSay.map((form) => [form.split(' '), form]));
/** "correction two oh seven", "sorry I mean two oh seven": the phrase begins by taking back. */
export function corrects(tokens: readonly Token[]): boolean {
  // Most phrases begin with no word of taking back: told before anything is joined.
  if (!fixes.has(tokens[0]?.t ?? '') && !leadWords.has(tokens[0]?.t ?? '')) return false;
  const words = lead(tokens).split(' ').length;
  return formAt(fixes, tokens, tokens.length - words) !== undefined;
}
/** Also "not one oh seven, two oh seven" and "no, two oh seven". */
export const correcting = (tokens: readonly Token[]): boolean => corrects(tokens) || /^(not|no|that is|it is)\b/.test(lead(tokens));

/** "no, make that six": the number takes the place of the last one; its unit stays. */
export function numberAlone({ marks, role, tokens, carry, context, unknown }: Alone): readonly Made[] {
  const last = standing(context, carry.last);
  const at = marks.findIndex(({ number }) => number !== undefined);
  const value = marks[at]?.number;
  // "recheck eight weeks", "no, make it six"
  if (last?.kind === 'follow-up' && last.after && 'value' in last.after && typeof value === 'number' && unknown === 1 && correcting(tokens))
    return [
      revision(
        last,
        { after: { ...last.after, value } },
        marks.map((_, m) => m),
        {},
      ),
    ];
  if (
    unknown !== 1 ||
    value === undefined ||
    last?.kind !== 'finding' ||
    !correcting(tokens) ||
    role.some((r) => r === 'place' || r === 'head')
  )
    return [];
  const amount = typeof value === 'number' ? value : ([value[0], value[1]] as [number, number]);
  const measures = last.measures ?? [];
  if (measures.length > 0)
    return [revision(last, { measures: [...measures.slice(0, -1), { ...measures.at(-1), value: amount }] }, [at], {})];
  const legal: readonly string[] = last.grade && last.grade.scale !== 'spoken' ? scales[last.grade.scale].values : [String(value)];
  // "make that four", of what has neither a size nor a grade: of what, is asked.
  return last.grade && legal.includes(String(value))
    ? [revision(last, { grade: { ...last.grade, value: String(value) } }, [at], {})]
    : [{ marks: [at], rules: ['half'], doubts: [{ doubt: 'unread' }] }];
}

/** "correction, two oh seven", "sorry, the right": where it was. */
export function amendedPlace(last: Item, input: Alone, placings: readonly Placing[]): readonly Made[] {
  if (!('place' in last)) return [];
  const marks = [...input.places, ...glueMarks(input)];
  const side = placings.every(({ raw }) => sideAlone(raw)) ? sideOfLast(last, placings, input.missing) : undefined;
  if (side?.place) return [revision(last, { place: side.place }, marks, { doubts: side.doubts })];
  // "not one oh seven two oh seven": the last one named.
  const ofTwo = lead(input.tokens).startsWith('not ');
  const raws = placings
    .slice(-1)
    .map((p) => ofItsJaw(p, last.place))
    .map((p) =>
      ofTwo && p.raw.codes && p.raw.codes.length > 1 && !isGap(p.raw.codes, last)
        ? { ...p, raw: { ...p.raw, codes: p.raw.codes.slice(-1), joined: 'one' as const } }
        : p,
    );
  const wanted =
    last.kind === 'finding' ? wantedBy(last.condition, input.missing) : { kinds: ['T', 'S', 'R', 'G'] as const, missing: input.missing };
  const { place, doubts } = resolvePlace(raws, wanted);
  if (place !== null) return [revision(last, { place }, marks, { doubts })];
  return [
    {
      marks: input.places,
      doubts: doubts.map((d) => ({ doubt: d.doubt, words: (d.said ?? []).join(' ') || undefined })),
      rules: ['correction'],
    },
  ];
}
/** "the left first molar": a correction of the side stays in the jaw. */
function ofItsJaw(placing: Placing, place: Place | null | undefined): Placing {
  const { raw } = placing;
  const jaws = new Set((place && 'teeth' in place ? place.teeth : []).map((tooth) => (/^[1256]/.test(tooth) ? 'upper' : 'lower')));
  const open = raw.codes === undefined && raw.jaw === undefined && raw.side !== undefined && raw.positions !== undefined;
  return open && jaws.size === 1 ? { ...placing, raw: { ...raw, jaw: [...jaws][0] as 'upper' | 'lower' } } : placing;
}
const sideAlone = ({ codes, side, jaw, region, positions }: RawPlace): boolean =>
  codes === undefined && side !== undefined && jaw === undefined && region === undefined && positions === undefined;

/** A size or a grade that nothing takes is asked about. */
export const worthADoubt = ({ marks }: Alone, mods: readonly number[]): boolean =>
  mods.some((m) => (marks[m] as Mark).measure !== undefined || (marks[m] as Mark).grade !== undefined);

const thatDay =
  /\b(?:was|were|been)\b.*\b(?:last (?:time|year|visit|month|week|spring|summer|autumn|winter)|before|previously|(?:weeks?|months?|years?) ago)\b/;
/** A size, tool or degree said alone after an item amends it. */
export function amended(last: Item, input: Alone, mods: readonly number[]): readonly Made[] {
  if (last.kind === 'sedation' || last.kind === 'medication') {
    const dose = doseIn(input.tokens, 0, input.tokens.length);
    const route = first(mods, (m) =>
      first(input.marks[m]?.terms ?? [], (t) => (t.k === 'work' && t.term.as === 'route' ? t.term.route : undefined)),
    );
    const now = { ...(dose?.unit ? { dose } : {}), ...(route ? { route } : {}) };
    return Object.keys(now).length === 0 ? [] : [revision(last, now, mods, {})];
  }
  if (last.kind === 'finding') {
    // A size belongs to nothing that was ruled out.
    if (last.presence === 'absent')
      return worthADoubt(input, mods) ? [{ marks: mods, doubts: [{ doubt: 'no-condition' }], rules: ['half'] }] : [];
    const details = detailsOf(last.condition, mods, input.marks, input.tokens, -1);
    const now = said(details);
    if (details.gradeDoubt) return [{ marks: mods, doubts: [details.gradeDoubt], rules: ['amend'] }];
    if (Object.keys(now).length === 0) return [];
    // "it was eight mil last time": how it was then changes nothing of how it is.
    // "last year there was a pocket, eight mil", "today it's four": how it is today changes nothing of how it was.
    // "no different": neither does how it has changed since.
    if (
      last.when === 'before' &&
      (details.change !== undefined || /\b(?:today|now|this time)\b/.test(input.tokens.map(({ t }) => t).join(' ')))
    )
      return [
        {
          body: { ...bodyOf(last), ...now, when: 'now' } as ItemBody,
          marks: mods,
          how: { condition: 'carried', place: 'carried' },
          rules: ['finding', 'as it is now'],
          doubts: [],
        },
      ];
    const before = { ...bodyOf(last), ...now, when: 'before' } as ItemBody;
    return thatDay.test(lead(input.tokens))
      ? [{ body: before, marks: mods, how: { condition: 'carried', place: 'carried' }, rules: ['finding', 'as it was'], doubts: [] }]
      : [revision(last, now, mods, {})];
  }
  if (last.kind === 'treatment') {
    const now = treatmentDetails(input.marks, mods, input.tokens);
    return Object.keys(now).length === 0 ? [] : [revision(last, now, mods, {})];
  }
  return [];
}

/** The whole corrected item again, and what changed; the old reading stays. */
export function revision(
  old: Item,
  now: Record<string, unknown>,
  marks: readonly number[],
  more: { settles?: readonly string[]; doubts?: readonly { doubt: string; rule?: string }[] },
): Made {
  const { id, how } = old;
  const body = bodyOf(old);
  const was = Object.fromEntries(Object.keys(now).map((key) => [key, body[key] ?? null]));
  const carried = Object.fromEntries(
    Object.keys(body)
      .filter((key) => !(key in now) && !['kind', 'presence', 'when', 'topUp', 'given'].includes(key) && (body[key] ?? null) !== null)
      .map((key) => [key, 'carried' as const]),
  );
  return {
    body: { ...body, ...now } as ItemBody,
    marks,
    rules: [more.settles ? 'completed' : 'amend'],
    how: { ...how, ...carried },
    revises: { id, was, now },
    ...(more.settles ? { settles: more.settles } : {}),
    doubts: (more.doubts ?? [])
      .filter(({ doubt }) => doubt !== 'no-place')
      .map((d) => ({ doubt: d.doubt as 'unlikely', ...(d.rule ? { rule: d.rule } : {}) })),
  };
}
