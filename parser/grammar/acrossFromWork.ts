/**
 * "Hook on one oh six", "took it down", "none on the left", "bit bigger on the other side": who treats at once goes on about what was found, and the
 * work between says nothing of the other side.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { acrossWords } from '../lexicon/sides.ts';
import { standing, type Carry } from './carry.ts';
import { isHead, scan } from './scan.ts';
import type { Token } from './tokens.ts';

const across: ReadonlySet<string> = new Set(acrossWords);

/** @returns what the phrase leans on: the finding that was worked on, where only a side and how it is there are said */
export function acrossFromWork(tokens: readonly Token[], context: Context, carry: Carry): Carry {
  const last = standing(context, carry.last);
  if (last?.kind !== 'treatment' || !['done', 'part-done'].includes(last.state) || !tokens.some(({ t }) => across.has(t))) return carry;
  const [first] = tokens;
  if (first === undefined || first.t === 'same' || !isOfTheSide(tokens)) return carry;
  const found = context.items.findLast((item) => isAt(item, last));
  return found ? { ...carry, last: found.id, lastItems: [found.id] } : carry;
}

const isAt = (item: Item, { place }: Item & { kind: 'treatment' }): boolean =>
  item.kind === 'finding' && item.presence !== 'absent' && place !== null && JSON.stringify(item.place) === JSON.stringify(place);

/** A side alone: no tooth, no part of the mouth, nothing found or done by name. */
const isOfTheSide = (tokens: readonly Token[]): boolean =>
  scan(tokens).marks.every(
    (mark) =>
      !isHead(mark) &&
      (mark.place === undefined || (mark.place.codes ?? mark.place.positions ?? mark.place.region ?? mark.place.row) === undefined),
  );
