/** The way through the grammar: words in; items, commands, doubts and the account of every word out. */
import type { Context, ParseResult, Utterance } from '../contract/draft.ts';
import type { Command, Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Hypothesis, Word } from '../contract/word.ts';
import { digitSounds } from '../lexicon/mishearings.ts';
import { digitWords } from '../lexicon/numbers.ts';
import { account } from './accounts.ts';
import { afterPause, carryOf, LONG_PAUSE, remember, type Carry } from './carry.ts';
import { steer, type CommandBody } from './commands.ts';
import { headerIn } from './header.ts';
import { hintsFor } from './hints.ts';
import { withCarriedPlace } from './lean.ts';
import type { Made, MadeDoubt } from './made.ts';
import { mend, type Mend } from './mend.ts';
import { read, type Reading } from './read.ts';
import { inParts } from './breaths.ts';
import { broken, conflictRule, conflicts, gapRule, rules } from './rules.ts';
import { headSpan } from './scan.ts';
import { tokenise } from './tokens.ts';
import { unreadIn } from './unread.ts';
import { labelReading } from '../labels.ts';

export type Parsed = ParseResult & { readonly trace: { readonly steps: number; readonly made: readonly { readonly rules: readonly string[]; readonly words: string }[] } };

/** Reads the best hypothesis only; `parse` in ../index.ts weighs all of them. */
export function parseOne(heard: HeardPhrase, hypothesis: Hypothesis, context: Context): Parsed {
  const before = carryOf(context);
  const carry = (heard.silenceBefore ?? 0) > LONG_PAUSE ? afterPause(before) : before;
  const words = hypothesis.words;
  const plain = tokenise(words.map(({ w }) => w)).map(({ t }) => t);
  const steered = steer(plain, context, carry);
  if (steered) return commanded(heard, words, hypothesis.text, steered);
  const readAs = (said: readonly string[]): Reading => { const reading = read(said, context, carry); return { ...reading, made: withCarriedPlace(reading, carry, context) }; };
  const said = words.map(({ w }) => w);
  const asHeard = inParts(said, readAs(said), readAs);
  const mended = mend(said, asHeard, readAs, carry.half !== undefined);
  return build(heard, hypothesis, mended?.reading ?? asHeard, mended?.mends ?? [], carry, context);
}

function build(heard: HeardPhrase, hypothesis: Hypothesis, reading: Reading, mends: readonly Mend[], carry: Carry, context: Context): Parsed {
  const { words } = hypothesis;
  const { made } = reading;
  const claims = new Map<number, string>();
  const items: Item[] = [];
  const doubts: Doubt[] = [];
  const commands: Command[] = [];
  const repaired = new Map(mends.flatMap(({ words: mended, means }) => mended.map((word) => [word, means] as const)));
  let amendments = 0;
  // What is said in one breath counts together: the wolf tooth that is pulled was found.
  const together: Context = { ...context, items: [...context.items, ...made.flatMap(({ body, revises }) => (body && !revises ? [body as Item] : []))] };
  for (const one of made) {
    const indices = wordsOf(one.marks, reading);
    const item = one.body && { ...one.body, id: `${heard.id}/i${items.length + 1}`, how: one.how ?? {}, evidence: evidence(heard, words, indices, one), ...(one.revises ? { revises: one.revises.id } : {}) } as Item;
    if (item) {
      items.push(item);
      indices.forEach((i) => { if (!claims.has(i)) claims.set(i, `item:${item.id}`); });
      if (one.revises && one.rules.includes('amend')) commands.push({ id: `${heard.id}/c${(amendments += 1)}`, command: 'amend', utterance: heard.id, words: textOf(indices, words), target: one.revises.id, was: one.revises.was, now: one.revises.now });
    }
    const against: MadeDoubt[] = item && one.body ? broken(one.body, together).map((rule): MadeDoubt => ({ doubt: 'unlikely', rule: rule.name, why: rule.why, source: rule.source })) : [];
    if (one.body && conflicts(one.body, context)) against.push({ doubt: 'conflict', rule: conflictRule.name, why: conflictRule.why, source: conflictRule.source });
    for (const doubt of [...one.doubts, ...against]) {
      const own = doubt.marks ? wordsOf(doubt.marks, reading) : indices;
      const id = `${heard.id}/d${doubts.length + 1}`;
      doubts.push(doubtOf(doubt, id, heard, words, own, item, one));
      own.forEach((i) => { if (!claims.has(i)) claims.set(i, `doubt:${id}`); });
    }
    if (one.repaired) indices.forEach((i) => { const digit = soundedDigit(words[i]?.w); if (digit !== undefined && !repaired.has(i)) repaired.set(i, digit); });
  }
  const [shared] = items.filter(({ kind }) => kind === 'finding');
  if (shared) reading.marks.forEach((mark, m) => { if (mark.whole) wordsOf([m], reading).forEach((i) => { if (!claims.has(i)) claims.set(i, `item:${shared.id}`); }); });
  // "four ten has got a gap behind it": the tooth is in the place, by what points back to it.
  const placed = (codes: readonly string[]): Item | undefined => (codes.length === 0 ? undefined : items.find((item) => { const place = 'place' in item ? item.place : undefined; const all = !place ? [] : 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : []; return codes.every((code) => all.includes(code)); }));
  reading.marks.forEach((mark, m) => { const item = placed(mark.place?.codes ?? []); if (item) wordsOf([m], reading).forEach((i) => { if (!claims.has(i)) claims.set(i, `item:${item.id}`); }); });
  reading.takenBack.forEach((i) => { if (!claims.has(i)) claims.set(i, 'command'); });
  const header = headerIn(reading);
  header?.words.forEach((i) => { if (!claims.has(i)) claims.set(i, 'command'); });
  const unread = made.length > 0 || header === undefined ? unreadIn(reading, claims) : [];
  if (unread.length > 0) {
    const id = `${heard.id}/d${doubts.length + 1}`;
    doubts.push({ id, doubt: 'unread', words: textOf(unread, words), utterance: heard.id, state: 'open', ...span(words, unread) });
    unread.forEach((i) => claims.set(i, `doubt:${id}`));
  }
  const talk = made.length === 0 && header === undefined && unread.length === 0;
  const accounts = account(words, claims, talk, repaired);
  const next = carryAfter(carry, reading, made, items, doubts);
  return {
    ...frame(heard, hypothesis.text, accounts), items, commands, doubts, hints: hintsFor(items, context, heard.id), settles: made.flatMap((m) => [...(m.settles ?? [])]),
    leftovers: leftoversOf(accounts), ...(header ? { header: header.header } : {}), carry: next, trace: { steps: reading.steps, made: made.map((m) => ({ rules: m.rules, words: textOf(wordsOf(m.marks, reading), words) })) },
  };
}

function commanded(heard: HeardPhrase, words: readonly Word[], text: string, { commands, carry, items = [], note, settles = [] }: { commands: readonly CommandBody[]; carry: Carry; items?: readonly Item[]; note?: string; settles?: readonly string[] }): Parsed {
  const all = words.map((_, i) => i);
  const made: Item[] = note === undefined ? items.map((item, i) => ({ ...item, id: `${heard.id}/i${i + 1}` })) : [{ kind: 'note', text: note, id: `${heard.id}/i1`, how: {}, evidence: { utterance: heard.id, words: all, rules: ['note'], ...span(words, all) } }];
  const claim = note !== undefined ? `item:${heard.id}/i1` : commands.length > 0 ? 'command' : 'leftover';
  const accounts = account(words, new Map(all.map((i) => [i, claim])), false, new Map());
  const listed = commands.map((body, i): Command => ({ ...body, id: `${heard.id}/c${i + 1}`, utterance: heard.id, words: text }));
  const next = made.length > 0 ? { ...carry, lastItems: made.map(({ id }) => id), last: made.at(-1)?.id } : carry;
  return { ...frame(heard, text, accounts), items: made, commands: listed, doubts: [], hints: [], settles: [...settles], leftovers: leftoversOf(accounts), carry: next, trace: { steps: words.length, made: [] } };
}

function frame(heard: HeardPhrase, text: string, words: Utterance['words']): { id: string; text: string; utterance: Utterance } {
  return { id: heard.id, text, utterance: { id: heard.id, text, words, ...(heard.at ? { at: heard.at } : {}), ...(heard.silenceBefore !== undefined ? { silenceBefore: heard.silenceBefore } : {}), reader: heard.reader } };
}

const wordsOf = (marks: readonly number[], { marks: all, tokens }: Reading): readonly number[] => [...new Set(marks.flatMap((m) => { return tokens.slice(...headSpan(all, m)).flatMap(({ word, heard }) => heard ?? [word]); }))].sort((a, b) => a - b);
const digitNames = Object.keys(digitWords);
/** "to", "ate", where they stand for a digit. */
const soundedDigit = (w: string | undefined): string | undefined => { const value = digitSounds[(w ?? '').toLowerCase()]; return value === undefined ? undefined : digitNames.find((name) => digitWords[name] === value); };
const textOf = (indices: readonly number[], words: readonly Word[]): string => indices.map((i) => words[i]?.w ?? '').join(' ');
const leftoversOf = (accounts: Utterance['words']): string[] => accounts.filter(({ as }) => as === 'leftover').map(({ w }) => w);

function span(words: readonly Word[], indices: readonly number[]): { at?: [number, number] } {
  const times = indices.flatMap((i) => (words[i]?.at ? [words[i]?.at as [number, number]] : []));
  return times.length === 0 ? {} : { at: [Math.min(...times.map(([a]) => a)), Math.max(...times.map(([, b]) => b))] };
}

const evidence = (heard: HeardPhrase, words: readonly Word[], indices: readonly number[], made: Made): Item['evidence'] => ({ utterance: heard.id, words: [...indices], ...span(words, indices), rules: [...made.rules], ...(made.repaired ? { repaired: true } : {}) });

function doubtOf(doubt: MadeDoubt, id: string, heard: HeardPhrase, words: readonly Word[], indices: readonly number[], item: Item | undefined, made: Made): Doubt {
  const rule = doubt.rule === gapRule.name ? gapRule : rules.find(({ name }) => name === doubt.rule);
  const condition = doubt.condition ?? (item?.kind === 'finding' ? item.condition : undefined);
  const place = doubt.place !== undefined ? doubt.place : item && 'place' in item ? item.place : undefined;
  const readings = doubt.readings?.map(({ label, bodies }, r) => {
    const items = bodies.map((body, b) => ({ ...body, id: `${id}/r${r + 1}.${b + 1}`, how: made.how ?? {}, evidence: evidence(heard, words, indices, made) }) as Item);
    return { label: label || labelReading(items), items };
  });
  return {
    id, doubt: doubt.doubt, words: doubt.words ?? textOf(indices, words), utterance: heard.id, state: 'open', ...span(words, indices),
    ...(place ? { place } : {}), ...(condition ? { condition } : {}), ...(item ? { item: item.id } : {}), ...(readings ? { readings } : {}),
    ...(doubt.rule ? { rule: doubt.rule, why: doubt.why ?? rule?.why ?? '', source: doubt.source ?? rule?.source ?? '' } : doubt.why ? { why: doubt.why, source: doubt.source ?? '' } : {}), ...(doubt.legal ? { legal: doubt.legal } : {}),
  };
}

/** What the next phrase may lean on. Talk clears nothing; a region or a row said anew takes the place of a tooth. */
function carryAfter(carry: Carry, reading: Reading, made: readonly Made[], items: readonly Item[], doubts: readonly Doubt[]): Carry {
  if (made.length === 0) return carry;
  const raws = reading.places.flatMap((i) => (reading.marks[i]?.place ? [reading.marks[i]?.place] : [])).filter((raw) => raw !== undefined);
  const half = doubts.find(({ doubt }) => doubt === 'no-place' || doubt === 'no-condition');
  const amended = made.flatMap((m) => (m.revises ? [m.revises.id] : []));
  return {
    undo: amended.length > 0 ? remember(carry.undo, { command: 'amend', ids: amended }) : carry.undo, paused: carry.paused,
    lastItems: items.length > 0 ? items.map(({ id }) => id) : carry.lastItems,
    ...(items.length > 0 ? { last: items.at(-1)?.id } : carry.last ? { last: carry.last } : {}),
    ...(raws.length > 0 ? { place: raws } : carry.place ? { place: carry.place } : {}),
    ...(half ? { half: { doubt: half.id, ...(half.item ? { item: half.item } : {}) } } : {}),
  };
}

