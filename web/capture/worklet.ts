/** Runs on the browser's audio thread: first channel in, 16 kHz PCM out, in pieces of a quarter of a second. */
import { levelOf, pcm16, type Level } from './pcm.ts';
import { resampler } from './resample.ts';

declare const sampleRate: number;
declare const registerProcessor: (name: string, processor: unknown) => void;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}

/** Samples of one chunk (250 ms), and of one step of the level bar. */
const chunkSamples = 4000;
const levelSamples = 800;

/** What the audio thread tells the page. */
export type Heard = { readonly level: Level; readonly seconds: number } | { readonly sound: Uint8Array };

class Ear extends AudioWorkletProcessor {
  private readonly toListening = resampler(sampleRate);
  private readonly chunk = new Float32Array(chunkSamples);
  private filled = 0;

  constructor() {
    super();
    this.port.onmessage = () => this.flush();
  }

  process([input]: Float32Array[][]): boolean {
    const channel = input?.[0];
    if (channel) for (const sample of this.toListening(channel)) this.take(sample);
    return true;
  }

  private take(sample: number): void {
    this.chunk[this.filled++] = sample;
    if (this.filled % levelSamples === 0)
      this.tell({ level: levelOf(this.chunk.subarray(this.filled - levelSamples, this.filled)), seconds: levelSamples / 16000 });
    if (this.filled === chunkSamples) this.flush();
  }

  /** Hands over what is held, also a last piece that is shorter. */
  private flush(): void {
    this.tell({ sound: pcm16(this.chunk.subarray(0, this.filled)) });
    this.filled = 0;
  }

  private tell(heard: Heard): void {
    this.port.postMessage(heard, 'sound' in heard ? [heard.sound.buffer] : []);
  }
}

registerProcessor('ear', Ear);
