/** One window listens at a time: two would send the same sound twice, out of step. */

/** A window that is just closing is waited for this long. */
const waitMs = 1000;

/** Takes the turn, and answers how to give it back; null when another window keeps it. */
export const takeTurn = async (): Promise<(() => void) | null> => {
  if (!navigator.locks) return () => undefined;
  return new Promise((answer, fail) => {
    const held = navigator.locks.request(
      'quidnote-listening',
      { signal: AbortSignal.timeout(waitMs) },
      () => new Promise<void>((release) => answer(() => release())),
    );
    held.catch((error: unknown) => (error instanceof DOMException && error.name === 'TimeoutError' ? answer(null) : fail(error)));
  });
};
