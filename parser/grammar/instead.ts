/** A whole finding that takes the place of one recorded before: "correction, two oh seven ramp", "that hook was on two oh six". */
import type { Context } from '../contract/draft.ts';
import { corrects, revision } from './amend.ts';
import { standing, type Carry } from './carry.ts';
import type { Made } from './made.ts';
import { bodyOf } from './meaning.ts';
import type { Token } from './tokens.ts';

export function instead(own: readonly Made[], tokens: readonly Token[], context: Context, carry: Carry): readonly Made[] {
  if (corrects(tokens)) return own.map((one) => correction(one, own, context, carry));
  const said = tokens.map(({ t }) => t);
  return own.map((one) => (own.length === 1 ? movedByName(one, said, context) : one));
}

/** "that hook was on two oh six": reaches back by name to the last such finding. */
function movedByName(made: Made, said: readonly string[], context: Context): Made {
  const body = made.body;
  if (
    body?.kind !== 'finding' ||
    body.place === null ||
    made.revises ||
    !/^(?:no )?(?:that|the) (?:\w+ ){1,3}(?:was|is|should be|should have been|goes) (?:on|at|in|for)\b/.test(said.join(' '))
  )
    return made;
  const old = context.items.findLast(
    (item) => item.kind === 'finding' && item.condition === body.condition && item.presence === body.presence,
  );
  return old?.kind !== 'finding' ||
    JSON.stringify(old.place) === JSON.stringify(body.place) ||
    (!said.includes('that') && !said.includes('was'))
    ? made
    : revision(old, { place: body.place }, made.marks, {});
}

/** "correction, two oh seven ramp: a whole finding that begins with taking back takes the place of the last one. */
function correction(made: Made, all: readonly Made[], context: Context, carry: Carry): Made {
  const last = standing(context, carry.last);
  const body = made.body;
  if (all.length !== 1 || body === undefined || last === undefined || last.kind !== body.kind || made.revises) return made;
  // "no, it's fine" over what was found: said of the place, and asked about.
  if (body.kind === 'finding' && body.condition === 'abnormality')
    return body.place === null && 'place' in last && last.place
      ? { ...made, body: { ...body, place: last.place }, how: { ...made.how, place: 'carried' }, doubts: [] }
      : made;
  // "make that infundibular caries": the place stays.
  if ('place' in body && body.place === null && 'place' in last && last.place !== null)
    return correction(
      {
        ...made,
        body: { ...body, place: last.place } as NonNullable<Made['body']>,
        how: { ...made.how, place: 'carried' },
        doubts: made.doubts.filter(({ doubt }) => doubt !== 'no-place'),
      },
      all,
      context,
      carry,
    );
  const was = bodyOf(last);
  const keys = [...new Set([...Object.keys(was), ...Object.keys(body)])].filter(
    (key) => JSON.stringify(was[key]) !== JSON.stringify((body as Record<string, unknown>)[key]),
  );
  const side = (from: object): Record<string, unknown> =>
    Object.fromEntries(keys.map((key) => [key, (from as Record<string, unknown>)[key] ?? null]));
  return { ...made, rules: [...made.rules, 'amend'], revises: { id: last.id, was: side(was), now: side(body) } };
}
