/** How well the stream is cut: barn noise alone must give nothing; phrases in noise must be found whole. */
import { openSegmenter } from '../../../server/audio/segment.ts';
import type { Engine } from '../../../server/speech/engine.ts';
import { table } from './report.ts';
import type { SpokenSet } from './sets.ts';
import type { Barn, Condition } from './sound.ts';
import { joined, under } from './sound.ts';

const PAUSE = 16_000 * 1.5;

async function phrasesOf(vad: string, samples: Float32Array) {
  const segmenter = await openSegmenter(vad);
  return [...(await segmenter.push(samples)), ...(await segmenter.flush())];
}

/** Each clip of noise on its own: how many phrases were cut from it, and what was heard in them. */
export async function noiseAlone(vad: string, engine: Engine, barn: Barn): Promise<string> {
  const texts: string[] = [];
  let phrases = 0;
  for (const noise of barn.noises) {
    for (const phrase of await phrasesOf(vad, noise)) {
      phrases += 1;
      const text = (await engine.hear(phrase, [])).hypotheses[0]?.text;
      if (text !== undefined) texts.push(text);
    }
  }
  return `${barn.noises.length} clips of noise alone: ${phrases} phrases cut, words heard in ${texts.length}${texts.length > 0 ? ` (${texts.map((text) => `"${text}"`).join(', ')})` : ''}.`;
}

/** Phrases with pauses of 1.5 s, the noise going on through the pauses: one cut for each, nothing of the voice outside it. */
export async function phrasesInNoise(vad: string, set: SpokenSet, conditions: readonly Condition[], barn: Barn): Promise<string> {
  const rows: string[][] = [];
  for (const condition of conditions) {
    let whole = 0,
      clipped = 0,
      split = 0,
      lost = 0,
      extra = 0;
    for (let i = 0; i + 5 <= set.spoken.length; i += 5) {
      const five = set.spoken.slice(i, i + 5);
      const spans: (readonly [number, number])[] = [];
      const parts: Float32Array[] = [new Float32Array(PAUSE)];
      for (const { samples } of five) {
        const at = parts.reduce((sum, { length }) => sum + length, 0);
        const loud = (sample: number) => Math.abs(sample) > 0.03;
        spans.push([at + samples.findIndex(loud), at + samples.findLastIndex(loud)]);
        parts.push(samples, new Float32Array(PAUSE));
      }
      const cuts = await phrasesOf(vad, under(joined(parts), condition, barn, `cuts ${set.name} ${i}`));
      const touching = spans.map(([from, to]) => cuts.filter((cut) => cut.from < to && cut.to > from));
      touching.forEach((own, n) => {
        const [from, to] = spans[n] as readonly [number, number];
        const [only] = own;
        if (only === undefined) lost += 1;
        else if (own.length > 1) split += 1;
        else if (only.from > from || only.to < to) clipped += 1;
        else whole += 1;
      });
      extra += cuts.filter((cut) => !touching.flat().includes(cut)).length;
    }
    rows.push([set.name, condition.name, String(whole), String(clipped), String(split), String(lost), String(extra)]);
  }
  return table(['voice', 'sound', 'whole', 'clipped', 'cut in two', 'not found', 'cuts without a phrase'], rows);
}
