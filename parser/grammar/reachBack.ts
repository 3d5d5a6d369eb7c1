/**
 * A finding named again to put it right, phrases later: "that hook was on the right, not the left", "the gap is ten eleven, not
 * nine ten". It is read as a correction of that finding and of no other; what it was not stands behind and is not looked at again.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { correctionSay } from '../lexicon/corrections.ts';
import { standing, type Carry } from './carry.ts';
import { formAt, formsOf } from './forms.ts';
import { gather } from './lists.ts';
import type { RawPlace } from './places.ts';
import { codeWords } from './pointing.ts';
import { isHead, scan, type Mark } from './scan.ts';
import { areNeighbours, codeOf, positionOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

type Finding = Extract<Item, { kind: 'finding' }>;
/** The phrase as a correction, and the finding it corrects as the last one made. */
export interface Reached {
  readonly tokens: readonly Token[];
  readonly carry: Carry;
}

/** Words of taking back that stand by themselves: no "that is", which may begin the finding's own name. */
const takingBack = formsOf(
  [
    ...correctionSay.filter((form) => !/\b(?:that|that's|it|is|was|be)$/.test(form)),
    'i put',
    'i said',
    'i had',
    'i called',
    'i gave you',
  ].map((form) => [form.split(' '), true] as const),
);
const leads: ReadonlySet<string> = new Set(['so', 'well', 'oh', 'okay', 'ok', 'and', 'but', 'actually', 'wait', 'no']);
const verb = /^(?:should (?:be|have been)|ought to be|wants to be|needs to be|(?:it )?(?:was|is|should be)|were|are|goes)(?= |$)/;
const tails = formsOf(['not', 'instead of', 'rather than'].map((form) => [form.split(' '), true] as const));
/** It was so then, and is no mistake now. */
const ofThen: ReadonlySet<string> = new Set([
  'last',
  'ago',
  'before',
  'previously',
  'then',
  'today',
  'now',
  'still',
  'year',
  'visit',
  'always',
]);
/** How many words may name it. */
const LONGEST_NAME = 8;
/** Stands in the place of words that have done their work. */
const idle = 'well';

export function reachedBack(tokens: readonly Token[], context: Context, carry: Carry): Reached | undefined {
  // "change the hook to four mil"
  const changes = changing.has(tokens[0]?.t ?? '');
  if (!changes && !tokens.some(({ t }) => verbWords.has(t))) return undefined;
  let from = changes ? 1 : 0;
  let sorry = false;
  for (;;) {
    const form = formAt(takingBack, tokens, from);
    if (form) sorry = true;
    else if (!leads.has(tokens[from]?.t ?? '')) break;
    from += form?.words.length ?? 1;
  }
  const words = tokens.map(({ t }) => t);
  // "... on the right was five mil": the verb of all that names it.
  // "I put the gap on the right, it should be the left": what was said before comes first, and what is so behind it.
  const told = saidBefore.test(words.slice(0, from).join(' '));
  const at = changes
    ? words.findIndex((word, i) => i > from && i - from <= LONGEST_NAME && word === 'to')
    : told
      ? words.findLastIndex((word, i) => i > from && word === 'it' && verb.test(words.slice(i).join(' ')) && tokens[i - 1]?.ends === true)
      : words.findIndex((_, i) => i > from && i - from <= LONGEST_NAME && verb.test(words.slice(i).join(' ')));
  if (at < 0) return undefined;
  const end = changes ? at + 1 : at + (verb.exec(words.slice(at).join(' '))?.[0].split(' ').length ?? 0);
  const back = tokens.findLastIndex((_, i) => i > end && formAt(tails, tokens, i) !== undefined);
  const not =
    back < 0 ? [] : scan(tokens.slice(back + (formAt(tails, tokens, back)?.words.length ?? 1))).marks.filter((mark) => !small(mark));
  const tail = not.length > 0 && not.every((mark) => tells(mark) || mark.number !== undefined) ? back : tokens.length;
  const which = words[from] as string;
  const rest = tokens.slice(end, tail);
  const meant =
    which === 'that' ||
    sorry ||
    tail < tokens.length ||
    words[at] === 'should' ||
    changes ||
    (which === 'the' && /\b(?:actually|sorry)$/.test(words.join(' '))) ||
    (which === 'the' &&
      (words[at] === 'was' ||
        /^(?:on )?both(?: sides)?$/.test(
          words
            .slice(end)
            .filter((word) => word !== 'though')
            .join(' '),
        )));
  if (!meant || rest.some(({ t }) => ofThen.has(t)) || !putsRight(rest, sorry || tail < tokens.length)) return undefined;
  const target = named(tokens.slice(from, at), not, tail < tokens.length, context, carry);
  if (target === undefined) return undefined;
  const gap = target.place && 'spaces' in target.place ? betweenIn(rest, target.place.spaces[0]?.[0] as string) : undefined;
  const done = ({ word }: Token): Token => ({ t: idle, word });
  return {
    tokens: [
      { t: 'correction', word: tokens[0]?.word ?? 0, ends: true },
      ...tokens.slice(1, end).map(done),
      ...(gap ?? rest),
      ...tokens.slice(tail).map(done),
    ],
    carry: { ...carry, last: target.id, half: undefined, ...placeOf(target.place) },
  };
}
const changing: ReadonlySet<string> = new Set(['change', 'switch', 'alter', 'amend']);
const saidBefore = /\bi (?:put|said|had|called|gave you)$/;
const verbWords: ReadonlySet<string> = new Set(['was', 'is', 'be', 'been', 'were', 'are', 'goes']);

const small = (mark: Mark): boolean => mark.terms?.some(({ k }) => k === 'glue' || k === 'filler') ?? false;
const tells = (mark: Mark): boolean =>
  mark.place !== undefined ||
  mark.measure !== undefined ||
  mark.grade !== undefined ||
  (mark.terms ?? []).some(({ k }) => k === 'severity' || k === 'severityKept' || k === 'surface' || k === 'qualifier');

/** What is to stand in its place, and nothing that is no part of a finding. */
function putsRight(rest: readonly Token[], another: boolean): boolean {
  const marks = scan(rest).marks.filter((mark) => !small(mark));
  return (
    marks.length > 0 &&
    marks.every(
      (mark) =>
        tells(mark) ||
        mark.number !== undefined ||
        (another && isHead(mark) && (mark.terms ?? []).some((t) => t.k === 'condition' && t.strength !== 'absentSay')),
    )
  );
}

/** The finding that some words name: by what it is, and its place where they say one, and where it was said not to be. "it": the last one. */
function named(name: readonly Token[], not: readonly Mark[], told: boolean, context: Context, carry: Carry): Finding | undefined {
  if (name.length === 1 && ['it', 'that'].includes(name[0]?.t ?? '')) {
    const last = told ? standing(context, carry.last) : undefined;
    return last?.kind === 'finding' && last.presence === 'present' ? last : undefined;
  }
  const marks = scan(name).marks.filter((mark) => !small(mark) && name[mark.from]?.t !== 'that');
  const heads = gather(marks, ({ terms }) => terms?.flatMap((t) => (t.k === 'condition' && t.strength !== 'absentSay' ? [t.id] : []))[0]);
  const places = gather(marks, ({ place }) => place);
  if (heads.length !== 1 || places.length > 1 || marks.some((mark) => mark.unknown || mark.measure || mark.grade)) return undefined;
  const ids = alike(heads[0] as ConditionId);
  const found = context.items.filter(
    (item): item is Finding =>
      item.kind === 'finding' && item.presence === 'present' && item.when === 'now' && ids.includes(item.condition),
  );
  const there = found.filter((item) => places.every((raw) => item.place !== null && lies(item.place, raw)));
  const wrong = there.filter(({ place }) => not.every((mark) => mark.place === undefined || (place !== null && lies(place, mark.place))));
  return (wrong.length > 0 ? wrong : there).at(-1);
}
/** "the sharp one", "that cap": one word for several. */
const alike = (id: ConditionId): readonly ConditionId[] =>
  id === 'sharp' ? ['sharp', 'sharp-enamel-points'] : id === 'retained-cap' || id === 'loose-cap' ? ['retained-cap', 'loose-cap'] : [id];

/** Whether a place is where some words say. */
export function lies(place: Place, { side, jaw, codes, positions }: RawPlace): boolean {
  const teeth = 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : [];
  const left =
    'rows' in place ? place.rows.every((row) => row.endsWith('left')) : teeth.every((tooth) => [2, 3, 6, 7].includes(quadrantOf(tooth)));
  if (codes) return codes.every((code) => teeth.includes(code));
  if (positions && !positions.every((position) => teeth.some((tooth) => positionOf(tooth) === position))) return false;
  if (jaw && jaw !== 'both' && teeth.length > 0 && (jaw === 'upper') !== [1, 2, 5, 6].includes(quadrantOf(teeth[0] as string)))
    return false;
  return side === undefined || side === 'both' || ('region' in place ? place.side === side : left === (side === 'left'));
}

/** What the words lean on: the place of the finding that is put right. */
const placeOf = (place: Place | null): Pick<Carry, 'place'> =>
  place && 'teeth' in place
    ? { place: [{ codes: place.teeth, joined: place.teeth.length === 1 ? 'one' : 'and' }] }
    : place && 'region' in place
      ? { place: [{ region: place.region, ...(place.side ? { side: place.side } : {}) }] }
      : {};

/** "that gap was ten eleven": of the row that the gap lies in. */
function betweenIn(rest: readonly Token[], tooth: string): readonly Token[] | undefined {
  const said = scan(rest).marks.filter((mark) => !small(mark));
  const numbers = said.flatMap(({ number }) => number ?? []);
  const [a, b] = numbers.map((number) => codeOf(quadrantOf(tooth), number));
  const first = rest[said[0]?.from ?? 0];
  return said.every(({ number }) => number !== undefined) && numbers.length === 2 && first && a && b && areNeighbours(a, b)
    ? ['between', ...codeWords(a), 'and', ...codeWords(b)].map((t) => ({ t, word: first.word }))
    : undefined;
}
