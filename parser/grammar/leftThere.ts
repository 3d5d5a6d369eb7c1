/**
 * "Reduced one oh six and left two oh six alone", "rasped the uppers, lowers not touched", "reduced one oh six, two oh six next time": the work was
 * done at the one place, and not, or not yet, at the other. Said again with the verb of the work, so that neither takes the other's.
 */
import { nextVisit } from '../lexicon/governing.ts';
import { laterOn, leftHow, moreOfIt, notWorked, stillToDo, toBeDone, verbOfWork } from '../lexicon/plainWork.ts';
import { formAt, longestOf } from './forms.ts';
import { first } from './lists.ts';
import { endOfPart } from './saidPlainly.ts';
import { isGlue, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const how = longestOf([[leftHow, true as const]]);
const untouched = longestOf([[notWorked, true as const]]);
const later = longestOf([[[...nextVisit, ...laterOn], true as const]]);
const still = longestOf([[stillToDo, true as const]]);
const more = longestOf([[moreOfIt, true as const]]);
const small: ReadonlySet<string> = new Set(toBeDone);
const joins: ReadonlySet<string> = new Set(['and', 'but']);

/** The verb of work that was done before, and nothing of the kind behind it. */
export function verbBefore(tokens: readonly Token[]): string | undefined {
  const done = scan(tokens).marks.flatMap(({ terms }) =>
    (terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'procedure' && t.term.done ? [t.term.id] : [])),
  );
  return verbOfWork[done.at(-1) ?? ''];
}
/** Nothing but a place, or two; "one oh eight and left the lower left" is more. */
export function isPlace(tokens: readonly Token[]): boolean {
  if (tokens.some(({ t }, i) => t === 'today' || t === 'now' || (t === 'left' && joins.has(tokens[i - 1]?.t ?? '')))) return false;
  const marks = scan(tokens).marks.filter((mark) => !isGlue(mark));
  // "the ramp i've left": "left" is no side there.
  if (tokens.some(({ t }) => t === 'i' || t === 'we' || t === 'have')) return false;
  return marks.length > 0 && marks.every(({ place }) => place !== undefined && place.region === undefined);
}

/** A place told apart from what is said of it, and where that ends. */
export interface Told {
  readonly from: number;
  readonly to: number;
  readonly end: number;
  /** What is still to come off. */
  readonly amount?: readonly string[];
}
/** What was left there, of the words that begin here; undefined where it is not told so. */
export function leftAt(tokens: readonly Token[], at: number): Told | undefined {
  const part = endOfPart(tokens, at);
  // "only rasped one oh six, not two oh six"
  const not = tokens[at]?.t === 'not' ? at + (['off', 'on'].includes(tokens[at + 1]?.t ?? '') ? 2 : 1) : part;
  if (not < part && tokens.slice(0, at).some(({ t }) => t === 'only' || t === 'just') && isPlace(tokens.slice(not, part)))
    return { from: not, to: part, end: part };
  const leaves = tokens[at]?.t === 'left';
  const from = leaves ? at + 1 : at;
  // The end is looked for first: "the lower left alone" is a place and "alone".
  return first(tokens.slice(from + 1, part), (_, i) => {
    const to = from + 1 + i;
    const left = !leaves && tokens[to]?.t === 'left' ? to + 1 : to;
    const behind = leaves || left > to ? formAt(how, tokens, left) : formAt(untouched, tokens, to);
    const end = left + (behind?.words.length ?? 0);
    return behind && end <= part && isPlace(tokens.slice(from, to)) ? { from, to, end } : undefined;
  });
}
/** What is to be done there another day. */
export function laterAt(tokens: readonly Token[], at: number): Told | undefined {
  const part = endOfPart(tokens, at);
  let from = at;
  while (from < part && small.has(tokens[from]?.t ?? '')) from += 1;
  return first(tokens.slice(from + 1, part), (_, i) => {
    const to = from + 1 + i;
    const yet = formAt(still, tokens, to);
    if (yet && to + yet.words.length <= part && isPlace(tokens.slice(from, to))) return { from, to, end: to + yet.words.length };
    let when = to;
    while (small.has(tokens[when]?.t ?? '')) when += 1;
    const form = formAt(later, tokens, when);
    return form && when + form.words.length <= part && isPlace(tokens.slice(from, to)) ? { from, to, end: when } : undefined;
  });
}

/** "took two mil off one oh six, more next time": at the same place. */
function moreAt(tokens: readonly Token[], at: number): Told | undefined {
  let from = at;
  while (small.has(tokens[from]?.t ?? '')) from += 1;
  const form = formAt(more, tokens, from);
  let when = from + (form?.words.length ?? 0);
  while (form && small.has(tokens[when]?.t ?? '')) when += 1;
  // "half reduced, the rest next time": part of it was done, and that says it.
  const partly = tokens.slice(0, at).some(({ t }) => t.startsWith('half') || t.startsWith('part'));
  if (!form || partly || tokens[when - 1]?.ends === true || formAt(later, tokens, when) === undefined) return undefined;
  const amount = form.words[0] === 'another' && form.words[1] !== 'bit' ? ['by', form.words[1] as string, 'mil'] : [];
  return { from: when, to: when, end: when, amount };
}

function leftThere(tokens: readonly Token[]): readonly Token[] {
  return (
    first(tokens, ({ t }, i) => {
      const at = joins.has(t) ? i + 1 : i;
      // "reduced one oh six will do two oh six next time": also where the pause was taken for one that looks for a word.
      if (i < 2 || !(joins.has(t) || t === 'will' || tokens[i - 1]?.ends === true)) return undefined;
      const left = leftAt(tokens, at);
      const it = left ? undefined : moreAt(tokens, at);
      const told = left ?? it ?? laterAt(tokens, at);
      const verb = told && verbBefore(tokens.slice(0, i));
      if (told === undefined || verb === undefined) return undefined;
      const heard = [...tokens.slice(at, told.from), ...tokens.slice(told.to, told.end)].map(({ word }) => word);
      const put = (left ? ['did', 'not', verb] : ['will', verb, ...(it ? ['it', ...(it.amount ?? [])] : [])]).map((one): Token => ({
        t: one,
        word: heard[0] ?? (tokens[told.from] as Token).word,
        ...(heard.length > 0 ? { heard } : { carried: true as const }),
      }));
      const parted = [...tokens.slice(0, i - 1), { ...(tokens[i - 1] as Token), ends: true as const }];
      if (it) return [...parted, ...put, ...tokens.slice(told.end)];
      const place = tokens.slice(told.from, told.to);
      const { t: word, ...last } = place.at(-1) as Token;
      const closed = [...place.slice(0, -1), { ...last, t: word, ends: left ? tokens[told.end - 1]?.ends : undefined }];
      return [...parted, ...put, ...closed, ...tokens.slice(told.end)];
    }) ?? tokens
  );
}

export const leftTo: readonly Rewording[] = [
  { rule: leftThere, needs: ['left', 'not', 'untouched', 'next', 'another', 'later', 'back', 'wait', 'in', 'still', 'yet'] },
];
