/**
 * The ear writes no commas: two things said in one breath come as one row of words. Where somebody paused is known from the sound; between which
 * words is asked of the ear, which scores the words so far on the sound so far. A pause is written as people write it, a comma behind the word.
 */
import type { Hypothesis, Word } from '../../parser/contract/word.ts';
import type { Clip, Engine } from './engine.ts';
import { plain } from './words.ts';

/** Pauses asked about in a phrase, and words before and behind the likeliest place. */
const MOST = 3,
  AROUND = 2;
/** Nats by which the place must be likelier than any other. */
const SURE = 1;
export type Ends = {
  /** Whether one thing may be said to its end with so many of the words: behind "on the" somebody looks for the word. Lower case, without marks. */
  mayEnd(words: readonly string[], count: number): boolean;
};

/** @returns the hypotheses with a comma where the speaker paused; as they are where the ear cannot score, or no pause is sure */
export async function withPauses(
  engine: Engine,
  clip: Clip,
  hypotheses: readonly Hypothesis[],
  { mayEnd }: Ends,
): Promise<readonly Hypothesis[]> {
  const best = hypotheses[0];
  if (best === undefined || engine.score === undefined || (clip.pauses ?? []).length === 0 || best.words.length < 3) return hypotheses;
  const said = best.words.map(({ w }) => plain(w));
  const cuts: number[] = [];
  for (const [from, to] of (clip.pauses ?? []).slice(0, MOST)) {
    const before = await wordsBefore(engine, clip, best.words, (from + to) / 2);
    if (before !== undefined && mayEnd(said, before)) cuts.push(before);
  }
  return cuts.length === 0
    ? hypotheses
    : hypotheses.map((one) =>
        written(
          one,
          cuts.flatMap((cut) => sameCut(best.words, cut, one.words) ?? []),
        ),
      );
}

/** How many of the words are in the sound up to that sample of the exam. */
async function wordsBefore(engine: Engine, clip: Clip, words: readonly Word[], at: number): Promise<number | undefined> {
  const sound = clip.samples.subarray(0, Math.round(at) - clip.from);
  const likely = likelyAt(clip, words, at);
  const counts = words.map((_, i) => i).filter((i) => i > 0 && Math.abs(i - likely) <= AROUND);
  const said = counts.map((count) => plain(textOf(words.slice(0, count))));
  const scores = (await engine.score?.({ samples: sound, from: clip.from }, said, 'quickly')) ?? [];
  const ranked = counts.map((count, i) => ({ count, score: scores[i] ?? -Infinity })).sort((a, b) => b.score - a.score);
  const [first, second] = ranked;
  return first && (second === undefined || first.score - second.score >= SURE) ? first.count : undefined;
}

/** By letters, laid over the voice alone: good to some words. */
function likelyAt({ from, samples, pauses = [] }: Clip, words: readonly Word[], at: number): number {
  const quiet = (until: number): number => pauses.reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, until) - a), 0);
  const [start, end] = [from, from + samples.length];
  const share = (at - start - quiet(at)) / Math.max(1, end - start - quiet(end));
  const letters = words.map(({ w }) => w.length + 1);
  const total = letters.reduce((sum, n) => sum + n, 0);
  let before = 0;
  const index = letters.findIndex((n) => (before += n) >= share * total);
  return index < 0 ? words.length : index + 1;
}

const textOf = (words: readonly Word[]): string => words.map(({ w }) => w).join(' ');

/** The same place in rival words, by what stands before or behind it. */
function sameCut(words: readonly Word[], cut: number, others: readonly Word[]): number | undefined {
  const said = (all: readonly Word[]): string => plain(textOf(all));
  if (said(words.slice(0, cut)) === said(others.slice(0, cut))) return cut;
  const behind = others.length - (words.length - cut);
  return behind > 0 && said(words.slice(cut)) === said(others.slice(behind)) ? behind : undefined;
}

function written(hypothesis: Hypothesis, cuts: readonly number[]): Hypothesis {
  if (cuts.length === 0) return hypothesis;
  const words = hypothesis.words.map((word, i) =>
    cuts.includes(i + 1) && !/[.,;:!?]$/.test(word.w) ? { ...word, w: `${word.w},` } : word,
  );
  return { ...hypothesis, words, text: textOf(words) };
}
