/** "I've floated him with the power float and he didn't mind it", "rinsed him out so you can see": how the horse bore the work is told as behind a pause, and who is to see is no part of it. */
import { boreIt, soYouCanSee } from '../lexicon/talkBeside.ts';
import type { Rewording } from './said.ts';
import { endOfPart } from './saidPlainly.ts';
import { scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const isWork = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') === true;
const tells = ({ terms, place, measure }: Mark): boolean =>
  place !== undefined || measure !== undefined || terms?.some(({ k }) => k === 'condition' || k === 'work') === true;
const textFrom = (tokens: readonly Token[], at: number): string =>
  tokens
    .slice(at, at + 6)
    .map(({ t }) => t)
    .join(' ');

function besideWork(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) =>
      i > 0 && ((t === 'and' && boreIt.test(textFrom(tokens, i + 1))) || (t === 'so' && soYouCanSee.test(textFrom(tokens, i + 1)))),
  );
  const from = tokens.slice(0, Math.max(at - 1, 0)).findLastIndex(({ ends }) => ends === true) + 1;
  if (at < 0 || !scan(tokens.slice(from, at)).marks.some(isWork)) return tokens;
  const paused = tokens.slice(0, at).map((token, i) => (i === at - 1 ? { ...token, ends: true as const } : token));
  if (tokens[at]?.t === 'and') return [...paused, ...tokens.slice(at)];
  const end = endOfPart(tokens, at);
  return scan(tokens.slice(at, end)).marks.some(tells) ? tokens : [...paused, ...tokens.slice(end)];
}

export const howHeBoreIt: readonly Rewording[] = [{ rule: besideWork, needs: ['and', 'so'] }];
