/** "Recheck in six weeks, no, six months", "six, sorry, eight weeks": a time said again in place of the one before it. The last one counts. */
import { correctionSay } from '../lexicon/corrections.ts';
import { formAt, longestOf } from './forms.ts';
import { readNumber } from './numbers.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const units: ReadonlySet<string> = new Set(['day', 'week', 'fortnight', 'month', 'year'].flatMap((unit) => [unit, `${unit}s`]));
const markers = longestOf([[[...correctionSay, 'no'], true]]);
const leads: ReadonlySet<string> = new Set(['in', 'at', 'after', 'about', 'a', 'another', 'say']);

/** Where the number that begins here ends, and whether its unit of time stands behind it. */
function timeAt(tokens: readonly Token[], at: number): { readonly to: number; readonly unit: boolean } | undefined {
  const to = tokens[at]?.t === 'a' ? at + 1 : readNumber(tokens, at)?.to;
  if (to === undefined) return undefined;
  const unit = units.has(tokens[to]?.t ?? '');
  return { to: unit ? to + 1 : to, unit };
}

function lastTime(tokens: readonly Token[]): readonly Token[] {
  for (let at = 1; at < tokens.length - 2; at += 1) {
    const marker = formAt(markers, tokens, at);
    if (marker === undefined) continue;
    let next = at + marker.words.length;
    while (formAt(markers, tokens, next)) next += formAt(markers, tokens, next)?.words.length ?? 1;
    while (leads.has(tokens[next]?.t ?? '') && tokens[next]?.t !== 'a') next += 1;
    const said = timeAt(tokens, next);
    if (said?.unit !== true) continue;
    for (let from = Math.max(1, at - 4); from < at; from += 1) {
      const before = timeAt(tokens, from);
      if (before?.to === at && (before.unit || tokens[at - 1]?.ends) && leads.has(tokens[from - 1]?.t ?? ''))
        return [...tokens.slice(0, from), ...tokens.slice(next)];
    }
  }
  return tokens;
}

export const timeAgain: readonly Rewording[] = [{ rule: lastTime, needs: units }];
