/**
 * Work told by a verb of handling and what was handled, which may be a word that points back: "took it off with the forceps",
 * "knocked three off it", "tried to pull two oh five", "wouldn't budge". What was done depends on what it was done to: a cap, a
 * hook, tartar, a tooth. Without a thing that was named nothing is made of it.
 */
import type { Item } from '../contract/item.ts';
import {
  handledAs,
  handledSay,
  handleSay,
  handling,
  managedSay,
  moved,
  movingSay,
  piecesSay,
  standsSay,
  thingsSay,
  type Handled,
} from '../lexicon/handling.ts';
import type { ProcedureId } from '../lexicon/procedures.ts';
import type { WorkState } from '../lexicon/work.ts';
import { gather } from './lists.ts';
import { readNumber } from './numbers.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { longest } from './trie.ts';
import { vocabulary, type Term } from './vocabulary.ts';

const pointing = new Set(['it', 'them', 'that', 'this', 'these', 'those', 'both']);
const particles = new Set(['off', 'out', 'down', 'back', 'level', 'away', 'free']);
/** Before a thing that is known: it is handled by its name. */
const definite = new Set(['the', 'that', 'this', 'those', 'these', 'his', 'her', 'its', 'both', 'all']);
const small = new Set(['to', 'be', 'get', 'getting', 'really', 'quite', 'at', 'all', 'just', 'even', 'the', 'it', 'in']);
const SPAN = 9;
const managed = managedSay.map((form) => form.split(' '));

interface Handling {
  readonly from: number;
  readonly to: number;
  readonly id: ProcedureId;
  /** How it stands, and the words that say so. */ readonly stands?: Stands;
  /** A number without a unit, between the verb and "off". */ readonly amount?: readonly [number, number];
  /** Where the particle stands apart from its verb: "took the ramp back" is no end of a tooth. */ readonly particle?: number;
}
interface Stands {
  readonly from: number;
  readonly to: number;
  readonly state: WorkState;
}
type Words = readonly string[];

export function handled(scanned: readonly Mark[], tokens: readonly Token[], last: Item | undefined): readonly Mark[] {
  const words = tokens.map(({ t }) => t);
  const marks = ofFound(scanned, tokens);
  const found = gather(words, (word, at) =>
    handledSay.has(word) || handleSay.has(word) || word === 'would' || word === 'had' || word === 'came' || lowering.has(word)
      ? handlingAt(marks, words, at, last)
      : undefined,
  ).slice(0, 3);
  return found.reduce((now, one) => withHandling(now, tokens, one), marks);
}

/** A place that stands for what was found there is handled as that is. */
const ofFound = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  tokens.some(({ of }) => of)
    ? marks.map((mark) => {
        const of = mark.place && tokens[mark.from]?.of;
        return of ? { ...mark, of } : mark;
      })
    : marks;

function handlingAt(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  if (lowering.has(words[at] ?? '')) return downTo(marks, words, at, last);
  if (words[at] === 'came') return cameOff(marks, words, at, last);
  if (words[at] === 'would') return refusedAt(marks, words, at, last);
  if (words[at] === 'had' && words[at + 1] === 'a') return goneAt(marks, words, at, last);
  const attempt = handleSay.has(words[at] ?? '') ? standsBefore(words, at) : undefined;
  if (!handledSay.has(words[at] ?? '') && attempt === undefined && !managedBefore(words, at)) return undefined;
  // What another rule reads from its own words stays as it is.
  if (
    attempt === undefined &&
    marks.some((mark) => mark.from <= at && mark.to > at && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure'))
  )
    return undefined;
  // "to remove the cap" says by itself what it was.
  if (marks.some((mark) => mark.from <= at && mark.to > at + 1 && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')))
    return undefined;
  const sized = attempt === undefined ? amountOff(marks, words, at, last) : undefined;
  if (sized) return sized;
  const span = SPAN + marks.reduce((sum, { of, from, to }) => sum + (of && from > at ? to - from : 0), 0);
  const end = words
    .slice(at + 1, at + span)
    .findIndex(
      (word) => particles.has(word) || (word === 'by' && (pointing.has(words[at + 1] ?? '') || definite.has(words[at + 1] ?? ''))),
    );
  const to = end < 0 ? undefined : at + 1 + end;
  const after = words.slice(at + 1, to ?? at + span);
  // "took half of it off": the half is how much.
  const half = after.slice(0, 2).indexOf('half');
  const rest = half < 0 ? after : after.slice(half + (after[half + 1] === 'of' ? 2 : 1));
  // "took all of them down"
  const counted = ['all', 'both'].includes(after[0] ?? '') && after[1] === 'of' && pointing.has(after[2] ?? '') ? after.slice(2) : after;
  const object = half >= 0 && (pointing.has(rest[0] ?? '') || definite.has(rest[0] ?? '')) ? rest : counted;
  // "the small one i took right off": what was found before stands before its verb.
  const fronted = object.every((word) => wholly.has(word)) ? frontedBy(marks, words, at) : undefined;
  if ((object.length === 0 && fronted === undefined) || object.some((word) => piecesSay.has(word))) return undefined;
  const particle = to === undefined ? undefined : words[to];
  // A pronoun stands right behind its verb; between the verb and the particle stands nothing but the thing.
  // "will take another three mil off two ten": a size off a tooth.
  if (
    attempt !== undefined &&
    particle === 'off' &&
    to !== undefined &&
    marks.some(({ measure, from }) => measure?.unit === 'mm' && from > at && from < to) &&
    (marks.some(({ place, from }) => place?.codes !== undefined && from > to) ||
      ((pointing.has(words[to + 1] ?? '') || further.has(words[words[at + 1] === 'a' ? at + 2 : at + 1] ?? '')) &&
        whatBefore(marks, words, at, last) === 'overgrowth'))
  )
    return { from: at, to: at + 1, id: 'reduce', stands: attempt };
  const more = attempt && particle === 'off' ? furtherOff(marks, words, at, last) : undefined;
  if (more && attempt) return { ...more, stands: attempt };
  // "that cap" names it; "that" alone points back.
  const ownName =
    definite.has(object[0] ?? '') &&
    object.length === after.length &&
    marks.some((mark) => mark.from === at + 2 && kindOf(mark) !== undefined);
  const points = pointing.has(object[0] ?? '') && !ownName && (to === undefined || object.length <= 2);
  if (points && attempt === undefined && to !== undefined && elsewhere(marks, words, to + 1)) return undefined;
  // "cracked the cap off seven oh six": by its name, at a place of the mouth.
  const byName = to !== undefined && definite.has(object[0] ?? '') && marks.some(({ place }) => place !== undefined);
  const done = byName ? workWithin(marks, at, to + 1) : undefined;
  if (done) return { from: at, to: at + 1, id: done, ...(attempt ? { stands: attempt } : {}) };
  const ofThat = fronted === undefined && marks.some((mark) => mark.of !== undefined && mark.from > at && mark.from < (to ?? at + span));
  const kind = fronted
    ? kindOf(fronted)
    : points
      ? // "coming to pull that": what stands between names no finding.
        whatBefore(marks, words, attempt && attempt.from < at ? attempt.from : at, last)
      : attempt !== undefined || byName || ofThat
        ? named(marks, at + 1, to ?? Math.min(words.length, at + span))
        : undefined;
  const id =
    kind === undefined
      ? undefined
      : particle !== undefined && handling[kind][particle]
        ? handling[kind][particle]
        : movingSay.has(words[at] ?? '') ||
            (kind === 'cap' && flicking.has(words[at] ?? '') && points && withTool(marks, words, object, at))
          ? moved[kind]
          : undefined;
  if (id === undefined) return undefined;
  return {
    from: at,
    to:
      points &&
      object === after &&
      to !== undefined &&
      particle !== undefined &&
      handling[kind as Handled][particle] &&
      particle !== 'by' &&
      particle !== 'level'
        ? to + 1
        : at + 1,
    id,
    ...(attempt ? { stands: attempt } : {}),
    ...(!points && to !== undefined && words[to] === 'back' ? { particle: to } : {}),
  };
}

const flicking: ReadonlySet<string> = new Set([
  'popped',
  'flicked',
  'whipped',
  'lifted',
  'prised',
  'prized',
  'picked',
  'pulled',
  'twisted',
]);
/** "popped them both, forceps", of caps: nothing behind what was popped but the tool, and caps go nowhere but off. */
const withTool = (marks: readonly Mark[], words: Words, object: Words, at: number): boolean => {
  const behind = at + 1 + object.findLastIndex((word) => pointing.has(word)) + 1;
  const tool = marks.find(({ from }) => from === behind);
  return (
    words.slice(at + 1, behind).every((word) => pointing.has(word) || word === 'of' || word === 'the') &&
    (behind === words.length || tool?.terms?.some((t) => t.k === 'work' && t.term.as === 'instrument') === true)
  );
};

const wholly: ReadonlySet<string> = new Set(['right', 'straight', 'clean', 'all', 'well']);
const byMe: ReadonlySet<string> = new Set(['i', 'we', 'have', 'had', 'just', 'then', 'also', 'only']);
/** What was found before, with nothing between it and the verb but who did it. */
const frontedBy = (marks: readonly Mark[], words: Words, at: number): Mark | undefined => {
  let to = at;
  while (byMe.has(words[to - 1] ?? '')) to -= 1;
  return to < at ? marks.find((mark) => mark.of !== undefined && mark.to === to) : undefined;
};

/** "took that off him", "popped it back in the bucket", "took it down to the end of the yard": no tooth is meant. */
function elsewhere(marks: readonly Mark[], words: Words, at: number): boolean {
  if (someone.has(words[at] ?? '')) return true;
  if (!towards.has(words[at] ?? '')) return false;
  const thing = words.findIndex((word, i) => i > at && !definite.has(word) && !['a', 'my', 'your', 'end', 'of'].includes(word));
  const ofMouth = (mark: Mark): boolean =>
    mark.place !== undefined ||
    mark.number !== undefined ||
    mark.measure !== undefined ||
    mark.terms?.some(({ k }) => k !== 'talk') === true;
  return thing >= 0 && thing <= at + 5 && !marks.some((mark) => mark.from <= thing && mark.to > thing && ofMouth(mark));
}
const someone: ReadonlySet<string> = new Set(['him', 'her', 'me', 'us', 'you']);
const towards: ReadonlySet<string> = new Set(['to', 'in', 'into', 'from', 'onto', 'off']);

const further: ReadonlySet<string> = new Set(['another', 'more', 'further']);
/** "will take another three off in the autumn", of what was taken down before. */
function furtherOff(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  const from = at + (words[at + 1] === 'a' && words[at + 2] === 'further' ? 3 : 2);
  const number = readNumber(
    words.map((t, word): Token => ({ t, word })),
    from,
  );
  return number !== undefined &&
    further.has(words[from - 1] ?? '') &&
    words[number.to] === 'off' &&
    number.value <= MOST &&
    last?.kind === 'treatment' &&
    last.amountMm !== undefined &&
    whatBefore(marks, words, at, last) === 'overgrowth'
    ? { from: at, to: at + 1, id: 'reduce', amount: [from, number.to] }
    : undefined;
}

/** "took three off it", said of what was measured in millimetres in the same breath. */
function amountOff(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  const tokens = words.map((t, word): Token => ({ t, word }));
  const from = ['another', 'about', 'a'].includes(words[at + 1] ?? '') ? at + 2 : at + 1;
  const number = readNumber(tokens, from);
  if (
    number === undefined ||
    words[number.to] !== 'off' ||
    whatBefore(marks, words, at, last) !== 'overgrowth' ||
    !(
      marks.some(({ measure, to }) => measure?.unit === 'mm' && to <= at) ||
      (last?.kind === 'finding' && last.measures?.some(({ unit }) => unit === 'mm'))
    )
  )
    return undefined;
  return { from: at, to: at + 1, id: 'reduce', amount: [from, number.to] };
}

/** "cap on eight oh six came off easy": what came off, unless it did so by itself. */
function cameOff(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  const particle = words[at + 1] ?? '';
  if (
    !['off', 'away'].includes(particle) ||
    /^(?:by itself|on its own|of its own|by themselves|on their own)\b/.test(words.slice(at + 2).join(' '))
  )
    return undefined;
  if (marks.some((mark) => mark.from <= at && mark.to > at && mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')))
    return undefined;
  const kind = whatBefore(marks, words, at, last);
  // "the hook came off by hand", of the one that was found before.
  const id =
    kind === 'cap' || kind === 'tartar' || (kind === 'overgrowth' && marks.some(({ of }) => of)) ? handling[kind][particle] : undefined;
  return id === undefined ? undefined : { from: at, to: at + 2, id };
}

const lowering = new Set(['down', 'reduced', 'lowered', 'shortened', 'trimmed']);
const wanting = new Set([
  'want',
  'wants',
  'need',
  'needs',
  'needed',
  'would',
  'could',
  'should',
  'will',
  'going',
  'try',
  'trying',
  'tried',
  'not',
  'wear',
  'worn',
  'was',
  'gone',
  'to',
]);
/** "one oh six hook down by two", "got it down to two": a number that nothing follows, of what is taken down in millimetres. */
function downTo(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  // "hooks down two mil each"
  if (
    words[at] === 'down' &&
    thingsSay[(words[at - 1] ?? '').replace(/s$/, '')] &&
    (marks.some((m) => m.from === at + 1 && m.measure?.unit === 'mm') ||
      words[at + 1] === 'level' ||
      (words[at + 1] === 'to' && words[at + 2] === 'level'))
  )
    // "down to level" says how far.
    return { from: at - 1, to: words[at + 1] === 'level' || words[at + 1] === 'to' ? at : at + 1, id: 'reduce' };
  const tokens = words.map((t, word): Token => ({ t, word }));
  const number = ['by', 'to'].includes(words[at + 1] ?? '') ? readNumber(tokens, at + 2) : undefined;
  const ends =
    number !== undefined &&
    (number.to >= words.length ||
      ['and', 'now', 'today', 'with', 'by'].includes(words[number.to] ?? '') ||
      marks.some((mark) => mark.from === number.to && mark.place !== undefined));
  if (
    number === undefined ||
    !ends ||
    words[at - 1] === 'is' ||
    number.value > MOST ||
    number.value < 1 ||
    words.slice(0, at).some((word) => wanting.has(word))
  )
    return undefined;
  // "hook reduced by two": the words of work name the hook themselves.
  const whole = marks.find(
    (mark) =>
      mark.from < at &&
      mark.to === at + 1 &&
      mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'reduce'),
  );
  return whole === undefined && whatBefore(marks, words, at, last) !== 'overgrowth'
    ? undefined
    : { from: whole?.from ?? at, to: at + 1, id: 'reduce', amount: [at + 2, number.to] };
}
/** No overgrowth is taken down by more millimetres. */
const MOST = 15;

/** "wolf tooth upper left, would not budge": the thing itself would not. */
function refusedAt(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  if (words[at + 1] !== 'not' || !['budge', 'shift', 'come', 'move'].includes(words[at + 2] ?? '')) return undefined;
  const particle = particles.has(words[at + 3] ?? '') || words[at + 3] === 'loose' ? words[at + 3] : undefined;
  const to = particle ? at + 4 : at + 3;
  const ends =
    to >= words.length ||
    ['so', 'and', 'but', 'today', 'yet', 'for', 'at', 'left', 'will', 'vet'].includes(words[to] ?? '') ||
    (words[to] === 'the' && words[to + 1] === 'vet');
  const before = marks.filter((mark) => mark.to <= at);
  // The horse that would not come or move is not meant, nor what was tried in words of its own.
  if (
    !ends ||
    before.some((mark) => mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')) ||
    standsSay.some(([form, state]) => state === 'attempted' && ` ${words.slice(0, at).join(' ')} `.includes(` ${form.join(' ')} `))
  )
    return undefined;
  const kind = whatBefore(marks, words, at, last);
  const id = kind === 'cap' || kind === 'tooth' ? moved[kind] : undefined;
  return id === undefined ? undefined : { from: at, to, id, stands: { from: at, to, state: 'attempted' } };
}

/** "had a go at one oh five, would not budge". */
function goneAt(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handling | undefined {
  const form = standsSay.find(([one]) => one[0] === 'had' && one.at(-1) === 'at' && one.every((word, i) => words[at + i] === word))?.[0];
  const failed =
    /\b(?:would not|will not|could not|can not|no (?:joy|luck)|gave up|failed|without success|(?:was|were) not for (?:shifting|moving|coming|budging|having))\b/.test(
      words.slice(at).join(' '),
    );
  if (form === undefined || !failed) return undefined;
  const to = at + form.length;
  // "that cap" names it; "that" alone points back.
  const points =
    pointing.has(words[to] ?? '') &&
    !(definite.has(words[to] ?? '') && marks.some((mark) => mark.from === to + 1 && kindOf(mark) !== undefined));
  const kind = points ? whatBefore(marks, words, at, last) : named(marks, to, Math.min(words.length, to + SPAN));
  const id = kind === undefined ? undefined : (moved[kind] ?? handling[kind].down);
  return id === undefined ? undefined : { from: at, to, id, stands: { from: at, to, state: 'attempted' } };
}

/** The words that say how it stands, right before the verb, with small words only between. */
function standsBefore(words: Words, at: number): Stands | undefined {
  for (let end = at; end > 0 && at - end <= 3; end -= 1) {
    const form = standsSay.find(([one]) => one.every((word, i) => words[end - one.length + i] === word));
    // "she does not want them out": whoever does not want it turns it down.
    if (form) return { from: end - form[0].length, to: end, state: words[at] === 'want' && form[1] === 'not-done' ? 'declined' : form[1] };
    if (!small.has(words[end - 1] ?? '')) return undefined;
  }
  return undefined;
}
const managedBefore = (words: Words, at: number): boolean =>
  managed.some((form) => form.every((word, i) => words[at - form.length + i] === word)) &&
  words[at - 3] !== 'not' &&
  words[at - 3] !== 'never';

/** What stands between the verb and its particle. */
function named(marks: readonly Mark[], from: number, to: number): Handled | undefined {
  const own = marks.filter((mark) => mark.from >= from && mark.from < to);
  return own.map(kindOf).find((kind) => kind !== undefined) ?? (own.some(({ place }) => place?.codes !== undefined) ? 'tooth' : undefined);
}
/** "cap off", said by itself: the verb before it says how. */
const workWithin = (marks: readonly Mark[], at: number, to: number): ProcedureId | undefined =>
  marks
    .filter((mark) => mark.from > at && mark.to <= to)
    .flatMap(({ terms }) =>
      (terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'procedure' && t.term.done ? [t.term.id] : [])),
    )[0];
/** What was named last, in this breath or before it. */
function whatBefore(marks: readonly Mark[], words: Words, at: number, last: Item | undefined): Handled | undefined {
  const before = marks.filter((mark) => mark.to <= at);
  if (before.some((mark) => words.slice(mark.from, mark.to).some((word) => piecesSay.has(word)))) return undefined;
  const heads = before.filter((mark) => mark.of !== undefined || mark.terms?.some((t) => t.k === 'condition'));
  if (heads.length > 0) return kindOf(heads.at(-1) as Mark);
  if (before.some(({ place }) => place?.codes !== undefined)) return 'tooth';
  // "took two mil off it", "i plan to take another two mil off it next time"
  if (last?.kind === 'treatment' && last.procedure === 'reduce') return 'overgrowth';
  return last?.kind === 'finding' && last.presence !== 'absent' ? handledAs[last.condition] : undefined;
}
const kindOf = (mark: Mark): Handled | undefined =>
  mark.of?.flatMap((id) => (id === 'fracture' ? [] : (handledAs[id] ?? [])))[0] ??
  (mark.terms ?? []).flatMap((t) => (t.k === 'condition' && t.strength !== 'absentSay' ? (handledAs[t.id] ?? []) : []))[0];

/** The marks with the verb as a head of work, and the words of trying as how it stands. */
function withHandling(marks: readonly Mark[], tokens: readonly Token[], one: Handling): readonly Mark[] {
  const head: Mark = { from: one.from, to: one.to, terms: [{ k: 'work', term: { as: 'procedure', id: one.id, done: true } }] };
  const state: readonly Term[] = one.stands ? [{ k: 'work', term: { as: 'state', state: one.stands.state } }] : [];
  const apart = one.stands !== undefined && one.stands.from !== one.from;
  const own = apart && one.stands ? [{ from: one.stands.from, to: one.stands.to, terms: state } satisfies Mark] : [];
  const heads = [apart ? head : { ...head, terms: [...(head.terms ?? []), ...state] }];
  // "dropped it by half": no number, kept as it was said.
  const part = /^(?:by )?((?:about |over |nearly )?(?:half|a third|two thirds|a quarter))\b/.exec(
    tokens
      .slice(one.to, one.to + 5)
      .filter(({ t }) => !pointing.has(t))
      .map(({ t }) => t)
      .join(' '),
  );
  const half = part ? tokens.findIndex(({ t }, i) => i >= one.to && /^(?:half|third|thirds|quarter)$/.test(t)) : -1;
  const said = half >= 0 ? [{ from: half, to: half + 1, measure: { said: part?.[1] ?? '', about: false } } satisfies Mark] : [];
  const sized = one.amount
    ? [
        {
          from: one.amount[0],
          to: one.amount[1],
          measure: { value: readNumber(tokens, one.amount[0])?.value ?? 0, unit: 'mm', about: false },
        } satisfies Mark,
      ]
    : [];
  const particle =
    one.particle === undefined
      ? []
      : [{ from: one.particle, to: one.particle + 1, terms: [{ k: 'work', term: { as: 'off' } }] } satisfies Mark];
  // "could not get the cap off": "cap off" by itself would be done, and here it says what is still there.
  const end = one.stands === undefined ? -1 : tokens.findIndex(({ t }, i) => i >= one.to && i < one.to + SPAN && particles.has(t));
  const undone =
    end < 0
      ? marks
      : marks.flatMap((mark): readonly Mark[] =>
          mark.from >= one.to &&
          mark.to === end + 1 &&
          mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.id === one.id)
            ? [
                {
                  from: mark.from,
                  to: end,
                  terms: longest(
                    vocabulary,
                    tokens.slice(mark.from, end).map(({ t }) => t),
                    0,
                  )?.values ?? [{ k: 'glue' as const }],
                },
                { from: end, to: mark.to, terms: [{ k: 'glue' as const }] },
              ]
            : [mark],
        );
  return [...own, ...heads, ...said, ...sized, ...particle].reduce<readonly Mark[]>(put, undone);
}

/** One mark in the place of those it covers; what it covers in part is left with the rest of its words. */
function put(marks: readonly Mark[], mark: Mark): readonly Mark[] {
  const cut = marks.flatMap((old): readonly Mark[] => {
    if (old.to <= mark.from || old.from >= mark.to) return [old];
    const rest = (
      [
        [old.from, Math.min(old.to, mark.from)],
        [Math.max(old.from, mark.to), old.to],
      ] as const
    ).filter(([from, to]) => to > from);
    // "took it out whole": how it came out stays said.
    const outcome = (old.terms ?? []).filter((t) => t.k === 'work' && t.term.as === 'outcome');
    return rest.map(([from, to]) => ({ from, to, terms: outcome.length > 0 && from > mark.from ? outcome : [{ k: 'glue' }] }));
  });
  const at = cut.findIndex(({ from }) => from >= mark.to);
  return at < 0 ? [...cut, mark] : [...cut.slice(0, at), mark, ...cut.slice(at)];
}
