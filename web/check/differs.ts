/** Where readings that are offered side by side differ: the words before and behind are the same in all of them. */
export interface Differs {
  readonly before: string;
  readonly own: string;
  readonly after: string;
}

/** @returns one for each reading, in their order; with nothing before or behind, where they share no words, all of it is its own */
export function differing(readings: readonly string[]): readonly Differs[] {
  // One has nothing to differ from.
  if (readings.length < 2) return readings.map((own) => ({ before: '', own, after: '' }));
  const all = readings.map((one) => one.split(' '));
  const shortest = Math.min(...all.map(({ length }) => length));
  const shared = (word: (words: readonly string[], i: number) => string | undefined): number => {
    let n = 0;
    while (n < shortest && all.every((words) => word(words, n) === word(all[0] as readonly string[], n))) n += 1;
    return n;
  };
  const from = shared((words, i) => words[i]);
  // No word is of both ends: of "on" and "on on" the second has one more.
  const behind = Math.min(
    shared((words, i) => words.at(-1 - i)),
    shortest - from,
  );
  return all.map((words) => ({
    before: words.slice(0, from).join(' '),
    own: words.slice(from, words.length - behind).join(' '),
    after: words.slice(words.length - behind).join(' '),
  }));
}
