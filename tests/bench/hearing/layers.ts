/** The layers of hearing, one on top of the other: the rows of the bench. */
import { adaptedDecoder } from '../../../server/speech/moonshine/adapted.ts';
import { openEngine } from '../../../server/speech/moonshine/index.ts';
import type { Hypothesis } from '../../../parser/contract/word.ts';

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

export const LAYERS: readonly Layer[] = [
  best('plain, greedy', true, 1),
  best('plain, beam of 6', true, 6),
  best('adapter, greedy', false, 1),
  best('adapter, beam of 6', false, 6),
];
