import fc from 'fast-check';
import { expect, test } from 'vitest';
import { resampler } from '../../server/audio/resample.ts';
import { amplitudeAt, tone } from './wavFile.ts';

const resampled = (samples: Float32Array, from: number, pieces: readonly number[] = []): Float32Array => {
  const resample = resampler(from, 16_000);
  const out: number[] = [];
  let at = 0;
  for (const piece of [...pieces, samples.length]) {
    out.push(...resample.push(samples.slice(at, at + piece)));
    at += piece;
  }
  out.push(...resample.flush());
  return Float32Array.from(out);
};

test.each([8_000, 11_025, 22_050, 44_100, 48_000, 96_000])('from %i Hz a tone keeps its pitch and its strength', (rate) => {
  const out = resampled(Float32Array.from(tone(1000, rate, 1)), rate);
  expect(out.length).toBe(16_000);
  expect(amplitudeAt(1000, out)).toBeCloseTo(0.25, 2);
  out
    .subarray(200, -200)
    .forEach((sample, i) => expect(Math.abs(sample - 0.25 * Math.sin((2 * Math.PI * 1000 * (i + 200)) / 16_000))).toBeLessThan(0.002));
});

test.each([9_000, 12_000, 20_000])('a tone of %i Hz, which 16 kHz cannot hold, does not come back as another', (hertz) => {
  const out = resampled(Float32Array.from(tone(hertz, 48_000, 0.5)), 48_000).subarray(200, -200);
  expect(Math.max(...out.map(Math.abs))).toBeLessThan(0.001);
});

test('length is right and pieces make no difference, for any rate', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 4_000, max: 60_000 }),
      fc.integer({ min: 0, max: 3_000 }),
      fc.array(fc.integer({ min: 0, max: 700 }), { maxLength: 6 }),
      (rate, length, pieces) => {
        const samples = Float32Array.from(tone(700, rate, length / rate)).subarray(0, length);
        const whole = resampled(samples, rate);
        expect(whole.length).toBe(Math.ceil((samples.length * 16_000) / rate));
        expect(resampled(samples, rate, pieces)).toEqual(whole);
      },
    ),
    { numRuns: 40 },
  );
});
