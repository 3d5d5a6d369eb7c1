/**
 * Propose by grammar, verify by ear: where the best reading is not wholly in the trade's language, readings that are and
 * that sound like it are scored by the ear itself, and one rule judges. Talk, whose free reading lies far above any
 * proposal, stays talk.
 */
import type { Hypothesis } from '../../parser/contract/word.ts';
import type { Clip, Engine } from './engine.ts';
import type { Rule } from './judge.ts';
import { RULE, judge } from './judge.ts';
import { plain, voiced } from './words.ts';

/** What the ear may ask of the grammar; handed in, because the ear knows words and not teeth. */
export type Language = {
  /** Whether every word of the text has its place in the grammar. */
  whole(text: string): boolean;
  /** Sentences that sound like the texts, likeliest first (see `proposer`). */
  propose(texts: readonly string[], count: number): readonly string[];
};

/** Proposals drawn, and of those that are whole, how many are scored: some 15 ms each on two processors. */
const DRAWN = 48, SCORED = 12;
/** Readings handed on, and the least belief that makes one worth reading. */
const KEPT = 6, LEAST = 0.01;

/** @returns hypotheses in the order in which they are believed to have been said; their scores are acoustic, and as sure as the rule's temperature makes them */
export async function verified(engine: Engine, clip: Clip, free: readonly Hypothesis[], language: Language, rule: Rule = RULE): Promise<readonly Hypothesis[]> {
  const best = free[0];
  const alone = free.map((one) => ({ ...one, logProb: one.logProb / rule.temperature }));
  if (best === undefined || engine.score === undefined || language.whole(best.text)) return alone;
  const proposals = language.propose(free.slice(0, 3).map(({ text }) => text), DRAWN).filter(language.whole).slice(0, SCORED);
  if (proposals.length === 0) return alone;
  const heard = distinct(free);
  const scores = await engine.score(clip, [...heard.map(({ text }) => text), ...proposals]);
  const candidates = [
    ...heard.map((one, i) => ({ text: one.text, logProb: scores[i] ?? -Infinity, inTrade: language.whole(one.text), heard: one })),
    ...proposals.map((text, i) => ({ text, logProb: scores[heard.length + i] ?? -Infinity, inTrade: true })),
  ];
  return judge(candidates, voiced(clip), rule).filter(({ posterior }, i) => i === 0 || posterior >= LEAST).slice(0, KEPT).map(({ hypothesis }) => hypothesis);
}

function distinct(hypotheses: readonly Hypothesis[]): readonly Hypothesis[] {
  const seen = new Set<string>();
  return hypotheses.filter(({ text }) => !seen.has(plain(text)) && seen.add(plain(text)) !== undefined);
}
