/** What comes next: until when there is to be no bit, when somebody is back, what was told. "Keep the bit out till that corner's healed". */
import { bitBackOnce, feedOnly, noBitUntil, thatIsIn, toldBare, toldOfIt, toldPassive } from '../lexicon/advising.ts';
import { afterIn } from './followUps.ts';
import { codesIn } from './has.ts';
import { first } from './lists.ts';
import type { Made } from './made.ts';
import { partsOf } from './pauses.ts';
import type { Mark } from './scan.ts';
import { ownWords, type Token } from './tokens.ts';
import type { WorkRule } from './work.ts';

const told = [toldOfIt, toldPassive, toldBare, feedOnly];

const oneOf = (body: Made['body'], marks: readonly Mark[], rule: string): readonly Made[] =>
  body === undefined ? [] : [{ body, marks: marks.map((_, m) => m), rules: [rule], doubts: [] }];

const toldTo = /\b(?:told|asked|advised|reminded|shown)\b(?: \w+)* to /;
/** "told her the wolf teeth should come out": work, and no advice. */
const ofWork = /\b(?:come out|coming out|be out|taken out|extract\w*|pulled|rasp\w*|float\w*|sedat\w*|reduced?|to go|need out|needs out)\b/;
/** Until when there is to be no bit, whatever is to heal. */
export function restUntil(marks: readonly Mark[], tokens: readonly Token[]): readonly Made[] {
  const text = ownWords(tokens).join(' ');
  // "rider's been told to leave the bit out until he heals": advice, in its own words.
  if (toldTo.test(text)) return [];
  const said = first([noBitUntil, bitBackOnce], (form) => form.exec(text)?.groups?.['after']);
  if (said === undefined) return [];
  const after = afterIn(tokens);
  return oneOf(
    { kind: 'follow-up', action: 'rest-from-bit', after: after && !('said' in after) ? after : { said } },
    marks,
    'what comes next',
  );
}

export function adviceIn(marks: readonly Mark[], tokens: readonly Token[], forms: readonly RegExp[]): readonly Made[] {
  const words = ownWords(tokens).join(' ');
  const text = codesIn(marks) ? undefined : first(forms, (form) => form.exec(words)?.groups?.['text']);
  return text === undefined ? [] : oneOf({ kind: 'follow-up', action: 'advise-owner', text }, marks, 'advice to the owner');
}

export function backThen(marks: readonly Mark[], tokens: readonly Token[]): readonly Made[] {
  const after = thatIsIn.test(tokens.map(({ t }) => t).join(' ')) ? afterIn(tokens) : undefined;
  return after === undefined ? [] : oneOf({ kind: 'follow-up', action: 'recheck', after }, marks, 'what comes next');
}

/** Before the other rules of what comes next. */
export const saidNext: WorkRule = (marks, tokens) => (partsOf(tokens).length === 1 ? restUntil(marks, tokens) : []);
/** Behind them: what was told to whoever keeps the horse. */
export const toldNext: WorkRule = (marks, tokens) =>
  partsOf(tokens).length === 1 && !ofWork.test(tokens.map(({ t }) => t).join(' ')) ? adviceIn(marks, tokens, told) : [];
