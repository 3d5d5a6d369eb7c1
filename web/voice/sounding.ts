/** When our own voice or tones were in the air, so that the microphone's sound can be marked and the program does not dictate to itself. */
export interface Sounding {
  /** Our sound begins at `ms`; the answer is called when it ends. */
  readonly begin: (ms: number) => (endMs: number) => void;
  /** Milliseconds of our sound between two moments. */
  readonly within: (fromMs: number, toMs: number) => number;
}

/** A room, a loudspeaker's delay and the browser's buffers hold on to a sound for this long. */
const tailMs = 400;
/** Older stretches are forgotten: no chunk asks for them any more. */
const memoryMs = 30_000;

/** All times on one clock that only goes forward. */
export const sounding = (): Sounding => {
  let stretches: readonly { readonly from: number; to: number }[] = [];
  return {
    begin: (ms) => {
      const stretch = { from: ms, to: Infinity };
      stretches = [...stretches.filter((s) => s.to > ms - memoryMs), stretch];
      return (endMs) => {
        stretch.to = endMs + tailMs;
      };
    },
    within: (from, to) => {
      const inside = stretches
        .map((s): readonly [number, number] => [Math.max(from, s.from), Math.min(to, s.to)])
        .filter(([a, b]) => b > a)
        .sort((a, b) => a[0] - b[0]);
      let ms = 0;
      let reached = from;
      for (const [a, b] of inside) {
        ms += Math.max(0, b - Math.max(a, reached));
        reached = Math.max(reached, b);
      }
      return ms;
    },
  };
};
