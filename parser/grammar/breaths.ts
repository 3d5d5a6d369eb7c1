/**
 * One breath may hold several things that nobody pauses between: "four eleven ramp six mil recheck in three months". A rule
 * that reads a whole sentence then takes words that are another's. So a phrase that names several things is read in parts
 * too: where every part reads in whole by itself, and together they say more than the phrase at once, the parts are what was said.
 */
import { light } from '../lexicon/fillers.ts';
import type { ItemBody, Made } from './made.ts';
import type { Reading } from './read.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { unreadIn } from './unread.ts';

/** Things named in one part, and marks in it, at most: what leans on each other stands near. Keeps the work linear in the length. */
const MOST_NAMED = 4, LONGEST = 20;
/** A part that begins with one of these, or ends before one, is no thing of its own. */
const links = new Set(['for', 'because', 'cause', 'cos', 'with', 'due', 'so', 'to', 'until', 'till', 'since', 'or', 'nor', 'than', 'as', 'when', 'if', 'that', 'which', 'of', 'but', 'except', 'bar', 'apart', 'after', 'before', 'where', 'while', 'by', 'from', 'still', 'same', 'on', 'in', 'at', 'along', 'under', 'over', 'through', 'off', 'out', 'up', 'down', 'either', 'too', 'now', 'all']);
const ends = new Set([...links, 'and', 'the', 'a', 'an', 'of', 'on', 'in', 'at', 'to', 'no', 'not', 'for', 'with', 'by', 'or', 'both', 'between', 'behind', 'is', 'are', 'was', 'were', 'has', 'have', 'had', 'be', 'been', 'he', 'she', 'him', 'her', 'his', 'it', 'i', 'we', 'will', 'would', 'could', 'can', 'should', 'did', 'do', 'does', 'need', 'needs', 'very', 'quite', 'bit', 'without', 'another', 'some', 'any', 'suspect', 'suspected', 'possible', 'told', 'advised', 'gave']);
/** Words that tell nothing of their own. */
const idle = new Set([...light, 'needed', 'required', 'necessary', 'today', 'please']);
const looked = /^(?:examin|check|see|seen|look|feel|felt|palpat|visuali|prob|assess|reach|got$|get$|near|skipped|missed)/;
const pointers = new Set(['them', 'those', 'these', 'respectively']);
/** Rounds of time that are a recheck by themselves. */
const rounds = new Set(['yearly', 'annually', 'annual', 'once', 'monthly']);

const names = (mark: Mark, tokens: readonly Token[]): boolean => (mark.terms ?? []).some((t) => (t.k === 'condition' && t.strength !== 'withPlace') || (t.k === 'work' && ['procedure', 'agent', 'sedate', 'topUp', 'recheck', 'refer', 'monitor', 'advise', 'report', 'noBit'].includes(t.term.as)))
  || tokens.slice(mark.from, mark.to).some(({ t }) => looked.test(t) || rounds.has(t) || t === 'vet' || t === 'owner' || t === 'stood');

/** What it is about, so that one thing said twice is one. */
const about = (body: ItemBody): string => JSON.stringify([body.kind, 'condition' in body ? body.condition : 'procedure' in body ? body.procedure : 'action' in body ? body.action : 'about' in body ? body.about : 'agent' in body ? body.agent : '', 'place' in body ? body.place : '']);
const distinct = (all: readonly ItemBody[]): boolean => new Set(all.map(about)).size === all.length && (all.every((body) => body.kind !== 'sedation' || body.agent !== undefined) || all.filter(({ kind }) => kind === 'sedation').length < 2);
/** Stands by itself: where it is said to be, or it needs no place. */
const standing = (body: ItemBody): boolean => body.kind !== 'finding' || body.place !== null || (body.presence === 'absent' && body.condition !== 'abnormality');

const bodies = ({ made }: Reading): readonly ItemBody[] => made.flatMap(({ body }) => body ?? []);
const quiet = ({ body, doubts, how, revises }: Made): boolean => body !== undefined && revises === undefined && Object.keys(how ?? {}).length === 0 && doubts.every(({ doubt }) => doubt === 'irreversible');
const telling = ({ place, measure, grade, number, pulpHorn, unknown, terms }: Mark): boolean => place !== undefined || measure !== undefined || grade !== undefined || number !== undefined || pulpHorn !== undefined || unknown === true
  || (terms ?? []).some(({ k }) => ['condition', 'surface', 'qualifier', 'severity', 'severityKept', 'change', 'work', 'side', 'jaw', 'row'].includes(k));
/** Whether what a word says is in what was made: a word that a rule took and did nothing with is lost. */
function used({ terms, measure, grade, number }: Mark, all: readonly ItemBody[]): boolean {
  const findings = all.flatMap((body) => (body.kind === 'finding' ? [body] : []));
  const doses = all.some(({ kind }) => kind === 'sedation' || kind === 'medication');
  if (measure?.unit !== undefined && all.every((body) => !('measures' in body && body.measures) && !('amountMm' in body) && !('dose' in body))) return false;
  if (grade?.announced && findings.every((body) => body.grade === undefined)) return false;
  if (number !== undefined && all.every((body) => body.kind === 'follow-up' && body.after === undefined)) return false;
  return (terms ?? []).length === 0 || (terms ?? []).some((t) => {
    switch (t.k) {
      case 'severity': return findings.some(({ severity, severitySaid, condition }) => severity !== undefined || severitySaid !== undefined || condition === 'abnormality') || findings.length < all.length;
      case 'qualifier': return findings.some(({ qualifiers, condition }) => qualifiers?.includes(t.id) || condition.includes(t.id)) || findings.length < all.length;
      case 'change': return findings.some(({ change }) => change !== undefined) || findings.length < all.length;
      case 'work': return t.term.as === 'instrument' ? all.some((body) => body.kind === 'treatment' && body.instrument !== undefined) : t.term.as === 'route' ? doses : t.term.as === 'vet' ? findings.length < all.length && all.some((body) => body.kind !== 'finding' && (body.kind !== 'treatment' || 'by' in body)) : findings.length < all.length;
      default: return true;
    }
  });
}
/** Every word that tells something is in something that was made, and nothing is asked. */
const whole = (reading: Reading): boolean => {
  const taken = new Set(reading.made.flatMap(({ marks }) => marks));
  // What a rule claimed is a mere stop among the marks; what it was stands in the scan, unless something was put in between.
  const said = reading.scanned.length === reading.marks.length ? reading.scanned : reading.marks;
  return reading.made.length > 0 && reading.made.every(quiet) && bodies(reading).every(standing) && (reading.scanned.filter(telling).length > 1 || bodies(reading).every(({ kind }) => kind !== 'finding')) && reading.takenBack.length === 0 && said.every((mark, i) => (taken.has(i) && used(mark, bodies(reading))) || !telling(mark) || reading.tokens.slice(mark.from, mark.to).every(({ t }) => idle.has(t))) && unreadIn(reading, new Map(reading.tokens.map(({ word }) => [word, 'item']))).length === 0;
};

/** Findings and work take their own words only: where none is left over, the phrase was read. What takes a whole sentence may have taken another's. */
const precise = (reading: Reading): boolean => bodies(reading).every(({ kind }) => kind === 'finding' || kind === 'treatment');
const complete = (reading: Reading): boolean => precise(reading) && whole(reading);

interface Way { readonly parts: readonly { readonly reading: Reading; readonly word: number }[]; readonly count: number }

/** @returns the reading in parts, where it says more; else `asHeard` itself */
export function inParts(words: readonly string[], asHeard: Reading, readAs: (words: readonly string[]) => Reading): Reading {
  const { scanned: marks, tokens } = asHeard;
  // What points back to other things of the breath cannot be parted from them.
  if (asHeard.takenBack.length > 0 || words.some((word) => pointers.has(word.toLowerCase()))) return asHeard;
  const named = marks.map((mark) => names(mark, tokens));
  if (named.filter(Boolean).length < 2 || complete(asHeard)) return asHeard;
  const paused = tokens.slice(0, -1).some(({ ends: pause }) => pause);
  const cuts = marks.flatMap((mark, i) => { const first = tokens[mark.from] as Token | undefined, last = tokens[mark.from - 1]; return mark.to > mark.from && first && last && last.word < first.word && !links.has(first.t) && !ends.has(last.t) && (!paused || last.ends) ? [{ mark: i, word: first.word }] : []; });
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
      if (!whole(reading)) continue;
      const way = { parts: [...before.parts, { reading, word: start.word }], count: before.count + bodies(reading).length };
      const known = best.get(end.mark);
      if (known === undefined || way.count > known.count || (way.count === known.count && way.parts.length < known.parts.length)) best.set(end.mark, way);
    }
  }
  const way = best.get(marks.length);
  // With as many items the parts are better only where the phrase at once lost what they keep.
  const enough = precise(asHeard) ? bodies(asHeard).length : bodies(asHeard).length + 1;
  return way === undefined || way.count < enough || !distinct(way.parts.flatMap(({ reading }) => bodies(reading))) || !afterAdvice(way) ? { ...asHeard, steps } : joined(way, steps);
}

/** Advice is kept in its own words, as long as they are: only a finding with its tooth ends it. */
function afterAdvice({ parts }: Way): boolean {
  const all = parts.flatMap(({ reading }) => bodies(reading));
  const advice = all.findIndex((body) => body.kind === 'follow-up' && body.action === 'advise-owner');
  return advice < 0 || all.slice(advice + 1).every((body) => body.kind === 'finding' && body.place !== null && ('teeth' in body.place || 'spaces' in body.place));
}

/** Readings one after another as one, in the words of the phrase. */
function joined({ parts }: Way, steps: number): Reading {
  return parts.reduce<Reading>((all, { reading, word }) => {
    const tokensBefore = all.tokens.length, marksBefore = all.marks.length;
    return {
      tokens: [...all.tokens, ...reading.tokens.map((token) => ({ ...token, word: token.word + word, ...(token.heard ? { heard: token.heard.map((w) => w + word) } : {}) }))],
      marks: [...all.marks, ...reading.marks.map((mark) => ({ ...mark, from: mark.from + tokensBefore, to: mark.to + tokensBefore, ...(mark.again ? { again: { ...mark.again, from: mark.again.from + tokensBefore, to: mark.again.to + tokensBefore } } : {}) }))],
      scanned: [], role: [...all.role, ...reading.role],
      made: [...all.made, ...reading.made.map((made) => ({ ...made, marks: made.marks.map((m) => m + marksBefore), doubts: made.doubts.map((doubt) => (doubt.marks ? { ...doubt, marks: doubt.marks.map((m) => m + marksBefore) } : doubt)) }))],
      places: [...all.places, ...reading.places.map((m) => m + marksBefore)], unknown: all.unknown + reading.unknown, takenBack: [], steps,
    };
  }, { tokens: [], marks: [], scanned: [], role: [], made: [], places: [], unknown: 0, takenBack: [], steps });
}
