/** Milk teeth: of a cap it is the cap that is loose. */
import { quadrantOf } from '../teeth.ts';
import { become, teethOf, type Read, type Rule } from './rule.ts';

/** "the cap on six oh six is loose": of a cap it is the cap that is loose. */
export const looseCap: Rule = (reads) =>
  reads.flatMap((read, i) => {
    const cap = (one: Read | undefined): boolean =>
      one?.clause.head.condition?.id === 'retained-cap' && /^caps?(?: (?:still )?on)?$/.test(one.said);
    const loose = (one: Read | undefined): boolean =>
      (one?.clause.head.condition?.id === 'mobility'
        ? one.clause.head.condition.strength !== 'absentSay'
        : one?.clause.head.condition?.id === 'loose-cap' && one.clause.head.condition.strength === 'withPlace') &&
      one !== undefined &&
      !one.clause.scopes.includes('absent');
    const ofIt = (one: Read | undefined, capRead: Read | undefined): boolean =>
      one?.clause.placings.every(
        ({ marks }) => (marks[0] as number) > one.clause.head.mark || capRead?.clause.placings.some((p) => p.marks[0] === marks[0]),
      ) ?? false;
    if (loose(read) && cap(reads[i - 1]) && ofIt(read, reads[i - 1])) return [];
    // "caps on five oh seven and six oh seven are loose": the teeth were read with what is said of them.
    const between = (a: Read | undefined, b: Read | undefined): boolean =>
      cap(a) &&
      loose(b) &&
      a?.clause.placings.length === 0 &&
      (b?.clause.placings.length ?? 0) > 0 &&
      b?.clause.placings.every(({ marks }) => (marks[0] as number) > a.clause.head.mark && (marks[0] as number) < b.clause.head.mark) ===
        true;
    if (between(read, reads[i + 1])) return [];
    if (between(reads[i - 1], read))
      return [
        {
          ...read,
          made: read.made.map((made) => {
            const next = become(made, { condition: 'loose-cap' }, 'a loose cap');
            return { ...next, marks: [...next.marks, ...(reads[i - 1]?.made[0]?.marks ?? [])] };
          }),
        },
      ];
    // "caps still on five oh eight and six oh eight, seven oh eight loose": a milk tooth in a breath about caps is one.
    if (
      loose(read) &&
      reads.some((one) => one.clause.head.condition?.id === 'retained-cap') &&
      read.made.every(({ body }) => teethOf(body).length > 0 && teethOf(body).every((t) => quadrantOf(t) >= 5))
    )
      return [{ ...read, made: read.made.map((made) => become(made, { condition: 'loose-cap' }, 'a loose cap')) }];
    if (!cap(read) || !loose(reads[i + 1]) || !ofIt(reads[i + 1], read)) return [read];
    return [
      {
        ...read,
        made: read.made.map((made) => {
          const next = become(made, { condition: 'loose-cap' }, 'a loose cap');
          return { ...next, marks: [...next.marks, ...(reads[i + 1]?.made[0]?.marks ?? []).slice(0, 1)] };
        }),
      },
    ];
  });
