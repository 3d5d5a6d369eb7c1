/** "Your vet'll want to have a look at that", "I'd get a vet to check it": read as "vet to see". */
import { hasLooked, hasYetTo, looks, seenBy, vetSay } from '../lexicon/referring.ts';
import { formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import { endOfPart, plainly } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const vet = longestOf([[vetSay, true]]),
  yet = longestOf([[hasYetTo, true]]),
  has = longestOf([[hasLooked, true]]),
  look = longestOf([[looks, true]]),
  by = longestOf([[seenBy, true]]);

/** "last seen by the vet in spring" */
const seenThen: ReadonlySet<string> = new Set(['last', 'was', 'were', 'already', 'recently', 'been', 'had', 'being']);

function toSee(tokens: readonly Token[]): readonly Token[] {
  for (let at = 0; at < tokens.length; at += 1) {
    const passive = formAt(by, tokens, at);
    if (passive && !seenThen.has(tokens[at - 1]?.t ?? '') && at + passive.words.length <= endOfPart(tokens, at)) {
      const to = at + passive.words.length;
      return [...tokens.slice(0, at), ...plainly(tokens, at, to, ['for', 'the', 'vet']), ...tokens.slice(to)];
    }
    const who = formAt(vet, tokens, at);
    if (who === undefined) continue;
    const behind = at + who.words.length;
    const modal = formAt(yet, tokens, behind);
    const asked = formAt(has, tokens, at - 1) ?? formAt(has, tokens, at - 2);
    const verb = modal ? behind + modal.words.length : tokens[behind]?.t === 'to' ? behind + 1 : behind;
    const seen = modal || asked ? formAt(look, tokens, verb) : undefined;
    if (seen === undefined) continue;
    const to = verb + seen.words.length;
    if (to <= endOfPart(tokens, at)) return [...tokens.slice(0, at), ...plainly(tokens, at, to, ['vet', 'to', 'see']), ...tokens.slice(to)];
  }
  return tokens;
}

export const vetToSee: readonly Rewording[] = [{ rule: toSee, needs: ['vet', 'vets', 'veterinarian', 'veterinary'] }];
