/** Sums and picks over a row of scores. */

/** log(sum(exp(scores))); terms that cannot change a double's tenth digit are left out, for speed. */
export function logSumExp(scores: ArrayLike<number>): number {
  let top = -Infinity;
  for (let i = 0; i < scores.length; i += 1) if ((scores[i] as number) > top) top = scores[i] as number;
  if (top === -Infinity) return -Infinity;
  let sum = 0;
  for (let i = 0; i < scores.length; i += 1) {
    const below = (scores[i] as number) - top;
    if (below > -25) sum += Math.exp(below);
  }
  return top + Math.log(sum);
}

/** Indices of the `count` highest scores, highest first. */
export function best(scores: Float32Array, count: number): number[] {
  const kept: number[] = [];
  let least = -Infinity;
  for (let i = 0; i < scores.length; i += 1) {
    const score = scores[i] as number;
    if (kept.length === count && score <= least) continue;
    let at = kept.length;
    while (at > 0 && (scores[kept[at - 1] as number] as number) < score) at -= 1;
    kept.splice(at, 0, i);
    if (kept.length > count) kept.pop();
    if (kept.length === count) least = scores[kept[count - 1] as number] as number;
  }
  return kept;
}
