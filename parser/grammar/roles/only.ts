/** Everyday words that name a finding only beside some part, tooth or finding. */
import type { ConditionId } from '../../lexicon/conditions.ts';
import { describingSay } from '../../lexicon/modifiers.ts';
import type { RegionId } from '../../lexicon/regions.ts';
import type { Mark } from '../scan.ts';
import { type Rule, workDone } from './phrase.ts';

/** Words that name a finding in these parts alone. */
const onlyAt: Readonly<Partial<Record<ConditionId, readonly RegionId[]>>> = {
  gingivitis: ['gums'],
  discharge: ['nostril', 'eye', 'sinus'],
  tension: ['masseter', 'temporalis', 'poll'],
};
const notOfAToothEdge: ReadonlySet<RegionId> = new Set(['tongue', 'lips', 'cheek', 'palate']);

const undone: ReadonlySet<string> = new Set(['attempted', 'part-done', 'not-done', 'declined']);
/** "attempted extraction of two oh five, stopped, too painful": why it was not done. */
export const whyStopped: Rule = ({ marks, tokens, i, mark, condition }) =>
  condition?.id === 'pain' &&
  tokens[mark.from - 1]?.t === 'too' &&
  marks.slice(0, i).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'state' && undone.has(t.term.state)))
    ? 'mod'
    : undefined;

/** "cap on seven oh eight, good and tight": of the cap, and of no muscle. */
const ofTheCap = (before: readonly Mark[]): boolean =>
  before.some(({ terms }) => terms?.some((t) => t.k === 'condition' && /-cap$/.test(t.id)));

/** "ready to come off", "seven oh eight still hanging on": of a cap. */
export const ofACap: Rule = ({ marks, tokens, mark, condition }) =>
  (condition?.id === 'loose-cap' || (condition?.id === 'retained-cap' && tokens[mark.to - 1]?.t === 'on')) &&
  condition.strength === 'withPlace' &&
  !marks.some(
    ({ terms, place }) =>
      terms?.some(
        (t) =>
          (t.k === 'condition' && t.id === 'retained-cap' && t !== condition) ||
          (t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'remove-cap'),
      ) || place?.codes?.some((code) => Number(code[0]) >= 5),
  )
    ? 'unknown'
    : undefined;

/** "three oh two coming", but "a bit of a wave coming": of no tooth that comes through. */
export const comingThrough: Rule = ({ marks, i, condition }) =>
  condition?.id === 'erupting' &&
  condition.strength === 'withPlace' &&
  marks[i - 1]?.place?.codes === undefined &&
  !(marks[i - 1]?.terms?.every((t) => t.k === 'glue') && marks[i - 2]?.place?.codes !== undefined)
    ? 'glue'
    : undefined;

/** "four oh eight solid": said of a tooth, and of no lump or cap. */
export const solid: Rule = ({ marks, tokens, i, mark, condition }) =>
  condition?.id === 'mobility' &&
  condition.strength === 'absentSay' &&
  ['solid', 'firm'].includes(tokens[mark.from]?.t ?? '') &&
  !firmTooth(marks, i)
    ? mark.to - mark.from > 1
      ? 'unknown'
      : 'glue'
    : undefined;

/** "all the incisors are tight": of teeth, none is loose. */
export const tightTeeth: Rule = ({ marks, tokens, i, mark, condition }) => {
  if (condition?.id !== 'tension' || tokens[mark.from]?.t !== 'tight' || tokens[mark.to]?.t === 'together') return undefined;
  if (ofTheCap(marks.slice(0, i))) return 'mod';
  const before = marks
    .slice(0, i)
    .findLast(
      ({ from, terms, place }) =>
        place !== undefined || !((terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler') || tokens[from]?.t === 'good'),
    )?.place;
  return before?.codes !== undefined || before?.positions !== undefined || (before?.region !== undefined && ofTeeth.has(before.region))
    ? { condition: { id: 'mobility', strength: 'absentSay', plural: false } }
    : undefined;
};
const halves: ReadonlySet<string> = new Set([
  'half',
  'halves',
  'piece',
  'pieces',
  'fragment',
  'fragments',
  'bit',
  'bits',
  'slab',
  'sides',
  'parts',
]);
/** "it isn't a gap, it's tight", "the two halves are sitting tight": how a gap or a break stands, and no muscle. */
export const tightGap: Rule = ({ marks, tokens, mark, condition }) => {
  if (condition?.id !== 'tension' || tokens[mark.from]?.t !== 'tight') return undefined;
  const said = (id: ConditionId): boolean => marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.id === id));
  const ofHalves = tokens.slice(Math.max(0, mark.from - 4), mark.from).some(({ t }) => halves.has(t));
  const ofMuscle = marks.some(({ place }) => place?.region !== undefined && onlyAt.tension?.includes(place.region));
  return !ofMuscle && ((said('fracture') && ofHalves) || (said('diastema') && tokens[mark.from - 1]?.t !== 'packed')) ? 'glue' : undefined;
};
/** "the lower left row has sheared off": of a whole row it is how it wears, and no broken tooth. */
export const shearedRow: Rule = ({ marks, tokens, i, mark, condition }) =>
  condition?.id === 'fracture' &&
  tokens[mark.from]?.t === 'sheared' &&
  marks.slice(0, i).findLast(({ place }) => place !== undefined)?.place?.row === true
    ? { condition: { id: 'shear', strength: 'say', plural: false } }
    : undefined;

const ofTeeth: ReadonlySet<RegionId> = new Set(['incisors', 'cheek-teeth']);

/** "The right edge of the tongue": no edge of a tooth; "broken, I can feel the edge of it": of the break; "floated the inside edges": where it was rasped; "clean edge to it": how a step ends. */
export const edges: Rule = ({ marks, tokens, i, mark, condition, fractureSaid }) =>
  condition?.id === 'sharp-enamel-points' &&
  (tokens[mark.from]?.t ?? '').startsWith('edge') &&
  ((fractureSaid && mark.to === mark.from + 1 && tokens[mark.from - 1]?.t === 'the') ||
    marks.some(({ place }) => place?.region !== undefined && notOfAToothEdge.has(place.region)) ||
    (mark.to === mark.from + 1 && describingSay.includes(tokens[mark.from - 1]?.t ?? '')) ||
    worksOn(marks.slice(0, i)))
    ? 'glue'
    : undefined;
/** Work that was done stands before, and but for small words and a surface nothing behind it. */
function worksOn(before: readonly Mark[]): boolean {
  const last = before.findLast(({ terms }) => !terms?.every(({ k }) => k === 'glue' || k === 'surface'));
  return last !== undefined && workDone(last);
}

/** "the gum around two oh two is red", "left nostril running, other one dry": of a gum, of a nostril only. */
export const ofTheseParts: Rule = ({ marks, condition }) => {
  const only = condition && condition.strength !== 'say' ? onlyAt[condition.id] : undefined;
  return only && !marks.some(({ place }) => place?.region !== undefined && only.includes(place.region)) ? 'unknown' : undefined;
};

/** "deciduous six oh three still present", but "deciduous six oh three is loose": which tooth, where something else is said of it. */
export const milkTooth: Rule = ({ marks, i, condition }) =>
  condition?.id === 'deciduous-present' &&
  condition.strength === 'withPlace' &&
  (!marks.some(({ place }) => place?.codes?.every((code) => Number(code[0]) >= 5)) ||
    marks.some(({ terms }, k) => k !== i && terms?.some((t) => t.k === 'condition' || (t.k === 'work' && t.term.as === 'procedure'))))
    ? 'glue'
    : undefined;

/** "gum on four oh three has drawn back", but "lips drawn back": of a gum only. */
export const ofGums: Rule = ({ marks, tokens, mark, condition }) =>
  condition?.id === 'gingival-recession' &&
  condition.strength === 'withPlace' &&
  tokens[mark.to - 1]?.t === 'back' &&
  !marks.some(({ place }) => place?.region === 'gums')
    ? 'unknown'
    : undefined;

/** "two ten is infected": of a tooth only. */
export const ofATooth: Rule = ({ marks, condition }) =>
  condition?.id === 'apical-infection' &&
  condition.strength === 'withPlace' &&
  (marks.some(({ place }) => place?.region !== undefined) ||
    !marks.some(({ place }) => place?.codes !== undefined || place?.positions !== undefined))
    ? 'unknown'
    : undefined;

/** Right behind a tooth, or in a phrase that spoke of loose ones. */
function firmTooth(marks: readonly Mark[], at: number): boolean {
  const before = marks
    .slice(0, at)
    .findLast(({ terms, place }) => place !== undefined || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
  const named = marks.some(({ terms }, i) => i !== at && terms?.some((t) => t.k === 'condition' && t.id === 'mobility'));
  const other = marks
    .slice(0, at)
    .some(({ terms }) =>
      terms?.some((t) => t.k === 'condition' && ['retained-cap', 'loose-cap', 'lump', 'swelling', 'mass'].includes(t.id)),
    );
  return !other && (named || before?.place?.codes !== undefined);
}
