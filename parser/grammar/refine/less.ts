/** A group less what was named, left out or ruled out in the same phrase. */
import type { Place } from '../../contract/item.ts';
import { rowIds, rowTeeth, type RowId } from '../../lexicon/teeth.ts';
import type { Clause } from '../assemble.ts';
import { standing } from '../carry.ts';
import { leftOut, less, type Exception } from '../except.ts';
import type { RawPlace } from '../places.ts';
import { rowOf } from '../pointing.ts';
import { resolvePlace, wantedBy } from '../resolve.ts';
import { isGlue, type Mark } from '../scan.ts';
import type { Made } from '../made.ts';
import { become, each, finding, teethAt, teethOf, type Rule } from './rule.ts';

/** The row of cheek teeth, or the front teeth, that a part of it lies in. */
function rowAround({ positions, jaw, side, quadrants }: RawPlace): RawPlace {
  const at = positions ?? [6];
  return {
    ...(jaw ? { jaw } : {}),
    ...(side ? { side } : {}),
    ...(quadrants ? { quadrants } : {}),
    ...(jaw || side || quadrants ? {} : { all: true }),
    positions: at.every((p) => p <= 3) ? [1, 2, 3] : at.every((p) => p === 4) ? [4] : [6, 7, 8, 9, 10, 11],
    plural: true,
  };
}

/** A clause names nothing beside what it leaves out, or the whole mouth. */
const nothingBut = ({ head, placings }: Clause, cue: number, places: readonly number[]): boolean =>
  placings.every(({ raw, marks: at }) => raw.region === 'mouth' || raw.all || (cue < head.mark && at.every((m) => places.includes(m))));
const wholeMouth = /\b(?:everything|all (?:the|his|her|of the) teeth|(?:whole|entire) mouth)\b/;

/** "upper right normal apart from a hook on one oh six", "all worn bar the sixes", "nothing else on that row": the group less what was named. */
export const lessThoseNamed: Rule = (reads, { context, carry, text, words, excepts, marks, tokens }) => {
  const anyOthers = /\b(else|rest|others|otherwise)\b/.test(text);
  if (excepts.length === 0 && !anyOthers && !words.includes('other')) return reads;
  return each(reads, (made, { clause }) => {
    // "the other incisors are fine", "all other teeth": of this clause's own place.
    const others =
      anyOthers ||
      clause.placings.some(({ marks: at }) => at.some((m) => words[(marks[m] as Mark).from - 1] === 'other')) ||
      text.includes('other teeth');
    const body = finding(made);
    const id = clause.head.condition?.id;
    if (body === undefined || id === undefined) return made;
    const ruledOut = body.presence === 'absent';
    // What is left out of a finding that is there has no finding of its own behind it; of one ruled out it may.
    const mine = excepts.filter(
      ({ cue, places }) =>
        places.length > 0 &&
        !(
          clause.placings[0]?.marks[0] !== undefined &&
          clause.placings[0].marks[0] > cue &&
          places.includes(clause.placings[0].marks[0])
        ) &&
        !reads.some((other) => other.clause.head.mark > clause.head.mark && other.clause.head.mark < cue),
    );
    const named = ruledOut
      ? reads
          .filter((other) => other.clause.head.mark > clause.head.mark || others)
          .flatMap(({ made: them }) =>
            them.flatMap(({ body: other }): Place[] =>
              other === undefined || other === made.body || teethAt(other).length === 0 ? [] : [{ teeth: [...teethAt(other)] }],
            ),
          )
      : [];
    const known =
      others && ruledOut
        ? context.items.flatMap((item): Place[] =>
            item.kind === 'finding' && item.presence !== 'absent' && item.when === 'now' && teethAt(item).length > 0
              ? [{ teeth: [...teethAt(item)] }]
              : [],
          )
        : [];
    // "everything apart from the lower sixes is spot on": all but those, and never those.
    const aside = excepts.find(({ cue, places }) => places.length > 0 && nothingBut(clause, cue, places));
    const where = aside && leftOut(aside, id, marks);
    const teeth = where !== undefined && where !== null && ('teeth' in where || 'rows' in where);
    if (ruledOut && id === 'abnormality' && aside && named.length === 0 && !(teeth && clause.placings.some(({ raw }) => raw.all))) {
      const used = [...new Set([...made.marks, aside.cue, ...aside.places])];
      const there = (place: Place | null): Made => ({ ...become(made, { place }, 'less those named'), marks: used });
      if (!teeth)
        // What a part that is not of teeth has is not said.
        return { ...there(null), doubts: [{ doubt: 'no-condition', place: where ?? null, marks: [aside.cue, ...aside.places] }] };
      return carry.place === undefined || wholeMouth.test(text)
        ? there(less({ rows: [...rowIds] }, [where]))
        : { ...there(null), less: [where] };
    }
    // "all but the last two on the bottom left are sharp": of that row the others.
    const all = excepts.find(
      ({ cue, places }) =>
        cue < clause.head.mark &&
        places.length > 0 &&
        ['all', 'every', 'everything', 'everywhere'].includes(tokens[(marks[cue] as Mark).from]?.t ?? '') &&
        clause.placings.length > 0 &&
        clause.placings.every((p) => p.marks.every((m) => places.includes(m))),
    );
    // "all but three oh six are cupped": all of what was named in the phrase before.
    if (all && body.place && clause.placings.some(({ raw }) => raw.codes !== undefined))
      return { ...become(made, { place: null }, 'less those named'), less: [body.place] };
    const whole =
      all && clause.placings.length === 1
        ? resolvePlace([{ raw: rowAround(clause.placings[0]?.raw as RawPlace), marks: [] }], wantedBy(id, new Set(), true)).place
        : null;
    if (whole && body.place) {
      const rest = less(whole, [body.place]);
      if (rest !== whole) return become(made, { place: rest }, 'less those named');
    }
    const out = [...mine.flatMap((one) => leftOut(one, id, marks, body.place) ?? []), ...named, ...known];
    // "hook on four oh six, nothing else in that row": the row of the tooth that was named.
    if (
      others &&
      ruledOut &&
      body.condition === 'abnormality' &&
      body.place !== null &&
      'teeth' in body.place &&
      body.place.teeth.every((t) => named.some((one) => 'teeth' in one && one.teeth.includes(t)))
    ) {
      const rows = (Object.keys(rowTeeth) as RowId[]).filter((row) => teethOf(body).some((t) => rowTeeth[row].includes(t)));
      return become(
        made,
        { place: rows.length === 0 || !/\b(row|arcade|along|quadrant|there)\b/.test(text) ? null : less({ rows }, named) },
        'less those named',
      );
    }
    // "rest of the row normal": the row of what was found last, here or in the phrase before.
    if (others && ruledOut && id === 'abnormality' && body.place === null && /\bthe (row|arcade|quadrant)\b/.test(text)) {
      const here = reads.flatMap((one) => one.made.flatMap((m) => (m === made ? [] : (finding(m)?.place ?? [])))).at(-1);
      const last = standing(context, carry.last);
      const near = here ?? (last && 'place' in last ? last.place : undefined);
      const row = near ? rowOf(near) : undefined;
      if (row)
        return { ...become(made, { place: less({ rows: [row] }, out) }, 'less those named'), how: { ...made.how, place: 'carried' } };
    }
    if (out.length === 0) return made;
    const used = [...made.marks, ...mine.flatMap(({ cue, places }) => [cue, ...places])];
    // The group itself may have been named in the phrase before.
    if (body.place === null)
      return mine.length > 0 || (ruledOut && named.length > 0 && excepts.length > 0) ? { ...made, marks: used, less: out } : made;
    const place = less(body.place, out);
    return place === body.place ? made : { ...become(made, { place }, 'less those named'), marks: used };
  });
};

/** "rasped everything except the lower right": what was left out of the work. */
export const lessOfTheWork: Rule = (reads, { excepts, marks, tokens }) =>
  excepts.length === 0
    ? reads
    : each(reads, (made, { clause }) => {
        const body = made.body;
        if (body?.kind !== 'treatment' || body.procedure !== 'rasp' || made.revises || excepts.length !== 1) return made;
        const [one] = excepts as readonly [Exception];
        const whole =
          one.cue > clause.head.mark && tokens.some(({ t }) => ['everything', 'all', 'everywhere', 'whole', 'lot'].includes(t))
            ? { rows: ['lower-left', 'lower-right', 'upper-left', 'upper-right'] as RowId[] }
            : undefined;
        const out =
          whole && (body.place === null || ('rows' in body.place && body.place.rows.length === 4))
            ? leftOut(one, 'abnormality', marks)
            : null;
        return whole && out
          ? {
              ...made,
              body: { ...body, place: less(whole, [out]) },
              marks: [...new Set([...made.marks, one.cue, ...one.places])],
              rules: [...made.rules, 'less those named'],
            }
          : made;
      });

/** "points everywhere but not on the lower right": what is ruled out of a group is no part of it. */
export const lessRuledOut: Rule = (reads) =>
  each(reads, (made) => {
    const body = finding(made);
    if (body?.presence !== 'present' || body.place?.from !== 'group' || made.revises) return made;
    const out = reads.flatMap(({ made: them }) =>
      them.flatMap((m): Place[] => {
        const other = finding(m);
        return other?.presence === 'absent' && other.condition === body.condition && other.place !== null && other.when === body.when
          ? [other.place]
          : [];
      }),
    );
    const place = out.length === 0 ? body.place : less(body.place, out);
    return place === body.place ? made : become(made, { place }, 'less those named');
  });

/** "cheeks, scar on the left, otherwise clear": the rest of the pair that the phrase begins with, not of the mouth. */
export const otherwiseOfThem: Rule = (reads, { marks, tokens }) => {
  const pair = marks.find((mark) => !isGlue(mark));
  const region = pair?.place?.region;
  if (pair === undefined || region === undefined || !pair.place?.plural || pair.place.side || !tokens[pair.to - 1]?.ends) return reads;
  const said = reads.flatMap(({ made }) =>
    made.flatMap(({ body }) =>
      body?.kind === 'finding' && body.condition !== 'abnormality' && body.place && 'region' in body.place && body.place.region === region
        ? [body.place.side]
        : [],
    ),
  );
  const side = said.length === 1 && said[0] === 'left' ? 'right' : said.length === 1 && said[0] === 'right' ? 'left' : undefined;
  return side === undefined
    ? reads
    : each(reads, (made, { clause }) => {
        const body = finding(made);
        const stop = marks.slice(0, clause.head.mark).findLast((mark) => !isGlue(mark));
        return body?.condition === 'abnormality' &&
          body.presence === 'absent' &&
          body.place === null &&
          tokens[stop?.from ?? -1]?.t === 'otherwise'
          ? become(made, { place: { region, side } }, 'less those named')
          : made;
      });
};
