/** Phrases as the grammar would hand them on, written by hand: the reducer and the store are checked without it. */
import type { Command, Doubt } from '../../parser/contract/doubt.ts';
import type { DraftEvent, Header, ParseResult } from '../../parser/contract/draft.ts';
import { Item } from '../../parser/contract/item.ts';

export const when = '2026-03-04T09:12:00+00:00';
export const by = 'S. Wren';
export const header = (horse: string | null = 'Juniper', startedAt = when): Header => ({
  horse: horse === null ? null : { name: horse },
  owner: 'R. Alder',
  yard: 'Low Meadow',
  examiner: by,
  startedAt,
});
export const opened = (horse?: string | null, startedAt?: string): DraftEvent => ({
  event: 'opened',
  header: header(horse, startedAt),
  by,
  when,
});

type Loose = Record<string, unknown>;
export interface Made {
  readonly items?: readonly Loose[];
  readonly commands?: readonly Loose[];
  readonly doubts?: readonly Loose[];
  readonly settles?: readonly string[];
  readonly header?: ParseResult['header'];
}

export const itemOf = (loose: Loose, utterance: string, k: number, at?: [number, number]): Item =>
  Item.parse({
    id: `${utterance}.${k}`,
    evidence: { utterance, words: [0], ...(at && { at }), sure: 0.95, rules: ['place', 'condition'] },
    ...loose,
  });

/** One reading of a phrase; ids are the utterance's with an ordinal. */
export function result(utterance: string, text: string, made: Made = {}, at?: [number, number]): ParseResult {
  const items = (made.items ?? []).map((loose, k) => itemOf(loose, utterance, k, at));
  const words = text.split(' ').map((w) => ({ w, as: items[0] ? `item:${items[0].id}` : made.commands?.length ? 'command' : 'leftover' }));
  return {
    id: utterance,
    text,
    utterance: { id: utterance, text, words, ...(at && { at }) },
    items,
    commands: (made.commands ?? []).map((c, k) => ({ id: `${utterance}.c${k}`, utterance, words: text, ...c }) as Command),
    doubts: (made.doubts ?? []).map(
      (d, k) => ({ id: `${utterance}.d${k}`, words: text, utterance, state: 'open', ...(at && { at }), ...d }) as Doubt,
    ),
    hints: [],
    settles: [...(made.settles ?? [])],
    leftovers: items.length || made.commands?.length ? [] : [text],
    ...(made.header && { header: made.header }),
    carry: { last: utterance },
  };
}
export const said = (utterance: string, text: string, made?: Made, at?: [number, number]): DraftEvent => ({
  event: 'said',
  result: result(utterance, text, made, at),
  when,
});
export const hook = (tooth: string, mm?: number): Loose => ({
  kind: 'finding',
  condition: 'hook',
  presence: 'present',
  when: 'now',
  place: { teeth: [tooth] },
  ...(mm !== undefined && { measures: [{ what: 'height', value: mm, unit: 'mm', about: false }] }),
});
export const finding = (condition: string, place: Loose | null, more: Loose = {}): Loose => ({
  kind: 'finding',
  condition,
  presence: 'present',
  when: 'now',
  place,
  ...more,
});
