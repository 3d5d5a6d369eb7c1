/** Night for the barn, sunlight for the yard: the listening screen's own choice, kept on this device. */
import { effect, signal } from '@preact/signals';

const key = 'quidnote.sunlight';
export const sunlight = signal(localStorage.getItem(key) === 'true');
effect(() => localStorage.setItem(key, String(sunlight.value)));
