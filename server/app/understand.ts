/** From words heard to a reading: the grammar, with what it needs of the exam handed in. */
import type { Context, ParseResult } from '../../parser/contract/draft.ts';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { parse, type Parsed } from '../../parser/index.ts';

export type Read = (phrase: HeardPhrase, context: Context) => ParseResult;
/** The trace is for people who mend the grammar; a draft keeps the reading alone. */
export const untraced = ({ trace: _trace, ...result }: Parsed): ParseResult => result;

export const read: Read = (phrase, context) => {
  const result = untraced(parse(phrase, context));
  return {
    ...result,
    utterance: { ...result.utterance, heard: phrase.hypotheses.slice(0, 4).map(({ text, logProb }) => ({ text, logProb })) },
  };
};
