/** Writing to a pipe that may be closed early (`| head`), and to a person. */
import type { ParseResult } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { say } from '../../parser/index.ts';

export const exits = { ok: 0, failed: 1, usage: 2, notSetUp: 3 } as const;
export type Exit = (typeof exits)[keyof typeof exits];

export const line = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
export const json = (value: unknown): void => line(JSON.stringify(value));
/** What happened goes to standard error, so that standard output stays what was asked for. */
export const tell = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

export const time = (seconds: number): string => `${Math.floor(seconds / 60)}:${(seconds % 60).toFixed(1).padStart(4, '0')}`;
const wide = (text: string, width: number): string => (text.length > width ? `${text.slice(0, width - 1)}…` : text.padEnd(width));

/** One row a thing understood: when, what was heard, what it became. */
export function rows(result: ParseResult, took?: number): readonly string[] {
  const at = result.utterance.at ? time(result.utterance.at[0]) : '';
  const became = [
    ...result.items.map((item: Item) => say(item)),
    ...result.commands.map(({ command }) => `[${command}]`),
    ...result.doubts.map(({ doubt, words }) => `? ${doubt}${words ? `: ${words}` : ''}`),
  ];
  const left = (n: number): string => (n ? ' '.repeat(53) : `${at.padStart(7)}  ${wide(result.text, 44)}`);
  return (became.length ? became : ['-']).map(
    (what, n) => `${left(n)}  ${what}${n === 0 && took !== undefined ? `  (${Math.round(took)} ms)` : ''}`,
  );
}

export const tableHead = (): void => line(`${'at'.padStart(7)}  ${'took'.padStart(7)}  ${wide('heard', 44)}  understood`);
/** @param at seconds; @param took milliseconds */
export function tableRow(at: number, took: number, heard: string, became: readonly string[]): void {
  line(`${time(at).padStart(7)}  ${`${Math.round(took)} ms`.padStart(7)}  ${wide(heard, 44)}  ${became[0] ?? '-'}`);
  for (const more of became.slice(1)) line(`${' '.repeat(64)}${more}`);
}
