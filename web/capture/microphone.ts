/** The microphone as the browser gives it, with the browser's own improvements off: they are made for calls, not for hearing a tooth's number in a barn. */
import earUrl from './worklet.ts?worker&url';
import { microphoneState, noSilence, listenFor, type MicrophoneState } from './health.ts';
import type { Level } from './pcm.ts';
import type { Heard } from './worklet.ts';

export interface MicrophoneEvents {
  /** It is there; sound follows. */
  readonly opened: () => void;
  readonly sound: (sound: Uint8Array) => void;
  readonly level: (level: Level) => void;
  readonly state: (state: MicrophoneState) => void;
}
export interface Microphone {
  /** What the browser calls it: a person's own words, shown and never logged. */
  readonly label: string;
  readonly deviceId: string;
  /** Hands over the last piece of sound, then lets the microphone go. */
  readonly close: () => Promise<void>;
}
export interface Device {
  readonly id: string;
  readonly label: string;
}

/** Nothing at all from the audio thread for this long: asleep, interrupted by a call, or gone. */
const stalledAfterMs = 2000;

/** The microphones there are. Their names are empty until one has been allowed. */
export const microphones = async (): Promise<readonly Device[]> =>
  (await navigator.mediaDevices.enumerateDevices())
    .filter((d) => d.kind === 'audioinput')
    .map((d, i) => ({ id: d.deviceId, label: d.label || `Microphone ${i + 1}` }));

const constraints = (deviceId: string | undefined): MediaStreamConstraints => ({
  audio: {
    channelCount: 1,
    echoCancellation: false,
    noiseSuppression: false,
    autoGainControl: false,
    ...(deviceId ? { deviceId: { exact: deviceId } } : {}),
  },
});

/** Opens a microphone inside an audio context that a tap has started. Rejects with the browser's own error. */
export const openMicrophone = async (context: AudioContext, deviceId: string | undefined, on: MicrophoneEvents): Promise<Microphone> => {
  await context.audioWorklet.addModule(earUrl);
  const stream = await navigator.mediaDevices.getUserMedia(constraints(deviceId));
  const track = stream.getAudioTracks()[0]!;
  const source = context.createMediaStreamSource(stream);
  const ear = new AudioWorkletNode(context, 'ear', {
    numberOfInputs: 1,
    numberOfOutputs: 0,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  let silence = noSilence;
  let there = true;
  let told: MicrophoneState | null = null;
  let lastHeard = performance.now();
  const tell = (): void => {
    const state = microphoneState({ there, muted: track.muted, silence });
    if (state !== told) on.state((told = state));
  };
  ear.port.onmessage = ({ data }: MessageEvent<Heard>) => {
    lastHeard = performance.now();
    if ('sound' in data) return on.sound(data.sound);
    silence = listenFor(silence, data.level, data.seconds);
    there = track.readyState === 'live';
    on.level(data.level);
    tell();
  };
  const lose = (): void => {
    there = false;
    tell();
  };
  const watch = setInterval(() => {
    if (performance.now() - lastHeard > stalledAfterMs) lose();
  }, 500);
  const gone = async (): Promise<void> => {
    if (!(await microphones()).some((d) => d.id === track.getSettings().deviceId)) lose();
  };
  track.addEventListener('mute', tell);
  track.addEventListener('unmute', tell);
  track.addEventListener('ended', lose);
  navigator.mediaDevices.addEventListener('devicechange', gone);
  on.opened();
  source.connect(ear);
  return {
    label: track.label,
    deviceId: track.getSettings().deviceId ?? '',
    close: async () => {
      clearInterval(watch);
      navigator.mediaDevices.removeEventListener('devicechange', gone);
      source.disconnect();
      const flushed = new Promise<void>((resolve) => {
        ear.port.onmessage = ({ data }: MessageEvent<Heard>) => {
          if (!('sound' in data)) return;
          if (data.sound.length > 0) on.sound(data.sound);
          resolve();
        };
        setTimeout(resolve, 200);
      });
      ear.port.postMessage('flush');
      await flushed;
      track.stop();
    },
  };
};
