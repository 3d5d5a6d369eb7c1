/** The state in one word, readable at three metres, from what the page knows. Pure. */
import type { HearingState } from '../../parser/contract/wire.ts';
import type { MicrophoneState } from '../capture/health.ts';

export type Phase = 'ready' | 'starting' | 'live' | 'finishing';
export interface Known {
  readonly phase: Phase;
  readonly microphone: MicrophoneState;
  readonly hearing: HearingState;
  readonly paused: boolean;
}
/** `look` wants a person's eye; `now` is something happening; `rest` is quiet. */
export interface Headline {
  readonly word: string;
  readonly mood: 'rest' | 'now' | 'look' | 'still';
}

export const headline = ({ phase, microphone, hearing, paused }: Known): Headline => {
  if (phase === 'ready') return { word: 'Ready', mood: 'rest' };
  if (phase === 'starting') return { word: 'Starting', mood: 'rest' };
  if (phase === 'finishing') return { word: 'Finishing', mood: 'rest' };
  if (microphone !== 'ok') return { word: 'I can’t hear the microphone', mood: 'look' };
  if (paused || hearing === 'paused') return { word: 'Paused', mood: 'still' };
  if (hearing === 'hearing') return { word: 'Hearing you', mood: 'now' };
  if (hearing === 'reading') return { word: 'Reading', mood: 'now' };
  if (hearing === 'getting-ready') return { word: 'Getting ready', mood: 'rest' };
  return { word: 'Listening', mood: 'rest' };
};

/** While the recogniser is still being loaded. */
export const gettingReady = 'Speak already: the sound is kept, and read in a moment.';

/** What to do about a microphone, below the headline. */
export const microphoneAdvice: Readonly<Record<MicrophoneState, string | null>> = {
  ok: null,
  silent: 'It is there but gives no sound. What was heard before is safe. See its switch, its plug and its battery.',
  muted: 'It is muted, by its own switch or by the system. What was heard before is safe. Switch it on.',
  lost: 'It is gone. What was heard before is safe. Plug it in or switch it on: I try again by myself.',
};

/** Whether speech at this peak (decibels below full scale) will be heard well. */
export const levelAdvice = (peak: number): { readonly say: string; readonly good: boolean } => {
  if (peak > -1) return { say: 'Too loud: hold it further away', good: false };
  if (peak > -36) return { say: 'Good level', good: true };
  if (peak > -54) return { say: 'Quiet: hold it nearer, or speak up', good: false };
  return { say: 'Say something', good: false };
};

/** Minutes and seconds since the start; hours when there are any. */
export const elapsed = (ms: number): string => {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60].map((n) => String(n).padStart(2, '0'));
  return h === '00' ? `${m}:${s}` : `${h}:${m}:${s}`;
};
