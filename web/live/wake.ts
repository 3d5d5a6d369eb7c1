/** Keeps the screen awake while listening. A browser lets go of the lock whenever the page is hidden: it is taken again on return. */
export const keepAwake = (failed: (error: unknown) => void): (() => void) => {
  let lock: WakeLockSentinel | null = null;
  let wanted = true;
  const take = async (): Promise<void> => {
    if (!wanted || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    const got = await navigator.wakeLock.request('screen');
    if (wanted) lock = got;
    else await got.release();
  };
  const retake = (): void => void take().catch(failed);
  document.addEventListener('visibilitychange', retake);
  retake();
  return () => {
    wanted = false;
    document.removeEventListener('visibilitychange', retake);
    void lock?.release().catch(failed);
  };
};
