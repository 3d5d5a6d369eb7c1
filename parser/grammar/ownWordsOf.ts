/** The words of which one stands in whatever some patterns tell: those of the patterns that are not the trade's own, nor small, nor numbers. */
import { conditions } from '../lexicon/conditions.ts';
import { glue } from '../lexicon/fillers.ts';
import { digitWords, teenWords } from '../lexicon/numbers.ts';
import type { ConditionEntry } from '../lexicon/types.ts';

const wordsIn = (forms: readonly string[]): readonly string[] => forms.flatMap((form) => form.match(/[a-z']+/g) ?? []);
const others: ReadonlySet<string> = new Set([
  ...glue,
  ...Object.keys(digitWords),
  ...Object.keys(teenWords),
  ...wordsIn(
    Object.values(conditions as Readonly<Record<string, ConditionEntry>>).flatMap(({ say, withPlace = [] }) => [...say, ...withPlace]),
  ),
]);
/** What a pattern must not see names nothing of its own: "(?!.* hook)". */
const unseen = /\(\?<?!(?:[^()]|\((?:[^()]|\([^()]*\))*\))*\)/g;

/** @param kept words of the trade that tell it all the same */
export const ownWordsOf = (patterns: readonly string[], kept: readonly string[]): ReadonlySet<string> =>
  new Set([...wordsIn(patterns.map((one) => one.replace(unseen, ''))).filter((word) => !others.has(word)), ...kept]);
