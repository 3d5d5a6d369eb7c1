/**
 * What is said once and meant again: "hook on one oh six three mil and on two oh six four mil", "points on the right but not
 * on the left", "hooks on the upper sixes, three mil left, four mil right". The finding left unsaid is put back as a mark of
 * no width before the place that needs it; all later rules then see one finding for each place.
 */
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import type { Head, Roles } from './roles.ts';
import { exceptionsIn, isExcept } from './except.ts';
import { isHowMuch } from './groups.ts';
import { againWords } from './figures.ts';
import { where } from './lists.ts';
import { quadrantsOf, type RawPlace } from './places.ts';
import type { Mark } from './scan.ts';
import { codeOf, otherSide, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';
import type { Term } from './vocabulary.ts';

export interface Whole {
  readonly marks: readonly Mark[];
  /** Where each mark stood before, -1 for one put in. */ readonly was: readonly number[];
}
type Shape = 'teeth' | 'region' | 'side';
interface Unit {
  readonly at: number;
  readonly as: 'place' | 'mod' | 'cue' | 'stop';
  readonly kind: string;
}

const joins = new Set(['and', 'or', 'nor', 'but', 'plus', 'then', 'though']);
const turning = new Set(['absent', 'suspected', 'before', 'except', 'now']);

/** The marks with what was left unsaid put back; the same list where nothing was. */
export function elided(marks: readonly Mark[], tokens: readonly Token[], { heads, role }: Roles): Whole {
  const puts = new Map<number, Mark>();
  const places = new Map<number, RawPlace | undefined>();
  const ends: number[] = [];
  heads.forEach((head, h) => {
    const term = marks[head.mark]?.terms?.find((t) =>
      head.work
        ? t.k === 'work' && t.term === head.work
        : t.k === 'condition' && t.id === head.condition?.id && t.strength === head.condition.strength,
    );
    if (term === undefined) return;
    // "not loose, but four oh nine is": what is there after all is said by another name.
    const away = term.k === 'condition' && term.strength === 'absentSay';
    if (away && (term.id === 'abnormality' || !marks.some(turnsBack))) return;
    const again = away ? { ...term, strength: 'say' as const } : term;
    const next = heads[h + 1]?.mark ?? marks.length;
    const ruled = ruledOut(marks, tokens, role, head.mark);
    const end = hungryFrom(marks, role, head.mark, next, heads[h + 2]?.mark ?? marks.length);
    ends[h] = end;
    const out = ruled ? -1 : marks.findIndex((mark, i) => i > head.mark && isExcept(mark));
    // "tight and sore": both are said of the place before them.
    const shared = h === 1 && marks.slice((heads[0] as Head).mark + 1, head.mark).every((m) => tokens[m.from]?.t === 'and');
    const start = h === 0 || shared ? 0 : Math.min(head.mark, ends[h - 1] ?? head.mark);
    // "four ten's been out years, one ten's dropped by six mil": what has no size is not said again by one.
    const units = withoutLead(
      marks,
      head.mark,
      unitsBetween(marks, role, marks.slice(start, head.mark).some(isExcept) ? head.mark : start, out < 0 ? end : Math.min(out, end)),
    ).filter(({ kind }) => !(kind.startsWith('measure') && head.condition && sizeless(head.condition.id)));
    const { from, to } = marks[head.mark] as Mark;
    const bySide = ofTheHead(marks, units, head.mark) ? undefined : (narrowed(marks, tokens, units) ?? wholeThenParts(marks, units));
    const pairs = bySide ? undefined : pairsOf(marks, units);
    const cuts = bySide ? bySide.cuts : [...cutsOf(marks, tokens, units, head.mark), ...(pairs?.cuts ?? [])];
    const but = ruled ? (exceptCut(marks, role, head.mark, next, cuts) ?? thenCut(marks, tokens, role, head.mark, next)) : undefined;
    (bySide ?? pairs)?.places.forEach((raw, at) => places.set(at, raw));
    [...cuts, ...(but === undefined ? [] : [but])].forEach((at) => {
      const put = beforeSmallWords(marks, tokens, role, at);
      puts.set(put, {
        from: (marks[put] as Mark).from,
        to: (marks[put] as Mark).from,
        terms: [again],
        again: { from, to, ...(sameAfter(marks, tokens, at) ? { same: true as const } : {}) },
      });
    });
  });
  if (puts.size === 0 && places.size === 0) return { marks, was: [] };
  const out = marks.flatMap((mark, i): [Mark, number][] => {
    const own: Mark = places.has(i)
      ? {
          from: mark.from,
          to: mark.to,
          ...(places.get(i) ? { place: places.get(i) as RawPlace } : { terms: [{ k: 'glue' } satisfies Term], whole: true }),
        }
      : mark;
    const put = puts.get(i);
    return put
      ? [
          [put, -1],
          [own, i],
        ]
      : [[own, i]];
  });
  return { marks: out.map(([mark]) => mark), was: out.map(([, i]) => i) };
}

const sizeless = (id: ConditionId): boolean => (conditions[id] as ConditionEntry).measure === undefined;

/** A turn that was put in: it is there after all. */
const turnsBack = ({ from, to, terms }: Mark): boolean =>
  from === to && (terms?.some((t) => t.k === 'cue' && t.cue.means === 'now') ?? false);

/** "no hooks", "nothing loose", "hooks nowhere": said not to be there. */
const ruledOut = (marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], head: number): boolean => {
  const before = marks.slice(0, head).findLastIndex((_, i) => role[i] !== 'glue' && role[i] !== 'mod' && role[i] !== 'head');
  const absent = (mark: Mark | undefined): boolean =>
    mark?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind !== 'pseudo') ?? false;
  return absent(marks[before]) || tokens[(marks[head] as Mark).to]?.t === 'nowhere';
};

/** "no hooks except one oh six, three mil": what was ruled out is there after all. */
function exceptCut(marks: readonly Mark[], role: Roles['role'], head: number, next: number, cuts: readonly number[]): number | undefined {
  const one = exceptionsIn(marks, role).find(({ cue }) => cue > head && cue < next);
  const first = one?.places[0];
  const maybe = first === undefined ? undefined : marks.findIndex((_, i) => i > (one?.cue ?? 0) && role[i] === 'cue');
  return first === undefined ||
    cuts.includes(first) ||
    first > next ||
    role.slice(first, next).includes('head') ||
    (next < marks.length && !role.slice(next).includes('place'))
    ? undefined
    : maybe !== undefined && maybe >= 0 && maybe < first
      ? maybe
      : first;
}

/** "no ulcers today, there was one on the left cheek": ruled out now, and there before at a place of its own. */
function thenCut(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], head: number, next: number): number | undefined {
  const place = role.indexOf('place');
  const cue = marks.findIndex(
    (mark, i) =>
      i > head &&
      i < place &&
      place < next &&
      tokens[mark.from - 1]?.ends === true &&
      mark.terms?.some((t) => t.k === 'cue' && t.cue.means === 'before' && t.cue.looks !== 'back'),
  );
  return cue > head && role.slice(head + 1, cue).every((r) => r === 'glue') ? cue + 1 : undefined;
}

/** "upper right, hook at the back of the last one": the quadrant only leads to the tooth. */
function withoutLead(marks: readonly Mark[], head: number, units: readonly Unit[]): readonly Unit[] {
  const [a, b] = units.filter(({ as }) => as === 'place').map(({ at }) => at);
  const [lead, tooth] = [marks[a ?? -1]?.place, marks[b ?? -1]?.place];
  if (
    a === undefined ||
    a > head ||
    b === undefined ||
    b < head ||
    lead?.codes !== undefined ||
    lead?.positions !== undefined ||
    lead?.region !== undefined ||
    lead?.jaw === undefined ||
    tooth?.positions?.length !== 1
  )
    return units;
  return lead.jaw === tooth.jaw && lead.side === tooth.side ? units.filter(({ at }) => at !== a) : units;
}

/** Where the next finding's own stretch begins: its place, when that stands before it. */
function hungryFrom(marks: readonly Mark[], role: Roles['role'], head: number, next: number, afterNext: number): number {
  if (next >= marks.length) return next;
  const last = role.lastIndexOf('place', next);
  // Where places stand before their findings, the last one before the next finding is its own; else where that one has no other.
  const leads =
    role.slice(0, head).includes('place') &&
    last > head &&
    role.slice(last + 1, next).every((r) => r === 'glue' || r === 'mod') &&
    marks.slice(last + 1, next).every(({ measure, grade }) => measure === undefined && grade === undefined);
  const others = role
    .slice(next, afterNext)
    .some((r, i) => r === 'place' && shapeOf((marks[next + i] as Mark).place as RawPlace) !== 'side');
  if (others && !leads) return next;
  return last > head ? last : next;
}

function unitsBetween(marks: readonly Mark[], role: Roles['role'], from: number, to: number): readonly Unit[] {
  const units: Unit[] = [];
  for (let at = from; at < to; at += 1) {
    const mark = marks[at] as Mark;
    if (role[at] === 'place' && mark.place) units.push({ at, as: 'place', kind: '' });
    else if (role[at] === 'mod') units.push({ at, as: 'mod', kind: kindOfMod(mark) });
    else if (role[at] === 'cue' || role[at] === 'stop')
      units.push({
        at,
        as: mark.terms?.some((t) => t.k === 'cue' && t.cue.kind !== 'pseudo' && turning.has(t.cue.means)) ? 'cue' : 'stop',
        kind: '',
      });
  }
  return units;
}

function kindOfMod(mark: Mark): string {
  if (mark.measure) return `measure ${mark.measure.what ?? ''}`;
  if (mark.grade) return 'grade';
  const term = mark.terms?.[0];
  return term === undefined ? '' : term.k === 'severityKept' ? 'severity' : term.k === 'work' ? term.term.as : term.k;
}

const isFigure = (kind: string): boolean => kind === 'grade' || kind.startsWith('measure');
/** Marks before which the finding is said again: a place of its own with a size, degree, surface or turn of its own. */
function cutsOf(marks: readonly Mark[], tokens: readonly Token[], units: readonly Unit[], head: number): readonly number[] {
  const places = where(units, ({ as }) => as === 'place');
  let start = 0;
  return places.slice(1).flatMap((u, k): readonly number[] => {
    const last = places[k] as number;
    const [a, b] = [(units[last] as Unit).at, (units[u] as Unit).at];
    if (!comparable(marks, tokens, a, b)) return [];
    const used = new Set(
      units
        .slice(start, last)
        .filter(({ as }) => as === 'mod')
        .map(({ kind }) => kind),
    );
    const between = units.slice(last + 1, u);
    const turn = between.some(({ as }) => as === 'cue') || (between.length > 0 && between.at(-1)?.as === 'stop');
    // "hook on one oh six three mil, and four mil on two oh six": the second size is the next one's.
    const second = between.findIndex(
      ({ as, kind }, j) => as === 'mod' && isFigure(kind) && between.slice(0, j).some((one) => one.kind === kind),
    );
    const ownFirst = second >= 0 ? second : between.findIndex(({ as, kind }) => as === 'mod' && used.has(kind));
    const follows = units.slice(u + 1, places[k + 2] ?? units.length).filter(({ as }) => as === 'mod');
    const same = sameAfter(marks, tokens, b);
    // A turn put in says where the next one begins.
    const put = between.find(({ as, at }) => as === 'cue' && marks[at]?.from === marks[at]?.to);
    // "upper sixes hooked, lowers two mil": a place behind the finding of another one, with a size of its own.
    const sized =
      a < head &&
      b > head &&
      between.length === 0 &&
      follows.some(({ kind }) => kind === 'grade' || kind === 'severity' || kind.startsWith('measure')) &&
      tokens[(marks[b] as Mark).from - 1]?.ends === true &&
      shapeOf((marks[b] as Mark).place as RawPlace) === 'teeth' &&
      ((marks[b] as Mark).place?.codes ?? (marks[b] as Mark).place?.positions) !== undefined;
    // "hook on one oh six, the one on two oh six is four mil": another of the same.
    const another = (used.size > 0 ? anotherOne : theOne).test(
      tokens
        .slice(Math.max(0, (marks[b] as Mark).from - 5), (marks[b] as Mark).from)
        .map(({ t }) => t)
        .join(' '),
    );
    // "hook on one oh six and a worse one on two oh six"
    const own = between.find(
      ({ as, at }) =>
        as === 'mod' &&
        ['a', 'an', 'another'].includes(tokens[(marks[at] as Mark).from - 1]?.t ?? '') &&
        tokens[(marks[at] as Mark).to]?.t === 'one',
    );
    const cut = own
      ? own.at
      : same || sized || another
        ? b
        : put
          ? put.at + 1
          : ownFirst >= 0
            ? between[ownFirst]?.at
            : turn || between.some(({ as }) => as === 'mod') || follows.some(({ kind }) => used.has(kind))
              ? b
              : undefined;
    if (cut === undefined) return [];
    start = ownFirst >= 0 ? last + 1 + ownFirst : u;
    return [cut];
  });
}

/** "eight mil on the tongue side, four on the cheek side": at one place, each side of the tooth with a size of its own. */
function pairsOf(
  marks: readonly Mark[],
  units: readonly Unit[],
): { readonly cuts: readonly number[]; readonly places: ReadonlyMap<number, RawPlace | undefined> } | undefined {
  const sized = ({ kind }: Unit): boolean => isFigure(kind);
  const sided = ({ at, kind }: Unit): boolean => kind === 'surface' || isTerm(marks[at], 'rostral') || isTerm(marks[at], 'caudal');
  const paired = (u: number): boolean => {
    const [a, b] = [units[u], units[u + 1]];
    return a?.as === 'mod' && b?.as === 'mod' && ((sized(a) && sided(b)) || (sided(a) && sized(b)));
  };
  const starts: number[] = [];
  for (let u = 0; u + 1 < units.length; u += 1)
    if (paired(u)) {
      starts.push(u);
      u += 1;
    }
  const [first] = starts;
  const alike = starts.every(
    (u, k) => u === (first as number) + 2 * k && sized(units[u] as Unit) === sized(units[first as number] as Unit),
  );
  if (starts.length < 2 || !alike) return undefined;
  const whole = units.find(({ as }) => as === 'place');
  const raw = whole && marks[whole.at]?.place;
  // "pockets both sides of four ten, rostral five mil, caudal eight": the gap in front of it, and the one behind.
  const ends = starts.flatMap((u) => [units[u] as Unit, units[u + 1] as Unit].filter(sided));
  const apart =
    raw?.relative === 'either'
      ? ends.map(({ at }): [number, RawPlace] => [at, { ...raw, relative: isTerm(marks[at], 'rostral') ? 'front' : 'behind' }])
      : [];
  return {
    cuts: starts.slice(1).map((u) => (units[u] as Unit).at),
    places: new Map<number, RawPlace | undefined>(whole && apart.length > 0 ? [[whole.at, undefined], ...apart] : []),
  };
}
const isTerm = (mark: Mark | undefined, id: 'rostral' | 'caudal'): boolean =>
  mark?.terms?.some((t) => t.k === 'qualifier' && t.id === id) ?? false;

const theOne = /(?<!\bthan )\b(?:the|that) (?:other )?one (?:on|at|in)(?: the)?$/;
/** "a three mil hook on one oh six, another on two oh six": of the same kind, and not of the same size. */
const anotherOne = /(?<!\bthan )\b(?:(?:the|that) (?:other )?one|another(?: one)?) (?:on|at|in)(?: the)?$/;

/** "ten the same", "two oh six ditto". */
const sameAfter = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean => {
  const verb = ['is', 'has', 'was', "'s", 's'].includes(tokens[(marks[at] as Mark).to]?.t ?? '');
  const to = (marks[at] as Mark).to + (verb ? 1 : 0);
  return againWords.has(tokens[tokens[to]?.t === 'the' ? to + 1 : to]?.t ?? '');
};

const shapeOf = (raw: RawPlace): Shape =>
  raw.region !== undefined
    ? 'region'
    : raw.codes !== undefined ||
        raw.positions !== undefined ||
        raw.row ||
        raw.quadrants !== undefined ||
        (raw.jaw !== undefined && raw.side !== undefined) ||
        raw.jaw !== undefined
      ? 'teeth'
      : 'side';
const beside = new Set(['level', 'opposite', 'beside', 'next', 'alongside', 'adjacent', 'crest', 'peak']);
/** Two places that can each have the finding: not "the left cheek, level with two oh eight", not a side and its region. */
function comparable(marks: readonly Mark[], tokens: readonly Token[], a: number, b: number): boolean {
  const [x, y] = [marks[a] as Mark, marks[b] as Mark];
  return (
    JSON.stringify(x.place) !== JSON.stringify(y.place) &&
    // "two ten has a gap in front of it": where it is, told by its own tooth.
    !(y.place?.relative && !x.place?.relative && x.place?.codes?.join() === y.place.codes?.join()) &&
    (shapeOf(x.place as RawPlace) === shapeOf(y.place as RawPlace) ||
      (x.place?.all === true && shapeOf(y.place as RawPlace) === 'teeth') ||
      // "hooks both sides, none on the lower left": what is ruled out there is not ruled out on both.
      (x.place?.side === 'both' && x.place.jaw === undefined && y.place?.jaw !== undefined && ruledOutBefore(tokens, y.from))) &&
    !tokens.slice(x.to, y.from).some(({ t }, i) => beside.has(t) && !isHowMuch(tokens, x.to + i))
  );
}

const ruledOutBefore = (tokens: readonly Token[], at: number): boolean => {
  let from = at;
  while (from > 0 && ['on', 'in', 'at', 'the', 'of'].includes(tokens[from - 1]?.t ?? '')) from -= 1;
  return ['none', 'nothing', 'nil', 'not'].includes(tokens[from - 1]?.t ?? '');
};

/** "bars a bit bruised on the left": how much it is there, and nothing of the other side. */
const ofTheHead = (marks: readonly Mark[], units: readonly Unit[], head: number): boolean =>
  shapeOf((marks[units[2]?.at ?? -1]?.place ?? {}) as RawPlace) === 'side' &&
  units.map(({ as }) => as).join(' ') === 'place mod place' &&
  (units[1] as Unit).at < head &&
  (units[2] as Unit).at > head;

/** "three mil left, four mil right" after a place of both sides: each side of that place is a place of its own. */
function narrowed(
  marks: readonly Mark[],
  tokens: readonly Token[],
  units: readonly Unit[],
): { readonly cuts: readonly number[]; readonly places: ReadonlyMap<number, RawPlace | undefined> } | undefined {
  const first = units.findIndex(({ as }) => as === 'place');
  const whole = marks[units[first]?.at ?? -1]?.place;
  const rest = units.slice(first + 1);
  const sides = rest.filter(({ as }) => as === 'place');
  if (whole === undefined || shapeOf(whole) === 'side' || sides.length === 0 || sides.length > 2) return undefined;
  const said = sides.map(({ at }) => marks[at]?.place as RawPlace);
  if (
    said.some((raw) => shapeOf(raw) !== 'side' || (raw.side !== 'left' && raw.side !== 'right')) ||
    new Set(said.map(({ side }) => side)).size !== said.length
  )
    return undefined;
  const modFirst = rest[0]?.as === 'mod' && rest.at(-1)?.as === 'place';
  // "upper sixes, left three mil, right four mil": the first side was read as the place's own.
  const other = whole.side !== undefined && whole.side !== 'both' && said.every(({ side }) => side !== whole.side);
  // "four mil on the left three oh eight and only two on the right": the same tooth of the other side.
  const [mirror] = said;
  if (
    whole.codes?.length === 1 &&
    said.length === 1 &&
    mirror?.side &&
    (mirror.side === 'left') !== [2, 3, 6, 7].includes(quadrantOf(whole.codes[0] as string)) &&
    rest.some(({ as }) => as === 'mod')
  ) {
    const at = (sides[0] as Unit).at;
    const u = rest.indexOf(sides[0] as Unit);
    const own = rest[u + 1]?.as === 'mod' ? rest[u] : rest[u - 1]?.as === 'mod' ? rest[u - 1] : undefined;
    return own && { cuts: [own.at], places: new Map([[at, { codes: [otherSide(whole.codes[0] as string)], joined: 'one' as const }]]) };
  }
  // "ulcer right cheek, one centimetre, and two on the left": the size was closed off before the other side.
  if (other && modFirst && tokens[(marks[rest[0]?.at ?? -1] as Mark).to]?.t === 'and') return undefined;
  const parts = said.map(({ side }) => (other ? { ...whole, side: side as 'left' | 'right' } : onSide(whole, side as 'left' | 'right')));
  // "grade one on the right side, left side grade two": each on its own side of its size.
  const crossed = rest.length === 4 && rest.map(({ as }) => as).join(' ') === 'mod place place mod';
  const before = (u: number): boolean => (crossed ? u === 1 : modFirst);
  const owned = sides.map((unit) => {
    const u = rest.indexOf(unit);
    return rest[before(u) ? u - 1 : u + 1];
  });
  if (parts.some((part) => part === undefined) || owned.some((unit) => unit?.as !== 'mod')) return undefined;
  const starts = sides.map((unit, i) => (before(rest.indexOf(unit)) ? (owned[i] as Unit).at : unit.at));
  const left = other ? whole : sides.length === 2 ? undefined : onSide(whole, said[0]?.side === 'left' ? 'right' : 'left');
  if (sides.length === 1 && left === undefined) return undefined;
  return {
    cuts: left === undefined ? starts.slice(1) : starts,
    places: new Map([[(units[first] as Unit).at, left], ...sides.map(({ at }, i) => [at, parts[i]] as const)]),
  };
}

/** "pockets at three oh nine and three ten, five mil on the nine, three mil on the ten": each part has its own, and the rest none of it. */
function wholeThenParts(
  marks: readonly Mark[],
  units: readonly Unit[],
): { readonly cuts: readonly number[]; readonly places: ReadonlyMap<number, RawPlace | undefined> } | undefined {
  const first = units.findIndex(({ as }) => as === 'place');
  const whole = marks[units[first]?.at ?? -1]?.place;
  const rest = units.slice(first + 1);
  const parts = rest.filter(({ as }) => as === 'place');
  const teeth = whole && !['adjacent', 'between', 'pairs', 'or'].includes(whole.joined ?? '') ? partsOf(whole) : [];
  if (teeth.length < 2 || parts.length === 0 || rest.some(({ as }) => as === 'cue' || as === 'stop')) return undefined;
  const own = parts.map(({ at }) => {
    const raw = marks[at]?.place as RawPlace;
    const corner =
      raw.jaw !== undefined &&
      shapeOf(raw) === 'teeth' &&
      (raw.positions ?? raw.codes ?? raw.quadrants) === undefined &&
      !raw.row &&
      rest[rest.findIndex((unit) => unit.at === at) + 1]?.as === 'mod';
    return whole?.positions && corner
      ? { ...whole, jaw: raw.jaw, ...(raw.side ? { side: raw.side } : {}) }
      : whole && shapeOf(raw) === 'side' && (raw.side === 'left' || raw.side === 'right')
        ? (onSide(whole, raw.side) ?? raw)
        : raw;
  });
  const of = own.map(partsOf);
  if (of.some((codes) => codes.length === 0 || codes.length === teeth.length || !codes.every((code) => teeth.includes(code))))
    return undefined;
  const sizeFirst = rest[0]?.as === 'mod' && rest.at(-1)?.as === 'place';
  const sizeLast = rest[0]?.as === 'place' && rest.at(-1)?.as === 'mod';
  // "the left one a centimetre, the right one smaller than that": of which nothing can be read, it is not the other's size.
  const each =
    rest.every(({ as }, i) => as === 'mod' || rest[sizeFirst ? i - 1 : i + 1]?.as === 'mod') ||
    (parts.length > 1 && rest.some(({ as }) => as === 'mod') && new Set(of.flat()).size === teeth.length);
  if (!(sizeFirst || sizeLast || parts.length > 1) || !each) return undefined;
  const starts = parts.map((unit) => {
    let u = rest.indexOf(unit);
    if (sizeFirst) while (rest[u - 1]?.as === 'mod') u -= 1;
    return (rest[u] as Unit).at;
  });
  const left = teeth.filter((code) => !of.some((codes) => codes.includes(code)));
  return {
    cuts: left.length > 0 ? starts : starts.slice(1),
    places: new Map([
      ...parts.map(({ at }, i) => [at, own[i]] as const),
      [
        (units[first] as Unit).at,
        left.length > 0
          ? whole?.region !== undefined
            ? { ...whole, side: left[0] as string as 'left' | 'right' }
            : { codes: left, joined: left.length === 1 ? ('one' as const) : ('and' as const) }
          : undefined,
      ],
    ]),
  };
}

/** What a place is made of: its teeth, or the sides of a part of the mouth. */
const partsOf = (raw: RawPlace): readonly string[] =>
  raw.region === undefined
    ? teethIn(raw)
    : raw.codes !== undefined
      ? []
      : raw.side === 'both' || (raw.side === undefined && raw.plural === true)
        ? ['left', 'right']
        : raw.side === undefined
          ? []
          : [raw.side];

/** The teeth of a place that names them: by their numbers, or by position and quadrant. */
function teethIn(raw: RawPlace): readonly string[] {
  if (raw.codes) return raw.codes;
  const quadrants = quadrantsOf(raw);
  return raw.positions && raw.region === undefined
    ? (quadrants.length > 0 ? quadrants : raw.plural ? [1, 2, 3, 4] : []).flatMap((q) => (raw.positions ?? []).map((p) => codeOf(q, p)))
    : [];
}

/** The part of a place that lies on one side; undefined where the place does not hold both sides. */
export function onSide(raw: RawPlace, side: 'left' | 'right'): RawPlace | undefined {
  if (raw.codes) {
    const codes = raw.codes.filter((code) => (side === 'left') === [2, 3, 6, 7].includes(quadrantOf(code)));
    return codes.length > 0 && codes.length < raw.codes.length ? { codes, joined: codes.length === 1 ? 'one' : 'and' } : undefined;
  }
  const both = raw.side === 'both' || (raw.side === undefined && (raw.plural === true || raw.region === undefined));
  return both || raw.side === side ? { ...raw, side, weak: undefined } : undefined;
}

/** The finding comes back before the small words that lead to its place ("on", "the"), behind those that join. */
function beforeSmallWords(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], at: number): number {
  let to = at;
  while (to > 0 && role[to - 1] === 'glue' && !tokens.slice(marks[to - 1]?.from, marks[to - 1]?.to).some(({ t }) => joins.has(t))) to -= 1;
  return to;
}
