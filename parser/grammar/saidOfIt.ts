/**
 * "It's an old one", "nothing in it", "both teeth are firm", "and one on the right, smaller": said of what was found last, and read as what it is
 * short for. Where it is of another kind of thing, or nothing was found, the words stay as they are.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { saidOfIt as rows, type SaidOfIt } from '../lexicon/saidOfIt.ts';
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
  return (
    first(forms, ({ of, patterns, plain }) => {
      if (of && !of.has(last.condition)) return undefined;
      const match = first(patterns, (pattern) => pattern.exec(text) ?? undefined);
      const words = match && inWords({ plain, say: [] }, last as Finding & { readonly place: Place }, match.groups ?? {});
      return words && inPlaceOf(tokens, wordsIn(match[0]), words);
    }) ?? tokens
  );
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
