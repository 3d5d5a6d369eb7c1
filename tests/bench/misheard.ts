/**
 * `npx tsx tests/bench/misheard.ts OUT.tsv`: says the lexicon's words, each within a spoken form that holds it, in synthetic voices
 * that the ear was not trained on, and writes what was heard in place of them: form, heard form, voices, and of the part that
 * differs what was meant and what was heard. Kept are parts heard in two voices, or in two forms. What is harvested is judged by a
 * person and goes to `parser/lexicon/mishearings.ts`, seen: 'ear'.
 *   --from N --count N   a stretch of the forms, to do the work in parts
 * Needs Debian's flite and espeak-ng; says so when they are absent.
 */
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { agentWords } from '../../parser/grammar/vocabulary.ts';
import { spokenForms } from '../../parser/index.ts';
import { tradeStems } from '../../parser/lexicon/tradeNames.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import { bareWords } from './hearing/measure.ts';
import { difference } from './hearing/parts.ts';
import { joined, samplesOf } from './hearing/sound.ts';

const {
  values: options,
  positionals: [out],
} = parseArgs({ allowPositionals: true, options: { from: { type: 'string', default: '0' }, count: { type: 'string' } } });
const VOICES = ['awb', 'en-029', 'en-gb+f5'];
/** Words so short are everyone's. */
const SHORTEST = 4;

const ofTrade = (word: string): boolean => agentWords.has(word) || tradeStems.some((stem) => word.startsWith(stem));

/** For each word of four letters or more the shortest form that holds it beside another word; words that are the trade's own first. */
function covering(forms: readonly string[]): readonly string[] {
  const best = new Map<string, string>();
  for (const form of forms) {
    const words = form.split(' ');
    if (words.length > 4) continue;
    for (const word of words.filter(({ length }) => length >= SHORTEST)) {
      const now = best.get(word);
      const fits = (one: string): number => Math.abs(one.split(' ').length - 2) * 100 + one.length;
      if (now === undefined || fits(form) < fits(now)) best.set(word, form);
    }
  }
  const words = [...best.keys()];
  return [...new Set([...words.filter(ofTrade), ...words.filter((word) => !ofTrade(word))].map((word) => best.get(word) as string))];
}

async function said(words: string, voice: string, folder: string): Promise<Float32Array | undefined> {
  const path = join(folder, 'said.wav');
  const made =
    voice === 'awb'
      ? spawnSync('flite', ['-voice', voice, '-t', words, '-o', path])
      : spawnSync('espeak-ng', ['-v', voice, '-s', '160', '-w', path, '--', words]);
  if (made.error !== undefined || made.status !== 0) return undefined;
  return joined([new Float32Array(4_800), await samplesOf(path), new Float32Array(4_800)]);
}

async function harvest(path: string): Promise<void> {
  const { dir } = await ensureWeights();
  const engine = await openEngine({ weightsDir: dir });
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-misheard-'));
  const from = Number(options.from);
  const forms = covering(spokenForms()).slice(from, options.count === undefined ? undefined : from + Number(options.count));
  const parts = new Map<
    string,
    { readonly meant: string; readonly heard: string; readonly forms: Set<string>; readonly voices: Set<string> }
  >();
  try {
    for (const form of forms)
      for (const voice of VOICES) {
        const samples = await said(`one oh six ${form}`, voice, folder);
        if (samples === undefined) throw new Error(`The voice ${voice} is not there. Nothing was written. Install flite and espeak-ng.`);
        const text = (await engine.hear({ samples, from: 0 }, [])).hypotheses[0]?.text ?? '';
        for (const { meant, heard } of difference(bareWords(`one oh six ${form}`), bareWords(text))) {
          const key = `${meant}\t${heard}`;
          const part = parts.get(key) ?? { meant, heard, forms: new Set<string>(), voices: new Set<string>() };
          part.forms.add(form);
          part.voices.add(voice);
          parts.set(key, part);
        }
      }
  } finally {
    await rm(folder, { recursive: true });
    await engine.close();
  }
  const kept = [...parts.values()].filter(
    ({ meant, heard, forms: in_, voices }) => meant !== '' && heard !== '' && (in_.size > 1 || voices.size > 1),
  );
  await writeFile(
    path,
    kept.map(({ meant, heard, forms: in_, voices }) => [meant, heard, [...voices].join(' '), [...in_].join(' | ')].join('\t')).join('\n'),
  );
  console.log(
    `${forms.length} forms in ${VOICES.length} voices; ${parts.size} different mishearings, of which ${kept.length} came twice or in two voices: ${path}`,
  );
}

if (out === undefined) {
  console.error('Name the file to write: npx tsx tests/bench/misheard.ts OUT.tsv');
  process.exitCode = 2;
} else await harvest(out);
