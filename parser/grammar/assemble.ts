/**
 * From marks to heads: which place, which modifiers and which scope belong to which finding or procedure.
 * Speech has no sentences; order, small words and "or" have to do.
 */
import { conditions, type ConditionId } from '../lexicon/conditions.ts';
import { light } from '../lexicon/fillers.ts';
import { describingSay } from '../lexicon/modifiers.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import type { WorkTerm } from '../lexicon/work.ts';
import { first, where } from './lists.ts';
import type { RawPlace } from './places.ts';
import { isFilling, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import type { Term } from './vocabulary.ts';

const lightWords = new Set(light);
export type Scope = 'absent' | 'suspected' | 'before';
export interface Head {
  readonly mark: number;
  readonly condition?: { readonly id: ConditionId; readonly strength: 'say' | 'withPlace' | 'absentSay'; readonly plural: boolean; readonly grade?: string };
  readonly work?: Extract<WorkTerm, { as: 'procedure' }>;
}
export interface Placing { readonly raw: RawPlace; readonly marks: readonly number[]; readonly beside?: boolean }
export interface Clause {
  readonly head: Head;
  /** What the head is about; empty when nothing was said. */
  readonly placings: readonly Placing[];
  readonly scopes: readonly Scope[];
  /** Marks of measures, grades, surfaces, degrees, tools and states that belong to the head. */
  readonly mods: readonly number[];
  /** Marks of cues. */
  readonly cues: readonly number[];
}

const isHead = (term: Term): boolean => term.k === 'condition' || (term.k === 'work' && term.term.as === 'procedure');
const prepositions = new Set(['on', 'of', 'at', 'in', 'around', 'from', 'to', 'for', 'by', 'along', 'over', 'across', 'off']);
const besideWords = new Set(['level', 'opposite', 'beside', 'next', 'alongside', 'adjacent']);
const kindsOfCaries = ['infundibular-caries', 'peripheral-caries'] as const;
export type Link = 'and' | 'or' | 'nor' | 'stop' | 'prep' | 'beside' | '';

export interface Roles {
  readonly heads: readonly Head[];
  readonly role: readonly ('head' | 'place' | 'cue' | 'mod' | 'stop' | 'glue' | 'unknown')[];
}

/** Decides what each mark is, where its words allow more than one thing. */
export function roles(marks: readonly Mark[], tokens: readonly Token[], hasPlaceBefore: boolean): Roles {
  const anyPlace = hasPlaceBefore || marks.some(({ place }) => place !== undefined);
  const fractureSaid = marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength === 'say' && t.id === 'fracture'));
  const ruledOut = marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind !== 'pseudo'));
  // "the gap is packed": with feed; "packed the gap": work on it.
  const worked = (at: number): boolean => marks.some(({ terms }, i) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && !(t.term.id === 'pack' && (!t.term.done || i > at))));
  const notOnly = marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.kind === 'pseudo' && t.cue.say.includes('not only')));
  const seated = tokens.some(({ t }) => t === 'done') || marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state !== 'done'));
  const outcome = marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'outcome'));
  const drawn = marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'extract' && t.term.done));
  const filled = marks.some(isFilling);
  const heads: Head[] = [];
  const role = marks.map((mark, i): Roles['role'][number] => {
    const terms = mark.terms ?? [];
    const qualifier = terms.find((t) => t.k === 'qualifier');
    // "two oh six hook, two oh seven nothing": nothing was found there.
    if (terms.some((t) => t.k === 'cue' && t.cue.means === 'absent') && tokens[mark.from]?.t === 'nothing' && mark.to - mark.from === 1 && marks[i - 1]?.place && (marks[i + 1] === undefined || marks[i + 1]?.place)) { heads.push({ mark: i, condition: { id: 'abnormality', strength: 'absentSay', plural: false } }); return 'head'; }
    if (nothingThere(marks, tokens, i)) { heads.push({ mark: i, condition: { id: 'abnormality', strength: 'absentSay', plural: false } }); return 'head'; }
    const condition = terms.find((t): t is Extract<Term, { k: 'condition' }> => t.k === 'condition' && (t.strength !== 'withPlace' || anyPlace || ruledOut));
    const work = first(terms, (t) => (t.k === 'work' && t.term.as === 'procedure' ? t.term : undefined));
    // "decay in it, infundibular": of which kind, said apart from the name.
    const kinds = condition?.id === 'caries' ? kindsOfCaries.filter((id) => tokens.some(({ t }) => `${t}-caries` === id) && !marks.some((m) => m.terms?.some((t) => t.k === 'condition' && t.id === id))) : [];
    if (condition && kinds.length === 1) { heads.push({ mark: i, condition: { ...condition, id: kinds[0] as ConditionId } }); return 'head'; }
    // "a good hook", "clean break", "fine crack": how the finding is, not that nothing was found.
    if (condition?.id === 'abnormality' && condition.strength === 'absentSay' && describesNext(marks, tokens, i)) return 'glue';
    // "buffed them smooth", "flushed it clean": how the work left it.
    if (condition?.id === 'abnormality' && condition.strength === 'absentSay' && leftSo(marks, tokens, i)) return 'glue';
    // "wolf teeth absent": said of a finding it rules that out; "slab gone" is not the tooth.
    if (condition?.id === 'missing' && condition.strength === 'withPlace' && saidOfFinding(marks, i) && mark.terms?.some((t) => t.k === 'cue')) return 'cue';
    if (condition?.id === 'missing' && condition.strength === 'withPlace' && !ownTooth(marks, i) && notOfTooth(marks, i)) return mark.terms?.some((t) => t.k === 'cue') && saidOf(marks, i) ? 'cue' : 'glue';
    // "a long hook", "a tall step": right before another name it is how large that is.
    if (condition && terms.some((t) => t.k === 'severityKept') && !tokens[mark.to - 1]?.ends && marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.strength === 'say' || condition.strength === 'say'))) return 'mod';
    // "bit seats on the upper sixes done", "packed the gap with putty": work, no finding. "Root tip left behind" of a tooth taken out says how it came out.
    if (condition?.id === 'bit-seat-present' && seated) { heads.push({ mark: i, work: work ?? { as: 'procedure', id: 'bit-seat' } }); return 'head'; }
    if (work && condition?.id === 'food-packing' && filled) { heads.push({ mark: i, work }); return 'head'; }
    if (outcome && !drawn && ['out', 'away'].includes(tokens[mark.from]?.t ?? '') && mark.to === mark.from + 1 && marks.slice(0, i).findLast((m) => !m.terms?.every((t) => t.k === 'glue'))?.place?.codes) { heads.push({ mark: i, work: { as: 'procedure', id: 'extract', done: true } }); return 'head'; }
    if (terms.some((t) => t.k === 'work' && t.term.as === 'outcome') && (drawn || marks[i - 1]?.place?.codes === undefined && marks.some((m, k) => k < i && ['out', 'away'].includes(tokens[m.from]?.t ?? ''))) && !terms.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done)) return 'mod';
    // "advised packing of the gap": work, not feed.
    if (work && condition?.id === 'food-packing' && condition.strength === 'withPlace' && marks.some(({ terms: all }) => all?.some((t) => t.k === 'work' && (t.term.as === 'state' || t.term.as === 'advise')))) { heads.push({ mark: i, work }); return 'head'; }
    // "flushed the gap between ...": the gap is where, not what.
    if (condition?.id === 'diastema' && condition.strength === 'withPlace' && (worked(i) || filled || gapIsWhere(marks, tokens, i))) return 'glue';
    // "three oh two coming", but "a bit of a wave coming": of no tooth that comes through.
    if (condition?.id === 'erupting' && condition.strength === 'withPlace' && marks[i - 1]?.place?.codes === undefined && !(marks[i - 1]?.terms?.every((t) => t.k === 'glue') && marks[i - 2]?.place?.codes !== undefined)) return 'glue';
    // "four oh eight solid": said of a tooth, and of no lump or cap.
    if (condition?.id === 'mobility' && condition.strength === 'absentSay' && /^(solid|firm)$/.test(tokens[mark.from]?.t ?? '') && !firmTooth(marks, i)) return mark.to - mark.from > 1 ? 'unknown' : 'glue';
    // "smoothed the sharp bit off one oh three": taken off by the speaker, not broken off.
    if (condition?.id === 'fracture' && /^(?:bit|corner|piece|chunk) off$/.test(tokens.slice(mark.from, mark.to).map(({ t }) => t).join(' ')) && marks.slice(0, i).some(({ terms: all }) => all?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done))) return 'glue';
    // "the right edge of the tongue": no edge of a tooth.
    if (condition?.id === 'sharp-enamel-points' && (tokens[mark.from]?.t ?? '').startsWith('edge') && marks.some(({ place }) => place?.region !== undefined && ['tongue', 'lips', 'cheek', 'palate'].includes(place.region))) return 'glue';
    // "the gum around two oh two is red": of a gum only.
    if (condition?.id === 'gingivitis' && condition.strength === 'withPlace' && !marks.some(({ place }) => place?.region === 'gums')) return 'unknown';
    // "displaced" beside a fracture is how it stands; alone it is a finding of its own.
    const displacedFracture = qualifier?.k === 'qualifier' && /displaced$/.test(qualifier.id) && fractureSaid;
    if (condition && !displacedFracture && !(mark.place && condition.strength === 'withPlace' && neighbourHead(marks, i) && !ruledOutBeside(marks, tokens, i))) {
      if (work?.done && condition.strength !== 'say') { heads.push({ mark: i, work }); return 'head'; }
      heads.push({ mark: i, condition });
      return 'head';
    }
    if (mark.place) return 'place';
    if (qualifier?.k === 'qualifier' && qualifier.id === 'undisplaced' && !fractureSaid) { heads.push({ mark: i, condition: { id: 'displaced', strength: 'absentSay', plural: false } }); return 'head'; }
    if (work) { heads.push({ mark: i, work }); return 'head'; }
    if (mark.measure || mark.grade || mark.pulpHorn !== undefined) return 'mod';
    // "two fractures": how many there are.
    if (mark.number !== undefined && marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.plural || t.strength === 'say'))) return 'glue';
    if (mark.unknown || mark.number !== undefined || terms.some((t) => t.k === 'talk')) return 'unknown';
    // "whole", "in one piece": of nothing that was taken out.
    if (terms.length > 0 && terms.every((t) => t.k === 'work' && t.term.as === 'outcome')) return 'unknown';
    if (notOnly && terms.some((t) => t.k === 'stop')) return 'glue';
    if (terms.some((t) => t.k === 'stop' || (t.k === 'cue' && t.cue.means === 'except'))) return 'stop';
    if (terms.some((t) => t.k === 'cue')) return 'cue';
    return terms.some((t) => ['surface', 'qualifier', 'severity', 'severityKept', 'change', 'work'].includes(t.k)) ? 'mod' : 'glue';
  });
  return { heads, role };
}

/** Right behind a tooth, or in a phrase that spoke of loose ones. */
function firmTooth(marks: readonly Mark[], at: number): boolean {
  const before = marks.slice(0, at).findLast(({ terms, place }) => place !== undefined || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
  const named = marks.some(({ terms }, i) => i !== at && terms?.some((t) => t.k === 'condition' && t.id === 'mobility'));
  const other = marks.slice(0, at).some(({ terms }) => terms?.some((t) => t.k === 'condition' && ['retained-cap', 'loose-cap', 'lump', 'swelling', 'mass'].includes(t.id)));
  return !other && (named || before?.place?.codes !== undefined);
}

const describing = new Set(describingSay);
const leads = new Set(['a', 'an', 'the', 'that', 'this', 'pretty', 'quite', 'really', 'very', 'fairly', 'rather', 'some', 'one', 'nice', 'has', 'got']);
/** Such a word stands right before the name of a finding, led by an article, a verb of having or nothing at all; a crack is clean or fine wherever it stands. */
function describesNext(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const word = tokens[from]?.t ?? '';
  if (to - from !== 1 || !describing.has(word)) return false;
  // "good big hook", "good sedation": of what comes right behind it.
  if (!tokens[from]?.ends && marks[at + 1]?.terms?.some((t) => t.k === 'severity' || t.k === 'severityKept' || (t.k === 'work' && ['sedate', 'agent', 'topUp'].includes(t.term.as)))) return true;
  const next = marks.slice(at + 1).find((mark) => mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => ['condition', 'cue', 'stop', 'work'].includes(t.k)));
  // "a good rinse": how it was done.
  if (next?.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') && leads.has(tokens[from - 1]?.t ?? '')) return true;
  const named = next?.place === undefined ? next?.terms?.find((t) => t.k === 'condition' && t.id !== 'abnormality') : undefined;
  if (named?.k !== 'condition' || named.strength === 'absentSay') return false;
  const before = marks.slice(0, at).some((mark) => mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => t.k === 'condition'));
  return leads.has(tokens[from - 1]?.t ?? '') || !before || (named.id === 'fracture' && (word === 'clean' || word === 'fine'));
}

const objects = new Set(['it', 'them', 'that', 'those', 'these', 'him', 'her']);
/** One word right behind a verb of work and its pronoun. */
function leftSo(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const pronoun = objects.has(tokens[from - 1]?.t ?? '') && tokens[from - 1]?.ends !== true;
  const verb = marks.find((mark) => mark.from < from && mark.to >= from - (pronoun ? 1 : 0) && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done));
  return to - from === 1 && verb !== undefined && tokens[verb.to - 1]?.ends !== true;
}

/** "nothing on the right cheek, two ulcers on the left": a place of its own, and a finding with another behind it. */
function nothingThere(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (tokens[from]?.t !== 'nothing' || to - from !== 1 || !prepositions.has(tokens[to]?.t ?? '') || marks.slice(0, at).some(isHeadMark)) return false;
  const place = marks.findIndex((mark, i) => i > at && !(mark.place === undefined && (mark.terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler')));
  const head = marks.findIndex((mark, i) => i > place && isHeadMark(mark));
  return place > 0 && marks[place]?.place !== undefined && !isHeadMark(marks[place] as Mark) && head > place && marks.slice(head).some((mark) => mark.place !== undefined);
}

/** "neither canines nor wolf teeth": right behind a word of ruling out a group word is what is ruled out. */
const ruledOutBeside = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean => (marks[at - 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.looks !== 'back') && ((marks[at + 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent') || ['or', 'nor', 'and'].includes(tokens[(marks[at + 1] as Mark | undefined)?.from ?? -1]?.t ?? ''));

/** "packed in the three oh nine three ten gap", "opposite the gap": where something is, when it is said of something else. */
function gapIsWhere(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const from = marks[at - 1]?.place ? (marks[at - 1] as Mark).from : (marks[at] as Mark).from;
  const word = (i: number): string => tokens[i]?.t ?? '';
  const lead = ['the', 'that', 'this'].includes(word(from - 1)) ? word(from - 2) : word(from - 1);
  if (lead === 'into') return true;
  const other = marks.some(({ terms }, i) => i !== at && terms?.some((t) => isHead(t)));
  return other && ['in', 'into', 'at', 'from', 'opposite', 'around', 'down'].includes(lead);
}

/** What a word like "absent" or "gone" is said of: the nearest word before it that means something. */
const beforeIt = (marks: readonly Mark[], at: number): Mark | undefined => marks.slice(0, at).findLast(({ terms, unknown }) => unknown || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
const saidOf = (marks: readonly Mark[], at: number): boolean => beforeIt(marks, at)?.terms?.some((t) => t.k === 'condition') ?? false;
/** "the pocket at three ten gone", "swelling over the maxilla, gone now": said of what stands at that place, not of a tooth. */
const saidOfFinding = (marks: readonly Mark[], at: number): boolean => {
  const place = marks.slice(0, at).findLastIndex((mark) => !(mark.terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler'));
  const name = marks.slice(0, Math.max(place, 0)).findLast((mark) => !(mark.terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler' || t.k === 'surface' || t.k === 'severity'));
  const alone = !marks.slice(0, Math.max(place, 0)).some((mark) => mark.place !== undefined);
  return alone && marks[place]?.place !== undefined && (name?.terms ?? []).some((t) => t.k === 'condition' && t.strength !== 'absentSay') && marks[at + 1]?.place === undefined;
};
/** "one ten has a step, four ten's gone": of a tooth of its own, once the finding before had its place before it. */
const isHeadMark = (mark: Mark): boolean => mark.terms?.some(isHead) ?? false;
const ownTooth = (marks: readonly Mark[], at: number): boolean => marks[at - 1]?.place?.codes?.length === 1 && marks.slice(0, at - 1).findIndex(({ place }) => place !== undefined) >= 0 && marks.slice(0, at - 1).findIndex(({ place }) => place !== undefined) < marks.findIndex(isHeadMark);
const notOfTooth = (marks: readonly Mark[], at: number): boolean => { const before = beforeIt(marks, at); const named = ({ terms }: Mark): boolean => (terms ?? []).some((t) => ['condition', 'qualifier', 'surface'].includes(t.k)); return before !== undefined && (named(before) || (before.unknown === true && marks.slice(marks.slice(0, at).findLastIndex(({ place }) => place !== undefined) + 1, at).some(named))) && (marks[at + 1]?.place === undefined || Object.keys(marks[at + 1]?.place as object).every((key) => key === 'side')); };

/** A group word ("canines", "caps") beside a true finding is its place. */
const neighbourHead = (marks: readonly Mark[], at: number): boolean => marks.some(({ terms, place }, i) => i !== at && place === undefined && (terms ?? []).some((t) => isHead(t)));

export function assemble(marks: readonly Mark[], tokens: readonly Token[], { heads, role }: Roles): readonly Clause[] {
  const link = (a: number, b: number): Link => linkBetween(marks, tokens, role, a, b);
  const groups = placeGroups(marks, tokens, role, heads, link);
  const firstPlace = groups[0]?.marks[0] ?? Infinity;
  const placeFirst = firstPlace < (heads[0]?.mark ?? Infinity);
  const scopes = scopesOf(marks, tokens, role, heads, link);

  const placings: (readonly Placing[])[] = heads.map(() => []);
  const forward: boolean[] = [];
  for (let h = heads.length - 1; h >= 0; h -= 1) {
    const mark = (heads[h] as Head).mark;
    const nextHead = heads[h + 1]?.mark ?? Infinity;
    const fits = (g: PlaceGroup): boolean => canStand(heads[h] as Head, g);
    const nearest = groups.findLast((g) => (g.marks.at(-1) as number) < mark && fits(g));
    const before = nearest && (!stopBetween(role, nearest.marks.at(-1) as number, mark) || pointsBack(marks, tokens, nearest.marks.at(-1) as number, mark)) ? nearest : undefined;
    // "two ten is broken off at the gum": where on the tooth that was named.
    const ofTooth = (g: PlaceGroup): boolean => before !== undefined && before.placings.every(({ raw }) => raw.codes !== undefined) && g.placings.every(({ raw }) => raw.region !== undefined && raw.codes === undefined) && !(conditions[heads[h]?.condition?.id ?? 'ulcer'] as ConditionEntry).places.includes('G');
    const after = groups.filter((g) => fits(g) && !ofTooth(g) && (g.marks[0] as number) > mark && (g.marks[0] as number) < nextHead && (g.subject === undefined || g.subject === h) && !stopBetween(role, mark, g.marks[0] as number));
    // "step on two oh nine, two ten worn": of two places behind the finding before, the second is this one's.
    const ownBefore = before !== undefined && h > 0 && groups.filter((g) => fits(g) && (g.marks[0] as number) > (heads[h - 1] as Head).mark && (g.marks[0] as number) < mark).length > 1;
    const bond = after[0] ? link(mark, after[0].marks[0] as number) : '';
    // "lower left wave, crest at three oh nine": the row that has it and the tooth where it is highest.
    const crest = heads[h]?.condition?.id === 'wave' && after[0] !== undefined && after[0].placings.every(({ raw }) => raw.codes !== undefined) && crested(tokens);
    const top = heads[h]?.condition?.id === 'wave' && crested(tokens) ? after.findLast(({ placings: ps }, k) => k > 0 && ps.every(({ raw }) => raw.codes !== undefined)) : undefined;
    if (top && after[0]) { placings[h] = [...after[0].placings, ...top.placings]; forward[h] = true; continue; }
    const sided = before && after[0] && !marks[mark]?.again ? withSide(before, after[0]) : undefined;
    if (sided) { placings[h] = sided; forward[h] = false; continue; }
    // "one oh six hook, points upper left": the place before is the first finding's, the one behind nobody else's.
    const own = before !== undefined && heads.some(({ mark: other }) => other > (before.marks.at(-1) as number) && other < mark) && (nextHead === Infinity || after.length > 1);
    const strong = after[0] !== undefined && (bond === 'prep' || after[0].bound || bond === 'beside' || own || crest);
    // "two eleven impacted behind two ten": where it is, when a tooth was named that has it.
    const id = heads[h]?.condition?.id;
    if (before && after[0]?.placings.some(({ raw }) => raw.relative) && id && !(conditions[id] as ConditionEntry).places.includes('S') && before.placings.every(({ raw }) => raw.codes !== undefined)) {
      placings[h] = before.placings.map((p, k) => (k === 0 ? { ...p, marks: [...p.marks, ...after[0]?.marks ?? []] } : p));
      forward[h] = false;
    } else if (after[0] && (strong || !placeFirst || before === undefined || marks[mark]?.again)) {
      const row = (bond === 'beside' || crest) && before ? [...before.placings] : [];
      placings[h] = [...row, ...after[0].placings];
      forward[h] = true;
    } else if (after.length === 0 && heads[h + 1] && !(heads[h + 1]?.condition?.id !== heads[h]?.condition?.id && endsBefore(heads[h] as Head, marks, tokens, role, nextHead)) && !stopBetween(role, mark, nextHead) && forward[h + 1] && !(placeFirst && before) && !ownBefore) {
      // One place for a list ("flushed and packed one ten"), unless what is ruled out stands before what is found.
      const same = ruledOut(heads[h] as Head, scopes[h] as readonly Scope[]) === ruledOut(heads[h + 1] as Head, scopes[h + 1] as readonly Scope[]);
      placings[h] = same ? placings[h + 1] as readonly Placing[] : [];
      forward[h] = same;
    } else if (before) {
      placings[h] = before.placings;
      forward[h] = false;
    }
  }
  const mods = withShared(modsOf(marks, tokens, role, heads, link), marks, heads);
  // "ground the step on one oh eight down level with one oh seven": the other tooth is how far, not where.
  const lowered = heads.find(({ work }) => work?.id === 'reduce');
  const level = lowered ? marks.findIndex((mark, i) => i > lowered.mark && isLevel(mark)) : -1;
  const ofOwn = (head: Head, all: readonly Placing[]): readonly Placing[] => (level < 0 || head.work || all[0]?.raw.codes === undefined ? all : all.filter((p) => !(p.beside && (p.marks[0] as number) > level)));
  return heads.map((head, h) => ({ head, placings: ofOwn(head, placings[h] as readonly Placing[]), scopes: (scopes[h] as { scopes: readonly Scope[] } & readonly Scope[]), mods: mods[h] as readonly number[], cues: cuesOf(marks, role, heads, h) }));
}

/** "masseters even on both sides": a side said after the finding belongs to the region before it. */
function withSide(before: PlaceGroup, after: PlaceGroup): readonly Placing[] | undefined {
  const [place, side] = [before.placings.at(-1) as Placing, after.placings[0] as Placing];
  const only = after.placings.length === 1 && after.placings[0]?.raw.codes === undefined && side.raw.region === undefined && side.raw.positions === undefined && !side.raw.row && !side.raw.all && side.raw.quadrants === undefined;
  const adds = (side.raw.side === undefined || place.raw.side === undefined) && (side.raw.jaw === undefined || place.raw.jaw === undefined);
  const open = place.raw.codes === undefined && (place.raw.region !== undefined ? side.raw.jaw === undefined : place.raw.positions !== undefined || (place.raw.jaw !== undefined && !place.raw.row));
  if (!only || !adds || !open) return undefined;
  return [...before.placings.slice(0, -1), { raw: { ...place.raw, ...(side.raw.side ? { side: side.raw.side } : {}), ...(side.raw.jaw ? { jaw: side.raw.jaw } : {}) }, marks: [...place.marks, ...side.marks] }];
}

const ruledOut = (head: Head, scopes: readonly Scope[]): boolean => scopes.includes('absent') !== (head.condition?.strength === 'absentSay');
const stopBetween = (role: Roles['role'], a: number, b: number): boolean => { const at = role.indexOf('stop', a + 1); return at >= 0 && at < b; };

const isLevel = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'level') ?? false;

/** A bite or a size said of the head closes it: the next finding's place is not its own. */
const endsBefore = (head: Head, marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], next: number): boolean => (head.condition !== undefined && conditions[head.condition.id].group === 'bite') || marks.slice(head.mark + 1, next).some((mark, k) => role[head.mark + 1 + k] === 'mod' && (mark.measure ?? mark.grade) !== undefined && !(head.work !== undefined && leadsOn(mark, tokens)));
/** "took four mil off the ramp", "half of the hook": how much of what is named next. */
const leadsOn = (mark: Mark, tokens: readonly Token[]): boolean => tokens[mark.to - 1]?.ends !== true && /^(?:of|off|from) (?:the|that|this|those|his|her|both)$|^the \w+$/.test(`${tokens[mark.to]?.t ?? ''} ${tokens[mark.to + 1]?.t ?? ''}`);

/** A bite stands at no single tooth: "stepped incisors, two oh one long". */
const canStand = (head: Head, group: PlaceGroup): boolean => {
  const kinds = head.condition && (conditions[head.condition.id] as ConditionEntry).places;
  return kinds === undefined || head.condition?.id === 'wave' || kinds.some((kind) => kind === 'T' || kind === 'S' || kind === 'G') || group.placings.some(({ raw }) => raw.codes === undefined);
};

/** "two oh nine worried me but it's sound": what comes behind the stop is said of the place before it. */
const pronouns = new Set(['it', 'its', "it's", 'they', 'them', 'both']);
const pointsBack = (marks: readonly Mark[], tokens: readonly Token[], from: number, to: number): boolean => tokens.slice((marks[from] as Mark).to, (marks[to] as Mark).from).some(({ t }) => pronouns.has(t));

/** How two marks are tied: the strongest small word between them, when nothing else stands there. */
function linkBetween(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], a: number, b: number): Link {
  const between = tokens.slice((marks[a] as Mark).to, (marks[b] as Mark).from).map(({ t }) => t);
  if (role.slice(a + 1, b).includes('stop')) return 'stop';
  for (const word of ['nor', 'or'] as const) if (between.includes(word)) return word;
  if (between.some((t) => besideWords.has(t))) return 'beside';
  const last = (tokens[(marks[b] as Mark).from - 1]?.t ?? '') === 'the' ? between.at(-2) : between.at(-1);
  if (last !== undefined && prepositions.has(last)) return 'prep';
  return between.includes('and') ? 'and' : '';
}

/** Words for the highest tooth of a wave. */
const crests: ReadonlySet<string> = new Set(['crest', 'crests', 'peak', 'peaks', 'peaking', 'cresting', 'highest', 'apex']);
export const crested = (tokens: readonly Token[]): boolean => tokens.some(({ t }) => crests.has(t));

interface PlaceGroup { readonly marks: readonly number[]; readonly placings: readonly Placing[]; /** Said as "between ..." or "behind ...". */ readonly bound: boolean; /** The head that is said of it: "the right bar is bruised". */ readonly subject?: number }

/** Places that stand together: "upper left and lower right", "the gum at three oh nine", "left cheek level with two oh eight". */
function placeGroups(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], heads: readonly Head[], link: (a: number, b: number) => Link): readonly PlaceGroup[] {
  const groups: { marks: number[]; placings: Placing[]; bound: boolean; subject?: number }[] = [];
  marks.forEach((mark, i) => {
    if (role[i] !== 'place' || mark.place === undefined) return;
    const last = groups.at(-1);
    const lastMark = last?.marks.at(-1);
    const subject = subjectOf(marks, tokens, role, heads, i);
    // "an ulcer on the right cheek and the left bar is bruised": each finding has its own.
    const another = lastMark !== undefined && heads.some((head) => head.mark < lastMark) && (subject !== undefined || (link(lastMark, i) === 'and' && otherKind(marks, role, heads, lastMark, i)));
    const plural = ['are', 'were', 'have', 'look', 'feel', 'seem'].includes(tokens[mark.to]?.t ?? '') && lastMark !== undefined && link(lastMark, i) === 'and' && freshSubject(marks, tokens, last?.marks[0] as number);
    const apart = lastMark === undefined || (another && !plural) || role.slice(lastMark + 1, i).some((r) => r !== 'glue' && r !== 'mod');
    const bond = lastMark === undefined ? '' : link(lastMark, i);
    const bound = mark.place.joined === 'between' || mark.place.relative !== undefined;
    const surfacesBetween = lastMark !== undefined && marks.slice(lastMark + 1, i).some(({ terms }) => terms?.some((t) => t.k === 'surface'));
    // "ulcer on the right cheek, bars fine": the last one waits for what comes behind it.
    const next = heads.findIndex((head) => head.mark > i);
    const waits = next > 0 && heads.some((head) => head.mark < (lastMark ?? -1)) && !role.slice((heads[next] as Head).mark, heads[next + 1]?.mark).includes('place');
    const regions = !waits && mark.place.region !== undefined && last?.placings.at(-1)?.raw.region !== undefined && bond === '';
    if (last && !apart && !surfacesBetween && (regions || ['and', 'prep', 'beside'].includes(bond))) {
      last.marks.push(i);
      last.placings.push({ raw: mark.place, marks: [i], ...(bond === 'beside' ? { beside: true } : {}) });
    } else if (last && !apart && surfacesBetween && bond !== '') {
      last.marks.push(i);
      last.placings.push({ raw: mark.place, marks: [i] });
    } else groups.push({ marks: [i], placings: [{ raw: mark.place, marks: [i] }], bound, ...(subject !== undefined ? { subject } : {}) });
  });
  return groups;
}

/** "ulcers on both cheeks, the lips and the tongue are clear": no small word ties it to what was said before. */
const freshSubject = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean => { const from = (marks[at] as Mark).from; return tokens[(tokens[from - 1]?.t === 'the' ? from - 1 : from) - 1]?.ends === true; };

const verbs: ReadonlySet<string> = new Set(['is', 'are', 'has', 'have', "'s", 'was', 'were', 'feels', 'feel', 'looks', 'look', 'seems', 'seem', 'appears', 'appear']);
/** "the right bar is bruised", "the six oh seven cap is loose": the head that a place is said to have. */
function subjectOf(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], heads: readonly Head[], at: number): number | undefined {
  const { from, to } = marks[at] as Mark;
  const h = heads.findIndex(({ mark }) => mark > at);
  const head = heads[h]?.mark ?? 0;
  const parted = tokens.slice(to, marks[head]?.from).some(({ t, ends }) => t === 'and' || ends) || tokens[to - 1]?.ends === true;
  if (h < 0 || parted || marks[head]?.again || role.slice(at + 1, head).some((r) => r !== 'glue' && r !== 'mod' && r !== 'cue')) return undefined;
  const verb = verbs.has(tokens[to]?.t ?? '') || (['tooth', 'teeth', 'one', 'ones', 'side'].includes(tokens[to]?.t ?? '') && verbs.has(tokens[to + 1]?.t ?? ''));
  const named = head === at + 1 && ['the', 'his', 'her'].includes(tokens[from - 1]?.t ?? '') && tokens[from - 2]?.t === 'and';
  return verb || named ? h : undefined;
}

/** "smooth lower right, and one oh nine cupped": a row and a tooth, or a region and a tooth, are not one place where a finding follows. */
function otherKind(marks: readonly Mark[], role: Roles['role'], heads: readonly Head[], a: number, b: number): boolean {
  const [x, y] = [marks[a]?.place, marks[b]?.place];
  const h = heads.findIndex(({ mark }) => mark > b);
  const kind = (raw: RawPlace | undefined): string => (raw?.codes ? 'tooth' : raw?.region ? 'region' : 'group');
  return h >= 0 && kind(x) !== kind(y) && !role.slice(a + 1, b).includes('head') && !role.slice((heads[h] as Head).mark, heads[h + 1]?.mark).includes('place') && !marks[(heads[h] as Head).mark]?.again && role.slice(b + 1, (heads[h] as Head).mark).every((r) => r === 'glue' || r === 'mod');
}

/** Scopes by head: a forward cue covers the next head, and on through "or" and "nor"; a backward cue the heads just before it. */
function scopesOf(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], heads: readonly Head[], link: (a: number, b: number) => Link): readonly (readonly Scope[])[] {
  const scopes: Scope[][] = heads.map(() => []);
  marks.forEach((mark, i) => {
    if (role[i] !== 'cue') return;
    const cues = (mark.terms ?? []).flatMap((t) => (t.k === 'cue' ? [t.cue] : []));
    if (cues.some(({ kind }) => kind === 'pseudo')) return;
    const next = heads.findIndex((head) => head.mark > i);
    const reachable = next >= 0 && !role.slice(i + 1, (heads[next] as Head).mark).some((r) => r === 'stop') && !((heads[next] as Head).condition && ownObject(marks, tokens, role, i, (heads[next] as Head).mark));
    const placeBetween = next >= 0 && role.slice(i + 1, (heads[next] as Head).mark).includes('place');
    const previous = heads.findLastIndex((head) => head.mark < i);
    // "hook on one oh six, none on two oh six": before a finding put back every turning word looks to it.
    // "four mil i think" is a guess at the size.
    if (cues.every(({ means, looks }) => means === 'suspected' && looks !== 'forward') && (marks[i - 1]?.measure || marks[i - 1]?.grade)) return;
    // "cheeks not, ulcers on both": what is turned stands before the pause.
    const closed = tokens[mark.to - 1]?.ends === true && (tokens[mark.from]?.t === 'not' && mark.to - mark.from === 1 || (previous >= 0 && cues.some(({ means, looks }) => means === 'suspected' && looks !== 'forward')));
    // "worse than it was last visit": a comparison with what was, no history.
    if (comparedWithThen(tokens, mark.from) && cues.every(({ means, looks }) => means === 'before' && looks !== 'forward')) return;
    const forward = closed ? undefined : cues.find(({ looks }) => looks !== 'back') ?? (marks[(heads[next] ?? { mark: -1 }).mark]?.again ? cues[0] : undefined);
    const back = cues.find(({ looks }) => looks !== 'forward');
    // "neither canine is sharp": of the place behind it.
    // "no four ten, it's missing": the tooth is what is not there.
    if (tokens[mark.to - 1]?.t === 'no' && marks[i + 1]?.place?.codes !== undefined && tokens[(marks[i + 1] as Mark).to - 1]?.ends) return;
    const ofPlace = tokens[mark.from]?.t === 'neither' && mark.to - mark.from === 1 && marks[i + 1]?.place !== undefined;
    if (forward && reachable && (!placeBetween || previous < 0 || back === undefined || ofPlace) && ['absent', 'suspected', 'before'].includes(forward.means)) {
      let h = next;
      (scopes[h] as Scope[]).push(forward.means as Scope);
      while (heads[h + 1] && listGoesOn(heads, h, link, role)) { h += 1; (scopes[h] as Scope[]).push(forward.means as Scope); }
    } else if (back && previous >= 0 && ['absent', 'suspected', 'before'].includes(back.means)) {
      (scopes[previous] as Scope[]).push(back.means as Scope);
      // "hooks, ramps, waves, none of those": all that was listed.
      const listed = tokens.slice(mark.from, mark.to).some(({ t }) => ['those', 'these', 'them', 'above', 'either'].includes(t));
      for (let h = previous; h > 0 && (listed && !role.slice((heads[h - 1] as Head).mark, (heads[h] as Head).mark).some((r) => r === 'place' || r === 'stop') || ['and', 'or'].includes(link((heads[h - 1] as Head).mark, (heads[h] as Head).mark))); h -= 1) (scopes[h - 1] as Scope[]).push(back.means as Scope);
    }
  });
  return scopes;
}

const comparisons = new Set(['than', 'since', 'as', 'from', 'like']);
const comparedWithThen = (tokens: readonly Token[], at: number): boolean => { let i = at - 1; while (['it', 'was', 'were', 'they', 'the', 'at'].includes(tokens[i]?.t ?? '')) i -= 1; return comparisons.has(tokens[i]?.t ?? ''); };

/** "you would not credit it, the cap is on": the turn is of a verb that has its own object. */
function ownObject(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], cue: number, head: number): boolean {
  const verb = role.findIndex((r, i) => i > cue && i < head && r === 'unknown' && !lightWords.has(tokens[(marks[i] as Mark).from]?.t ?? ''));
  if (negatesWork(marks, tokens, role, cue, head)) return true;
  return verb === cue + 1 && ['it', 'that', 'him', 'her', 'them', 'this'].includes(tokens[(marks[verb] as Mark).to]?.t ?? '');
}

const definite = new Set(['the', 'that', 'this', 'those', 'these', 'his', 'her', 'its']);
const handling = new Set(['get', 'got', 'getting', 'take', 'bring', 'move', 'touch', 'treat', 'do', 'have', 'let', 'want']);
/** "could not get the ramp down", "did not manage to shift the cap": what was not done to it says that it is there. */
function negatesWork(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], cue: number, head: number): boolean {
  const { from, to } = marks[cue] as Mark;
  if (!tokens.slice(from, to).some(({ t }) => ['not', 'never', 'unable', 'failed'].includes(t))) return false;
  const verb = role.findIndex((r, i) => i > cue && i < head && (r === 'unknown' ? !lightWords.has(tokens[(marks[i] as Mark).from]?.t ?? '') : handling.has(tokens[(marks[i] as Mark).from]?.t ?? '')));
  return verb >= 0 && tokens.slice((marks[verb] as Mark).to, (marks[head] as Mark).from).some(({ t }) => definite.has(t));
}

/** "hooks waves or steps": a list goes on while "or" closes it before any place or stop. */
function listGoesOn(heads: readonly Head[], h: number, link: (a: number, b: number) => Link, role: Roles['role']): boolean {
  for (let i = h; i + 1 < heads.length; i += 1) {
    const [a, b] = [(heads[i] as Head).mark, (heads[i + 1] as Head).mark];
    const bond = link(a, b);
    const between = role.slice(a + 1, b);
    if (between.some((r) => r === 'place' || r === 'stop' || r === 'unknown') || (between.includes('cue') && bond !== 'nor')) return false;
    if (bond === 'or' || bond === 'nor') return true;
    if (bond !== '') return false;
  }
  return false;
}

const cuesOf = (marks: readonly Mark[], role: Roles['role'], heads: readonly Head[], h: number): readonly number[] => {
  const from = heads[h - 1]?.mark ?? -1;
  const to = heads[h + 1]?.mark ?? marks.length;
  return where(marks, (_, i) => role[i] === 'cue' && i > from && i < to);
};

/** A modifier belongs to the head it stands beside; between two, small words, places and what each head can hold decide. */
function modsOf(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], heads: readonly Head[], link: (a: number, b: number) => Link): readonly (readonly number[])[] {
  const mods: number[][] = heads.map(() => []);
  const closed = (bond: Link): boolean => ['and', 'or', 'nor', 'stop'].includes(bond);
  marks.forEach((mark, i) => {
    if (role[i] !== 'mod' || heads.length === 0) return;
    const previous = heads.findLastIndex((head) => head.mark < i);
    const next = heads.findIndex((head) => head.mark > i);
    if (ofTalk(marks, tokens, role, i)) return;
    if (previous < 0) { (mods[next] as number[]).push(i); return; }
    // "dropped the two eleven hook by two mil": by how much is of the work, whatever was named between.
    const verb = isLevel(mark) || mark.measure && (tokens[mark.from - 1]?.t === 'by' || leadsOn(mark, tokens)) ? heads.findLastIndex((head) => head.mark < i && head.work !== undefined && (isLevel(mark) || holds(head, mark))) : -1;
    if (verb >= 0 && (heads[previous]?.condition !== undefined || verb === previous) && !role.slice(heads[verb]?.mark, i).includes('stop')) { (mods[verb] as number[]).push(i); return; }
    // "three oh six ramped and three eleven hooked, both moderate"
    if (next < 0 && ['both', 'each', 'all'].includes(tokens[tokens[mark.from - 1]?.t === 'done' ? mark.from - 2 : mark.from - 1]?.t ?? '')) { heads.forEach((head, h) => { if (holds(head, mark) && !(head.condition && mark.terms?.some((t) => t.k === 'work'))) (mods[h] as number[]).push(i); }); return; }
    if (next < 0) { (mods[previous] as number[]).push(i); return; }
    const [before, after] = [(heads[previous] as Head).mark, (heads[next] as Head).mark];
    const own = (mods[previous] as number[]).some((m) => kindOf(marks[m] as Mark) === kindOf(mark));
    const breakBefore = closed(link(i - 1 < before ? before : lastTaken(role, before, i), i)) || role.slice(before, i).some((r) => r === 'stop' || r === 'cue');
    // "two mil gap, five mil pocket": where sizes stand before what they measure, or the next one has none of its own behind it.
    const kind = kindOf(mark);
    const figure = mark.measure !== undefined || mark.grade !== undefined;
    const nextHas = figure && holds(heads[next] as Head, mark) && marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some((m, j) => role[after + 1 + j] === 'mod' && kindOf(m) === kind);
    const lead = figure && !(tokens[mark.to - 1]?.ends === true) && holds(heads[next] as Head, mark) && firstTaken(role, i, after) === after && !nextHas && (own || !role.slice(before, i).includes('place') || marks.slice(heads[previous - 1]?.mark ?? 0, before).some((m) => kindOf(m) === kind) || ['a', 'an'].includes(tokens[mark.from - 1]?.t ?? ''));
    // "four eleven ramp six mil ulcer right cheek": a size right behind a name whose tooth was said before it is that one's.
    const behindName = mark.measure !== undefined && i === before + 1 && !own && holds(heads[previous] as Head, mark) && !['a', 'an'].includes(tokens[mark.from - 1]?.t ?? '') && tokens[mark.from - 1]?.ends !== true && marks.slice(heads[previous - 1]?.mark ?? 0, before).some(({ place }) => place !== undefined) && marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some(({ place }) => place !== undefined);
    if (behindName) { (mods[previous] as number[]).push(i); return; }
    const only = holds(heads[previous] as Head, mark) && !holds(heads[next] as Head, mark);
    // "broken, buccal slab gone": a word right before a name describes it.
    const describes = !figure && !(tokens[mark.to - 1]?.ends === true && holds(heads[previous] as Head, mark)) && firstTaken(role, i, after) === after && !closed(link(i, after)) && holds(heads[next] as Head, mark) && !marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some((m, j) => role[after + 1 + j] === 'mod' && kindOf(m) === kind);
    // "ramp six mil, ulcer on the cheek": a comma behind a size closes it off, one before it opens the next.
    const ends = (at: number): boolean => tokens[at]?.ends === true;
    // "step, about six mil, dropped it by half": a verb of doing behind the comma begins anew.
    const anew = heads[next]?.work?.done === true && heads[previous]?.condition !== undefined;
    if (figure && holds(heads[previous] as Head, mark) && ends(mark.to - 1) && (anew || !ends(mark.from - 1) || tokens[mark.to]?.t === 'and') && !own) { (mods[previous] as number[]).push(i); return; }
    const toNext = !marks[after]?.again && !only && !(nextHas && !own) && (lead || describes || breakBefore || !closed(link(i, firstTaken(role, i, after))) && !role.slice(i, after).includes('place')
      && ((role.slice(before, i).includes('place') && (figure || firstTaken(role, i, after) === after)) || own || !holds(heads[previous] as Head, mark) && holds(heads[next] as Head, mark)));
    (mods[toNext ? next : previous] as number[]).push(i);
  });
  return mods;
}
/** "step back a bit, ulcer on the cheek", "... and the weather is nice": a degree of what is no finding. */
function ofTalk(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], at: number): boolean {
  const mark = marks[at] as Mark;
  if (!(mark.terms ?? []).every((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'change') || mark.measure !== undefined || mark.grade !== undefined) return false;
  const before = lastTaken(role, -1, at);
  const stranger = before >= 0 && role[before] === 'unknown' && !tokens.slice((marks[before] as Mark).from, (marks[before] as Mark).to).every(({ t }) => lightWords.has(t));
  const head = firstTaken(role, at, marks.length);
  return stranger && !(role[head] === 'head' || (role[head] === 'mod' && tokens[mark.to - 1]?.ends !== true));
}

/** "rostral hooks, five mil on the right, three on the left": what describes the name holds wherever the finding was put back. */
const withShared = (mods: readonly (readonly number[])[], marks: readonly Mark[], heads: readonly Head[]): readonly (readonly number[])[] => (marks.some(({ again }) => again) ? mods.map((own, h) => {
  const again = marks[heads[h]?.mark ?? -1]?.again;
  const first = heads.findIndex(({ mark }) => again !== undefined && marks[mark]?.from === again.from && marks[mark]?.to === again.to);
  const shared = first < 0 ? [] : (mods[first] ?? []).filter((m) => m < (heads[first] as Head).mark && ['qualifier', 'surface'].includes(kindOf(marks[m] as Mark)) && !own.some((o) => kindOf(marks[o] as Mark) === kindOf(marks[m] as Mark)));
  return [...own, ...shared];
}) : mods);

const lastTaken = (role: Roles['role'], from: number, to: number): number => { for (let i = to - 1; i > from; i -= 1) if (role[i] !== 'glue') return i; return from; };
const firstTaken = (role: Roles['role'], from: number, to: number): number => { for (let i = from + 1; i < to; i += 1) if (role[i] !== 'glue') return i; return to; };

/** Whether a size or a grade means anything to the head. */
function holds(head: Head, mark: Mark): boolean {
  const entry = head.condition && (conditions[head.condition.id] as ConditionEntry);
  // What is normal has no degree.
  if (head.condition?.id === 'abnormality' && head.condition.strength === 'absentSay') return false;
  if (mark.measure) return entry ? entry.measure !== undefined : ['reduce', 'reduce-incisors', 'rasp', 'bit-seat'].includes(head.work?.id ?? '');
  if (mark.grade) return entry?.scale !== undefined;
  // A surface is a tooth's.
  return entry !== undefined && (mark.terms ?? []).some((t) => t.k === 'surface') ? entry.places.some((kind) => kind === 'T' || kind === 'S') : true;
}

const kindOf = (mark: Mark): string => (mark.measure ? 'measure' : mark.grade ? 'grade' : (mark.terms ?? [])[0]?.k ?? '');
