/**
 * The recogniser's two ONNX graphs as functions: sound to `Listened`, tokens to next-token scores.
 * Moonshine Tiny (Jeffries et al. 2024, arXiv 2410.15608): 6 decoder layers, 8 heads of 36, vocabulary 32768.
 * The graphs quantise activations per tensor, so a row's numbers depend a little on its neighbours in the batch:
 * compare scores only within one call.
 */
import * as ort from '../../audio/onnxRuntime.ts';

const LAYERS = 6,
  HEADS = 8,
  HEAD_SIZE = 36;
export const VOCABULARY = 32_768,
  START = 1,
  END = 2;
/** The encoder's convolutions need this much sound for one frame of output, and a little more to be sensible. */
const LEAST_SAMPLES = 4_000;

const KEYS = Array.from({ length: LAYERS }, (_, layer) => ['key', 'value'].map((kind) => ({ layer, kind }))).flat();
const past = (whose: 'decoder' | 'encoder') => KEYS.map(({ layer, kind }) => `past_key_values.${layer}.${whose}.${kind}`);
const present = (whose: 'decoder' | 'encoder') => KEYS.map(({ layer, kind }) => `present.${layer}.${whose}.${kind}`);
const PAST_DECODER = past('decoder'),
  PAST_ENCODER = past('encoder');
const PRESENT_DECODER = present('decoder'),
  PRESENT_ENCODER = present('encoder');

/** Keys and values of the decoder's own past: one [rows, 8, t, 36] array for each of the 12 names, row after row. */
export type Memory = { readonly rows: number; readonly length: number; readonly data: readonly Float32Array[] };

/** A clip after the encoder and the first decoder step; rows of any batch share it. */
export type Listened = {
  readonly encoded: ort.Tensor;
  readonly sound: readonly ort.Tensor[];
  readonly memory: Memory;
  /** Scores of the first token, [VOCABULARY]. */
  readonly first: Float32Array;
};

export type Step = { readonly logits: Float32Array; readonly memory: Memory };

export type Graph = {
  listen(samples: Float32Array): Promise<Listened>;
  /** One more token for every row: logits [rows, VOCABULARY]. */
  step(listened: Listened, memory: Memory, tokens: readonly number[]): Promise<Step>;
  /** Several given tokens for every row, all of one length: logits [rows, length, VOCABULARY]; position i is what follows token i. */
  follow(listened: Listened, rows: readonly (readonly number[])[]): Promise<Float32Array>;
  release(): Promise<void>;
};

export async function openGraph(paths: { encoder: string; decoder: string; threads: number }): Promise<Graph> {
  const options: ort.InferenceSession.SessionOptions = {
    intraOpNumThreads: paths.threads,
    interOpNumThreads: 1,
    logSeverityLevel: 3,
    // Threads that wait by spinning double the processor time, and starve on a busy machine.
    extra: { session: { intra_op: { allow_spinning: '0' } } },
  };
  const encoder = await ort.InferenceSession.create(paths.encoder, options);
  const decoder = await ort.InferenceSession.create(paths.decoder, options);

  const run = (
    listened: Pick<Listened, 'encoded' | 'sound'>,
    memory: Memory,
    rows: readonly (readonly number[])[],
    cached: boolean,
    wanted: readonly string[],
  ) => {
    const length = rows[0]?.length ?? 0;
    const feeds: Record<string, ort.Tensor> = {
      input_ids: new ort.Tensor('int64', BigInt64Array.from(rows.flat(), BigInt), [rows.length, length]),
      encoder_hidden_states: listened.encoded,
      use_cache_branch: new ort.Tensor('bool', [cached], [1]),
    };
    PAST_DECODER.forEach((name, i) => {
      feeds[name] = new ort.Tensor('float32', memory.data[i] ?? NOTHING, [memory.rows, HEADS, memory.length, HEAD_SIZE]);
    });
    PAST_ENCODER.forEach((name, i) => {
      feeds[name] = listened.sound[i] ?? EMPTY;
    });
    return decoder.run(feeds, wanted);
  };

  return {
    async listen(samples) {
      const sound = samples.length >= LEAST_SAMPLES ? samples : padded(samples, LEAST_SAMPLES);
      const { last_hidden_state: encoded } = await encoder.run({ input_values: new ort.Tensor('float32', sound, [1, sound.length]) });
      if (encoded === undefined) throw new Error('The encoder gave no output.');
      const nothing: Memory = { rows: 1, length: 0, data: [] };
      const out = await run({ encoded, sound: [] }, nothing, [[START]], false, ['logits', ...PRESENT_DECODER, ...PRESENT_ENCODER]);
      return {
        encoded,
        first: numbers(out, 'logits'),
        sound: PRESENT_ENCODER.map((name) => tensor(out, name)),
        memory: { rows: 1, length: 1, data: PRESENT_DECODER.map((name) => numbers(out, name)) },
      };
    },
    async step(listened, memory, tokens) {
      const out = await run(
        listened,
        memory,
        tokens.map((token) => [token]),
        true,
        ['logits', ...PRESENT_DECODER],
      );
      return {
        logits: numbers(out, 'logits'),
        memory: { rows: memory.rows, length: memory.length + 1, data: PRESENT_DECODER.map((name) => numbers(out, name)) },
      };
    },
    async follow(listened, rows) {
      return numbers(
        await run(
          listened,
          pick(
            listened.memory,
            rows.map(() => 0),
          ),
          rows,
          true,
          ['logits'],
        ),
        'logits',
      );
    },
    async release() {
      await encoder.release();
      await decoder.release();
    },
  };
}

/** A memory whose rows are the given rows of another, in that order. */
export function pick(memory: Memory, rows: readonly number[]): Memory {
  const size = HEADS * memory.length * HEAD_SIZE;
  const data = memory.data.map((whole) => {
    const picked = new Float32Array(rows.length * size);
    rows.forEach((row, i) => picked.set(whole.subarray(row * size, (row + 1) * size), i * size));
    return picked;
  });
  return { rows: rows.length, length: memory.length, data };
}

const NOTHING = new Float32Array(0);
const EMPTY = new ort.Tensor('float32', NOTHING, [1, HEADS, 0, HEAD_SIZE]);

const padded = (samples: Float32Array, length: number): Float32Array => {
  const longer = new Float32Array(length);
  longer.set(samples);
  return longer;
};

function tensor(out: ort.InferenceSession.OnnxValueMapType, name: string): ort.Tensor {
  const value = out[name];
  if (value === undefined) throw new Error(`The decoder gave no ${name}.`);
  return value as ort.Tensor;
}

const numbers = (out: ort.InferenceSession.OnnxValueMapType, name: string): Float32Array => tensor(out, name).data as Float32Array;
