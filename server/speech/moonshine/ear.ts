/** Hears and scores clips with one graph: the part that lives in the worker thread. */
import type { Hypothesis } from '../../../parser/contract/word.ts';
import type { Clip, Heard, Scoring } from '../engine.ts';
import { RATE } from '../engine.ts';
import { hypothesis, voiced } from '../words.ts';
import type { Frontier, Path } from './beam.ts';
import { beam } from './beam.ts';
import type { Graph, Listened, Memory } from './graph.ts';
import { END, VOCABULARY, pick } from './graph.ts';
import { logSumExp } from './logits.ts';
import { PACES, atPace } from './paces.ts';
import { encodeSentence, wordsOf } from './tokens.ts';

/** Speech has no more tokens a second than this; the floor lets short commands live. */
const TOKENS_PER_SECOND = 6.5,
  LEAST_TOKENS = 12;
/** Loudest tenth of a second, root mean square, below which nobody speaks (-60 dB of full scale). */
const SILENCE = 0.001;
const ROWS_AT_ONCE = 24;
/** Nats below the best, less than a hundredth of its belief. */
const OUT_OF_QUESTION = 5;
/**
 * Probability of ending before the first word above which there are no words. Of 24 clips of barn noise all but one lay
 * above 0.96 (and the voice detector lets one of them through); of 44 tooth codes said by a person, one (0.961).
 */
const NO_WORDS = 0.965;

export type Ear = {
  hear(id: number, clip: Clip): Promise<Heard>;
  score(id: number, clip: Clip, sentences: readonly string[], how?: Scoring): Promise<number[]>;
};

export function openEar(graph: Graph, width: number): Ear {
  const remembered = new Map<string, Promise<Listened>>();
  const listen = (id: number, clip: Clip, pace = 1): Promise<Listened> => {
    const key = `${id} ${pace}`;
    const known = remembered.get(key) ?? graph.listen(pace === 1 ? clip.samples : atPace(clip.samples, pace));
    remembered.delete(key);
    remembered.set(key, known);
    for (const oldest of remembered.keys()) if (remembered.size > 1 + PACES.length) remembered.delete(oldest);
    return known;
  };

  return {
    async hear(id, clip) {
      const began = performance.now();
      const took = () => Math.round((performance.now() - began) * 10) / 10;
      if (loudest(clip.samples) < SILENCE) return { hypotheses: [], empty: 'no-speech', tookMs: took() };
      const listened = await listen(id, clip);
      const firstTotal = logSumExp(listened.first);
      if (Math.exp((listened.first[END] ?? -Infinity) - firstTotal) > NO_WORDS)
        return { hypotheses: [], empty: 'no-words', tookMs: took() };
      const maxTokens = Math.max(LEAST_TOKENS, Math.ceil((clip.samples.length / RATE) * TOKENS_PER_SECOND));
      const paths = await beam(frontier(graph, listened, listened.memory, withoutEnd(listened.first)), {
        vocabulary: VOCABULARY,
        end: END,
        width,
        maxTokens,
      });
      const span = voiced(clip);
      const hypotheses = distinct(
        paths.map((path) => heardPath(path, span)).filter(({ words }) => words.some(({ w }) => /[a-z0-9]/i.test(w))),
      );
      return hypotheses.length === 0 ? { hypotheses, empty: 'no-words', tookMs: took() } : { hypotheses, tookMs: took() };
    },

    async score(id, clip, sentences, how = 'surely') {
      const rows = sentences.map(encodeSentence);
      const said = await scoreAll(graph, await listen(id, clip), rows);
      const best = Math.max(...said);
      // What is out of the question as it was said is not asked about again; it keeps its distance from the best.
      const open = said.flatMap((score, i) => (score > best - OUT_OF_QUESTION ? [i] : []));
      if (open.length < 2 || how === 'quickly') return said;
      const sums = open.map((i) => said[i] as number);
      for (const pace of PACES) {
        const again = await scoreAll(
          graph,
          await listen(id, clip, pace),
          open.map((i) => rows[i] as readonly number[]),
        );
        again.forEach((score, n) => {
          sums[n] = (sums[n] as number) + score;
        });
      }
      const means = sums.map((sum) => sum / (1 + PACES.length));
      const fell = (means[open.indexOf(said.indexOf(best))] as number) - best;
      return said.map((score, i) => means[open.indexOf(i)] ?? score + fell);
    },
  };
}

function frontier(graph: Graph, listened: Listened, memory: Memory, logits: Float32Array): Frontier {
  return {
    logits,
    async next(rows, tokens) {
      const stepped = await graph.step(listened, pick(memory, rows), tokens);
      return frontier(graph, listened, stepped.memory, stepped.logits);
    },
  };
}

/** Where a voice was found, the first token is a word. */
const withoutEnd = (first: Float32Array): Float32Array => first.map((score, token) => (token === END ? -Infinity : score));

const heardPath = ({ tokens, logProbs, end }: Path, span: { from: number; to: number }): Hypothesis =>
  hypothesis(wordsOf(tokens, logProbs), span, end);

/** Readings that differ only in capitals and punctuation are one: their probabilities add up, and the likeliest spelling stays. */
function distinct(hypotheses: readonly Hypothesis[]): readonly Hypothesis[] {
  const byWords = new Map<string, Hypothesis[]>();
  for (const one of hypotheses) {
    const key = one.text
      .toLowerCase()
      .replace(/[^a-z0-9' ]+/g, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    byWords.set(key, [...(byWords.get(key) ?? []), one]);
  }
  return [...byWords.values()]
    .flatMap(([first, ...rest]) =>
      first === undefined ? [] : [{ ...first, logProb: logSumExp([first, ...rest].map(({ logProb }) => logProb)) }],
    )
    .sort((a, b) => b.logProb - a.logProb);
}

async function scoreAll(graph: Graph, listened: Listened, rows: readonly (readonly number[])[]): Promise<number[]> {
  const scores: number[] = [];
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
    scores.push(...(await scoreRows(graph, listened, rows.slice(from, from + ROWS_AT_ONCE))));
  return scores;
}

/** Teacher forcing: all sentences in one pass, padded with the end token, which the causal mask hides. */
async function scoreRows(graph: Graph, listened: Listened, sentences: readonly (readonly number[])[]): Promise<number[]> {
  const length = Math.max(...sentences.map((tokens) => tokens.length));
  const logits = await graph.follow(
    listened,
    sentences.map((tokens) => [...tokens, ...Array<number>(length - tokens.length).fill(END)]),
  );
  const firstTotal = logSumExp(listened.first);
  return sentences.map((tokens, row) =>
    [...tokens, END].reduce((sum, token, i) => {
      if (i === 0) return (listened.first[token] ?? -Infinity) - firstTotal;
      const at = (row * length + i - 1) * VOCABULARY;
      const scores = logits.subarray(at, at + VOCABULARY);
      return sum + (scores[token] ?? -Infinity) - logSumExp(scores);
    }, 0),
  );
}

function loudest(samples: Float32Array): number {
  const window = RATE / 10;
  let most = 0;
  for (let from = 0; from < samples.length; from += window) {
    let sum = 0;
    const to = Math.min(samples.length, from + window);
    for (let i = from; i < to; i += 1) sum += (samples[i] as number) ** 2;
    most = Math.max(most, sum / (to - from));
  }
  return Math.sqrt(most);
}
