/** The line format: one JSON object an utterance, for `parse` and for `hear`. */
import type { ParseResult } from '../../parser/contract/draft.ts';

export interface Heard {
  readonly file: string;
  readonly at: readonly [number, number] | undefined;
  readonly confidence: number;
  readonly heard: readonly string[];
}

export const lineOf = (result: ParseResult, heard?: Heard): object => ({
  id: result.id,
  text: result.text,
  items: result.items,
  commands: result.commands,
  doubts: result.doubts,
  hints: result.hints,
  settles: result.settles,
  leftovers: result.leftovers,
  words: result.utterance.words,
  ...(result.header && { header: result.header }),
  ...heard,
});
