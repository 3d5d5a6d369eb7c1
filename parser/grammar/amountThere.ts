/**
 * "Reduced one oh six by two mil, two ten by three", "took two mil off one oh six and three off two ten", "... and off two ten": a second place with an
 * amount or a time of its own, or the same. Said again with its verb, so that neither takes the other's.
 */
import { lengthUnits } from '../lexicon/units.ts';
import { afterIn } from './followUps.ts';
import { isPlace, verbBefore } from './leftThere.ts';
import { first } from './lists.ts';
import { digit } from './numbers.ts';
import { endOfPart } from './saidPlainly.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

/** "reduce", as it is said when it is done. */
export const past = (verb: string): string => (verb.endsWith('e') ? `${verb}d` : `${verb}ed`);
const isNumber = (token: Token | undefined): boolean => token !== undefined && digit(token.t) !== undefined;
const lengths: ReadonlySet<string> = new Set(Object.values(lengthUnits).flat());
export const isUnit = (token: Token | undefined): boolean => token !== undefined && lengths.has(token.t);
const again = (t: string, { word }: Token): Token => ({ t, word, carried: true });
const unitBefore = (tokens: readonly Token[]): Token | undefined => tokens.findLast((token, i) => isUnit(token) && isNumber(tokens[i - 1]));

/** "..., two ten by three" */
function byMuch(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const before = tokens.slice(0, at);
  const verb = verbBefore(before);
  const unit = unitBefore(before);
  if (verb === undefined || unit === undefined || !before.some(({ t }) => t === 'by')) return undefined;
  const by = tokens.findIndex(({ t }, i) => i > at && t === 'by');
  if (by < 0 || by > endOfPart(tokens, at) || !isPlace(tokens.slice(at, by)) || !isNumber(tokens[by + 1])) return undefined;
  const number = tokens[by + 1] as Token;
  const mil = isUnit(tokens[by + 2]) ? [] : [{ ...again(unit.t, number), ends: number.ends }];
  return [
    again(past(verb), tokens[at] as Token),
    ...tokens.slice(at, by + 1),
    { ...number, ends: mil.length > 0 ? undefined : number.ends },
    ...mil,
    ...tokens.slice(by + 2),
  ];
}

/** "... and three off two ten", "... and off two ten" */
function offThere(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const before = tokens.slice(0, at);
  const unit = unitBefore(before);
  const off = before.findLastIndex(({ t }, i) => t === 'off' && (before[i - 1] === unit || before[i - 2] === unit));
  if (unit === undefined || off < 0) return undefined;
  const number = isNumber(tokens[at]) ? at : undefined;
  const own = number === undefined ? at : isUnit(tokens[at + 1]) ? at + 2 : at + 1;
  if (tokens[own]?.t !== 'off' || !isPlace(tokens.slice(own + 1, endOfPart(tokens, own + 1)))) return undefined;
  const [much] = number === undefined ? before.slice(before.lastIndexOf(unit) - 1) : [tokens[number]];
  const place = tokens[own] as Token;
  return [
    again('took', place),
    ...(number === undefined ? [again((much as Token).t, place)] : [tokens[number] as Token]),
    ...(own === at + 2 ? [tokens[at + 1] as Token] : [again(unit.t, place)]),
    ...tokens.slice(own),
  ];
}

function amountThere(tokens: readonly Token[]): readonly Token[] {
  return (
    first(tokens, ({ t }, i) => {
      if (i < 3 || !(t === 'and' || tokens[i - 1]?.ends === true)) return undefined;
      const at = t === 'and' ? i + 1 : i;
      const told = byMuch(tokens, at) ?? offThere(tokens, at);
      return told && [...tokens.slice(0, i - 1), { ...(tokens[i - 1] as Token), ends: true as const }, ...told];
    }) ?? tokens
  );
}

/** "rasped the upper right then the lower left": one behind the other is both. */
function thenThere(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => t === 'then');
  if (at < 2 || tokens[at - 1]?.ends || !isPlace(tokens.slice(at + 1)) || verbBefore(tokens.slice(0, at)) === undefined) return tokens;
  return tokens.map((token, i) => (i === at ? { ...token, t: 'and' } : token));
}

const looks = /\b(?:re ?check|check|see|look at|review)\b/;
/** "recheck one oh six in six months, three oh nine in a year": a second place with a time of its own. */
function timeThere(tokens: readonly Token[]): readonly Token[] {
  return (
    first(tokens, ({ t }, i) => {
      if (i < 4 || !(t === 'and' || tokens[i - 1]?.ends === true)) return undefined;
      const at = t === 'and' ? i + 1 : i;
      const before = tokens.slice(0, i);
      const end = endOfPart(tokens, at);
      const when = tokens.findIndex(({ t: word }, k) => k > at && k < end && word === 'in');
      if (when < 0 || !looks.test(before.map((one) => one.t).join(' ')) || !isPlace(tokens.slice(at, when))) return undefined;
      if (afterIn(before) === undefined || afterIn(tokens.slice(when, end)) === undefined || end - when > 4) return undefined;
      return [
        ...tokens.slice(0, i - 1),
        { ...(tokens[i - 1] as Token), ends: true as const },
        again('recheck', tokens[at] as Token),
        ...tokens.slice(at),
      ];
    }) ?? tokens
  );
}

export const amountsThere: readonly Rewording[] = [
  { rule: amountThere, needs: ['by', 'off'] },
  { rule: thenThere, needs: ['then'] },
  { rule: timeThere, needs: ['month', 'months', 'week', 'weeks', 'year', 'years'] },
];
