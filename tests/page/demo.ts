/** The first part of the bundled dictated exam, as a WAV file for the browser's microphone. */
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readRecording } from '../../server/audio/read.ts';
import { wav } from './wav.ts';

const fixtures = join(import.meta.dirname, '../../fixtures');

/** Up to so many seconds of it, then a quiet room long enough for the last phrase to end; tells how many seconds were spoken. Read by the program's own reader, at 16 kHz. */
export const demoWav = async (path: string, seconds: number): Promise<number> => {
  const audio = (await readdir(join(fixtures, 'audio'))).find((name) => /^demo\.(ogg|opus|flac|wav)$/.test(name));
  if (!audio) throw new Error('fixtures/audio holds no demo exam: make it with fixtures/make.');
  const parts: Float32Array[] = [];
  let length = 0;
  for await (const part of readRecording(join(fixtures, 'audio', audio))) {
    parts.push(part);
    length += part.length;
    if (length >= seconds * 16000) break;
  }
  const samples = new Float32Array(Math.min(length, seconds * 16000) + 3 * 16000);
  // Not digital silence: a microphone never gives that, and the page would rightly say so.
  for (let i = 0; i < samples.length; i++) samples[i] = (((i * 7919) % 13) - 6) / 32768;
  let offset = 0;
  for (const part of parts) {
    samples.set(part.subarray(0, Math.max(0, samples.length - 3 * 16000 - offset)), offset);
    offset += part.length;
    if (offset >= samples.length - 3 * 16000) break;
  }
  await writeFile(path, wav(samples, 16000));
  return samples.length / 16000 - 3;
};
