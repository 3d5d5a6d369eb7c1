/** What the rules ask of a list over and over, by plain loops: a phrase asks some two hundred times. */

/** Where it holds. */
export function where<T>(list: readonly T[], holds: (one: T, at: number) => unknown): readonly number[] {
  const found: number[] = [];
  for (let at = 0; at < list.length; at += 1) if (holds(list[at] as T, at)) found.push(at);
  return found;
}

/** What is found in each, leaving out those in which nothing is. */
export function gather<T, F>(list: readonly T[], find: (one: T, at: number) => F | undefined): readonly F[] {
  const found: F[] = [];
  for (let at = 0; at < list.length; at += 1) {
    const one = find(list[at] as T, at);
    if (one !== undefined) found.push(one);
  }
  return found;
}

/** The first thing found in any. */
export function first<T, F>(list: readonly T[], find: (one: T, at: number) => F | undefined): F | undefined {
  for (let at = 0; at < list.length; at += 1) {
    const one = find(list[at] as T, at);
    if (one !== undefined) return one;
  }
  return undefined;
}

/** The list with some of its elements parted into several; the same list where none is. */
export function partedBy<T>(list: readonly T[], parts: (one: T, at: number) => readonly T[] | undefined): readonly T[] {
  const all = list.map(parts);
  return all.some((own) => own !== undefined) ? list.flatMap((one, at) => all[at] ?? [one]) : list;
}
