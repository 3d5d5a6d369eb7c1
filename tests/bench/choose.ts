/**
 * `npx tsx tests/bench/choose.ts CLIPS NOISE ADAPTER.bin...`: adapters side by side on the sets that choose between trainings and never report,
 * as the program hears (int8 decoder, beam of 6; for items the proposals too). CLIPS holds the folders of `train/choosing.py` and `even-alpha` of
 * `train/recorded.py`, NOISE the latter's `noise-tune`.
 *   --jobs N       so many processes, one thread each (1)
 *   --words        words alone: three times as fast
 *   --weights DIR  the folder with the pinned weights (the cache)
 * Prints, for each adapter, words misheard of each set, and of the trade's sets together item F1, silent errors and right items doubted.
 */
import { fork } from 'node:child_process';
import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { language } from '../../server/app/language.ts';
import type { Clip, Engine } from '../../server/speech/engine.ts';
import { applyAdapter } from '../../server/speech/moonshine/adapter/apply.ts';
import { openEar } from '../../server/speech/moonshine/ear.ts';
import { openGraph } from '../../server/speech/moonshine/graph.ts';
import { verified } from '../../server/speech/verify.ts';
import { defaultCacheDir } from '../../server/speech/weights.ts';
import type { ItemCount } from './hearing/items.ts';
import { NO_ITEMS, addItems, countItems } from './hearing/items.ts';
import { align, bareWords } from './hearing/measure.ts';
import { share, table, withInterval } from './hearing/report.ts';
import { joined, under } from './hearing/sound.ts';

/** What is heard of each set, in dB of signal to noise; none is clean. Plain English has no items. */
const SETS: readonly { readonly name: string; readonly dB: readonly (number | undefined)[] }[] = [
  { name: 'lines-alpha', dB: [undefined, 10] },
  { name: 'lines-native', dB: [undefined, 10] },
  { name: 'lines-f5', dB: [10] },
  { name: 'even-alpha', dB: [10] },
  { name: 'small', dB: [undefined, 10, 5] },
  { name: 'plain-alpha', dB: [undefined] },
  { name: 'plain-native', dB: [undefined] },
];
const WIDTH = 6;

type Tally = { readonly errors: number; readonly words: number; readonly items: ItemCount };
type Tallies = Readonly<Record<string, Tally>>;
const NOTHING: Tally = { errors: 0, words: 0, items: NO_ITEMS };
const added = (a: Tally, b: Tally): Tally => ({
  errors: a.errors + b.errors,
  words: a.words + b.words,
  items: addItems(a.items, b.items),
});

const {
  values: options,
  positionals: [clips = '', noise = '', ...adapters],
} = parseArgs({
  allowPositionals: true,
  options: { jobs: { type: 'string', default: '1' }, weights: { type: 'string' }, words: { type: 'boolean' }, part: { type: 'string' } },
});
const weights = options.weights ?? join(defaultCacheDir(), 'weights');

/** The whole folder's clips: sound and what was written. */
async function clipsOf(folder: string): Promise<readonly { readonly samples: Float32Array; readonly words: string }[]> {
  const [sound, rows] = [await readFile(join(folder, 'sound.i16')), (await readFile(join(folder, 'clips.tsv'), 'utf8')).trim().split('\n')];
  const silence = new Float32Array(4_800);
  let at = 0;
  return rows.map((row) => {
    const [, , samples = '0', words = ''] = row.split('\t');
    const own = floats(sound.subarray(at, (at += 2 * Number(samples))));
    return { samples: joined([silence, own, silence]), words };
  });
}
const floats = (bytes: Buffer): Float32Array =>
  Float32Array.from({ length: bytes.length / 2 }, (_, i) => bytes.readInt16LE(2 * i) / 32_768);

/** One decoder on every `of`-th clip. */
async function measured(decoder: string, nth: number, of: number): Promise<Tallies> {
  const graph = await openGraph({ encoder: join(weights, 'encoder_model.onnx'), decoder, threads: 1 });
  const ear = openEar(graph, WIDTH);
  const ids = new WeakMap<Float32Array, number>();
  let next = 0;
  const idOf = ({ samples }: Clip): number => {
    const id = ids.get(samples) ?? next++;
    ids.set(samples, id);
    return id;
  };
  const engine: Engine = {
    name: decoder,
    hear: (clip) => ear.hear(idOf(clip), clip),
    score: (clip, sentences) => (sentences.length === 0 ? Promise.resolve([]) : ear.score(idOf(clip), clip, sentences)),
    close: () => graph.release(),
  };
  const asked = options.words === true ? undefined : language();
  const files = (await readdir(noise)).filter((file) => file.startsWith('noise')).sort();
  const barn = { noises: await Promise.all(files.map(async (file) => floats(await readFile(join(noise, file))))), rooms: [] };
  const tallies: Record<string, Tally> = {};
  for (const { name, dB } of SETS) {
    for (const [i, { samples, words }] of (await clipsOf(join(clips, name))).entries()) {
      if (i % of !== nth) continue;
      for (const one of dB) {
        const condition = one === undefined ? { name: 'clean' } : { name: `${one} dB`, dB: one };
        const clip = { samples: under(samples, condition, barn, `${name} ${i}`), from: 0 };
        const { hypotheses } = await engine.hear(clip, []);
        const truth = bareWords(words);
        const { errors } = align(truth, bareWords(hypotheses[0]?.text ?? ''));
        const items =
          asked === undefined || name.startsWith('plain')
            ? NO_ITEMS
            : countItems(`${i}`, words.replace(/\.$/, ''), await verified(engine, clip, hypotheses, asked), [0, samples.length / 16_000]);
        const key = `${name} ${condition.name}`;
        tallies[key] = added(tallies[key] ?? NOTHING, { errors, words: truth.length, items });
      }
    }
  }
  await engine.close();
  return tallies;
}

/** The same in a process of its own. */
const apart = (decoder: string, nth: number, of: number): Promise<Tallies> =>
  new Promise((resolve, reject) => {
    const words = options.words === true ? ['--words'] : [];
    const child = fork(process.argv[1] as string, [clips, noise, decoder, '--weights', weights, '--part', `${nth}/${of}`, ...words]);
    child.once('message', (tallies) => resolve(tallies as Tallies));
    child.once('exit', (code) => reject(new Error(`${decoder}, part ${nth}: ended with ${code} and no figures.`)));
  });

async function choose(jobs: number): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-choose-'));
  const found = new Map<string, Tally>();
  try {
    const decoderPath = join(weights, 'decoder_model_merged.onnx');
    const decoders = adapters.map((adapterPath, n) => ({ adapterPath, outPath: join(folder, `${n}.onnx`) }));
    for (const one of decoders) await applyAdapter({ decoderPath, ...one });
    // Each adapter in as many parts as there are processes; all parts wait in one row.
    const row = decoders.flatMap((one) => Array.from({ length: jobs }, (_, nth) => ({ ...one, nth })));
    await Promise.all(
      Array.from({ length: jobs }, async () => {
        for (let one = row.shift(); one !== undefined; one = row.shift())
          for (const [key, tally] of Object.entries(await apart(one.outPath, one.nth, jobs)))
            found.set(`${one.adapterPath} ${key}`, added(found.get(`${one.adapterPath} ${key}`) ?? NOTHING, tally));
      }),
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  const keys = SETS.flatMap(({ name, dB }) => dB.map((one) => `${name} ${one === undefined ? 'clean' : `${one} dB`}`));
  const rows = adapters.map((adapter) => {
    const own = keys.map((key) => found.get(`${adapter} ${key}`) ?? NOTHING);
    const { right, extra, missing, silent, rightDoubted } = own.reduce((sum, { items }) => addItems(sum, items), NO_ITEMS);
    const f1 = ({ items }: Tally): string => share(2 * items.right, 2 * items.right + items.extra + items.missing);
    return [
      adapter,
      ...own.map((one) =>
        one.items.right + one.items.missing > 0 ? `${share(one.errors, one.words)}, ${f1(one)}` : share(one.errors, one.words),
      ),
      share(2 * right, 2 * right + extra + missing),
      withInterval(silent, right + missing),
      withInterval(rightDoubted, right),
    ];
  });
  console.log('Words misheard, and after the comma item F1.\n');
  console.log(table(['adapter', ...keys, 'item F1', 'silent errors', 'right items doubted'], rows));
}

if (options.part === undefined) await choose(Number(options.jobs));
else {
  const [nth, of] = options.part.split('/').map(Number) as [number, number];
  const tallies = await measured(adapters[0] as string, nth, of);
  process.send?.(tallies, () => process.disconnect());
}
