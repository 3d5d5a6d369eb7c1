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
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ensureWeights } from '../../server/speech/weights.ts';
import { LAYERS } from './hearing/layers.ts';
import { align, bareWords, percentile } from './hearing/measure.ts';
import { share, table, withInterval } from './hearing/report.ts';
import type { Spoken, SpokenSet } from './hearing/sets.ts';
import { digitCodes, phrases, plainEnglish, promptCodes, robotic } from './hearing/sets.ts';
import type { Condition } from './hearing/sound.ts';
import { CLEAN, CONDITIONS, reportingBarn, under } from './hearing/sound.ts';
import { tradeWords } from './hearing/trade.ts';

const { values: options } = parseArgs({ options: { short: { type: 'boolean' }, tune: { type: 'boolean' }, layer: { type: 'string' }, worst: { type: 'string', default: '0' } } });
const speech = process.env['QUIDNOTE_SPEECH'] ?? new URL('../../../shared/speech', import.meta.url).pathname;

async function bench(): Promise<void> {
  const { dir } = await ensureWeights();
  const barn = await reportingBarn(speech);
  const sets = await allSets();
  const trade = tradeWords();
  const layers = LAYERS.filter(({ name }) => options.layer === undefined || name.includes(options.layer));
  console.log(`# Hearing, ${options.tune === true ? 'tuning sets (not for reporting)' : 'reporting sets'}\n`);
  console.log(`Data: ${sets.map(({ name, speaker, spoken }) => `${name} (${speaker}, ${spoken.length} clips)`).join('; ')}. Word errors per word of the truth; spellings and figures made one.\n`);
  const rows: string[][] = [];
  for (const layer of layers) {
    const ear = await layer.open(dir);
    if (ear === undefined) {
      console.log(`${layer.name}: not measured, this checkout has no trade adapter.\n`);
      continue;
    }
    for (const set of sets) {
      for (const condition of conditionsFor(set)) rows.push([layer.name, ...await measured(ear.hear, set, condition)]);
    }
    await ear.close();
  }
  for (const kind of ['trade', 'codes', 'plain'] as const) {
    for (const speaker of ['synthetic', 'person'] as const) {
      const names = new Set(sets.filter((set) => set.what === kind && set.speaker === speaker).map(({ name }) => name));
      const own = rows.filter(([, name]) => names.has(name ?? ''));
      if (own.length > 0) console.log(`\n## ${TITLES[kind]}, ${speaker === 'person' ? 'people' : 'synthetic voices'}\n\n${table(['layer', 'voice', 'sound', 'WER', 'trade-word errors', 'phrases word for word', 'ms median', 'ms p95'], own)}`);
    }
  }
  console.log(`\nMemory: ${Math.round(process.memoryUsage().rss / 1e6)} MB resident at the end.`);

  async function measured(hear: (spoken: Spoken, samples: Float32Array) => Promise<string>, set: SpokenSet, condition: Condition): Promise<string[]> {
    let errors = 0, words = 0, missed = 0, tradeCount = 0, whole = 0;
    const times: number[] = [];
    const worst: { errors: number; truth: string; heard: string }[] = [];
    for (const spoken of set.spoken) {
      const samples = under(spoken.samples, condition, barn, spoken.id);
      const began = performance.now();
      const heard = await hear(spoken, samples);
      times.push(performance.now() - began);
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
    return [set.name, condition.name, share(errors, words), share(missed, tradeCount), withInterval(whole, set.spoken.length), percentile(times, 0.5).toFixed(0), percentile(times, 0.95).toFixed(0)];
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
      options.tune === true ? undefined : await promptCodes(),
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
