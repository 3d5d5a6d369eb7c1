/** What the ear may ask of the grammar: whether it reads a text whole, and what of the trade sounds like it. */
import type { ParseResult } from '../../parser/contract/draft.ts';
import { emptyContext, memory, parseText, proposer, spokenForms, stretchesRead, withNames } from '../../parser/index.ts';
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

/** Nobody ends what he says with these. */
const openEnds: ReadonlySet<string> = new Set(
  'a an the of in on at to by for with from and or but no not is are was were has have had got between behind about than as very quite some any these those his its my our your their um uh er grade stage'.split(
    ' ',
  ),
);
const counting: ReadonlySet<string> = new Set([...numbers.filter((word) => word !== 'grade'), 'half', 'hundred']);
const unended: ReadonlySet<string> = new Set(['oh', 'zero', 'nought', 'point', 'hundred', 'half']);
const units: ReadonlySet<string> = new Set(['mil', 'mils', 'millimetres', 'millimetre', 'point', 'half']);
const grading: ReadonlySet<string> = new Set(['grade', 'stage']);
const sides: ReadonlySet<string> = new Set([
  'left',
  'right',
  'upper',
  'lower',
  'top',
  'bottom',
  'near',
  'off',
  'first',
  'second',
  'third',
  'last',
]);
const sided: ReadonlySet<string> = new Set([...sidedNouns, 'left', 'right', 'premolar', 'molar', 'wolf', 'tooth', 'teeth', 'cap']);

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
      const said = !unended.has(word) && !units.has(next) && (counting.has(before) || grading.has(before));
      return !openEnds.has(word) && (!figures || said) && !(sides.has(word) && sided.has(next));
    },
  };
}
