/** Keeps a microphone open: when it vanishes it is opened again, or another one in its place. */
import type { MicrophoneState } from './health.ts';
import { openMicrophone, type Microphone } from './microphone.ts';
import type { Level } from './pcm.ts';

export interface EarOptions {
  readonly context: AudioContext;
  /** The microphone chosen; undefined takes the system's own choice. */
  readonly deviceId: string | undefined;
  /** A new stretch of sound begins. */
  readonly begins: () => void;
  readonly sound: (sound: Uint8Array) => void;
  readonly level: (level: Level) => void;
  readonly state: (state: MicrophoneState) => void;
  /** A try to open it again failed; the next one follows by itself. */
  readonly failed: (error: unknown) => void;
}
export interface Ear {
  readonly device: () => string;
  readonly close: () => Promise<void>;
}

const againAfterMs = 1500;

/** Opens the microphone. Rejects when it cannot be opened the first time. */
export const startEar = async ({ context, deviceId, begins, sound, level, state, failed }: EarOptions): Promise<Ear> => {
  let closed = false;
  let microphone: Microphone | null = null;
  const open = async (id: string | undefined): Promise<void> => {
    microphone = await openMicrophone(context, id, {
      opened: begins,
      sound,
      level,
      state: (now) => {
        state(now);
        if (now === 'lost' && !closed) void openAgain();
      },
    });
  };
  const shut = async (): Promise<void> => {
    await microphone?.close();
    microphone = null;
  };
  const openAgain = async (): Promise<void> => {
    await shut();
    for (let tries = 0; !closed && !microphone; tries++) {
      await new Promise((resolve) => setTimeout(resolve, againAfterMs));
      void context.resume();
      // The chosen one first; but with both hands in a mouth, any microphone is better than none.
      await open(tries % 2 === 0 ? deviceId : undefined).catch(failed);
    }
    if (closed) await shut();
  };
  await open(deviceId);
  return {
    device: () => microphone?.label ?? '',
    close: async () => {
      closed = true;
      await shut();
    },
  };
};
