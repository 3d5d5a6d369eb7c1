/** Who works at this device: their name goes under what they keep, strike, confirm and amend. */
import { effect, signal } from '@preact/signals';

const key = 'quidnote.person';
export const person = signal(localStorage.getItem(key) ?? '');
effect(() => localStorage.setItem(key, person.value));
