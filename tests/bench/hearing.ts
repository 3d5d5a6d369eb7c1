/**
 * `npm run bench:hearing`: how well the ear hears, layer on layer, in one run and from fixed seeds.
 * Needs the speech data (QUIDNOTE_SPEECH, or ../shared/speech beside the checkout), and says so when it is absent.
 *   --every N       every N-th phrase only
 *   --short         every sixth phrase, clean and 10 dB
 *   --tune          the even phrases, the digit takes 0 to 4 and the other half of noises and names instead: for choosing settings, never for reporting
 *   --layer NAME    only layers whose name holds NAME
 *   --what KIND     trade, names, codes or plain alone
 *   --worst N       also print the N worst phrases of each set
 *   --live          nothing but phrases at the pace of speech, for how long a speaker waits
 *   --soak MINUTES  nothing but dictation on a loop, so many minutes of sound, for memory
 */
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import type { Layer, LayerEars } from './hearing/layers.ts';
import { LAYERS, PROGRAM, openLayers } from './hearing/layers.ts';
import { noiseAlone, phrasesInNoise } from './hearing/cuts.ts';
import type { ItemCount } from './hearing/items.ts';
import { NO_ITEMS, addItems, countItems, reliability } from './hearing/items.ts';
import { live } from './hearing/live.ts';
import { align, bareWords, percentile } from './hearing/measure.ts';
import { dayList, namePhrases } from './hearing/names.ts';
import { share, table, withInterval } from './hearing/report.ts';
import type { SpokenSet } from './hearing/sets.ts';
import { digitCodes, phrases, plainEnglish, promptCodes, robotic } from './hearing/sets.ts';
import { soak } from './hearing/soak.ts';
import type { Barn, Condition } from './hearing/sound.ts';
import { CLEAN, CONDITIONS, barnOf, under } from './hearing/sound.ts';
import { tradeWords } from './hearing/trade.ts';

const { values: options } = parseArgs({
  options: {
    every: { type: 'string' },
    short: { type: 'boolean' },
    tune: { type: 'boolean' },
    layer: { type: 'string' },
    what: { type: 'string' },
    worst: { type: 'string', default: '0' },
    live: { type: 'boolean' },
    soak: { type: 'string' },
  },
});
const speech = process.env['QUIDNOTE_SPEECH'] ?? new URL('../../../shared/speech', import.meta.url).pathname;
const every = Number(options.every ?? (options.short === true ? 6 : 1));
const reporting = options.tune !== true;

/** What became of one layer on one set under one condition. */
type Row = {
  readonly layer: Layer;
  readonly set: SpokenSet;
  readonly condition: Condition;
  readonly items: ItemCount;
  readonly cells: readonly string[];
};

async function bench(): Promise<void> {
  const { dir, vad } = await ensureWeights();
  const barn = await barnOf(speech, reporting ? 'reports' : 'tunes');
  const sets = await allSets();
  const layers = LAYERS.filter(({ name }) => options.layer === undefined || name.includes(options.layer));
  console.log(`# Hearing, ${reporting ? 'reporting sets' : 'tuning sets (not for reporting)'}\n`);
  console.log(
    `Data: ${sets.map(({ name, speaker, spoken }) => `${name} (${speaker}, ${spoken.length} clips)`).join('; ')}. Word errors per word of the truth; spellings and figures made one. Items against the grammar's reading of the true words.\n`,
  );
  const ears = await openLayers(dir, layers);
  if (ears === undefined)
    return console.error('Not measured: this checkout has no trade adapter. Name layers without it with --layer plain.');
  const rows: Row[] = [];
  for (const set of sets) for (const condition of conditionsFor(set)) rows.push(...(await measured(ears, layers, set, condition, barn)));
  await ears.close();
  for (const what of ['trade', 'names', 'codes', 'plain'] as const) {
    for (const speaker of ['synthetic', 'person'] as const) {
      const own = rows.filter(({ set }) => set.what === what && set.speaker === speaker);
      const ordered = layers.flatMap((layer) => own.filter((row) => row.layer === layer));
      if (own.length > 0)
        console.log(
          `\n## ${TITLES[what]}, ${speaker === 'person' ? 'people' : 'synthetic voices'}\n\n${table(
            HEADS[what],
            ordered.map(({ cells }) => cells),
          )}`,
        );
    }
  }
  console.log('\n## Cutting the stream\n');
  const ear = await openEngine({ weightsDir: dir });
  console.log(`${await noiseAlone(vad, ear, barn)}\n`);
  await ear.close();
  for (const set of sets.filter(({ name }) => name === 'natural kumo' || name === 'natural alpha'))
    console.log(`${await phrasesInNoise(vad, set, options.short === true ? [CLEAN] : CONDITIONS, barn)}\n`);
  console.log('\n## How much "sure" means\n\nItems by how sure the ear was: count, mean of what was said, share that was right.\n');
  const judged = layers.flatMap((layer) =>
    ['natural', 'robotic'].map(
      (kind) =>
        [
          `${layer.name}, ${kind} voices`,
          rows
            .filter((row) => row.layer === layer && row.set.what === 'trade' && row.set.name.startsWith(kind))
            .reduce((sum, { items }) => addItems(sum, items), NO_ITEMS),
        ] as const,
    ),
  );
  for (const [name, items] of judged.filter(([, { sure }]) => sure.length > 0)) {
    const { error, bins } = reliability(items.sure);
    const truth = items.right + items.missing;
    console.log(
      `${name}: expected calibration error ${error.toFixed(3)}; silent errors ${withInterval(items.silent, truth)}; right items doubted ${withInterval(items.rightDoubted, items.right)}; talk asked about ${withInterval(items.talkAsked, items.talk)}, made into items ${withInterval(items.talkItems, items.talk)}. ${bins.map(([count, said, was]) => `${count}: ${said.toFixed(2)} said, ${was.toFixed(2)} right`).join('; ')}\n`,
    );
  }
  console.log(
    `\nMemory: ${Math.round(process.memoryUsage().rss / 1e6)} MB resident at the end, with all layers' ears open. ${cpus().length} processors; load average over the last 15 minutes ${(loadavg()[2] ?? 0).toFixed(1)} (above ${cpus().length}, the times are those of a busy machine; CPU ms are not).`,
  );
}

const TIMES = ['ms median', 'ms p95', 'CPU ms median'];
const HEADS = {
  trade: [
    'layer',
    'voice',
    'sound',
    'WER',
    'trade-word errors',
    'phrases word for word',
    'item P',
    'item R',
    'item F1',
    'silent errors',
    'right items doubted',
    ...TIMES,
  ],
  names: ['layer', 'voice', 'sound', 'WER', 'name right', 'another name', ...TIMES],
  codes: ['layer', 'voice', 'sound', 'WER', 'codes right', ...TIMES],
  plain: ['layer', 'voice', 'sound', 'WER', 'word for word', ...TIMES],
};
const trade = tradeWords();
const holds = (text: string, name: string): boolean => ` ${bareWords(text).join(' ')} `.includes(` ${bareWords(name).join(' ')} `);

async function measured(
  ears: LayerEars,
  layers: readonly Layer[],
  set: SpokenSet,
  condition: Condition,
  barn: Barn,
): Promise<readonly Row[]> {
  const tallies = new Map(
    layers.map((layer) => [
      layer,
      {
        errors: 0,
        words: 0,
        missed: 0,
        trade: 0,
        whole: 0,
        named: 0,
        misnamed: 0,
        items: NO_ITEMS,
        ms: [] as number[],
        cpu: [] as number[],
      },
    ]),
  );
  const worst: { errors: number; truth: string; heard: string }[] = [];
  for (const spoken of set.spoken) {
    const samples = under(spoken.samples, condition, barn, spoken.id);
    const truth = bareWords(spoken.words);
    const names = spoken.names ?? (set.what === 'trade' ? dayList(spoken.id) : []);
    for (const [layer, tally] of tallies) {
      const { hypotheses, ms, cpuMs } = await ears.hear(layer, samples, names);
      const heard = hypotheses[0]?.text ?? '';
      const { errors, words, missed } = align(truth, bareWords(heard));
      tally.ms.push(ms);
      tally.cpu.push(cpuMs);
      if (set.what === 'trade')
        tally.items = addItems(tally.items, countItems(spoken.id, spoken.words, hypotheses, [0, samples.length / 16_000]));
      tally.errors += errors;
      tally.words += words;
      tally.missed += missed.filter((word) => trade.has(word)).length;
      tally.trade += truth.filter((word) => trade.has(word)).length;
      tally.whole += errors === 0 ? 1 : 0;
      tally.named += spoken.name !== undefined && holds(heard, spoken.name) ? 1 : 0;
      tally.misnamed += names.some((name) => name !== spoken.name && holds(heard, name) && !holds(spoken.words, name)) ? 1 : 0;
      if (layer === PROGRAM) worst.push({ errors, truth: spoken.words, heard });
    }
  }
  worst
    .sort((a, b) => b.errors - a.errors)
    .slice(0, Number(options.worst))
    .filter((one) => one.errors > 0)
    .forEach((one) => console.log(`  ${set.name}, ${condition.name}: "${one.truth}" was heard as "${one.heard}"`));
  const count = set.spoken.length;
  return [...tallies].map(([layer, { errors, words, missed, trade: tradeCount, whole, named, misnamed, items, ms, cpu }]) => {
    const times = [percentile(ms, 0.5).toFixed(0), percentile(ms, 0.95).toFixed(0), percentile(cpu, 0.5).toFixed(0)];
    const truth = items.right + items.missing;
    const own =
      set.what === 'names'
        ? [withInterval(named, count), `${misnamed} of ${count}`]
        : set.what !== 'trade'
          ? [withInterval(whole, count)]
          : [
              share(missed, tradeCount),
              withInterval(whole, count),
              share(items.right, items.right + items.extra),
              share(items.right, truth),
              share(2 * items.right, 2 * items.right + items.extra + items.missing),
              `${share(items.silent, truth)} (${items.silent} of ${truth})`,
              `${share(items.rightDoubted, items.right)} (${items.rightDoubted} of ${items.right})`,
            ];
    return { layer, set, condition, items, cells: [layer.name, set.name, condition.name, share(errors, words), ...own, ...times] };
  });
}

const TITLES = {
  trade: 'Phrases of the trade and chatter',
  names: 'Names, invented, with the names of their day',
  codes: 'Tooth codes, digit by digit',
  plain: 'Plain English',
};

async function allSets(): Promise<SpokenSet[]> {
  const parity = reporting ? 1 : 0;
  const takes = reporting ? [5, 6, 7, 8, 9] : [0, 1, 2, 3, 4];
  const codes = every === 1 ? 30 : Math.max(8, Math.ceil(60 / every));
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-bench-'));
  try {
    const sets = [
      ...(await Promise.all(['kumo', 'gongitsune', 'alpha'].map((voice) => phrases(speech, voice, parity, every)))),
      reporting ? await robotic(speech, folder, every) : undefined,
      ...(await Promise.all(
        (reporting ? ['awb', 'en-029'] : ['en-gb+f5']).map(async (voice) =>
          namePhrases(await mkdtemp(join(folder, 'names-')), voice, reporting ? 'reports' : 'tunes', Math.ceil(every / 2)),
        ),
      )),
      ...(await Promise.all(['jackson', 'lucas', 'yweweler'].map((person) => digitCodes(speech, person, takes, codes)))),
      reporting ? await promptCodes(every === 1 ? 1 : 2) : undefined,
      reporting ? await plainEnglish() : undefined,
    ];
    return sets.filter((set) => set !== undefined).filter(({ what }) => options.what === undefined || what === options.what);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function conditionsFor({ what }: SpokenSet): readonly Condition[] {
  if (what === 'plain') return [CLEAN];
  if (what === 'names' || options.short === true) return CONDITIONS.filter(({ name }) => name === 'clean' || name === '10 dB');
  return what === 'codes' && every > 1 ? CONDITIONS.filter(({ room }) => room !== true) : CONDITIONS;
}

async function soaked(minutes: number): Promise<void> {
  const { dir, vad } = await ensureWeights();
  console.log(await soak(dir, vad, await phrases(speech, 'alpha', 0), minutes));
}

if (!existsSync(join(speech, 'phrases', 'phrases.tsv'))) {
  console.error(`The speech data is not at ${speech}. Set QUIDNOTE_SPEECH to its folder. Nothing was measured.`);
  process.exitCode = 2;
} else if (options.live === true) {
  const { dir, vad } = await ensureWeights();
  const parity = reporting ? 1 : 0;
  console.log(await live(dir, vad, [await phrases(speech, 'alpha', parity, every), await phrases(speech, 'kumo', parity, every)]));
} else if (options.soak !== undefined) await soaked(Number(options.soak));
else await bench();
