/** "Been round again with my fingers, all smooth now", "what I could get to is all smooth now": how far it was felt says nothing else than that it was, and smooth is what was felt. */
import { asFarAs, feltRound, smoothThere } from '../lexicon/history.ts';
import type { Rewording } from './said.ts';
import { endOfPart } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const textOf = (tokens: readonly Token[]): string => tokens.map(({ t }) => t).join(' ');

function smoothAlone(tokens: readonly Token[]): readonly Token[] {
  const part = endOfPart(tokens, 0);
  const felt = feltRound.test(textOf(tokens.slice(0, part)));
  const to = felt ? part : (asFarAs.exec(textOf(tokens))?.[0].trim().split(' ').length ?? 0);
  const rest = tokens.slice(to);
  if (to === 0 || !smoothThere.test(textOf(rest))) return tokens;
  // Round again is behind the work; "all the way" says no more.
  const now = rest.some(({ t }) => t === 'now') || (felt && tokens.slice(0, to).some(({ t }) => t === 'again'));
  const at = rest.findIndex(({ t }) => t === 'smooth');
  return [...rest.slice(0, at + 1).filter(({ t }) => t !== 'now'), ...(now ? [{ t: 'now', word: (rest[at] as Token).word }] : [])];
}

export const feltSmooth: readonly Rewording[] = [{ rule: smoothAlone, needs: ['smooth'] }];
