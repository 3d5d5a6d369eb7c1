/** Something asked of the server: its answer, or trouble in words, or neither yet. */
import { useEffect, useState } from 'preact/hooks';
import { Refused } from './api.ts';

export interface Fetched<T> {
  readonly value: T | null;
  readonly trouble: string | null;
  readonly again: () => void;
}
/** Asks when the page is shown, when `about` changes, and when `again` is called. A late answer to an old question is dropped. */
export function useFetched<T>(ask: () => Promise<T>, about: readonly unknown[] = []): Fetched<T> {
  const [turn, setTurn] = useState(0);
  const [got, setGot] = useState<{ value: T | null; trouble: string | null }>({ value: null, trouble: null });
  useEffect(() => {
    let wanted = true;
    ask().then(
      (value) => {
        if (wanted) setGot({ value, trouble: null });
      },
      (error: unknown) => {
        if (!(error instanceof Refused)) throw error;
        if (wanted) setGot({ value: null, trouble: error.message });
      },
    );
    return () => {
      wanted = false;
    };
  }, [...about, turn]);
  return { ...got, again: () => setTurn((n) => n + 1) };
}
