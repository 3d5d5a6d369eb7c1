/**
 * "It's an old one", "nothing in it", "both teeth are firm", "and one on the right, smaller": said of what was found last, and read as what it is
 * short for. Where it is of another kind of thing, or nothing was found, the words stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { furtherOn, ofTheSame, onThatSide, sameAsWell, saidOfIt as rows, type SaidOfIt } from '../lexicon/saidOfIt.ts';
import { standing, type Carry } from './carry.ts';
import { sideOf } from './follow.ts';
import { first } from './lists.ts';
import { itself, mirrored } from './pointing.ts';
import { inPlaceOf, textFrom, wordsIn } from './saidPlainly.ts';
import type { Finding } from './shortForms.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';

const forms = rows.map((row) => ({
  ...row,
  of: row.of && new Set<string>(row.of),
  patterns: row.say.map((say) => new RegExp(`^${say}(?= ,|$)`)),
}));

/** @returns the phrase with such words, at its start, said plainly; the same list where there are none */
export function saidOfIt(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  const last = standing(context, carry.last);
  if (last?.kind !== 'finding' || last.presence === 'absent' || last.place === null || carry.half !== undefined) return tokens;
  const text = textFrom(tokens, 0);
  const again = sameTold.exec(text)?.groups?.['kept'];
  if (again) return tokens.slice(0, wordsIn(again));
  const placed = last as Finding & { readonly place: Place };
  const beside = onOtherSide(tokens, text, placed) ?? furtherOnThere(tokens, text, placed);
  if (beside) return beside;
  return (
    first(forms, ({ of, patterns, plain }) => {
      if (of && !of.has(last.condition)) return undefined;
      const match = first(patterns, (pattern) => pattern.exec(text) ?? undefined);
      const words = match && inWords({ plain, say: [] }, last as Finding & { readonly place: Place }, match.groups ?? {});
      return words && inPlaceOf(tokens, wordsIn(match[0]), words);
    }) ?? tokens
  );
}

const sameTold = new RegExp(`^${sameAsWell}$`);
const thatSide = new RegExp(`^${onThatSide}`);
const same = new RegExp(`^${ofTheSame}`);
/** "on the left it's only two mil", of a hook on the right: that of the left. Anything else is said of where it would be. */
function onOtherSide(
  tokens: readonly Token[],
  text: string,
  { condition, place }: Finding & { readonly place: Place },
): readonly Token[] | undefined {
  const match = thatSide.exec(text);
  const side = match?.groups?.['side'];
  // "hook on one oh six", "on the right it's four mil": that one.
  if (match && side !== undefined && sideOf(place) === side) return inPlaceOf(tokens, wordsIn(match[0]), ['it', 'is']);
  const there = side === undefined || sideOf(place) === undefined || sideOf(place) === side ? undefined : mirrored(place);
  if (!match || there === undefined) return undefined;
  const rest = text.slice(match[0].length + 1);
  const name = expand(conditions[condition].say[0] as string)[0] as readonly string[];
  const named = /^(?:open|valve)\b/.test(rest) && 'spaces' in place ? ['diastema'] : name;
  return inPlaceOf(tokens, wordsIn(match[0]), same.test(rest) ? [...named, 'on', ...there] : [...there, 'is']);
}
const further = new RegExp(`^${furtherOn}`);
/** "on the left i can only feel it under the gum, so that one's a blind wolf tooth": no more of the right one. */
function furtherOnThere(
  tokens: readonly Token[],
  text: string,
  { place }: Finding & { readonly place: Place },
): readonly Token[] | undefined {
  const match = further.exec(text);
  const { side, pointing = '' } = match?.groups ?? {};
  const there = side === undefined || sideOf(place) === undefined || sideOf(place) === side ? undefined : mirrored(place);
  if (!match || there === undefined) return undefined;
  const to = wordsIn(match[0]);
  const from = to - wordsIn(pointing);
  return [...tokens.slice(0, from), ...inPlaceOf(tokens.slice(from), to - from, [...there, 'is'])];
}

function inWords(
  { plain }: SaidOfIt,
  { condition, place }: Finding & { readonly place: Place },
  { side, size, number }: Readonly<Record<string, string | undefined>>,
): readonly string[] | undefined {
  // "a smaller one on the left": of one on the right.
  const there = side === undefined || sideOf(place) === undefined || sideOf(place) === side ? undefined : mirrored(place);
  const where = plain.includes('{where}') ? teethOf(place, plain) : undefined;
  if ((plain.includes('{there}') && there === undefined) || (plain.includes('{where}') && where === undefined)) return undefined;
  return plain
    .split(' ')
    .flatMap((word): readonly string[] =>
      word === '{there}'
        ? (there ?? [])
        : word === '{where}'
          ? (where ?? [])
          : word === '{name}'
            ? (expand(conditions[condition].say[0] as string)[0] as readonly string[])
            : word === '{size}'
              ? size
                ? [size]
                : []
              : word === '{number}'
                ? [number as string]
                : [word],
    );
}
/** A tooth beside a gap moves, and no gap does. */
const teethOf = (place: Place, plain: string): readonly string[] | undefined =>
  plain.includes('mobility')
    ? 'spaces' in place && place.spaces.length === 1
      ? itself({ teeth: [...(place.spaces[0] as readonly string[])] })
      : 'teeth' in place
        ? itself(place)
        : undefined
    : itself(place);
