/**
 * "hook on one oh six, no two oh six", "ulcer right cheek no left": a "no" with no pause behind it, between a finding and another
 * place, rules the finding out there or takes back where it was. Words cannot tell, so both readings are offered. A pause or a
 * word of taking back ("no, left", "no sorry left") says which: that is self-correction's work.
 */
import { correctionSay } from '../lexicon/corrections.ts';
import { either } from './either.ts';
import type { Reading } from './read.ts';
import type { Way } from './said.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import { tokenise, type Token } from './tokens.ts';

/** What follows a "no" that takes back: "no sorry ...", "no the right". */
const takingBack: readonly (readonly string[])[] = [...correctionSay.filter((form) => form.startsWith('no ')), 'no the'].map((form) =>
  form.split(' '),
);

/** @returns the word behind which a pause would have told, if there is one, and how it would be said if it rules out */
export function bareNo(tokens: readonly Token[]): { readonly word: number; readonly ruledOut: string } | undefined {
  const at = tokens.findIndex(
    ({ t, ends }, i) => t === 'no' && i > 0 && !ends && !takingBack.some((form) => form.every((word, k) => tokens[i + k]?.t === word)),
  );
  const said = at < 0 ? [] : scan(tokens.slice(0, at)).marks.filter(isHead);
  if (said.length === 0) return undefined;
  const after = scan(tokens.slice(at + 1)).marks.filter((mark) => !isGlue(mark));
  const [next, behind] = after;
  // "no lower left ramps" rules out something else; of a tooth, or with the same name again, it may be either.
  const either =
    next?.place !== undefined &&
    !isHead(next) &&
    (next.place.codes !== undefined || !isHead(behind) || said.some((mark) => nameOf(mark) === nameOf(behind)));
  return either ? { word: (tokens[at] as Token).word, ruledOut: isHead(behind) ? 'no' : 'none on' } : undefined;
}

/** @returns what is left of "no no hook on one oh six" without the first, where a finding comes right behind the second */
function noNo(tokens: readonly Token[]): readonly Token[] | undefined {
  if (tokens[0]?.t !== 'no' || tokens[1]?.t !== 'no' || tokens[1].ends) return undefined;
  return isHead(scan(tokens.slice(2)).marks.find((mark) => !isGlue(mark))) ? tokens.slice(1) : undefined;
}

const nameOf = (mark: Mark | undefined): string | undefined => mark?.terms?.flatMap((t) => (t.k === 'condition' ? [t.id] : []))[0];

/** Both readings of it, neither taken. */
function noOrBack(ruledOut: Reading, takenBack: Reading, word: number): Reading {
  const from = ruledOut.marks.findIndex((mark) => ruledOut.tokens[mark.from]?.word === word);
  const to = ruledOut.marks.findIndex(({ place }, m) => m > from && place !== undefined);
  const asked = either(
    ruledOut,
    takenBack,
    'a place behind a bare no',
    ruledOut.marks.flatMap((_, m) => (m >= from && m <= to ? [m] : [])),
  );
  return asked === ruledOut ? ruledOut : { ...asked, takenBack: [...ruledOut.takenBack, word] };
}

/** "no, no hook on one oh six": the first is an answer. Behind something recorded, with no pause, both may take it back. */
export const answered: Way = (tokens, { once, again, fresh }) => {
  const second = noNo(tokens);
  if (second === undefined) return undefined;
  return fresh || tokens[0]?.ends ? again(second) : noOrBack(once(second), once(tokens), tokens[0]?.word ?? 0);
};

export const ruledOutOrBack: Way = (tokens, { once }) => {
  const no = bareNo(tokens);
  return no && noOrBack(once(saidAs(tokens, no.word, no.ruledOut)), once(saidAs(tokens, no.word, 'no,')), no.word);
};

/** With another word for a "no" or a "not". */
export const saidAs = (tokens: readonly Token[], word: number, as: string): readonly Token[] =>
  tokens.flatMap((token) =>
    token.word === word && (token.t === 'no' || token.t === 'not') ? tokenise([as]).map((one) => ({ ...one, word })) : token,
  );
