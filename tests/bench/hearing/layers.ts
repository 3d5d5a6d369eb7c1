/** The layers of hearing, one on top of the other: the rows of the bench. */
import type { Hypothesis } from '../../../parser/contract/word.ts';
import { language } from '../../../server/app/language.ts';
import { adaptedDecoder } from '../../../server/speech/moonshine/adapted.ts';
import { openEngine } from '../../../server/speech/moonshine/index.ts';
import { verified } from '../../../server/speech/verify.ts';

export type LayerEar = { hear(samples: Float32Array): Promise<readonly Hypothesis[]>; close(): Promise<void> };
export type Layer = { readonly name: string; /** Undefined where the checkout lacks what the layer needs. */ open(weightsDir: string): Promise<LayerEar | undefined> };

const best = (name: string, plainEar: boolean, width: number): Layer => ({
  name,
  async open(weightsDir) {
    if (!plainEar && (await adaptedDecoder(weightsDir)) === undefined) return undefined;
    const engine = await openEngine({ weightsDir, plainEar, width });
    return {
      hear: async (samples) => (await engine.hear({ samples, from: 0 }, [])).hypotheses,
      close: () => engine.close(),
    };
  },
});

/** With proposals of the trade's words, and of names where some are expected, judged by the ear: what the program does. */
const proposed = (name: string, plainEar: boolean, width: number, names: readonly string[] = []): Layer => ({
  name,
  async open(weightsDir) {
    if (!plainEar && (await adaptedDecoder(weightsDir)) === undefined) return undefined;
    const engine = await openEngine({ weightsDir, plainEar, width });
    const asked = language();
    return {
      async hear(samples) {
        const clip = { samples, from: 0 };
        return verified(engine, clip, (await engine.hear(clip, [])).hypotheses, asked, names);
      },
      close: () => engine.close(),
    };
  },
});

export const LAYERS: readonly Layer[] = [
  best('plain, greedy', true, 1),
  best('plain, beam of 6', true, 6),
  proposed('plain, beam of 6, proposals', true, 6),
  best('adapter, greedy', false, 1),
  best('adapter, beam of 6', false, 6),
  proposed('adapter, beam of 6, proposals', false, 6),
];
