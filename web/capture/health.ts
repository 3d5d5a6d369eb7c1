import type { Level } from './pcm.ts';

/** What can be wrong with a microphone, in the words of the wire. */
export type MicrophoneState = 'ok' | 'silent' | 'muted' | 'lost';

/** How long no sound at all (a dead line gives exact zeros), and how long next to none, before it is said. */
const deadAfter = 1;
const faintAfter = 4;
/** A live microphone's own noise stands well above this even in a silent stable; two steps of 16 bits do not. Measured on no set: a bound, not a tuning. */
const faint = -84;

export interface Silence {
  readonly dead: number;
  readonly faint: number;
}
export const noSilence: Silence = { dead: 0, faint: 0 };

/** Silence so far, after `seconds` more at this level. */
export const listenFor = (was: Silence, level: Level, seconds: number): Silence => ({
  dead: level.peak === -Infinity ? was.dead + seconds : 0,
  faint: level.peak < faint ? was.faint + seconds : 0,
});

/** Whether a microphone that is there and not muted gives no sound. */
export const isSilent = (silence: Silence): boolean => silence.dead >= deadAfter || silence.faint >= faintAfter;

/** One state from what is known: a lost one outweighs a muted one, a muted one a silent one. */
export const microphoneState = (known: { readonly there: boolean; readonly muted: boolean; readonly silence: Silence }): MicrophoneState =>
  !known.there ? 'lost' : known.muted ? 'muted' : isSilent(known.silence) ? 'silent' : 'ok';
