/** Longest match over words. */
import { expand } from './template.ts';

/** Built once, never changed after. */
export interface Trie<T> {
  readonly next: ReadonlyMap<string, Trie<T>>;
  readonly values: readonly T[];
}
interface Growing<T> {
  next: Map<string, Growing<T>>;
  values: T[];
}

export function buildTrie<T>(entries: Iterable<readonly [readonly string[], T]>): Trie<T> {
  const root: Growing<T> = { next: new Map(), values: [] };
  for (const [words, value] of entries) {
    let node = root;
    for (const word of words) {
      let child = node.next.get(word);
      if (child === undefined) {
        child = { next: new Map(), values: [] };
        node.next.set(word, child);
      }
      node = child;
    }
    node.values.push(value);
  }
  return root;
}

/** Asks whether one of these spoken forms stands anywhere among some words. */
export function anywhere(forms: readonly string[]): (words: readonly string[]) => boolean {
  const trie = buildTrie(forms.flatMap((form) => expand(form).map((words) => [words, true] as const)));
  return (words) => words.some((_, from) => longest(trie, words, from) !== undefined);
}

/** The longest entry that starts at `from`, and where it ends; none runs on behind a word that `closes`. */
export function longest<T>(
  trie: Trie<T>,
  words: readonly string[],
  from: number,
  closes?: (at: number) => boolean,
): { readonly values: readonly T[]; readonly to: number } | undefined {
  let node: Trie<T> | undefined = trie;
  let best: { values: readonly T[]; to: number } | undefined;
  for (let at = from; at < words.length; at += 1) {
    node = node.next.get(words[at] as string);
    if (node === undefined) break;
    if (node.values.length > 0) best = { values: node.values, to: at + 1 };
    if (closes?.(at)) break;
  }
  return best;
}
