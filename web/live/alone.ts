/** One window listens at a time: two would send the same sound twice, out of step. */
export const takeTurn = async (): Promise<(() => void) | null> => {
  if (!navigator.locks) return () => undefined;
  return new Promise((answer) => {
    void navigator.locks.request('quidnote-listening', { ifAvailable: true }, (lock) => {
      if (!lock) return answer(null);
      return new Promise<void>((release) => answer(() => release()));
    });
  });
};
