/** From what the rules made to what is handed on: items and doubts with their ids, commands, the account of every word, what the next phrase leans on. */
import type { Context, ParseResult } from '../contract/draft.ts';
import type { Command, Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Hypothesis } from '../contract/word.ts';
import { labelReading } from '../labels.ts';
import { digitSounds } from '../lexicon/mishearings.ts';
import { digitWords } from '../lexicon/numbers.ts';
import { account, leftoversOf, utteranceOf } from './accounts.ts';
import { carryAfter, type Carry } from './carry.ts';
import { strikeBehind } from './commands.ts';
import { evidence, span, textOf, wordsOf } from './evidence.ts';
import { headerIn } from './header.ts';
import { hintsFor } from './hints.ts';
import { gather } from './lists.ts';
import type { ItemBody, Made, MadeDoubt } from './made.ts';
import type { Mend } from './mend.ts';
import type { Reading } from './read.ts';
import { broken, conflictRule, conflicts, gapRule, rules, foundAndClear } from './rules.ts';
import { unreadIn } from './unread.ts';

export type Parsed = ParseResult & {
  readonly trace: { readonly steps: number; readonly made: readonly { readonly rules: readonly string[]; readonly words: string }[] };
};

export function build(
  heard: HeardPhrase,
  hypothesis: Hypothesis,
  reading: Reading,
  mends: readonly Mend[],
  carry: Carry,
  context: Context,
): Parsed {
  const { words, text } = hypothesis;
  const { made, marks } = reading;
  const spoken = made.map((one) => wordsOf(one.marks, reading));
  const items: Item[] = [];
  const doubts: Doubt[] = [];
  const commands: Command[] = [];
  // Who took each word: the first to claim it holds it.
  const claims = new Map<number, string>();
  const claim = (indices: readonly number[], as: string): void => {
    for (const i of indices) if (!claims.has(i)) claims.set(i, as);
  };
  const repaired = new Map(mends.flatMap(({ words: mended, means }) => mended.map((word) => [word, means] as const)));
  // What is said in one breath counts together: the wolf tooth that is pulled was found.
  const together: Context = {
    ...context,
    items: [...context.items, ...gather(made, ({ body, revises }) => (revises ? undefined : (body as Item | undefined)))],
  };

  made.forEach((one, m) => {
    const indices = spoken[m] as readonly number[];
    const item = one.body && itemOf(one, one.body, `${heard.id}/i${items.length + 1}`, evidence(heard, words, indices, one));
    if (item) {
      items.push(item);
      claim(indices, `item:${item.id}`);
    }
    if (item && one.revises && one.rules.includes('amend')) {
      const { id: target, was, now } = one.revises;
      commands.push({
        id: `${heard.id}/c${commands.length + 1}`,
        command: 'amend',
        utterance: heard.id,
        words: textOf(indices, words),
        target,
        was,
        now,
      });
    }
    for (const doubt of [...one.doubts, ...(one.body ? against(one.body, together, context) : [])]) {
      const own = doubt.marks ? wordsOf(doubt.marks, reading) : indices;
      const id = `${heard.id}/d${doubts.length + 1}`;
      doubts.push(doubtOf(doubt, id, heard, hypothesis, own, item, one));
      claim(own, `doubt:${id}`);
    }
    if (one.repaired)
      indices.forEach((i) => {
        const digit = soundedDigit(words[i]?.w);
        if (digit !== undefined && !repaired.has(i)) repaired.set(i, digit);
      });
  });

  const shared = items.find(({ kind }) => kind === 'finding');
  if (shared)
    marks.forEach((mark, m) => {
      if (mark.whole) claim(wordsOf([m], reading), `item:${shared.id}`);
    });
  // "four ten has got a gap behind it": the tooth is in the place, by what points back to it.
  marks.forEach(({ place }, m) => {
    const itself = place?.codes?.length && place.relative === undefined;
    const item = itself ? items.find((one) => place.codes?.every((code) => teethIn(one).includes(code))) : undefined;
    if (item) claim(wordsOf([m], reading), `item:${item.id}`);
  });
  claim(reading.takenBack, 'command');
  const header = headerIn(reading);
  if (header) claim(header.words, 'command');
  // A command acts as a whole phrase only: behind what it would take back it takes back nothing, and a person is asked.
  const from = strikeBehind(words.map(({ w }) => w.toLowerCase().replace(/[^a-z']/g, '')));
  const struck = items.length > 0 ? words.flatMap((_, i) => (i >= from ? [i] : [])) : [];
  const unread = struck.length > 0 ? struck : made.length > 0 || header === undefined ? unreadIn(reading, claims) : [];
  if (unread.length > 0) {
    const id = `${heard.id}/d${doubts.length + 1}`;
    doubts.push({ id, doubt: 'unread', words: textOf(unread, words), utterance: heard.id, state: 'open', ...span(words, unread) });
    claim(unread, `doubt:${id}`);
  }
  const talk = made.length === 0 && header === undefined && unread.length === 0;
  const accounts = account(words, claims, talk, repaired);
  return {
    id: heard.id,
    text,
    utterance: utteranceOf(heard, text, accounts),
    items,
    commands,
    doubts,
    hints: hintsFor(items, context, heard.id),
    settles: made.flatMap(({ settles = [] }) => settles),
    leftovers: leftoversOf(accounts),
    ...(header ? { header: header.header } : {}),
    carry: carryAfter(carry, reading, items, doubts, context),
    trace: {
      steps: reading.steps,
      made: made.map((one, m) => ({ rules: one.rules, words: textOf(spoken[m] as readonly number[], words) })),
    },
  };
}

const itemOf = ({ how, revises }: Made, body: ItemBody, id: string, said: Item['evidence']): Item =>
  Object.assign({}, body, { id, how: how ?? {}, evidence: said }, revises && { revises: revises.id });

const isClear = (body: ItemBody): boolean => body.kind === 'finding' && body.condition === 'abnormality' && body.presence === 'absent';
/** Found now at the very teeth that another item is of; of one tooth a part may be clear, and a gap may be clean. */
const isHere = (item: Item, body: ItemBody): boolean =>
  item.kind === 'finding' &&
  item.presence === 'present' &&
  item.when === 'now' &&
  item.condition !== 'abnormality' &&
  item.place !== null &&
  'teeth' in item.place &&
  item.place.teeth.length > 1 &&
  'place' in body &&
  JSON.stringify(item.place) === JSON.stringify(body.place);

/** What speaks against an item: rules of the mouth that it breaks, and what was recorded there before. */
const against = (body: ItemBody, together: Context, context: Context): readonly MadeDoubt[] => [
  ...broken(body, together).map((rule): MadeDoubt => ({ doubt: 'unlikely', rule: rule.name, why: rule.why, source: rule.source })),
  ...(isClear(body) && together.items.slice(context.items.length).some((other) => isHere(other, body))
    ? [{ doubt: 'unlikely' as const, ...foundAndClear }]
    : []),
  ...(conflicts(body, context)
    ? [{ doubt: 'conflict' as const, rule: conflictRule.name, why: conflictRule.why, source: conflictRule.source }]
    : []),
];

function teethIn(item: Item): readonly string[] {
  const place = 'place' in item ? item.place : undefined;
  return !place ? [] : 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : [];
}

const digitNames = new Map(
  Object.entries(digitWords)
    .reverse()
    .map(([name, value]) => [value, name] as const),
);
/** "to", "ate", where they stand for a digit. */
const soundedDigit = (w: string | undefined): string | undefined => {
  const value = digitSounds[(w ?? '').toLowerCase()];
  return value === undefined ? undefined : digitNames.get(value);
};

function doubtOf(
  doubt: MadeDoubt,
  id: string,
  heard: HeardPhrase,
  { words }: Hypothesis,
  indices: readonly number[],
  item: Item | undefined,
  made: Made,
): Doubt {
  const rule = doubt.rule === gapRule.name ? gapRule : rules.find(({ name }) => name === doubt.rule);
  const condition = doubt.condition ?? (item?.kind === 'finding' ? item.condition : undefined);
  const place = doubt.place !== undefined ? doubt.place : item && 'place' in item ? item.place : undefined;
  const readings = doubt.readings?.map(({ label, bodies }, r) => {
    const items = bodies.map(
      (body, b) =>
        ({ ...body, id: `${id}/r${r + 1}.${b + 1}`, how: made.how ?? {}, evidence: evidence(heard, words, indices, made) }) as Item,
    );
    return { label: label || labelReading(items), items };
  });
  const why = doubt.rule
    ? { rule: doubt.rule, why: doubt.why ?? rule?.why ?? '', source: doubt.source ?? rule?.source ?? '' }
    : doubt.why
      ? { why: doubt.why, source: doubt.source ?? '' }
      : {};
  return {
    id,
    doubt: doubt.doubt,
    words: doubt.words ?? textOf(indices, words),
    utterance: heard.id,
    state: 'open',
    ...span(words, indices),
    ...(place ? { place } : {}),
    ...(condition ? { condition } : {}),
    ...(item ? { item: item.id } : {}),
    ...(readings ? { readings } : {}),
    ...why,
    ...(doubt.legal ? { legal: doubt.legal } : {}),
  };
}
