/**
 * One breath may hold several things that nobody pauses between: "four eleven ramp six mil recheck in three months". A rule
 * that reads a whole sentence then takes words that are another's. So a phrase that names several things is read in parts
 * too: where every part reads in whole by itself, and together they say more than the phrase at once, the parts are what was said.
 */
import { linking, looking, ofTheVisit, pointing, rounds, waiting, workNamed } from '../lexicon/breaths.ts';
import { bodies, complete, whole } from './complete.ts';
import { isExcept } from './except.ts';
import { either } from './either.ts';
import type { ItemBody } from './made.ts';
import type { Reading } from './read.ts';
import { workDone } from './roles/phrase.ts';
import { partsBegin, reachesOver } from './pauses.ts';
import type { RawPlace } from './places.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

/** Things named in one part, and marks in it, at most: what leans on each other stands near. Keeps the work linear in the length. */
const MOST_NAMED = 4,
  LONGEST = 20;
const work: ReadonlySet<string> = new Set(workNamed);
const begins = new Set(linking),
  waits = new Set([...linking, ...waiting]),
  points = new Set(pointing),
  visit = new Set([...rounds, ...ofTheVisit]);

/** An everyday word that is a finding beside a place only ("sharp", "gap") names one where no pause was written. */
const names = (mark: Mark, tokens: readonly Token[], paused: boolean): boolean =>
  (mark.terms ?? []).some(
    (t) => (t.k === 'condition' && (t.strength !== 'withPlace' || !paused)) || (t.k === 'work' && work.has(t.term.as)),
  ) || tokens.slice(mark.from, mark.to).some(({ t }) => looking.test(t) || visit.has(t));

/** What it is about, so that one thing said twice is one. */
const about = (body: ItemBody): string =>
  JSON.stringify([
    body.kind,
    'condition' in body
      ? body.condition
      : 'procedure' in body
        ? body.procedure
        : 'action' in body
          ? body.action
          : 'about' in body
            ? body.about
            : 'agent' in body
              ? body.agent
              : '',
    'place' in body ? body.place : '',
  ]);
const distinct = (all: readonly ItemBody[]): boolean =>
  new Set(all.map(about)).size === all.length &&
  (all.every((body) => body.kind !== 'sedation' || body.agent !== undefined) || all.filter(({ kind }) => kind === 'sedation').length < 2);

interface Way {
  readonly parts: readonly { readonly reading: Reading; readonly word: number }[];
  readonly count: number;
}

/** "three ten overlong and food packed both sides of it": what a part points to is named in another, without which it says something else. */
const pointsOut = (tokens: readonly Token[], part: Reading, from: number, to: number): boolean =>
  tokens.some(({ carried, word }) => carried === true && word >= from && word < to) && !part.tokens.some(({ carried }) => carried);

/** "didn't get near the back teeth, he was throwing his head about": why it was not done, read by itself, is something else. */
const ofTheReason = (parts: readonly ItemBody[], heard: readonly ItemBody[]): boolean =>
  parts.some((body) => body.kind === 'fact' && body.about === 'behaviour') &&
  heard.some((body) => body.kind === 'not-examined' && body.reason !== undefined) &&
  !parts.some((body) => body.kind === 'not-examined' && body.reason !== undefined);

/** @returns the reading in parts, where it says more; else `asHeard` itself */
export function inParts(words: readonly string[], asHeard: Reading, readAs: (words: readonly string[]) => Reading): Reading {
  const { scanned: marks, tokens } = asHeard;
  if (asHeard.oneSentence || asHeard.takenBack.length > 0 || words.some((word) => points.has(word.toLowerCase()))) return asHeard;
  // "apart from a hook on one oh six and a step on two ten, nothing to report": of the rest, which no part says.
  const restNormal = bodies(asHeard).some((body) => body.kind === 'finding' && body.condition === 'abnormality' && body.place === null);
  if (restNormal && marks.some(isExcept)) return asHeard;
  const paused = tokens.slice(0, -1).some(({ ends: pause }) => pause);
  // "rasped the outside edges of the uppers": a name that says in this sentence where the work was is none.
  const whereWorked = (i: number): boolean =>
    marks.length === asHeard.marks.length &&
    asHeard.role[i] === 'glue' &&
    marks.slice(0, i).some(workDone) &&
    (marks[i]?.terms ?? []).every((t) => t.k === 'condition' && t.strength === 'withPlace');
  const named = marks.map((mark, i) => names(mark, tokens, paused) && !whereWorked(i));
  if (named.filter(Boolean).length < 2) return asHeard;
  const apart = paused ? byPause(words, asHeard, named, readAs) : undefined;
  if (apart) return apart;
  if (complete(asHeard)) return paused ? asHeard : orParted(words, asHeard, named, readAs);
  const cuts = marks.flatMap((mark, i) => {
    const first = tokens[mark.from] as Token | undefined,
      last = tokens[mark.from - 1];
    return mark.to > mark.from &&
      first &&
      last &&
      last.word < first.word &&
      !begins.has(first.t) &&
      !waits.has(last.t) &&
      !sided(marks, i) &&
      !describes(asHeard, i - 1) &&
      !(isWhere(mark) && !last.ends && isNext(marks.slice(0, i).findLast(({ terms }) => !terms?.some(({ k }) => k === 'glue')))) &&
      (!paused || last.ends)
      ? [{ mark: i, word: first.word }]
      : [];
  });
  const stops = [...cuts, { mark: marks.length, word: words.length }];
  let { steps } = asHeard;
  const best = new Map<number, Way>([[0, { parts: [], count: 0 }]]);
  for (const end of stops) {
    for (const start of [{ mark: 0, word: 0 }, ...cuts]) {
      const before = best.get(start.mark);
      if (start.mark >= end.mark || before === undefined || end.mark - start.mark > LONGEST) continue;
      const inside = named.slice(start.mark, end.mark).filter(Boolean).length;
      if (inside === 0 || inside > MOST_NAMED || (start.mark === 0 && end.mark === marks.length)) continue;
      const reading = readAs(words.slice(start.word, end.word));
      steps += reading.steps;
      if (!whole(reading) || pointsOut(tokens, reading, start.word, end.word)) continue;
      const way = { parts: [...before.parts, { reading, word: start.word }], count: before.count + bodies(reading).length };
      const known = best.get(end.mark);
      if (known === undefined || way.count > known.count || (way.count === known.count && way.parts.length < known.parts.length))
        best.set(end.mark, way);
    }
  }
  const way = best.get(marks.length);
  // With as many items the parts are better only where the phrase at once lost what they keep.
  const enough = whole(asHeard) ? bodies(asHeard).length + 1 : bodies(asHeard).length;
  const all = way?.parts.flatMap(({ reading }) => bodies(reading)) ?? [];
  return way === undefined || way.count < enough || !distinct(all) || !afterAdvice(way) || ofTheReason(all, bodies(asHeard))
    ? { ...asHeard, steps }
    : joined(way, steps);
}

/**
 * "Both jaw joints normal, grade two gingivitis three oh one": where each part between pauses is a finding in whole, with its place, no part has
 * anything of another's. What "no" ruled out before the pause may be meant behind it as well: then it is asked.
 */
function byPause(
  words: readonly string[],
  asHeard: Reading,
  named: readonly boolean[],
  readAs: (words: readonly string[]) => Reading,
): Reading | undefined {
  const { tokens, scanned } = asHeard;
  const begin = partsBegin(tokens);
  const inside = (from: number, to = Infinity): boolean =>
    named.some((is, m) => {
      const word = is ? (tokens[scanned[m]?.from ?? -1]?.word ?? -1) : -1;
      return word >= from && word < to;
    });
  if (
    begin.length - 1 > MOST_NAMED ||
    !begin.every((word, i) => inside(word, begin[i + 1])) ||
    tokens.some(({ t, word }) => word > 0 && begin.includes(word) && begins.has(t)) ||
    (whole(asHeard) && !reachesOver(asHeard))
  )
    return undefined;
  const parts = begin.map((word, i) => ({ reading: readAs(words.slice(word, begin[i + 1])), word }));
  const stands = ({ kind }: ItemBody): boolean => kind === 'finding' || kind === 'not-examined';
  if (!parts.every(({ reading }) => whole(reading) && bodies(reading).every(stands) && ofItself(reading))) return undefined;
  const apart = joined(
    { parts, count: bodies(asHeard).length },
    asHeard.steps + parts.reduce((sum, { reading }) => sum + reading.steps, 0),
  );
  const told = (reading: Reading): readonly string[] => bodies(reading).map((body) => JSON.stringify(body));
  const [heard, parted] = [told(asHeard), told(apart)];
  if (!distinct(bodies(apart)) || parted.every((one) => heard.includes(one))) return undefined;
  const ruledOut = ({ made }: Reading): string =>
    made
      .flatMap(({ body }) => (body?.kind === 'finding' && body.presence === 'absent' ? [body.condition] : []))
      .sort()
      .join();
  const more = heard.every((one) => parted.includes(one));
  // "couldn't see the upper elevens, tongue's normal": a look that failed ends at the pause.
  const unseen = bodies(asHeard).some(({ kind }) => kind === 'not-examined');
  return more || unseen || ruledOut(apart) === ruledOut(asHeard) ? apart : either(asHeard, apart, 'one breath, two readings');
}

/** "left one normal", "none either side", "the rest of it": a side by itself, or a word that points, is of what was said before it. */
const ofItself = ({ scanned, tokens }: Reading): boolean => {
  const places = scanned.flatMap(({ place }) => (place ? [place] : []));
  const points = scanned.some(
    ({ place, measure, grade, from, to }) =>
      place === undefined &&
      measure === undefined &&
      grade === undefined &&
      tokens.slice(from, to).some(({ t, carried }) => carried === true || ofAnother.has(t)),
  );
  return !points && (places.length === 0 || places.some(saysWhere));
};
/** A tooth, a row, a part, and no bare side. */
export const saysWhere = (place: RawPlace): boolean =>
  ['codes', 'positions', 'region', 'quadrants', 'row'].some((key) => key in place) || (place.jaw !== undefined && place.side !== undefined);
const ofAnother: ReadonlySet<string> = new Set([
  'one',
  'ones',
  'same',
  'it',
  'its',
  'rest',
  'remainder',
  'other',
  'others',
  'them',
  'those',
  'else',
  // "left cheek not looked at, lip too tight": why.
  'too',
]);

/**
 * "hook one oh six grade one old scar along the right bar": in one go every word is used, and so it is in two parts, but other
 * items come of it. What stands between two findings may be said of either, and only a pause would tell.
 */
function orParted(
  words: readonly string[],
  asHeard: Reading,
  named: readonly boolean[],
  readAs: (words: readonly string[]) => Reading,
): Reading {
  const { scanned: marks, tokens } = asHeard;
  const all = bodies(asHeard);
  // What is left out of what is said is a part of it.
  if (all.length < 2 || marks.some(isExcept) || marks.length > LONGEST || named.filter(Boolean).length > MOST_NAMED) return asHeard;
  const first = named.indexOf(true),
    last = named.lastIndexOf(true);
  for (let cut = first + 1; cut <= last; cut += 1) {
    const { from } = marks[cut] as Mark;
    const [before, next] = [tokens[from - 1] as Token, tokens[from] as Token];
    if (
      before.word >= next.word ||
      begins.has(next.t) ||
      next.t === 'and' ||
      waits.has(before.t) ||
      leads(marks, tokens, cut) ||
      !torn(asHeard, cut)
    )
      continue;
    const parts = [readAs(words.slice(0, next.word)), readAs(words.slice(next.word))] as const;
    if (!parts.every(whole)) continue;
    const apart = joined(
      {
        parts: [
          { reading: parts[0], word: 0 },
          { reading: parts[1], word: next.word },
        ],
        count: all.length,
      },
      parts[0].steps + parts[1].steps,
    );
    if (bodies(apart).length === all.length && distinct(bodies(apart)) && elsewhere(all, bodies(apart)))
      return either(asHeard, apart, 'one breath, two readings');
  }
  return asHeard;
}
/** Whether a cut parts a name from its place: where it parts none, nothing comes to stand elsewhere, and nothing has to be read again. */
const torn = ({ made, marks, scanned, role }: Reading, cut: number): boolean =>
  marks.length !== scanned.length ||
  made.some((one) => {
    const own = one.marks.filter((m) => role[m] === 'head' || role[m] === 'place');
    return own.some((m) => m < cut) && own.some((m) => m >= cut);
  });
/** The same findings in both, one of them at another place. */
function elsewhere(a: readonly ItemBody[], b: readonly ItemBody[]): boolean {
  const told = (all: readonly ItemBody[], withPlace: boolean): string =>
    all
      .map((body) => (body.kind === 'finding' ? JSON.stringify([body.condition, body.presence, withPlace ? body.place : '']) : ''))
      .sort()
      .join();
  return (
    [...a, ...b].every((body) => body.kind === 'finding' && body.place !== null) &&
    told(a, false) === told(b, false) &&
    told(a, true) !== told(b, true)
  );
}
/** "good big hook": an everyday word for normal that was read as a part of what comes behind it. */
const describes = ({ scanned, marks, role }: Reading, at: number): boolean =>
  scanned.length === marks.length && role[at] === 'glue' && (marks[at]?.terms ?? []).some(({ k }) => k === 'condition');
/** "the left edge", "right side sharp": a side, and an everyday word that is a finding only beside a place. */
const sided = (marks: readonly Mark[], cut: number): boolean => {
  const place = marks[cut - 1]?.place;
  return (
    place !== undefined &&
    Object.keys(place).every((key) => key === 'side') &&
    (marks[cut]?.terms ?? []).some((t) => t.k === 'condition' && t.strength === 'withPlace')
  );
};
/** "refer | one oh six for the hook": what is referred or watched. */
const isNext = (mark: Mark | undefined): boolean =>
  mark?.terms?.some((t) => t.k === 'work' && ['refer', 'monitor', 'recheck'].includes(t.term.as)) ?? false;
const isWhere = ({ place, terms }: Mark): boolean =>
  place !== undefined || (terms?.some((t) => t.k === 'condition' && t.strength === 'withPlace') ?? false);
/** A word that opens what follows: "the lower | canines", "a wee | hook". */
const leads = (marks: readonly Mark[], tokens: readonly Token[], cut: number): boolean => {
  const { place, from } = marks[cut - 1] as Mark;
  return (
    (place !== undefined &&
      place.codes === undefined &&
      place.region === undefined &&
      (place.jaw === undefined || place.side === undefined) &&
      marks[cut]?.place !== undefined) ||
    ['a', 'an', 'the'].includes(tokens[from - 1]?.t ?? '')
  );
};

/** Advice is kept in its own words, as long as they are: only a finding with its tooth ends it. */
function afterAdvice({ parts }: Way): boolean {
  const all = parts.flatMap(({ reading }) => bodies(reading));
  const advice = all.findIndex((body) => body.kind === 'follow-up' && body.action === 'advise-owner');
  return (
    advice < 0 ||
    all
      .slice(advice + 1)
      .every((body) => body.kind === 'finding' && body.place !== null && ('teeth' in body.place || 'spaces' in body.place))
  );
}

/** Readings one after another as one, in the words of the phrase. */
export function joined({ parts }: Omit<Way, 'count'> & Partial<Way>, steps: number): Reading {
  return parts.reduce<Reading>(
    (all, { reading, word }) => {
      const tokensBefore = all.tokens.length,
        marksBefore = all.marks.length;
      const later = <S extends { readonly from: number; readonly to: number }>(span: S): S => ({
        ...span,
        from: span.from + tokensBefore,
        to: span.to + tokensBefore,
      });
      const shifted = (mark: Mark): Mark => ({ ...later(mark), ...(mark.again ? { again: later(mark.again) } : {}) });
      return {
        tokens: [
          ...all.tokens,
          ...reading.tokens.map((token) => ({
            ...token,
            word: token.word + word,
            ...(token.heard ? { heard: token.heard.map((w) => w + word) } : {}),
          })),
        ],
        marks: [...all.marks, ...reading.marks.map(shifted)],
        scanned: [...all.scanned, ...reading.scanned.map(shifted)],
        role: [...all.role, ...reading.role],
        made: [
          ...all.made,
          ...reading.made.map((made) => ({
            ...made,
            marks: made.marks.map((m) => m + marksBefore),
            doubts: made.doubts.map((doubt) => (doubt.marks ? { ...doubt, marks: doubt.marks.map((m) => m + marksBefore) } : doubt)),
          })),
        ],
        places: [...all.places, ...reading.places.map((m) => m + marksBefore)],
        unknown: all.unknown + reading.unknown,
        takenBack: [],
        steps,
      };
    },
    { tokens: [], marks: [], scanned: [], role: [], made: [], places: [], unknown: 0, takenBack: [], steps },
  );
}
