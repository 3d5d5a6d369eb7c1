/** Law 1: every word ends in an item, a command, a filler, a doubt or a leftover. */
import type { Utterance, WordAccount } from '../contract/draft.ts';
import type { HeardPhrase, Word } from '../contract/word.ts';
import { glue, hesitations } from '../lexicon/fillers.ts';

const idle = new Set(hesitations);
const small = new Set([...glue, ...hesitations]);

/** @param claims for each word index, who took it; the first claim holds */
export function account(
  words: readonly Word[],
  claims: ReadonlyMap<number, string>,
  talk: boolean,
  repaired: ReadonlyMap<number, string>,
): WordAccount[] {
  return words.map((word, i) => {
    const as = claims.get(i) ?? unclaimed(word.w, talk);
    return { w: word.w, as, ...(word.at ? { at: word.at } : {}), ...(repaired.has(i) ? { repairedTo: repaired.get(i) as string } : {}) };
  });
}

function unclaimed(word: string, talk: boolean): 'filler' | 'leftover' {
  const bare = word.toLowerCase().replace(/[^\p{L}\p{N}']/gu, '');
  return bare === '' || idle.has(bare) || (small.has(bare) && !talk) ? 'filler' : 'leftover';
}

export const leftoversOf = (accounts: readonly WordAccount[]): string[] => accounts.filter(({ as }) => as === 'leftover').map(({ w }) => w);

/** The phrase as it is kept, with the account of its words. */
export const utteranceOf = ({ id, at, silenceBefore, reader }: HeardPhrase, text: string, words: WordAccount[]): Utterance => ({
  id,
  text,
  words,
  ...(at ? { at } : {}),
  ...(silenceBefore !== undefined ? { silenceBefore } : {}),
  reader,
});
