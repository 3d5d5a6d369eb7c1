/**
 * "That hook", "both the upper hooks", "those gaps", "the big one", "the loose one", "the other one": words that name what was found before, by what
 * it is, where it is, how big it is or how many they are. They are of those findings and of no others; where they fit several, or none, they name nothing.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { foundAs, handledAs } from '../lexicon/handling.ts';
import {
  foundAny,
  foundNouns,
  foundSized,
  foundWhere,
  foundWith,
  howMany,
  inTheRow,
  theseTeeth,
  type Sized,
} from '../lexicon/namedBefore.ts';
import { standing, type Carry } from './carry.ts';
import type { RawPlace } from './places.ts';
import { lies } from './reachBack.ts';
import { scan } from './scan.ts';
import { positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

export type Found = Extract<Item, { kind: 'finding' }> & { readonly place: Place };
/** The words from `from` to `to`, what they are of, and where that is. */
export interface Named {
  readonly from: number;
  readonly to: number;
  readonly found: readonly Found[];
  readonly places: readonly Place[];
  readonly many: boolean;
  /** "where that cap came off": by its place. */ readonly lead?: 'at';
  /** With no word that points to it: "hook's reduced". */ readonly bare?: true;
  /** By the number of the teeth: "those two nines". */ readonly byNumber?: true;
}

/** On which side, in which jaw, at which teeth. */
type Where = Pick<RawPlace, 'side' | 'jaw' | 'positions'>;

/** What the words say of it. */
interface Saying {
  readonly from: number;
  readonly to: number;
  readonly which: string;
  readonly many: boolean;
  readonly count?: number;
  /** Undefined: "one", which may be any. */ readonly ids?: readonly ConditionId[];
  /** Which teeth, where they are named by their number: "those two nines". */ readonly teeth?: number;
  readonly with: readonly (readonly ConditionId[])[];
  readonly sized?: Sized;
  readonly where: readonly Where[];
  readonly order?: 'first' | 'middle' | 'last';
  readonly other: boolean;
}

const which: ReadonlySet<string> = new Set(['the', 'that', 'those', 'these', 'this', 'both', 'either', 'neither', 'all']);
export const definiteWords = which;
const ofTwo: ReadonlySet<string> = new Set(['both', 'either', 'neither']);
/** "the nines" are all of them. */
const pointsAt: ReadonlySet<string> = new Set(['those', 'these', 'both']);
const inNumber: ReadonlySet<string> = new Set(['oh', 'o', 'zero', 'ten', 'eleven', 'twelve', 'one', 'hundred', 'double', 'point', 'mil']);
const leads: ReadonlySet<string> = new Set(['on', 'at', 'up', 'down', 'in', 'over']);
/** More teeth than these are a group, which work names by its row. */
const MOST_TEETH = 4;
const LONGEST = 6;

const word = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const text = (place: Place): string => JSON.stringify(place);

/** The noun here, or a name of the lexicon that begins here: "slab fracture", "wolf teeth". */
function headAt(tokens: readonly Token[], at: number): Pick<Saying, 'to' | 'ids' | 'many' | 'teeth'> | undefined {
  const t = word(tokens, at);
  if (t === 'one' || t === 'ones')
    return inNumber.has(word(tokens, at + 1)) && !tokens[at]?.ends ? undefined : { to: at + 1, many: t === 'ones' };
  // "those two nines": of what was found there.
  if (theseTeeth[t] !== undefined) return { to: at + 1, many: true, teeth: theseTeeth[t] };
  const ids = foundNouns.get(t);
  if (ids) return { to: at + 1, ids, many: /[^su]s$|data$/.test(t) };
  const mark = scan(tokens.slice(at, at + LONGEST)).marks[0];
  const own = mark?.terms?.flatMap((term) => (term.k === 'condition' && term.strength === 'say' ? [term] : [])) ?? [];
  return mark && own.length > 0 && mark.place === undefined
    ? { to: at + mark.to, ids: own.map(({ id }) => id), many: own.some(({ plural }) => plural) }
    : undefined;
}

/** Where it is, said behind its name: "on the left", "at the top". */
function whereBehind(tokens: readonly Token[], at: number): { readonly to: number; readonly where: Saying['where'] } {
  if (tokens[at - 1]?.ends || !leads.has(word(tokens, at))) return { to: at, where: [] };
  let to = at + 1;
  while (word(tokens, to) === 'the' || leads.has(word(tokens, to))) to += 1;
  const from = to;
  while (foundWhere[word(tokens, to)]) to += 1;
  // "the hooks on the upper sixes"
  const teeth = scan(tokens.slice(from, from + LONGEST)).marks[0];
  if (teeth?.place?.positions && from + teeth.to > to && teeth.place.codes === undefined)
    return { to: from + teeth.to, where: [teeth.place] };
  if (to === from) return { to: at, where: [] };
  const where = tokens.slice(from, to).map(({ t }) => foundWhere[t] as Saying['where'][number]);
  return { to: ['side', 'there', 'jaw'].includes(word(tokens, to)) ? to + 1 : to, where };
}

function sayingAt(tokens: readonly Token[], from: number): Saying | undefined {
  if (!which.has(word(tokens, from))) return undefined;
  const said: {
    with: (readonly ConditionId[])[];
    where: Where[];
    sized?: Sized;
    order?: Saying['order'];
    other: boolean;
    count?: number;
  } = {
    with: [],
    where: [],
    other: false,
  };
  let told = false;
  for (let at = from + 1; at < tokens.length && at - from <= LONGEST; at += 1) {
    const t = word(tokens, at);
    if (tokens[at - 1]?.ends) return undefined;
    const isNoun = foundNouns.has(t) || theseTeeth[t] !== undefined || t === 'one' || t === 'ones';
    const known = !isNoun && (foundWith[t] ?? foundSized[t] ?? foundWhere[t] ?? inTheRow[t] ?? (foundAny.has(t) || t === 'other'));
    const head = known ? undefined : headAt(tokens, at);
    if (head) {
      // "that one", "the one": of what was spoken of last.
      if (head.ids === undefined && !told && (head.teeth === undefined || !pointsAt.has(word(tokens, from)))) return undefined;
      const behind = whereBehind(tokens, head.to);
      const lone = word(tokens, from);
      return {
        from,
        ...head,
        ...said,
        to: behind.to,
        where: [...said.where, ...behind.where],
        many: head.many || ofTwo.has(lone) || lone === 'all',
        which: lone,
        ...(ofTwo.has(lone) ? { count: 2 } : said.count ? { count: said.count } : {}),
      };
    }
    if (!known) return undefined;
    told ||= !foundAny.has(t);
    if (foundWith[t]) said.with.push(foundWith[t]);
    else if (foundSized[t]) said.sized = foundSized[t];
    else if (foundWhere[t]) said.where.push(foundWhere[t]);
    else if (inTheRow[t]) said.order = inTheRow[t];
    else if (t === 'other') said.other = true;
    if (howMany[t]) said.count = howMany[t] as number;
  }
  return undefined;
}

const unique = (found: readonly Found[]): readonly Place[] => [...new Map(found.map(({ place }) => [text(place), place])).values()];
const kindOf = ({ condition }: Found): string => {
  const kind = handledAs[condition];
  return kind === undefined || kind === 'tooth' || kind === 'feed' || kind === 'overgrowth' ? condition : kind;
};
/** Findings by what they are, those of one kind together: of which there are several. */
function groupsOf(found: readonly Found[]): readonly (readonly Found[])[] {
  const groups = new Map<string, Found[]>();
  for (const one of found) groups.set(kindOf(one), [...(groups.get(kindOf(one)) ?? []), one]);
  return [...groups.values()].filter((group) => unique(apart(group)).length > 1);
}
/** Each tooth or gap of a finding by itself. */
const apart = (found: readonly Found[]): readonly Found[] =>
  found.flatMap((one): readonly Found[] =>
    'teeth' in one.place
      ? one.place.teeth.map((tooth) => ({ ...one, place: { teeth: [tooth] } }))
      : 'spaces' in one.place
        ? one.place.spaces.map((space) => ({ ...one, place: { spaces: [space] } }))
        : [one],
  );

/** The one that was called so, or the first or the last of them by its size. */
function bySize(group: readonly Found[], { most, what, called }: Sized): readonly Found[] {
  const named = group.filter(({ severity, severitySaid }) =>
    called.some((one) => severitySaid?.split(' ').includes(one) || severity === one),
  );
  if (named.length > 0) return named;
  const sizes = group.flatMap((one) => {
    const value = one.measures?.find((measure) => what === undefined || measure.what === what)?.value;
    return typeof value === 'number' ? [{ one, value }] : [];
  });
  const values = sizes.map(({ value }) => value);
  // "the deep one": the only one of which it was said how deep.
  if (what && most && unique(sizes.map(({ one }) => one)).length === 1) return sizes.map(({ one }) => one);
  const end = most ? Math.max(...values) : Math.min(...values);
  const other = most ? Math.min(...values) : Math.max(...values);
  return new Set(values).size > 1 && end !== other ? sizes.filter(({ value }) => value === end).map(({ one }) => one) : [];
}

/** Of several in one row by where they stand in it. */
function byOrder(group: readonly Found[], order: 'first' | 'middle' | 'last'): readonly Found[] {
  const teeth = ({ place }: Found): readonly string[] => ('teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : []);
  const rows = new Set(group.flatMap((one) => teeth(one).map(quadrantOf)));
  const sorted = [...group].sort((a, b) => positionOf(teeth(a)[0] ?? '00') - positionOf(teeth(b)[0] ?? '00'));
  if (rows.size !== 1 || (order === 'middle' && unique(sorted).length !== 3)) return [];
  const place = unique(sorted).at(order === 'first' ? 0 : order === 'middle' ? 1 : -1);
  return sorted.filter((one) => place && text(one.place) === text(place));
}

/** What was worked on or spoken of last. */
const lastPlaces = (last: Item | undefined): readonly string[] =>
  last && 'place' in last && last.place ? apart([{ ...(last as Found) }]).map(({ place }) => text(place)) : [];

function choose(saying: Saying, found: readonly Found[], last: Item | undefined): readonly Found[] {
  const { ids, sized, order, other, where, teeth } = saying;
  if (teeth !== undefined)
    return apart(found).filter(({ place }) => lies(place, { positions: [teeth] }) && where.every((raw) => lies(place, raw)));
  // "that gap", of feed between two teeth: where it is.
  const between = ids?.includes('diastema') && !found.some(({ condition }) => condition === 'diastema');
  const those = between ? found.filter(({ place }) => 'spaces' in place).map((one): Found => ({ ...one, condition: 'diastema' })) : found;
  // "the right wolf tooth", of the two that were found at once.
  const all = where.length > 0 ? apart(those) : those;
  const named = all.filter(
    (one) =>
      (ids?.includes(one.condition) ?? true) &&
      saying.with.every((with_) => with_.includes(one.condition)) &&
      where.every((raw) => lies(one.place, raw)),
  );
  const picks = sized !== undefined || order !== undefined || other || (ids === undefined && saying.with.length === 0);
  if (!picks) return named;
  // "the other one", "the lower one": of what was found in more places than one.
  const groups = groupsOf(
    apart(all.filter((one) => (ids?.includes(one.condition) ?? true) && saying.with.every((with_) => with_.includes(one.condition)))),
  );
  const of = (group: readonly Found[]): readonly Found[] => {
    const here = group.filter(({ place }) => where.every((raw) => lies(place, raw)));
    const big = sized ? bySize(here, sized) : here;
    const ordered = order ? byOrder(big, order) : big;
    const before = lastPlaces(last);
    const rest = other ? ordered.filter(({ place }) => !before.includes(text(place))) : ordered;
    return rest.length < group.length || unique(group).length === 1 ? rest : [];
  };
  // "those two front ones": incisors.
  if (ids === undefined && saying.many && order !== undefined && order !== 'middle' && !sized && !other)
    return apart(all).filter(
      ({ place }) => 'teeth' in place && place.teeth.every((tooth) => (order === 'first') === positionOf(tooth) <= 3),
    );
  if (groups.length === 0 && ids !== undefined && sized && !other && !order) return named;
  if (sized) {
    const measured = sized.what ? bySize(all, { ...sized, called: [] }) : [];
    if (measured.length > 0) return measured;
    const fits = groups.map(of).filter((one) => one.length > 0);
    return fits.length === 1 ? (fits[0] as readonly Found[]) : [];
  }
  const touched = other
    ? groups.filter((group) => group.some(({ place }) => lastPlaces(last).includes(text(place))))
    : [[...groups].sort((a, b) => at(all, a) - at(all, b)).at(-1) ?? []];
  const fits = touched.map(of).filter((one) => one.length > 0);
  return fits.length === 1 ? (fits[0] as readonly Found[]) : [];
}
/** Where in the exam the last of them was found. */
const at = (all: readonly Found[], group: readonly Found[]): number => all.findLastIndex(({ id }) => group.some((one) => one.id === id));

const foundIn = ({ items }: Context): readonly Found[] =>
  items.filter(
    (item): item is Found => item.kind === 'finding' && item.presence === 'present' && item.when === 'now' && item.place !== null,
  );
const few = (place: Place): boolean => !('teeth' in place) || place.teeth.length <= MOST_TEETH;

const ruling: ReadonlySet<string> = new Set(['no', 'a', 'an', 'any', 'another', 'nor']);
/** "hook's reduced", "caps are off": the one finding that stands by this name. */
export function bareAt(tokens: readonly Token[], from: number, context: Context): Named | undefined {
  const ids = ruling.has(word(tokens, from - 1)) ? undefined : foundAs.get(word(tokens, from));
  const found = ids ? foundIn(context).filter(({ condition }) => ids.includes(condition)) : [];
  const places = unique(found);
  return places.length === 1 && places.every(few) ? { from, to: from + 1, found, places, many: false, bare: true } : undefined;
}

/** @returns undefined where no words that name a finding begin here, or they fit more or fewer than they say */
export function definiteAt(tokens: readonly Token[], from: number, context: Context, carry: Carry): Named | undefined {
  const saying = sayingAt(tokens, from);
  if (saying === undefined) return undefined;
  const all = foundIn(context);
  const span = spanOf(tokens, saying);
  const found = takenOff(choose(saying, all, standing(context, carry.last)), span.lead, context);
  const places = unique(saying.many ? apart(found) : found);
  const { many, count } = saying;
  const named = { ...span, many, ...(saying.teeth !== undefined ? { byNumber: true as const } : {}) };
  const latest = found.at(-1);
  // "that hook", right behind one.
  const just =
    (saying.which === 'that' || saying.which === 'this') &&
    saying.where.length === 0 &&
    latest !== undefined &&
    all.at(-1)?.id === latest.id;
  const fits = many ? places.length > 0 && (count === undefined || places.length === count) : places.length === 1;
  if (fits && places.length <= MOST_PLACES && places.every(few)) return { ...named, found, places };
  if (just && !many && few(latest.place)) return { ...named, found: [latest], places: [latest.place] };
  return many && (count ?? 0) > 2 && saying.ids !== undefined && found.length > 0 ? { ...named, found, places: [] } : undefined;
}
const MOST_PLACES = 6;

/** "where that cap came off", of two: the one that was taken off. */
function takenOff(found: readonly Found[], lead: Named['lead'], { items }: Context): readonly Found[] {
  const done =
    lead && unique(found).length > 1
      ? found.filter(({ place }) =>
          items.some((item) => item.kind === 'treatment' && item.state === 'done' && item.place && text(item.place) === text(place)),
        )
      : [];
  return done.length > 0 ? done : found;
}

/** "where that cap came off", "where the hook was": that place. */
function spanOf(tokens: readonly Token[], { from, to }: Saying): Pick<Named, 'from' | 'to' | 'lead'> {
  if (word(tokens, from - 1) !== 'where' || tokens[to - 1]?.ends) return { from, to };
  const verb = going.has(word(tokens, to)) ? to + 1 : to;
  const end = gone.has(word(tokens, verb)) ? verb + 1 : verb;
  return verb === to ? { from, to } : { from: from - 1, to: end, lead: 'at' };
}
const going: ReadonlySet<string> = new Set(['came', 'was', 'were', 'is', 'broke', 'sat', 'sits', 'went', 'rubbed']);
const gone: ReadonlySet<string> = new Set(['off', 'out', 'away', 'down', 'taken', 'removed', 'reduced']);
