/** What is told of the visit in everyday words: which sentence between two pauses tells it, and of what. */
import type { FactAbout } from '../lexicon/facts.ts';
import { glue } from '../lexicon/fillers.ts';
import { told, toldLead } from '../lexicon/told.ts';
import { first } from './lists.ts';
import { partsOf } from './pauses.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const forms = told.map(({ about, say }) => ({ about, form: new RegExp(`${toldLead}(?:${say.map((one) => `(?:${one})`).join('|')})`) }));

const everywhere: ReadonlySet<string> = new Set(glue);
/** Without one of these words no sentence tells anything. */
export const toldWords: readonly string[] = [
  ...new Set(told.flatMap(({ say }) => say.flatMap((form) => form.match(/[a-z']+/g) ?? []))),
].filter((word) => !everywhere.has(word));

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

export function toldIn(tokens: readonly Token[]): ReadonlyMap<number, Told> {
  const all = new Map<number, Told>();
  let from = 0;
  for (const part of partsOf(tokens)) {
    const text = part.map(({ t }) => t).join(' ');
    const at = from;
    const before = tokens.slice(0, at).map(({ t }) => t);
    const hit = first(forms, ({ about, form }) => {
      const said = form.exec(text)?.[0];
      return said === undefined || (about === 'behaviour' && before.some((t) => leftUndone.has(t)))
        ? undefined
        : { about, from: at, to: at + said.trim().split(' ').length, end: at + part.length };
    });
    if (hit) all.set(at, hit);
    from += part.length;
  }
  return all;
}
