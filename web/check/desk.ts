/** The desk at which one draft is looked over: what lies on it, and what a person can do to it. Effects live here. */
import { computed, signal } from '@preact/signals';
import type { Draft, DraftDoubt, DraftItem } from '../../parser/contract/draft.ts';
import type { Act, Caution } from '../../parser/contract/wire.ts';
import { api, Refused } from '../api.ts';
import { isOpen, stands } from '../fold.ts';
import { keysOf, type PlaceKey } from '../mouth/places.ts';
import { standsAt } from '../mouth/marks.ts';
import { parts, partOf, type Part } from '../words.ts';
import { person } from '../person.ts';
import { play } from '../sound.ts';

export const draft = signal<Draft | null>(null);
export const cautions = signal<readonly Caution[]>([]);
export const trouble = signal<string | null>(null);
export const busy = signal(false);
/** The place picked in the mouth: only what stands there is listed. */
export const picked = signal<PlaceKey | null>(null);
/** The line the keyboard stands on: an item's or a doubt's id. */
export const at = signal<string | null>(null);
/** The item whose words are open, and the one being edited (`new` while adding). */
export const opened = signal<string | null>(null);
export const editing = signal<string | null>(null);
/** What was just done, said aloud to a screen reader and shown for a moment. */
export const said = signal('');
export const lastStruck = signal<readonly string[]>([]);

export const confirmed = computed(() => draft.value?.state === 'confirmed');
export const questions = computed<readonly DraftDoubt[]>(() => draft.value?.doubts.filter(isOpen) ?? []);
const doubted = computed(() => new Set(questions.value.map((d) => d.doubt.item).filter(Boolean)));
export const isDoubted = (id: string): boolean => doubted.value.has(id);
/** Items nobody has said yes to, and about which nothing is asked. */
export const sure = computed(() => draft.value?.items.filter((i) => i.state === 'open' && !doubted.value.has(i.item.id)) ?? []);

const here = (i: DraftItem): boolean => !picked.value || standsAt(i.item, picked.value);
export const questionsHere = computed(() =>
  !picked.value
    ? questions.value
    : questions.value.filter(
        ({ doubt }) =>
          (doubt.place && keysOf(doubt.place).includes(picked.value!)) ||
          draft.value?.items.some((i) => i.item.id === doubt.item && here(i)),
      ),
);
/** Items by part of the exam, in its order; a replaced item stays readable behind its correction. */
export const byPart = computed<ReadonlyMap<Part, readonly DraftItem[]>>(() => {
  const map = new Map<Part, DraftItem[]>(parts.map((part) => [part, []]));
  for (const item of draft.value?.items ?? []) if (item.state !== 'revised' && here(item)) map.get(partOf(item.item))!.push(item);
  return map;
});
/** All lines the keyboard walks, top to bottom. */
export const lines = computed<readonly string[]>(() => [
  ...questionsHere.value.map((d) => d.doubt.id),
  ...[...byPart.value.values()].flat().map((i) => i.item.id),
]);

/** Work under way: one at a time, trouble told in words, nothing lost. */
async function doing<T>(work: () => Promise<T>): Promise<T | null> {
  if (busy.value) return null;
  busy.value = true;
  trouble.value = null;
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    trouble.value = error.message;
    return null;
  } finally {
    busy.value = false;
  }
}
export async function load(id: string): Promise<void> {
  draft.value = null;
  picked.value = null;
  opened.value = null;
  editing.value = null;
  at.value = null;
  said.value = '';
  const got = await doing(() => api.exam(id));
  if (got) {
    draft.value = got.draft;
    cautions.value = got.cautions ?? [];
  }
}
/** Fetches the draft anew while sound is still being read, and when the person comes back to the page. */
export async function refresh(): Promise<void> {
  const id = draft.value?.id;
  if (!id || busy.value || document.hidden) return;
  const got = await api.exam(id).catch((error: unknown) => {
    if (error instanceof Refused) return null;
    throw error;
  });
  if (got && draft.value?.id === id && !busy.value && got.draft.seq > draft.value.seq) draft.value = got.draft;
}
/** Work that ends in a new state of this draft. */
async function change(work: (id: string) => Promise<{ readonly draft: Draft }>, then: string): Promise<boolean> {
  const id = draft.value?.id;
  const got = id ? await doing(() => work(id)) : null;
  if (!got) return false;
  draft.value = got.draft;
  said.value = then;
  return true;
}
export const joinWith = (other: string): Promise<boolean> =>
  change((id) => api.join(id, other, person.value), 'Joined. The other draft is empty now; nothing it held was lost.');
export const reread = (): Promise<boolean> =>
  change((id) => api.reread(id), 'Heard again. What you kept, changed or struck stays as it is.');
/** @returns the id of the draft that begins with this phrase */
export async function splitAt(phrase: string): Promise<string | null> {
  let other: string | null = null;
  await change(async (id) => {
    const got = await api.split(id, phrase, person.value);
    other = got.other.id;
    return got;
  }, 'Split. What follows is a draft of its own.');
  return other;
}
export const act = (what: Act, then: string): Promise<boolean> => change((id) => api.act(id, what, person.value), then);

const item = (id: string): DraftItem | undefined => draft.value?.items.find((i) => i.item.id === id);
export const find = (id: string | null): { item?: DraftItem | undefined; question?: DraftDoubt | undefined } =>
  id ? { item: item(id), question: questions.value.find((d) => d.doubt.id === id) } : {};

export const keep = (id: string): Promise<boolean> => act({ act: 'keep', ids: [id] }, 'Kept.');
export async function strike(id: string): Promise<void> {
  if (await act({ act: 'strike', ids: [id] }, 'Struck. It stays visible and can be brought back.')) lastStruck.value = [id];
}
export async function restore(ids: readonly string[]): Promise<void> {
  if (ids.length && (await act({ act: 'restore', ids: [...ids] }, 'Brought back.'))) lastStruck.value = [];
}
export const keepSure = (): Promise<boolean> =>
  act({ act: 'keep-sure' }, `Kept ${sure.value.length} items. Each question still needs its own answer.`);
export const settle = (doubt: string, how: 'reading' | 'kept-as-said' | 'struck', reading?: number): Promise<boolean> =>
  act({ act: 'settle', doubt, how, ...(reading === undefined ? {} : { reading }) }, how === 'struck' ? 'Struck.' : 'Settled.');

export interface Sound {
  readonly exam: string;
  readonly span: readonly [number, number];
}
/** The sound of a stretch of an utterance: its own, or all of it. Words moved here by a join or a split have theirs in another journal. */
export function soundOf(id: string | undefined, span?: readonly [number, number]): Sound | null {
  const said = utterance(id);
  const at = span ?? said?.at;
  return draft.value && at ? { exam: said?.sound ?? draft.value.id, span: at } : null;
}
/** Its address, with a breath before and after. */
export const addressOf = ({ exam, span }: Sound): string => api.soundAt(exam, Math.max(0, span[0] - 0.3), span[1] + 0.4);
/** The sound of a line: an item's or a doubt's. */
export function soundOfLine(id: string): Sound | null {
  const { item: i, question } = find(id);
  return i
    ? soundOf(i.item.evidence.utterance, i.item.evidence.at)
    : question
      ? soundOf(question.doubt.utterance, question.doubt.at)
      : null;
}
export const playSound = (sound: Sound | null): void => {
  if (sound) play(addressOf(sound));
};
export const utterance = (id: string | undefined): Draft['utterances'][number] | undefined =>
  draft.value?.utterances.find((u) => u.id === id);
export const standing = computed(() => draft.value?.items.filter(stands) ?? []);
export { stands };
