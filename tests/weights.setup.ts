/** Before the tests: the real recogniser's weights, from the cache or the registry. */
import type { TestProject } from 'vitest/node';
import { ensureWeights } from '../server/speech/weights.ts';

export default async function setup(project: TestProject): Promise<void> {
  const from = process.env['QUIDNOTE_WEIGHTS'];
  project.provide('weights', await ensureWeights(from === undefined ? {} : { from }));
}

declare module 'vitest' {
  export interface ProvidedContext {
    weights: Awaited<ReturnType<typeof ensureWeights>>;
  }
}
