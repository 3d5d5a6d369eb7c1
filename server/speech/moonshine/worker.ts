/** The thread in which the recogniser runs: sessions are created once and live as long as it does. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Clip, Scoring } from '../engine.ts';
import { openEar } from './ear.ts';
import { openGraph } from './graph.ts';

export type Task =
  | { readonly do: 'hear'; readonly id: number; readonly clip: Clip }
  | {
      readonly do: 'score';
      readonly id: number;
      readonly clip: Clip;
      readonly sentences: readonly string[];
      readonly how?: Scoring | undefined;
    };
export type Setup = { readonly encoder: string; readonly decoder: string; readonly threads: number; readonly width: number };
export type Call = { readonly call: number; readonly task: Task };
export type Answer = { readonly call: number; readonly value: unknown } | { readonly call: number; readonly error: string };

const port = parentPort;
if (port === null) throw new Error('This file runs in a worker thread.');
const setup = workerData as Setup;
const graph = await openGraph(setup);
const ear = openEar(graph, setup.width);

// One call after the other: the graph uses all its threads for one.
let last: Promise<void> = Promise.resolve();
port.on('message', (message: Call | 'close') => {
  last = last.then(async () => {
    if (message === 'close') {
      await graph.release();
      port.close();
    } else port.postMessage(await answered(message));
  });
});
port.postMessage('ready');

async function answered({ call, task }: Call): Promise<Answer> {
  try {
    const value = task.do === 'hear' ? await ear.hear(task.id, task.clip) : await ear.score(task.id, task.clip, task.sentences, task.how);
    return { call, value };
  } catch (error) {
    return { call, error: error instanceof Error ? error.message : String(error) };
  }
}
