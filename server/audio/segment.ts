/** A stream of samples in, phrases out. */
import type { Phrase } from './cutter.ts';
import { level, openCutter, pausesIn } from './cutter.ts';
import { WINDOW, openVad } from './vad.ts';

export type { Phrase } from './cutter.ts';

export type SegmenterState = {
  /** Loudness of the last window, in dB of full scale, -100 at the least. */
  readonly level: number;
  readonly speaking: boolean;
  /** The next sample of the exam that will be read. */
  readonly at: number;
};

export type Segmenter = {
  /** Reads on; resolves with the phrases that ended in these samples. Calls are taken in order. */
  push(samples: Float32Array): Promise<Phrase[]>;
  /** Ends what is being said, and leaves out so many samples that never came (a pause, a lost stretch). */
  skip(count: number): Promise<Phrase[]>;
  /** Ends the stream. */
  flush(): Promise<Phrase[]>;
  /** The phrase that will end if nobody speaks on: its sound is all there, a third of a second before it is known to be over. */
  soon(): Phrase | undefined;
  state(): SegmenterState;
};

/** The short pauses of a phrase that was cut before (`Phrase.pauses`), found again in its sound. */
export async function breathsIn(vadPath: string, samples: Float32Array, from: number): Promise<readonly (readonly [number, number])[]> {
  const vad = await openVad(vadPath);
  const windows: { at: number; speech: number }[] = [];
  for (let at = 0; at + WINDOW <= samples.length; at += WINDOW)
    windows.push({ at: from + at, speech: await vad.next(samples.slice(at, at + WINDOW)) });
  return pausesIn(windows);
}

/**
 * @param vadPath the Silero ONNX file of `ensureWeights`
 * @param from the exam's sample at which the stream begins
 */
export async function openSegmenter(vadPath: string, from = 0): Promise<Segmenter> {
  const vad = await openVad(vadPath);
  let cutter = openCutter(from);
  let rest = new Float32Array(0);
  let at = from,
    loudness = -100;
  let queue: Promise<unknown> = Promise.resolve();

  const inOrder = <T>(work: () => Promise<T>): Promise<T> => {
    const done = queue.then(work);
    queue = done.catch(() => undefined);
    return done;
  };
  const read = async (samples: Float32Array): Promise<Phrase | undefined> => {
    const whole = samples.length === WINDOW ? samples : Float32Array.from({ length: WINDOW }, (_, i) => samples[i] ?? 0);
    const speech = await vad.next(whole);
    loudness = Math.max(-100, 20 * Math.log10(level(samples) + 1e-9));
    const phrase = cutter.push({ at, samples, speech });
    at += samples.length;
    return phrase;
  };
  const end = async (): Promise<Phrase[]> => {
    const completed = rest.length > 0 ? await read(rest) : undefined;
    rest = new Float32Array(0);
    const last = cutter.flush();
    vad.reset();
    return [completed, last].filter((phrase) => phrase !== undefined);
  };

  return {
    push: (samples) =>
      inOrder(async () => {
        const all = new Float32Array(rest.length + samples.length);
        all.set(rest);
        all.set(samples, rest.length);
        const phrases: Phrase[] = [];
        let done = 0;
        for (; done + WINDOW <= all.length; done += WINDOW) {
          const phrase = await read(all.slice(done, done + WINDOW));
          if (phrase !== undefined) phrases.push(phrase);
        }
        rest = all.slice(done);
        return phrases;
      }),
    skip: (count) =>
      inOrder(async () => {
        const phrases = await end();
        at += count;
        return phrases;
      }),
    flush: () =>
      inOrder(async () => {
        const phrases = await end();
        cutter = openCutter(at);
        return phrases;
      }),
    soon: () => cutter.soon(),
    state: () => ({ level: loudness, speaking: cutter.speaking(), at: at + rest.length }),
  };
}
