/** The layers of hearing, one on top of the other: the rows of the bench. */
import type { Hypothesis } from '../../../parser/contract/word.ts';
import { emptyContext, parseText, proposer, spokenForms } from '../../../parser/index.ts';
import { digitWords, teenWords, tensWords } from '../../../parser/lexicon/numbers.ts';
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

/** With proposals of the trade's words, judged by the ear. */
const proposed = (name: string, plainEar: boolean, width: number): Layer => ({
  name,
  async open(weightsDir) {
    if (!plainEar && (await adaptedDecoder(weightsDir)) === undefined) return undefined;
    const engine = await openEngine({ weightsDir, plainEar, width });
    const propose = proposer([...spokenForms(), ...NUMBERS]);
    return {
      async hear(samples) {
        const clip = { samples, from: 0 };
        return verified(engine, clip, (await engine.hear(clip, [])).hypotheses, { whole, propose });
      },
      close: () => engine.close(),
    };
  },
});

const NUMBERS = [...Object.keys(digitWords), ...Object.keys(teenWords), ...Object.keys(tensWords), 'oh', 'point', 'grade', 'millimetres', 'mil', 'mils'];
const UNREAD = new Set(['unread', 'no-such-tooth', 'off-scale']);
const whole = (text: string): boolean => {
  const { leftovers, doubts } = parseText('bench', text, emptyContext());
  return leftovers.length === 0 && !doubts.some(({ doubt }) => UNREAD.has(doubt));
};

export const LAYERS: readonly Layer[] = [
  best('plain, greedy', true, 1),
  best('plain, beam of 6', true, 6),
  proposed('plain, beam of 6, proposals', true, 6),
  best('adapter, greedy', false, 1),
  best('adapter, beam of 6', false, 6),
  proposed('adapter, beam of 6, proposals', false, 6),
];
