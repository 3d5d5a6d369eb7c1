/**
 * "Reduced it, nothing on the other side", "took that off and six oh seven": a second place stands behind what was worked on, and takes nothing
 * from it. What points back is said by its own name, so that the work stays where it was done.
 */
import type { Context } from '../contract/draft.ts';
import { tookHold, workVerbs } from '../lexicon/becoming.ts';
import { carriedSides, pointsAtOne, wentAway } from '../lexicon/pointedAt.ts';
import { lengthUnits } from '../lexicon/units.ts';
import { kindBefore } from './becameOf.ts';
import { standing, type Carry } from './carry.ts';
import { itself } from './pointing.ts';
import { scan } from './scan.ts';
import { inPlaceOf } from './saidPlainly.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

const points: ReadonlySet<string> = new Set(pointsAtOne);
const particles: ReadonlySet<string> = new Set(wentAway);
const handled: ReadonlySet<string> = new Set(tookHold);
const units: ReadonlySet<string> = new Set([...lengthUnits.mm, ...lengthUnits.cm]);
const otherSide = new RegExp(`\\b(?:${carriedSides.join('|')})\\b`);

/** @returns the same list where no work on what was found last stands before another place */
export function objectNamed(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const at = tokens.findIndex((_, i) => worksOn(tokens, i) || sizeOff(tokens, i));
  const last = at < 0 ? undefined : standing(context, carry.last);
  const teeth = last && 'place' in last && last.place ? itself(last.place) : undefined;
  if (!teeth || !placeBehind(tokens.slice(at + 1))) return tokens;
  const named = (words: readonly string[], from: number, to: number): readonly Token[] => [
    ...tokens.slice(0, from),
    ...inPlaceOf(tokens.slice(from), to - from, words).map((token, i): Token => (i < words.length ? { ...token, carried: true } : token)),
  ];
  if (!points.has(tokens[at]?.t ?? '')) return named([tokens[at]?.t ?? '', ...teeth], at, at + 1);
  if (!particles.has(tokens[at + 1]?.t ?? '') || tokens[at]?.ends) return named(teeth, at, at + 1);
  // "chipped it off", "took it down": the plain verb of the thing's own work says where.
  const kind = kindBefore([], context, carry);
  return kind ? named([workVerbs[kind][1], ...teeth], at - 1, at + 2) : tokens;
}

/** What points back stands right behind a verb of work, and a pause or "and" behind it or behind where it went. */
function worksOn(tokens: readonly Token[], at: number): boolean {
  const verb = tokens[at - 1]?.t ?? '';
  return (
    points.has(tokens[at]?.t ?? '') &&
    (didWords.has(verb) || handled.has(verb)) &&
    (stops(tokens, at) || (particles.has(tokens[at + 1]?.t ?? '') && stops(tokens, at + 1)))
  );
}
/** "took two mil off and the same on the other side": nothing points back at all. */
const sizeOff = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]?.t === 'off' &&
  units.has(tokens[at - 1]?.t ?? '') &&
  stops(tokens, at) &&
  tokens.slice(0, at).some(({ t }) => handled.has(t)) &&
  !scan(tokens.slice(0, at)).marks.some(({ place }) => place !== undefined);
const stops = (tokens: readonly Token[], at: number): boolean => tokens[at]?.ends === true || tokens[at + 1]?.t === 'and';

const placeBehind = (tokens: readonly Token[]): boolean =>
  otherSide.test(tokens.map(({ t }) => t).join(' ')) || scan(tokens).marks.some(({ place }) => place?.codes !== undefined);
