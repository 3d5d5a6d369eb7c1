/** The way through the grammar: words in; items, commands, doubts and the account of every word out. */
import type { Context } from '../contract/draft.ts';
import type { Command } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Hypothesis, Word } from '../contract/word.ts';
import { account, leftoversOf, utteranceOf } from './accounts.ts';
import { leansOn } from './leansOn.ts';
import { becameOf } from './becameOf.ts';
import { inParts } from './breaths.ts';
import { build, type Parsed } from './build.ts';
import { afterPause, carryOf, LONG_PAUSE, noCarry, type Carry } from './carry.ts';
import { contrasted } from './contrast.ts';
import { askedBehind, flaggedByName, steer, type Steered } from './commands.ts';
import { withoutSearching } from './ending.ts';
import { span } from './evidence.ts';
import { withCarriedPlace } from './lean.ts';
import { hesitated, inWordsHeard } from './hesitated.ts';
import { forWhatWasFound } from './followUps.ts';
import { ofFound } from './foundBefore.ts';
import { objectNamed } from './objectNamed.ts';
import { where } from './lists.ts';
import { mend } from './mend.ts';
import { followed } from './follow.ts';
import { memory, type Memory } from './memory.ts';
import { putOff } from './nextTime.ts';
import { noneBehind } from './noneBehind.ts';
import { partByPart, type ReadPart } from './partByPart.ts';
import { ofTheLast } from './ofTheLast.ts';
import { putRight } from './putRight.ts';
import { read, type Reading } from './read.ts';
import { reachedBack } from './reachBack.ts';
import { saidOfIt } from './saidOfIt.ts';
import { nearSideIsLeft } from './nearSide.ts';
import { inOneTurn } from './oneTurn.ts';
import { talkAside } from './talkAside.ts';
import { tokenise, type Token } from './tokens.ts';
import { underWay } from './underWay.ts';

export type { Parsed } from './build.ts';

/** Readings of stretches of words, in one context and behind one silence. */
export type Stretches = Memory<Reading>;
/** Kept so many: the sentences proposed for one phrase hold fewer. */
export const stretchesRead = (): Stretches => memory(2000);

const tokensOf = (words: readonly string[]): readonly Token[] => underWay(inOneTurn(nearSideIsLeft(tokenise(words))));

/**
 * Reads the best hypothesis only; `parse` in ../index.ts weighs all of them.
 * @param stretches what was read of other hypotheses in this context
 * @param isPart one part of a phrase: it is not looked at part by part again
 * @param searches pauses in which the speaker may have looked for a word
 */
export function parseOne(
  heard: HeardPhrase,
  hypothesis: Hypothesis,
  context: Context,
  stretches = stretchesRead(),
  isPart = false,
  searches = 2,
): Parsed {
  const going = withoutSearching(hypothesis);
  if (going !== hypothesis) return inWordsHeard(parseOne(heard, going, context, stretches, isPart, searches), hypothesis);
  const before = carryOf(context);
  const said = hypothesis.words.map(({ w }) => w);
  const tokens = tokensOf(said);
  const carry = leansOn(tokens, context, (heard.silenceBefore ?? 0) > LONG_PAUSE ? afterPause(before) : before);
  const plain = tokens.map(({ t }) => t);
  const pauses = where(tokens, ({ ends }, i) => ends === true && i + 1 < tokens.length).map((i) => i + 1);
  const steered = steer(plain, context, carry, pauses);
  if (steered) return commanded(heard, hypothesis, steered);
  const asked = askedBehind(plain, pauses);
  const cut = tokens[asked?.from ?? tokens.length]?.word;
  if (asked && cut !== undefined && cut > 0) {
    const before = parseOne(heard, { ...hypothesis, words: hypothesis.words.slice(0, cut) }, context, stretches);
    const obeyed = asked.obey(context, carryOf({ ...context, carry: before.carry }));
    if (before.items.length > 0 && obeyed) return withCommand(before, hypothesis, obeyed);
  }
  const readTokens = (said: readonly Token[]): Reading => {
    const all = objectNamed(becameOf(saidOfIt(said, context, carry), context, carry), context, carry);
    const readIn = (words: readonly Token[], there: Context, before: Carry): Reading => {
      const reading = read(words, there, before);
      return { ...reading, made: withCarriedPlace(reading, before, there) };
    };
    const readShort = (words: readonly Token[], before: Carry): Reading => readIn(words, context, before);
    const short = followed(all, context, carry, readShort) ?? ofTheLast(all, context, carry, readShort);
    if (short) return short;
    const reached = contrasted(all, context, carry) ?? reachedBack(all, context, carry);
    const again = reached && read(reached.tokens, context, reached.carry);
    const [put, ...others] = again?.made ?? [];
    // All words of the phrase are of the one correction.
    if (again && put?.revises && others.length === 0) return { ...again, made: [{ ...put, marks: again.marks.map((_, m) => m) }] };
    const right = putRight(all, context, carry, readIn);
    if (right) return right;
    const reading = ofFound(all, context, carry, (words) => readShort(words, carry)) ?? read(all, context, carry);
    return { ...reading, made: putOff(withCarriedPlace(reading, carry, context), reading, context, carry) };
  };
  const readAs = (words: readonly string[]): Reading => stretches(words.join('\n'), () => readTokens(tokensOf(words)));
  const named = flaggedByName(plain);
  const meant = named && recorded(readTokens(tokens.slice(...named)), context);
  if (meant) return commanded(heard, hypothesis, { commands: [{ command: 'flag-for-veterinarian', targets: [meant.id] }], carry });
  const inBreaths = (words: readonly string[]): Reading => inParts(words, readAs(words), readAs);
  const plainly = new Set(becameOf(tokens, context, carry));
  const became = new Set(tokens.flatMap((token) => (plainly.has(token) ? [] : [token.word])));
  const asRead = talkAside(
    said,
    inBreaths(said),
    tokens,
    became,
    (words) => read(tokensOf(words), { ...context, items: [] }, noCarry),
    inBreaths,
  );
  const asHeard = { ...asRead, made: forWhatWasFound(asRead.made) };
  const mended = mend(said, asHeard, readAs, carry.half !== undefined);
  const whole = build(heard, hypothesis, mended?.reading ?? asHeard, mended?.mends ?? [], carry, context);
  if (isPart) return whole;
  const readPart: ReadPart = (part, before, id, isFirst) =>
    parseOne({ ...heard, id, silenceBefore: isFirst ? heard.silenceBefore : undefined }, part, before, undefined, true);
  // What was misheard in a part is mended with the rest of its phrase.
  const parted = mended
    ? whole
    : (noneBehind(whole, hypothesis, tokens, context, readPart) ?? partByPart(whole, hypothesis, tokens, context, readPart) ?? whole);
  if (searches === 0) return parted;
  return hesitated(parted, hypothesis, tokens, (words) => parseOne(heard, words, context, stretches, false, searches - 1)) ?? parted;
}

/** A phrase that steers, or a note: all of its words are one thing. */
function commanded(
  heard: HeardPhrase,
  { words, text }: Hypothesis,
  { commands, carry, items = [], back = [], note, settles = [] }: Steered,
): Parsed {
  const all = words.map((_, i) => i);
  const made = note === undefined ? items.map((item, i) => ({ ...item, id: `${heard.id}/i${i + 1}` })) : [noteOf(note, heard, words, all)];
  const claim = note !== undefined ? `item:${heard.id}/i1` : commands.length > 0 ? 'command' : 'leftover';
  const accounts = account(words, new Map(all.map((i) => [i, claim])), false, new Map());
  const listed = commands.map((body, i): Command => ({ ...body, id: `${heard.id}/c${i + 1}`, utterance: heard.id, words: text }));
  const next = made.length > 0 ? { ...carry, lastItems: made.map(({ id }) => id), last: made.at(-1)?.id } : carry;
  return {
    id: heard.id,
    text,
    utterance: utteranceOf(heard, text, accounts),
    items: [...made, ...back],
    commands: listed,
    doubts: [],
    hints: [],
    settles: [...settles],
    leftovers: leftoversOf(accounts),
    carry: next,
    trace: { steps: words.length, made: [] },
  };
}

/** The item last recorded that some words name, by its place and, where they say one, its condition. */
function recorded({ made }: Reading, context: Context): Item | undefined {
  const [one, ...more] = made;
  const place = one?.body && 'place' in one.body ? one.body.place : one?.doubts[0]?.place;
  const condition = one?.body?.kind === 'finding' ? one.body.condition : one?.doubts[0]?.condition;
  if (more.length > 0 || !place) return undefined;
  return context.items.findLast(
    (item) =>
      item.kind === 'finding' &&
      JSON.stringify(item.place) === JSON.stringify(place) &&
      (condition === undefined || item.condition === condition),
  );
}

/** What was recorded, and the command said behind it in the same breath. */
function withCommand(before: Parsed, { words, text }: Hypothesis, { commands, carry }: Steered): Parsed {
  const { id, utterance } = before;
  const behind = words.slice(utterance.words.length);
  const accounts = account(behind, new Map(behind.map((_, i) => [i, 'command'])), false, new Map());
  const said = behind.map(({ w }) => w).join(' ');
  return {
    ...before,
    text,
    utterance: { ...utterance, text, words: [...utterance.words, ...accounts] },
    commands: [
      ...before.commands,
      ...commands.map((body, i): Command => ({ ...body, id: `${id}/c${before.commands.length + i + 1}`, utterance: id, words: said })),
    ],
    carry,
  };
}

const noteOf = (text: string, heard: HeardPhrase, words: readonly Word[], all: readonly number[]): Item => ({
  kind: 'note',
  text,
  id: `${heard.id}/i1`,
  how: {},
  evidence: { utterance: heard.id, words: [...all], rules: ['note'], ...span(words, all) },
});
