/** "one oh six hook sorry one oh seven": inside one utterance only the final word counts; what was taken back stays visible. */
import { workNamed } from '../lexicon/breaths.ts';
import { correctionSay, onlyAtStart } from '../lexicon/corrections.ts';
import { bareNo } from './bareNo.ts';
import { strikeBehind } from './commands.ts';
import { formAt, formsOf } from './forms.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { RawPlace } from './places.ts';
import { codeWords } from './pointing.ts';
import { codeOf, positionOf, quadrantOf, readCode } from './teeth.ts';
import type { Token } from './tokens.ts';

/** Longest first. */
const markers = formsOf(
  correctionSay
    .filter((form) => !onlyAtStart.includes(form))
    .map((form) => form.split(' '))
    .sort((a, b) => b.length - a.length)
    .map((words) => [words, words.length] as const),
);

const isDegree = (mark: Mark | undefined): boolean => mark?.terms?.some(({ k }) => k === 'severity') ?? false;
/** A plain "no" takes back only where a tooth or a size comes right behind it: "two oh six hook, no, one oh six". */
function plainNo(tokens: readonly Token[], at: number): boolean {
  if (tokens[at]?.t !== 'no' || tokens[at]?.word === bareNo(tokens)?.word) return false;
  const after = scan(tokens.slice(at + 1, at + 8)).marks;
  const next = after.find((mark) => !mark.terms?.some((t) => t.k === 'glue'));
  if (next?.place?.codes !== undefined || next?.measure !== undefined) return true;
  const said = scan(tokens.slice(0, at)).marks;
  if (next?.grade !== undefined && said.some((mark) => mark.grade !== undefined)) return true;
  // "slight, no, moderate hook"
  if (isDegree(next) && isDegree(said.at(-1))) return true;
  // "two oh six ramp, no, hook": parted from both by a pause.
  if (
    tokens[at]?.ends === true &&
    tokens[at - 1]?.ends === true &&
    isHead(next) &&
    said.some(isHead) &&
    [...said, ...after].some((mark) => mark.place !== undefined)
  )
    return true;
  // "one oh six, no, left side", "one oh six, no, other side"
  const clause = tokens.slice(at + 1, tokens.findIndex(({ ends }, i) => i > at && ends === true) + 1 || tokens.length);
  if (
    (tokens[at]?.ends ?? tokens[at - 1]?.ends) &&
    sideAtEnd([{ t: '', word: -1 }, ...clause]) === 1 &&
    said.some(({ place }) => place?.codes ?? place?.region)
  )
    return true;
  if (next?.place === undefined && next?.number === undefined) return false;
  // "on the left, no the right cheek": another side of what was said last; "three mil, no four": another number.
  const last = scan(tokens.slice(0, at)).marks.findLast((mark) => !mark.terms?.some((t) => t.k === 'glue'));
  if (next.number !== undefined) return last?.measure !== undefined || last?.grade !== undefined;
  const other = (part: 'side' | 'jaw'): boolean =>
    last?.place?.[part] !== undefined && next.place?.[part] !== undefined && last.place[part] !== next.place[part];
  return (other('side') || other('jaw')) && !scan(putRightHere(tokens.slice(at + 1))).marks.some(isHead);
}
/** "shear on the lower right, no, lower left, and the palate's fine": only up to the pause is put right, where something of its own begins behind it. */
function putRightHere(after: readonly Token[]): readonly Token[] {
  const end = after.findIndex(({ ends }) => ends === true) + 1;
  if (end === 0 || end === after.length) return after;
  const own = scan(after.slice(0, end)).marks;
  const behind = scan(after.slice(end)).marks;
  const itsOwn =
    behind.some(isWork) || (behind.some(isHead) && (after[end]?.t === 'and' || behind.some((mark) => mark.place !== undefined)));
  return itsOwn && own.some(isSomething) && !own.some((mark) => isHead(mark) || isWork(mark)) ? after.slice(0, end) : after;
}
const isWork = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && workNames.has(t.term.as)) === true;
const workNames: ReadonlySet<string> = new Set(workNamed);
/** "fracture of two ten, wait, two oh nine": how many words hesitate before a place of the same kind, with nothing more found there. */
function hesitates(tokens: readonly Token[], at: number): number {
  const length =
    tokens[at]?.t === 'wait'
      ? 1 + Number(tokens[at + 1]?.t === 'now')
      : ['hang', 'hold'].includes(tokens[at]?.t ?? '') && tokens[at + 1]?.t === 'on'
        ? 2
        : 0;
  if (length === 0 || tokens[at - 1]?.ends !== true || tokens[at + length - 1]?.ends !== true) return 0;
  const after = scan(tokens.slice(at + length)).marks;
  const last = scan(tokens.slice(0, at)).marks.at(-1)?.place;
  const next = after[0]?.place;
  const alike =
    (last?.codes !== undefined && next?.codes !== undefined) ||
    (last?.region !== undefined && last.region === next?.region && last.side !== next.side);
  // "wait, two oh six too" is one more.
  const more = tokens.slice(at + length).some(({ t }) => ['too', 'also', 'well', 'has', 'had', 'got', 'is', 'and', 'both'].includes(t));
  return alike && !more && !after.some(isHead) ? length : 0;
}
/** "actually there's one on two oh six": takes back only what was ruled out. */
const onSecondThoughts = (tokens: readonly Token[], at: number): number =>
  (tokens[at]?.t === 'actually' ||
    (['well', 'but', 'oh', 'wait', 'yes'].includes(tokens[at]?.t ?? '') && tokens[at + 1]?.t === 'there' && tokens[at + 2]?.t === 'is')) &&
  tokens.slice(0, at).some(({ t }) => t === 'no' || t === 'not' || t === 'nothing') &&
  tokens.slice(at + 1, at + 7).some(({ t }) => t === 'one' || t === 'some')
    ? 1
    : 0;
const secondThoughts: ReadonlySet<string> = new Set(['oh', 'no', 'wait', 'yes', 'yeah', 'actually', 'hang', 'hold']);
/** "nothing there, hang on, there is, ulcer on the left cheek": how many words say that something is there after all, where nothing was. */
const afterAll = (tokens: readonly Token[], at: number): number => {
  if (!secondThoughts.has(tokens[at]?.t ?? '')) return 0;
  const found = /^(?:(?:oh|no|wait|yes|yeah|actually|hang on|hold on) )+there is(?= |$)/.exec(
    tokens
      .slice(at, at + 7)
      .map(({ t }) => t)
      .join(' '),
  );
  const to = found ? at + found[0].split(' ').length : at;
  return found &&
    to < tokens.length &&
    tokens.slice(0, at).some(({ t }) => ['no', 'nothing', 'none', 'not'].includes(t)) &&
    !scan(tokens.slice(0, at)).marks.some(isHead)
    ? to - at
    : 0;
};
/** "nothing on two oh six, ... a small hook": the place stays where none is said behind it. */
const thereAfterAll = (
  before: readonly Token[],
  beforeMarks: readonly Mark[],
  after: readonly Token[],
  afterMarks: readonly Mark[],
): readonly Token[] | undefined => {
  if (beforeMarks.some(isHead) || !afterMarks.some(isHead)) return undefined;
  const whole = afterMarks.some(
    ({ place }) => place !== undefined && (place.codes ?? place.positions ?? place.region ?? place.jaw) !== undefined,
  );
  const place = beforeMarks.findLast((mark) => mark.place !== undefined);
  return whole || place === undefined ? after : [...before.slice(place.from, place.to), ...after];
};
const goingTo = '(?:just )?(?:let me|let us|i will|i am going to|will) (?:just )?';
/** Looking at something once more, or at "that" and "it". */
const lookingAgain = new RegExp(
  [
    `^(?:${goingTo})?(?:re ?)?(?:measure|check|probe|do|try|take|feel|test|size|read|count)(?: (?:that|it|this))?(?: one)? (?:again|once more)(?=$| )`,
    `^${goingTo}(?:(?:double )?check|measure|probe|size) (?:that|it|this)(?: one)?(?=$| )`,
    `^(?:${goingTo})?re ?(?:measure|probe)(?: (?:that|it|this))?(?=$| )`,
  ].join('|'),
);
/** "hook on one oh six, three mil, let me measure that again, five mil": how many words say that it is measured once more, where a size or a grade comes right behind. */
function measuredAgain(tokens: readonly Token[], at: number): number {
  if (!measuring.has(tokens[at]?.t ?? '')) return 0;
  const found = lookingAgain.exec(
    tokens
      .slice(at, at + 9)
      .map(({ t }) => t)
      .join(' '),
  );
  if (found === null) return 0;
  const length = found[0].split(' ').length;
  const [next, ...more] = scan(tokens.slice(at + length)).marks;
  return (next?.measure ?? next?.grade ?? next?.number) !== undefined && more.every((mark) => !isHead(mark) && mark.place === undefined)
    ? length
    : 0;
}
const measuring: ReadonlySet<string> = new Set(['let', 'i', 'will', 're', 'remeasure', 'measure', 'check']);

/** Words that taking back can begin with. */
const beginnings: ReadonlySet<string> = new Set([...markers.keys(), ...secondThoughts, ...measuring, 'well', 'but']);
/** How many words here take something back. */
const markerAt = (tokens: readonly Token[], at: number): number =>
  onSecondThoughts(tokens, at) ||
  measuredAgain(tokens, at) ||
  (formAt(markers, tokens, at)?.means ?? (Number(plainNo(tokens, at)) || hesitates(tokens, at)));

/** So often at most may one phrase take itself back: reading stays linear in its length. */
const TAKES_BACK = 6;

/** Where a correction begins the phrase it amends an earlier item: not this rule's work. */
export function selfCorrected(
  tokens: readonly Token[],
  left = TAKES_BACK,
): { readonly tokens: readonly Token[]; readonly takenBack: readonly number[]; /** Words looked at. */ readonly steps: number } {
  // "let me measure that again, five mil" begins with nothing to take back: the size puts right what was said before.
  const again = measuredAgain(tokens, 0);
  if (again > 0) {
    const rest = selfCorrected(tokens.slice(again), left);
    return { ...rest, takenBack: [...tokens.slice(0, again).map(({ word }) => word), ...rest.takenBack] };
  }
  let tries = left;
  let steps = 0;
  // What only strikes puts nothing in the place of what was said: "..., scratch that one".
  const end = strikeBehind(tokens.map(({ t }) => t));
  for (let at = 1; at < end && tries > 0; at += 1) {
    if (!beginnings.has(tokens[at]?.t ?? '')) continue;
    const there = afterAll(tokens, at);
    const length = there || markerAt(tokens, at);
    if (length === 0) continue;
    tries -= 1;
    steps += tokens.length;
    const before = tokens.slice(0, at);
    const behind = tokens.slice(at + length);
    const after = there > 0 ? behind : putRightHere(behind);
    const beforeMarks = scan(before).marks;
    if (there === 0 && after.length > 0 && !beforeMarks.some(isSomething)) continue;
    const merged =
      after.length === 0
        ? sideThenTakenBack(before, tokens.slice(at))
        : ((there > 0 ? thereAfterAll(before, beforeMarks, after, scan(after).marks) : undefined) ??
          merge(before, beforeMarks, after, scan(after).marks, onSecondThoughts(tokens, at) > 0));
    if (merged === undefined) continue;
    const whole = [...merged, ...behind.slice(after.length)];
    const kept = new Set(whole.map(({ word }) => word));
    const rest = selfCorrected(whole, tries);
    return {
      steps: steps + rest.steps,
      tokens: rest.tokens,
      takenBack: [...rest.takenBack, ...tokens.map(({ word }) => word).filter((word) => !kept.has(word))],
    };
  }
  return { tokens, takenBack: [], steps: steps + tokens.length };
}

const isSomething = (mark: Mark): boolean =>
  isHead(mark) ||
  isDegree(mark) ||
  mark.place !== undefined ||
  mark.measure !== undefined ||
  mark.grade !== undefined ||
  mark.number !== undefined;

/** Puts what was said last in the place of what it corrects; undefined where it corrects nothing here. */
function merge(
  before: readonly Token[],
  beforeMarks: readonly Mark[],
  after: readonly Token[],
  afterMarks: readonly Mark[],
  actually = false,
): readonly Token[] | undefined {
  const place = beforeMarks.findLast((mark) => mark.place !== undefined);
  // "three mil, no four, on one oh six hook": the number alone is put right, what follows goes on.
  const [number] = afterMarks;
  const sized = beforeMarks.at(-1);
  if (number?.number !== undefined && afterMarks.length > 1 && (sized?.measure ?? sized?.grade))
    return [...(swapNumber(before, sized, after.slice(number.from, number.to)) as readonly Token[]), ...after.slice(number.to)];
  const other = besideNot(beforeMarks, after);
  if (other) return merge(before, beforeMarks, other, scan(other).marks);
  const back = givenBack(before, beforeMarks, after, afterMarks);
  if (back || actually) return back;
  const part = partOnly(place, before, afterMarks, after);
  if (part) return part;
  const spare = sparePlace(place, before, afterMarks, after);
  if (spare) return spare;
  if (afterMarks.some(isHead)) {
    if (afterMarks.some((mark) => mark.place && !(place?.place?.codes && partOfTooth(mark.place))) || place === undefined)
      return [...before.slice(0, lastClause(beforeMarks)), ...after];
    return [...before.slice(place.from, place.to), ...after];
  }
  // "hook three mil, make that four mil, on two oh six": each takes the place of its like, what is new comes on.
  const figure = afterMarks[0]?.measure ? ('measure' as const) : ('grade' as const);
  const size = beforeMarks.findLast((mark) => mark[figure]);
  if (place === undefined && size && afterMarks[0]?.[figure] && afterMarks.some((mark) => mark.place))
    return [...before.slice(0, size.from), ...after.slice(0, afterMarks[0].to), ...before.slice(size.to), ...after.slice(afterMarks[0].to)];
  if (place === undefined && afterMarks[0]?.measure && beforeMarks.at(-1)?.number !== undefined)
    return [...before.slice(0, beforeMarks.at(-1)?.from), ...after];
  const swap = (old: Mark | undefined): readonly Token[] | undefined =>
    old && [...before.slice(0, old.from), ...after, ...before.slice(old.to)];
  if (afterMarks.some((mark) => mark.place)) return swap(place);
  if (afterMarks.some((mark) => mark.measure))
    return swap(
      beforeMarks.findLast((mark) => mark.measure) ?? (beforeMarks.at(-1)?.number !== undefined ? beforeMarks.at(-1) : undefined),
    );
  if (afterMarks.some((mark) => mark.grade)) return swap(beforeMarks.findLast((mark) => mark.grade));
  const renumbered = positionsOnly(place, before, beforeMarks, afterMarks);
  if (renumbered) return renumbered;
  if (afterMarks.every((mark) => mark.number !== undefined))
    return swapNumber(
      before,
      beforeMarks.findLast((mark) => mark.measure ?? mark.grade),
      after,
    );
  const kind = afterMarks[0]?.terms?.[0]?.k;
  return swap(beforeMarks.findLast((mark) => kind !== undefined && mark.terms?.some((t) => t.k === kind)));
}

/** "ulcer left cheek, correction, right cheek, cap on eight oh seven": what comes behind has places of its own, so the first one is all that is put right. */
function sparePlace(
  place: Mark | undefined,
  before: readonly Token[],
  afterMarks: readonly Mark[],
  after: readonly Token[],
): readonly Token[] | undefined {
  const said = afterMarks.filter((mark) => !isGlue(mark));
  const [first, next] = said;
  const heads = said.filter((mark) => isHead(mark)).length;
  const places = said.filter((mark) => mark.place !== undefined && !isHead(mark)).length;
  // "right cheek, no, left": the side alone.
  const side = after.findIndex(({ t }) => !['the', 'on', 'it', 'is'].includes(t));
  const alone =
    sides.has(after[side]?.t ?? '') &&
    afterMarks.some(({ from, to }) => from === side && to === side + 1) &&
    heads > 0 &&
    heads <= said.filter((mark) => mark.place !== undefined && mark.from > side).length;
  const turned = alone ? partOnly(place, before, [], after.slice(side, side + 1)) : undefined;
  if (turned) return [...turned, ...after.slice(side + 1)];
  const like =
    place?.place !== undefined &&
    first?.place !== undefined &&
    (place.place.region === undefined) === (first.place.region === undefined) &&
    (place.place.codes === undefined) === (first.place.codes === undefined);
  if (place === undefined || !like || heads === 0 || places <= heads || next === undefined || !(next.place !== undefined || isHead(next)))
    return undefined;
  return [...before.slice(0, place.from), ...after.slice(first.from, first.to), ...before.slice(place.to), ...after.slice(first.to)];
}

/** "no, not one oh nine, one ten": the tooth named again was the wrong one. */
function besideNot(beforeMarks: readonly Mark[], after: readonly Token[]): readonly Token[] | undefined {
  const wrong = after[0]?.t === 'not' ? readCode(after, 1) : undefined;
  const named = beforeMarks.some(({ place }) => wrong !== undefined && place?.codes?.includes(codeOf(wrong.quadrant, wrong.position)));
  const rest =
    wrong && named
      ? after
          .slice(wrong.to)
          .filter(
            ({ t }, i, all) => !all.slice(0, i + 1).every((one) => ['but', 'it', 'is'].includes(one.t)) || !['but', 'it', 'is'].includes(t),
          )
      : undefined;
  return rest && rest.length > 0 ? rest : undefined;
}

/** "no hooks, actually there's a small one on two oh six": what was ruled out is there after all. */
function givenBack(
  before: readonly Token[],
  beforeMarks: readonly Mark[],
  after: readonly Token[],
  afterMarks: readonly Mark[],
): readonly Token[] | undefined {
  const head = beforeMarks.findLast(isHead);
  const cue = beforeMarks.findLast(
    ({ terms, to }) =>
      head !== undefined && to <= head.from && terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind === undefined),
  );
  const at = afterMarks.find(
    (mark) => mark.place === undefined && mark.to - mark.from === 1 && ['one', 'some', 'ones'].includes(after[mark.from]?.t ?? ''),
  )?.from;
  if (
    cue === undefined ||
    head === undefined ||
    beforeMarks.some((mark) => mark.place && mark.from > cue.from) ||
    at === undefined ||
    afterMarks.some(isHead) ||
    !afterMarks.some((mark) => mark.place && mark.from > at)
  )
    return undefined;
  return [...before.slice(0, cue.from), ...after.slice(0, at), ...before.slice(head.from, head.to), ...after.slice(at + 1)];
}

/** "no, it's broken off at the gum": where on the tooth, and no place of its own. */
const partOfTooth = (raw: RawPlace): boolean => raw.region !== undefined && raw.side === undefined && raw.jaw === undefined;

const sides: ReadonlySet<string> = new Set(['left', 'right']),
  jaws: ReadonlySet<string> = new Set(['upper', 'lower', 'top', 'bottom']);
/** "on the left cheek, correction, right", "one oh six, no, left side", "one oh six, I mean the other side": the side alone is put right, the part stays, and the jaw. */
function partOnly(
  place: Mark | undefined,
  before: readonly Token[],
  afterMarks: readonly Mark[],
  after: readonly Token[],
): readonly Token[] | undefined {
  const said = after.filter(({ t }) => !aroundSide.has(t));
  const [only] = said;
  const kind = only && said.length === 1 ? [sides, jaws].find((words) => words.has(only.t)) : undefined;
  if (only === undefined || place === undefined || afterMarks.some(isHead)) return undefined;
  const other = said.length === 1 && only.t === 'other' && after[after.indexOf(only) + 1]?.t === 'side';
  if (kind === undefined && !other) return undefined;
  const codes = place.place?.codes;
  if (codes && (other || kind === sides)) return onOtherSide(place, codes, before, only);
  const at = before.findIndex(({ t }, i) => i >= place.from && i < place.to && (kind ?? sides).has(t));
  if (at < 0 || place.to - place.from < 2) return undefined;
  const side = other ? (before[at]?.t === 'left' ? 'right' : 'left') : only.t;
  return [...before.slice(0, at), { ...only, t: side }, ...before.slice(at + 1)];
}
const aroundSide: ReadonlySet<string> = new Set(['the', 'on', 'it', 'is', "that's", 'side', 'was', 'hand']);

/** The same teeth of the other side of their jaw; nothing where they are on the side that was said. */
function onOtherSide(place: Mark, codes: readonly string[], before: readonly Token[], said: Token): readonly Token[] | undefined {
  const first = before[place.from] as Token;
  const left = (code: string): boolean => ['2', '3', '6', '7'].includes(code[0] as string);
  if (said.t !== 'other' && codes.every((code) => left(code) === (said.t === 'left'))) return undefined;
  const words = codes.flatMap((code) => codeWords(codeOf(mirrored[quadrantOf(code)] as number, positionOf(code))));
  return [
    ...before.slice(0, place.from),
    ...words.map((t, i): Token => ({ t, word: i === 0 ? first.word : said.word })),
    ...before.slice(place.to),
  ];
}
const mirrored = [0, 2, 1, 4, 3, 6, 5, 8, 7] as const;

/** Where a side and nothing else ends the words: "..., the other side", "..., it's on the left side". */
const sideAtEnd = (tokens: readonly Token[]): number => {
  let at = tokens.length;
  while (at > 0 && aroundSide.has(tokens[at - 1]?.t ?? '')) at -= 1;
  const named = tokens[at - 1]?.t ?? '';
  if (!(sides.has(named) || (named === 'other' && tokens[at]?.t === 'side'))) return -1;
  at -= 1;
  while (at > 0 && aroundSide.has(tokens[at - 1]?.t ?? '') && tokens[at - 1]?.ends !== true) at -= 1;
  return at > 0 && !['and', 'both', 'or', 'not', 'same'].includes(tokens[at - 1]?.t ?? '') ? at : -1;
};
/** "..., other side I mean", "..., left side, sorry": what takes back is said behind it. Of the phrase before it goes first, where it is read. */
function sideThenTakenBack(before: readonly Token[], marker: readonly Token[]): readonly Token[] | undefined {
  if (sideAtEnd([{ t: '', word: -1 }, ...before]) === 1) return [...marker, ...before];
  const at = sideAtEnd(before);
  if (at < 0) return undefined;
  const rest = before.slice(0, at);
  const place = scan(rest).marks.findLast((mark) => mark.place !== undefined);
  return partOnly(place, rest, [], before.slice(at));
}

/** "four oh nine four ten, make that ten eleven": positions of the quadrant named. */
function positionsOnly(
  place: Mark | undefined,
  before: readonly Token[],
  beforeMarks: readonly Mark[],
  afterMarks: readonly Mark[],
): readonly Token[] | undefined {
  const figures = afterMarks.filter((mark) => !mark.terms?.every((t) => t.k === 'glue'));
  const numbers = figures.flatMap(({ number }) => (typeof number === 'number' ? [number] : []));
  const codes = place?.place?.codes ?? [];
  const quadrants = new Set(codes.map(quadrantOf));
  const last = beforeMarks.findLast((mark) => !mark.terms?.every((t) => t.k === 'glue' || t.k === 'filler'));
  if (
    place === undefined ||
    quadrants.size !== 1 ||
    numbers.length !== figures.length ||
    numbers.length !== codes.length ||
    !numbers.every((n) => n >= 6 && n <= 11) ||
    (last !== place && (numbers.length < 2 || last?.measure !== undefined))
  )
    return undefined;
  const [first] = before.slice(place.from) as [Token];
  const words = numbers.flatMap((n) => codeWords(codeOf([...quadrants][0] as number, n)).map((t): Token => ({ t, word: first.word })));
  return [...before.slice(0, place.from), ...words, ...before.slice(place.to)];
}

/** Where the last finding of several begins; earlier ones stand. */
function lastClause(marks: readonly Mark[]): number {
  const heads = marks.flatMap((mark, i) => (isHead(mark) ? [i] : []));
  if (heads.length < 2) return 0;
  const [previous, last] = heads.slice(-2) as [number, number];
  const place = marks.findIndex((mark, i) => i > previous && i < last && mark.place !== undefined);
  return (marks[place >= 0 && marks.slice(0, previous).some((mark) => mark.place) ? place : last] as Mark).from;
}

/** "four mil no make that six": the unit stays. */
function swapNumber(before: readonly Token[], old: Mark | undefined, after: readonly Token[]): readonly Token[] | undefined {
  if (old === undefined) return undefined;
  return old.measure
    ? [...before.slice(0, old.from), ...after, ...before.slice(old.to - 1)]
    : [...before.slice(0, old.from + 1), ...after, ...before.slice(old.to)];
}
