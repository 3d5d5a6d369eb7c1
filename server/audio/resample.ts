/** Windowed-sinc resampling of a stream, by any ratio of whole sample rates. */

/** Zero crossings of the sinc on each side; with the Blackman window some 70 dB down outside the band. */
const CROSSINGS = 16;
/** Share of the lower Nyquist frequency that is kept. */
const PASS = 0.94;

export type Resampler = {
  push(samples: Float32Array): Float32Array;
  /** The tail, once, after the last push. */
  flush(): Float32Array;
};

/** @param from and `to`: sample rates in Hz, whole numbers above 0. The output starts with the first input sample; its length is ceil(n * to / from). */
export function resampler(from: number, to: number): Resampler {
  if (from === to) return { push: (samples) => samples, flush: () => new Float32Array(0) };
  const common = gcd(from, to);
  const up = to / common,
    down = from / common;
  const cutoff = Math.min(1, to / from) * PASS;
  const half = Math.ceil(CROSSINGS / cutoff);
  const phases = kernels(up, half, cutoff);
  let kept = new Float32Array(half),
    seen = 0,
    made = 0;
  /** Input index of kept[0]; starts before the stream, where there is nothing. */
  let origin = -half;

  const take = (samples: Float32Array, end: number): Float32Array => {
    const buffer = new Float32Array(kept.length + samples.length);
    buffer.set(kept);
    buffer.set(samples, kept.length);
    const out = new Float32Array(Math.max(0, Math.floor(((end - half) * up) / down) - made + 2));
    let n = 0;
    for (;;) {
      const centre = Math.floor((made * down) / up);
      if (centre + half >= end || made * down >= seen * up) break;
      out[n] = dot(phases[(made * down) % up] as Float32Array, buffer, centre - half + 1 - origin);
      n += 1;
      made += 1;
    }
    const needed = Math.min(Math.floor((made * down) / up) - half + 1 - origin, buffer.length);
    kept = buffer.slice(Math.max(0, needed));
    origin += Math.max(0, needed);
    return out.subarray(0, n);
  };

  return {
    push(samples) {
      seen += samples.length;
      return take(samples, seen);
    },
    flush: () => take(new Float32Array(2 * half), seen + 2 * half),
  };
}

/** For each phase, the weights of the 2*half input samples around the output moment; each adds up to one. */
function kernels(up: number, half: number, cutoff: number): readonly Float32Array[] {
  return Array.from({ length: up }, (_, phase) => {
    const weights = Float32Array.from({ length: 2 * half }, (_unused, i) => {
      const x = i - half + 1 - phase / up;
      const window = Math.abs(x) >= half ? 0 : 0.42 + 0.5 * Math.cos((Math.PI * x) / half) + 0.08 * Math.cos((2 * Math.PI * x) / half);
      return window * sinc(x * cutoff);
    });
    const sum = weights.reduce((total, weight) => total + weight, 0);
    return weights.map((weight) => weight / sum);
  });
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

function dot(weights: Float32Array, samples: Float32Array, from: number): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i += 1) sum += (weights[i] as number) * (samples[from + i] as number);
  return sum;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
