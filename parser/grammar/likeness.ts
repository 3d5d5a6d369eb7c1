/** Words of the trade that sound like what was heard. Numbers, sides and words that rule out are never among them: they are not guessed. */
import { memory } from './memory.ts';
import { distance, soundCodes, soundOf } from './sounds.ts';
import { soundForms } from './vocabulary.ts';

/** Further away than this in sound no word is taken for another; short words are let alone, for too much sounds like them. */
const NEAR = 0.2,
  SHORTEST = 4,
  NEAREST = 3;

interface Known {
  readonly word: string;
  readonly sound: Uint8Array;
}
const known: readonly Known[] = soundForms
  .map((word) => ({ word, sound: soundCodes(soundOf(word)) }))
  .filter(({ sound }) => sound.length >= SHORTEST);

export interface Alike {
  readonly word: string;
  readonly far: number;
}

/** What was compared with the whole lexicon is kept, up to so many stretches: the sentences that the ear is asked about differ in a word or two. */
const REMEMBERED = 4000;
const remembered = memory<readonly Alike[]>(REMEMBERED);

/** @param stretch a word or several as heard; @returns nearest first, at most three */
export const soundsLike = (stretch: string): readonly Alike[] => remembered(stretch, () => compared(stretch));

function compared(stretch: string): readonly Alike[] {
  const sound = soundCodes(soundOf(stretch));
  if (sound.length < SHORTEST) return [];
  return known
    .flatMap(({ word, sound: own }) => {
      const far = word === stretch ? Infinity : distance(sound, own, NEAR);
      return far <= NEAR ? [{ word, far }] : [];
    })
    .sort((a, b) => a.far - b.far)
    .slice(0, NEAREST);
}
