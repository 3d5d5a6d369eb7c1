/** Silero voice activity detection (MIT, version 6): how likely each 32 ms of a stream is speech. */
import * as ort from './onnxRuntime.ts';
import { RATE } from '../speech/engine.ts';

/** Samples a window; the graph is made for this size at 16 kHz and sees the last 64 samples before it too. */
export const WINDOW = 512;
const CONTEXT = 64;
const STATE = [2, 1, 128] as const;

export type Vad = {
  /** Probability of speech, 0 to 1, in the next window of the stream. */
  next(window: Float32Array): Promise<number>;
  /** Forgets the stream: what follows does not continue what was. */
  reset(): void;
};

/** One session a process: sessions that come and go leak memory. */
const sessions = new Map<string, Promise<ort.InferenceSession>>();

/** @param path the Silero ONNX file; @throws when it cannot be loaded */
export async function openVad(path: string): Promise<Vad> {
  const opened =
    sessions.get(path) ?? ort.InferenceSession.create(path, { intraOpNumThreads: 1, interOpNumThreads: 1, logSeverityLevel: 3 });
  sessions.set(path, opened);
  const session = await opened.catch((error: unknown) => {
    sessions.delete(path);
    throw error;
  });
  const rate = new ort.Tensor('int64', BigInt64Array.of(BigInt(RATE)), []);
  const blank = () => new ort.Tensor('float32', new Float32Array(STATE[0] * STATE[1] * STATE[2]), STATE);
  let state: ort.Tensor = blank();
  let context = new Float32Array(CONTEXT);
  return {
    async next(window) {
      const input = new Float32Array(CONTEXT + WINDOW);
      input.set(context);
      input.set(window, CONTEXT);
      context = input.slice(-CONTEXT);
      const { output, stateN } = await session.run({ input: new ort.Tensor('float32', input, [1, input.length]), state, sr: rate });
      state = stateN as ort.Tensor;
      return (output?.data as Float32Array)[0] ?? 0;
    },
    reset() {
      state = blank();
      context = new Float32Array(CONTEXT);
    },
  };
}
