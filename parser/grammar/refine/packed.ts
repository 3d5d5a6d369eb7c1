/** Beside a gap "packed" is feed; alone it may be a filling. */
import { standing } from '../carry.ts';
import type { FindingBody } from '../made.ts';
import type { Token } from '../tokens.ts';
import { asked, each, type Rule } from './rule.ts';

const byMe = /\b(?:i|we)(?: have)?(?: just| then| also| only)?$/;
const textBefore = (tokens: readonly Token[], to: number): string =>
  tokens
    .slice(Math.max(0, to - 3), to)
    .map(({ t }) => t)
    .join(' ');
const gaps = new Set(['diastema', 'food-packing', 'periodontal-pocket']);

/** "valve diastema, packed": beside a gap it is feed that is packed; alone it may be feed or a filling. */
export const packed: Rule = (reads, { context, carry, marks, tokens }) => {
  const last = standing(context, carry.last);
  // "packed solid, flushed it out": feed; "flushed and packed": what was put in afterwards.
  const pack = reads.find(({ said }) => said.startsWith('pack'))?.clause.head.mark ?? Infinity;
  const gap = reads
    .flatMap(({ made }) => made)
    .find(({ body }) => body?.kind === 'finding' && gaps.has(body.condition) && body.place !== null)?.body as FindingBody | undefined;
  const otherWork = reads.some(({ clause, said }) => clause.head.work !== undefined && !said.startsWith('pack') && clause.head.mark < pack);
  const gapSaid =
    reads.some(({ clause }) => gaps.has(clause.head.condition?.id ?? '')) ||
    (last?.kind === 'finding' && gaps.has(last.condition) && last.presence === 'present');
  return each(reads, (made, { said, clause }) => {
    // "i've packed the lower one": feed is packed by nobody.
    if (byMe.test(textBefore(tokens, marks[clause.head.mark]?.from ?? 0))) return made;
    const none =
      (said === 'packing' || said === 'packed') &&
      gapSaid &&
      !otherWork &&
      made.body?.kind === 'treatment' &&
      made.body.state === 'not-done';
    if (none)
      return {
        ...made,
        body: {
          kind: 'finding',
          condition: 'food-packing',
          presence: 'absent',
          when: 'now',
          place: (made.body?.kind === 'treatment' ? made.body.place : null) ?? gap?.place ?? null,
        },
        doubts: [],
        rules: ['finding', 'absent', 'packed beside a gap'],
      };
    if (said !== 'packed' || otherWork || made.rules.includes('filled') || made.body?.kind !== 'treatment' || made.body.state !== 'done')
      return made;
    const food: FindingBody = { kind: 'finding', condition: 'food-packing', presence: 'present', when: 'now', place: made.body.place };
    return gapSaid ? { ...made, body: food, rules: ['finding', 'packed beside a gap'] } : asked(made, [food, made.body]);
  });
};

const gapKinds: ReadonlySet<string> = new Set(['open', 'valve']);
/** "diastema ..., valve type, food packed": a gap is a valve, and not the feed in it. */
export const kindOfGap: Rule = (reads) => {
  const found = reads.flatMap(({ made }) => made.map(({ body }) => body)).filter((body) => body?.kind === 'finding');
  const at = (body: FindingBody): string => JSON.stringify(body.place);
  const kindsOf = (body: FindingBody): NonNullable<FindingBody['qualifiers']> =>
    (body.qualifiers ?? []).filter((kind) => gapKinds.has(kind));
  const gapAt = new Set(found.filter(({ condition, place }) => condition === 'diastema' && place !== null).map(at));
  const said = found.find((body) => body.condition !== 'diastema' && gapAt.has(at(body)) && kindsOf(body).length > 0);
  if (said === undefined) return reads;
  return each(reads, (made) => {
    const { body } = made;
    if (body?.kind !== 'finding' || at(body) !== at(said)) return made;
    const { qualifiers, ...bare } = body;
    const own = body.condition !== 'diastema' ? [] : kindsOf(kindsOf(body).length > 0 ? body : said);
    const all = [...own, ...(qualifiers ?? []).filter((kind) => !gapKinds.has(kind))];
    return { ...made, body: all.length > 0 ? { ...bare, qualifiers: all } : bare };
  });
};
