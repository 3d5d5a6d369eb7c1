/** What is told of the visit in everyday words: which sentence between two pauses tells it, and of what. */
import type { FactAbout } from '../lexicon/facts.ts';
import { told, toldKept, toldLead } from '../lexicon/told.ts';
import { readCodes } from './codes.ts';
import { first } from './lists.ts';
import { memory } from './memory.ts';
import { ownWordsOf } from './ownWordsOf.ts';
import { partsOf } from './pauses.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const forms = told.map(({ about, say }) => ({ about, form: new RegExp(`${toldLead}(?:${say.map((one) => `(?:${one})`).join('|')})`) }));

/** Without one of these words no sentence tells anything. */
const strong = ownWordsOf(
  told.flatMap(({ say }) => say),
  toldKept,
);
export const toldWords: readonly string[] = [...strong];

/** "didn't get near the back teeth, he was throwing his head about": why it was not done, and no sentence of its own. */
const leftUndone: ReadonlySet<string> = new Set(['not', 'never', 'no', 'half', 'most', 'left', 'stopped', 'unable', 'only', 'part']);

export interface Told {
  readonly about: FactAbout;
  readonly from: number;
  readonly to: number;
  /** Behind the sentence. */ readonly end: number;
}

/** What shows beside a bit or a noseband ("blood on the bit", "flinches") is told. */
const hints: ReadonlySet<string> = new Set(['bleeding', 'pain']);
/** By the first token of each sentence that tells something; what is found ("she says he isn't quidding") is worth more than the history it stands in. */
export const toldBeside = (marks: readonly Mark[], tokens: readonly Token[]): ReadonlyMap<number, Told> =>
  new Map(
    [...toldIn(tokens)].filter(
      ([, { about, from, end }]) =>
        about !== 'history' ||
        !marks.some(
          (mark) =>
            mark.from >= from && mark.to <= end && mark.terms?.some((t) => t.k === 'condition' && t.strength === 'say' && !hints.has(t.id)),
        ),
    ),
  );

/** A sentence with the number of a tooth tells of the tooth, or of a price. */
const mayTell = (about: FactAbout, ofTooth: boolean): boolean => about === 'account' || !ofTooth;

/** A phrase is read several times over, in other parts and contexts, and what it tells stays the same. */
const readBefore = memory<Pick<Told, 'about' | 'to'> | undefined>(2000);
const tellsOf = (part: readonly Token[], undone: boolean): Pick<Told, 'about' | 'to'> | undefined => {
  if (!part.some(({ t }) => strong.has(t))) return undefined;
  const text = part.map(({ t }) => t).join(' ');
  return readBefore(`${undone ? 1 : 0}${text}`, () => {
    const ofTooth = part.some((_, i) => readCodes(part, i) !== undefined);
    return first(forms, ({ about, form }) => {
      if ((about === 'behaviour' && undone) || !mayTell(about, ofTooth)) return undefined;
      const said = form.exec(text)?.[0];
      return said === undefined ? undefined : { about, to: said.trim().split(' ').length };
    });
  });
};

export function toldIn(tokens: readonly Token[]): ReadonlyMap<number, Told> {
  const all = new Map<number, Told>();
  let from = 0;
  for (const part of partsOf(tokens)) {
    const undone = tokens.slice(0, from).some(({ t }) => leftUndone.has(t));
    const hit = tellsOf(part, undone);
    if (hit) all.set(from, { about: hit.about, from, to: from + hit.to, end: from + part.length });
    from += part.length;
  }
  return all;
}
