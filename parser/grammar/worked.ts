/** What an ordinary word of work is said of: a thing by its name and where it is, or a tooth by its number. Found before the verb or behind it. */
import type { Handled } from '../lexicon/handling.ts';
import { describing, plainVerbs, workedOn, type Verb } from '../lexicon/plainWork.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

export type Tokens = readonly Token[];
/** What is worked on, from its article to the end of where it is. */
export interface Thing {
  readonly kind: Handled;
  readonly verb: Verb;
  readonly from: number;
  readonly to: number;
}

const nouns: ReadonlySet<string> = new Set(Object.keys(workedOn).flatMap((noun) => [noun, `${noun}s`]));
export const between: ReadonlySet<string> = new Set([
  'has',
  'have',
  'had',
  'been',
  'was',
  'were',
  'is',
  'are',
  'now',
  'just',
  'also',
  'all',
  'both',
  'easily',
  'nicely',
  'today',
  'got',
  'it',
  'only',
  'half',
  'way',
  'halfway',
  'partly',
  'being',
]);
export const particles: ReadonlySet<string> = new Set(['off', 'out', 'away', 'down', 'back', 'free']);
const links: ReadonlySet<string> = new Set(['on', 'at', 'in', 'of', 'the', 'to', 'and', 'from', 'his', 'her', 'side', 'up', 'there']);
export const NEAR = 7;

/** Asked at one word after the other, until it has something to say. */
export type Rule = (tokens: Tokens, at: number) => Tokens | undefined;
export const eachOnce = (rule: Rule, needs: Iterable<string>): Rewording => ({
  needs,
  rule: (tokens) => {
    for (let at = 0; at < tokens.length; at += 1) {
      const said = rule(tokens, at);
      if (said) return said;
    }
    return tokens;
  },
});

export const t = (tokens: Tokens, at: number): string => tokens[at]?.t ?? '';
export const ended = (tokens: Tokens, from: number, to: number): boolean => tokens.slice(from, to).some(({ ends }) => ends);
export const as = (said: string, { word, ends }: Token): Token => ({ t: said, word, ...(ends ? { ends } : {}) });
export const stops = (tokens: Tokens, at: number): boolean => at >= tokens.length || tokens[at - 1]?.ends === true;

/** The thing whose name, or what describes it, begins here. */
export function thingAt(tokens: Tokens, from: number): Thing | undefined {
  let at = from;
  while (describing.has(t(tokens, at)) && tokens[at]?.ends !== true) at += 1;
  const noun = t(tokens, at);
  const kind = workedOn[noun] ?? workedOn[noun.replace(/s$/, '')];
  const verb = kind && plainVerbs[kind];
  if (verb === undefined || kind === undefined || (kind === 'tooth' && t(tokens, at - 1) !== 'wolf')) return undefined;
  return { kind, verb, from, to: placed(tokens, at + 1) };
}
/** The same, or a tooth by its number. */
export function toothAt(tokens: Tokens, from: number): Thing | undefined {
  const [mark] = scan(tokens.slice(from, from + NEAR)).marks;
  return mark?.place?.codes !== undefined && mark.from === 0
    ? { kind: 'tooth', verb: plainVerbs.tooth as Verb, from, to: from + mark.to }
    : undefined;
}
/** Where the words of place that begin here end. */
function placed(tokens: Tokens, from: number): number {
  if (tokens[from - 1]?.ends) return from;
  const marks = scan(tokens.slice(from)).marks;
  let to = from;
  for (const mark of marks) {
    if (mark.place !== undefined) to = from + mark.to;
    else if (!tokens.slice(from + mark.from, from + mark.to).every((token) => links.has(token.t))) break;
    if (tokens[from + mark.to - 1]?.ends) break;
  }
  return to;
}
/** The thing that ends where this word begins, with nothing but small words or a size between. */
export function thingBefore(tokens: Tokens, at: number): Thing | undefined {
  for (let noun = at - 1; noun >= 0 && at - noun <= NEAR * 2; noun -= 1) {
    if (!nouns.has(t(tokens, noun))) continue;
    let from = noun;
    while (from > 0 && describing.has(t(tokens, from - 1)) && tokens[from - 1]?.ends !== true) from -= 1;
    const thing = thingAt(tokens, from);
    return thing && thing.to <= at && !ended(tokens, from, at) ? thing : undefined;
  }
  return undefined;
}
/** A tooth by its number is what was taken out. */
export function toothBefore(tokens: Tokens, at: number): Thing | undefined {
  const marks = scan(tokens.slice(0, at)).marks;
  const last = marks.at(-1);
  return last?.place?.codes !== undefined ? { kind: 'tooth', verb: plainVerbs.tooth as Verb, from: last.from, to: last.to } : undefined;
}
