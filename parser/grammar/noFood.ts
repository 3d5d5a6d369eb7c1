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
    if (!fodder.has(token.t) || token.ends || !prepositions.has(lead)) return [token];
    // "there's feed in three oh nine three ten": what is there is said of a gap by its numbers.
    if (!none.has(tokens[at - 1]?.t ?? ''))
      return (readCodes(tokens, at + 2)?.raw.codes?.length ?? 0) > 1 ? [token, { t: 'packed', word: token.word }] : [token];
    const place = formAt(there, tokens, at + 2)?.means ?? (readCodes(tokens, lead === 'between' ? at + 1 : at + 2) ? 'packed' : undefined);
    return place === undefined ? [token] : [token, { t: place, word: token.word }];
  });
}

const ofMany = longestOf([
  [
    [
      '(both|either|each|all|any|neither|them) [of (them|these|those)]',
      '(the|all) (both|pair|two|three|lot) [of (them|these|those)]',
      'them both',
      'every one [of them]',
    ],
    true,
  ],
]);
/** "two gaps, and there's feed in both": of all that were named, and no place of its own. */
function inThem(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t, ends }, i) => fodder.has(t) && !ends && tokens[i + 1]?.t === 'in');
  const many = at < 0 ? undefined : formAt(ofMany, tokens, at + 2);
  const last = many && tokens[at + 1 + many.words.length];
  const to = at + 2 + (many?.words.length ?? 0);
  return last && (last.ends || to === tokens.length || ['and', 'but'].includes(tokens[to]?.t ?? ''))
    ? [...tokens.slice(0, at + 1), { ...last, t: 'packed', word: (tokens[at + 1] as Token).word }, ...tokens.slice(to)]
    : tokens;
}

export const noFood: readonly Rewording[] = [
  { rule: inThem, needs: fodder },
  { rule: named, needs: fodder },
];
