/**
 * "Soak his hay, vet for that tooth and I'll be back in the spring": several things that come next in one breath, each by its own part; and
 * "vet for that tooth" alone. Parts end at a pause, or before "and" where both sides say what comes next.
 */
import {
  advised,
  betterFed,
  daily,
  feedAlone,
  feedOnly,
  toldBare,
  toldOfIt,
  toldPassive,
  toldThem,
  wantedSo,
  tellsNext,
  advisedWords,
} from '../lexicon/advising.ts';
import { dayIn, idleNext, joining, nextForms, oneNextWords, wordsOfNext, type NextForm } from '../lexicon/nextThings.ts';
import { afterIn, followUps, followUpWords, leantOn, placeOf, pointedTo } from './followUps.ts';
import { findingsIn } from './has.ts';
import { first } from './lists.ts';
import type { Made } from './made.ts';
import { partsOf } from './pauses.ts';
import { adviceIn, backThen, restUntil } from './saidNext.ts';
import type { Mark } from './scan.ts';
import { ownWords, type Token } from './tokens.ts';
import type { Before, WorkRule } from './work.ts';

/** Without one of these nothing comes next. */
export const nextWords: readonly string[] = [...followUpWords, ...advisedWords, ...tellsNext];
const wakesOne: ReadonlySet<string> = new Set(oneNextWords);
const wakesAny: ReadonlySet<string> = new Set([...nextWords, ...oneNextWords]);
const holds = (tokens: readonly Token[], words: ReadonlySet<string>): boolean => tokens.some(({ t }) => words.has(t));

const asked = [advised, wantedSo, betterFed, toldThem, daily, toldOfIt, toldPassive, toldBare, feedOnly, feedAlone];
/** "another month", "on the tenth" too. */
function whenIn(tokens: readonly Token[], text: string): ReturnType<typeof afterIn> {
  if (/\btwice a year\b/.test(text)) return { said: 'twice a year' };
  const unit = /\b(?:another|every) (day|week|month|year)\b/.exec(text)?.[1] as 'day' | undefined;
  const day = dayIn.exec(text)?.[0];
  return afterIn(tokens) ?? (unit ? { value: 1, unit } : day !== undefined ? { said: day } : undefined);
}
const tabled =
  (forms: readonly NextForm[]): WorkRule =>
  (marks, tokens, { carry }) => {
    const text = ownWords(tokens).join(' ');
    const asks = new Map(Object.entries(wordsOfNext).map(([action, words]) => [action, holds(tokens, words)]));
    const hit = first(forms, ({ action, form, pointing, state }) => {
      if (asks.get(action) === false) return undefined;
      const match = form.exec(text);
      return match === null ? undefined : { action, pointing, state, text: match.groups?.['text'] };
    });
    if (hit === undefined) return [];
    const after = hit.action === 'advise-owner' || hit.action === 'send-report' ? undefined : whenIn(tokens, text);
    if (hit.action === 'recheck' && after === undefined) return [];
    const { place } = hit.action === 'advise-owner' ? { place: undefined } : placeOf(marks);
    return leantOn(hit.pointing ? carry.place : pointedTo(hit.action, text, carry), marks, {
      kind: 'follow-up',
      action: hit.action,
      ...(hit.state ? { state: hit.state } : {}),
      ...(after ? { after } : {}),
      ...(place ? { place } : {}),
      ...(hit.text !== undefined ? { text: hit.text } : {}),
    });
  };
/** What says little by itself: "no hay", "work from Monday". */
const weak = 'one of several things';
const anyNext = tabled(nextForms);
const alone = tabled(nextForms.filter(({ beside, whole }) => beside !== true && whole !== true));
const besideOthers: WorkRule = (...said) =>
  anyNext(...said).map((one) => (one.body?.kind === 'follow-up' && one.body.action === 'advise-owner' ? { ...one, rules: [weak] } : one));

const rules: readonly WorkRule[] = [
  restUntil,
  backThen,
  alone,
  tabled(nextForms.filter(({ early }) => early === true)),
  followUps,
  (marks, tokens) => adviceIn(marks, tokens, asked),
  besideOthers,
];

interface Part {
  readonly from: number;
  readonly to: number;
}
const onlyNext = (made: readonly Made[]): boolean => made.length > 0 && made.every(({ body }) => body?.kind === 'follow-up');

function inPart({ from, to }: Part, marks: readonly Mark[], tokens: readonly Token[], before: Before): readonly Made[] {
  const at = marks.flatMap((mark, m) => (mark.from >= from && mark.to <= to ? [m] : []));
  const own = at.map((m): Mark => ({ ...(marks[m] as Mark), from: (marks[m] as Mark).from - from, to: (marks[m] as Mark).to - from }));
  const said = tokens.slice(from, to);
  const made = first(rules, (rule) => {
    const one = rule(own, said, before);
    return onlyNext(one) ? one : undefined;
  });
  // All that it says is what comes next.
  return (made ?? []).map((one): Made => ({ ...one, marks: at }));
}

type FollowUp = Extract<Made['body'], { kind: 'follow-up' }>;
/** One thing all the same: "about eight weeks and recheck two ten". */
const ofOne = (left: readonly Made[], right: readonly Made[]): boolean => {
  const [a, b] = [left.at(-1)?.body, right[0]?.body] as readonly [FollowUp, FollowUp];
  return (
    (a.action === 'recheck' && b.action === 'recheck' && (a.after === undefined || b.after === undefined)) ||
    // "told the groom to flush it and pick out the food": one piece of advice.
    (a.action === 'advise-owner' && b.action === 'advise-owner')
  );
};

/** The part as one thing, or as two that "and" joins. */
function parted(part: Part, marks: readonly Mark[], tokens: readonly Token[], before: Before): readonly Made[] {
  for (let at = part.from + 1; at < part.to - 1; at += 1) {
    if (!joining.has(tokens[at]?.t ?? '')) continue;
    const later = inPart({ from: at + 1, to: part.to }, marks, tokens, before);
    const right = later.length > 0 ? later : parted({ from: at + 1, to: part.to }, marks, tokens, before);
    const left = right.length > 0 ? inPart({ from: part.from, to: at }, marks, tokens, before) : [];
    if (left.length > 0 && !ofOne(left, right)) return [...left, ...right];
  }
  return inPart(part, marks, tokens, before);
}

/** Whether a part names what was found or done: it is no talk. */
const ofTheMouth = (marks: readonly Mark[], { from, to }: Part): boolean =>
  marks.some(
    (mark) =>
      mark.from >= from &&
      mark.to <= to &&
      (mark.place !== undefined || mark.terms?.some((t) => t.k === 'condition' || t.k === 'work') === true),
  );

/** Over the whole breath, before it is parted by what each thing opens. */
export const severalNext: WorkRule = (marks, tokens, before) => {
  const parts = partsOf(tokens);
  if ((parts.length < 2 && !holds(tokens, joining)) || !holds(tokens, wakesAny)) return [];
  let from = 0;
  const made: Made[] = [];
  let idle = 0;
  for (const own of parts) {
    const part = { from, to: from + own.length };
    from = part.to;
    const text = ownWords(own).join(' ');
    const one = parted(part, marks, tokens, before);
    const says = one.length > 0 || !idleNext.test(`${text} `);
    if (!says) idle += 1;
    if (one.length === 0 && says && ofTheMouth(marks, part)) return [];
    made.push(...one);
  }
  // "Nice horse, back in the spring": one thing, and praise.
  const [only] = made;
  if (
    made.length === 1 &&
    only?.body?.kind === 'follow-up' &&
    only.body.action === 'recheck' &&
    only.body.after &&
    idle > 0 &&
    idle === parts.length - 1
  )
    return made;
  return made.length >= (made.every(({ rules: [rule] }) => rule === weak) ? 3 : 2) ? made : [];
};

const askedOf: ReadonlySet<string> = new Set([
  'vet',
  'vets',
  'hospital',
  'clinic',
  'specialist',
  'surgeon',
  'university',
  'refer',
  'referral',
]);
/** "loose tooth, to be seen by the vet" tells a finding; "vet for the swelling" says why. */
function foundFirst(marks: readonly Mark[], tokens: readonly Token[]): boolean {
  const who = tokens.findIndex(({ t }) => askedOf.has(t));
  return findingsIn(marks.filter(({ from }) => who < 0 || from < who));
}
const ofWhole = tabled(nextForms.filter(({ whole }) => whole === true));
/** Of the whole breath: what it is for is no finding. */
export const wholeNext: WorkRule = (marks, tokens, before) => (holds(tokens, wakesOne) ? ofWhole(marks, tokens, before) : []);
/** Of one thing, where no other rule knows it. */
export const oneNext: WorkRule = (marks, tokens, before) =>
  !holds(tokens, wakesOne) || foundFirst(marks, tokens) ? [] : alone(marks, tokens, before);
