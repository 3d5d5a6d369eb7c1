import type { Level } from '../capture/pcm.ts';

/** The bar spans 60 decibels below full scale. */
const span = 60;
const share = (db: number): number => Math.max(0, Math.min(1, (db + span) / span));

/** How loud the microphone's sound is right now; for the eye only, the words say the rest. */
export function LevelBar({ level }: { readonly level: Level }) {
  return (
    <div class={`live-level${level.peak > -1 ? ' loud' : ''}`} aria-hidden="true">
      <div class="mean" style={{ transform: `scaleX(${share(level.mean)})` }} />
      <div class="peak" style={{ transform: `translateX(${share(level.peak) * 100}%)` }} />
    </div>
  );
}
