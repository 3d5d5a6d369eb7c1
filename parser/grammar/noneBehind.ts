/**
 * "Points on the uppers, none on the other side", "hooks both sides, none behind it": what stands before the pause was found. Where the phrase at
 * once has it ruled out, for want of knowing where there is none, the two are read one behind the other; if nothing comes of the second it is asked.
 */
import type { Item } from '../contract/item.ts';
import { noneOfIt, noneWords } from '../lexicon/scopes.ts';
import { askedInWhole } from './faint.ts';
import { asOne, behind, holds, partReader, type InParts } from './partByPart.ts';
import type { Token } from './tokens.ts';

const none: ReadonlySet<string> = new Set(noneWords);
const light: ReadonlySet<string> = new Set(noneOfIt);
const leads: ReadonlySet<string> = new Set(['and', 'but', 'with', 'so']);

/** Where "none" begins what is said behind a pause or a joining word, and says where. */
function beginsAt(tokens: readonly Token[]): number {
  return tokens.findIndex((token, at) => {
    const joined = leads.has(token.t);
    if (at === 0 || !(joined || tokens[at - 1]?.ends === true)) return false;
    const first = joined ? at + 1 : at;
    const end = tokens.findIndex(({ ends }, i) => i >= first && ends === true);
    return none.has(tokens[first]?.t ?? '') && tokens.slice(first + 1, end < 0 ? tokens.length : end + 1).some(({ t }) => !light.has(t));
  });
}
const isFound = (item: Item): boolean => item.kind === 'finding' && item.presence === 'present';
const ruledOut = (item: Item): Item => ({ ...item, presence: 'absent' }) as Item;

export const noneBehind: InParts = (whole, hypothesis, tokens, context, readPart) => {
  if (!whole.items.some((item) => item.kind === 'finding' && item.presence === 'absent')) return undefined;
  const at = beginsAt(tokens);
  const cut = tokens[at]?.word;
  if (at < 0 || cut === undefined) return undefined;
  const part = partReader(hypothesis, whole.id, readPart);
  const first = part(0, cut, context, 0);
  const turned = first.items.some((item) => isFound(item) && !holds(whole.items, item) && holds(whole.items, ruledOut(item)));
  if (!turned || first.commands.length > 0 || first.header !== undefined) return undefined;
  const rest = part(cut, hypothesis.words.length, behind(context, first), 1);
  if (rest.commands.length > 0) return undefined;
  const kept = first.items.map((item) => less(item, rest.items));
  if (kept.some((item) => item === undefined)) return undefined;
  const items = kept.flatMap((item) => item ?? []);
  // It was doubted for what is no longer said to be there.
  const narrowed = items.some((item, i) => item !== first.items[i]);
  const behindIt = narrowed ? { ...rest, doubts: rest.doubts.filter(({ rule }) => rule !== 'found-then-ruled-out') } : rest;
  return asOne(
    [
      { from: 0, parsed: { ...first, items } },
      { from: cut, parsed: rest.items.length + rest.doubts.length > 0 ? behindIt : askedInWhole(rest) },
    ],
    whole,
    hypothesis.text,
    context,
  );
};

/** "Points on the uppers, none on the left": the group less those named; undefined where none of it is left. */
function less(item: Item, others: readonly Item[]): Item | undefined {
  if (!isFound(item) || !('place' in item) || !item.place || !('teeth' in item.place)) return item;
  const out = others
    .filter(
      (other) => other.kind === 'finding' && item.kind === 'finding' && other.condition === item.condition && other.presence === 'absent',
    )
    .flatMap((other) => ('place' in other && other.place && 'teeth' in other.place ? other.place.teeth : []));
  const teeth = item.place.teeth.filter((tooth) => !out.includes(tooth));
  return teeth.length === 0
    ? undefined
    : teeth.length === item.place.teeth.length
      ? item
      : ({ ...item, place: { ...item.place, teeth } } as Item);
}
