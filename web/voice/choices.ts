/** What may sound on this device: chosen by the person, kept in the browser. */
import { effect, signal, type Signal } from '@preact/signals';

const kept = (key: string, otherwise: boolean): Signal<boolean> => {
  const choice = signal((localStorage.getItem(key) ?? String(otherwise)) === 'true');
  effect(() => localStorage.setItem(key, String(choice.value)));
  return choice;
};

/** The four tones. */
export const tonesOn = kept('quidnote.tones', true);
/** Answers to commands and questions, read aloud. */
export const voiceOn = kept('quidnote.voice', true);
/** Every item read back as it lands, too. */
export const readBackOn = kept('quidnote.readback', false);
