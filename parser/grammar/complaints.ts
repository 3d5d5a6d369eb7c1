/** "He's slow eating his hay, takes half the night over a net", "his breath's been bad since the new year": read as what the trade calls it. */
import {
  askedBehindIt,
  asksOfIt,
  complaintKept,
  complaints,
  endedTimes,
  notTheHorse,
  ongoing,
  stillGoesOn,
} from '../lexicon/complaints.ts';
import { first } from './lists.ts';
import type { Rewording } from './said.ts';
import { endOfPart, plainly } from './saidPlainly.ts';
import { ownWordsOf } from './ownWordsOf.ts';
import { partsOf } from './pauses.ts';
import type { Token } from './tokens.ts';

const forms = complaints.map(({ plain, say }) => ({
  plain: plain.split(' '),
  form: new RegExp(`(?<=^| )(?:${say.map((one) => `(?:${one})`).join('|')})(?= |$)`),
}));
const goesOn = new RegExp(`^${ongoing}`);
const strong = ownWordsOf(
  complaints.flatMap(({ say }) => say),
  complaintKept,
);
const words: readonly string[] = [...strong];

/** "she was quidding over the winter": then, and no more. */
const over = /\b(?:was|were|had|used to)\b/;
const count = (text: string): number => (text.trim() === '' ? 0 : text.trim().split(' ').length);

function plainPart(part: readonly Token[]): readonly Token[] {
  if (!part.some(({ t }) => strong.has(t))) return part;
  const text = part.map(({ t }) => t).join(' ');
  const put = first(forms, ({ plain, form }) => {
    const hit = form.exec(text);
    if (hit === null || notTheHorse.test(text.slice(0, hit.index).trim()) || asksOfIt.test(text)) return undefined;
    const behind = text.slice(hit.index + hit[0].length);
    if (askedBehindIt.test(behind)) return undefined;
    const from = count(text.slice(0, hit.index));
    const then = over.test(text.slice(0, hit.index));
    const to = from + count(hit[0] + (then ? '' : (goesOn.exec(behind)?.[0] ?? '')));
    return [...part.slice(0, from), ...plainly(part, from, to, plain), ...part.slice(to)];
  });
  return put ?? part;
}

function plainComplaints(tokens: readonly Token[]): readonly Token[] {
  const parts = partsOf(tokens);
  const put = parts.map(plainPart);
  return put.some((part, i) => part !== parts[i]) ? put.flat() : tokens;
}

const hasIt: ReadonlySet<string> = new Set(['has', 'have', 'is']);
/** "he's had a runny nose since May": he has it today. */
function hasSince(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => t === 'had' && hasIt.has(tokens[i - 1]?.t ?? ''));
  if (at < 0) return tokens;
  const behind = tokens
    .slice(at, endOfPart(tokens, at))
    .map(({ t }) => t)
    .join(' ');
  return stillGoesOn.test(behind) && !endedTimes.test(behind)
    ? [...tokens.slice(0, at - 1), ...plainly(tokens, at - 1, at + 1, ['has']), ...tokens.slice(at + 1)]
    : tokens;
}

export const plainlyComplained: readonly Rewording[] = [
  { rule: hasSince, needs: ['had'] },
  { rule: plainComplaints, needs: words },
];
