/** Clips for the bench: read, roomed, and mixed with a barn at a given distance in dB. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readRecording } from '../../../server/audio/read.ts';
import { seedOf, seeded } from './random.ts';

/** dB of signal to noise, or none; in a room or not. */
export type Condition = { readonly name: string; readonly dB?: number; readonly room?: boolean };
export const CLEAN: Condition = { name: 'clean' };
export const CONDITIONS: readonly Condition[] = [
  CLEAN,
  { name: 'clean, room', room: true },
  { name: '20 dB', dB: 20 },
  { name: '10 dB', dB: 10 },
  { name: '10 dB, room', dB: 10, room: true },
  { name: '5 dB', dB: 5 },
];

export async function samplesOf(path: string): Promise<Float32Array> {
  const parts: Float32Array[] = [];
  for await (const part of readRecording(path)) parts.push(part);
  return joined(parts);
}

export function joined(parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

export type Barn = { readonly noises: readonly Float32Array[]; readonly rooms: readonly Float32Array[] };

/** Half of the noises of each kind, by name, and one room: what reports never tunes. */
export async function barnOf(speech: string, half: 'reports' | 'tunes'): Promise<Barn> {
  const files = readdirSync(join(speech, 'noise'))
    .filter((file) => file.endsWith('.ogg'))
    .sort();
  const noises = await Promise.all(
    files.filter((_, i) => i % 2 === (half === 'reports' ? 1 : 0)).map((file) => samplesOf(join(speech, 'noise', file))),
  );
  return {
    noises: noises.filter((noise) => power(noise) > 0),
    rooms: [await samplesOf(join(speech, 'rooms', half === 'reports' ? 'rir3.wav' : 'rir1.wav'))],
  };
}

const power = (samples: Float32Array): number => samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length);

export const reportingBarn = (speech: string): Promise<Barn> => barnOf(speech, 'reports');

/** @param id decides, as a seed, which noise and where it begins */
export function under(samples: Float32Array, condition: Condition, barn: Barn, id: string): Float32Array {
  const random = seeded(seedOf(`${id} ${condition.name}`));
  const room = barn.rooms[0];
  const voice = condition.room === true && room !== undefined ? inRoom(samples, room) : samples;
  if (condition.dB === undefined) return voice;
  const noise = barn.noises[Math.floor(random() * barn.noises.length)] as Float32Array;
  const start = Math.floor(random() * noise.length);
  const laid = Float32Array.from({ length: voice.length }, (_, i) => noise[(start + i) % noise.length] as number);
  const gain = Math.sqrt(power(voice) / Math.max(1e-12, power(laid)) / 10 ** (condition.dB / 10));
  const mixed = voice.map((sample, i) => sample + gain * (laid[i] as number));
  const loudest = mixed.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return loudest > 0.99 ? mixed.map((sample) => (0.99 * sample) / loudest) : mixed;
}

/** Convolution with a room's impulse response, its direct sound at time 0, at the same loudness. */
function inRoom(samples: Float32Array, response: Float32Array): Float32Array {
  const peak = response.reduce((best, value, i) => (Math.abs(value) > Math.abs(response[best] as number) ? i : best), 0);
  const taps = response.subarray(peak, peak + 6_000);
  const wet = new Float32Array(samples.length);
  for (let i = 0; i < samples.length; i += 1) {
    const sample = samples[i] as number;
    if (sample === 0) continue;
    const end = Math.min(taps.length, samples.length - i);
    for (let k = 0; k < end; k += 1) wet[i + k] = (wet[i + k] as number) + sample * (taps[k] as number);
  }
  const gain = Math.sqrt(power(samples) / Math.max(1e-12, power(wet)));
  return wet.map((sample) => sample * gain);
}
