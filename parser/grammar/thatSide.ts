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

const others: ReadonlySet<string> = new Set(['other', 'opposite']);
const turned = { left: 'right', right: 'left' } as const;
/** "ulcer on the left cheek, none on the other side": of a part that this phrase named on one side, the other. Teeth have a rule of their own. */
function otherSide(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => i > 0 && others.has(t) && tokens[i + 1]?.t === 'side' && tokens[i + 2]?.t !== 'of');
  const last = at < 0 ? undefined : scan(tokens.slice(0, at)).marks.findLast(({ place }) => place !== undefined)?.place;
  const side = last?.region !== undefined && last.codes === undefined ? last.side : undefined;
  if (side !== 'left' && side !== 'right') return tokens;
  const the = tokens[at - 1]?.t === 'the';
  const { word } = tokens[at] as Token;
  const put: Token = { t: turned[side], word, carried: true, ...(tokens[at + 1]?.ends ? { ends: true as const } : {}) };
  return [...tokens.slice(0, at), ...(the ? [] : [{ t: 'the', word, carried: true as const }]), put, ...tokens.slice(at + 2)];
}

/** "a smell from that same nostril": the side of the part that was named last. */
function thatPart(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const at = tokens.findIndex(({ t }) => which.has(t));
  const noun = tokens[at + 1]?.t === 'same' ? at + 2 : at + 1;
  const last = at < 0 ? undefined : standing(context, carry.last);
  const place = last && 'place' in last ? last.place : undefined;
  const part =
    place && 'region' in place && (place.side === 'left' || place.side === 'right')
      ? scan(tokens.slice(noun, noun + 3)).marks[0]?.place
      : undefined;
  return part?.region !== undefined && part.side === undefined && place && 'region' in place && part.region === place.region
    ? [
        ...tokens.slice(0, noun),
        { t: place.side as string, word: (tokens[noun] as Token).word, carried: true as const },
        ...tokens.slice(noun),
      ]
    : tokens;
}

export function thatSide(said: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const tokens = otherSide(thatPart(said, context, carry));
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
