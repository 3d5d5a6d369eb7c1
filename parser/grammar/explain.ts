import type { Parsed } from './parse.ts';
import { say } from '../labels.ts';

/** Which rule took which word, what was carried, what was doubted and why: what a failing test prints. */
export function explain(result: Parsed): string {
  const carried = (how: Readonly<Record<string, string>>): string =>
    Object.entries(how)
      .filter(([, h]) => h === 'carried')
      .map(([field]) => field)
      .join(', ');
  return [
    `"${result.text}"`,
    ...result.items.map(
      (item) =>
        `  item ${item.kind}: ${say(item)} [${item.evidence.rules.join(' > ')}]${carried(item.how) ? ` carried: ${carried(item.how)}` : ''}`,
    ),
    ...result.commands.map((command) => `  command ${command.command}`),
    ...result.doubts.map((doubt) => `  doubt ${doubt.doubt}: "${doubt.words}"${doubt.rule ? ` (${doubt.rule}: ${doubt.why})` : ''}`),
    ...result.hints.map((hint) => `  hint ${hint.say}`),
    `  words ${result.utterance.words.map(({ w, as }) => `${w}=${as.replace(/^(item|doubt):.*\//, '$1:')}`).join(' ')}`,
  ].join('\n');
}
