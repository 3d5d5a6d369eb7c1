/** "Going back to two ten, there's a pocket", "stand back and look at him": where one looks from is no side of a tooth. */
import { backTo, wayRound as say } from '../lexicon/saidOfIt.ts';
import { readCodes } from './codes.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const forms = longestOf([
  [say, 'way' as const],
  [backTo, 'tooth' as const],
]);
const ofTooth: ReadonlySet<string> = new Set(['tooth', 'teeth', 'one', 'ones', 'molar', 'molars']);

/** At the start of a part, where more is said behind it. */
const withoutWay = (tokens: readonly Token[]): readonly Token[] => {
  const at = tokens.findIndex((_, i) => (i === 0 || tokens[i - 1]?.ends === true) && formAt(forms, tokens, i) !== undefined);
  const to = at + (formAt(forms, tokens, at)?.words.length ?? 0);
  const tooth = formAt(forms, tokens, at)?.means === 'tooth' && readCodes(tokens, to) === undefined;
  return at < 0 || to >= tokens.length || tooth || ofTooth.has(tokens[to]?.t ?? '')
    ? tokens
    : [...tokens.slice(0, at), ...tokens.slice(to)];
};

export const wayRound: readonly Rewording[] = [{ rule: withoutWay, needs: firstWords(forms) }];
