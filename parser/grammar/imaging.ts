/** "Advised x-rays of one oh nine, she'll think about it", "that wants scoping", "x-rays booked": pictures and a look that are to come, or are not wanted. */
import { imagingForms, imagingNames, imagingWords } from '../lexicon/imaging.ts';
import { placeOf, pointsBack } from './followUps.ts';
import { findingsIn } from './has.ts';
import { first } from './lists.ts';
import type { Mark } from './scan.ts';
import { ownWords } from './tokens.ts';
import type { WorkRule } from './work.ts';

const forms = imagingForms.flatMap(({ state, form }) =>
  imagingNames.map(([procedure, names]) => ({
    state,
    procedure,
    form: new RegExp(`^(?!.*\\b(?:refer\\w*|vets?|hospital|specialist)\\b.* ${names})${form(names)}$`),
  })),
);

const named: ReadonlySet<string> = new Set(imagingWords);

export const imaging: WorkRule = (marks, tokens, { carry }) => {
  if (!tokens.some(({ t }) => named.has(t)) || findingsIn(marks)) return [];
  const text = ownWords(tokens).join(' ');
  const hit = first(forms, (one) => (one.form.test(text) ? one : undefined));
  if (hit === undefined) return [];
  const { place = null } = placeOf(marks);
  const leant =
    place === null && carry.place && pointsBack(text)
      ? placeOf(carry.place.map((raw): Mark => ({ from: 0, to: 0, place: raw }))).place
      : null;
  return [
    {
      body: { kind: 'treatment', procedure: hit.procedure, state: hit.state, place: place ?? leant ?? null },
      marks: marks.map((_, m) => m),
      rules: ['work'],
      ...(leant ? { how: { place: 'carried' as const } } : {}),
      doubts: [],
    },
  ];
};
