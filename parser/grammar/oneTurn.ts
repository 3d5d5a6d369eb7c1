/** "No, sorry, two oh six", "oh, hang on, no": words of taking back are one turn, whatever pauses are written between them. */
import { correctionSay } from '../lexicon/corrections.ts';
import { formAt, longestOf } from './forms.ts';
import type { Token } from './tokens.ts';

/** Of these one stands in each: "no, no hooks" is an answer, "no, it is sharp" two turns. */
const turning = /\b(?:sorry|hang|hold|wait|correction|mistake|lie|mean|meant)\b/;
const turns = longestOf([[correctionSay.filter((form) => form.includes(' ') && turning.test(form)), true]]);

/** @returns the same list where nothing is taken back in several words with a pause among them */
export function inOneTurn(tokens: readonly Token[]): readonly Token[] {
  const inside = new Set<number>();
  tokens.forEach(({ t }, at) => {
    // "sorry, no ramp": that "no" rules out, where no pause closes it.
    const closed = ({ words }: { readonly words: readonly string[] }): boolean =>
      words.at(-1) !== 'no' || tokens[at + words.length - 1]?.ends === true;
    const form = turns.has(t) ? formAt(turns, tokens, at, closed) : undefined;
    for (let i = at; form && i < at + form.words.length - 1; i += 1) if (tokens[i]?.ends) inside.add(i);
  });
  return inside.size === 0 ? tokens : tokens.map(({ ends, ...token }, i) => (ends && !inside.has(i) ? { ...token, ends } : token));
}
