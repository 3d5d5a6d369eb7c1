/**
 * "The hook's reduced, left the ramp", "took the cap off, the other tooth can wait": in a phrase of work that names no place, a thing that was found
 * before stands where it was found, and not where the last one was. Of two of that name the words stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { foundAs, standsSay, workTells } from '../lexicon/handling.ts';
import type { Carry } from './carry.ts';
import { itself } from './pointing.ts';
import type { Reading } from './read.ts';
import { scan, type Mark } from './scan.ts';
import { askedAbout } from './shortForms.ts';
import { supposed } from './supposed.ts';
import type { Token } from './tokens.ts';
import { workWords } from './vocabulary.ts';

type Found = Extract<Item, { kind: 'finding' }> & { readonly place: Place };

/** More teeth than these are a group, which work names by its row. */
const MOST_TEETH = 4;
const tells: ReadonlySet<string> = new Set([...workWords, ...workTells, ...standsSay.map(([[first]]) => first ?? '')]);

const nameOf = (mark: Mark): readonly ConditionId[] | undefined =>
  mark.place === undefined ? mark.terms?.flatMap((t) => (t.k === 'condition' && t.strength !== 'absentSay' ? [t.id] : [])) : undefined;

/** The one finding that stands by this name. */
function foundAt({ items }: Context, ids: readonly ConditionId[]): Found | undefined {
  const found = items.filter(
    (item): item is Found =>
      item.kind === 'finding' && ids.includes(item.condition) && item.presence === 'present' && item.when === 'now' && item.place !== null,
  );
  const [one, ...more] = found;
  const few = one && (!('teeth' in one.place) || one.place.teeth.length <= MOST_TEETH);
  return few && more.every(({ place }) => JSON.stringify(place) === JSON.stringify(one.place)) ? one : undefined;
}

/** @returns undefined where no thing that was found before is named; what became of one in words that are not known is asked */
export function workOnFound(
  tokens: readonly Token[],
  context: Context,
  carry: Carry,
  read: (words: readonly Token[]) => Reading,
): Reading | undefined {
  const placed = foundBefore(tokens, context, carry);
  if (placed === undefined) return undefined;
  const reading = read(placed.tokens);
  if (reading.made.some(({ body }) => body !== undefined && body.kind !== 'finding')) return reading;
  const plain = read(tokens);
  // "hook's done, ramp next time": no hook stands where the last thing was found.
  const elsewhere = plain.made.some(
    ({ body, how, doubts }) =>
      body?.kind === 'finding' &&
      body.presence === 'present' &&
      body.when === 'now' &&
      how?.place === 'carried' &&
      doubts.length === 0 &&
      placed.found.some(({ condition, place }) => condition === body.condition && JSON.stringify(place) !== JSON.stringify(body.place)),
  );
  const nothing = plain.made.length === 0 && plain.unknown === 0 && !supposed(tokens).some(Boolean);
  return elsewhere || nothing ? askedAbout(tokens) : undefined;
}

/** The words with the places of what was found put behind their names. */
function foundBefore(
  tokens: readonly Token[],
  context: Context,
  carry: Carry,
): { readonly tokens: readonly Token[]; readonly found: readonly Found[] } | undefined {
  if (context.items.length === 0 || !tokens.some(({ t }) => foundAs.has(t)) || !tokens.some(({ t }) => tells.has(t))) return undefined;
  const { marks } = scan(tokens);
  if (marks.some(({ place }) => place !== undefined)) return undefined;
  const puts = marks.flatMap((mark) => {
    // "the hook reduced" is one name of work: the thing in it is named by its first word that is one.
    const at = tokens.findIndex(({ t }, i) => i >= mark.from && i < mark.to && foundAs.has(t));
    const ids = at < 0 ? undefined : nameOf(mark)?.length ? nameOf(mark) : foundAs.get(tokens[at]?.t ?? '');
    const found = ids && foundAt(context, ids);
    const words = found && itself(found.place);
    return words ? [{ at, found, words }] : [];
  });
  // What was found last needs no place: work leans on it by itself.
  if (!puts.some(({ found }) => found.id !== carry.last)) return undefined;
  const put = tokens.flatMap((token, i): readonly Token[] => {
    const own = puts.find(({ at }) => at === i);
    if (own === undefined) return [token];
    const { t, word, ends } = token;
    const placed = [{ t, word }, ...['on', ...own.words].map((said): Token => ({ t: said, word, carried: true }))];
    return ends ? [...placed.slice(0, -1), { ...(placed.at(-1) as Token), ends }] : placed;
  });
  return { tokens: put, found: puts.map(({ found }) => found) };
}
