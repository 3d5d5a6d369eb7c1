/**
 * What is set against what was said, in a phrase of its own: "left, not right", "not a hook, a ramp", "I said four, I meant three",
 * "wrong side", "the seven, I mean". Where the one is what the last item holds, the other is read as its correction.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { standing, type Carry } from './carry.ts';
import { lies, type Reached } from './reachBack.ts';
import { isHead, scan, type Mark } from './scan.ts';
import { positionOf } from './teeth.ts';
import { expand } from './template.ts';
import { isGap } from './sameAgain.ts';
import type { Token } from './tokens.ts';

/** How many words such a phrase has at most. */
const LONGEST = 16;
const leads: ReadonlySet<string> = new Set(['so', 'well', 'oh', 'okay', 'ok', 'no', 'sorry', 'actually', 'and', 'yeah', 'wait']);
/** Small words around what is told, which tell nothing. */
const around: ReadonlySet<string> = new Set([
  ...['it', 'is', 'that', "that's", 'was', 'the', 'a', 'an', 'on', 'in', 'at', 'but', 'and', 'should', 'be', 'have', 'been', 'side'],
  ...['i', 'said', 'meant', 'mean', 'sorry', 'no', 'side', 'actually', 'really', 'though', 'tooth', 'instead'],
]);
/** Words of which one stands in every such phrase. */
const turning: ReadonlySet<string> = new Set([
  'not',
  'meant',
  'mean',
  'wrong',
  'change',
  'wait',
  'hang',
  'hold',
  'sorry',
  'more',
  'no',
  'there',
  'should',
  'rather',
  'than',
  'instead',
  'call',
  'move',
  'say',
  'said',
  'put',
  'actually',
  'really',
]);
/** Stands in the place of words that have done their work. */
const idle = 'well';

interface Told {
  readonly mark: Mark;
  readonly from: number;
  readonly to: number;
}
interface Turn {
  /** What was wrong, where it is said. */
  readonly wrong?: Told;
  readonly right: Told;
}

/** One thing told between two words, and nothing else; undefined where more or less is. */
function oneTold(tokens: readonly Token[], start: number, stop: number): Told | undefined {
  let [from, to] = [start, stop];
  while (from < to && around.has(tokens[from]?.t ?? '')) from += 1;
  while (to > from && around.has(tokens[to - 1]?.t ?? '')) to -= 1;
  const [mark, ...more] = scan(tokens.slice(from, to)).marks.filter(
    ({ terms }) => !(terms?.length && terms.every(({ k }) => k === 'glue' || k === 'filler')),
  );
  const tells =
    mark !== undefined &&
    ((mark.place ?? mark.measure ?? mark.grade ?? mark.number) !== undefined ||
      mark.terms?.some(({ k }) => k === 'severity' || k === 'surface' || k === 'condition'));
  return mark && tells && more.length === 0 ? { mark, from, to } : undefined;
}

const spacesOf = (item: Item): readonly string[] =>
  'place' in item && item.place && 'spaces' in item.place ? item.place.spaces.flat() : [];
const teethOf = (item: Item): readonly string[] =>
  'place' in item && item.place && 'teeth' in item.place ? item.place.teeth : spacesOf(item);
const isPosition = (item: Item, number: Mark['number']): boolean => {
  const teeth = teethOf(item);
  return teeth.length > 0 && teeth.every((tooth) => positionOf(tooth) === number);
};
/** Whether an item holds what was told. */
function holds(item: Item, { mark }: Told): boolean {
  if (mark.place) return 'place' in item && item.place ? lies(item.place, mark.place) : false;
  const sizes = item.kind === 'finding' ? (item.measures ?? []).map(({ value }) => value) : [];
  if (mark.number !== undefined) return sizes.includes(mark.number as number) || isPosition(item, mark.number);
  if (item.kind !== 'finding') return false;
  if (mark.measure) return sizes.some((value) => JSON.stringify(value) === JSON.stringify(mark.measure?.value));
  return (mark.terms ?? []).some(
    (t) =>
      (t.k === 'severity' && t.id === item.severity) ||
      (t.k === 'surface' && item.surfaces?.includes(t.id)) ||
      (t.k === 'condition' && t.id === item.condition),
  );
}
/** The kind of what is told: only like is set against like. */
const kindOf = ({ mark }: Told): string =>
  mark.place ? 'place' : mark.measure || mark.number !== undefined ? 'figure' : isHead(mark) ? 'condition' : (mark.terms?.[0]?.k ?? '');
const alike = (a: Told, b: Told): boolean =>
  kindOf(a) === kindOf(b) ||
  (a.mark.number !== undefined && b.mark.place !== undefined) ||
  (a.mark.place !== undefined && b.mark.number !== undefined);

/** Two things told one behind the other, the first of which stands in the item: parted by a pause, else as far behind as may be. */
function twoTold(tokens: readonly Token[], from: number, to: number, item: Item): Turn | undefined {
  const cuts = Array.from({ length: Math.max(0, to - from - 1) }, (_, k) => to - 1 - k);
  const paused = cuts.filter((cut) => tokens[cut - 1]?.ends === true);
  // "not on the upper elevens": one place, and nothing set against its jaw.
  const whole = paused.length === 0 ? oneTold(tokens, from, to) : undefined;
  if (whole?.mark.place && whole.mark.place.codes === undefined) return undefined;
  // "not at three ten three eleven", of what is in a gap: another gap.
  if (isGap(whole?.mark.place?.codes ?? [], item)) return undefined;
  for (const cut of paused.length > 0 ? paused : cuts) {
    const [wrong, right] = [oneTold(tokens, from, cut), oneTold(tokens, cut, to)];
    if (wrong && right && alike(wrong, right) && holds(item, wrong) && !holds(item, right)) return { wrong, right };
  }
  return undefined;
}

const wrongOne = /^(?:that is |that's |it is |that was |(?:i )?(?:have )?(?:got|said|had) )?(?:the )?wrong (side|tooth|one)(?= |$)/;
const meantFirst = /^(?:i (?:said|put|called it)|change(?: (?:that|it)(?! to))?(?: from)?)(?= |$)/;
const takesBack =
  /^(?:(?:wait|hang on|hold on|oh) (?:no )?(?:it is|that is|that's)|(?:it is |that is |that's )?more(?: of| like|(?= an? ))|(?:that )?should have (?:been|said)|i (?:would|will|'d) (?:call (?:that|it)|say)|put (?:that|it) (?:down as|on|as)|move (?:that|it) to|let's (?:call (?:that|it)|say)) /;

function turned(tokens: readonly Token[], from: number, item: Item): Turn | undefined {
  const words = tokens.map(({ t }) => t);
  const end = tokens.length;
  const text = words.slice(from).join(' ');
  const long = (found: RegExpExecArray | null): number => (found ? found[0].trim().split(' ').length : 0);
  const wrong = long(wrongOne.exec(text));
  const back = long(takesBack.exec(text));
  const told = (start: number, stop = end): Turn | undefined => {
    const right = oneTold(tokens, start, stop);
    return right && !holds(item, right) ? { right } : undefined;
  };
  if (wrong > 0) return told(from + wrong);
  if (back > 0) return told(from + back);
  // "no, a ramp": an article behind "no" rules nothing out.
  const [no, article] = [words[from - 1], words[from]];
  if (no === 'no' && (article === 'a' || article === 'an')) {
    const one = told(from);
    return one && kindOf(one.right) === 'condition' ? one : undefined;
  }
  const said = long(meantFirst.exec(text));
  // "more moderate than mild"
  const more = /^(?:it is )?more /.test(text);
  const rather = text.search(more ? / than / : / (?:rather than|instead of) /);
  const not = rather < 0 ? words.indexOf('not', from) : from + text.slice(0, rather).split(' ').length;
  const behindNot = not + (rather < 0 || more ? 1 : 2);
  if (said > 0 && not < 0) {
    const to =
      words[from] === 'change'
        ? words.indexOf('to', from)
        : words.findIndex((word, i) => i > from && (word === 'meant' || word === 'mean'));
    const [one, two] = to < 0 ? [] : [oneTold(tokens, from + said, to), oneTold(tokens, to + 1, end)];
    return one && two && alike(one, two) && holds(item, one) && !holds(item, two) ? { wrong: one, right: two } : undefined;
  }
  if (not >= 0) {
    const right = oneTold(tokens, from + said, not);
    const one = oneTold(tokens, behindNot, end);
    if (right && one && alike(one, right) && holds(item, one) && !holds(item, right)) return { wrong: one, right };
    return words.slice(from, not).every((word) => around.has(word)) ? twoTold(tokens, behindNot, end, item) : undefined;
  }
  // "the seven, I mean"
  const tail = /(?: i (?:mean|meant)| sorry| actually| instead| really)$/.exec(text);
  return tail ? told(from, end - tail[0].trim().split(' ').length) : undefined;
}

const thereIs =
  /^(?:(?:oh|no|wait|sorry|actually|well|but|hang on|hold on) )+there (?:is|are)( not| nothing)?(?: (?:one|some|any|a bit|there|after all|actually))*$/;
const notOne = /^(?:(?:oh|sorry|actually|wait|i was wrong|i tell a lie|no(?= there)) )+(?:there is )?no /;
/** "actually there is", "no, there isn't one": the finding, as it is after all. */
function otherPresence(tokens: readonly Token[], last: Extract<Item, { kind: 'finding' }>): readonly string[] | undefined {
  const said = thereIs.exec(
    tokens
      .map(({ t }) => t)
      .join(' ')
      .replace(/\bisn't\b/, 'is not'),
  );
  const ruledOut = said?.[1] !== undefined;
  // "no, there's no hook": of the one that was said to be there.
  const none = notOne.exec(tokens.map(({ t }) => t).join(' '));
  const named = none && oneTold(tokens, none[0].split(' ').length - 1, tokens.length);
  if (named && last.presence === 'present' && last.when === 'now' && isHead(named.mark) && holds(last, named))
    return ['no', ...(expand(conditions[last.condition].say[0] as string)[0] as readonly string[])];
  if (!said || (last.presence === 'absent') === ruledOut) return undefined;
  const words = expand(conditions[last.condition].say[0] as string)[0] as readonly string[];
  return ruledOut ? ['no', ...words] : words;
}

/** @returns the phrase as a correction of the last item; undefined where nothing is set against what it holds */
export function contrasted(tokens: readonly Token[], context: Context, carry: Carry): Reached | undefined {
  if (tokens.length > LONGEST || tokens.length < 2 || !tokens.some(({ t }) => turning.has(t))) return undefined;
  const last = standing(context, carry.last);
  if (last === undefined) return undefined;
  const done = ({ word }: Token): Token => ({ t: idle, word });
  const first: Token = { t: 'correction', word: tokens[0]?.word ?? 0, ends: true };
  const presence = last.kind === 'finding' ? otherPresence(tokens, last) : undefined;
  if (presence)
    return { tokens: [first, ...tokens.slice(1).map(done), ...presence.map((t) => ({ t, word: tokens.at(-1)?.word ?? 0 }))], carry };
  if ('presence' in last && last.presence === 'absent') return undefined;
  let from = 0;
  while (
    leads.has(tokens[from]?.t ?? '') &&
    !takesBack.test(
      tokens
        .slice(from)
        .map(({ t }) => t)
        .join(' '),
    )
  )
    from += 1;
  // "wrong side": of two there is one other.
  if (
    /^(?:that is |that's |that was |(?:i )?(?:have )?(?:got|said|had) )?(?:the )?wrong side(?: there)?$/.test(
      tokens
        .slice(from)
        .map(({ t }) => t)
        .join(' '),
    )
  )
    return {
      tokens: [first, ...tokens.slice(1, -1).map(done), ...['other', 'side'].map((t) => ({ t, word: tokens.at(-1)?.word ?? 0 }))],
      carry,
    };
  const turn = turned(tokens, from, last);
  if (turn === undefined) return undefined;
  const { right } = turn;
  // "not the six, the seven": a number of its own is a tooth where the other was one.
  const tooth = right.mark.number !== undefined && turn.wrong !== undefined && isPosition(last, turn.wrong.mark.number);
  return {
    tokens: [
      first,
      ...tokens.slice(1, right.from).map(done),
      ...(tooth || tokens[right.from - 1]?.t === 'the' ? [{ t: 'the', word: tokens[right.from]?.word ?? 0 }] : []),
      ...tokens.slice(right.from, right.to),
      ...tokens.slice(right.to).map(done),
    ],
    carry,
  };
}
