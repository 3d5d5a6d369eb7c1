/** Paper or night: chosen on this device, otherwise as the system has it. Listening sets its own night. */
import { effect, signal } from '@preact/signals';

export type Mood = 'paper' | 'night';
const key = 'quidnote.mood';
const kept = localStorage.getItem(key);
export const mood = signal<Mood | null>(kept === 'paper' || kept === 'night' ? kept : null);

effect(() => {
  if (mood.value) {
    document.documentElement.dataset.mood = mood.value;
    localStorage.setItem(key, mood.value);
  } else {
    delete document.documentElement.dataset.mood;
    localStorage.removeItem(key);
  }
});
