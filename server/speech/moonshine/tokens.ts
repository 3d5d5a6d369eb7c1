/** Between the recogniser's tokens and words. Moonshine uses the LLaMA vocabulary; ids from 32000 up are marks, not text. */
import tokenizer from 'llama-tokenizer-js';
import type { ScoredWord } from '../words.ts';

const TEXT_IDS = 32_000;
const WORD_START = '\u2581';

/** Token ids of a sentence as the recogniser would write it: a capital first and a full stop last. */
export function encodeSentence(sentence: string): readonly number[] {
  const trimmed = sentence.trim();
  const written = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return tokenizer.encode(/[.?!]$/.test(written) ? written : `${written}.`, false, true);
}

/** Groups tokens into words; the log-probability of a word is the sum of its tokens', its punctuation included. */
export function wordsOf(tokens: readonly number[], logProbs: readonly number[]): readonly ScoredWord[] {
  const groups: { tokens: number[]; logProb: number }[] = [];
  tokens.forEach((token, i) => {
    if (token >= TEXT_IDS) return;
    const last = groups[groups.length - 1];
    const piece: string = tokenizer.vocabById[token] ?? '';
    if (last === undefined || piece.startsWith(WORD_START)) groups.push({ tokens: [token], logProb: logProbs[i] ?? 0 });
    else {
      last.tokens.push(token);
      last.logProb += logProbs[i] ?? 0;
    }
  });
  return groups.map(({ tokens: ids, logProb }) => ({ w: tokenizer.decode(ids, false, true).trim(), logProb })).filter(({ w }) => w !== '');
}
