/** "hook on two oh six, no, stand still, one oh six": a "no" by itself before talk is said to the horse, or takes back; it rules nothing out. The place behind it is asked about. */
import { approving } from '../lexicon/talkBeside.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

export function toTheHorse(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  if (!tokens.some(({ t, ends }) => t === 'no' && ends === true)) return marks;
  const ends = (mark: Mark | undefined): boolean => mark !== undefined && tokens[mark.to - 1]?.ends === true;
  return marks.map((mark, at): Mark => {
    if (tokens[mark.from]?.t !== 'no' || mark.to - mark.from > 1 || !ends(mark) || !ends(marks[at - 1])) return mark;
    const end = marks.findIndex((one, i) => i > at && ends(one));
    const between = end < 0 ? [] : marks.slice(at + 1, end + 1);
    const talk =
      between.some(isTalk) &&
      between.every(
        (one) =>
          isTalk(one) ||
          (one.place === undefined && one.measure === undefined && (one.terms ?? []).every(({ k }) => k === 'glue' || k === 'filler')),
      );
    return talk && marks.slice(end + 1).some(({ place }) => place !== undefined)
      ? { from: mark.from, to: mark.to, terms: [{ k: 'filler' }] }
      : mark;
  });
}

/** "good, upper left now": said of what was done before the pause; of the place behind it nothing was said. */
export function approved(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const at = marks.findIndex((mark) => mark.terms?.every(({ k }) => k === 'glue' || k === 'filler') !== true);
  const word = marks[at];
  const said =
    word?.terms?.some((t) => t.k === 'condition' && t.id === 'abnormality' && t.strength === 'absentSay') === true &&
    tokens[word.to - 1]?.ends === true &&
    approving.test(
      tokens
        .slice(word.from, word.to)
        .map(({ t }) => t)
        .join(' '),
    );
  return said && marks.slice(at + 1).some(({ place }) => place !== undefined)
    ? marks.map((mark, i): Mark => (i === at ? { from: mark.from, to: mark.to, terms: [{ k: 'filler' }] } : mark))
    : marks;
}

/** "he's fine", "she's grand now": how the horse is, and nothing of the mouth; with a place it is that ("he's fine on the left"). */
export const ofTheHorse = (marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] =>
  marks.some(({ place }) => place !== undefined)
    ? marks
    : marks.map((mark): Mark => {
        const [who, is] = [tokens[mark.from - 2]?.t ?? '', tokens[mark.from - 1]?.t ?? ''];
        const normal = mark.terms?.some((t) => t.k === 'condition' && t.id === 'abnormality' && t.strength === 'absentSay') === true;
        return normal && horse.has(who) && being.has(is) && approving.test(wordsOf(mark, tokens))
          ? { from: mark.from, to: mark.to, terms: [{ k: 'talk' }] }
          : mark;
      });
const horse: ReadonlySet<string> = new Set(['he', 'she', 'horse', 'pony', 'lad', 'mare', 'gelding']);
const being: ReadonlySet<string> = new Set(['is', 'was', 'looks', 'seems']);
const wordsOf = ({ from, to }: Mark, tokens: readonly Token[]): string =>
  tokens
    .slice(from, to)
    .map(({ t }) => t)
    .join(' ');

const isTalk = ({ unknown, terms }: Mark): boolean => unknown === true || terms?.some(({ k }) => k === 'talk') === true;
