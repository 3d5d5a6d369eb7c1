/** What the ear may ask of the grammar: whether it reads a text whole, and what of the trade sounds like it. */
import type { ParseResult } from '../../parser/contract/draft.ts';
import { emptyContext, memory, parseText, proposer, spokenForms, stretchesRead, withNames } from '../../parser/index.ts';
import { grading, halfNumbers, ofSeveral, ofTheNumber, openEnds, whichOf } from '../../parser/lexicon/endings.ts';
import { digitWords, teenWords, tensWords } from '../../parser/lexicon/numbers.ts';
import { sidedNouns } from '../../parser/lexicon/sides.ts';
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

const counting: ReadonlySet<string> = new Set([...numbers.filter((word) => word !== 'grade'), 'half', 'hundred']);
const open: ReadonlySet<string> = new Set(openEnds),
  unended: ReadonlySet<string> = new Set(halfNumbers),
  units: ReadonlySet<string> = new Set(ofTheNumber),
  graded: ReadonlySet<string> = new Set(grading),
  sides: ReadonlySet<string> = new Set(whichOf),
  sided: ReadonlySet<string> = new Set([...sidedNouns, ...ofSeveral]);

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
    mayEnd: (words, count) => {
      const [before = '', word = '', next = ''] = [words[count - 2], words[count - 1], words[count]];
      // "one oh six, four mil" and "grade two, two ten": a number that is said to its end. "One, oh six" is not.
      const figures = counting.has(word) && counting.has(next);
      const said = !unended.has(word) && !units.has(next) && (counting.has(before) || graded.has(before));
      return !open.has(word) && (!figures || said) && !(sides.has(word) && sided.has(next));
    },
  };
}
