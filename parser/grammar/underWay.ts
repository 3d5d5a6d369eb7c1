/** "I'm just flushing that out now", "rasping the lowers now": work under way is told as it is done, in the words of work that was. */
import { notNow, underWay as verbs, withParticle } from '../lexicon/underWay.ts';
import { formAt, longestOf } from './forms.ts';
import { endOfPart } from './saidPlainly.ts';
import type { Token } from './tokens.ts';

const past = new Map(Object.entries(verbs));
const halves: ReadonlySet<string> = new Set(withParticle);
const leads: ReadonlySet<string> = new Set(['so', 'right', 'okay', 'and', 'then', 'i', 'we']);
const going: ReadonlySet<string> = new Set(['am', 'are', 'just', 'now', 'currently', 'busy']);
const pointing: ReadonlySet<string> = new Set(['it', 'that', 'this', 'them', 'those', 'these']);
const particles: ReadonlySet<string> = new Set(['down', 'off', 'out', 'back', 'away', 'level']);
const otherTimes = longestOf([[notNow, true]]);

/** @returns the same list where no part of it begins with work under way */
export function underWay(tokens: readonly Token[]): readonly Token[] {
  if (!tokens.some(({ t }) => past.has(t))) return tokens;
  const end = endOfPart(tokens, 0);
  const first = told(tokens.slice(0, end));
  return end < tokens.length ? [...first, ...underWay(tokens.slice(end))] : first;
}

function told(part: readonly Token[]): readonly Token[] {
  const at = part.findIndex(({ t }) => !leads.has(t) && !going.has(t));
  const [verb, ...behind] = part.slice(at);
  const did = past.get(verb?.t ?? '');
  if (at < 0 || verb === undefined || did === undefined) return part;
  const doing = part.slice(0, at).some(({ t }) => going.has(t)) || behind.at(-1)?.t === 'now' || pointing.has(behind[0]?.t ?? '');
  const whole = !halves.has(verb.t) || behind.some(({ t }) => particles.has(t));
  return doing && whole && !behind.some((_, i) => formAt(otherTimes, behind, i) !== undefined)
    ? [...part.slice(0, at).filter(({ t }) => !going.has(t)), { ...verb, t: did }, ...behind]
    : part;
}
