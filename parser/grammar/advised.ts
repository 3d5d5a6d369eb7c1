/** "Would you soak his hay from now on", "he'd be better fed off the floor": advice to the owner, said as it is asked. */
import { advised, betterFed, bitAdvised, daily, politeEnd, ringIf, toldThem, wantedSo } from '../lexicon/advising.ts';
import { codesIn } from './has.ts';
import { first, where } from './lists.ts';
import { partsOf } from './pauses.ts';
import { ownWords } from './tokens.ts';
import type { WorkRule } from './work.ts';

/** The part between two pauses that asks it, and what comes behind: what stands before is another's. */
export const advisedThere: WorkRule = (marks, tokens) => {
  let from = 0;
  const parts = partsOf(tokens).map((part) => {
    const begins = from;
    from += part.length;
    return { from: begins, to: from, text: ownWords(part).join(' ') };
  });
  const asked = first(parts, (part) => {
    const text = first([advised, wantedSo, betterFed, toldThem, daily, bitAdvised], (form) => form.exec(part.text)?.groups?.['text']);
    return text === undefined ? undefined : { ...part, text };
  });
  const warned = asked ? undefined : ringIf.exec(ownWords(tokens).join(' '))?.groups?.['text'];
  if (warned !== undefined && !codesIn(marks))
    return [
      {
        body: { kind: 'follow-up', action: 'advise-owner', text: warned },
        marks: marks.map((_, m) => m),
        rules: ['advice to the owner'],
        doubts: [],
      },
    ];
  if (asked === undefined) return [];
  const own = where(marks, (mark) => mark.from >= asked.from && mark.to <= asked.to);
  if (codesIn(marks.filter((_, i) => own.includes(i)))) return [];
  return [
    {
      body: { kind: 'follow-up', action: 'advise-owner', text: asked.text.replace(politeEnd, '') },
      marks: own,
      rules: ['advice to the owner'],
      doubts: [],
    },
  ];
};
