/**
 * Two phrases said with a short pause between them, which is heard as one: where the pause is put among the words, and what is made of them with
 * it and without. `npx tsx tests/bench/breathHeard.ts [--tune] [--voice kumo] [--every N] [--seconds 0.4] [--noise]`; needs the speech data.
 */
import { parseArgs } from 'node:util';
import { emptyContext, parse, parseText, type Parsed } from '../../parser/index.ts';
import { earOf } from '../../server/app/ear.ts';
import { language } from '../../server/app/language.ts';
import { openSegmenter } from '../../server/audio/segment.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { withPauses } from '../../server/speech/pauses.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import { bare } from '../match.ts';
import { phrases } from './hearing/sets.ts';
import { barnOf, CONDITIONS, joined, under } from './hearing/sound.ts';

const { values } = parseArgs({
  options: {
    tune: { type: 'boolean', default: false },
    voice: { type: 'string', default: 'kumo' },
    every: { type: 'string', default: '1' },
    seconds: { type: 'string', default: '0.4' },
    noise: { type: 'boolean', default: false },
    show: { type: 'boolean', default: false },
  },
});
const speech = process.env['QUIDNOTE_SPEECH'] ?? new URL('../../../shared/speech', import.meta.url).pathname;
const RATE = 16_000;
const weights = await ensureWeights();
const engine = await openEngine({ weightsDir: weights.dir });
const trade = language();
const ear = earOf(engine, weights.vad, trade);

/** The voice without the silence around it. */
function trimmed(samples: Float32Array): Float32Array {
  const loud = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0) * 0.03;
  return samples.slice(
    samples.findIndex((sample) => Math.abs(sample) > loud),
    samples.findLastIndex((sample) => Math.abs(sample) > loud) + 1,
  );
}
const items = (all: readonly Parsed[]): string =>
  all
    .flatMap((one) => one.items.map((item) => JSON.stringify(bare(item))))
    .sort()
    .join();
const alone = (words: string): Parsed => parseText('b/1', words, emptyContext());
/** A finding or work with its place, and nothing asked: what its neighbour says is no part of it. */
const isWhole = ({ items: made, doubts, commands, header }: Parsed): boolean =>
  made.length > 0 &&
  doubts.length + commands.length === 0 &&
  header === undefined &&
  made.every((item) => !('place' in item) || item.place !== null);

const { spoken } = await phrases(speech, values.voice, values.tune ? 0 : 1, Number(values.every));
const fit = spoken.filter(({ words }) => isWhole(alone(words)));
const barn = values.noise ? await barnOf(speech, values.tune ? 'tunes' : 'reports') : undefined;
const noisy = CONDITIONS.find(({ name }) => name === '10 dB');
const counts = {
  pairs: 0,
  one: 0,
  paused: 0,
  placed: 0,
  elsewhere: 0,
  right: 0,
  asked: 0,
  silent: 0,
  rightWithout: 0,
  askedWithout: 0,
  silentWithout: 0,
};
/** Milliseconds that it took to place the pauses. */
const dearer: number[] = [];
for (let i = 0; i + 1 < fit.length; i += 2) {
  const pair = fit.slice(i, i + 2);
  const [a, b] = pair.map(({ samples }) => trimmed(samples)) as [Float32Array, Float32Array];
  const quiet = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * RATE));
  const clean = joined([quiet(0.5), a, quiet(Number(values.seconds)), b, quiet(1)]);
  const sound = barn && noisy ? under(clean, noisy, barn, `${i}`) : clean;
  const segmenter = await openSegmenter(weights.vad);
  const cut = [...(await segmenter.push(sound)), ...(await segmenter.flush())];
  counts.pairs += 1;
  const [phrase, ...more] = cut;
  if (!phrase || more.length > 0) continue;
  counts.one += 1;
  const stretch = { exam: 'b', from: phrase.from, samples: phrase.samples };
  const without = await ear.hear({ ...stretch, pauses: [] });
  const begun = performance.now();
  const hypotheses = await withPauses(engine, phrase, without.hypotheses, trade);
  dearer.push(performance.now() - begun);
  const with_ = { ...without, hypotheses: [...hypotheses] };
  const meant = items(pair.map(({ words }) => alone(words)));
  const how = (heard: typeof without): 'right' | 'asked' | 'silent' => {
    const read = parse(heard, emptyContext());
    return read.doubts.length > 0 ? 'asked' : items([read]) === meant ? 'right' : 'silent';
  };
  const text = with_.hypotheses[0]?.text ?? '';
  const first = (pair[0]?.words ?? '').split(' ').length;
  if (phrase.pauses.length > 0) counts.paused += 1;
  const commas = text.split(' ').flatMap((word, k) => (word.endsWith(',') ? [k + 1] : []));
  if (commas.includes(first)) counts.placed += 1;
  if (commas.some((at) => at !== first)) counts.elsewhere += 1;
  counts[how(with_)] += 1;
  counts[`${how(without)}Without`] += 1;
  if (values.show) console.log(how(without), how(with_), '|', pair.map(({ words }) => words).join(' || '), '|', text);
}
console.log(counts);
console.log(
  `the pause took ${dearer.sort((a, b) => a - b)[Math.floor(dearer.length / 2)]?.toFixed(0)} ms (median), ${dearer[Math.floor(dearer.length * 0.95)]?.toFixed(0)} ms (95 %)`,
);
await engine.close();
await ear.close();
process.exit(0);
