/**
 * "Hook on one oh six, none on the others", "a canine on the lower right, none of the others", "nowhere else": what was named is ruled out where it
 * was not found, and stays where it was.
 */
import type { Context } from '../contract/draft.ts';
import { noneElsewhereSay, otherThree, plainName } from '../lexicon/namedBefore.ts';
import { formAt, longestOf } from './forms.ts';
import { nameOf } from './namedAgain.ts';
import { itself } from './pointing.ts';
import { plainly } from './saidPlainly.ts';
import { scan } from './scan.ts';
import { positionOf } from './teeth.ts';
import type { Token } from './tokens.ts';

const forms = longestOf([
  [noneElsewhereSay, 'none' as const],
  [otherThree, 'three' as const],
]);
const canines = ['104', '204', '304', '404'];

/** What was named, and at which teeth: in these words, or last. */
function named(tokens: readonly Token[], { items }: Context): { readonly name: string; readonly teeth: readonly string[] } | undefined {
  const marks = scan(tokens).marks;
  const codes = marks.flatMap(({ place }) => place?.codes ?? []);
  const own = marks.map((mark) => nameOf(mark, tokens)).findLast((name) => name !== undefined);
  if (own) return { name: tokens[own.at]?.t ?? '', teeth: codes };
  if (tokens.some(({ t }) => t.startsWith('canine'))) return { name: 'canine', teeth: codes };
  const last = items.at(-1);
  if (tokens.length > 0 || last?.kind !== 'finding' || last.presence !== 'present' || !last.place) return undefined;
  const name = last.condition === 'canine-present' ? 'canine' : plainName(last.condition);
  return name === undefined ? undefined : { name, teeth: 'teeth' in last.place ? last.place.teeth : [] };
}

export function noneElsewhere(tokens: readonly Token[], context: Context): readonly Token[] {
  for (let at = 0; at < tokens.length; at += 1) {
    const form = at === 0 || tokens[at - 1]?.ends ? formAt(forms, tokens, at) : undefined;
    const to = at + (form?.words.length ?? 0);
    if (form === undefined || (to < tokens.length && tokens[to - 1]?.ends !== true)) continue;
    const of = named(tokens.slice(0, at), context);
    if (of === undefined) return tokens;
    const teeth = of.teeth.filter((tooth) => positionOf(tooth) === 4);
    // Of canines it can be told which the others are.
    const others = of.name.startsWith('canine') && teeth.length > 0 ? canines.filter((tooth) => !teeth.includes(tooth)) : [];
    if (form.means === 'three' && others.length !== 3) return tokens;
    const where =
      others.length > 0
        ? ['on', ...others.flatMap((tooth, i) => [...(i > 0 ? ['and'] : []), ...(itself({ teeth: [tooth] }) ?? [])])]
        : ['elsewhere'];
    return [...tokens.slice(0, at), ...plainly(tokens, at, to, ['no', of.name, ...where]), ...tokens.slice(to)];
  }
  return tokens;
}
