/**
 * Where one breath turns from what is there to what is not, or back: "ulcer right cheek, no left", "no ulcers on the right, one
 * on the left cheek", "two oh six has a hook, one oh six doesn't". The side alone is filled up to the whole place it answers to,
 * and the turn is put before the place it is said of.
 */
import type { ScopeCue } from '../lexicon/scopes.ts';
import { contrary, counting } from '../lexicon/scopes.ts';
import { onSide } from './ellipsis.ts';
import { first, partedBy, where } from './lists.ts';
import type { RawPlace } from './places.ts';
import { lastApart } from './restated.ts';
import { isHead, type Mark } from './scan.ts';
import { otherSide, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

const sideOf = (code: string): 'left' | 'right' => ([1, 4, 5, 8].includes(quadrantOf(code)) ? 'right' : 'left');
const text = (tokens: readonly Token[], mark: Mark): readonly string[] => tokens.slice(mark.from, mark.to).map(({ t }) => t);
const cueOf = (mark: Mark | undefined): ScopeCue | undefined =>
  first(mark?.terms ?? [], (t) => (t.k === 'cue' && t.cue.kind === undefined ? t.cue : undefined));
const put = (at: number, means: 'absent' | 'suspected' | 'now' | 'except'): Mark => ({
  from: at,
  to: at,
  terms: [{ k: 'cue', cue: { say: [], means, looks: 'forward' } }],
});
const bareSide = (raw: RawPlace | undefined): 'left' | 'right' | undefined =>
  raw &&
  (raw.side === 'left' || raw.side === 'right') &&
  raw.codes === undefined &&
  raw.jaw === undefined &&
  raw.region === undefined &&
  raw.positions === undefined &&
  !raw.row &&
  raw.quadrants === undefined &&
  !raw.all &&
  raw.joined === undefined
    ? raw.side
    : undefined;
const small = ({ terms, place }: Mark): boolean =>
  place === undefined && terms !== undefined && terms.every((t) => t.k === 'glue' || t.k === 'filler');
const counts = new Set(counting);
const contraries = new Set(contrary);

export function turned(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  if (!marks.some(isHead) || !marks.some(({ place }) => place)) return marks;
  // "lower incisors have calculus, upper ones don't": others of what was named, no centrals.
  const named = !tokens.some(({ t }) => t === 'ones')
    ? marks
    : marks.map((mark, i) => {
        const { place, from, to } = mark;
        const before =
          place?.positions?.join() === '1' && tokens[to - 1]?.t === 'ones' && place.jaw !== undefined && from < to - 1
            ? marks.slice(0, i).findLast((m) => m.place?.positions !== undefined)?.place?.positions
            : undefined;
        if (before) return { ...mark, place: { ...place, positions: before } };
        // "the upper ones": teeth of that jaw, and which was not said; a list of numbers goes on ("upper ones and twos").
        const pronoun =
          place?.positions?.join() === '1' &&
          tokens[to - 1]?.t === 'ones' &&
          place.jaw !== undefined &&
          from < to - 1 &&
          !tokens.some(({ t }) => /^(?:twos|threes|incisors?)$/.test(t));
        if (!pronoun || place === undefined) return mark;
        const { positions, ...jaw } = place;
        return positions ? { ...mark, place: { ...jaw, plural: true } } : mark;
      });
  const headed = underJaw(named, tokens);
  const apart = partedBy(headed, (mark, i) =>
    mark.place?.codes &&
    headed.slice(0, i).some(isHead) &&
    (contraries.has(tail(behind(headed, i, tokens), tokens).replace(/^(has|does|is|are|have)(?: one)?$/, '$1 not')) ||
      onlyMaybe(headed, i, tail(behind(headed, i, tokens), tokens), tokens))
      ? lastApart(mark, tokens)
      : undefined,
  );
  return wholeSides(withTurns(wholeJaws(ledBySide(ofTopic(leftAside(apart, tokens), tokens), tokens), tokens), tokens), tokens);
}

/** "lower arcades, points, wave on the left": under a jaw said first and parted off, a side is of that jaw. */
function underJaw(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  // "grand, the lowers now, nothing much on the left": what is said before the pause is no part of it.
  const topic = marks.find(({ place }) => place !== undefined);
  const jaw = topic?.place?.jaw;
  const start = tokens[(topic?.from ?? 0) - 1]?.t === 'the' ? (topic?.from ?? 0) - 1 : (topic?.from ?? 0);
  const whole =
    (start === 0 || tokens[start - 1]?.ends === true || marks.slice(0, marks.indexOf(topic as Mark)).every(small)) &&
    (jaw === 'upper' || jaw === 'lower') &&
    topic?.place?.side === undefined &&
    topic?.place?.positions === undefined &&
    topic?.place?.region === undefined &&
    (tokens[(topic?.to ?? 0) - 1]?.ends === true || (tokens[topic?.to ?? 0]?.t === 'now' && tokens[topic?.to ?? 0]?.ends === true));
  if (!whole || marks.some(({ place }) => place?.jaw !== undefined && place.jaw !== jaw)) return marks;
  return marks.map((mark) =>
    mark !== topic &&
    mark.place !== undefined &&
    mark.place.jaw === undefined &&
    mark.place.codes === undefined &&
    mark.place.region === undefined &&
    mark.place.quadrants === undefined &&
    (mark.place.side === 'left' || mark.place.side === 'right')
      ? { ...mark, place: { ...mark.place, jaw } }
      : mark,
  );
}

/** "both lowers are smooth, three oh six aside": left out by a word behind it. */
const leftAside = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.flatMap((mark, i): readonly Mark[] =>
    mark.place !== undefined && asideWords.has(tokens[mark.to]?.t ?? '') && marks[i + 1]?.unknown && closes(tokens, mark.to)
      ? [put(mark.from, 'except'), mark]
      : marks[i - 1]?.place !== undefined && mark.unknown && asideWords.has(tokens[mark.from]?.t ?? '') && closes(tokens, mark.from)
        ? [{ from: mark.from, to: mark.to, terms: [{ k: 'glue' }] }]
        : [mark],
  );
const asideWords: ReadonlySet<string> = new Set(['aside', 'excepted', 'excluded']);
const closes = (tokens: readonly Token[], at: number): boolean => at === tokens.length - 1 || tokens[at]?.ends === true;

/** "the canines, uppers sharp, lowers have tartar": the teeth named first, and parted off, are those of each jaw behind them. */
const ofTopic = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] => {
  // "of the four canines only the lower left has tartar", "tartar on the tushes, not the upper left": of those that were named.
  const all = marks.findIndex((mark) => mark.place !== undefined);
  const named = marks[all]?.place;
  if (
    named?.positions !== undefined &&
    (named.plural || named.all) &&
    Object.keys(named).every((key) => ['positions', 'plural', 'all'].includes(key))
  ) {
    const led = ['of', 'the'].includes(tokens[(marks[all] as Mark).from - 1]?.t ?? '') && tokens[0]?.t === 'of';
    return marks.map((mark, i) => {
      const before = cueOf(marks.slice(0, i).findLast((m) => !small(m)))?.means;
      return mark.place?.jaw !== undefined &&
        mark.place.side !== undefined &&
        Object.keys(mark.place).every((key) => key === 'jaw' || key === 'side') &&
        (led || before === 'absent')
        ? { ...mark, place: { ...mark.place, positions: named.positions } }
        : mark;
    }) as readonly Mark[];
  }
  const topic = marks.find((mark) => !small(mark));
  const place = topic?.place;
  if (
    place?.positions === undefined ||
    place.jaw === undefined ||
    !tokens.slice(topic?.from, (topic?.to ?? 1) - 1).some(({ ends }) => ends)
  )
    return marks;
  return marks.map((mark) =>
    mark.place?.jaw !== undefined &&
    mark.place.jaw !== place.jaw &&
    Object.keys(mark.place).every((key) => key === 'jaw' || key === 'plural')
      ? { ...mark, place: { ...mark.place, positions: place.positions } }
      : mark,
  ) as readonly Mark[];
};

/** "on the left, tongue and cheek both ulcerated": the side said first, and parted off, is of all that is listed behind it. */
const ledBySide = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark, i) => {
    if (mark.place?.region === undefined || mark.place.side !== undefined) return mark;
    const before = marks.slice(0, i).findLast((m) => !small(m));
    const side = before?.place?.region === undefined ? undefined : before.place.side;
    return (side === 'left' || side === 'right') &&
      tokens[before?.from ?? -1]?.t === side &&
      tokens[before?.from ?? -1]?.ends === true &&
      tokens.slice(before?.to, mark.from).some(({ t }) => t === 'and')
      ? { ...mark, place: { ...mark.place, side } }
      : mark;
  });

/** "all the lower cheek teeth worn, not the sixes": of the jaw that was named. */
const wholeJaws = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark, i) => {
    const { place } = mark;
    if (
      place?.positions === undefined ||
      place.jaw !== undefined ||
      (place.side !== undefined && !place.weak) ||
      place.quadrants !== undefined ||
      place.codes !== undefined ||
      place.all ||
      (cueOf(marks.slice(0, i).findLast((m) => !small(m)))?.means !== 'absent' &&
        !contraries.has(`${tail(behind(marks, i, tokens), tokens)} not`))
    )
      return mark;
    const before = marks.slice(0, i).findLast((m) => m.place !== undefined)?.place;
    const said = marks.slice(0, i).some((m) => isHead(m) && cueOf(m) === undefined);
    return said && before?.jaw !== undefined && before.jaw !== 'both' && before.region === undefined
      ? {
          ...mark,
          place: { ...place, jaw: before.jaw, ...(before.side === 'left' || before.side === 'right' ? { side: before.side } : {}) },
        }
      : mark;
  });

/** "ulcer right cheek, no left": the side stands for that side of the place named on the other one. */
function wholeSides(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const named = where(marks, ({ place }) => place);
  return marks.map((mark, i) => {
    const side = bareSide(mark.place);
    const at = named.indexOf(i);
    if (side === undefined) return mark;
    // Only across a turn: "both sixes, left three mil" is another rule's.
    const other = [at - 1, at + 1]
      .map((k) => named[k])
      .find(
        (k) =>
          k !== undefined &&
          (turnsBetween(marks, Math.min(k, i), Math.max(k, i)) || (k < i && (calledNormal(marks, i) || counted(marks, tokens, k, i)))),
      );
    const whole = other === undefined ? undefined : marks[other]?.place;
    const codes = whole?.codes ?? [];
    // "hooks on one oh six and one eleven, none on the left": the same teeth of that side.
    // "expired, nothing of it left": what remains is no side.
    const led = ['the', 'on', 'his', 'her'].includes(tokens[mark.from - 1]?.t ?? '') || tokens[mark.to - 1]?.t === 'side';
    if (codes.length > 0)
      return led && codes.every((code) => sideOf(code) !== side)
        ? { ...mark, place: { codes: codes.map(otherSide), joined: codes.length === 1 ? 'one' : 'and' } }
        : mark;
    if (whole === undefined || bareSide(whole) !== undefined || whole.side === undefined || whole.side === side || whole.side === 'both')
      return mark;
    const filled = onSide({ ...whole, side: 'both' }, side);
    return filled ? { ...mark, place: filled } : mark;
  });
}
const turnsBetween = (marks: readonly Mark[], a: number, b: number): boolean =>
  nothingAt(marks, a) ||
  marks.slice(a + 1, b).some((mark) => cueOf(mark)?.means === 'absent' || (mark.from === mark.to && cueOf(mark)?.means === 'now')) ||
  (marks.slice(0, b).some((mark) => cueOf(mark)?.means === 'absent') && !marks.slice(a + 1, b).some(isHead));

/** "ulcer right cheek, and a couple on the left" */
const counted = (marks: readonly Mark[], tokens: readonly Token[], a: number, b: number): boolean => {
  const between = tokens
    .slice((marks[a] as Mark).to, (marks[b] as Mark).from)
    .map(({ t }) => t)
    .filter((t) => !['on', 'the', 'of', 'small', 'little'].includes(t));
  return between.length > 1 && between.includes('and') && counts.has(between.at(-1) ?? '') && !marks.slice(a + 1, b).some(isHead);
};
/** "right cheek ulcerated, left's clear" */
const calledNormal = (marks: readonly Mark[], at: number): boolean =>
  marks
    .slice(at + 1)
    .find((m) => !small(m))
    ?.terms?.some((t) => t.k === 'condition' && t.id === 'abnormality' && t.strength === 'absentSay') ?? false;
/** "nothing on the right cheek, two ulcers on the left" */
const nothingAt = (marks: readonly Mark[], a: number): boolean => {
  const before = marks.slice(0, a).findLast((m) => !small(m));
  return cueOf(before)?.say.includes('nothing') === true;
};

/** The turns that stand behind their place, or in a pronoun, put where a word of ruling out would stand. */
function withTurns(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const out: Mark[] = [];
  let ruled = false;
  let said = false;
  const gone = marks.some(({ terms }) =>
    terms?.some(
      (t) =>
        (t.k === 'condition' && (t.id === 'missing' || t.id === 'previously-extracted')) ||
        (t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'extract' && t.term.done),
    ),
  );
  marks.forEach((mark, i) => {
    const words = text(tokens, mark);
    if (isHead(mark) && !mark.place) {
      ruled = ruledOutAt(marks, i, tokens);
      said = true;
    }
    // "ulcer on the left's gone but there's one on the right"
    if (said && cueOf(mark)?.means === 'before' && cueOf(mark)?.looks === 'back' && text(tokens, mark).includes('gone')) ruled = true;
    // "... one on the left", "... three mil on two oh six": after what was ruled out, something is there.
    const one = mark.to - mark.from === 1 && (small(mark) || typeof mark.number === 'number') && counts.has(words[0] ?? '');
    const turns =
      said &&
      ruled &&
      marks.slice(i + 1).find((m) => !small(m))?.place !== undefined &&
      marks.slice(0, i).some(({ place }, k) => place !== undefined && k > 0) &&
      (one || mark.measure !== undefined || (mark.terms ?? []).some((t) => t.k === 'severity' || t.k === 'severityKept'));
    if (turns) {
      out.push(put(mark.from, 'now'));
      ruled = false;
      // "..., two on the right": how many is kept by no finding.
      if (typeof mark.number === 'number') {
        out.push({ from: mark.from, to: mark.to, terms: [{ k: 'glue' }] });
        return;
      }
    }
    // "..., one oh six doesn't", "... right side there's two": what is said of the place behind it.
    const rest = mark.place && said && !isHead(mark) ? behind(marks, i, tokens) : undefined;
    const told = tail(rest, tokens);
    if (rest !== undefined && !ruled && rulesOut(mark, told)) out.push(put(mark.from, 'absent'));
    else if (rest !== undefined && !ruled && onlyMaybe(marks, i, told, tokens)) out.push(put(mark.from, 'suspected'));
    else if (rest !== undefined && !ruled && nowWords.has(told) && cueOf(marks.slice(0, i).findLast((m) => !small(m)))?.means === 'before')
      out.push(put(mark.from, 'now'));
    else if (
      rest !== undefined &&
      ruled &&
      (contraries.has(`${told} not`) || (!leadsOn(marks, i, rest, tokens) && rest.some((m) => counts.has(text(tokens, m).at(-1) ?? ''))))
    )
      out.push(put(mark.from, 'now'));
    // "... taken out last year, two oh five still there": not what is said of the other one; what it is, is asked.
    if (rest !== undefined && gone && stillIn.test(told)) {
      out.push({ ...mark, unknown: true });
      return;
    }
    out.push(
      (said && out.at(-1)?.from === out.at(-1)?.to) || !belongsToTurn(marks, i, tokens)
        ? mark
        : { from: mark.from, to: mark.to, terms: [{ k: 'glue' }] },
    );
  });
  return out;
}

/** "no hooks", "not loose", "none of the lowers are loose": said not to be there. */
function ruledOutAt(marks: readonly Mark[], at: number, tokens: readonly Token[]): boolean {
  const before = marks.slice(0, at).findLastIndex((m) => !small(m));
  const lead = marks[before]?.place === undefined ? before : marks.slice(0, before).findLastIndex((m) => !small(m));
  const [cue, of] = [marks[before], marks[lead]];
  return (
    cueOf(cue)?.means === 'absent' ||
    (cueOf(of)?.means === 'absent' && of !== undefined && text(tokens, of).some((t) => t === 'none' || t === 'neither')) ||
    (marks[at]?.terms?.some((t) => t.k === 'condition' && t.strength === 'absentSay' && t.id !== 'abnormality') ?? false)
  );
}
/** "left cheek, two on the right": the words behind a comma lead to the next place. */
const leadsOn = (marks: readonly Mark[], at: number, rest: readonly Mark[], tokens: readonly Token[]): boolean =>
  tokens[(marks[at] as Mark).to - 1]?.ends === true &&
  marks[at + 1 + rest.length]?.place !== undefined &&
  ['on', 'at', 'in', 'the'].includes(tokens[(rest.at(-1) as Mark).to - 1]?.t ?? '');

const stillIn = /^(?:is |was |are )?still (?:there|in|here|present|in place)$/;
/** The few small words between a place and the end of the phrase, or the next place. */
function behind(marks: readonly Mark[], at: number, tokens: readonly Token[]): readonly Mark[] | undefined {
  // "four eleven has one, five mil": up to a pause, where a size follows it.
  const end = marks.findIndex(
    (mark, i) =>
      i > at &&
      (mark.place !== undefined ||
        mark.terms?.some((t) => t.k === 'stop') ||
        ((mark.measure ?? mark.grade) !== undefined && i > at + 1 && tokens[mark.from - 1]?.ends === true)),
  );
  const rest = marks.slice(at + 1, end < 0 ? marks.length : end);
  // "canine on four oh four, no canine on one oh four": the "no" is of the tooth that it names.
  if (end > at + 1 && isHead(marks[end]) && tokens[(marks[end - 1] as Mark).to - 1]?.ends !== true) return undefined;
  return rest.length > 0 &&
    rest.length <= 4 &&
    rest.every(
      (mark) =>
        small(mark) ||
        ['absent', 'suspected'].includes(cueOf(mark)?.means ?? '') ||
        nothingWrong(mark, tokens) ||
        typeof mark.number === 'number',
    )
    ? rest
    : undefined;
}

/** "no bother": turns nothing by itself, and of a place it says that nothing is there. */
const nothingWrong = (mark: Mark, tokens: readonly Token[]): boolean =>
  (mark.terms?.some((t) => t.k === 'cue' && t.cue.kind === 'pseudo' && t.cue.say.includes('no bother')) ?? false) ||
  (mark.unknown === true && (tokens[mark.from]?.t === 'quiet' || tokens[mark.from]?.t === 'silent'));

const tail = (rest: readonly Mark[] | undefined, tokens: readonly Token[]): string =>
  rest === undefined
    ? ''
    : rest
        .map((m) => text(tokens, m).join(' '))
        .join(' ')
        .replace(/^one (?!.*\bone\b)/, '')
        .replace(/ (?:though|mind|alright|at all)$/, '');

/** A word of ruling out behind its place, once the turn stands before it. */
function belongsToTurn(marks: readonly Mark[], at: number, tokens: readonly Token[]): boolean {
  if (!['absent', 'suspected'].includes(cueOf(marks[at])?.means ?? '')) return false;
  const place = marks.slice(0, at).findLastIndex(({ place: raw }) => raw !== undefined);
  const rest = place > 0 && marks.slice(0, place).some((m) => isHead(m)) ? behind(marks, place, tokens) : undefined;
  const told = tail(rest, tokens);
  return rest !== undefined && (rulesOut(marks[place] as Mark, told) || onlyMaybe(marks, place, told, tokens));
}
/** "hook on one oh six, two oh six maybe": what is thought of the last place, parted off by a pause, is of that one. */
function onlyMaybe(marks: readonly Mark[], at: number, told: string, tokens: readonly Token[]): boolean {
  if (!maybes.has(told)) return false;
  const { from, to, place } = marks[at] as Mark;
  const before = tokens[tokens[from - 1]?.t === 'the' ? from - 2 : from - 1];
  return (place?.codes?.length ?? 0) > 1
    ? tokens.slice(from, to - 1).some(({ ends }) => ends)
    : marks.slice(0, at).some((mark) => mark.place !== undefined) && (before?.ends === true || before?.t === 'and');
}
const maybes: ReadonlySet<string> = new Set(['maybe', 'possibly', 'perhaps', 'probably', 'possible', 'suspected', 'query']);
const nowWords: ReadonlySet<string> = new Set(['today', 'now', 'this time']);
/** Of a side "nothing" rules out what was found on the other one; of a tooth it says that the tooth is normal. */
const rulesOut = ({ place }: Mark, told: string): boolean =>
  contraries.has(told) || (told === 'nothing' && place?.side !== undefined && place.positions === undefined && place.codes === undefined);
