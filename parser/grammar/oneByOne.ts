/**
 * "Hook on one oh six", "hook on two oh six", "reduced those": a plural of what was found one by one is all of it, back to another kind of
 * finding or to work, and never the last alone. "No fracture in either", "rasped the pair of them": of the last two that were named.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import { handledAs } from '../lexicon/handling.ts';
import { countedPlurals, neitherSubjects, plurals, pluralBehind, pluralLeads, pluralSubjects } from '../lexicon/namedBefore.ts';
import { apart, known, lastNamed, pointed, wordsOf } from './counted.ts';
import { formAt, longestOf, type Forms } from './forms.ts';
import type { Made } from './made.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

const forms: Forms<'several' | 'two'> = longestOf<'several' | 'two'>([
  [plurals, 'several'],
  [countedPlurals, 'two'],
]);
const leads: ReadonlySet<string> = new Set(pluralLeads);
const behindIt: ReadonlySet<string> = new Set(pluralBehind);

type Found = Extract<Item, { kind: 'finding' }>;
const kindOf = ({ condition }: Found): string => handledAs[condition] ?? condition;

/**
 * Where the last findings of one kind are, with no work between; of the same name, where the last is of several teeth itself. Undefined where it
 * was found once only.
 */
function run({ items }: Context): readonly Place[] | undefined {
  const found: Place[] = [];
  let last: Found | undefined;
  for (let at = items.length - 1; at >= 0; at -= 1) {
    const item = items[at] as Item;
    if (item.kind === 'treatment') break;
    if (item.kind !== 'finding') continue;
    if (item.presence !== 'present' || !item.place || 'region' in item.place || 'rows' in item.place) break;
    last ??= item;
    if (last.place && apart(last.place).length > 1 ? item.condition !== last.condition : kindOf(item) !== kindOf(last)) break;
    if (!known(found, item.place)) found.unshift(item.place);
  }
  return found.length > 1 ? found : undefined;
}

/** Work and what comes next that took its place from the last of them, told by a plural: of all of them. */
export function ofAllOfThem(made: readonly Made[], tokens: readonly Token[], context: Context): readonly Made[] {
  if (!tokens.some(({ t }) => several.has(t)) || !made.some(tookItsPlace) || namesAPlace(tokens)) return made;
  const places = run(context);
  const two = tokens.some(({ t }) => t === 'both' || t === 'pair');
  const place = places && !(two && places.length > 2) ? joined(places) : undefined;
  const last = places?.at(-1);
  return place === undefined
    ? made
    : made.map((one) =>
        (one.body?.kind === 'treatment' || one.body?.kind === 'follow-up') &&
        tookItsPlace(one) &&
        (!one.body.place || JSON.stringify(one.body.place) === JSON.stringify(last))
          ? { ...one, body: { ...one.body, place }, how: { ...one.how, place: 'carried' as const } }
          : one,
      );
}
/** Also of work that needs none: "rasped both". */
const tookItsPlace = ({ how, body }: Made): boolean =>
  how?.place === 'carried' || (body?.kind === 'treatment' && body.procedure === 'rasp' && body.place === null);
const several: ReadonlySet<string> = new Set(['them', 'those', 'these', 'they', 'both', 'pair']);
/** As one place, where all are teeth or all are gaps. */
function joined(places: readonly Place[]): Place | undefined {
  const teeth = places.flatMap((place) => ('teeth' in place ? place.teeth : []));
  const spaces = places.flatMap((place) => ('spaces' in place ? place.spaces : []));
  const group = places.some((place) => 'from' in place && place.from === 'group');
  return places.every((place) => 'teeth' in place)
    ? { teeth: [...new Set(teeth)].sort(), ...(group ? { from: 'group' as const } : {}) }
    : places.every((place) => 'spaces' in place)
      ? { spaces: [...spaces].sort() }
      : undefined;
}

/** "both" by itself names none. */
const namesAPlace = (tokens: readonly Token[]): boolean =>
  scan(tokens).marks.some(({ place }) => place !== undefined && place.weak !== true);

const subjects = longestOf<'are' | 'are not'>([
  [pluralSubjects, 'are'],
  [neitherSubjects, 'are not'],
]);
/** "they're both loose", "neither's sharp" */
function asSubject(tokens: readonly Token[], context: Context): readonly Token[] {
  const at = tokens.findIndex(({ t }) => !small.has(t));
  const form = at < 0 ? undefined : formAt(subjects, tokens, at);
  const to = at + (form?.words.length ?? 0);
  const marks = form === undefined ? [] : scan(tokens.slice(to)).marks;
  // Of what is normal more may be meant than those two.
  const condition = marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.id !== 'abnormality'));
  const words = form === undefined || !condition || marks.some(({ place }) => place) ? undefined : wordsOf(lastNamed(context, 2) ?? []);
  if (form === undefined || words === undefined || words.length === 0) return tokens;
  return [...tokens.slice(0, at), ...pointed(tokens, at, to, [...words, ...form.means.split(' ')]), ...tokens.slice(to)];
}
const small: ReadonlySet<string> = new Set(['and', 'but', 'so', 'now', 'yeah', 'well']);
/** The words that point back to several, read as the teeth or gaps themselves. */
export function oneByOne(tokens: readonly Token[], context: Context): readonly Token[] {
  for (let at = 1; at < tokens.length; at += 1) {
    const form = leads.has(tokens[at - 1]?.t ?? '') ? formAt(forms, tokens, at) : undefined;
    if (form === undefined || tokens[at - 1]?.ends) continue;
    const to = at + form.words.length;
    const closes = to === tokens.length || tokens[to - 1]?.ends === true || behindIt.has(tokens[to]?.t ?? '');
    if (!closes || namesAPlace(tokens.slice(0, at)) || namesAPlace(tokens.slice(to))) continue;
    const places = form.means === 'two' ? lastNamed(context, 2) : run(context)?.flatMap(apart);
    const words = places && wordsOf(places);
    if (words === undefined) continue;
    return [...tokens.slice(0, at), ...pointed(tokens, at, to, words), ...tokens.slice(to)];
  }
  return asSubject(tokens, context);
}

export const oneByOneWords: readonly string[] = ['them', 'those', 'these', 'either', 'both', 'pair', 'neither', 'they'];
