/** A stretch of words said again in fewer. */
import type { Token } from './tokens.ts';

/** The words from one to before another as the few that say it plainly: the first of them stands for all that was heard. */
export const plainly = (tokens: readonly Token[], from: number, to: number, words: readonly string[]): readonly Token[] =>
  words.map((t, i) => ({
    t,
    word: (tokens[Math.min(from + i, to - 1)] as Token).word,
    ...(i === 0 ? { heard: tokens.slice(from, to).map(({ word }) => word) } : {}),
    ...(i === words.length - 1 && tokens[to - 1]?.ends ? { ends: true as const } : {}),
  }));

/** Behind the last word before the next pause. */
export const endOfPart = (tokens: readonly Token[], at: number): number => {
  const pause = tokens.findIndex(({ ends }, i) => i >= at && ends === true);
  return pause < 0 ? tokens.length : pause + 1;
};

/** The words from one on, each pause as a comma of its own. */
export const textFrom = (tokens: readonly Token[], at: number): string =>
  tokens
    .slice(at)
    .map(({ t, ends }) => t + (ends ? ' ,' : ''))
    .join(' ');
/** How many words stand in such a text. */
export const wordsIn = (text: string): number => text.split(' ').filter((word) => word !== ',').length;
/** Words that stand for the first of a phrase, each for all of them. */
export function inPlaceOf(tokens: readonly Token[], to: number, words: readonly string[]): readonly Token[] {
  const heard = tokens.slice(0, to).map(({ word }) => word);
  const put = words.map((t, i): Token => ({ t, word: heard[Math.min(i, to - 1)] as number, heard }));
  const last = put.at(-1) as Token;
  return [...put.slice(0, -1), tokens[to - 1]?.ends ? { ...last, ends: true as const } : last, ...tokens.slice(to)];
}
