/** What the ear may ask of the grammar: whether it reads a text whole, and what of the trade sounds like it. */
import { emptyContext, parseText, proposer, spokenForms, withNames } from '../../parser/index.ts';
import { digitWords, teenWords, tensWords } from '../../parser/lexicon/numbers.ts';
import type { Language } from '../speech/verify.ts';

/** Doubts that say that some words have no place in the grammar; any other doubt is about what they mean. */
const unplaced: ReadonlySet<string> = new Set(['unread', 'no-such-tooth', 'off-scale']);
/** Doubts that say that a finding was not said to its end. */
const halves: ReadonlySet<string> = new Set(['no-place', 'no-condition']);
const numbers = [...Object.keys(digitWords), ...Object.keys(teenWords), ...Object.keys(tensWords), 'oh', 'point', 'grade', 'millimetres', 'mil', 'mils'];

export const language = (): Language => ({
  whole: (text) => {
    const { leftovers, doubts, utterance } = parseText('asked', text, emptyContext());
    // What the grammar had to mend is not what was said: the ear is asked.
    return leftovers.length === 0 && !utterance.words.some(({ repairedTo }) => repairedTo !== undefined) && !doubts.some(({ doubt }) => unplaced.has(doubt));
  },
  open: (text) => parseText('asked', text, emptyContext()).doubts.some(({ doubt }) => halves.has(doubt)),
  propose: proposer([...spokenForms(), ...numbers]),
  named: withNames,
});
