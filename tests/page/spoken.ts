/**
 * The real program but for its recogniser, which hears what a script says: real sound from the browser's microphone, real voice activity,
 * grammar, session, records and doors. For what must be said in a certain order, whatever a recogniser makes of it that day.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { openApp, asRefusal, paperStyle } from '../../server/app.ts';
import { earOf } from '../../server/app/ear.ts';
import { openSegmenter } from '../../server/audio/segment.ts';
import { readRecording } from '../../server/audio/read.ts';
import { openServer } from '../../server/http/server.ts';
import { scriptedEngine } from '../../server/speech/scripted.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import { wav } from './wav.ts';

const root = join(import.meta.dirname, '../..');
const rate = 16_000;

/** One short phrase of the bundled exam, as the program's own voice activity cuts it. */
async function voice(vad: string): Promise<Float32Array> {
  const segmenter = await openSegmenter(vad);
  for await (const samples of readRecording(join(root, 'fixtures/audio/demo.ogg'))) {
    const short = (await segmenter.push(samples)).find((phrase) => phrase.samples.length < 2.2 * rate);
    if (short) return short.samples;
  }
  throw new Error('The bundled exam holds no phrase shorter than two seconds.');
}
/** A room that is never quite silent, with as many phrases in it, each followed by `pause` seconds. */
async function room(path: string, phrases: number, vad: string, pause: number): Promise<void> {
  const phrase = await voice(vad);
  const step = phrase.length + pause * rate;
  const samples = Float32Array.from({ length: rate + phrases * step }, (_, i) => (((i * 7919) % 13) - 6) / 32_768);
  for (let n = 0; n < phrases; n += 1) samples.set(phrase, rate + n * step);
  await writeFile(path, wav(samples, rate));
}

export interface Spoken {
  readonly address: string;
  readonly microphone: string;
  readonly close: () => Promise<void>;
}

/** @param lines what the ear hears, phrase by phrase */
export async function openSpoken(folder: string, lines: readonly string[], pause = 1.8): Promise<Spoken> {
  const { vad } = await ensureWeights();
  const microphone = join(folder, 'microphone.wav');
  await room(microphone, lines.length, vad, pause);
  const app = openApp(join(folder, 'data'), earOf(scriptedEngine(lines), vad));
  const served = await openServer({
    doors: app.doors,
    token: 'S'.repeat(43),
    page: join(root, 'dist'),
    paper: paperStyle,
    port: 0,
    plainly: asRefusal,
    log: (line) => {
      throw new Error(line);
    },
  });
  return {
    address: served.address,
    microphone,
    close: async () => {
      await served.close();
      await app.close();
    },
  };
}
