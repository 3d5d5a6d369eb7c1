/** "Nothing", "good", "clean", "fine": that nothing was found, or how something else is. */
import { describingSay } from '../../lexicon/modifiers.ts';
import { prepositions } from '../groups.ts';
import type { Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';
import { isHeadMark, type Rule, workDone } from './phrase.ts';

const nothingFound = { condition: { id: 'abnormality', strength: 'absentSay', plural: false } } as const;
/** Findings that are a tooth of their own. */
const ownTeeth: ReadonlySet<string> = new Set(['wolf-tooth', 'blind-wolf-tooth', 'canine-present']);

/** "two oh six hook, two oh seven nothing": nothing was found there; "hook two oh six, nothing the other side" is no hook there. */
export const nothingListed: Rule = ({ marks, tokens, i, mark, terms }) =>
  terms.some((t) => t.k === 'cue' && t.cue.means === 'absent') &&
  tokens[mark.from]?.t === 'nothing' &&
  mark.to - mark.from === 1 &&
  marks[i - 1]?.place &&
  (marks[i + 1] === undefined || marks[i + 1]?.place) &&
  !(marks[i + 1] && tokens[mark.from - 1]?.ends && !tokens[mark.to - 1]?.ends)
    ? nothingFound
    : undefined;

/** "nothing on the right cheek, two ulcers on the left": a place of its own, and a finding with another behind it. */
export const nothingThere: Rule = ({ marks, tokens, i }) => (nothingBeforeFinding(marks, tokens, i) ? nothingFound : undefined);

const nothingOn = /\bnothing (?:on|in|at|around|with) (?:(?:the|his|her|both|all|four|upper|lower|top|bottom|left|right) )*$/;
/** "nothing on the lower canines": nothing was found there; no word of there being none. */
export const nothingOnThem: Rule = ({ marks, tokens, i, mark, terms }) => {
  const theirs = (one: Mark | undefined): boolean =>
    one?.place?.positions?.includes(4) === true &&
    nothingOn.test(
      `${tokens
        .slice(Math.max(0, one.from - 6), one.from)
        .map(({ t }) => t)
        .join(' ')} `,
    );
  if (theirs(mark)) return 'place';
  return terms.some((t) => t.k === 'cue') && tokens[mark.from]?.t === 'nothing' && marks.slice(i + 1, i + 6).some(theirs)
    ? nothingFound
    : undefined;
};

/** "three eleven", "nothing": of the place that waits. */
export const nothingAtAll: Rule = ({ marks, tokens, i, mark, anyPlace }) =>
  anyPlace &&
  tokens[mark.from]?.t === 'nothing' &&
  mark.to - mark.from === 1 &&
  marks.every((one, at) => at === i || (one.place === undefined && one.terms?.every((t) => t.k === 'glue' || t.k === 'filler')))
    ? nothingFound
    : undefined;

/** "a blind wolf tooth top right and a normal one on the left": one of what was named, and there. */
export const anotherOfThem: Rule = ({ tokens, mark, condition, heads }) => {
  if (condition?.id !== 'abnormality' || condition.strength !== 'absentSay' || tokens[mark.to]?.t !== 'one') return undefined;
  const named = heads.findLast((head) => ownTeeth.has(head.condition?.id ?? ''))?.condition;
  if (named === undefined || !['a', 'an', 'another'].includes(tokens[mark.from - 1]?.t ?? '')) return undefined;
  return { condition: { id: named.id === 'blind-wolf-tooth' ? 'wolf-tooth' : named.id, strength: 'say', plural: false } };
};

/**
 * "a good hook", "clean break", "fine crack": how the finding is, not that nothing was found; so is "a lump on the palate, smooth sort of thing".
 * "Buffed them smooth", "flushed it clean": how the work left it.
 */
export const howItIs: Rule = ({ marks, tokens, i, condition, heads }) =>
  condition?.id === 'abnormality' &&
  condition.strength === 'absentSay' &&
  (describesNext(marks, tokens, i) ||
    leftSo(marks, tokens, i) ||
    doneWell(marks, tokens, i) ||
    (heads.some((head) => head.condition !== undefined && head.condition.strength !== 'absentSay') && looksSo(marks, tokens, i)))
    ? 'glue'
    : undefined;

function nothingBeforeFinding(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (tokens[from]?.t !== 'nothing' || to - from !== 1 || !prepositions.has(tokens[to]?.t ?? '') || marks.slice(0, at).some(isHeadMark))
    return false;
  const place = marks.findIndex(
    (mark, i) => i > at && !(mark.place === undefined && (mark.terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler')),
  );
  const head = marks.findIndex((mark, i) => i > place && isHeadMark(mark));
  return (
    place > 0 &&
    marks[place]?.place !== undefined &&
    !isHeadMark(marks[place] as Mark) &&
    head > place &&
    marks.slice(head).some((mark) => mark.place !== undefined)
  );
}

const describing = new Set(describingSay);
const leads = new Set([
  'a',
  'an',
  'the',
  'that',
  'this',
  'pretty',
  'quite',
  'really',
  'very',
  'fairly',
  'rather',
  'some',
  'one',
  'nice',
  'has',
  'got',
]);
/** Such a word stands right before the name of a finding, led by an article, a verb of having or nothing at all; a crack is clean or fine wherever it stands. */
function describesNext(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const word = tokens[from]?.t ?? '';
  if (to - from !== 1 || !describing.has(word)) return false;
  // "good big hook", "good sedation": of what comes right behind it.
  if (
    !tokens[from]?.ends &&
    marks[at + 1]?.terms?.some(
      (t) => t.k === 'severity' || t.k === 'severityKept' || (t.k === 'work' && ['sedate', 'agent', 'topUp'].includes(t.term.as)),
    )
  )
    return true;
  const next = marks
    .slice(at + 1)
    .find(
      (mark) =>
        mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => ['condition', 'cue', 'stop', 'work'].includes(t.k)),
    );
  // "the incisors are good and tight"
  if (word === 'good' && tokens[to]?.t === 'and' && marks[at + 2]?.terms?.some((t) => t.k === 'condition')) return true;
  // "a good rinse": how it was done.
  if (next?.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') && leads.has(tokens[from - 1]?.t ?? '')) return true;
  const named = next?.place === undefined ? next?.terms?.find((t) => t.k === 'condition' && t.id !== 'abnormality') : undefined;
  if (named?.k !== 'condition' || named.strength === 'absentSay') return false;
  const before = marks
    .slice(0, at)
    .some((mark) => mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => t.k === 'condition'));
  return leads.has(tokens[from - 1]?.t ?? '') || !before || (named.id === 'fracture' && (word === 'clean' || word === 'fine'));
}

const howMuch: ReadonlySet<string> = new Set([
  'a',
  'an',
  'nice',
  'quite',
  'fairly',
  'pretty',
  'very',
  'all',
  'but',
  'it',
  'is',
  'looks',
  'feels',
]);
const ofThing =
  /^(?:(?:and|looking|sort of|kind of|a|round|little|wee|hard|soft|flat|firm|enough)(?: |$))*(?:(?:thing|one|edges?|lines?|surface|lump|break|shape|outline|margins?|sides)(?: |$))?(?:(?:to|on|about) it)?$/;
/** "..., smooth sort of thing", "..., clean edge to it": between two pauses such a word and a thing. */
function looksSo(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (to - from !== 1 || !describing.has(tokens[from]?.t ?? '') || tokens[from]?.ends === true) return false;
  let begin = from;
  while (begin > 0 && tokens[begin - 1]?.ends !== true && howMuch.has(tokens[begin - 1]?.t ?? '')) begin -= 1;
  const end = tokens.findIndex(({ ends }, i) => i >= to && ends === true);
  const rest = tokens.slice(to, end < 0 ? tokens.length : end + 1).map(({ t }) => t);
  return begin > 0 && tokens[begin - 1]?.ends === true && rest.length > 0 && ofThing.test(rest.join(' '));
}

const objects = new Set(['it', 'them', 'that', 'those', 'these', 'him', 'her']);
/** One word right behind a verb of work and its pronoun. */
function leftSo(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const pronoun = objects.has(tokens[from - 1]?.t ?? '') && tokens[from - 1]?.ends !== true;
  const verb = marks.find((mark) => mark.from < from && mark.to >= from - (pronoun ? 1 : 0) && workDone(mark));
  return to - from === 1 && verb !== undefined && tokens[verb.to - 1]?.ends !== true;
}

const well: ReadonlySet<string> = new Set(['good', 'grand', 'great', 'lovely']);
const besideWork: ReadonlySet<string> = new Set([
  ...objects,
  'out',
  'up',
  'down',
  'off',
  'back',
  'through',
  'all',
  'round',
  'both',
  'pretty',
  'real',
  'really',
  'right',
  'very',
]);
/** "rinsed him out good", "floated her up real good": how well the work was done, in one breath with it and last. */
function doneWell(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (!well.has(tokens[to - 1]?.t ?? '') || (to < tokens.length && tokens[to - 1]?.ends !== true)) return false;
  const verb = marks.findLastIndex((mark, i) => i < at && workDone(mark));
  return (
    verb >= 0 &&
    tokens.slice(marks[verb]?.from, from).every(({ ends }) => ends !== true) &&
    tokens.slice(marks[verb]?.to, from).every(({ t }) => besideWork.has(t))
  );
}
