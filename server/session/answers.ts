/** The answer to a command: what is said aloud and shown. Pure. */
import type { Command } from '../../parser/contract/doubt.ts';
import type { Draft, DraftItem } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import { coverageOf, leftInWords } from './coverage.ts';
import { lastMade } from './obey.ts';
import { stands } from './standing.ts';

export type Say = (item: Item) => string;
export type Answer = Extract<FromServer, { type: 'answer' }>;

/** `before` and `after` are the draft on either side of the command. */
export function answerTo(command: Command, before: Draft, after: Draft, say: Say): Answer {
  const answer = (words: string, tone: Answer['tone'] = 'done'): Answer => ({ type: 'answer', command: command.command, say: words, tone });
  const aloud = (items: readonly DraftItem[]): string => items.map((i) => say(i.item)).join(' ');
  const stood = new Map(before.items.map((i) => [i.item.id, stands(i)]));
  const struck = after.items.filter((i) => !stands(i) && stood.get(i.item.id));
  const back = after.items.filter((i) => stands(i) && stood.get(i.item.id) !== true);
  const byId = (ids: readonly string[] | undefined): readonly DraftItem[] => after.items.filter((i) => ids?.includes(i.item.id));
  switch (command.command) {
    case 'strike-last':
      return struck.length ? answer(`Struck. ${aloud(struck)}`) : answer('There is nothing to strike.', 'unsure');
    case 'bring-back':
      return back.length ? answer(`Brought back. ${aloud(back)}`) : answer('There is nothing to bring back.', 'unsure');
    case 'amend':
      return answer(`Now: ${aloud(after.items.filter((i) => i.item.revises === command.target))}`);
    case 'answer':
      return back.length ? answer(aloud(back)) : answer('Settled.');
    case 'repeat-last': {
      const last = byId(lastMade(after));
      return last.length ? answer(aloud(last)) : answer('Nothing yet.', 'unsure');
    }
    case 'read-all': {
      const all = after.items.filter(stands);
      return all.length ? answer(aloud(all)) : answer('Nothing yet.', 'unsure');
    }
    case 'what-is-left':
      return answer(leftInWords(coverageOf(after)));
    case 'pause':
      return answer('Paused.');
    case 'resume':
      return answer('Listening.');
    case 'next-horse':
      return answer(command.name ? `Next horse: ${command.name}.` : 'Next horse. No name yet.');
    case 'finish':
      return answer('Finished. It waits to be looked over.');
    case 'flag-for-veterinarian': {
      const marked = byId(after.commands.find((c) => c.id === command.id)?.targets);
      return answer(`Marked for the vet. ${aloud(marked)}`.trim());
    }
    case 'note':
      return answer('Noted.');
  }
}
