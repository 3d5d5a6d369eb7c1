/** "Flushed the socket", "socket's clean": behind a tooth taken out today the socket is where that tooth was, and no older one was found. */
import type { Context } from '../contract/draft.ts';
import { itself } from './pointing.ts';
import type { Token } from './tokens.ts';

const sockets: ReadonlySet<string> = new Set(['socket', 'sockets']);
const before: ReadonlySet<string> = new Set(['the', 'his', 'her', 'that', 'those', 'both', 'empty']);

const packing: ReadonlySet<string> = new Set(['packed', 'plugged', 'filled', 'pack']);

export function socketOf(tokens: readonly Token[], { items }: Context): readonly Token[] {
  const at = tokens.findIndex(({ t }) => sockets.has(t));
  const taken = items.findLast(
    (item) => item.kind === 'treatment' && item.procedure === 'extract' && (item.state === 'done' || item.state === 'attempted'),
  );
  const place = taken && 'place' in taken && taken.place ? itself(taken.place) : undefined;
  const noun = tokens[at];
  if (noun === undefined || place === undefined || ['of', 'on', 'at'].includes(tokens[at + 1]?.t ?? '')) return tokens;
  let from = at;
  while (before.has(tokens[from - 1]?.t ?? '')) from -= 1;
  // "packed the socket with a swab" names what was packed.
  if (packing.has(tokens[from - 1]?.t ?? '')) return tokens;
  const heard = tokens.slice(from, at + 1).map(({ word }) => word);
  const where = place.map((t): Token => ({ t, word: noun.word, heard, carried: true }));
  const last = where.at(-1) as Token;
  return [...tokens.slice(0, from), ...where.slice(0, -1), noun.ends ? { ...last, ends: true } : last, ...tokens.slice(at + 1)];
}
