/** Which head a size, a degree, a surface or a tool belongs to. */
import { conditions } from '../lexicon/conditions.ts';
import { light } from '../lexicon/fillers.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import type { Link } from './groups.ts';
import { where } from './lists.ts';
import type { Head, Roles } from './roles.ts';
import type { Mark } from './scan.ts';
import { sharesOf, onesWords, whichUnsaid } from './shares.ts';
import type { Token } from './tokens.ts';

const lightWords = new Set(light);
export const isLevel = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'level') ?? false;
/** "took four mil off the ramp", "half of the hook": how much of what is named next. */
export const leadsOn = (mark: Mark, tokens: readonly Token[]): boolean =>
  tokens[mark.to - 1]?.ends !== true &&
  /^(?:of|off|from) (?:the|that|this|those|his|her|both)$|^the \w+$/.test(`${tokens[mark.to]?.t ?? ''} ${tokens[mark.to + 1]?.t ?? ''}`);

const isTool = ({ terms }: Mark): boolean =>
  terms?.some((t) => t.k === 'work' && ['instrument', 'tool', 'water', 'supervised'].includes(t.term.as)) === true;
/** Whether a verb of reducing has the finding behind it for its object, up to a size that no pause parts from it. */
const objectOf = (
  { mark: verb, work }: Head,
  { mark: object, condition }: Head,
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  size: number,
): boolean =>
  work?.id === 'reduce' &&
  work.done === true &&
  condition !== undefined &&
  tokens.slice((marks[verb] as Mark).from, (marks[size] as Mark).from).every(({ ends }) => ends !== true) &&
  role.slice(verb + 1, size).every((r, i) => r === 'glue' || r === 'place' || verb + 1 + i === object);

const attributes: ReadonlySet<string> = new Set(['severity', 'severityKept', 'surface', 'qualifier']);
/** "hook on one oh six, not a severe one", "caries on one oh nine, not on the buccal side": how a finding that was named is not, by the mark of its "not". */
export function howItIsNot(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], at: number): number | undefined {
  const own = firstTaken(role, at, marks.length);
  const mark = marks[own];
  const next = firstTaken(role, own, marks.length);
  return mark !== undefined &&
    tokens[(marks[at] as Mark).from]?.t === 'not' &&
    tokens[(marks[at] as Mark).to - 1]?.ends !== true &&
    role[own] === 'mod' &&
    ((mark.measure !== undefined && mark.from === (marks[at] as Mark).to) || mark.terms?.every((t) => attributes.has(t.k)) === true) &&
    role.lastIndexOf('head', at) >= 0 &&
    !(role[next] === 'head' && tokens[mark.to - 1]?.ends !== true)
    ? own
    : undefined;
}

/** A modifier belongs to the head it stands beside; between two, small words, places and what each head can hold decide. */
export function modsOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  link: (a: number, b: number) => Link,
): readonly (readonly number[])[] {
  const mods: number[][] = heads.map(() => []);
  const closed = (bond: Link): boolean => ['and', 'or', 'nor', 'stop'].includes(bond);
  const shares = sharedOut(marks, tokens, role, heads);
  marks.forEach((mark, i) => {
    if (role[i] !== 'mod' || heads.length === 0) return;
    const shared = shares.get(i);
    if (shared) {
      for (const h of shared) (mods[h] as number[]).push(i);
      return;
    }
    const previous = heads.findLastIndex((head) => head.mark < i);
    const next = heads.findIndex((head) => head.mark > i);
    if (ofTalk(marks, tokens, role, i)) return;
    if (previous < 0) {
      (mods[next] as number[]).push(i);
      return;
    }
    // "dropped the two eleven hook by two mil": by how much is of the work, whatever was named between.
    const verb =
      isLevel(mark) || (mark.measure && (tokens[mark.from - 1]?.t === 'by' || leadsOn(mark, tokens)))
        ? heads.findLastIndex((head) => head.mark < i && head.work !== undefined && (isLevel(mark) || holds(head, mark)))
        : -1;
    if (
      verb >= 0 &&
      (heads[previous]?.condition !== undefined || verb === previous) &&
      !role.slice(heads[verb]?.mark, i).includes('stop')
    ) {
      (mods[verb] as number[]).push(i);
      return;
    }
    // "three oh six ramped and three eleven hooked, both moderate"
    if (
      next < 0 &&
      ['both', 'each', 'all'].includes(tokens[tokens[mark.from - 1]?.t === 'done' ? mark.from - 2 : mark.from - 1]?.t ?? '')
    ) {
      heads.forEach((head, h) => {
        if (holds(head, mark) && !(head.condition && mark.terms?.some((t) => t.k === 'work'))) (mods[h] as number[]).push(i);
      });
      return;
    }
    // "took the hook off with the burr, plenty of water": a tool is of the work, whatever was named between.
    const worked = isTool(mark) ? heads.findLastIndex((head) => head.mark < i && head.work !== undefined) : -1;
    // "reduced the one oh six hook three mil": so is how much, right behind what the work was done to.
    const taken = mark.measure && previous > 0 && objectOf(heads[previous - 1] as Head, heads[previous] as Head, marks, tokens, role, i);
    if (worked >= 0 || taken) {
      (mods[taken ? previous - 1 : worked] as number[]).push(i);
      return;
    }
    if (next < 0) {
      (mods[previous] as number[]).push(i);
      return;
    }
    const [before, after] = [(heads[previous] as Head).mark, (heads[next] as Head).mark];
    const own = (mods[previous] as number[]).some((m) => kindOf(marks[m] as Mark) === kindOf(mark));
    const breakBefore =
      closed(link(i - 1 < before ? before : lastTaken(role, before, i), i)) ||
      role.slice(before, i).some((r) => r === 'stop' || r === 'cue');
    // "two mil gap, five mil pocket": where sizes stand before what they measure, or the next one has none of its own behind it.
    const kind = kindOf(mark);
    const figure = mark.measure !== undefined || mark.grade !== undefined;
    // "eight millimetres of overjet and five of overbite": a size of what it names.
    if (figure && tokens[mark.to]?.t === 'of' && holds(heads[next] as Head, mark) && firstTaken(role, i, after) === after) {
      (mods[next] as number[]).push(i);
      return;
    }
    const nextHas =
      figure &&
      holds(heads[next] as Head, mark) &&
      marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some((m, j) => role[after + 1 + j] === 'mod' && kindOf(m) === kind);
    const lead =
      figure &&
      !(tokens[mark.to - 1]?.ends === true) &&
      holds(heads[next] as Head, mark) &&
      firstTaken(role, i, after) === after &&
      !nextHas &&
      (own ||
        !role.slice(before, i).includes('place') ||
        marks.slice(heads[previous - 1]?.mark ?? 0, before).some((m) => kindOf(m) === kind) ||
        ['a', 'an'].includes(tokens[mark.from - 1]?.t ?? ''));
    // "four eleven ramp six mil ulcer right cheek": a size right behind a name whose tooth was said before it is that one's.
    const behindName =
      mark.measure !== undefined &&
      i === before + 1 &&
      !own &&
      holds(heads[previous] as Head, mark) &&
      !['a', 'an'].includes(tokens[mark.from - 1]?.t ?? '') &&
      tokens[mark.from - 1]?.ends !== true &&
      marks.slice(heads[previous - 1]?.mark ?? 0, before).some(({ place }) => place !== undefined) &&
      marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some(({ place }) => place !== undefined);
    if (behindName) {
      (mods[previous] as number[]).push(i);
      return;
    }
    const only = holds(heads[previous] as Head, mark) && !holds(heads[next] as Head, mark);
    // "broken, buccal slab gone": a word right before a name describes it.
    const describes =
      !figure &&
      !(tokens[mark.to - 1]?.ends === true && holds(heads[previous] as Head, mark)) &&
      firstTaken(role, i, after) === after &&
      !closed(link(i, after)) &&
      holds(heads[next] as Head, mark) &&
      !marks.slice(after + 1, heads[next + 1]?.mark ?? marks.length).some((m, j) => role[after + 1 + j] === 'mod' && kindOf(m) === kind);
    // "ramp, six mil, ulcer on the cheek": a comma behind a size closes it off.
    const ends = (at: number): boolean => tokens[at]?.ends === true;
    const degree = mark.grade !== undefined && isNamed(heads[previous]) && !holds(heads[next] as Head, mark);
    if (figure && (degree || holds(heads[previous] as Head, mark)) && ends(mark.to - 1) && !own) {
      (mods[previous] as number[]).push(i);
      return;
    }
    // "hook on one oh six, mild, ramp on three eleven": so does a comma behind a degree or a kind that none stands right before.
    if (
      !figure &&
      ends(mark.to - 1) &&
      !own &&
      holds(heads[previous] as Head, mark) &&
      attributes.has(kind) &&
      (!ends(mark.from - 1) || !attributes.has(kindOf(marks[i + 1] as Mark)))
    ) {
      (mods[previous] as number[]).push(i);
      return;
    }
    // "the front one a grade one, back one clean": an end that a pause opens with is of what is normal there.
    const opens =
      !figure && ends(mark.from - 1) && !ends(mark.to - 1) && isNormal(heads[next] as Head) && firstTaken(role, i, after) === after;
    // "fracture of two oh nine, not displaced, grade four caries with it": how a fracture stands.
    if (heads[previous]?.condition?.id === 'fracture' && mark.terms?.some((t) => t.k === 'qualifier' && t.id.endsWith('displaced'))) {
      (mods[previous] as number[]).push(i);
      return;
    }
    const toNext =
      opens ||
      (!marks[after]?.again &&
        !only &&
        !(nextHas && !own) &&
        (lead ||
          describes ||
          breakBefore ||
          (!closed(link(i, firstTaken(role, i, after))) &&
            !role.slice(i, after).includes('place') &&
            ((role.slice(before, i).includes('place') && (figure || firstTaken(role, i, after) === after)) ||
              own ||
              (!holds(heads[previous] as Head, mark) && holds(heads[next] as Head, mark))))));
    (mods[toNext ? next : previous] as number[]).push(i);
  });
  return mods;
}
const none: ReadonlyMap<number, readonly number[]> = new Map();
/** "hook on one oh six and ramp on three eleven, three mil and five mil", "..., the latter large": what is said behind several findings, by its mark. */
function sharedOut(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
): ReadonlyMap<number, readonly number[]> {
  const last = Math.max(role.lastIndexOf('head'), role.lastIndexOf('place'));
  const own = where(role, (r, i) => r === 'mod' && i > last);
  const found = where(heads, ({ condition, mark }) => condition !== undefined && marks[mark]?.again === undefined);
  if (own.length === 0 || found.length < 2 || found.length < heads.length || role.includes('stop')) return none;
  const holding = found.filter((h) => own.every((m) => holds(heads[h] as Head, marks[m] as Mark)));
  if (holding.length < found.length) return none;
  // "the hook on one oh six and the ramp on three eleven are small": one alone would be "is".
  const plural =
    ['are', 'were'].includes(tokens[(marks[own[0] as number] as Mark).from - 1]?.t ?? '') &&
    found.every((h) => tokens[(marks[(heads[h] as Head).mark] as Mark).to - 1]?.t.endsWith('s') === false);
  const shares = plural
    ? own.map(() => found.map((_, n) => n))
    : whichUnsaid(marks, tokens, own, found.length)
      ? own.map(() => [])
      : sharesOf(marks, tokens, own, found.length);
  return shares === undefined ? none : new Map(own.map((m, k) => [m, (shares[k] as readonly number[]).map((n) => found[n] as number)]));
}

/** "step back a bit, ulcer on the cheek", "... and the weather is nice": a degree of what is no finding. */
function ofTalk(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], at: number): boolean {
  const mark = marks[at] as Mark;
  if (
    !(mark.terms ?? []).every((t) => t.k === 'severity' || t.k === 'severityKept' || t.k === 'change') ||
    mark.measure !== undefined ||
    mark.grade !== undefined
  )
    return false;
  const before = lastTaken(role, -1, at);
  const stranger =
    before >= 0 &&
    role[before] === 'unknown' &&
    !tokens.slice((marks[before] as Mark).from, (marks[before] as Mark).to).every(({ t }) => lightWords.has(t) || onesWords.has(t));
  const head = firstTaken(role, at, marks.length);
  return stranger && !(role[head] === 'head' || (role[head] === 'mod' && tokens[mark.to - 1]?.ends !== true));
}

/** "rostral hooks, five mil on the right, three on the left": what describes the name holds wherever the finding was put back. */
export const withShared = (
  mods: readonly (readonly number[])[],
  marks: readonly Mark[],
  heads: readonly Head[],
): readonly (readonly number[])[] =>
  marks.some(({ again }) => again)
    ? mods.map((own, h) => {
        const again = marks[heads[h]?.mark ?? -1]?.again;
        const first = heads.findIndex(
          ({ mark }) => again !== undefined && marks[mark]?.from === again.from && marks[mark]?.to === again.to,
        );
        const shared =
          first < 0
            ? []
            : (mods[first] ?? []).filter(
                (m) =>
                  m < (heads[first] as Head).mark &&
                  ['qualifier', 'surface'].includes(kindOf(marks[m] as Mark)) &&
                  !own.some((o) => kindOf(marks[o] as Mark) === kindOf(marks[m] as Mark)),
              );
        return [...own, ...shared];
      })
    : mods;

const lastTaken = (role: Roles['role'], from: number, to: number): number => {
  for (let i = to - 1; i > from; i -= 1) if (role[i] !== 'glue') return i;
  return from;
};
const firstTaken = (role: Roles['role'], from: number, to: number): number => {
  for (let i = from + 1; i < to; i += 1) if (role[i] !== 'glue') return i;
  return to;
};

/** A finding that is there to be graded. */
const isNamed = (head: Head | undefined): boolean => head?.condition !== undefined && head.condition.strength !== 'absentSay';
export const isNormal = (head: Head | undefined): boolean =>
  head?.condition?.id === 'abnormality' && head.condition.strength === 'absentSay';
/** Whether a size or a grade means anything to the head. */
function holds(head: Head, mark: Mark): boolean {
  const entry = head.condition && (conditions[head.condition.id] as ConditionEntry);
  // What is normal has no degree.
  if (isNormal(head)) return false;
  if (mark.measure)
    return entry ? entry.measure !== undefined : ['reduce', 'reduce-incisors', 'rasp', 'bit-seat'].includes(head.work?.id ?? '');
  if (mark.grade) return entry?.scale !== undefined;
  // A surface is a tooth's.
  return entry !== undefined && (mark.terms ?? []).some((t) => t.k === 'surface')
    ? entry.places.some((kind) => kind === 'T' || kind === 'S')
    : true;
}

const kindOf = (mark: Mark): string => (mark.measure ? 'measure' : mark.grade ? 'grade' : ((mark.terms ?? [])[0]?.k ?? ''));
