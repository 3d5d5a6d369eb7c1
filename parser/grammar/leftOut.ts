/** What is left out, said another way round: "floated everything, left the lower left alone", "everything but not the lower left", "no caries apart from grade two at one oh nine". */
import { readCodes } from './codes.ts';
import { digit } from './numbers.ts';
import { isGlue, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

const text = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const wholes: ReadonlySet<string> = new Set(['everything', 'lot', 'whole', 'mouth', 'all']);
const prepositions: ReadonlySet<string> = new Set(['on', 'at', 'in', 'of']);

/** Of work on the whole mouth a part that was left alone is not one more piece of work. */
function fromTheWhole(tokens: readonly Token[]): readonly Token[] {
  const whole = tokens.findIndex(({ t }) => wholes.has(t));
  if (whole < 0 || !tokens.slice(0, whole).some(({ t }) => didWords.has(t))) return tokens;
  const at = tokens.findIndex(
    ({ t }, i) =>
      i > whole &&
      ((t === 'not' && text(tokens, i - 1) === 'but') || (t === 'left' && ['the', 'his', 'her'].includes(text(tokens, i + 1)))),
  );
  if (at < 0) return tokens;
  const alone = text(tokens, at) === 'left' ? tokens.findIndex(({ t }, i) => i > at && t === 'alone') : tokens.length;
  if (alone < 0 || alone < tokens.length - 1) return tokens;
  const marks = scan(tokens.slice(at + 1, alone)).marks.filter((mark) => !isGlue(mark));
  if (marks.length === 0 || marks.some(({ place }) => place === undefined)) return tokens;
  return tokens.flatMap((token, i) =>
    i === at ? [{ ...token, t: 'except' }] : i === alone || (i === at - 1 && token.t === 'but') ? [] : [token],
  );
}

/** The grade is of what is left out, not of what was ruled out. */
function gradeBehind(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) =>
      (t === 'grade' || t === 'stage') &&
      (['except', 'bar', 'but'].includes(text(tokens, i - 1)) || (text(tokens, i - 1) === 'from' && text(tokens, i - 2) === 'apart')) &&
      digit(text(tokens, i + 1)) !== undefined &&
      prepositions.has(text(tokens, i + 2)),
  );
  const place = at < 0 ? undefined : readCodes(tokens, at + 3);
  return place === undefined
    ? tokens
    : [...tokens.slice(0, at), ...tokens.slice(at + 3, place.to), ...tokens.slice(at, at + 2), ...tokens.slice(place.to)];
}

/** "Except" before what is left out. */
export const leftOut: readonly Rewording[] = [
  { rule: fromTheWhole, needs: wholes },
  { rule: gradeBehind, needs: ['grade', 'stage'] },
];
