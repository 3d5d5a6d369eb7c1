/** A command and the one that undoes it sound alike ("start listening", "stop listening"): which of them is obeyed, where the ear holds both possible. */
import type { Context } from '../contract/draft.ts';
import { commands, type CommandEntry } from '../lexicon/commands.ts';
import { carryOf } from './carry.ts';
import type { Parsed } from './parse.ts';

/**
 * Share of the ear's belief in the opposite above which a command is asked about; and share in the word to go on that is enough
 * while paused, when nothing else has a meaning. Commands said in seven synthetic voices, clean and at 10 dB: of 28 times "start
 * listening" with and without "again" 2 were heard as "stop" (one with 0.43 for "start"), of 42 that stop none as "start", at most 0.14 for it.
 */
export const OPPOSED = 0.2,
  WHILE_PAUSED = 0.3;

/** @param shares of belief, a reading each; @returns the reading to take in place of the first; undefined where nothing is opposed */
export function opposed(first: Parsed, readings: readonly Parsed[], shares: readonly number[], context: Context): Parsed | undefined {
  const saying = (command: string): number =>
    readings.reduce((sum, reading, i) => sum + (reading.commands.some((one) => one.command === command) ? (shares[i] as number) : 0), 0);
  if (carryOf(context).paused)
    return saying('resume') < WHILE_PAUSED
      ? undefined
      : readings.find((reading) => reading.commands.some(({ command }) => command === 'resume'));
  const [command] = first.commands;
  const opposite = command && (commands[command.command] as CommandEntry).opposite;
  if (opposite === undefined || saying(opposite) <= OPPOSED) return undefined;
  const { at, words } = first.utterance;
  const id = `${first.id}/d1`;
  return {
    ...first,
    commands: [],
    carry: context.carry,
    utterance: { ...first.utterance, words: words.map((word) => ({ ...word, as: `doubt:${id}` })) },
    doubts: [
      {
        id,
        doubt: 'unsure',
        words: first.text,
        utterance: first.id,
        state: 'open',
        ...(at ? { at } : {}),
        why: 'This may have been the opposite. Nothing was done; say it again.',
      },
    ],
  };
}
