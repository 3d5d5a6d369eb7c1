/** Where two texts differ: the stretches in between the words that they share. */

/** @returns the stretches in order; either side may be empty */
export function difference(
  meant: readonly string[],
  heard: readonly string[],
): readonly { readonly meant: string; readonly heard: string }[] {
  const shared = common(meant, heard);
  const stretches: { readonly meant: string; readonly heard: string }[] = [];
  let m = 0,
    h = 0;
  for (const [i, j] of [...shared, [meant.length, heard.length] as const]) {
    if (i > m || j > h) stretches.push({ meant: meant.slice(m, i).join(' '), heard: heard.slice(h, j).join(' ') });
    m = i + 1;
    h = j + 1;
  }
  return stretches;
}

/** Pairs of places of a longest common subsequence (Wagner and Fischer 1974). */
function common(a: readonly string[], b: readonly string[]): readonly (readonly [number, number])[] {
  const length = Array.from({ length: a.length + 1 }, () => Array<number>(b.length + 1).fill(0));
  const at = (i: number, j: number): number => length[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      (length[i] as number[])[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const pairs: (readonly [number, number])[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length;) {
    if (a[i] === b[j]) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return pairs;
}
