/** "Near side", "the off upper six": the horse's left and right by the horseman's names, put as left and right before anything is read. */
import { horsemansSides, sidedNouns, sideNouns } from '../lexicon/sides.ts';
import { jawSay } from '../lexicon/quarters.ts';
import { digit } from './numbers.ts';
import { isOh, type Token } from './tokens.ts';

const sides = new Map(Object.entries(horsemansSides));
const nouns: ReadonlySet<string> = new Set(sideNouns);
const sided: ReadonlySet<string> = new Set(sidedNouns);
const jaws: ReadonlySet<string> = new Set(Object.keys(jawSay));
const takingBack: ReadonlySet<string> = new Set(['mean', 'meant', 'sorry', 'correction', 'rather', 'no']);
const turns: ReadonlySet<string> = new Set(['and', 'or', 'not', 'mean', 'meant', 'no', 'sorry', 'correction', 'rather', 'that', 'both']);

/** @returns the same list where neither is said; what was said stays with each word */
export function nearSideIsLeft(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(({ t }) => sides.has(t))) return tokens;
  const word = (at: number): string => tokens[at]?.t ?? '';
  /** Says itself that it is a side. */
  const plain = (at: number): boolean =>
    sides.has(word(at)) &&
    (word(at).endsWith('side') ||
      (nouns.has(word(at + 1)) && tokens[at]?.ends !== true) ||
      (sided.has(word(at + 1)) && tokens[at]?.ends !== true && !codeAt(tokens, at + 1) && (opens(tokens, at) || jaws.has(word(at - 1)))));
  const named = tokens.map((_, at) => plain(at));
  // Beside one that is a side: "near and off", "the off six, I mean near".
  const beside = (at: number): boolean =>
    sides.has(word(at)) &&
    (turns.has(word(at - 1)) || turns.has(word(at + 1)) || at === 0) &&
    (at + 1 === tokens.length || tokens[at]?.ends === true || turns.has(word(at + 1)));
  const pair = tokens.some((_, at) => beside(at) && word(at + 1) === 'and' && beside(at + 2));
  const alone =
    tokens.some(({ t }) => takingBack.has(t)) && tokens.every(({ t }) => sides.has(t) || takingBack.has(t) || t === 'i' || t === 'the');
  const any = pair || alone || named.some(Boolean);
  return tokens.map((token, at) => {
    const side = sides.get(token.t);
    return side !== undefined && (named[at] || (any && beside(at))) ? { ...token, t: side, said: token.t } : token;
  });
}

/** "the near six", "near upper six" to begin with: nothing before it that takes off or comes near. */
const opens = (tokens: readonly Token[], at: number): boolean =>
  at === 0 || tokens[at - 1]?.ends === true || ['the', 'his', 'her', 'on', 'in', 'both'].includes(tokens[at - 1]?.t ?? '');
/** "off six oh seven": a tooth by its whole number. */
const codeAt = (tokens: readonly Token[], at: number): boolean => {
  const next = tokens[at + 1]?.t ?? '';
  return digit(tokens[at]?.t ?? '') !== undefined && (isOh(next) || next === 'zero' || next === 'ten' || next === 'eleven');
};
