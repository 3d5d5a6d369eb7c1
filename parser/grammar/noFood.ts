/** "no food in that one", "no hay in the cheeks": beside a gap, a tooth or a cheek the fodder alone says what was looked for there. */
import { readCodes } from './codes.ts';
import { formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const fodder: ReadonlySet<string> = new Set(['food', 'feed', 'hay', 'haylage', 'grass']);
const none: ReadonlySet<string> = new Set(['no', 'any', 'without']);
const prepositions: ReadonlySet<string> = new Set(['in', 'at', 'between', 'round', 'around', 'under', 'behind']);
const there = longestOf([
  [
    [
      '[the|this|that|his|her|either|both|each|any] (gap|gaps|space|spaces|pocket|pockets|socket|sockets)',
      '(it|them|there|either|between)',
      '(this|that) one',
      '(either|any|both|each) of (them|these|those)',
    ],
    'packed',
  ],
  [['[the|his|her|either|both|each|left|right] [left|right] (cheek|cheeks)'], 'pouching'],
]);

function named(tokens: readonly Token[]): readonly Token[] {
  return tokens.flatMap((token, at) => {
    const lead = tokens[at + 1]?.t ?? '';
    if (!fodder.has(token.t) || token.ends || !none.has(tokens[at - 1]?.t ?? '') || !prepositions.has(lead)) return [token];
    const place = formAt(there, tokens, at + 2)?.means ?? (readCodes(tokens, lead === 'between' ? at + 1 : at + 2) ? 'packed' : undefined);
    return place === undefined ? [token] : [token, { t: place, word: token.word }];
  });
}

export const noFood: readonly Rewording[] = [{ rule: named, needs: fodder }];
