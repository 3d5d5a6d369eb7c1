/** "I've advised the owner to have two oh nine extracted", "advised the vet to take them out", "told your groom to keep an eye on it": what another is to do. */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { handledAs } from '../lexicon/handling.ts';
import { haveOut, ofATooth, ofSeveral, ofWolfTeeth, toFeed, toWatch, vetToTake } from '../lexicon/toldToDo.ts';
import { missingTeeth } from './carry.ts';
import { leantOn } from './followUps.ts';
import { codesIn } from './has.ts';
import { gather } from './lists.ts';
import type { Made } from './made.ts';
import { resolvePlace, wantedBy, type Resolved } from './resolve.ts';
import { adviceIn } from './saidNext.ts';
import type { Mark } from './scan.ts';
import { ownWords } from './tokens.ts';
import type { Before, WorkRule } from './work.ts';

/** Another has the tooth out: advised, never done. */
export const toldToDo: WorkRule = (marks, tokens, before) => {
  const text = ownWords(tokens).join(' ');
  if (toWatch.test(text) && before.carry.place) return leantOn(before.carry.place, marks, { kind: 'follow-up', action: 'monitor' });
  const byVet = vetToTake.exec(text)?.groups;
  const said = byVet ?? haveOut.exec(text)?.groups;
  const what = said?.['what'] ?? said?.['whole'];
  return what === undefined ? [] : outOf(what, marks, before, byVet !== undefined);
};

/** Behind what each part of it says by itself: one piece of advice over its pauses. */
export const toldFeed: WorkRule = (marks, tokens) => (codesIn(marks) ? [] : adviceIn(marks, tokens, [toFeed]));

function outOf(what: string, marks: readonly Mark[], { context }: Before, byVet: boolean): readonly Made[] {
  const placings = gather(marks, ({ place }, m) => place && { raw: place, marks: [m] });
  const wolf = ofWolfTeeth.test(what);
  const there: Resolved = resolvePlace(placings, wantedBy(wolf ? 'wolf-tooth' : 'mobility', missingTeeth(context)));
  const named = there.place && 'teeth' in there.place ? there.place : null;
  const before = named || (placings.length > 0 && !wolf) ? null : teethBefore(what, context);
  const place = named ?? before;
  if (place === null && !wolf) return [];
  return [
    {
      body: { kind: 'treatment', procedure: 'extract', state: 'advised', place, ...(byVet ? { by: 'veterinarian' as const } : {}) },
      marks: marks.map((_, m) => m),
      rules: ['work'],
      ...(before ? { how: { place: 'carried' as const } } : {}),
      doubts: place === null ? [{ doubt: 'no-place' }] : [],
    },
  ];
}

/** The teeth that "them" or "that one" may be: found last, with no finding of another kind since. */
function teethBefore(what: string, { items }: Context): Place | null {
  const wolf = ofWolfTeeth.test(what);
  if (!wolf && !ofATooth.test(what)) return null;
  const found: (readonly string[])[] = [];
  for (const item of [...items].reverse()) {
    if (item.kind !== 'finding' || item.presence === 'absent') continue;
    const isWolf = item.condition === 'wolf-tooth' || item.condition === 'blind-wolf-tooth';
    if (wolf ? !isWolf : handledAs[item.condition] !== 'tooth') {
      if (wolf) continue;
      break;
    }
    if (item.place && 'teeth' in item.place) found.push(item.place.teeth);
  }
  const several = wolf || ofSeveral.test(what);
  const all = [...new Set(found.flat())].sort();
  const teeth = several ? (found.find(({ length }) => length > 1) ?? all) : found.find(({ length }) => length === 1);
  return teeth === undefined || teeth.length === 0 || (ofSeveral.test(what) && teeth.length < 2) ? null : { teeth: [...teeth] };
}
