/** Law 1: every word ends in an item, a command, a filler, a doubt or a leftover. */
import type { WordAccount } from '../contract/draft.ts';
import type { Word } from '../contract/word.ts';
import { glue, hesitations } from '../lexicon/fillers.ts';

const idle = new Set(hesitations);
const small = new Set([...glue, ...hesitations]);

/** @param claims for each word index, who took it; the first claim holds */
export function account(words: readonly Word[], claims: ReadonlyMap<number, string>, talk: boolean, repaired: ReadonlyMap<number, string>): WordAccount[] {
  return words.map((word, i) => {
    const bare = word.w.toLowerCase().replace(/[^\p{L}\p{N}']/gu, '');
    const as = claims.get(i) ?? (bare === '' || idle.has(bare) || (small.has(bare) && !talk) ? 'filler' : 'leftover');
    return { w: word.w, as, ...(word.at ? { at: word.at } : {}), ...(repaired.has(i) ? { repairedTo: repaired.get(i) as string } : {}) };
  });
}
