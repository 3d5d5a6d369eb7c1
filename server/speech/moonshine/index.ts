/** The embedded ear: Moonshine Tiny in a worker thread of its own. */
import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import '../../audio/noTelemetry.ts';
import type { Clip, Engine, Heard } from '../engine.ts';
import { adaptedDecoder } from './adapted.ts';
import type { Answer, Setup, Task } from './worker.ts';

export type EngineOptions = {
  /** The folder of `ensureWeights`. */
  readonly weightsDir: string;
  /** Hear without the trade adapter. */
  readonly plainEar?: boolean;
  /** Readings kept open at a time; 1 is greedy. */
  readonly width?: number;
};

const DEFAULT_WIDTH = 6;

/** @throws when the weights cannot be loaded. Calls are answered in the order in which they came. */
export async function openEngine({ weightsDir, plainEar = false, width = DEFAULT_WIDTH }: EngineOptions): Promise<Engine> {
  const decoder = (plainEar ? undefined : await adaptedDecoder(weightsDir)) ?? join(weightsDir, 'decoder_model_merged.onnx');
  const setup: Setup = { encoder: join(weightsDir, 'encoder_model.onnx'), decoder, threads: Math.min(4, availableParallelism()), width };
  const worker = new Worker(new URL('./thread.mjs', import.meta.url), { workerData: setup, execArgv: [] });
  const waiting = new Map<number, { resolve(value: unknown): void; reject(error: Error): void }>();
  let calls = 0;
  let over: Error | undefined;
  const fail = (error: Error) => {
    over ??= error;
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  worker.on('error', fail);
  worker.on('exit', () => fail(new Error('The recogniser is closed.')));
  await ready(worker);
  worker.on('message', (answer: Answer) => {
    const one = waiting.get(answer.call);
    waiting.delete(answer.call);
    if ('error' in answer) one?.reject(new Error(answer.error));
    else one?.resolve(answer.value);
  });

  const ask = <T>(task: Task): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      if (over !== undefined) return reject(over);
      const call = calls++;
      waiting.set(call, { resolve: resolve as (value: unknown) => void, reject });
      worker.postMessage({ call, task });
    });
  const ids = clipIds();

  return {
    name: decoder.includes('decoder-trade-') ? 'moonshine-tiny, trade words' : 'moonshine-tiny',
    hear: (clip) => ask<Heard>({ do: 'hear', id: ids(clip), clip }),
    score: (clip, sentences, how) =>
      sentences.length === 0 ? Promise.resolve([]) : ask<number[]>({ do: 'score', id: ids(clip), clip, sentences, how }),
    async close() {
      if (over !== undefined) return;
      const gone = once(worker, 'exit');
      worker.postMessage('close');
      await gone;
    },
  };
}

/** The same samples keep the same number, so that scoring a clip that was just heard need not encode it again. */
function clipIds(): (clip: Clip) => number {
  const known = new WeakMap<Float32Array, number>();
  let next = 0;
  return ({ samples }) => {
    const id = known.get(samples) ?? next++;
    known.set(samples, id);
    return id;
  };
}

function ready(worker: Worker): Promise<void> {
  return new Promise((resolve, reject) => {
    worker.once('error', reject);
    worker.once('message', () => {
      worker.off('error', reject);
      resolve();
    });
  });
}
