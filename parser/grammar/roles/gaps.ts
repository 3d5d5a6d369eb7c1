/** A gap between teeth: what was found, or where something else is. */
import type { Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';
import { isHead, type Rule } from './phrase.ts';

/** "flushed the gap between ...": the gap is where, not what. */
export const gapAsPlace: Rule = ({ marks, tokens, i, condition, filled }) =>
  condition?.id === 'diastema' &&
  condition.strength === 'withPlace' &&
  ((worked(marks, i) && !gapNamedFirst(marks, tokens, i) && !gapHad(marks, tokens, i)) || filled || gapIsWhere(marks, tokens, i))
    ? 'glue'
    : undefined;

/** "flushed the packed gap at ...": packed with feed, and no more work. */
export const packedGap: Rule = ({ marks, tokens, i, mark, work }) =>
  work?.id === 'pack' &&
  tokens[mark.from]?.t === 'packed' &&
  ['the', 'that', 'a', 'this', 'both', 'each'].includes(tokens[mark.from - 1]?.t ?? '') &&
  marks.slice(0, i).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done))
    ? { condition: { id: 'food-packing', strength: 'withPlace', plural: false } }
    : undefined;

/** "the gap is packed": with feed; "packed the gap": work on it. */
const worked = (marks: readonly Mark[], at: number): boolean =>
  marks.some(({ terms }, i) =>
    terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && !(t.term.id === 'pack' && (!t.term.done || i > at))),
  );

/** "packed in the three oh nine three ten gap", "opposite the gap": where something is, when it is said of something else. */
function gapIsWhere(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const from = marks[at - 1]?.place ? (marks[at - 1] as Mark).from : (marks[at] as Mark).from;
  const word = (i: number): string => tokens[i]?.t ?? '';
  const lead = ['the', 'that', 'this'].includes(word(from - 1)) ? word(from - 2) : word(from - 1);
  if (lead === 'into') return true;
  // "smell coming out of the three ten three eleven space"
  if (
    lead === 'of' &&
    word(['the', 'that', 'this'].includes(word(from - 1)) ? from - 3 : from - 2) === 'out' &&
    marks.slice(0, at).some(({ terms }) => terms?.some((t) => isHead(t)))
  )
    return true;
  const other = marks.some(({ terms }, i) => i !== at && terms?.some((t) => isHead(t)));
  return other && ['in', 'into', 'at', 'from', 'opposite', 'around', 'down'].includes(lead);
}

/** "gap three oh eight three oh nine full of hay, dug it out": named at its place before any work was. */
const gapNamedFirst = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  marks[at + 1]?.place?.codes !== undefined &&
  !['the', 'that', 'this', 'each', 'every'].includes(tokens[(marks[at] as Mark).from - 1]?.t ?? '') &&
  !marks.slice(0, at).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')) &&
  marks
    .slice(at + 2)
    .find((mark) => !(mark.terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'))
    ?.terms?.some((t) => t.k === 'condition') === true;

/** "two oh eight two oh nine has a gap ..., so I've flushed it": told of its place before any work was. */
const gapHad = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  ['has', 'have', 'had', 'got', 'is'].includes(tokens[(marks[at] as Mark).from - 2]?.t ?? '') &&
  tokens[(marks[at] as Mark).from - 1]?.t === 'a' &&
  !marks.slice(0, at).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure'));
