/** "he's sore on that, look at his face": what shows it, behind what was said, is no place of it. */
import { isHead, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const look = /^(?:just )?(?:look at|see|watch) (?:his|her|the) (?:face|eye|eyes|ears|expression)$/;

function withoutLook(tokens: readonly Token[]): readonly Token[] {
  const from = tokens.slice(0, -1).findLastIndex(({ ends }) => ends === true) + 1;
  const said = tokens
    .slice(from)
    .map(({ t }) => t)
    .join(' ');
  return from > 0 && look.test(said) && scan(tokens.slice(0, from)).marks.some(isHead) ? tokens.slice(0, from) : tokens;
}

/** Less the look at the horse behind a finding. */
export const lookThere: readonly Rewording[] = [{ rule: withoutLook, needs: ['face', 'eye', 'eyes', 'ears', 'expression'] }];
