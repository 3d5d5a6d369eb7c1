/** Floating samples (-1 to 1) as 16-bit little-endian PCM; louder ones are held at the rail. */
export const pcm16 = (samples: Float32Array): Uint8Array => {
  const bytes = new Uint8Array(samples.length * 2);
  const view = new DataView(bytes.buffer);
  samples.forEach((s, i) => view.setInt16(i * 2, Math.round(Math.max(-1, Math.min(1, s)) * (s < 0 ? 32768 : 32767)), true));
  return bytes;
};

/** Loudness of some samples in decibels below full scale: the peak and the mean (RMS). Digital silence is -Infinity. */
export interface Level {
  readonly peak: number;
  readonly mean: number;
}
const decibel = (x: number): number => 20 * Math.log10(x);
export const levelOf = (samples: Float32Array): Level => {
  let peak = 0;
  let power = 0;
  for (const s of samples) {
    peak = Math.max(peak, Math.abs(s));
    power += s * s;
  }
  return { peak: decibel(peak), mean: decibel(Math.sqrt(power / Math.max(1, samples.length))) };
};
