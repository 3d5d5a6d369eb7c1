/** The draft on the page: one signal, filled by folding what the server sends. */
import { computed, signal } from '@preact/signals';
import type { Draft } from '../parser/contract/draft.ts';
import type { FromServer } from '../parser/contract/wire.ts';
import { fold, isOpen, stands } from './fold.ts';

export { fold, isOpen, stands };
export const draft = signal<Draft | null>(null);
export const standing = computed(() => draft.value?.items.filter(stands) ?? []);
export const openDoubts = computed(() => draft.value?.doubts.filter(isOpen) ?? []);
export const receive = (message: FromServer): void => {
  draft.value = fold(draft.value, message);
};
