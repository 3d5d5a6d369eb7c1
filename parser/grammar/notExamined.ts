/** Said to be not seen or not felt: never the same as normal. */
import { eachOfItsOwn, type Placing } from './groups.ts';
import type { ItemBody, Made } from './made.ts';
import { neitherOf, resolvePlace } from './resolve.ts';
import { noReason, notLooked, notLookedWords, type NotLooked } from '../lexicon/notExamined.ts';
import { scan, type Mark } from './scan.ts';
import { codeOf, positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

import type { RawPlace } from './places.ts';
import type { WorkRule } from './work.ts';
import { findingsIn } from './has.ts';

type Place = NonNullable<Extract<ItemBody, { kind: 'not-examined' }>['place']>;
interface Cue {
  readonly from: number;
  readonly to: number;
  readonly how: NotLooked;
}

/** "could not get to the tongue": where to, and no side of a tooth. */
const toThePart = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.map((mark): Mark => {
    const to = tokens[mark.from]?.t === 'to' && mark.terms?.some(({ k }) => k === 'surface');
    const place = to ? scan(tokens.slice(mark.from + 1, mark.to)).marks.find((one) => one.place !== undefined)?.place : undefined;
    return place ? { from: mark.from + 1, to: mark.to, place } : mark;
  });

export const notExamined: WorkRule = (all, tokens, { carry }) => {
  const words = tokens.map(({ t }) => t);
  if (!words.some((word) => notLookedWords.has(word))) return [];
  const marks = toThePart(all, tokens);
  const cue = cueIn(
    words,
    (at) => marks.some((mark) => mark.from === at && placed(mark)),
    (at) => placedBefore(marks, at) || (carry.half !== undefined && carry.place !== undefined),
  );
  const bare = bareAt(words);
  const plain = bare >= 0 && bare < (cue?.from ?? Infinity) ? bareNotSeen(marks, tokens, bare) : [];
  // "not seen, could not get the mirror back that far": why not is told behind it.
  if (cue === undefined || plain[0]?.body) return plain;
  const last = marks.findLastIndex((mark) => mark.from < cue.to);
  const named = marks.flatMap((mark, i) =>
    mark.terms?.some((t) => t.k === 'condition' && t.strength === 'say') && mark.place === undefined ? [i] : [],
  );
  const before = groupBefore(
    marks,
    tokens,
    marks.findIndex((mark) => mark.to > cue.from),
  );
  // "left cheek not looked at, lip too tight": what stands behind the comma is the reason.
  const why = whyBehind(marks, tokens, cue.to);
  const behind = before.length > 0 && tokens[cue.to - 1]?.ends === true ? [] : groupFrom(marks, words, last + 1).filter((i) => i < why);
  const object = named
    .filter(
      (i) =>
        (i > last && i < (behind[0] ?? Infinity) && small(words, marks[last] as Mark, marks[i] as Mark)) ||
        (i < last && (marks[i] as Mark).to <= cue.from && small(words, marks[i] as Mark, { from: cue.from, to: cue.from })),
    )
    .slice(0, 1);
  // "could not see any hooks": what was not seen is a finding ruled out, not a place left out.
  if (object.length > 0 && cue.how.sees) return [];
  const group = sided(marks, behind, before);
  const carried = group.length === 0 && carry.place !== undefined && marks.every(({ place }) => place === undefined) && object.length === 0;
  // "upper wolf teeth not checked": which of the uppers.
  const wolf = object.some((i) => (marks[i] as Mark).terms?.some((t) => t.k === 'condition' && t.id === 'wolf-tooth'));
  const rawAt = (i: number): RawPlace => {
    const raw = beyond(marks[i] as Mark, words);
    return wolf && raw.codes === undefined && raw.positions === undefined && raw.region === undefined
      ? { ...raw, positions: [5], plural: true }
      : raw;
  };
  const places = placesOf(
    carried ? (carry.place ?? []).map((raw) => ({ raw, marks: [] })) : group.map((i): Placing => ({ raw: rawAt(i), marks: [i] })),
  );
  // "unable to assess excursion": a movement is looked at where it is.
  const movement =
    object.length > 0 &&
    places.length === 0 &&
    (marks[object[0] as number] as Mark).terms?.some((t) => t.k === 'condition' && movements.has(t.id))
      ? [{ region: 'jaw-movement' as const }]
      : [];
  if (places.length === 0 && movement.length === 0) return [];
  const from = Math.max(cue.to, ...group.map((i) => (marks[i] as Mark).to), ...object.map((i) => (marks[i] as Mark).to));
  const heads = marks.flatMap((mark, i) => (mark.place === undefined && mark.terms?.some((t) => t.k === 'condition') ? [i] : []));
  const another = heads.find(
    (i) => (marks[i] as Mark).from >= from && marks.some((mark, p) => ofItsOwn(mark, tokens) && Math.abs(p - i) <= 3 && mark.from >= from),
  );
  // "..., but the tongue has an ulcer": another place with a finding of its own, and no reason.
  const but = words.findIndex(
    (word, at) =>
      at >= from &&
      word === 'but' &&
      heads.some((i) => (marks[i] as Mark).from > at) &&
      marks.some((mark) => mark.from > at && placed(mark)),
  );
  const end =
    but >= 0
      ? but
      : another === undefined
        ? words.length
        : Math.min(...marks.filter((mark, i) => mark.from >= from && (i === another || ofItsOwn(mark, tokens))).map((mark) => mark.from));
  // "too sore to examine": the reason stands in front of what was not done.
  const tooMuch = /^(too (?:\w+ ){1,3}?|(?:would|will|did|could) not (?!let|allow|get|manage|have|able)(?:\w+ ){1,5}?)(?:for me )?to\b/
    .exec(words.slice(cue.from, cue.to).join(' '))?.[1]
    ?.trim();
  const reason =
    tooMuch ??
    trimmed([
      ...(movement.length > 0 || wolf ? [] : object).flatMap((i) => words.slice((marks[i] as Mark).from, (marks[i] as Mark).to)),
      ...words.slice(from, end),
    ]);
  // "can't see two oh eight, it's missing": nothing is left that could be looked at.
  if (notThere.test(reason) && cue.how.sees) return [];
  const taken = marks.flatMap((mark, i) =>
    group.includes(i) ||
    object.includes(i) ||
    (mark.from < cue.to && mark.to > cue.from) ||
    (mark.from >= from && mark.from < end) ||
    (mark.from >= cue.from && mark.from < from)
      ? [i]
      : [],
  );
  if (cue.how.partly)
    return findingsIn(marks)
      ? []
      : [...places, ...movement].map((place) => ({
          marks: taken,
          rules: ['hardly seen'],
          doubts: [
            {
              doubt: 'two-readings',
              place,
              readings: [
                { label: '', bodies: [{ kind: 'not-examined', place, ...(reason !== '' ? { reason } : {}) }] },
                { label: 'examined', bodies: [] },
              ],
            },
          ],
        }));
  return [...places, ...movement].map((place) => ({
    body: { kind: 'not-examined', place, ...(reason !== '' ? { reason } : {}), ...(cue.how.means ? { means: cue.how.means } : {}) },
    marks: taken,
    rules: ['not examined'],
    ...(carried ? { how: { place: 'carried' as const } } : {}),
    // "one oh six", "couldn't see it": the place that waited.
    ...(carried && carry.half && carry.half.item === undefined ? { settles: [carry.half.doubt] } : {}),
    doubts: [],
  }));
};

/** "could not see past the nines on the right": those behind them. */
function beyond({ place, from }: Mark, words: readonly string[]): RawPlace {
  const raw = place as RawPlace;
  const lead = words[from - 1] === 'the' ? words[from - 2] : words[from - 1];
  const last = Math.max(...(raw.positions ?? []), ...(raw.codes ?? []).map(positionOf));
  if ((lead !== 'past' && lead !== 'beyond') || raw.relative !== undefined || last < 6 || last >= 11) return raw;
  const positions = Array.from({ length: 11 - last }, (_, i) => last + 1 + i);
  return raw.codes
    ? { codes: [...new Set(raw.codes.map(quadrantOf))].flatMap((q) => positions.map((p) => codeOf(q, p))), joined: 'and' }
    : { ...raw, positions, plural: true };
}

const movements: ReadonlySet<string> = new Set(['lateral-excursion', 'reduced-excursion', 'rostrocaudal-movement']);

/** The first words that say so, as a span of tokens; a bare "not seen" is none of them. */
function cueIn(words: readonly string[], toPlace: (at: number) => boolean, pointed: (at: number) => boolean): Cue | undefined {
  if (!words.some((word) => notLookedWords.has(word))) return undefined;
  const text = words.join(' ');
  const cues = notLooked.flatMap((how): Cue[] => {
    const found = how.pattern.exec(text);
    if (found === null || /^not (seen|felt)$/.test(found[0])) return [];
    // "did not touch three oh nine" tells of work left undone, not of what was not looked at.
    if (/\b(?:did|have|has) not (?:even )?touch(?:ed)?$/.test(found[0])) return [];
    const from = text
      .slice(0, found.index)
      .split(' ')
      .filter((w) => w !== '').length;
    const to = from + found[0].split(' ').length;
    // "saw two eleven but could not feel it": the place itself.
    if (how.sees && ['it', 'them'].includes(words[to] ?? '') && pointed(from)) return [{ from, to: to + 1, how }];
    // "can not see any of the elevens": which, and no finding.
    const anyOf = words[to] === 'any' && words[to + 1] === 'of' && (toPlace(to + 2) || toPlace(to + 3));
    return how.sees &&
      !toPlace(to) &&
      !anyOf &&
      ['any', 'anything', 'why', 'that', 'how', 'a', 'an', 'much', 'many', 'one', 'lots', 'it', 'them', 'these', 'those'].includes(
        words[to] ?? '',
      )
      ? []
      : [{ from, to, how }];
  });
  return cues.sort((a, b) => a.from - b.from || b.to - a.to)[0];
}

const joining = new Set([
  'the',
  'of',
  'on',
  'in',
  'at',
  'and',
  'or',
  'nor',
  'a',
  'an',
  'his',
  'her',
  'any',
  'to',
  'into',
  'was',
  'were',
  'is',
  'are',
  'have',
  'has',
  'been',
  'i',
  'we',
  'both',
  'all',
  'back',
  'for',
  'round',
  'around',
  'near',
  'behind',
  'past',
  'beyond',
  'up',
  'tooth',
  'teeth',
]);
const small = (words: readonly string[], a: { readonly to: number }, b: { readonly from: number; readonly to: number }): boolean =>
  words.slice(a.to, b.from).every((word) => joining.has(word));
/** A place named with no finding beside it. */
const placedBefore = (marks: readonly Mark[], at: number): boolean =>
  !findingsIn(marks) && marks.some((mark) => mark.to <= at && placed(mark));
/** Where a bare "not seen" stands. */
const bareAt = (words: readonly string[]): number =>
  words.findIndex((word, i) => word === 'not' && ['seen', 'felt'].includes(words[i + 1] ?? ''));
const placed = (mark: Mark | undefined): boolean => mark?.place !== undefined;

/** Places one after another behind the cue, with small words only between them: what follows them is the reason. */
const hadIt: ReadonlySet<string> = new Set(['was', 'were', 'is', 'kept', 'keeps', 'would', 'will', 'did', 'got', 'gets', 'went']);
/** "haven't felt the bars, his tongue was everywhere": the place behind the pause is in the reason, where nothing is found on it. */
const whyBehind = (marks: readonly Mark[], tokens: readonly Token[], cue: number): number => {
  const at = marks.findIndex(
    ({ place, from, to }) =>
      place !== undefined &&
      from > cue &&
      ['his', 'her'].includes(tokens[from - 1]?.t ?? '') &&
      tokens[from - 2]?.ends === true &&
      hadIt.has(tokens[to]?.t ?? ''),
  );
  return at < 0 || marks.slice(at).some(({ terms }) => terms?.some(({ k }) => k === 'condition')) ? Infinity : at;
};
function groupFrom(marks: readonly Mark[], words: readonly string[], start: number): readonly number[] {
  const first = marks.findIndex((mark, i) => i >= start && placed(mark));
  if (
    first < 0 ||
    (!small(words, { to: (marks[start] as Mark).from }, marks[first] as Mark) &&
      marks.slice(start, first).some((mark) => mark.unknown === true))
  )
    return [];
  const group = [first];
  for (let i = first + 1; i < marks.length; i += 1)
    if (placed(marks[i]) && small(words, marks[group.at(-1) as number] as Mark, marks[i] as Mark)) group.push(i);
  return group;
}
function groupBefore(marks: readonly Mark[], tokens: readonly Token[], end: number): readonly number[] {
  const words = tokens.map(({ t }) => t);
  // "ulcer on the left cheek, right cheek not looked at": the first is where the ulcer is.
  const whole = marks.slice(0, end).some(({ terms, place }) => place === undefined && terms?.some((t) => t.k === 'condition'));
  const parted = (i: number): boolean => whole && tokens[(marks[i] as Mark).to - 1]?.ends === true;
  const last = marks.findLastIndex((mark, i) => i < end && placed(mark));
  if (last < 0) return [];
  const group = [last];
  for (let i = last - 1; i >= 0; i -= 1)
    if (placed(marks[i]) && !parted(i) && small(words, marks[i] as Mark, marks[group[0] as number] as Mark)) group.unshift(i);
  return group;
}

/** "left masseter felt fine but could not get near the right": a side alone takes its region from the place before it. */
function sided(marks: readonly Mark[], behind: readonly number[], before: readonly number[]): readonly number[] {
  const bare = (i: number): boolean => {
    const raw = marks[i]?.place;
    return (
      raw?.side !== undefined && raw.codes === undefined && raw.region === undefined && raw.positions === undefined && raw.jaw === undefined
    );
  };
  if (behind.length === 0) return before;
  return behind.every(bare) && before.length > 0 ? [...before.slice(-1), ...behind] : behind;
}

/** Each region is an item of its own; teeth, gaps and rows are one. */
function placesOf(placings: readonly Placing[]): readonly Place[] {
  const wanted = { kinds: ['T', 'S', 'R', 'G'] as const, missing: new Set<string>(), rows: true };
  const side =
    placings.length === 2 && placings[1]?.raw.region === undefined && placings[1]?.raw.codes === undefined
      ? placings[1]?.raw.side
      : undefined;
  const region = placings[0]?.raw.region;
  const all =
    side !== undefined && region !== undefined
      ? [{ ...(placings[0] as Placing), raw: { ...(placings[0] as Placing).raw, side } }]
      : placings;
  const regions = all.filter(({ raw }) => raw.region !== undefined && raw.codes === undefined);
  const rest = all.filter((placing) => !regions.includes(placing));
  return [...regions.map((one) => [one]), ...(rest.length > 0 ? [rest] : [])].flatMap((group) => {
    const { place } = resolvePlace(eachOfItsOwn(neitherOf(group)), wanted);
    return place === null ? [] : [place];
  });
}

const notThere = /^(?:(?:it|they|that|is|are|has) )*(?:missing|gone|not there)$/;
/** A tooth, or a part of one jaw behind a pause with nobody in it: "couldn't see three oh nine, points on the lower right six", but "..., he's sore on the upper right". */
function ofItsOwn({ place, from }: Mark, tokens: readonly Token[]): boolean {
  if (place === undefined || place.codes !== undefined) return place !== undefined;
  const part = tokens.slice(tokens.slice(0, from).findLastIndex(({ ends }) => ends === true) + 1, from);
  const who = part.some(({ t }) => whose.has(t));
  return (
    !who &&
    place.region === undefined &&
    place.jaw !== undefined &&
    (place.side ?? place.positions ?? place.plural ?? place.row) !== undefined
  );
}
const whose: ReadonlySet<string> = new Set(['he', 'she', 'his', 'her', 'it', 'him', 'because', 'cos', 'too', 'as']);

/** A reason in its own words, less the words at its edges that give none. */
function trimmed(words: readonly string[]): string {
  const idle = new Set(noReason);
  const from = words.findIndex((word) => !idle.has(word));
  // "would not open far enough": how far.
  const last = words.findLastIndex((word, i) => !idle.has(word) || (word === 'enough' && reaching.has(words[i - 1] ?? '')));
  return from < 0 ? '' : words.slice(from, last + 1).join(' ');
}
const reaching: ReadonlySet<string> = new Set(['far', 'wide', 'still', 'long']);

/** The marks of the clause that a bare "not seen" stands in: between two pauses, or from the place right before it where a finding has one of its own. */
function clauseAt(marks: readonly Mark[], tokens: readonly Token[], at: number): readonly number[] {
  const all = marks.map((_, i) => i);
  const before = marks.findLastIndex((mark) => placed(mark) && mark.to <= at);
  const head = marks.findLastIndex((mark) => mark.to <= at && mark.terms?.some((t) => t.k === 'condition') === true && !placed(mark));
  const pause = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  const end = tokens.findIndex(({ ends }, i) => i > at && ends === true);
  const clause = all.filter((i) => (marks[i] as Mark).from >= pause && (end < 0 || i === before || (marks[i] as Mark).to <= end + 1));
  if (clause.some((i) => placed(marks[i])) && (head < 0 || (marks[head] as Mark).from < pause) && before >= 0) {
    // What is said behind it, and is nothing found or done, is why.
    const rest = all.slice((clause.at(-1) as number) + 1);
    const why = !rest.some((i) => marks[i]?.terms?.some((t) => t.k === 'condition' || (t.k === 'work' && t.term.as === 'procedure')));
    return why ? [...clause, ...rest] : clause;
  }
  if (!findingsIn(marks)) return all;
  // "hook one oh six two eleven not seen": the finding has its own place.
  const own = marks.some((mark, i) => placed(mark) && i > head && i < before);
  return own && head < before ? all.slice(before) : [];
}

/** A bare "not seen" after a place: absent, or not looked at? Asked, never assumed. */
function bareNotSeen(whole: readonly Mark[], tokens: readonly Token[], at: number): readonly Made[] {
  const clause = clauseAt(whole, tokens, at);
  const marks = clause.map((i) => whole[i] as Mark);
  const words = tokens.slice(marks[0]?.from ?? 0, marks.at(-1)?.to ?? 0).map(({ t }) => t);
  const { place } = resolvePlace(
    clause.flatMap((i) => (whole[i]?.place ? [{ raw: (whole[i] as Mark).place as RawPlace, marks: [i] }] : [])),
    { kinds: ['T', 'S', 'R', 'G'], missing: new Set() },
  );
  if (place === null) return [];
  const rest = /\bnot (seen|felt)\b(?: (?:today|yet))?(.*)$/.exec(words.join(' '));
  const reason = trimmed((rest?.[2] ?? '').split(' ').filter((word) => word !== ''));
  // A reason is one for not having looked.
  if (reason !== '')
    return [
      {
        body: { kind: 'not-examined', place, means: rest?.[1] as 'seen' | 'felt', ...(reason !== '' ? { reason } : {}) },
        marks: clause,
        rules: ['not examined'],
        doubts: [],
      },
    ];
  return [
    {
      marks: clause,
      rules: ['bare not seen'],
      doubts: [
        {
          doubt: 'two-readings',
          place,
          readings: [
            {
              label: 'missing',
              bodies: 'teeth' in place ? [{ kind: 'finding', condition: 'missing', presence: 'present', when: 'now', place }] : [],
            },
            { label: 'not examined', bodies: [{ kind: 'not-examined', place }] },
          ],
        },
      ],
    },
  ];
}
