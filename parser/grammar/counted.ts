/**
 * Things that were named, by how many they are or by their order: "the gum round the two of them", "eotrh in both of them", "the second one has
 * a pocket". They are read as those teeth or gaps; where as many were not named the words stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import type { Carry } from './carry.ts';
import { firstWords, formAt, longestOf } from './forms.ts';
import { itself } from './pointing.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';
import { workWords } from './vocabulary.ts';

const many = longestOf<number>([
  [
    [
      'both of (them|these|those)',
      '[the] two of (them|these|those)',
      'the pair [of them]',
      'them both',
      '(the same|those|these same|those same) two',
    ],
    2,
  ],
  [['[all] three of (them|these|those)', '(the same|those same) three'], 3],
  [['[all] four of (them|these|those)'], 4],
]);
const leads: ReadonlySet<string> = new Set(['on', 'in', 'at', 'of', 'off', 'round', 'around', 'beside', 'under', 'behind', 'along', 'to']);
const inOrder = longestOf<number>([
  [['the first one', 'the first of them'], 0],
  [['the second one', 'the second of them'], 1],
]);
const told: ReadonlySet<string> = new Set(['is', 'has', 'was', 'had', 'looks', 'feels', 'got']);

const text = (place: Place): string => JSON.stringify(place);
/** Each tooth or gap of a place, or the part of the mouth, by itself. */
export const apart = (place: Place): readonly Place[] =>
  'teeth' in place
    ? place.teeth.map((tooth) => ({ teeth: [tooth] }))
    : 'spaces' in place
      ? place.spaces.map((space) => ({ spaces: [space] }))
      : [place];
export const known = (all: readonly Place[], place: Place): boolean => all.some((one) => text(one) === text(place));

/** The teeth that a phrase has named so far, each once. */
const namedIn = (tokens: readonly Token[]): readonly Place[] => {
  const codes = scan(tokens).marks.flatMap(({ place }) => (place?.joined === 'between' ? [] : (place?.codes ?? [])));
  return [...new Set(codes)].map((code) => ({ teeth: [code] }));
};

/** Where the last findings are, back to as many teeth; undefined where they are not just so many. */
export function lastNamed({ items }: Context, count: number): readonly Place[] | undefined {
  const found: Place[] = [];
  for (let at = items.length - 1; at >= 0 && found.length < count; at -= 1) {
    const item = items[at];
    if (item?.kind !== 'finding' || !item.place || 'region' in item.place || 'rows' in item.place) return undefined;
    found.unshift(...apart(item.place).filter((one) => !known(found, one)));
  }
  return found.length === count ? found : undefined;
}

/** The two places that have the finding said last, in the order in which they were said: of two in one list the words of the last phrase tell. */
function inTheirOrder({ items }: Context, carry: Carry): readonly Place[] | undefined {
  const found = items.flatMap((item) => (item.kind === 'finding' && item.place ? [{ id: item.condition, places: apart(item.place) }] : []));
  const last = found.at(-1)?.id;
  const own = new Set(found.flatMap(({ id, places }) => (id === last ? places.map(text) : [])));
  const said = found.map(({ places }) => places.map(text).filter((place) => own.has(place)));
  const firsts = [...own].map((place) => said.findIndex((all) => all.includes(place)));
  const [a, b] = [...new Set(firsts)].sort((x, y) => x - y).map((at) => said[at]?.[0]);
  const listed = (carry.place ?? []).map(({ codes = [] }) => text({ spaces: [[...codes].sort() as [string, string]] }));
  if (own.size === 2 && b === undefined && [...own].every((place) => listed.includes(place)))
    return listed.filter((place) => own.has(place)).map((place) => JSON.parse(place) as Place);
  return own.size === 2 && a !== undefined && b !== undefined ? [a, b].map((place) => JSON.parse(place) as Place) : undefined;
}

/** Those places as they are said, one after another. */
export const wordsOf = (places: readonly Place[]): readonly string[] | undefined => {
  const all = places.map(itself);
  return all.every((words) => words !== undefined) ? all.flatMap((words, i) => [...(i > 0 ? ['and'] : []), ...(words ?? [])]) : undefined;
};

/** Words that stand for what points back, from one to before another. */
export const pointed = (tokens: readonly Token[], at: number, to: number, words: readonly string[]): readonly Token[] => {
  const heard = tokens.slice(at, to).map(({ word }) => word);
  return words.map((t, i): Token => ({
    t,
    word: heard[i] ?? (heard.at(-1) as number),
    heard,
    carried: true,
    ...(i === words.length - 1 && tokens[to - 1]?.ends ? { ends: true as const } : {}),
  }));
};

export function counted(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  for (let at = 0; at < tokens.length; at += 1) {
    const behind = leads.has(tokens[at - 1]?.t ?? '');
    const said = behind || workWords.has(tokens[at - 1]?.t ?? '') ? formAt(many, tokens, at) : undefined;
    // "flushed all three of those": how work takes "both of them" is told by the work.
    const form = behind || (said && said.means > 2) ? said : undefined;
    const before = form ? namedIn(tokens.slice(0, at)) : [];
    const order = form ? undefined : formAt(inOrder, tokens, at);
    const to = at + ((form ?? order)?.words.length ?? 0);
    const places = form
      ? before.length === 0
        ? lastNamed(context, form.means)
        : before.length === form.means
          ? before
          : before.length > form.means
            ? before.slice(-form.means)
            : undefined
      : order && told.has(tokens[to]?.t ?? '') && !scan(tokens.slice(0, at)).marks.some(({ place }) => place)
        ? inTheirOrder(context, carry)?.slice(order.means, order.means + 1)
        : undefined;
    const words = places && wordsOf(places);
    if (words === undefined) continue;
    return [...tokens.slice(0, at), ...pointed(tokens, at, to, words), ...tokens.slice(to)];
  }
  return tokens;
}

export const countedWords: readonly string[] = firstWords(many, inOrder)
  .filter((word) => word !== 'the')
  .concat('first', 'second', 'pair');
