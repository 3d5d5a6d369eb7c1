/**
 * "Wasted compared to the other one", "tighter than the right", "hypoplasia rather than caries": what it is compared with, or is not, has
 * nothing of what is said. Left out up to the pause, "and" or "but", where a name, a place or what stands for one is all that it holds.
 */
import { plainOf } from '../lexicon/modifiers.ts';
import type { Rewording } from './said.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const ends: ReadonlySet<string> = new Set(['and', 'but', 'so', 'because', 'with']);
const standsForOne: ReadonlySet<string> = new Set([
  'one',
  'ones',
  'other',
  'others',
  'rest',
  'side',
  'them',
  'behind',
  'next',
  'front',
  'above',
  'below',
]);
const small: ReadonlySet<string> = new Set(['the', 'its', 'that', 'of', 'in', 'on', 'it', 'his', 'her']);

/** Where the words of comparing that begin here end, and which marks may follow them. */
function comparing(tokens: readonly Token[], at: number): { readonly to: number; readonly fits: (mark: Mark) => boolean } | undefined {
  const [a, b] = [tokens[at]?.t, tokens[at + 1]?.t ?? ''];
  const place = (mark: Mark): boolean => mark.place !== undefined && !isHead(mark);
  if ((a === 'compared' || a === 'comparing') && (b === 'to' || b === 'with')) return { to: at + 2, fits: place };
  // "tighter than last year" compares no places.
  if (a === 'than' && plainOf[tokens[at - 1]?.t ?? ''] !== undefined) return { to: at + 1, fits: place };
  if (a === 'rather' && b === 'than') return { to: at + 2, fits: (mark) => isHead(mark) && mark.place === undefined };
  return undefined;
}

function without(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => i > 1 && comparing(tokens, i) !== undefined);
  const found = at < 0 ? undefined : comparing(tokens, at);
  if (found === undefined) return tokens;
  const pause = tokens.findIndex(({ ends: closes }, i) => i >= found.to && closes === true);
  const joint = tokens.findIndex(({ t }, i) => i > found.to && ends.has(t));
  const end = Math.min(pause < 0 ? tokens.length : pause + 1, joint < 0 ? tokens.length : joint);
  const said = tokens.slice(found.to, end);
  const held = scan(said).marks.filter((mark) => !isGlue(mark));
  const stands = said.some(({ t }) => standsForOne.has(t)) && said.every(({ t }) => standsForOne.has(t) || small.has(t));
  const only = stands || (held.length > 0 && held.every(found.fits));
  const { t, ...last } = tokens[at - 1] as Token;
  const closes = tokens[end - 1]?.ends === true;
  const before = [...tokens.slice(0, at - 1), { ...last, t: plainOf[t] ?? t, ...(closes ? { ends: true as const } : {}) }];
  // What is said before must hold a finding of its own.
  return only && scan(before).marks.some(isHead) ? [...before, ...tokens.slice(end)] : tokens;
}

export const comparedTo: readonly Rewording[] = [{ rule: without, needs: ['compared', 'comparing', 'rather', 'than'] }];
