/**
 * From the microphone's own rate to 16 kHz without folding: a polyphase low-pass (windowed sinc, Kaiser window).
 * One way for every browser: what a browser does inside AudioContext({ sampleRate }) differs from one to the next.
 */

/** Kaiser's window shape for about 80 dB of stop band (J. F. Kaiser, 1974: beta = 0.1102 (A - 8.7)). */
const beta = 0.1102 * (80 - 8.7);
/** The pass band ends at 0.9 of the lower Nyquist frequency; from there to Nyquist the filter falls. */
const passShare = 0.9;

const bessel0 = (x: number): number => {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > sum * 1e-12; k++) sum += term *= (x / (2 * k)) ** 2;
  return sum;
};

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** For each of `phases` positions between two input samples, the filter's weights there; each sums to one. */
const filterBank = (from: number, to: number, phases: number): { readonly bank: readonly Float32Array[]; readonly half: number } => {
  const nyquist = Math.min(from, to) / 2;
  const fall = (nyquist * (1 - passShare)) / from;
  const half = Math.ceil((80 - 8) / (2.285 * 2 * Math.PI * fall) / 2);
  const cut = (nyquist * (1 + passShare)) / from;
  const weight = (t: number): number => {
    const edge = 1 - (t / half) ** 2;
    if (edge <= 0) return 0;
    return (t === 0 ? cut : Math.sin(Math.PI * cut * t) / (Math.PI * t)) * (bessel0(beta * Math.sqrt(edge)) / bessel0(beta));
  };
  const bank = Array.from({ length: phases }, (_, phase) => {
    const taps = Float32Array.from({ length: 2 * half }, (_, k) => weight(k - half + 1 - phase / phases));
    const sum = taps.reduce((a, b) => a + b, 0);
    return taps.map((tap) => tap / sum);
  });
  return { bank, half };
};

/** A stream of samples at `from` Hz in, the same sound at `to` Hz out. Keeps its own tail between calls. */
export const resampler = (from: number, to = 16000): ((input: Float32Array) => Float32Array) => {
  if (!(from >= 4000 && from <= 384000)) throw new RangeError(`A microphone at ${from} Hz cannot be heard.`);
  if (from === to) return (input) => input;
  const common = greatestCommon(Math.round(from), to);
  const phases = to / common;
  const step = Math.round(from) / common;
  const { bank, half } = filterBank(from, to, phases);
  let held = new Float32Array(half - 1);
  /** Where the next output stands, in 1/phases of an input sample, from the first sample held. */
  let at = (half - 1) * phases;
  return (input) => {
    const all = new Float32Array(held.length + input.length);
    all.set(held);
    all.set(input, held.length);
    const output = new Float32Array(Math.max(0, Math.ceil(((all.length - half) * phases - at) / step)));
    for (let n = 0; n < output.length; n++, at += step) {
      const first = Math.floor(at / phases) - half + 1;
      const taps = bank[at % phases]!;
      let sum = 0;
      for (let k = 0; k < taps.length; k++) sum += taps[k]! * all[first + k]!;
      output[n] = sum;
    }
    const drop = Math.max(0, Math.floor(at / phases) - half + 1);
    held = all.slice(drop);
    at -= drop * phases;
    return output;
  };
};
