/** What the ear may ask of the grammar: whether it reads a text whole, and what of the trade sounds like it. */
import type { ParseResult } from '../../parser/contract/draft.ts';
import { emptyContext, mayEnd, memory, parseText, proposer, spokenForms, stretchesRead, withNames } from '../../parser/index.ts';
import { digitWords, teenWords, tensWords } from '../../parser/lexicon/numbers.ts';
import type { Ends } from '../speech/pauses.ts';
import type { Language } from '../speech/verify.ts';

/** Doubts that say that some words have no place in the grammar; any other doubt is about what they mean. */
const unplaced: ReadonlySet<string> = new Set(['unread', 'no-such-tooth', 'off-scale']);
/** Doubts that say that a finding was not said to its end. */
const halves: ReadonlySet<string> = new Set(['no-place', 'no-condition']);
const numbers = [
  ...Object.keys(digitWords),
  ...Object.keys(teenWords),
  ...Object.keys(tensWords),
  'oh',
  'point',
  'grade',
  'millimetres',
  'mil',
  'mils',
];

/** Texts whose reading is kept at hand: one phrase asks about fewer. */
const REMEMBERED = 200;

export function language(): Language & Ends {
  // Each text is asked about twice or more: whether it is whole, and whether it is open; and texts proposed for one phrase share most of their stretches.
  const known = memory<ParseResult>(REMEMBERED);
  const nothingSaid = emptyContext(),
    stretches = stretchesRead();
  const read = (text: string): ParseResult => known(text, () => parseText('asked', text, nothingSaid, stretches));
  return {
    whole: (text) => {
      const { leftovers, doubts, utterance } = read(text);
      // What the grammar had to mend is not what was said: the ear is asked.
      return (
        leftovers.length === 0 &&
        !utterance.words.some(({ repairedTo }) => repairedTo !== undefined) &&
        !doubts.some(({ doubt }) => unplaced.has(doubt))
      );
    },
    open: (text) => read(text).doubts.some(({ doubt }) => halves.has(doubt)),
    propose: proposer([...spokenForms(), ...numbers]),
    named: withNames,
    mayEnd,
  };
}
