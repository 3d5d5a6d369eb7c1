/** What was worked out is kept for as long as it may be asked again: rival hearings of a phrase differ in a word or two. */

/** The answer to a key, worked out the first time that it is asked for. What `work` yields depends on the key alone. */
export type Memory<T> = (key: string, work: () => T) => T;

/** @param most so many answers are kept; one more, and all are let go */
export function memory<T>(most: number): Memory<T> {
  const kept = new Map<string, { readonly answer: T }>();
  return (key, work) => {
    const known = kept.get(key);
    if (known !== undefined) return known.answer;
    const answer = work();
    if (kept.size >= most) kept.clear();
    kept.set(key, { answer });
    return answer;
  };
}
