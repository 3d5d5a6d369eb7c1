/** Beam search over a decoder given as a function; with a width of one it is greedy. */
import { best, logSumExp } from './logits.ts';

/** Rows of scores [rows, vocabulary] and a state that knows how to take the next token of chosen rows. */
export type Frontier = {
  readonly logits: Float32Array;
  next(rows: readonly number[], tokens: readonly number[]): Promise<Frontier>;
};

export type Path = {
  readonly tokens: readonly number[];
  /** Natural log-probability of each token, and of the end after them (0 where the cap cut the path). */
  readonly logProbs: readonly number[];
  readonly end: number;
  readonly logProb: number;
};

export type BeamOptions = { readonly vocabulary: number; readonly end: number; readonly width: number; readonly maxTokens: number };

type Open = { readonly tokens: readonly number[]; readonly logProbs: readonly number[]; readonly logProb: number };
type Move = { readonly row: number; readonly token: number; readonly gain: number; readonly logProb: number };

/**
 * @returns finished paths, best first, at most `width`; when the cap comes first, the open paths stand for what was said
 */
export async function beam(start: Frontier, options: BeamOptions): Promise<readonly Path[]> {
  const { vocabulary, end, width, maxTokens } = options;
  const done: Path[] = [];
  let open: readonly Open[] = [{ tokens: [], logProbs: [], logProb: 0 }];
  let frontier = start;
  for (let length = 0; length <= maxTokens; length += 1) {
    const moves = open
      .flatMap((path, row) => movesFrom(path, row, frontier.logits, vocabulary, width))
      .sort((a, b) => b.logProb - a.logProb);
    const going: Move[] = [];
    for (const move of moves.slice(0, 2 * width)) {
      const path = open[move.row];
      if (path === undefined) continue;
      if (move.token === end) done.push({ ...path, end: move.gain, logProb: move.logProb });
      else if (going.length < width) going.push(move);
      // Greedy: whatever comes first is the answer.
      if (width === 1) break;
    }
    done.sort((a, b) => b.logProb - a.logProb);
    open = going.map(({ row, token, gain, logProb }) => {
      const path = open[row];
      return { tokens: [...(path?.tokens ?? []), token], logProbs: [...(path?.logProbs ?? []), gain], logProb };
    });
    const enough = Math.max(done[width - 1]?.logProb ?? -Infinity, (done[0]?.logProb ?? -Infinity) - FAR);
    open = open.filter(({ logProb }) => logProb >= enough);
    if (open.length === 0 || (width === 1 && done.length > 0)) break;
    if (length < maxTokens)
      frontier = await frontier.next(
        open.map((_, i) => (going[i] as Move).row),
        open.map((_, i) => (going[i] as Move).token),
      );
  }
  if (done.length > 0) return done.slice(0, width);
  return open.map((path) => ({ ...path, end: 0 }));
}

/** Nats below the best finished path at which an open one is no longer of interest: a thousandth of its probability. */
const FAR = 7;

function movesFrom(path: Open, row: number, logits: Float32Array, vocabulary: number, width: number): Move[] {
  const scores = logits.subarray(row * vocabulary, (row + 1) * vocabulary);
  const total = logSumExp(scores);
  return best(scores, width + 1).map((token) => {
    const gain = (scores[token] ?? -Infinity) - total;
    return { row, token, gain, logProb: path.logProb + gain };
  });
}
