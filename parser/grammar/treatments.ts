/** From a clause about work to a treatment: never `done` without a word of doing. */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { procedures, type ProcedureId } from '../lexicon/procedures.ts';
import { handledAs, piecesSay, thingsSay } from '../lexicon/handling.ts';
import { teenWords } from '../lexicon/numbers.ts';
import { nobodysName, type WorkState } from '../lexicon/work.ts';
import type { Clause } from './assemble.ts';
import { standing, type Carry } from './carry.ts';
import { doneTo, placeOf, placeOfAll, type DoneTo } from './doneTo.ts';
import type { Made, MadeDoubt, TreatmentBody } from './made.ts';
import { digit } from './numbers.ts';
import { where as wherever } from './lists.ts';
import { neitherOf, resolvePlace } from './resolve.ts';
import { strangeBeside } from './pauses.ts';
import { headSpan, isFilling, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { treatmentDetails } from './treatmentDetails.ts';

export interface WorkInput {
  readonly missing: ReadonlySet<string>;
  readonly carry: Carry;
  readonly context: Context;
  readonly unknown: number;
}

export function treatmentsOf(
  clause: Clause,
  marks: readonly Mark[],
  tokens: readonly Token[],
  { missing, carry, context, unknown }: WorkInput,
): readonly Made[] {
  const said = clause.head.work as NonNullable<Clause['head']['work']>;
  // "retained cap on six oh seven", "removed it with forceps": it is the cap.
  const ofCap =
    said.id === 'extract' &&
    (capBefore(marks, clause.head.mark) ??
      (clause.placings.every((p) => pointedAt(p, marks, tokens)) &&
        /^(?:retained|loose)-cap$/.test(conditionOf(standing(context, carry.last)) ?? '')));
  // "foreign body in the left cheek", "removed it": that, and no tooth.
  const foreign = clause.placings.length === 0 && conditionOf(standing(context, carry.last)) === 'foreign-body';
  const work = {
    ...said,
    id: ofCap
      ? ('remove-cap' as const)
      : foreign && said.id === 'extract'
        ? ('remove-foreign-body' as const)
        : meant(said.id, clause, marks),
  };
  const procedure = procedures[work.id];
  // "rinsed it out before I started": when, and not how far.
  const when = (m: number): boolean =>
    tokens.slice(Math.max(0, (marks[m] as Mark).from - 2), marks[m]?.from).some(({ t }) => t === 'before');
  const states = [...clause.mods.filter((m) => !when(m)), clause.head.mark].flatMap((m) =>
    ((marks[m] as Mark).terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'state' ? [t.term.state] : [])),
  );
  const negated = clause.scopes.includes('absent');
  const state: WorkState | undefined = negated
    ? 'not-done'
    : (states.find((s) => s !== 'done') ??
      wished(clause, marks, tokens) ??
      (work.done || states.includes('done') || gave(clause, marks, tokens)
        ? 'done'
        : toCome(clause, marks, tokens)
          ? 'planned'
          : undefined));
  const kinds =
    work.id === 'remove-cap' || work.id === 'extract'
      ? ['T' as const]
      : ['T' as const, 'S' as const, ...(procedure.needsPlace ? [] : ['R' as const, 'G' as const])];
  // "reduced the wave on the lower left", "took the upper right row down": a wave is a row's.
  const thing = thingNamed(clause, marks, tokens);
  const rows = clause.placings.length > 0 && clause.placings.every(({ raw }) => raw.row === true && raw.codes === undefined);
  const wave = work.id === 'reduce' && (rows || thing?.things.includes('wave') === true);
  const preferRows = wave
    ? ['R' as const]
    : work.id === 'rasp'
      ? ['R' as const, 'T' as const]
      : work.id === 'reduce-incisors'
        ? clause.placings.some(({ raw }) => raw.jaw === 'upper' || raw.jaw === 'lower')
          ? ['R' as const]
          : ['G' as const]
        : work.id === 'rinse'
          ? ['G' as const]
          : kinds;
  // "down level with two oh eight": what it is level with is not what was taken down.
  const level = clause.mods.find((m) => marks[m]?.terms?.some((t) => t.k === 'work' && t.term.as === 'level'));
  const every = everyOne(clause, marks, tokens);
  const counted = clause.placings.every(bothAlone) && (thing !== undefined || every !== undefined);
  const meantBy = counted ? [] : every ? allBefore(clause, marks) : clause.placings;
  // "ulcer on the left cheek, rasped the lot": no tooth is rasped on a cheek.
  const placings = ofTeeth.has(work.id)
    ? meantBy.filter(({ raw }) => raw.codes !== undefined || raw.region === undefined || toothRegions.has(raw.region))
    : meantBy;
  const own =
    level !== undefined && placings.some((p) => (p.marks[0] as number) < level)
      ? placings.filter((p) => (p.marks[0] as number) < level)
      : placings;
  // "did not take one oh five or two oh five out": neither of them.
  const meantPlaces = state === undefined || state === 'done' || state === 'planned' || state === 'advised' ? own : neitherOf(own);
  const here = own.length > 0;
  const { place, doubts } = resolvePlace(meantPlaces, {
    kinds: hasCodes(clause) ? (kinds.length > 1 ? ['T', 'S'] : kinds) : preferRows,
    missing,
    ...(!wave &&
    ['extract', 'coronectomy', 'endodontic-treatment', 'restore', 'remove-cap', 'reduce', 'pack', 'widen-space', 'debride'].includes(
      work.id,
    )
      ? { single: true }
      : {}),
  });
  const last = standing(context, carry.last);
  // "lower left normal", "reduced it": nothing there to reduce.
  const nothing =
    last?.kind === 'finding' && last.presence === 'absent' && ['reduce', 'extract', 'remove-cap', 'scale-calculus'].includes(work.id);
  const before = last && 'place' in last && !nothing ? last.place : undefined;
  const points = work.id === 'rasp' ? pointsMeant(clause, marks, tokens, last, context) : undefined;
  const carriedPlace =
    (here && !(place === null && thing)) ||
    !(procedure.needsPlace || pointsAt(clause, marks, tokens) || (foreign && work.id === 'remove-foreign-body'))
      ? undefined
      : points
        ? points.place
        : thing
          ? placeOf(thing, work.id, context)
          : before && every
            ? placeOfAll(every, before, context)
            : before &&
                !strangeTooth(work.id, marks, before) &&
                !(ofTeeth.has(work.id) && 'region' in before && !toothRegions.has(before.region))
              ? before
              : undefined;
  const front = work.id === 'reduce-incisors' && place === null ? { region: 'incisors' as const } : undefined;
  const where = place ?? front ?? carriedPlace ?? null;
  const person = byName(marks, tokens, clause.head.mark);
  // Talk: "took the dog out" has a verb of doing and no tooth.
  const named = work.id === 'extract' && marks.some((mark) => mark.terms?.some((t) => t.k === 'condition' && drawn.has(t.id)));
  const strange =
    work.id === 'rasp' &&
    (work.done || states.includes('part-done')) &&
    /\b(?:rasp|float)/.test(
      tokens
        .slice(...headSpan(marks, clause.head.mark))
        .map(({ t }) => t)
        .join(' '),
    )
      ? strangeBeside(marks, tokens, clause.head.mark) - (person?.marks.length ?? 0)
      : unknown - (person?.marks.length ?? 0);
  if (where === null && !named && (strange > 0 || procedure.needsPlace) && !(procedure.needsPlace && strange === 0)) return [];
  const base: Omit<TreatmentBody, 'state'> = {
    kind: 'treatment',
    procedure: work.id,
    place: where,
    ...(work.instrument ? { instrument: work.instrument } : {}),
    ...(byVet(clause, marks, tokens)
      ? { by: 'veterinarian' }
      : byOwner(clause, marks, tokens)
        ? { by: 'owner' }
        : person
          ? { by: { name: person.name } }
          : {}),
    ...detailsOf(work.id, marks, [clause.head.mark, ...clause.mods, ...(work.id === 'extract' ? outcomeAlone(clause, marks) : [])], tokens),
  };
  const taken = [clause.head.mark, ...clause.placings.flatMap((p) => p.marks), ...clause.mods, ...clause.cues, ...(person?.marks ?? [])];
  const placeDoubts: MadeDoubt[] = doubts
    .filter(({ doubt }) => doubt !== 'no-place')
    .map((d) => ({
      doubt: d.doubt,
      words: (d.said ?? []).join(' ') || undefined,
      ...(d.readings
        ? { readings: d.readings.map((p) => ({ label: '', bodies: state ? [{ ...base, state, place: p } as TreatmentBody] : [] })) }
        : {}),
    }));
  // "did not get any of the caps off": none, wherever they are.
  const none = negated && tokens.some(({ t }) => t === 'any');
  if (where === null && procedure.needsPlace && placeDoubts.length === 0 && !none) placeDoubts.push({ doubt: 'no-place' });
  // "removed a loose fragment from two oh eight": a piece is not the tooth, and the record has no name for taking it.
  if (work.id === 'extract' && pieceBetween(clause, marks, tokens))
    return [{ marks: taken, rules: ['a piece of a tooth'], doubts: [{ doubt: 'no-condition', place: where }] }];
  if (state === undefined) {
    return [
      {
        marks: taken,
        rules: ['work without a verb of doing'],
        doubts: [
          ...placeDoubts,
          {
            doubt: 'state-unclear',
            place: where,
            readings: (['done', 'planned', 'advised'] as const).map((s) => ({
              label: s,
              bodies: [{ ...base, state: s } as TreatmentBody],
            })),
          },
        ],
      },
    ];
  }
  const irreversible: MadeDoubt[] =
    work.id === 'extract' && state === 'done'
      ? [
          {
            doubt: 'irreversible',
            place: where,
            why: 'Taking a tooth out cannot be undone: it counts once you have said yes.',
            source: 'usual care; local law decides who may extract',
          },
        ]
      : [];
  return [
    {
      body: { ...base, state } as TreatmentBody,
      marks: taken,
      rules: ['work', ...(clause.mods.some((m) => isFilling(marks[m])) ? ['filled'] : [])],
      ...(carriedPlace && place === null ? { how: { place: 'carried' as const } } : {}),
      doubts: [...placeDoubts, ...irreversible],
    },
  ];
}

const isCap = (id: ConditionId): boolean => id === 'retained-cap' || id === 'loose-cap';
/** "the cap on five oh seven removed": what was named last before the work, where that is a thing that is drawn. */
/** "the right one", "both": of what was found, and nothing of its own. */
const pointedAt = ({ raw, marks: own }: Clause['placings'][number], marks: readonly Mark[], tokens: readonly Token[]): boolean =>
  raw.region === undefined &&
  raw.row === undefined &&
  own.every((m) => {
    const { from, to } = marks[m] as Mark;
    return tokens[from]?.carried === true || !tokens.slice(from, to).some(({ t }) => digit(t) !== undefined || teenWords[t] !== undefined);
  });

function capBefore(marks: readonly Mark[], head: number): true | undefined {
  // "cap on eight oh eight still tight, not removed": how firm it sits is no other thing.
  const named = marks
    .slice(0, head)
    .flatMap(({ terms }) => (terms ?? []).flatMap((t) => (t.k === 'condition' && (isCap(t.id) || drawn.has(t.id)) ? [t.id] : [])));
  return named.length > 0 && named.every(isCap) ? true : undefined;
}

/** "x rayed that", "get it x rayed", "rasped those points": of what was named before. */
const pointsAt = (clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean => {
  const { from, to } = marks[clause.head.mark] as Mark;
  const before = tokens[from - 1]?.t;
  const behind = tokens[tokens[to]?.t === 'of' ? to + 1 : to]?.t;
  return (
    ["that's", 'it', 'that'].includes(before ?? '') || pointing.has(behind ?? '') || tokens.slice(from, to).some(({ t }) => pointing.has(t))
  );
};
/** "rasped those points off": where points were found last; "rasped them" too, where nothing else was found since. Undefined: of no points. */
function pointsMeant(
  clause: Clause,
  marks: readonly Mark[],
  tokens: readonly Token[],
  last: Item | undefined,
  { items }: Context,
): { readonly place: Place | undefined } | undefined {
  const { from, to } = marks[clause.head.mark] as Mark;
  const said = tokens.slice(from, to + 2).map(({ t }) => t);
  const named = said.includes('points') || said.includes('edges');
  if (!named && !said.some((t) => several.has(t))) return undefined;
  const found = items.findLast((item) => item.kind === 'finding' && item.presence === 'present' && handledAs[item.condition] === 'points');
  return { place: (found && 'place' in found && (named || found === last) && found.place) || undefined };
}
const several: ReadonlySet<string> = new Set(['those', 'them', 'these']);
const pointing: ReadonlySet<string> = new Set(['it', 'that', 'those', 'them', 'these', 'this']);
/** "hook two eleven", "wolf teeth came out in March": no wolf tooth is the tooth spoken of before. */
const strangeTooth = (id: ProcedureId, marks: readonly Mark[], place: Place): boolean =>
  id === 'extract' &&
  'teeth' in place &&
  !place.teeth.every((tooth) => tooth.endsWith('05')) &&
  marks.some((mark) => mark.terms?.some((t) => t.k === 'condition' && t.id === 'wolf-tooth'));

const conditionOf = (item: Item | undefined): ConditionId | undefined =>
  item?.kind === 'finding' && item.presence !== 'absent' ? item.condition : undefined;
/** What was done, where another word of the same breath says more: shortened incisors, a gap filled with putty. */
function meant(id: ProcedureId, clause: Clause, marks: readonly Mark[]): ProcedureId {
  const incisors =
    clause.placings.length > 0 &&
    clause.placings.every(({ raw }) => raw.codes === undefined && raw.positions?.length === 3 && raw.positions[0] === 1);
  if (id === 'reduce' && incisors) return 'reduce-incisors';
  if (id === 'flush' && clause.placings.length > 0 && clause.placings.every(({ raw }) => raw.region === 'mouth')) return 'rinse';
  return id === 'restore' && marks.some(isFilling) ? 'pack' : id;
}

/** "took them all down", "took both of them down": what the pronoun points back to is more than what was named last. */
function everyOne(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): 'all' | 'both' | undefined {
  const said = tokens.slice((marks[clause.head.mark] as Mark).from, (marks[clause.head.mark] as Mark).to + 3).map(({ t }) => t);
  const counted = said.findIndex((t) => t === 'all' || t === 'both');
  // "hook on one oh six and ramp on three eleven, both reduced"
  let before = (marks[clause.head.mark] as Mark).from - 1;
  while (beings.has(tokens[before]?.t ?? '')) before -= 1;
  const told = tokens[before]?.t;
  if ((told === 'both' || told === 'all') && tokens[before]?.ends !== true && clause.head.work?.done) return told;
  const behind = tokens
    .slice((marks[clause.head.mark] as Mark).to, (marks[clause.head.mark] as Mark).to + 4)
    .map(({ t }) => t)
    .join(' ');
  if (clause.head.work?.done && bothOfThem.test(behind)) return 'both';
  // "reduced both by two mil", "took two mil off both": of the two just named.
  const [all, next] = [said[counted], said[counted + 1]];
  if (all === 'both' && (next === undefined || byHow.has(next) || tokens[(marks[clause.head.mark] as Mark).from + counted]?.ends))
    return all;
  return counted >= 0 && [said[counted - 1], said[counted + 2]].some((t) => t === 'them' || t === 'those')
    ? (said[counted] as 'all' | 'both')
    : undefined;
}
/** "reduced the pair of them by hand", "scaled the both of them" */
const bothOfThem = /^(?:the )?(?:both|pair|two) of (?:them|those|these)\b/;
const beings: ReadonlySet<string> = new Set([
  'was',
  'were',
  'are',
  'been',
  'have',
  'being',
  'now',
  'then',
  'got',
  'of',
  'them',
  'those',
  'these',
]);
const byHow: ReadonlySet<string> = new Set(['by', 'to', 'with', 'down', 'off', 'back', 'and', 'now', 'today']);
const handledIn = ({ terms }: Mark): readonly (string | undefined)[] =>
  (terms ?? []).flatMap((t) => (t.k === 'condition' ? [handledAs[t.id]] : []));
/** In the same breath: the places of all findings of one kind that stand before the work; its own where other kinds stand among them. */
function allBefore(clause: Clause, marks: readonly Mark[]): Clause['placings'] {
  const before = marks.slice(0, clause.head.mark);
  const [kind, ...more] = before.map(handledIn).filter((kinds) => kinds.length > 0);
  return kind === undefined || clause.placings.length === 0 || more.some((kinds) => !kinds.some((one) => kind.includes(one)))
    ? clause.placings
    : before.flatMap(({ place: raw }, i) => (raw ? [{ raw, marks: [i] }] : []));
}
/** "I'd want two oh nine x rayed", "needs two oh nine x rayed": what is wanted of the tooth between is not done yet. */
function wished(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): WorkState | undefined {
  const head = marks[clause.head.mark] as Mark;
  // "get that x rayed": asked for, and not done yet.
  const asked = tokens
    .slice(Math.max(0, head.from - 3), head.from)
    .map(({ t }) => t)
    .join(' ');
  if (/(?:^|^(?:so|and|then|best|please|better) )(?:get|have) (?:it|that|this|them|those|him|her|that one)$/.test(asked)) return 'advised';
  const place = clause.placings.flatMap((p) => p.marks).find((m) => m < clause.head.mark);
  const before = place === undefined ? undefined : marks[place]?.from;
  if (before === undefined || tokens.slice(before, head.from).some(({ ends }) => ends)) return undefined;
  return tokens.slice(Math.max(0, before - 3), before).some(({ t }) => wishes.has(t))
    ? tokens.slice(0, before).some(({ t }) => t === 'owner' || t === 'they')
      ? 'planned'
      : 'advised'
    : undefined;
}
const wishes: ReadonlySet<string> = new Set(['want', 'wants', 'wanted', 'need', 'needs', 'like', 'prefer', 'rather']);

/** "we'll x ray two oh eight": right behind a word of what is to come. */
const toCome = (clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean => {
  const from = marks[clause.head.mark]?.from ?? 0;
  return tokens.slice(Math.max(0, from - 2), from).some(({ t }) => ['will', 'shall'].includes(t));
};

/** "rasped today by Orla": a name that is no word of the lexicon, right behind "by", and nothing behind it. */
function byName(
  marks: readonly Mark[],
  tokens: readonly Token[],
  from: number,
): { readonly name: string; readonly marks: readonly number[] } | undefined {
  const first = marks.findIndex((mark, i) => i > from && mark.unknown === true && tokens[mark.from - 1]?.t === 'by');
  if (first < 0) return undefined;
  const last = marks.findIndex(
    (mark, i) => i >= first && (mark.unknown !== true || i === first + MOST_NAMES || tokens[mark.to - 1]?.ends === true),
  );
  const end = last < 0 ? marks.length : marks[last]?.unknown === true ? last + 1 : last;
  const next = marks[end];
  if (
    end - first > MOST_NAMES ||
    (next !== undefined &&
      tokens[(marks[end - 1] as Mark).to - 1]?.ends !== true &&
      !/^(?:and|today|this|so|in|on|at|with|from)$/.test(tokens[next.from]?.t ?? ''))
  )
    return undefined;
  const said = tokens.slice((marks[first] as Mark).from, (marks[end - 1] as Mark).to).map(({ t }) => t);
  if (said.some((t) => noName.has(t) || !/^\p{L}+$/u.test(t))) return undefined;
  return {
    name: said.map((t) => t.charAt(0).toUpperCase() + t.slice(1)).join(' '),
    marks: Array.from({ length: end - first }, (_, i) => first + i),
  };
}
const MOST_NAMES = 2;
const noName: ReadonlySet<string> = new Set(nobodysName);

/** The words of the work, with those beside them that name what it was done to: "reduced | both ramps", "the two caps | off". */
function thingNamed(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): DoneTo | undefined {
  const head = marks[clause.head.mark] as Mark;
  let { from, to } = head;
  while (from > 0 && besideThing(tokens[from - 1]) && tokens[from - 1]?.ends !== true) from -= 1;
  while (to < tokens.length && besideThing(tokens[to]) && tokens[to - 1]?.ends !== true) to += 1;
  return doneTo(tokens.slice(from, to).map(({ t }) => t));
}
const besideThing = (token: Token | undefined): boolean =>
  token !== undefined && (countsThing.has(token.t) || thingsSay[token.t.replace(/s$/, '')] !== undefined);
const countsThing: ReadonlySet<string> = new Set([
  'the',
  'both',
  'two',
  'of',
  'those',
  'these',
  'all',
  'loose',
  'little',
  'small',
  'big',
  'large',
  'wee',
  'tall',
  'bad',
  'high',
  'that',
  'his',
  'her',
]);
/** "both", and no place of its own. */
const bothAlone = ({ raw }: Clause['placings'][number]): boolean =>
  raw.weak === true && Object.keys(raw).every((key) => key === 'side' || key === 'weak');

/** "gave him a rasp": a noun with a verb of giving before it. */
const gave = (clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean =>
  tokens.slice(0, marks[clause.head.mark]?.from).some(({ t }) => ['gave', 'given', 'giving'].includes(t)) &&
  clause.head.work?.id !== 'extract';

/** "took the wolf tooth out, root left in": how it came out, where nothing else was done. */
const outcomeAlone = (clause: Clause, marks: readonly Mark[]): readonly number[] =>
  marks.filter((mark) => mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')).length > 1
    ? []
    : wherever(marks, (mark, m) => !clause.mods.includes(m) && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'outcome'));

/** How a tooth came out is told of a tooth that came out; a size or a level of what is taken down. */
function detailsOf(
  id: ProcedureId,
  marks: readonly Mark[],
  mods: readonly number[],
  tokens: readonly Token[],
): ReturnType<typeof treatmentDetails> {
  const { outcome, amountBasis, instrument, ...rest } = treatmentDetails(marks, mods, tokens);
  return {
    ...rest,
    // "floated the lot, went round again with my fingers": nobody rasps with them.
    ...(instrument && !(instrument === 'fingers' && abrades.has(id)) ? { instrument } : {}),
    ...(outcome && id === 'extract' ? { outcome } : {}),
    ...(amountBasis &&
    (rest.amountMm !== undefined || amountBasis === 'level') &&
    ['reduce', 'reduce-incisors', 'bit-seat', 'rasp', 'widen-space'].includes(id)
      ? { amountBasis }
      : {}),
  };
}

const abrades: ReadonlySet<ProcedureId> = new Set(['rasp', 'reduce', 'bit-seat', 'round', 'buff', 'reduce-incisors']);
const ofTeeth: ReadonlySet<ProcedureId> = new Set([
  'rasp',
  'scale-calculus',
  'reduce',
  'bit-seat',
  'round',
  'buff',
  'extract',
  'remove-cap',
  'coronectomy',
  'restore',
  'endodontic-treatment',
]);
const toothRegions: ReadonlySet<string> = new Set(['mouth', 'incisors', 'cheek-teeth']);

/** What is drawn like a tooth: named in the same breath it is what the extraction is of. */
const drawn: ReadonlySet<string> = new Set(['wolf-tooth', 'blind-wolf-tooth', 'deciduous-present', 'canine-present', 'root-remnant']);

/** A word for a piece of a tooth between the verb and the next place. */
function pieceBetween(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean {
  const head = marks[clause.head.mark] as Mark;
  const place = clause.placings.flatMap((p) => p.marks).find((m) => m > clause.head.mark);
  return (
    place !== undefined &&
    tokens.slice(head.to, (marks[place] as Mark).from).some(({ t }) => piecesSay.has(t) && t !== 'side' && t !== 'half')
  );
}

/** "vet extracted it", "done by the vet", "vet did that": who did it, where that was said of this work. */
function byVet(clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean {
  return clause.mods.some((m) => {
    const mark = marks[m] as Mark;
    if (!mark.terms?.some((t) => t.k === 'work' && t.term.as === 'vet')) return false;
    const next = tokens[mark.to]?.t ?? '';
    return (
      tokens[mark.from]?.t === 'by' ||
      next === 'did' ||
      next === 'has' ||
      (m < clause.head.mark &&
        marks.slice(m + 1, clause.head.mark).every((between) => between.terms?.every((t) => t.k === 'glue' || t.k === 'filler')))
    );
  });
}

/** "flushed by the owner" */
const byOwner = (clause: Clause, marks: readonly Mark[], tokens: readonly Token[]): boolean =>
  clause.mods.some((m) => {
    const { from, terms } = marks[m] as Mark;
    return terms?.some((t) => t.k === 'work' && t.term.as === 'owner') === true && tokens[from - 1]?.t === 'by';
  });

const hasCodes = (clause: Clause): boolean => clause.placings.some(({ raw }) => raw.codes !== undefined);
