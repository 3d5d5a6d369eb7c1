/** Speech that steers. What takes something away acts only as the whole phrase. */
import type { Context } from '../contract/draft.ts';
import type { Command, Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import { commands, namedBy, notBeforeNames, type CommandEntry, type CommandId } from '../lexicon/commands.ts';
import { itemsOf, remember, type Carry } from './carry.ts';
import { where } from './lists.ts';
import type { Trie } from './trie.ts';
import { becauseTrie, carryingOnTrie, closerTrie, commandTrie, flaggingTrie, forTheVetTrie, openerTrie } from './vocabulary.ts';

export type CommandBody = Omit<Command, 'id' | 'utterance' | 'words'>;
export interface Steered {
  readonly commands: readonly CommandBody[];
  readonly carry: Carry;
  readonly items?: readonly Item[];
  /** Items said before that stand again: they keep their ids. */
  readonly back?: readonly Item[];
  readonly note?: string;
  readonly settles?: readonly string[];
}

/** Where the forms that begin at `from` may end. */
function ends<T>(trie: Trie<T>, words: readonly string[], from: number): readonly { readonly to: number; readonly value: T }[] {
  const all: { to: number; value: T }[] = [];
  let node: Trie<T> | undefined = trie;
  for (let at = from; at < words.length; at += 1) {
    node = node.next.get(words[at] as string);
    if (node === undefined) break;
    if (node.values.length > 0) all.unshift({ to: at + 1, value: node.values[0] as T });
  }
  return all;
}
/** Every place that is reached from the first word by openers alone, the nearest first. */
function openings(words: readonly string[]): readonly number[] {
  const reached = [0];
  for (const from of reached) for (const { to } of ends(openerTrie, words, from)) if (!reached.includes(to)) reached.push(to);
  return reached.sort((a, b) => a - b);
}
/** Whether nothing but politeness stands from here to the end. */
const polite = (words: readonly string[], from: number): boolean =>
  from === words.length || ends(closerTrie, words, from).some(({ to }) => polite(words, to));

/** "right, carry on", and nothing else. */
const goesOn = (words: readonly string[]): boolean =>
  openings(words).some((from) => ends(carryingOnTrie, words, from).some(({ to }) => polite(words, to)));

interface Spoken {
  readonly id: CommandId;
  readonly said: string;
  readonly name?: string;
}
const MOST_OF_A_NAME = 3;

/** The command that begins at this very word and leaves nothing over to the end but politeness, or the name of a horse. */
function commandAt(words: readonly string[], from: number): Spoken | undefined {
  for (const { to, value: id } of ends(commandTrie, words, from)) {
    const said = words.slice(from, to).join(' ');
    if (polite(words, to) || (id === 'strike-last' && ends(becauseTrie, words, to).some((why) => polite(words, why.to))))
      return { id, said };
    const name = id === 'next-horse' ? nameIn(words.slice(to)) : undefined;
    if (name !== undefined) return { id, said, name };
  }
  return undefined;
}
/** The whole phrase as one command, whatever is said around it. */
function commandOf(words: readonly string[]): Spoken | undefined {
  for (const from of openings(words)) {
    const spoken = commandAt(words, from);
    if (spoken) return spoken;
  }
  return undefined;
}

/** "is called Pippin", "please, Thistle": a horse's name, and no sentence about it. */
function nameIn(words: readonly string[]): string | undefined {
  const courteous = words.findLastIndex((_, i) => polite(words.slice(0, i), 0));
  const rest = words.slice(courteous);
  const called = namedBy.findLast((form) => `${rest.join(' ')} `.startsWith(`${form} `))?.split(' ') ?? [];
  const said = rest.slice(called.length);
  const to = said.findIndex((_, i) => i > 0 && polite(said, i));
  const name = said.slice(0, to < 0 ? said.length : to);
  return name.length === 0 || name.length > MOST_OF_A_NAME || notNames.has(name[0] as string) ? undefined : name.map(capital).join(' ');
}
const notNames: ReadonlySet<string> = new Set(notBeforeNames);
const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** "note ...", "put a note on, ...": the words behind it are kept as they are. "Note how quiet he is", "note what a good lad he is" are said to somebody. */
const noted =
  /^(?:(?:and )?(?:put|make|take|add|leave|stick) (?:in |down )?a (?:little |quick |new )?note(?: on| in| down| here| there)?|(?:put|add|write) (?:this |that |it )?(?:to|in|into|on) (?:the|my) (?:notes|record)|(?:new |quick |another )?note(?: for (?:me|myself|the file|the record))?|note down|note to self)(?: please)?(?: (?:that|saying|to say))? (?!how |what |(?:of )?(?:that|this|it)(?: down)?$|down$)(.+)$/;

/** Parted by pauses, each part a command or mere politeness: "scratch that, read me the last one". Undefined where one part is neither. */
function inTurn(words: readonly string[], pauses: readonly number[]): readonly Spoken[] | undefined {
  const whole = commandOf(words);
  if (whole) return [whole];
  for (const at of pauses) {
    const first = words.slice(0, at);
    const next = commandOf(first);
    if (next === undefined && !openings(first).includes(at)) continue;
    const rest = inTurn(
      words.slice(at),
      pauses.filter((pause) => pause > at).map((pause) => pause - at),
    );
    if (rest) return next && rest[0]?.id !== next.id ? [next, ...rest] : rest;
  }
  return openings(words).includes(words.length) || polite(words, 0) ? [] : undefined;
}
/** Each stands alone: what needs a question or ends the exam is never one of several. */
const alone: ReadonlySet<CommandId> = new Set(['amend', 'answer', 'note', 'next-horse', 'finish']);
/** "That's him finished, next horse, Bramble" goes on to Bramble: finishing as well would end the listening. */
const together = (spoken: readonly Spoken[]): readonly Spoken[] => {
  const ids = spoken.map(({ id }) => id).join();
  return ids === 'finish,next-horse' ? spoken.slice(1) : spoken.length > 1 && spoken.some(({ id }) => alone.has(id)) ? [] : spoken;
};

const LONGEST_BEHIND = 14;
/** Words that take back or soften, and belong to the command behind them. */
const before: ReadonlySet<string> = new Set(['no', 'sorry', 'oh', 'actually', 'and']);
/** Where a command begins that stands behind other words and runs to the end; past the last word where none does. */
function commandBehind(
  words: readonly string[],
  may: (id: CommandId, from: number) => boolean,
): { readonly from: number; readonly spoken?: Spoken } {
  for (let from = words.length - 2; from >= Math.max(1, words.length - LONGEST_BEHIND); from -= 1) {
    const spoken = commandAt(words, from);
    if (spoken === undefined) continue;
    let first = from;
    // "no, take that back" is longer than "take that back": what is said around it goes with it.
    while (first > 1 && before.has(words[first - 1] as string)) first -= 1;
    if (may(spoken.id, first)) return { from: first, spoken };
  }
  return { from: words.length };
}
/** "ramp on three eleven, three mil, scratch that": where words that strike stand behind others; past the last word where none do. */
export const strikeBehind = (words: readonly string[]): number => commandBehind(words, (id) => id === 'strike-last').from;

/**
 * "step on two oh nine, flag that for the vet": a command that takes nothing away, at the end of a breath that begins with something else.
 * "Cap on what is left": where it acts as a whole phrase only, a pause parts it from what stands before.
 */
export function askedBehind(
  words: readonly string[],
  pauses: readonly number[],
): { readonly from: number; readonly obey: (context: Context, carry: Carry) => Steered | undefined } | undefined {
  const { from, spoken } = commandBehind(words, (id, at) => {
    const { behind, whole } = commands[id] as CommandEntry;
    return behind === true && (!whole || pauses.includes(at));
  });
  return spoken && { from, obey: (context, carry) => obeyed(spoken, context, carry) };
}

/** "flag the step on two oh nine for the vet": the words that name what is meant, where the whole phrase says so. */
export function flaggedByName(words: readonly string[]): readonly [from: number, to: number] | undefined {
  for (const at of openings(words))
    for (const { to: from } of ends(flaggingTrie, words, at)) {
      const to = words.findIndex((_, i) => i > from && ends(forTheVetTrie, words, i).some(({ to: end }) => polite(words, end)));
      if (to > 0) return [from, to];
    }
  return undefined;
}

/** @param pauses where the writing pauses: the index of the word behind each comma or stop */
export function steer(words: readonly string[], context: Context, carry: Carry, pauses: readonly number[] = []): Steered | undefined {
  const spoken = together(inTurn(words, pauses) ?? []);
  if (carry.paused)
    return spoken.some(({ id }) => id === 'resume') || goesOn(words)
      ? { commands: [{ command: 'resume' }], carry: { ...carry, paused: false } }
      : { commands: [], carry };
  const note = noted.exec(words.slice(openings(words).findLast((at) => words[at] !== 'please') ?? 0).join(' '))?.[1];
  if (note !== undefined) return { commands: [], carry, note };
  return spoken.reduce<Steered | undefined>((done, next, i) => {
    if (i > 0 && done === undefined) return undefined;
    const then = obeyed(next, context, done?.carry ?? carry);
    return then && done ? { ...then, commands: [...done.commands, ...then.commands] } : then;
  }, undefined);
}

function obeyed({ id: command, said, name }: Spoken, context: Context, carry: Carry): Steered | undefined {
  switch (command) {
    case 'strike-last': {
      const standing = carry.lastItems.filter((id) => context.items.some((item) => item.id === id));
      const ids = standing.length > 0 ? standing : [...new Set(context.items.slice(-1).map(({ id }) => id))];
      return {
        commands: [{ command, targets: ids }],
        carry: { ...ended(carry), lastItems: [], undo: remember(carry.undo, { command, ids, items: itemsOf(context, ids) }) },
      };
    }
    case 'bring-back': {
      const last = carry.undo.at(-1);
      // "put it back", and nothing was put away: said to whoever holds the headcollar. "Bring it back" asks, and hears that there is nothing.
      if (last === undefined && said.includes('put')) return { commands: [], carry };
      return {
        commands: [{ command, targets: [...(last?.ids ?? [])] }],
        back: last?.items ?? [],
        carry: {
          ...ended(carry),
          lastItems: last?.ids ?? [],
          ...(last?.ids.at(-1) ? { last: last.ids.at(-1) } : {}),
          undo: carry.undo.slice(0, -1),
        },
      };
    }
    case 'next-horse':
      return {
        commands: [{ command, ...(name === undefined ? {} : { name }) }],
        carry: { lastItems: [], paused: carry.paused, undo: remember(carry.undo, { command, ids: [] }) },
      };
    case 'flag-for-veterinarian':
      return { commands: [{ command, ...(carry.last ? { targets: [carry.last] } : {}) }], carry };
    case 'pause':
      return { commands: [{ command }], carry: { ...ended(carry), paused: true } };
    case 'answer':
      return answer(said, context, carry);
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

/** Only while a question is open: "the first", "the fourth one"; right behind it "the upper one", of the teeth that it offers. */
function answer(text: string, context: Context, carry: Carry): Steered | undefined {
  const open = context.doubts.findLast((doubt) => (doubt.readings ?? []).length > 1);
  const ordinal = ['first', 'second', 'third', 'fourth'].findIndex((nth) => text.includes(nth));
  const reading = ordinal >= 0 || open?.item === undefined || !carry.lastItems.includes(open.item) ? ordinal : inJaw(text, open);
  const items = open?.readings?.[reading]?.items;
  return open === undefined || items === undefined
    ? undefined
    : { commands: [{ command: 'answer', doubt: open.id, reading }], carry, items, settles: [open.id] };
}
/** The one reading of which all teeth stand in the jaw that was named. */
function inJaw(text: string, { readings = [] }: Doubt): number {
  const quadrants = /\b(?:upper|top)\b/.test(text) ? '1256' : '3478';
  const there = where(readings, ({ items }) => {
    const teeth = items.flatMap(teethOf);
    return teeth.length > 0 && teeth.every((code) => quadrants.includes(code[0] as string));
  });
  return there.length === 1 ? (there[0] as number) : -1;
}
const teethOf = (item: Item): readonly string[] => ('place' in item && item.place && 'teeth' in item.place ? item.place.teeth : []);
