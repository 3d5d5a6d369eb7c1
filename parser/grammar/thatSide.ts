/**
 * "the left masseter is tight and the joint on that side is sore", "the excursion is reduced to that side": the side of what was named last,
 * in this phrase or before it. With no one side to point to the words stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import { teenWords } from '../lexicon/numbers.ts';
import { standing, type Carry } from './carry.ts';
import { sideOf } from './follow.ts';
import { digit } from './numbers.ts';
import type { RawPlace } from './places.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

const which: ReadonlySet<string> = new Set(['that', 'same']);
const leads: ReadonlySet<string> = new Set(['on', 'to', 'at', 'in']);

/** Where "on that side", "on the same side" has its first word behind the small one that leads to it. */
function shownAt(tokens: readonly Token[]): number {
  for (let at = 1; at + 1 < tokens.length; at += 1) {
    if (!which.has(tokens[at]?.t ?? '') || tokens[at + 1]?.t !== 'side') continue;
    const from = tokens[at]?.t === 'same' && tokens[at - 1]?.t === 'the' ? at - 1 : at;
    // "an ulcer on the left cheek, only on that side" says no more; "the eleven on that side" is of the row as well.
    const before = tokens[from - 2]?.t ?? '';
    if (
      leads.has(tokens[from - 1]?.t ?? '') &&
      before !== 'only' &&
      before !== 'just' &&
      teenWords[before] === undefined &&
      digit(before) === undefined
    )
      return from;
  }
  return -1;
}

const sideOfRaw = ({ side, codes }: RawPlace): 'left' | 'right' | undefined =>
  codes ? sideOf({ teeth: [...codes] }) : side === 'left' || side === 'right' ? side : undefined;

export function thatSide(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const from = shownAt(tokens);
  if (from < 0) return tokens;
  const to = tokens[from]?.t === 'the' ? from + 3 : from + 2;
  const named = scan(tokens.slice(0, from)).marks.flatMap(({ place }) => (place && (place.side ?? place.codes) ? [place] : []));
  const last = named.at(-1);
  const before = standing(context, carry.last);
  const side = last ? sideOfRaw(last) : before && 'place' in before && before.place ? sideOf(before.place) : undefined;
  if (side === undefined) return tokens;
  const put = ['the', side, 'side'].map((t, i): Token => {
    const { word } = tokens[Math.min(from + i, to - 1)] as Token;
    return { t, word, carried: true, ...(i === 2 && tokens[to - 1]?.ends ? { ends: true as const } : {}) };
  });
  return thatSide([...tokens.slice(0, from), ...put, ...tokens.slice(to)], context, carry);
}
