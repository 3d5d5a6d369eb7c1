/** Plays the second of sound an item came from. One sound at a time; a new one ends the old. */
import { signal } from '@preact/signals';

/** Address of the sound that plays now. */
export const playing = signal<string | null>(null);
/** What went wrong the last time, in words for a person. */
export const soundTrouble = signal<string | null>(null);
let player: HTMLAudioElement | null = null;

export function hush(): void {
  player?.pause();
  player = null;
  playing.value = null;
}
/** Plays an address, or stops it where it already plays. */
export function play(address: string): void {
  const same = playing.value === address;
  hush();
  if (same) return;
  soundTrouble.value = null;
  const audio = new Audio(address);
  player = audio;
  playing.value = address;
  const over = (): void => {
    if (player === audio) hush();
  };
  audio.addEventListener('ended', over);
  audio.play().catch(() => {
    if (player !== audio) return;
    over();
    soundTrouble.value = 'This sound cannot be played: it was erased, or this device has no loudspeaker. The words are kept.';
  });
}
