/** Erasing for good. Sound goes first: were it cut off half way, the words still say what is left to erase. */
import type { Store } from '../records/index.ts';
import type { Journals } from './journals.ts';

/** An exam's sound, also what of it lies in another exam's journal. */
export async function eraseSound(store: Store, journals: Journals, exam: string, when: string): Promise<void> {
  for (const { journal, at } of store.soundElsewhere(exam)) await journals.eraseStretch(journal, at);
  store.eraseSound(exam);
  await journals.erase(exam, when);
}
/** An exam, words and sound: a row without words stays. */
export async function eraseExam(store: Store, journals: Journals, exam: string, when: string): Promise<void> {
  await eraseSound(store, journals, exam, when);
  store.eraseExam(exam, when);
}
