/** The layers of hearing, one on top of the other: the rows of the bench. What two layers share is worked out once for each clip, and its time counted in both. */
import type { Hypothesis } from '../../../parser/contract/word.ts';
import { language } from '../../../server/app/language.ts';
import type { Engine } from '../../../server/speech/engine.ts';
import { adaptedDecoder } from '../../../server/speech/moonshine/adapted.ts';
import { openEngine } from '../../../server/speech/moonshine/index.ts';
import { verified } from '../../../server/speech/verify.ts';

export type Layer = {
  readonly name: string;
  readonly adapter: boolean;
  /** Readings kept open at a time. */
  readonly width: number;
  /** What the ear is asked to judge besides what it heard by itself. */
  readonly asks?: 'proposals' | 'names';
};
export type Measured = { readonly hypotheses: readonly Hypothesis[]; readonly ms: number; readonly cpuMs: number };
export type LayerEars = {
  /** @param names that may be spoken: only the layer that asks for names is told them */
  hear(layer: Layer, samples: Float32Array, names: readonly string[]): Promise<Measured>;
  close(): Promise<void>;
};

export const LAYERS: readonly Layer[] = [
  { name: 'plain, greedy', adapter: false, width: 1 },
  { name: 'plain, beam of 6', adapter: false, width: 6 },
  { name: 'plain, beam of 6, proposals', adapter: false, width: 6, asks: 'proposals' },
  { name: 'adapter, greedy', adapter: true, width: 1 },
  { name: 'adapter, beam of 6', adapter: true, width: 6 },
  { name: 'adapter, beam of 6, proposals', adapter: true, width: 6, asks: 'proposals' },
  { name: 'adapter, beam of 6, proposals, names', adapter: true, width: 6, asks: 'names' },
];
/** What the program does. */
export const PROGRAM = LAYERS[LAYERS.length - 1] as Layer;

/** @returns undefined where the layers need the trade adapter and the checkout has none */
export async function openLayers(weightsDir: string, layers: readonly Layer[]): Promise<LayerEars | undefined> {
  if (layers.some(({ adapter }) => adapter) && (await adaptedDecoder(weightsDir)) === undefined) return undefined;
  const engines = new Map<string, Engine>();
  const keyOf = ({ adapter, width }: Layer): string => `${adapter} ${width}`;
  for (const layer of layers)
    if (!engines.has(keyOf(layer)))
      engines.set(keyOf(layer), await openEngine({ weightsDir, plainEar: !layer.adapter, width: layer.width }));
  const asked = language();
  const heard = new Map<string, { readonly samples: Float32Array; readonly measured: Measured }>();

  const alone = async (layer: Layer, samples: Float32Array): Promise<Measured> => {
    const known = heard.get(keyOf(layer));
    if (known?.samples === samples) return known.measured;
    const engine = engines.get(keyOf(layer)) as Engine;
    const measured = await timed(async () => (await engine.hear({ samples, from: 0 }, [])).hypotheses);
    heard.set(keyOf(layer), { samples, measured });
    return measured;
  };
  return {
    async hear(layer, samples, names) {
      const first = await alone(layer, samples);
      if (layer.asks === undefined) return first;
      const engine = engines.get(keyOf(layer)) as Engine;
      const then = await timed(() => verified(engine, { samples, from: 0 }, first.hypotheses, asked, layer.asks === 'names' ? names : []));
      return { hypotheses: then.hypotheses, ms: first.ms + then.ms, cpuMs: first.cpuMs + then.cpuMs };
    },
    async close() {
      for (const engine of engines.values()) await engine.close();
    },
  };
}

async function timed(work: () => Promise<readonly Hypothesis[]>): Promise<Measured> {
  const began = performance.now(),
    used = process.cpuUsage();
  const hypotheses = await work();
  const { user, system } = process.cpuUsage(used);
  return { hypotheses, ms: performance.now() - began, cpuMs: (user + system) / 1000 };
}
