/** Speech that steers. What takes something away acts only as the whole phrase. */
import type { Context } from '../contract/draft.ts';
import type { Command } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { CommandId } from '../lexicon/commands.ts';
import { remember, type Carry } from './carry.ts';
import { commandForms } from './vocabulary.ts';

export type CommandBody = Omit<Command, 'id' | 'utterance' | 'words'>;
export interface Steered {
  readonly commands: readonly CommandBody[];
  readonly carry: Carry;
  readonly items?: readonly Item[];
  readonly note?: string;
  readonly settles?: readonly string[];
}

const softeners = new Set(['um', 'uh', 'er', 'erm', 'please', 'okay', 'ok', 'right', 'now', 'so', 'quidnote']);

/** "can you read that back to me": the asking around a command. */
const asked = /^(?:can|could|would|will) you (?:just )?/;
const toMe = / (?:(?:to|for) (?:me|us)|once more|one more time|(?:would|will|could|can) you)$/;
/** Said first to whoever holds the horse. */
const waiting = /^(?:hang on|hold on|bear with me) /;

/** "note ...", "put a note on, ...": the words behind it are kept as they are. */
const noted =
  /^(?:(?:and )?(?:put|make|take|add|leave|stick) (?:in |down )?a (?:little |quick )?note(?: on| in| down| here| there)?|note|note down|note to self)(?: (?:that|saying|to say))? (.+)$/;

/** "that's him finished, finish the exam": each part by itself is the whole of one and the same command. */
function saidTwice(words: readonly string[], pauses: readonly number[]): CommandId | undefined {
  if (pauses.length === 0) return undefined;
  const parts = [...pauses, words.length]
    .map((to, i) =>
      words
        .slice(i === 0 ? 0 : pauses[i - 1], to)
        .filter((w) => !softeners.has(w))
        .join(' '),
    )
    .filter((part) => part !== '');
  const ids = new Set(parts.map((part) => commandForms.get(part)));
  return ids.size === 1 ? ([...ids][0] as CommandId | undefined) : undefined;
}

const LONGEST_STRIKE = 8;
/** "ramp on three eleven, three mil, scratch that": where words that strike stand behind others; past the last word where none do. */
export function strikeBehind(words: readonly string[]): number {
  for (let from = Math.max(1, words.length - LONGEST_STRIKE); from < words.length - 1; from += 1)
    if (commandForms.get(words.slice(from).join(' ')) === 'strike-last') return from;
  return words.length;
}

/** @param pauses where the writing pauses: the index of the word behind each comma or stop */
export function steer(words: readonly string[], context: Context, carry: Carry, pauses: readonly number[] = []): Steered | undefined {
  const plain = words.filter((w) => !softeners.has(w));
  const bare = (said: readonly string[]): string => said.join(' ').replace(waiting, '').replace(asked, '').replace(toMe, '');
  const whole = bare(words);
  const text = commandForms.has(whole) || plain.length === words.length ? whole : bare(plain);
  const command = (commandForms.get(text) as CommandId | undefined) ?? saidTwice(words, pauses);
  if (carry.paused) return command === 'resume' ? { commands: [{ command }], carry: { ...carry, paused: false } } : { commands: [], carry };
  const note = noted.exec(plain.join(' '))?.[1];
  if (note !== undefined) return { commands: [], carry, note };
  const next = /^next horse(?: is| please)?(?: (.+))?$/.exec(text);
  if (next && (next[1] === undefined || next[1].split(' ').length <= 3))
    return {
      commands: [{ command: 'next-horse', ...(next[1] ? { name: capital(next[1]) } : {}) }],
      carry: { lastItems: [], paused: carry.paused, undo: remember(carry.undo, { command: 'next-horse', ids: [] }) },
    };
  const flag = /^(?:flag|mark) (?:(?:that|this|it)|(.+)) for (?:the|a) vet$/.exec(text);
  if (flag) return { commands: [{ command: 'flag-for-veterinarian', ...(carry.last ? { targets: [carry.last] } : {}) }], carry };
  if (command === undefined) return undefined;
  switch (command) {
    case 'strike-last': {
      const standing = carry.lastItems.filter((id) => context.items.some((item) => item.id === id));
      const ids = standing.length > 0 ? standing : [...new Set(context.items.slice(-1).map(({ id }) => id))];
      return {
        commands: [{ command, targets: ids }],
        carry: { ...ended(carry), lastItems: [], undo: remember(carry.undo, { command, ids }) },
      };
    }
    case 'bring-back': {
      const last = carry.undo.at(-1);
      // "put it back", and nothing was put away: said to whoever holds the headcollar. "Bring it back" asks, and hears that there is nothing.
      if (last === undefined && text.includes('put')) return undefined;
      return {
        commands: [{ command, targets: [...(last?.ids ?? [])] }],
        carry: {
          ...ended(carry),
          lastItems: last?.ids ?? [],
          ...(last?.ids.at(-1) ? { last: last.ids.at(-1) } : {}),
          undo: carry.undo.slice(0, -1),
        },
      };
    }
    case 'pause':
      return { commands: [{ command }], carry: { ...ended(carry), paused: true } };
    case 'answer':
      return answer(text, context, carry);
    default:
      return { commands: [{ command }], carry: ['finish', 'resume'].includes(command) ? ended(carry) : carry };
  }
}

/** A command ends what places and halves were carried; what was made last can still be amended. */
const ended = (carry: Carry): Carry => ({
  lastItems: carry.lastItems,
  undo: carry.undo,
  paused: carry.paused,
  ...(carry.last ? { last: carry.last } : {}),
});
const capital = (name: string): string =>
  name
    .split(' ')
    .map((w) => w.charAt(0).toUpperCase() + w.slice(1))
    .join(' ');

/** Only while a question is open: "the first", "the fourth one". */
function answer(text: string, context: Context, carry: Carry): Steered | undefined {
  const open = context.doubts.findLast((doubt) => (doubt.readings ?? []).length > 1);
  const reading = ['first', 'second', 'third', 'fourth'].findIndex((ordinal) => text.includes(ordinal));
  const items = open?.readings?.[reading]?.items;
  return open === undefined || items === undefined
    ? undefined
    : { commands: [{ command: 'answer', doubt: open.id, reading }], carry, items, settles: [open.id] };
}
