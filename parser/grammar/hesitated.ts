/**
 * "Crepitus in the left jaw, joint", "recheck two ten, in three months": who looks for the next word pauses as well, and says one thing all the same.
 * Where words beside a pause came to nothing, and without the pause all words on both its sides read as of one thing, the pause is left out.
 */
import { attaching, beginsAnew, finite, hedging, whichOf } from '../lexicon/endings.ts';
import { approving, besideTalk, praising } from '../lexicon/talkBeside.ts';
import type { Item } from '../contract/item.ts';
import type { Hypothesis } from '../contract/word.ts';
import type { Parsed } from './build.ts';
import { withoutPauses } from './ending.ts';
import { isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

/** So many pauses are tried without: the work stays linear. */
const MOST = 3;
const anew: ReadonlySet<string> = new Set(beginsAnew);
const verbs: ReadonlySet<string> = new Set(finite);
const hedges: ReadonlySet<string> = new Set(hedging);
const sides: ReadonlySet<string> = new Set(whichOf);
const attached: ReadonlySet<string> = new Set(attaching);
/** Two parts of the phrase and the pause between them, in words. */
type Stretch = readonly [from: number, cut: number, to: number];

/**
 * @param readAs reads the phrase with other words for its own
 * @returns the reading without a pause, the words as they were heard; undefined where all pauses stand
 */
export function hesitated(
  said: Parsed,
  hypothesis: Hypothesis,
  tokens: readonly Token[],
  readAs: (words: Hypothesis) => Parsed,
): Parsed | undefined {
  if (said.commands.length > 0) return undefined;
  const cuts = tokens.flatMap(({ ends, word }, i) => {
    const next = tokens[i + 1]?.word;
    return ends && next !== undefined && next > word ? [word + 1] : [];
  });
  const bounds = [0, ...cuts, hypothesis.words.length];
  for (const [k, cut] of cuts.slice(0, MOST).entries()) {
    const stretch: Stretch = [bounds[k] as number, cut, bounds[k + 2] as number];
    const [split, alone] = [splits(tokens, stretch), standsAlone(tokens, stretch)];
    const sure = split || (!alone && attaches(tokens, stretch));
    if (!sure && (alone || lostIn(said, stretch) === 0)) continue;
    const joined = readAs(withoutPauses(hypothesis, (at) => at === cut - 1));
    const left = lostIn(joined, stretch);
    if (!isOneThing(joined, said, stretch) || (left > 0 && !(sure && left < lostIn(said, stretch)))) continue;
    // Half a name was read as something else; what only says when or where is nothing by itself.
    const may = (words: readonly number[]): boolean =>
      split ? words.includes(cut - 1) || words.includes(cut) : sure && words.every((word) => word >= cut && word < stretch[2]);
    if (stillSaid(joined, said, may)) return inWordsHeard(joined, hypothesis);
  }
  return undefined;
}

/** Words that became nothing, a question, or something that is asked about. */
function lostIn(said: Parsed, [from, , to]: Stretch): number {
  const asked = askedOf(said);
  return said.utterance.words
    .slice(from, to)
    .filter(({ as }) => as === 'leftover' || as.startsWith('doubt:') || (as.startsWith('item:') && asked.has(as.slice('item:'.length))))
    .length;
}
/** Items that are asked about; every extraction is. */
const askedOf = ({ doubts }: Parsed): ReadonlySet<string> =>
  new Set(doubts.flatMap(({ doubt, item }) => (item !== undefined && doubt !== 'irreversible' ? [item] : [])));

/** "good, upper left now", "..., the right one is worse": each side of the pause is said for itself. */
function standsAlone(tokens: readonly Token[], [from, cut, to]: Stretch): boolean {
  const within = (a: number, b: number): readonly string[] => tokens.filter(({ word }) => word >= a && word < b).map(({ t }) => t);
  const [before, behind] = [within(from, cut), within(cut, to)];
  // "..., sagittal possibly": what may be so is what the pause parts off.
  if (anew.has(behind[0] ?? '') || hedges.has(behind.at(-1) ?? '') || behind.slice(1).some((t) => verbs.has(t))) return true;
  return [before, behind].some((part) => [approving, praising, besideTalk].some((talk) => talk.test(part.join(' '))));
}

/** The pause is inside a name of the lexicon: "jaw, joint". */
function splits(tokens: readonly Token[], [from, cut, to]: Stretch): boolean {
  const both = tokens.filter(({ word }) => word >= from && word < to);
  const at = both.findIndex(({ word }) => word >= cut);
  // "..., left masseter a bit tight": whose side it is, the pause says.
  if (both.slice(at - 1, at + 1).some(({ t }) => sides.has(t))) return false;
  const joined = scan(both.map((token, i) => (i === at - 1 ? { ...token, ends: undefined } : token))).marks;
  return joined.some((mark) => mark.from < at && mark.to > at && isNamed(mark));
}

/** Behind the pause stands where, how long or with what, and nothing by itself: "in three months". */
function attaches(tokens: readonly Token[], [, cut, to]: Stretch): boolean {
  const behind = tokens.filter(({ word }) => word >= cut && word < to);
  return attached.has(behind[0]?.t ?? '') && !scan(behind).marks.some((mark) => isHead(mark));
}
const isNamed = ({ terms, place }: Mark): boolean => place?.region !== undefined || terms?.some(({ k }) => k === 'condition') === true;

/** One thing took words of both sides, and nothing more is asked. */
function isOneThing(joined: Parsed, said: Parsed, stretch: Stretch): boolean {
  const [from, cut, to] = stretch;
  const over = joined.items.some(
    ({ evidence: { words } }) => words.some((w) => w >= from && w < cut) && words.some((w) => w >= cut && w < to),
  );
  return over && joined.commands.length === 0 && joined.doubts.length <= said.doubts.length;
}

/** What was read of either side without a question still is, but for what `mayGo`, by its words. */
function stillSaid(joined: Parsed, said: Parsed, mayGo: (words: readonly number[]) => boolean): boolean {
  const asked = askedOf(said);
  return said.items.every((item) => asked.has(item.id) || mayGo(item.evidence.words) || joined.items.some((other) => isOf(other, item)));
}

/** How it came to be is no part of what it says. */
const unsaid: ReadonlySet<string> = new Set(['id', 'how', 'evidence', 'severitySaid', 'amountSaid']);
/** All that the one says, the other says too. */
const isOf = (other: Item, one: Item): boolean =>
  Object.entries(one).every(
    ([key, value]) => unsaid.has(key) || JSON.stringify((other as Record<string, unknown>)[key]) === JSON.stringify(value),
  );

/** The reading, with its words as they were heard. */
export function inWordsHeard(joined: Parsed, { words, text }: Hypothesis): Parsed {
  const heard = joined.utterance.words.map((one, i) => ({ ...one, w: words[i]?.w ?? one.w }));
  return { ...joined, text, utterance: { ...joined.utterance, text, words: heard } };
}
