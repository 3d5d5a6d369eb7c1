/**
 * "Do it next time", "the hook next time", "that can wait till next visit": what is put off is the work that the thing last found takes, and
 * the thing named again is no second finding.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { nextVisit, puttingOff } from '../lexicon/governing.ts';
import { procedureOf } from '../lexicon/handling.ts';
import { formAt, longestOf } from './forms.ts';
import type { FindingBody, Made } from './made.ts';
import { standing, type Carry } from './carry.ts';
import { ofAllOfThem } from './oneByOne.ts';
import type { Reading } from './read.ts';

const visits = longestOf([[nextVisit, true]]);
const small: ReadonlySet<string> = new Set(puttingOff);
const definite: ReadonlySet<string> = new Set(['the', 'that', 'this', 'those', 'these']);

export function putOff(made: readonly Made[], reading: Reading, context: Context, carry: Carry): readonly Made[] {
  return planned(withoutTwins(made, context), reading, context, carry);
}

/**
 * "take the hook down next time", "ramp reduced by two, hook left": what was found before, and a part of what is said of it. Of one that no work is
 * told of ("cap's off, hook's reduced") something was said that is not known.
 */
function withoutTwins(made: readonly Made[], { items }: Context): readonly Made[] {
  if (!made.some(({ body }) => body?.kind === 'treatment')) return made;
  const twins = made.filter(
    ({ body, how, doubts, settles, revises }) =>
      body?.kind === 'finding' &&
      how?.place === 'carried' &&
      doubts.length === 0 &&
      !settles?.length &&
      !revises &&
      items.some((item) => item.kind === 'finding' && same(item, body)),
  );
  const workOf = (twin: Made): number => made.findIndex(({ body }) => body?.kind === 'treatment' && placeOf(body) === placeOf(twin.body));
  return made.flatMap((one, i): readonly Made[] => {
    if (twins.includes(one)) return workOf(one) >= 0 ? [] : [{ marks: one.marks, rules: ['half'], doubts: [{ doubt: 'unread' }] }];
    const own = twins.filter((twin) => workOf(twin) === i);
    return own.length > 0 ? [{ ...one, marks: [...new Set([...one.marks, ...own.flatMap((twin) => twin.marks)])] }] : [one];
  });
}
const placeOf = (body: Made['body']): string => JSON.stringify(body && 'place' in body ? body.place : null);
const same = (item: Extract<Item, { kind: 'finding' }>, body: FindingBody): boolean =>
  item.condition === body.condition &&
  item.presence === body.presence &&
  item.when === body.when &&
  JSON.stringify(item.place) === JSON.stringify(body.place) &&
  Object.keys(body).every((key) => key in item);

/** The clause that puts something off: small words around the visit, and maybe the thing by its name. */
function clauseAt({
  tokens,
  marks,
}: Reading): { readonly from: number; readonly to: number; readonly heads: readonly number[] } | undefined {
  const at = tokens.findIndex((_, i) => formAt(visits, tokens, i) !== undefined);
  if (at < 0) return undefined;
  const visit = at + (formAt(visits, tokens, at)?.words.length ?? 0);
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  const stop = tokens.findIndex(({ ends }, i) => i >= visit - 1 && ends === true);
  const to = stop < 0 ? tokens.length : stop + 1;
  const inside = (mark: Reading['marks'][number]): boolean => mark.from >= from && mark.to <= to && mark.to > mark.from;
  const heads = marks.flatMap((mark, m) =>
    inside(mark) && mark.terms?.some((t) => t.k === 'condition') && definite.has(tokens[mark.from - 1]?.t ?? '') ? [m] : [],
  );
  const named = (i: number): boolean =>
    heads.length > 0 &&
    marks.some((mark, m) => inside(mark) && i >= mark.from && i < mark.to && (heads.includes(m) || mark.place !== undefined));
  return tokens.every(({ t }, i) => i < from || i >= to || (i >= at && i < visit) || small.has(t) || named(i))
    ? { from, to, heads }
    : undefined;
}

function planned(made: readonly Made[], reading: Reading, context: Context, carry: Carry): readonly Made[] {
  if (!reading.tokens.some(({ t }) => visits.has(t)) || made.some(({ body }) => body !== undefined && body.kind !== 'finding')) return made;
  const clause = clauseAt(reading);
  if (clause === undefined) return made;
  const named = made.findLast(
    ({ body, marks }) => body?.kind === 'finding' && (clause.heads.length === 0 || clause.heads.some((m) => marks.includes(m))),
  );
  const last = standing(context, carry.last);
  const of = named?.body ?? (clause.heads.length === 0 && made.length === 0 ? last : undefined);
  if (of?.kind !== 'finding' || of.presence === 'absent' || of.when !== 'now' || of.place === null) return made;
  const procedure = procedureOf(of.condition);
  if (procedure === undefined) return made;
  const marks = reading.marks.flatMap(({ from, to }, m) => (from >= clause.from && to <= clause.to && to > from ? [m] : []));
  const carried = named === undefined || named.how?.place === 'carried';
  const work: Made = {
    body: { kind: 'treatment', procedure, place: of.place, state: 'planned' },
    marks,
    rules: ['put off'],
    ...(carried ? { how: { place: 'carried' as const } } : {}),
    doubts: [],
  };
  return withoutTwins(ofAllOfThem([...made, work], reading.tokens, context), context);
}
