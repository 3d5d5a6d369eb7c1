/**
 * "Hook on one oh six, that should be two oh six", "..., no, wrong side": a finding and, behind a pause, what would put it right in a
 * phrase of its own. It is read as that phrase would be; of one breath only the corrected finding is kept.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { corrects } from './amend.ts';
import type { Carry } from './carry.ts';
import { contrasted } from './contrast.ts';
import { followed } from './follow.ts';
import { where } from './lists.ts';
import type { Reading } from './read.ts';
import { isGlue } from './scan.ts';
import type { Token } from './tokens.ts';

/** How many words put it right at most. */
const LONGEST = 9;
/** Words of which one stands in what puts right; looked for first. */
const turning: ReadonlySet<string> = new Set([
  ...['wrong', 'should', 'really', 'instead', 'meant', 'mean', 'sorry', 'actually', 'rather', 'wait', 'hang', 'hold', 'mistake'],
]);
/** The finding said before the pause, while this breath is read. */
const SAID = 'said before the pause';

export function putRight(
  tokens: readonly Token[],
  context: Context,
  carry: Carry,
  read: (tokens: readonly Token[], context: Context, carry: Carry) => Reading,
): Reading | undefined {
  for (const at of where(tokens, ({ ends }, i) => ends === true && i + 1 < tokens.length && i + 1 >= tokens.length - LONGEST)) {
    const [before, behind] = [tokens.slice(0, at + 1), tokens.slice(at + 1)];
    if (!behind.some(({ t }) => turning.has(t))) continue;
    const [one, ...more] = read(before, context, carry).made;
    if (one?.body?.kind !== 'finding' || one.body.place === null || one.revises || one.doubts.length > 0 || more.length > 0) continue;
    const item = { ...one.body, id: SAID, how: {}, evidence: {} } as unknown as Item;
    const there = { ...context, items: [...context.items, item] };
    const last = { ...carry, half: undefined, last: SAID, lastItems: [SAID] };
    const reached = contrasted(behind, there, last);
    const again = reached
      ? read(reached.tokens, there, reached.carry)
      : (followed(behind, there, last, (words, now) => read(words, there, now)) ??
        (corrects(behind) ? read(behind, there, last) : undefined));
    const [put, ...others] = again?.made ?? [];
    if (again === undefined || put?.revises?.id !== SAID || others.length > 0) continue;
    // What is told and is no part of the correction is not lost: then it is no phrase of this kind.
    if (!again.marks.every((mark, m) => put.marks.includes(m) || isGlue(mark) || mark.terms?.every(({ k }) => k === 'filler'))) continue;
    const heard = [...new Set(before.map(({ word }) => word))];
    return {
      ...again,
      tokens: again.tokens.map((token, i): Token => (i === 0 ? { ...token, heard: [...heard, ...(token.heard ?? [token.word])] } : token)),
      made: [{ ...put, revises: undefined, rules: one.rules, how: one.how, marks: again.marks.map((_, m) => m) }],
    };
  }
  return undefined;
}
