/** Forms of one word or of several, each with what it means, looked up by the first word. Where several fit, the list's order stands. */
import { expand } from './template.ts';
import type { Token } from './tokens.ts';

export interface Form<T> {
  readonly words: readonly string[];
  readonly means: T;
}
/** By the first word, and by the second; a form of one word stands in all lists of its word. */
export type Forms<T> = ReadonlyMap<string, ReadonlyMap<string, readonly Form<T>[]>>;
/** What stands behind the last word. */
const END = '';

export function formsOf<T>(list: Iterable<readonly [readonly string[], T]>): Forms<T> {
  const forms = new Map<string, Map<string, Form<T>[]>>();
  for (const [words, means] of list) {
    const [first = END, second] = words;
    const known = forms.get(first) ?? new Map<string, Form<T>[]>([[END, []]]);
    forms.set(first, known);
    const form = { words, means };
    if (second === undefined) for (const one of known.values()) one.push(form);
    else if (known.has(second)) known.get(second)?.push(form);
    else known.set(second, [...(known.get(END) ?? []), form]);
  }
  return forms;
}

/** Every form of templates, the longest first. */
export const longestOf = <T>(rows: readonly (readonly [readonly string[], T])[]): Forms<T> =>
  formsOf(
    rows
      .flatMap(([say, means]) => say.flatMap((form) => expand(form).map((words) => [words, means] as const)))
      .sort((a, b) => b[0].length - a[0].length),
  );

/** The words that one of the forms begins with. */
export const firstWords = (...all: readonly Forms<unknown>[]): readonly string[] => all.flatMap((forms) => [...forms.keys()]);

/** The first form that stands at this token and that `fits`. */
export function formAt<T>(forms: Forms<T>, tokens: readonly Token[], at: number, fits?: (form: Form<T>) => boolean): Form<T> | undefined {
  const word = tokens[at]?.t;
  const begun = word === undefined ? undefined : forms.get(word);
  const known = begun?.get(tokens[at + 1]?.t ?? END) ?? begun?.get(END);
  if (known === undefined) return undefined;
  for (const form of known) if (standsAt(form.words, tokens, at) && (fits?.(form) ?? true)) return form;
  return undefined;
}
/** From the third word on: the first two are looked up. Loops, for a thousand forms are asked in a phrase. */
function standsAt(words: readonly string[], tokens: readonly Token[], at: number): boolean {
  for (let i = 2; i < words.length; i += 1) if (tokens[at + i]?.t !== words[i]) return false;
  return true;
}
