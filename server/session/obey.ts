/** What a command does to one draft. `next-horse` and `finish` reach beyond it and are done by the live session. Pure. */
import type { Command } from '../../parser/contract/doubt.ts';
import type { Draft } from '../../parser/contract/draft.ts';
import { settle } from './settle.ts';
import { isOpen, restore, stands, takeBack, type Who } from './standing.ts';

/** Items and open doubts of the last utterance that made something which still stands; empty when there is none. */
export function lastMade(draft: Draft): readonly string[] {
  for (const { id } of draft.utterances.toReversed()) {
    const items = draft.items.filter((i) => stands(i) && i.item.evidence.utterance === id).map((i) => i.item.id);
    if (items.length) return [...items, ...draft.doubts.filter((d) => isOpen(d) && d.doubt.utterance === id).map((d) => d.doubt.id)];
  }
  return [];
}

/** What the last strike or correction took away and nobody has brought back; empty when there is none. */
export function lastTaken(draft: Draft): readonly string[] {
  const gone = (ids: readonly string[]): readonly string[] => ids.filter((id) => draft.items.some((i) => i.item.id === id && !stands(i)));
  for (const command of draft.commands.toReversed()) {
    const ids =
      command.command === 'strike-last' ? (command.targets ?? []) : command.command === 'amend' && command.target ? [command.target] : [];
    // A correction that was itself struck is undone already: its target stands.
    const taken = gone(ids);
    if (taken.length) return command.command === 'strike-last' ? ids : taken;
  }
  return [];
}

/** Obeys, and keeps the command in the draft with the ids it acted on. */
export function obey(draft: Draft, command: Command, who: Who): Draft {
  const known = draft.commands.some((c) => c.id === command.id);
  if (known) return draft;
  const kept = (targets: readonly string[] | undefined, after: Draft): Draft => ({
    ...after,
    commands: [...after.commands, targets?.length ? { ...command, targets: [...targets] } : command],
  });
  switch (command.command) {
    case 'strike-last': {
      const ids = command.targets?.length ? command.targets : lastMade(draft);
      return kept(ids, takeBack(draft, ids, who));
    }
    case 'bring-back': {
      const ids = command.targets?.length ? command.targets : lastTaken(draft);
      return kept(ids, restore(draft, ids, who));
    }
    case 'answer':
      return kept(
        command.targets,
        command.doubt !== undefined && command.reading !== undefined
          ? settle(draft, command.doubt, { how: 'reading', reading: command.reading }, who)
          : draft,
      );
    case 'pause':
      return kept(undefined, { ...draft, paused: true });
    case 'resume':
      return kept(undefined, { ...draft, paused: false });
    case 'flag-for-veterinarian':
      return kept(
        command.targets?.length ? command.targets : lastMade(draft).filter((id) => draft.items.some((i) => i.item.id === id)),
        draft,
      );
    // The corrected item came with the same utterance and names what it revises; the others say something or reach further.
    case 'amend':
    case 'repeat-last':
    case 'read-all':
    case 'what-is-left':
    case 'next-horse':
    case 'finish':
    case 'note':
      return kept(command.targets, draft);
  }
}
