/** What one reading of a phrase does to the draft. Pure. */
import type { Doubt } from '../../parser/contract/doubt.ts';
import { ownItems, type Draft, type DraftItem, type Horse, type ParseResult } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { obey } from './obey.ts';
import { heardAgainRule, meaning, settle } from './settle.ts';
import { isOpen, put, voice } from './standing.ts';

/** The reading of a new phrase is added; of a phrase known already, see `heardAgain`. */
export function said(draft: Draft, reading: ParseResult, when: string): Draft {
  // What is brought back stands in the draft already, struck: obeying the command restores it as it was.
  const result: ParseResult = { ...reading, items: [...ownItems(reading)] };
  const { utterance } = result;
  const read: Draft = { ...draft, unread: draft.unread.filter(([from]) => from !== utterance.at?.[0]) };
  if (draft.utterances.some((u) => u.id === utterance.id)) return heardAgain(read, result, when);
  const shown: Draft = { ...read, utterances: [...read.utterances, utterance] };
  if (draft.state === 'confirmed')
    return result.items.length ? ask(shown, question(shown, result, [], 'This was read after the record was confirmed.')) : shown;
  const who = { by: voice, when };
  // What an answer chooses is done by obeying it; a doubt that was merely completed would be shut without its reading.
  const answers = result.commands.flatMap((c) =>
    c.command === 'answer' && draft.doubts.some((d) => d.doubt.id === c.doubt && d.doubt.readings?.[c.reading ?? -1]) ? [c.doubt] : [],
  );
  const made = (answers.length ? [] : result.items).reduce((d, item) => put(d, item, {}, who), shown);
  const asked = result.doubts.reduce(ask, { ...made, hints: [...made.hints, ...result.hints] });
  const settled = result.settles.filter((id) => !answers.includes(id)).reduce((d, id) => settle(d, id, { how: 'completed' }, who), asked);
  const told = result.header ? tell(settled, result.header) : settled;
  return result.commands.reduce((d, command) => obey(d, command, who), { ...told, carry: result.carry });
}

/** Adds a question once. */
export const ask = (draft: Draft, doubt: Doubt): Draft =>
  draft.doubts.some((d) => d.doubt.id === doubt.id) ? draft : { ...draft, doubts: [...draft.doubts, { doubt }] };

type Spoken = NonNullable<ParseResult['header']>;
/** Facts of the header that were spoken; what a person typed there is left alone. */
function tell(draft: Draft, spoken: Spoken): Draft {
  const typed = new Set(draft.headerTyped);
  const free = <T extends object>(facts: T, prefix = ''): T =>
    Object.fromEntries(Object.entries(facts).filter(([name, value]) => value !== undefined && !typed.has(prefix + name))) as T;
  const { horse, ...visit } = spoken;
  // A horse that has its name keeps it: another name may be that of the one next door.
  const name = draft.header.horse?.name;
  const told: Horse | null = horse
    ? { ...draft.header.horse, ...free(horse, 'horse.'), ...(name === undefined ? {} : { name }) }
    : draft.header.horse;
  return { ...draft, header: { ...draft.header, ...free(visit), horse: told } };
}

const untouched = (i: DraftItem): boolean => i.state === 'open' && !i.touched;

/**
 * The same sound, heard again. What nobody has touched is read anew; what a person edited, struck, kept, confirmed,
 * or steered by voice stays as it is, and a difference becomes a question.
 */
function heardAgain(draft: Draft, result: ParseResult, when: string): Draft {
  const { id } = result.utterance;
  const first = draft.items.filter((i) => i.item.evidence.utterance === id);
  if (
    sameItems(
      first.filter((i) => !i.item.evidence.by).map((i) => i.item),
      result.items,
    )
  )
    return draft;
  const doubts = draft.doubts.filter((d) => d.doubt.utterance === id);
  const steered =
    result.commands.length > 0 ||
    result.items.some((i) => i.revises) ||
    first.some((i) => i.item.revises) ||
    draft.commands.some((c) => c.utterance === id);
  if (draft.state === 'confirmed' || steered || !first.every(untouched) || !doubts.every(isOpen))
    return ask(
      draft,
      question(
        draft,
        result,
        first.filter((i) => i.state === 'open' || i.state === 'kept').map((i) => i.item),
        'The same sound, heard again, gave something else.',
      ),
    );
  const where = draft.items.findIndex((i) => i.item.evidence.utterance === id);
  const others = draft.items.filter((i) => i.item.evidence.utterance !== id);
  const at = where < 0 ? others.length : where;
  const anew: Draft = {
    ...draft,
    items: [...others.slice(0, at), ...result.items.map((item): DraftItem => ({ item, state: 'open' })), ...others.slice(at)],
    utterances: draft.utterances.map((u) => (u.id === id ? result.utterance : u)),
    doubts: draft.doubts.filter((d) => d.doubt.utterance !== id),
  };
  return result.settles.reduce((d, doubt) => settle(d, doubt, { how: 'completed' }, { by: voice, when }), result.doubts.reduce(ask, anew));
}
const sameItems = (a: readonly Item[], b: readonly Item[]): boolean =>
  JSON.stringify(a.map(meaning).sort()) === JSON.stringify(b.map(meaning).sort());

/** Between what stands and what was heard now; the same difference is asked once. */
function question(draft: Draft, { utterance, items }: ParseResult, standing: readonly Item[], why: string): Doubt {
  const earlier = draft.doubts.filter((d) => d.doubt.rule === heardAgainRule && d.doubt.utterance === utterance.id);
  const same = earlier.find((d) => sameItems(d.doubt.readings?.[1]?.items ?? [], items));
  const id = same?.doubt.id ?? `${utterance.id}:again${earlier.length + 1}`;
  return {
    id,
    doubt: 'readers-differ',
    words: utterance.text,
    utterance: utterance.id,
    ...(utterance.at && { at: utterance.at }),
    state: 'open',
    rule: heardAgainRule,
    why,
    readings: [
      { label: 'As it stands', items: [...standing] },
      { label: 'As heard again', items },
    ],
  };
}
