/**
 * `npm run bench:hearing`: how well the ear hears, layer on layer, in one run and from fixed seeds.
 * Needs the speech data (QUIDNOTE_SPEECH, or ../shared/speech beside the checkout), and says so when it is absent.
 *   --short       every sixth phrase, clean and 10 dB
 *   --tune        the even phrases and the digit takes 0 to 4 instead: for choosing settings, never for reporting
 *   --layer NAME  only layers whose name holds NAME
 *   --worst N     also print the N worst phrases of each set
 */
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import type { LayerEar } from './hearing/layers.ts';
import { LAYERS } from './hearing/layers.ts';
import { noiseAlone, phrasesInNoise } from './hearing/cuts.ts';
import type { ItemCount } from './hearing/items.ts';
import { NO_ITEMS, addItems, countItems, reliability } from './hearing/items.ts';
import { align, bareWords, percentile } from './hearing/measure.ts';
import { share, table, withInterval } from './hearing/report.ts';
import type { SpokenSet } from './hearing/sets.ts';
import { digitCodes, phrases, plainEnglish, promptCodes, robotic } from './hearing/sets.ts';
import type { Condition } from './hearing/sound.ts';
import { CLEAN, CONDITIONS, barnOf, under } from './hearing/sound.ts';
import { tradeWords } from './hearing/trade.ts';

const { values: options } = parseArgs({ options: { short: { type: 'boolean' }, tune: { type: 'boolean' }, layer: { type: 'string' }, worst: { type: 'string', default: '0' } } });
const speech = process.env['QUIDNOTE_SPEECH'] ?? new URL('../../../shared/speech', import.meta.url).pathname;

async function bench(): Promise<void> {
  const { dir, vad } = await ensureWeights();
  const barn = await barnOf(speech, options.tune === true ? 'tunes' : 'reports');
  const sets = await allSets();
  const trade = tradeWords();
  const layers = LAYERS.filter(({ name }) => options.layer === undefined || name.includes(options.layer));
  console.log(`# Hearing, ${options.tune === true ? 'tuning sets (not for reporting)' : 'reporting sets'}\n`);
  console.log(`Data: ${sets.map(({ name, speaker, spoken }) => `${name} (${speaker}, ${spoken.length} clips)`).join('; ')}. Word errors per word of the truth; spellings and figures made one. Items against the grammar's reading of the true words.\n`);
  const rows: string[][] = [];
  const all = new Map<string, ItemCount>();
  for (const layer of layers) {
    const ear = await layer.open(dir);
    if (ear === undefined) {
      console.log(`${layer.name}: not measured, this checkout has no trade adapter.\n`);
      continue;
    }
    for (const set of sets) {
      for (const condition of conditionsFor(set)) rows.push([layer.name, ...await measured(layer.name, ear.hear, set, condition)]);
    }
    await ear.close();
  }
  for (const kind of ['trade', 'codes', 'plain'] as const) {
    for (const speaker of ['synthetic', 'person'] as const) {
      const names = new Set(sets.filter((set) => set.what === kind && set.speaker === speaker).map(({ name }) => name));
      const own = rows.filter(([, name]) => names.has(name ?? ''));
      if (own.length > 0) console.log(`\n## ${TITLES[kind]}, ${speaker === 'person' ? 'people' : 'synthetic voices'}\n\n${table(['layer', 'voice', 'sound', 'WER', 'trade-word errors', 'phrases word for word', 'item P', 'item R', 'item F1', 'silent errors', 'right items doubted', 'ms median', 'ms p95', 'CPU ms median'], own)}`);
    }
  }
  console.log('\n## Cutting the stream\n');
  const ear = await openEngine({ weightsDir: dir });
  console.log(`${await noiseAlone(vad, ear, barn)}\n`);
  await ear.close();
  for (const set of sets.filter(({ name }) => name === 'natural kumo' || name === 'natural alpha')) console.log(`${await phrasesInNoise(vad, set, options.short === true ? [CLEAN] : CONDITIONS, barn)}\n`);
  console.log('\n## How much "sure" means\n\nItems by how sure the ear was, all sets together: count, mean of what was said, share that was right.\n');
  for (const [name, { sure }] of all) {
    const { error, bins } = reliability(sure);
    console.log(`${name}: expected calibration error ${error.toFixed(3)}; ${bins.map(([count, said, was]) => `${count}: ${said.toFixed(2)} said, ${was.toFixed(2)} right`).join('; ')}\n`);
  }
  console.log(`\nMemory: ${Math.round(process.memoryUsage().rss / 1e6)} MB resident at the end. ${cpus().length} processors; load average over the last 15 minutes ${(loadavg()[2] ?? 0).toFixed(1)} (above ${cpus().length}, the times are those of a busy machine; CPU ms are not).`);

  async function measured(name: string, hear: LayerEar['hear'], set: SpokenSet, condition: Condition): Promise<string[]> {
    let errors = 0, words = 0, missed = 0, tradeCount = 0, whole = 0, items = NO_ITEMS;
    const times: number[] = [], cpu: number[] = [];
    const worst: { errors: number; truth: string; heard: string }[] = [];
    for (const spoken of set.spoken) {
      const samples = under(spoken.samples, condition, barn, spoken.id);
      const began = performance.now(), used = process.cpuUsage();
      const hypotheses = await hear(samples);
      const own = countItems(spoken.id, spoken.words, hypotheses, [0, samples.length / 16_000]);
      times.push(performance.now() - began);
      const { user, system } = process.cpuUsage(used);
      cpu.push((user + system) / 1000);
      items = addItems(items, own);
      const heard = hypotheses[0]?.text ?? '';
      const truth = bareWords(spoken.words);
      const aligned = align(truth, bareWords(heard));
      errors += aligned.errors;
      words += aligned.words;
      missed += aligned.missed.filter((word) => trade.has(word)).length;
      tradeCount += truth.filter((word) => trade.has(word)).length;
      if (aligned.errors === 0) whole += 1;
      worst.push({ errors: aligned.errors, truth: spoken.words, heard });
    }
    worst.sort((a, b) => b.errors - a.errors).slice(0, Number(options.worst)).filter((one) => one.errors > 0)
      .forEach((one) => console.log(`  ${set.name}, ${condition.name}: "${one.truth}" was heard as "${one.heard}"`));
    all.set(name, addItems(all.get(name) ?? NO_ITEMS, items));
    const truth = items.right + items.missing;
    return [set.name, condition.name, share(errors, words), share(missed, tradeCount), withInterval(whole, set.spoken.length),
      share(items.right, items.right + items.extra), share(items.right, truth), share(2 * items.right, 2 * items.right + items.extra + items.missing),
      `${share(items.silent, truth)} (${items.silent} of ${truth})`, share(items.rightDoubted, items.right), percentile(times, 0.5).toFixed(0), percentile(times, 0.95).toFixed(0), percentile(cpu, 0.5).toFixed(0)];
  }
}

const TITLES = { trade: 'Phrases of the trade and chatter', codes: 'Tooth codes, digit by digit', plain: 'Plain English' };

async function allSets(): Promise<SpokenSet[]> {
  const every = options.short === true ? 6 : 1, parity = options.tune === true ? 0 : 1;
  const takes = options.tune === true ? [0, 1, 2, 3, 4] : [5, 6, 7, 8, 9];
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-bench-'));
  try {
    const sets = [
      ...await Promise.all(['kumo', 'gongitsune', 'alpha'].map((voice) => phrases(speech, voice, parity, every))),
      options.tune === true ? undefined : await robotic(speech, folder, every),
      ...await Promise.all(['jackson', 'lucas', 'yweweler'].map((person) => digitCodes(speech, person, takes, options.short === true ? 8 : 30))),
      options.tune === true ? undefined : await promptCodes(options.short === true ? 4 : 1),
      options.tune === true ? undefined : await plainEnglish(),
    ];
    return sets.filter((set) => set !== undefined);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function conditionsFor({ what }: SpokenSet): readonly Condition[] {
  if (options.short === true) return what === 'plain' ? [CLEAN] : CONDITIONS.filter(({ name }) => name === 'clean' || name === '10 dB');
  return what === 'plain' ? [CLEAN] : CONDITIONS;
}

if (!existsSync(join(speech, 'phrases', 'phrases.tsv'))) {
  console.error(`The speech data is not at ${speech}. Set QUIDNOTE_SPEECH to its folder. Nothing was measured.`);
  process.exitCode = 2;
} else await bench();
