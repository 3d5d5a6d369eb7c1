/**
 * Propose by grammar, verify by ear: where the best reading is not wholly in the trade's language, readings that are and
 * that sound like it are scored by the ear itself, and one rule judges. It judges the ear's own readings too where the best is half a finding. Talk, whose free reading lies far above any
 * proposal, stays talk.
 */
import type { Hypothesis } from '../../parser/contract/word.ts';
import type { Clip, Engine } from './engine.ts';
import type { Candidate, Rule } from './judge.ts';
import { RULE, judge } from './judge.ts';
import { plain, voiced } from './words.ts';

/** What the ear may ask of the grammar; handed in, because the ear knows words and not teeth. */
export type Language = {
  /** Whether every word of the text has its place in the grammar. */
  whole(text: string): boolean;
  /** Whether a text that is whole leaves half a finding, without its place or its condition; what is merely unlikely is finished. */
  open(text: string): boolean;
  /** Sentences that sound like the texts, likeliest first (see `proposer`). */
  propose(texts: readonly string[], count: number): readonly string[];
  /** The texts with one of the names where something in them sounds like it, likeliest first (see `withNames`). */
  named(texts: readonly string[], names: readonly string[], count: number): readonly string[];
};

/** Proposals drawn, and of those that are whole, how many are scored: some 15 ms each on two processors; and sentences with a name. */
const DRAWN = 48,
  SCORED = 12,
  NAMED = 4;
/** Readings of the ear that proposals are made from. */
const SOURCES = 3;
/** Readings handed on, and the least belief that makes one worth reading. */
const KEPT = 6,
  LEAST = 0.01;

/**
 * @param names the visit's own (horse, owner, yard, people): where something sounds like one of them the ear is asked, also about a phrase that reads whole
 * @returns hypotheses in the order in which they are believed to have been said; their scores are acoustic, and as sure as the rule's temperature makes them
 */
export async function verified(
  engine: Engine,
  clip: Clip,
  free: readonly Hypothesis[],
  language: Language,
  names: readonly string[] = [],
  rule: Rule = RULE,
): Promise<readonly Hypothesis[]> {
  const first = free[0];
  if (first === undefined || engine.score === undefined) return free.map((one) => ({ ...one, logProb: one.logProb / rule.temperature }));
  const texts = free.slice(0, SOURCES).map(({ text }) => text);
  const ofTrade = language.whole(first.text) ? [] : firstOf(SCORED, language.propose(texts, DRAWN), language.whole);
  const proposals = [...new Set([...ofTrade, ...(names.length === 0 ? [] : language.named(texts, names, NAMED))])];
  const heard = distinct(free);
  // One reading alone is not compared with anything.
  if (heard.length === 1 && proposals.length === 0) return heard.map((one) => ({ ...one, logProb: one.logProb / rule.temperature }));
  const scores = await engine.score(clip, [...heard.map(({ text }) => text), ...proposals]);
  const spoken = names.map((name) => ` ${plain(name)} `);
  const candidate = (text: string, at: number, own?: Hypothesis): Candidate => ({
    text,
    logProb: scores[at] ?? -Infinity,
    inTrade: language.whole(text),
    open: language.open(text),
    named: spoken.some((name) => ` ${plain(text)} `.includes(name)),
    ...(own && { heard: own }),
  });
  const candidates = [
    ...heard.map((one, i) => candidate(one.text, i, one)),
    ...proposals.map((text, i) => candidate(text, heard.length + i)),
  ];
  return judge(candidates, voiced(clip), rule)
    .filter(({ posterior }, i) => i === 0 || posterior >= LEAST)
    .slice(0, KEPT)
    .map(({ hypothesis }) => hypothesis);
}

/** The first so many that fit; what comes after them is not asked about. */
function firstOf<T>(most: number, all: readonly T[], fits: (one: T) => boolean): readonly T[] {
  const found: T[] = [];
  for (const one of all) {
    if (found.length === most) break;
    if (fits(one)) found.push(one);
  }
  return found;
}

function distinct(hypotheses: readonly Hypothesis[]): readonly Hypothesis[] {
  const seen = new Set<string>();
  return hypotheses.filter(({ text }) => !seen.has(plain(text)) && seen.add(plain(text)) !== undefined);
}
