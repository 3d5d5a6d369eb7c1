/**
 * Words that the grammar could not place, read as the words of the trade that they sound like. Only where the phrase does
 * not read as it stands, holds something of the trade besides, and reads in whole once mended. Two mendings that stand
 * level are asked about. What was mended by likeness alone, and a number or a side that was mended, counts once a person says so; so does a medicine.
 */
import { light } from '../lexicon/fillers.ts';
import { digitSounds, mishearings, numberMishearings } from '../lexicon/mishearings.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import { lengthUnits, volumeUnits } from '../lexicon/units.ts';
import type { ItemBody, Made, MadeDoubt } from './made.ts';
import { soundsLike } from './likeness.ts';
import { digit } from './numbers.ts';
import type { Reading } from './read.ts';
import { headSpan, scan, type Mark } from './scan.ts';
import { expand } from './template.ts';
import { buildTrie, type Trie } from './trie.ts';
import { agentWords, soundForms } from './vocabulary.ts';

/** Words of the phrase, by their indices, and what they are read as. */
export interface Mend {
  readonly words: readonly number[];
  readonly means: string;
  readonly kind: 'word' | 'number' | 'agent';
}
export interface Mended {
  readonly reading: Reading;
  readonly mends: readonly Mend[];
}
interface Option {
  readonly from: number;
  readonly to: number;
  readonly means: string;
  readonly kind: Mend['kind'];
  readonly cost: number;
  readonly listed: boolean;
  /** Kept as it is. */ readonly same?: true;
  /** Left out of place. */ readonly left?: true;
}

/** Words out of place, at most: a phrase with more of them is talk, not a phrase half heard. */
const MOST_UNKNOWN = 5;
/** Mendings tried, cheapest first; and how near a second one must be to stand level with the first. */
const TRIED = 24,
  LEVEL = 0.06;
/** A listed mishearing is as good as certain, once the phrase reads in whole by it. */
const LISTED = 0.02,
  LIKE = 0.1;
/** Leaving a word out of place costs more than any listed mending. */
const LEFT = 0.2;

const unitWords: ReadonlySet<string> = new Set([...lengthUnits.mm, ...lengthUnits.cm, ...volumeUnits]);
const digitNames = ['zero', ...Object.keys(digitWords).filter((name) => (digitWords[name] as number) > 0)];
const smallWords: ReadonlySet<string> = new Set(light);
const formWords: ReadonlySet<string> = new Set(soundForms);
type Row = Pick<Option, 'means' | 'kind'>;
const kindOf = (means: string): Mend['kind'] => (means.split(' ').some((word) => agentWords.has(word)) ? 'agent' : 'word');
const listed: Trie<Row> = buildTrie([
  ...mishearings.flatMap(({ heard, means }) => heard.flatMap(expand).map((words) => [words, { means, kind: kindOf(means) }] as const)),
  ...numberMishearings.flatMap(({ heard, means }) =>
    heard.flatMap(expand).map((words) => [words, { means, kind: 'number' as const }] as const),
  ),
]);

/**
 * @param words as they were heard
 * @param reading what was made of them
 * @param readAs reads other words in the same context
 * @param waiting half a finding waits for these words
 * @returns the reading of the mended phrase, its tokens counted in the words as heard; undefined where nothing was mended
 */
export function mend(
  words: readonly string[],
  reading: Reading,
  readAs: (words: readonly string[]) => Reading,
  waiting: boolean,
): Mended | undefined {
  const unknown = unplaced(reading);
  if (unknown.size === 0 || unknown.size > MOST_UNKNOWN) return undefined;
  const plain = words.map((w) => w.toLowerCase().replace(/[^a-z0-9']/g, ''));
  const found: { readonly mended: Mended; readonly cost: number; readonly meaning: string; readonly listed: boolean }[] = [];
  const anchors = scan(reading.tokens)
    .marks.filter((mark) => tells(mark) || hints(mark))
    .map((mark): Anchor => ({ words: reading.tokens.slice(mark.from, mark.to).map(({ word }) => word), tells: tells(mark) }));
  // What reads as something already is mended by what is known to be misheard, never by likeness alone; nor is a phrase that tells of no place or size.
  const free = reading.made.length === 0 && anchors.some((anchor) => anchor.tells);
  for (const { options, cost } of ways(plain, unknown, free)) {
    if (found[0] !== undefined && cost > found[0].cost + LEVEL) break;
    // What a list says outranks what merely sounds near.
    if (found[0]?.listed && options.some(({ listed: sure }) => !sure)) continue;
    const changes = options.filter(({ same }) => !same);
    const left = options.filter((option) => option.left).length;
    if (left > 0 && changes.some(({ listed: sure }) => !sure)) continue;
    if (changes.length === 0 || !anchored(anchors, changes, plain, waiting, left > 0)) continue;
    const mended = by(changes, left, words, readAs, reading);
    if (mended !== undefined)
      found.push({
        mended,
        cost,
        listed: options.every(({ listed: sure }) => sure),
        meaning: JSON.stringify(mended.reading.made.map(({ body }) => body)),
      });
  }
  const [first] = found;
  const rival = found.find(({ meaning }) => meaning !== first?.meaning);
  return first && rival ? asked(first.mended, rival.mended) : first?.mended;
}

/** Words that no rule could place. */
function unplaced({ role, marks, tokens, made }: Reading): ReadonlySet<number> {
  const free = !role.includes('unknown')
    ? []
    : marks.flatMap((mark, i) => (role[i] === 'unknown' ? tokens.slice(mark.from, mark.to).map(({ word }) => word) : []));
  // A medicine takes its whole phrase, with whatever strange word stands beside it.
  const dosed = made.some(({ body }) => body?.kind === 'sedation' || body?.kind === 'medication');
  return new Set([
    ...free,
    ...(dosed ? scan(tokens).marks.flatMap((mark) => (mark.unknown ? tokens.slice(mark.from, mark.to).map(({ word }) => word) : [])) : []),
  ]);
}

/** Every way of mending all the words out of place, cheapest first. */
function ways(
  plain: readonly string[],
  unknown: ReadonlySet<number>,
  free: boolean,
): readonly { readonly options: readonly Option[]; readonly cost: number }[] {
  const all = plain.flatMap((_, at) =>
    free ? [...listedAt(plain, at, unknown), ...alikeAt(plain, at, unknown)] : listedAt(plain, at, unknown),
  );
  let paths: { readonly options: readonly Option[]; readonly cost: number; readonly to: number }[] = [{ options: [], cost: 0, to: 0 }];
  for (const at of [...unknown].sort((a, b) => a - b)) {
    paths = paths
      .flatMap((path) =>
        path.to > at
          ? [path]
          : all
              .filter(({ from, to }) => from >= path.to && from <= at && at < to)
              .map((option) => ({ options: [...path.options, option], cost: path.cost + option.cost, to: option.to })),
      )
      .sort((a, b) => a.cost - b.cost)
      .slice(0, TRIED);
  }
  return paths;
}

const carried: ReadonlySet<string> = new Set(['a', 'an', 'the', 'no', 'some', 'two', 'quite']);
/** What the words from `at` on are known to be heard for, or may be as they are. */
function listedAt(plain: readonly string[], at: number, unknown: ReadonlySet<number>): readonly Option[] {
  const options: Option[] = [];
  let node: Trie<Row> | undefined = listed;
  // "carries a hook", "carries no hooks": a verb that has what it carries behind it, and no caries.
  if (/^carr(?:ies|y|ied|ying)$/.test(plain[at] as string) && carried.has(plain[at + 1] ?? '')) node = undefined;
  for (let to = at; to < plain.length && node; to += 1) {
    node = node.next.get(plain[to] as string);
    // "for all" alone is no number: a digit that found no place stands behind it.
    for (const row of node?.values ?? [])
      options.push({
        from: at,
        to: row.kind === 'number' && unknown.has(to + 1) && !unknown.has(to) ? to + 2 : to + 1,
        means: row.kind === 'number' && unknown.has(to + 1) && !unknown.has(to) ? `${row.means} ${plain[to + 1] as string}` : row.means,
        kind: row.kind,
        cost: LISTED,
        listed: true,
      });
  }
  // A word of the trade, or a number, may be right as it is and only wait for its neighbour.
  if (unknown.has(at) && (formWords.has(plain[at] as string) || digit(plain[at]) !== undefined || (plain[at] as string) in teenWords))
    options.push({ from: at, to: at + 1, means: plain[at] as string, kind: 'word', cost: 0, listed: true, same: true });
  // Words around what is said need no place, once a tooth or a size stands in the phrase.
  if (unknown.has(at))
    options.push({ from: at, to: at + 1, means: plain[at] as string, kind: 'word', cost: LEFT, listed: true, same: true, left: true });
  // "for millimetres", "too ten": the digit that sounds the same, before a number or a unit that found no place.
  const same = digitSounds[plain[at] as string];
  if (same !== undefined && unknown.has(at + 1) && (unitWords.has(plain[at + 1] as string) || (plain[at + 1] as string) in teenWords))
    options.push({
      from: at,
      to: at + 2,
      means: `${digitNames[same] as string} ${plain[at + 1] as string}`,
      kind: 'word',
      cost: 0,
      listed: true,
    });
  return options;
}

/** What the words from `at` on merely sound like. */
function alikeAt(plain: readonly string[], at: number, unknown: ReadonlySet<number>): readonly Option[] {
  const options: Option[] = [];
  for (let to = at + 1; to <= Math.min(plain.length, at + 3); to += 1) {
    const stretch = plain.slice(at, to);
    // A stretch begins or ends with a word out of place; what lies between two of them goes with them.
    if ((!unknown.has(at) && !unknown.has(to - 1)) || stretch.some((word) => digit(word) !== undefined || word in teenWords)) continue;
    // "needs pulling": what is to be done, no finding.
    if (['needs', 'need', 'wants', 'want', 'needing'].some((verb) => verb === plain[at - 1] || stretch.includes(verb))) continue;
    // A small word of everyday speech is what it is, whatever of the trade sounds like it.
    if (stretch.length === 1 && smallWords.has(stretch[0] as string)) continue;
    for (const { word, far } of soundsLike(stretch.join(' ')))
      options.push({ from: at, to, means: word, kind: kindOf(word), cost: LIKE + far, listed: false });
  }
  return options;
}

/** A mark of the trade that holds a phrase to the record: the words it stands in, and whether it tells a tooth or a size, or merely hints at one. */
interface Anchor {
  readonly words: readonly number[];
  readonly tells: boolean;
}
/** Whether the phrase holds something of the trade besides what is mended: more of it, where no list says that the words are misheard so. */
function anchored(
  anchors: readonly Anchor[],
  options: readonly Option[],
  plain: readonly string[],
  waiting: boolean,
  strictly: boolean,
): boolean {
  const known = options.every((option) => option.listed);
  const inside = new Set(options.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i)));
  if (
    known &&
    !strictly &&
    (waiting ||
      (options.length > 1 && options.some(({ kind }) => kind === 'number')) ||
      (options.length === 1 && inside.size === plain.length && plain.length > 1))
  )
    return true;
  return anchors.some(
    (anchor) =>
      (known ? anchor.words.some((word) => !inside.has(word)) : !anchor.words.some((word) => inside.has(word))) &&
      (anchor.tells || (known && !strictly)),
  );
}
const tells = ({ place, measure, grade, pulpHorn }: Mark): boolean =>
  measure?.unit !== undefined ||
  grade?.announced === true ||
  pulpHorn !== undefined ||
  (place !== undefined &&
    (place.codes !== undefined ||
      place.positions !== undefined ||
      place.row === true ||
      (place.jaw !== undefined && place.side !== undefined) ||
      (place.region !== undefined && !outside.has(place.region))));
/** Regions that people speak of without thinking of teeth. */
const outside = new Set<string>(['head', 'face', 'eye', 'nostril', 'poll']);
const hints = ({ place, terms }: Mark): boolean =>
  (place !== undefined && !outside.has(place.region ?? '')) ||
  (terms ?? []).some(
    (t) =>
      (t.k === 'condition' && t.strength === 'say') ||
      (t.k === 'work' && ['procedure', 'agent', 'route'].includes(t.term.as)) ||
      (t.k === 'cue' && t.cue.means === 'absent' && t.cue.looks === 'forward' && t.cue.kind === undefined) ||
      t.k === 'qualifier' ||
      t.k === 'surface',
  );

/** Doubts by which a mended phrase shows that it was mended wrongly. */
const wrong = new Set(['no-place', 'no-condition', 'no-such-tooth', 'off-scale', 'unread', 'two-readings']);

function by(
  options: readonly Option[],
  left: number,
  words: readonly string[],
  readAs: (words: readonly string[]) => Reading,
  before: Reading,
): Mended | undefined {
  const parts = words.flatMap((w, i): readonly { readonly w: string; readonly heard: readonly number[]; readonly option?: Option }[] => {
    const option = options.find(({ from, to }) => i >= from && i < to);
    if (option === undefined) return [{ w, heard: [i] }];
    return i > option.from
      ? []
      : option.means
          .split(' ')
          .map((meant) => ({ w: meant, heard: Array.from({ length: option.to - option.from }, (_, k) => option.from + k), option }));
  });
  const reading = readAs(parts.map(({ w }) => w));
  const part = (word: number): (typeof parts)[number] => parts[word] as (typeof parts)[number];
  const taken = new Set(
    reading.made.flatMap(({ marks }) =>
      marks.flatMap((m) => reading.tokens.slice(...headSpan(reading.marks, m)).map(({ word }) => part(word).option)),
    ),
  );
  const whole =
    unplaced(reading).size <= left &&
    reading.made.length > 0 &&
    reading.made.every(({ body, doubts }) => body !== undefined && !doubts.some(({ doubt }) => wrong.has(doubt))) &&
    options.every((option) => taken.has(option));
  if (!whole || (before.made.some(({ body }) => body !== undefined) && invents(reading, options, part))) return undefined;
  const made = reading.made.map((one): Made => {
    const used = new Set(
      one.marks.flatMap((m) => reading.tokens.slice(...headSpan(reading.marks, m)).flatMap(({ word }) => part(word).option ?? [])),
    );
    if (used.size === 0 || one.body === undefined) return one;
    const kinds = new Set([...used].map(({ kind }) => kind));
    const meant = parts.map(({ w }) => w).join(' ');
    const doubts: readonly MadeDoubt[] = [
      ...(kinds.has('number') || [...used].some(({ listed: sure }) => !sure) ? [unsure(one.body, meant)] : []),
      ...(kinds.has('agent') && !one.doubts.some(({ doubt }) => doubt === 'dose-unclear') ? [{ doubt: 'dose-unclear' as const }] : []),
    ];
    return { ...one, repaired: true, rules: [...one.rules, 'sound-alike'], doubts: [...one.doubts, ...doubts] };
  });
  return {
    mends: options.map(({ from, to, means, kind }) => ({ words: Array.from({ length: to - from }, (_, i) => from + i), means, kind })),
    reading: {
      ...reading,
      made,
      tokens: reading.tokens.map((token) => ({
        ...token,
        word: part(token.word).heard[0] as number,
        ...(part(token.word).heard.length > 1 ? { heard: part(token.word).heard } : {}),
      })),
      takenBack: reading.takenBack.flatMap((word) => part(word).heard),
    },
  };
}

/**
 * "two oh nine's got a crack, mind the bucket there": beside what reads as it stands, a mended name makes a finding of its own
 * only where a place or a size of its own stands right by it.
 */
function invents(
  { made, marks, tokens, role }: Reading,
  options: readonly Option[],
  part: (word: number) => { readonly option?: Option } | undefined,
): boolean {
  const mended = (m: number): boolean =>
    tokens.slice(...headSpan(marks, m)).some(({ word }) => {
      const { option } = part(word) ?? {};
      return option !== undefined && options.includes(option);
    });
  const own = (m: number): boolean =>
    m >= 0 &&
    m < marks.length &&
    (role[m] === 'place' || (role[m] === 'mod' && (marks[m]?.measure !== undefined || marks[m]?.grade !== undefined)));
  const beside = (m: number, step: 1 | -1): number => {
    let at = m + step;
    while (marks[at] && role[at] === 'glue' && !mended(at)) at += step;
    return at;
  };
  const led = (m: number): boolean =>
    tokens[(marks[m]?.from ?? 0) - 1]?.t === 'the' && ['unknown', undefined].includes(role[beside(m, -1)]);
  const listed = (m: number): boolean => ['a', 'an', 'and', 'with', 'plus'].includes(tokens[(marks[m]?.from ?? 0) - 1]?.t ?? '');
  return made.some((one) => {
    const [head] = one.marks;
    return (
      head !== undefined &&
      role[head] === 'head' &&
      mended(head) &&
      (led(head) || !(listed(head) || [beside(head, 1), beside(head, -1)].some(own)))
    );
  });
}

/** A tooth, a side or a size out of misheard words: it counts once a person has said so. */
const unsure = (body: ItemBody, meant: string): MadeDoubt => ({
  doubt: 'unsure',
  readings: [
    { label: meant, bodies: [body] },
    { label: 'not this', bodies: [] },
  ],
});

function asked(first: Mended, rival: Mended): Mended {
  const bodies = ({ reading }: Mended): readonly ItemBody[] => reading.made.flatMap(({ body }) => body ?? []);
  const marks = first.reading.marks.map((_, m) => m);
  return {
    mends: [],
    reading: {
      ...first.reading,
      made: [
        {
          marks,
          rules: ['sound-alike', 'two readings'],
          doubts: [{ doubt: 'two-readings', readings: [first, rival].map((one) => ({ label: '', bodies: bodies(one) })) }],
        },
      ],
    },
  };
}
