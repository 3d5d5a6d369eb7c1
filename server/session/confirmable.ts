import type { Draft } from '../../parser/contract/draft.ts';
import { isOpen } from './standing.ts';

/** What stands in the way of confirming. `at` in seconds of the exam's sound. */
export type Obstacle =
  | { readonly why: 'doubt'; readonly doubt: string; readonly words: string; readonly at?: readonly [number, number] | undefined }
  | { readonly why: 'unread'; readonly at: readonly [number, number] }
  | { readonly why: 'confirmed-already' };

/** Every open doubt and every stretch of sound not read yet; empty when the draft may be confirmed. */
export function whyNotConfirm(draft: Draft): readonly Obstacle[] {
  if (draft.state === 'confirmed') return [{ why: 'confirmed-already' }];
  return [
    ...draft.doubts
      .filter(isOpen)
      .map(({ doubt }): Obstacle => ({ why: 'doubt', doubt: doubt.id, words: doubt.words, ...(doubt.at && { at: doubt.at }) })),
    ...draft.unread.map((at): Obstacle => ({ why: 'unread', at })),
  ];
}
