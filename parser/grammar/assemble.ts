/**
 * From marks to heads: which place, which modifiers and which scope belong to which finding or procedure.
 * Speech has no sentences; order, small words and "or" have to do.
 */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { exceptionsIn, isExcept } from './except.ts';
import { linkBetween, placeGroups, prepositions, type Link, type PlaceGroup, type Placing } from './groups.ts';
import type { RawPlace } from './places.ts';
import { where } from './lists.ts';
import { howItIsNot, isLevel, leadsOn, modsOf, withShared } from './mods.ts';
import type { Head, Roles } from './roles.ts';
import type { Mark } from './scan.ts';
import { cuesOf, scopesOf, type Scope } from './scopes.ts';
import type { Token } from './tokens.ts';

export interface Clause {
  readonly head: Head;
  /** What the head is about; empty when nothing was said. */
  readonly placings: readonly Placing[];
  readonly scopes: readonly Scope[];
  /** Marks of measures, grades, surfaces, degrees, tools and states that belong to the head. */
  readonly mods: readonly number[];
  /** Marks of surfaces, degrees and kinds that it was said not to have, and of their "not". */
  readonly not: readonly number[];
  /** Marks of cues. */
  readonly cues: readonly number[];
}

export function assemble(marks: readonly Mark[], tokens: readonly Token[], { heads, role: roles }: Roles): readonly Clause[] {
  // "all the sixes except two oh six have hooks": what is left out stands aside, between what was named and what is said of it.
  const aside = asides(marks, roles);
  const role = aside.size === 0 ? roles : roles.map((r, i) => (aside.has(i) ? ('glue' as const) : r));
  const link = (a: number, b: number): Link => linkBetween(marks, tokens, role, a, b);
  const groups = placeGroups(marks, tokens, role, heads, link);
  const firstPlace = groups[0]?.marks[0] ?? Infinity;
  const placeFirst = firstPlace < (heads[0]?.mark ?? Infinity);
  const scopes = scopesOf(marks, tokens, role, heads, link);

  const placings: (readonly Placing[])[] = heads.map(() => []);
  const forward: boolean[] = [];
  const sidedAt = new Set<number>();
  for (let h = heads.length - 1; h >= 0; h -= 1) {
    const mark = (heads[h] as Head).mark;
    const nextHead = heads[h + 1]?.mark ?? Infinity;
    const fits = (g: PlaceGroup): boolean => canStand(heads[h] as Head, g);
    // "one hundreds, hook six, points all": the six is the hook's.
    const taken = (g: PlaceGroup): boolean => heads[h]?.condition !== undefined && g.marks.some((m) => marks[m]?.own);
    const nearest = groups.findLast(
      (g) =>
        (g.marks.at(-1) as number) < mark &&
        fits(g) &&
        !taken(g) &&
        !ofOwnPart(heads[h] as Head, g) &&
        !ofException(marks, tokens, heads, g, heads[h] as Head),
    );
    const before =
      nearest &&
      (!stopBetween(role, nearest.marks.at(-1) as number, mark) ||
        pointsBack(marks, tokens, nearest.marks.at(-1) as number, mark) ||
        toldThere(marks, tokens, heads[h] as Head, nextHead) ||
        ruledOutThere(marks, tokens, nearest, heads[h] as Head, scopes[h] as readonly Scope[]) ||
        insteadThere(marks, tokens, nearest, heads, h, scopes))
        ? nearest
        : undefined;
    // "two ten is broken off at the gum": where on the tooth that was named.
    const ofTooth = (g: PlaceGroup): boolean =>
      before !== undefined &&
      before.placings.every(({ raw }) => raw.codes !== undefined || raw.positions !== undefined) &&
      g.placings.every(({ raw }) => raw.region !== undefined && raw.codes === undefined) &&
      !(conditions[heads[h]?.condition?.id ?? 'ulcer'] as ConditionEntry).places.includes('G');
    // "the left cheek is cut by the upper points": what did it, no place of the cut.
    const causedBy = (g: PlaceGroup): boolean => {
      const from = (marks[g.marks[0] as number] as Mark).from;
      return before !== undefined && tokens[tokens[from - 1]?.t === 'the' ? from - 2 : from - 1]?.t === 'by';
    };
    const after = groups.filter(
      (g) =>
        fits(g) &&
        !ofTooth(g) &&
        !causedBy(g) &&
        (g.marks[0] as number) > mark &&
        (g.marks[0] as number) < nextHead &&
        (g.subject === undefined || g.subject === h) &&
        !opensNext(marks, tokens, role, heads, h, g) &&
        !stopBetween(role, mark, g.marks[0] as number),
    );
    // "a hook on the top left, the first one": the tooth behind the quadrant is where.
    if (after[0] && after[1] && within(after[0], after[1]) && after[1].subject === undefined) {
      const [quadrant, tooth] = after as [PlaceGroup, PlaceGroup];
      after.splice(0, 2, { ...tooth, marks: [...quadrant.marks, ...tooth.marks] });
    }
    // "step on two oh nine, two ten worn": of two places behind the finding before, the second is this one's.
    const ownBefore =
      before !== undefined &&
      h > 0 &&
      groups.filter((g) => fits(g) && (g.marks[0] as number) > (heads[h - 1] as Head).mark && (g.marks[0] as number) < mark).length > 1;
    const bond = after[0] ? link(mark, after[0].marks[0] as number) : '';
    // "hook on one oh six reduced, ramp on three eleven": work behind a finding, and closed off before the next one, is of the first.
    const closedOff =
      before !== undefined &&
      heads[h]?.work !== undefined &&
      heads[h + 1] !== undefined &&
      (heads[h + 1]?.condition !== undefined || heads[h - 1]?.condition !== undefined) &&
      tokens
        .slice((marks[mark] as Mark).from, (marks[nextHead] as Mark).from)
        .some(({ t, ends }) => ends === true || (t === 'and' && heads[h + 1]?.condition !== undefined));
    // "hook on one oh six with a ramp, and a step on two ten": what it comes with is where it is.
    const comesWith =
      before !== undefined &&
      tokens.slice((marks[before.marks.at(-1) as number] as Mark).to, (marks[mark] as Mark).from).some(({ t }) => t === 'with');
    // "lower left wave, crest at three oh nine": the row that has it and the tooth where it is highest.
    const crest =
      heads[h]?.condition?.id === 'wave' &&
      after[0] !== undefined &&
      after[0].placings.every(({ raw }) => raw.codes !== undefined) &&
      crested(tokens);
    const top =
      heads[h]?.condition?.id === 'wave' && crested(tokens)
        ? after.findLast(({ placings: ps }, k) => k > 0 && ps.every(({ raw }) => raw.codes !== undefined))
        : undefined;
    if (top && after[0]) {
      placings[h] = [...after[0].placings, ...top.placings];
      forward[h] = true;
      continue;
    }
    const sided = before && after[0] && !marks[mark]?.again ? (withSide(before, after[0]) ?? sideFirst(before, after[0], h)) : undefined;
    if (sided) {
      placings[h] = sided;
      sidedAt.add(h);
      forward[h] = false;
      continue;
    }
    // "one oh six hook, points upper left": the place before is the first finding's, the one behind nobody else's.
    const own =
      before !== undefined &&
      heads.some(({ mark: other }) => other > (before.marks.at(-1) as number) && other < mark) &&
      (nextHead === Infinity || after.length > 1);
    // "right cheek has a scar level with one oh eight, no ulcers either side": so is the place behind what is ruled out, past a pause.
    const ownNo =
      before !== undefined &&
      (before.marks[0] as number) > (heads[h - 1]?.mark ?? Infinity) &&
      after[0]?.marks[0] === mark + 1 &&
      ruledOut(heads[h] as Head, scopes[h] as readonly Scope[]) &&
      tokens.slice((marks[before.marks.at(-1) as number] as Mark).to - 1, (marks[mark] as Mark).from).some(({ ends }) => ends);
    // "behind four ten, a gap, behind one oh nine, a pocket": each place before what is there.
    const alternates =
      before !== undefined &&
      after.length === 1 &&
      nextHead !== Infinity &&
      tokens[(marks[after[0]?.marks[0] as number] as Mark).from - 1]?.ends === true &&
      !groups.some((g) => (g.marks[0] as number) > nextHead && (g.marks[0] as number) < (heads[h + 2]?.mark ?? Infinity));
    const strong =
      after[0] !== undefined &&
      (bond === 'prep' ||
        ownNo ||
        within(before, after[0]) ||
        after[0].marks.some((m) => marks[m]?.own) ||
        (after[0].bound && !alternates) ||
        bond === 'beside' ||
        own ||
        crest);
    // "two eleven impacted behind two ten": where it is, when a tooth was named that has it.
    const id = heads[h]?.condition?.id;
    if (
      before &&
      after[0]?.placings.some(({ raw }) => raw.relative) &&
      id &&
      !(conditions[id] as ConditionEntry).places.includes('S') &&
      before.placings.every(({ raw }) => raw.codes !== undefined)
    ) {
      placings[h] = before.placings.map((p, k) => (k === 0 ? { ...p, marks: [...p.marks, ...(after[0]?.marks ?? [])] } : p));
      forward[h] = false;
    } else if (after[0] && (strong || !placeFirst || before === undefined || marks[mark]?.again)) {
      const row = (bond === 'beside' || crest) && before ? [...before.placings] : [];
      placings[h] = [...row, ...after[0].placings];
      forward[h] = true;
    } else if (
      after.length === 0 &&
      heads[h + 1] &&
      !(heads[h + 1]?.condition?.id !== heads[h]?.condition?.id && endsBefore(heads[h] as Head, marks, tokens, role, nextHead)) &&
      !stopBetween(role, mark, nextHead) &&
      forward[h + 1] &&
      !(placeFirst && before) &&
      !ownBefore &&
      !closedOff &&
      !comesWith
    ) {
      // One place for a list ("flushed and packed one ten"), unless what is ruled out stands before what is found.
      const same =
        ruledOut(heads[h] as Head, scopes[h] as readonly Scope[]) === ruledOut(heads[h + 1] as Head, scopes[h + 1] as readonly Scope[]);
      placings[h] = same ? (placings[h + 1] as readonly Placing[]) : [];
      forward[h] = same;
    } else if (before) {
      placings[h] = before.placings;
      forward[h] = false;
    }
  }
  // "corner of the mouth's sore on the left, see how he's pulled away": the side of a part is the part's, and so is what is said behind it.
  heads.forEach((_, h) => {
    const [own, whole] = [placings[h] as readonly Placing[], placings[h - 1]];
    if (own.length > 0 && whole && sidedAt.has(h - 1) && own.flatMap((p) => p.marks).every((m) => whole.at(-1)?.marks.includes(m))) {
      placings[h] = whole;
      sidedAt.add(h);
    }
  });
  const mods = withShared(modsOf(marks, tokens, role, heads, link), marks, heads);
  const nots = new Map(
    where(role, (r) => r === 'cue').flatMap((cue) => {
      const own = howItIsNot(marks, tokens, role, cue);
      return own === undefined ? [] : [[own, cue] as const];
    }),
  );
  // "ground the step on one oh eight down level with one oh seven": the other tooth is how far, not where.
  const lowered = heads.find(({ work }) => work?.id === 'reduce');
  const level = lowered ? marks.findIndex((mark, i) => i > lowered.mark && isLevel(mark)) : -1;
  const ofOwn = (head: Head, every: readonly Placing[]): readonly Placing[] => {
    // "step on the lower right, on the eight": the quadrant only leads to the tooth.
    const all = every.filter((p, i) => !every.slice(i + 1).some((q) => narrows(p.raw, q.raw)));
    return level < 0 || head.work || all[0]?.raw.codes === undefined
      ? all
      : all.filter((p) => !(p.beside && (p.marks[0] as number) > level));
  };
  return heads.map((head, h) => ({
    head,
    placings: ofOwn(head, placings[h] as readonly Placing[]),
    scopes: scopes[h] as { scopes: readonly Scope[] } & readonly Scope[],
    mods: (mods[h] as readonly number[]).filter((m) => !nots.has(m)),
    not: [...nots].flatMap(([own, cue]) => (role.lastIndexOf('head', cue) === head.mark ? [cue, own] : [])),
    cues: cuesOf(marks, role, heads, h),
  }));
}

const nothing: ReadonlySet<number> = new Set();
/** An exception with its places, behind a place and before the finding. */
function asides(marks: readonly Mark[], role: Roles['role']): ReadonlySet<number> {
  if (!marks.some(isExcept)) return nothing;
  const head = role.indexOf('head');
  return new Set(
    exceptionsIn(marks, role).flatMap(({ cue, places }) => {
      const named = role.slice(0, cue).indexOf('place');
      return places.length > 0 && named >= 0 && (places.at(-1) as number) < head && marks[named]?.place?.codes === undefined
        ? [cue, ...places]
        : [];
    }),
  );
}

/** "masseters even on both sides": a side said after the finding belongs to the region before it. */
function withSide(before: PlaceGroup, after: PlaceGroup): readonly Placing[] | undefined {
  const [place, side] = [before.placings.at(-1) as Placing, after.placings[0] as Placing];
  const only =
    after.placings.length === 1 &&
    after.placings[0]?.raw.codes === undefined &&
    side.raw.region === undefined &&
    side.raw.positions === undefined &&
    !side.raw.row &&
    !side.raw.all &&
    side.raw.quadrants === undefined;
  const adds = (side.raw.side === undefined || place.raw.side === undefined) && (side.raw.jaw === undefined || place.raw.jaw === undefined);
  const open =
    place.raw.codes === undefined &&
    (place.raw.region !== undefined
      ? side.raw.jaw === undefined
      : place.raw.positions !== undefined ||
        (place.raw.jaw !== undefined && !place.raw.row) ||
        (['left', 'right'].includes(place.raw.side ?? '') &&
          place.raw.jaw === undefined &&
          place.raw.quadrants === undefined &&
          !place.raw.row &&
          !place.raw.all &&
          side.raw.side === undefined &&
          (side.raw.jaw === 'upper' || side.raw.jaw === 'lower')));
  if (!only || !adds || !open) return undefined;
  return [
    ...before.placings.slice(0, -1),
    {
      raw: { ...place.raw, ...(side.raw.side ? { side: side.raw.side } : {}), ...(side.raw.jaw ? { jaw: side.raw.jaw } : {}) },
      marks: [...place.marks, ...side.marks],
    },
  ];
}

/** "both sides ulcers on the cheek": at the beginning a side alone belongs to the part of the mouth named behind the finding. */
function sideFirst({ marks: at, placings }: PlaceGroup, after: PlaceGroup, head: number): readonly Placing[] | undefined {
  const [{ raw: side }, part] = [placings[0] as Placing, after.placings[0] as Placing];
  const { side: said, weak, ...more } = side;
  return head === 0 &&
    placings.length === 1 &&
    said !== undefined &&
    !weak &&
    Object.values(more).every((value) => value === undefined) &&
    part.raw.region !== undefined &&
    part.raw.side === undefined
    ? [{ raw: { ...part.raw, side: said }, marks: [...at, ...part.marks] }, ...after.placings.slice(1)]
    : undefined;
}

/** "canines sharp, lower left calculus": between a pause and the next name, which has no other place, a place is that one's. */
function opensNext(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  h: number,
  { marks: at, placings }: PlaceGroup,
): boolean {
  const [first, last, next] = [marks[at[0] as number] as Mark, at.at(-1) as number, heads[h + 1]?.mark];
  const before = tokens[first.from - 1]?.t === 'the' ? first.from - 2 : first.from - 1;
  // "two oh eight has a slab fracture, and between two oh eight and two oh nine there is a gap"
  if (
    placings.every(({ raw }) => raw.joined === 'between') &&
    ['there', 'he', 'she'].includes(tokens[(marks[last] as Mark).to]?.t ?? '') &&
    next !== undefined &&
    role.slice(0, heads[h]?.mark).includes('place') &&
    role.slice(last + 1, next).every((r) => r === 'glue' || r === 'mod')
  )
    return true;
  return (
    next === last + 1 &&
    marks[next]?.again === undefined &&
    placings.every(({ raw }) => raw.codes === undefined && raw.region === undefined) &&
    role.slice(0, heads[h]?.mark).includes('place') &&
    tokens[before]?.ends === true &&
    tokens[(marks[last] as Mark).to - 1]?.ends !== true &&
    !role.slice(next, heads[h + 2]?.mark).includes('place')
  );
}

/** "lower right is missing the nine": the tooth behind the name lies in the quadrant before it. */
const within = (before: PlaceGroup | undefined, after: PlaceGroup): boolean => {
  const [quadrant, ...more] = before?.placings ?? [];
  return quadrant !== undefined && more.length === 0 && after.placings.every(({ raw }) => narrows(quadrant.raw, raw));
};
/** A quadrant, and teeth of it. */
const narrows = (quadrant: RawPlace, tooth: RawPlace): boolean =>
  quadrant.jaw !== undefined &&
  quadrant.side !== undefined &&
  [quadrant.positions, quadrant.codes, quadrant.region].every((one) => one === undefined) &&
  tooth.positions !== undefined &&
  tooth.jaw === quadrant.jaw &&
  tooth.side === quadrant.side;
const ruledOut = (head: Head, scopes: readonly Scope[]): boolean =>
  scopes.includes('absent') !== (head.condition?.strength === 'absentSay');
const stopBetween = (role: Roles['role'], a: number, b: number): boolean => {
  const at = role.indexOf('stop', a + 1);
  return at >= 0 && at < b;
};

/** A bite or a size said of the head closes it: the next finding's place is not its own. */
const endsBefore = (head: Head, marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], next: number): boolean =>
  (head.condition !== undefined && conditions[head.condition.id].group === 'bite') ||
  marks
    .slice(head.mark + 1, next)
    .some(
      (mark, k) =>
        role[head.mark + 1 + k] === 'mod' &&
        (mark.measure ?? mark.grade) !== undefined &&
        !(head.work !== undefined && leadsOn(mark, tokens)),
    );

/** A bite stands at no single tooth: "stepped incisors, two oh one long". */
const canStand = (head: Head, group: PlaceGroup): boolean => {
  const kinds = head.condition && (conditions[head.condition.id] as ConditionEntry).places;
  return (
    kinds === undefined ||
    head.condition?.id === 'wave' ||
    kinds.some((kind) => kind === 'T' || kind === 'S' || kind === 'G') ||
    group.placings.some(({ raw }) => raw.codes === undefined)
  );
};

/** "joints even, nodes are up on the left": a name that says of what part it is stands at no other that was named before it. */
const ofOwnPart = ({ condition }: Head, { placings }: PlaceGroup): boolean =>
  condition?.id === 'lymph-node-enlargement' &&
  placings.every(({ raw }) => raw.region !== undefined && !['lymph-nodes', 'mandible', 'salivary-gland'].includes(raw.region));

/** "two oh nine worried me but it's sound": what comes behind the stop is said of the place before it. */
const pronouns = new Set(['it', 'its', "it's", 'they', 'them', 'both']);
const pointsBack = (marks: readonly Mark[], tokens: readonly Token[], from: number, to: number): boolean =>
  tokens.slice((marks[from] as Mark).to, (marks[to] as Mark).from).some(({ t }) => pronouns.has(t));

/** "... but there's a four mil pocket on it", "... but did not pack it": and so is what points back behind its own name. */
const toldThere = (marks: readonly Mark[], tokens: readonly Token[], { mark, work }: Head, next: number): boolean =>
  tokens
    .slice((marks[mark] as Mark).to, marks[next]?.from ?? tokens.length)
    .some(({ t }, i, own) => pronouns.has(t) && (i > 0 ? prepositions.has(own[i - 1]?.t ?? '') : work !== undefined));
/** "two oh nine's worn but no caries": ruled out at the tooth that was named, as it is without the "but" (record contract, ruling 6). */
function ruledOutThere(
  marks: readonly Mark[],
  tokens: readonly Token[],
  { marks: at, placings }: PlaceGroup,
  head: Head,
  scopes: readonly Scope[],
): boolean {
  const between = tokens.slice((marks[at.at(-1) as number] as Mark).to, (marks[head.mark] as Mark).from).map(({ t }) => t);
  const kinds: readonly string[] = head.condition ? (conditions[head.condition.id] as ConditionEntry).places : [];
  const part = kinds.includes('G') && placings.every(({ raw }) => raw.codes === undefined && raw.region !== undefined);
  return (
    scopes.includes('absent') &&
    head.condition?.id !== 'abnormality' &&
    (part || kinds.includes('T') || kinds.includes('S')) &&
    between.includes('but') &&
    !between.some((t) => ['else', 'other', 'otherwise', 'elsewhere'].includes(t)) &&
    placings.every(
      ({ raw }) => part || raw.codes !== undefined || (raw.jaw !== undefined && raw.side !== undefined && raw.region === undefined),
    )
  );
}

/** "one oh six, no hook but a ramp": there instead of what was ruled out at the place before both. */
const insteadThere = (
  marks: readonly Mark[],
  tokens: readonly Token[],
  { marks: at }: PlaceGroup,
  heads: readonly Head[],
  h: number,
  scopes: readonly (readonly Scope[])[],
): boolean => {
  const [before, own] = [heads[h - 1], heads[h] as Head];
  return (
    before?.condition !== undefined &&
    own.condition !== undefined &&
    before.mark > (at.at(-1) as number) &&
    scopes[h - 1]?.includes('absent') === true &&
    /^but(?: (?:a|an|some|there is|has|with|does have|it has))*(?: a| an)?$/.test(
      tokens
        .slice((marks[before.mark] as Mark).to, (marks[own.mark] as Mark).from)
        .map(({ t }) => t)
        .join(' '),
    )
  );
};

/** "apart from a hook on one oh six, nothing to report": the tooth is where the exception was found, and is not what is normal. */
function ofException(
  marks: readonly Mark[],
  tokens: readonly Token[],
  heads: readonly Head[],
  { marks: at }: PlaceGroup,
  head: Head,
): boolean {
  if (head.condition?.id !== 'abnormality' || head.condition.strength !== 'absentSay') return false;
  const [from, to] = [at[0] as number, at.at(-1) as number];
  const except = marks.findIndex((mark, i) => i < from && isExcept(mark));
  const own = except < 0 ? undefined : heads.find(({ mark }) => mark > except && mark < from);
  const start = (marks[from] as Mark).from;
  const lead = tokens[tokens[start - 1]?.t === 'the' ? start - 2 : start - 1];
  const told = tokens.slice((marks[to] as Mark).to, (marks[head.mark] as Mark).from).some(({ t }) => subjectVerbs.has(t));
  return own?.condition !== undefined && own !== head && prepositions.has(lead?.t ?? '') && !told;
}
const subjectVerbs: ReadonlySet<string> = new Set(['is', 'are', 'looks', 'look', 'feels', 'feel', 'was', 'were', 'seems', 'seem']);

/** Words for the highest tooth of a wave. */
const crests: ReadonlySet<string> = new Set(['crest', 'crests', 'peak', 'peaks', 'peaking', 'cresting', 'highest', 'apex', 'worst']);
export const crested = (tokens: readonly Token[]): boolean => tokens.some(({ t }) => crests.has(t));
