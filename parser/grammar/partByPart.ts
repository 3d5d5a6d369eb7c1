/**
 * "Popped that off, five oh seven still got its cap on", "flushed it, took three mil off the step": what leans on the phrase before is of that,
 * and not of the next thing in its breath. Each part between pauses is read where the one before left off, as if a phrase of its own; where all
 * of them read in whole and the phrase at once says otherwise of what leans, or lost a part, the parts are what was said.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { Hypothesis } from '../contract/word.ts';
import { leftoversOf } from './accounts.ts';
import type { Parsed } from './build.ts';
import type { Carry } from './carry.ts';
import { hintsFor } from './hints.ts';
import { workNamed } from '../lexicon/breaths.ts';
import { isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

/** Reads words as a phrase of its own, with what stands before it; only the first has the silence of the phrase before it. */
export type ReadPart = (part: Hypothesis, before: Context, id: string, isFirst: boolean) => Parsed;
/** A phrase read otherwise than at once; undefined where that reading stands. */
export type InParts = (
  whole: Parsed,
  hypothesis: Hypothesis,
  tokens: readonly Token[],
  context: Context,
  readPart: ReadPart,
) => Parsed | undefined;
/** Reads the words from one to before another, the so-manieth part of its phrase. */
export const partReader =
  (hypothesis: Hypothesis, id: string, readPart: ReadPart) =>
  (from: number, to: number, before: Context, k: number): Parsed => {
    const words = hypothesis.words.slice(from, to);
    return readPart({ ...hypothesis, words, text: words.map(({ w }) => w).join(' ') }, before, `${id}~${k}`, from === 0);
  };
const inOrder: ReadonlySet<string> = new Set(['first', 'second', 'former', 'latter']);
/** So many parts are worth reading by themselves: the work stays linear. */
const MOST = 6;

/** @returns the reading part by part where it is what was said; undefined where the phrase at once stands */
export const partByPart: InParts = (whole, hypothesis, tokens, context, readPart) => {
  const cuts = tokens.flatMap(({ ends }, i) => (ends && i + 1 < tokens.length ? [i + 1] : []));
  if (cuts.length === 0 || cuts.length >= MOST || whole.commands.length > 0 || whole.header !== undefined) return undefined;
  const stretches = [0, ...cuts].map((from, i) => tokens.slice(from, cuts[i] ?? tokens.length));
  // What was taken back in this breath is of the whole of it, and "the first" of what was named in it.
  if (tokens.some(({ t }) => inOrder.has(t))) return undefined;
  if (whole.utterance.words.some(({ as }) => as === 'command') || !isWorthIt(stretches, whole, context)) return undefined;
  const parts = read(
    // Words that say no more ("just") may stand before the first that was kept.
    stretches.map((part, i) => (i === 0 ? 0 : (part[0] as Token).word)),
    stretches.map((part) => isLost(part, whole)),
    hypothesis,
    context,
    whole.id,
    readPart,
  );
  if (!parts || parts.length < 2 || !saysMore(parts, whole.items)) return undefined;
  return asOne(parts, whole, hypothesis.text, context);
};

/** A tooth, a row, a part of the mouth: "both" and a side alone say which of those that were named. */
const placed = (part: readonly Token[]): boolean =>
  scan(part).marks.some(
    ({ place }) => place !== undefined && (place.codes ?? place.positions ?? place.jaw ?? place.region ?? place.row) !== undefined,
  );
/** A first part that leans, work that leans in a later one, or a part that was lost. */
function isWorthIt(parts: readonly (readonly Token[])[], whole: Parsed, { items }: Context): boolean {
  const [first = [], ...others] = parts;
  if (items.length > 0 && !(placed(first) && scan(first).marks.some(isHead))) return true;
  if (parts.filter((part) => placed(part) && scan(part).marks.some(isWork)).length > 1) return true;
  if (others.some((part) => part.some(({ t }) => didWords.has(t)) && !placed(part))) return true;
  return parts.some((part) => isLost(part, whole));
}

const isWork = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && workNamed.includes(t.term.as)) === true;

/** None of its words is of an item, or asked about for what it means. */
const isLost = (part: readonly Token[], { utterance: { words }, doubts }: Parsed): boolean => {
  const unread = doubts.flatMap(({ doubt, id }) => (doubt === 'unread' ? [`doubt:${id}`] : []));
  return part.every(({ word }) => {
    const as = words[word]?.as ?? '';
    return !/^(?:item|doubt):/.test(as) || unread.includes(as);
  });
};

export interface Part {
  readonly from: number;
  readonly parsed: Parsed;
}
const open = ({ doubts }: Parsed): boolean => doubts.some(({ doubt }) => doubt !== 'irreversible');
/** Something was made, and of it nothing is asked, taken back or added to what stood. */
const reads = (parsed: Parsed): boolean =>
  parsed.items.length > 0 &&
  !open(parsed) &&
  parsed.commands.length === 0 &&
  parsed.header === undefined &&
  parsed.leftovers.length === 0 &&
  parsed.items.every(({ kind, revises }) => revises === undefined && ofTheMouth.has(kind));
const ofTheMouth: ReadonlySet<Item['kind']> = new Set(['finding', 'treatment', 'follow-up']);

/** Work, and what leans at the start: findings that follow each other are read together, as they are said. */
const isOfItsOwn = ({ items }: Parsed, isFirst: boolean): boolean =>
  items.some((item) => item.kind !== 'finding' || (isFirst && leans(item)));

/** The parts, each in whole; what only adds to the part before it ("four mil", "moderate") is read with it. */
function read(
  starts: readonly number[],
  lost: readonly boolean[],
  hypothesis: Hypothesis,
  context: Context,
  id: string,
  readPart: ReadPart,
): readonly Part[] | undefined {
  const { words } = hypothesis;
  const parts: Part[] = [];
  let before = context;
  const readFrom = partReader(hypothesis, id, readPart);
  const cut = (from: number, to: number, there: Context): Parsed => readFrom(from, to, there, parts.length);
  const end = (k: number): number => starts[k] ?? words.length;
  for (let k = 0; k < starts.length;) {
    const from = end(k);
    let next = k + 1;
    let parsed = cut(from, end(next), before);
    while (next < starts.length) {
      const ahead = reads(parsed) ? cut(end(next), end(next + 1), behind(before, parsed)) : undefined;
      if (
        ahead &&
        reads(ahead) &&
        (lost.slice(k, next + 1).some(Boolean) || isOfItsOwn(parsed, parts.length === 0) || isOfItsOwn(ahead, false))
      )
        break;
      next += 1;
      if (from === 0 && next === starts.length) return undefined;
      parsed = cut(from, end(next), before);
    }
    if (!reads(parsed)) return undefined;
    parts.push({ from, parsed });
    before = behind(before, parsed);
    k = next;
  }
  return parts;
}

export const behind = (before: Context, { items, carry }: Parsed): Context => ({ ...before, items: [...before.items, ...items], carry });

const spots = (place: Place | null | undefined): readonly string[] =>
  !place
    ? []
    : 'teeth' in place
      ? place.teeth
      : 'spaces' in place
        ? place.spaces.map((space) => space.join('/'))
        : 'rows' in place
          ? place.rows
          : [`${place.region} ${place.side ?? ''}`];
const placeOf = (item: Item): Place | null | undefined => ('place' in item ? item.place : undefined);
const nameOf = (item: Item): string =>
  [
    item.kind,
    item.kind === 'finding'
      ? `${item.condition} ${item.presence}`
      : item.kind === 'treatment'
        ? item.procedure
        : item.kind === 'follow-up'
          ? item.action
          : '',
  ].join(' ');
const leans = ({ how }: Item): boolean => Object.values(how).includes('carried');
/** How it came to be, and how it was worded, are no part of what it says. */
const unsaid: ReadonlySet<string> = new Set(['id', 'how', 'evidence', 'place', 'severitySaid', 'amountSaid']);
export const holds = (whole: readonly Item[], one: Item): boolean =>
  whole.some(
    (item) =>
      nameOf(item) === nameOf(one) &&
      spots(placeOf(one)).every((spot) => spots(placeOf(item)).includes(spot)) &&
      Object.entries(one).every(
        ([key, value]) => unsaid.has(key) || JSON.stringify((item as Record<string, unknown>)[key]) === JSON.stringify(value),
      ),
  );
const same = (whole: readonly Item[], one: Item): boolean => whole.some((item) => holds([item], one) && holds([one], item));

/** What leans is somewhere else by the phrase at once, or a thing that was done or found elsewhere is not in it. */
function saysMore(parts: readonly Part[], whole: readonly Item[]): boolean {
  const items = parts.flatMap(({ parsed }) => parsed.items);
  if (saidTwice(items)) return false;
  const [first, ...later] = parts.map(({ parsed }) => parsed.items);
  const behind = later.flat();
  const moved = (first ?? []).filter((item) => leans(item) && !holds(whole, item));
  // "extracted it, root tip left behind": the second is of the first, whatever it is called alone.
  const ofTheSame = behind.some(
    (item) => leans(item) && (first ?? []).some((one) => JSON.stringify(placeOf(one)) === JSON.stringify(placeOf(item))),
  );
  if (moved.length > 0 && !ofTheSame) return true;
  if (behind.some((item) => item.kind !== 'finding' && leans(item) && !holds(whole, item))) return true;
  // "one oh six to be monitored, four oh eight needs an x ray": each has its own, and at once one of them took both.
  const told = (item: Item): string => `${nameOf(item)} ${'state' in item ? (item.state ?? '') : ''}`;
  const names = new Set(whole.map(told));
  const own = items.every((item) => !leans(item) && item.kind !== 'finding' && spots(placeOf(item)).length > 0);
  if (own && items.some((item) => !names.has(told(item)))) return true;
  const lost = items.filter((item) => !same(whole, item));
  const at = new Set(whole.flatMap((item) => spots(placeOf(item))));
  return (
    whole.every((item) => same(items, item)) &&
    lost.length > 0 &&
    lost.every((item) =>
      item.kind === 'finding'
        ? spots(placeOf(item)).length > 0 && !spots(placeOf(item)).some((spot) => at.has(spot))
        : item.kind !== 'treatment' || item.state !== 'not-done',
    )
  );
}
/** One thing of one place: the second only says more of it. */
const saidTwice = (items: readonly Item[]): boolean =>
  items.some((item, i) =>
    items
      .slice(0, i)
      .some(
        (other) =>
          bareName(item) === bareName(other) &&
          (spots(placeOf(item)).length === 0 ||
            spots(placeOf(other)).length === 0 ||
            spots(placeOf(item)).some((spot) => spots(placeOf(other)).includes(spot))),
      ),
  );
const bareName = (item: Item): string => nameOf(item).split(' ').slice(0, 2).join(' ');

/** The parts as the one phrase that they are: ids and words counted through. */
export function asOne(parts: readonly Part[], whole: Parsed, text: string, context: Context): Parsed {
  const { id } = whole;
  let items = 0;
  let doubts = 0;
  const ids = new Map(
    parts.flatMap(({ parsed }) => [
      ...parsed.items.map((item) => [item.id, `${id}/i${(items += 1)}`] as const),
      ...parsed.doubts.map((doubt) => [doubt.id, `${id}/d${(doubts += 1)}`] as const),
    ]),
  );
  const named = parts.map(({ from, parsed }, k): Part => {
    const said = JSON.stringify(parsed).replace(/"(item:|doubt:)?([^"]*~\d+\/[id]\d+)"/g, (all, as: string | undefined, one: string) =>
      ids.has(one) ? `"${as ?? ''}${ids.get(one)}"` : all,
    );
    return { from, parsed: JSON.parse(said.replaceAll(`"${id}~${k}"`, JSON.stringify(id))) as Parsed };
  });
  const made = named.flatMap(({ from, parsed }) =>
    parsed.items.map((item) => ({ ...item, evidence: { ...item.evidence, words: item.evidence.words.map((word) => word + from) } })),
  );
  const accounts = named.flatMap(({ parsed }) => parsed.utterance.words);
  return {
    ...whole,
    text,
    utterance: { ...whole.utterance, words: accounts },
    items: made,
    doubts: named.flatMap(({ parsed }) => parsed.doubts),
    hints: hintsFor(made, context, id),
    settles: named.flatMap(({ parsed }) => parsed.settles),
    leftovers: leftoversOf(accounts),
    carry: { ...(named.at(-1)?.parsed.carry as Carry), lastItems: made.map((item) => item.id) },
    trace: {
      steps: named.reduce((sum, { parsed }) => sum + parsed.trace.steps, whole.trace.steps),
      made: named.flatMap(({ parsed }) => parsed.trace.made),
    },
  };
}
