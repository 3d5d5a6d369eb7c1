/** Dictation on a loop, as fast as the machine hears it: whether memory stays flat, and what becomes of a voice that never pauses. */
import { emptyContext, parse } from '../../../parser/index.ts';
import { language } from '../../../server/app/language.ts';
import { openSegmenter, type Phrase } from '../../../server/audio/segment.ts';
import { RATE } from '../../../server/speech/engine.ts';
import { openEngine } from '../../../server/speech/moonshine/index.ts';
import { verified } from '../../../server/speech/verify.ts';
import { percentile } from './measure.ts';
import { dayList } from './names.ts';
import type { SpokenSet } from './sets.ts';
import { joined } from './sound.ts';

/** Seconds between two phrases; and of sound handed on at a time, as a microphone would. */
const PAUSE = 1.2,
  CHUNK = 0.25;

/**
 * @param minutes of sound, not of time: ten phrases with pauses between them, ten without any, and so on, so that each third holds the same
 * @returns a paragraph: phrases, the longest, items, memory in thirds (the first after warming up), and the share by which it grew
 */
export async function soak(dir: string, vad: string, set: SpokenSet, minutes: number): Promise<string> {
  const engine = await openEngine({ weightsDir: dir });
  const segmenter = await openSegmenter(vad);
  const asked = language();
  const names = dayList('soak');
  const memory: number[] = [],
    lengths: number[] = [];
  let items = 0,
    said = 0;
  const take = async (phrases: readonly Phrase[]): Promise<void> => {
    for (const { samples, from } of phrases) {
      const clip = { samples, from };
      const hypotheses = await verified(engine, clip, (await engine.hear(clip, [])).hypotheses, asked, names);
      items += parse({ id: `soak:${from}`, reader: 'first', hypotheses: [...hypotheses] }, emptyContext()).items.length;
      lengths.push(samples.length / RATE);
      memory.push(process.memoryUsage().rss / 1e6);
    }
  };
  const total = minutes * 60 * RATE;
  for (let at = 0, n = 0; at < total; n += 1) {
    const { samples } = set.spoken[n % set.spoken.length] as SpokenSet['spoken'][number];
    const whole = n % 20 < 10 ? joined([samples, new Float32Array(PAUSE * RATE)]) : voice(samples);
    for (let from = 0; from < whole.length; from += CHUNK * RATE)
      await take(await segmenter.push(whole.subarray(from, from + CHUNK * RATE)));
    at += whole.length;
    said += 1;
  }
  await take(await segmenter.flush());
  await engine.close();
  // The first tenth warms up: buffers grow to the longest phrase, caches fill.
  const warm = memory.slice(Math.ceil(memory.length / 10));
  const third = Math.floor(warm.length / 3);
  const mean = (list: readonly number[]): number => list.reduce((sum, one) => sum + one, 0) / Math.max(1, list.length);
  const [first, middle, last] = [warm.slice(0, third), warm.slice(third, 2 * third), warm.slice(-third)].map(mean) as [
    number,
    number,
    number,
  ];
  return `${minutes} minutes of sound, ${said} phrases said one after the other (every second ten of them without a pause), ${lengths.length} cut, the longest ${Math.max(...lengths).toFixed(1)} s (95 % at most ${percentile(lengths, 0.95).toFixed(1)} s), ${items} items. Memory in thirds: ${first.toFixed(0)}, ${middle.toFixed(0)}, ${last.toFixed(0)} MB; the last third is ${((100 * last) / first - 100).toFixed(1)} % above the first.`;
}

/** Without the silence at both ends. */
function voice(samples: Float32Array): Float32Array {
  const loud = (sample: number): boolean => Math.abs(sample) > 0.02;
  const first = samples.findIndex(loud),
    last = samples.findLastIndex(loud);
  return first < 0 ? samples : samples.subarray(first, last + 1);
}
