/** Two words for one thing: one finding, by the word that says more. */
import { conditions } from '../../lexicon/conditions.ts';
import type { RegionId } from '../../lexicon/regions.ts';
import type { ConditionEntry } from '../../lexicon/types.ts';
import { revision } from '../amend.ts';
import { standing } from '../carry.ts';
import type { Made } from '../made.ts';
import { isGlue, type Mark } from '../scan.ts';
import { otherSide, positionOf, quadrantOf } from '../teeth.ts';
import { asked, become, each, finding, teethOf, type Read, type Rule } from './rule.ts';

const rulesOut = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent') ?? false;
const wolves = /\bwol/;
/** "wolf tooth upper right, blind" is one tooth; "wolf teeth both sides, left one blind" tells which. */
export const blind: Rule = (reads, { marks }) => {
  const at = reads.findIndex(
    ({ said, clause }) => (/\bblind$/.test(said) || clause.head.condition?.id === 'wolf-tooth') && !wolves.test(said),
  );
  const before = at > 0 ? reads[at - 1] : undefined;
  const wolf = before?.made[0] && finding(before.made[0]);
  const own = reads[at]?.made[0];
  const body = own && finding(own);
  if (!before || !wolf || !own || !body || !wolves.test(wolf.condition) || !wolves.test(body.condition)) return reads;
  // "wolf tooth two oh five, and one oh five is a blind one": another tooth, by its number.
  const another = (body.place && 'teeth' in body.place ? body.place.teeth : []).some((tooth) => !teethOf(wolf).includes(tooth));
  if (another && reads[at]?.clause.placings.some(({ raw }) => raw.codes !== undefined)) return reads;
  const side = reads[at]?.clause.placings
    .filter((p) => !before.clause.placings.some((q) => q.marks[0] === p.marks[0]))
    // "..., blind, and nothing on the left": what is ruled out there is no place of it.
    .filter(
      (p) =>
        !(reads[at]?.clause.cues ?? []).some(
          (cue) => cue > (reads[at]?.clause.head.mark ?? 0) && cue < (p.marks.at(-1) as number) && rulesOut(marks[cue]),
        ),
    )
    .map(({ raw }) => raw)
    .findLast((raw) => raw.side === 'left' || raw.side === 'right')?.side;
  const teeth = side === undefined ? teethOf(wolf) : teethOf(wolf).filter((t) => (side === 'left') === [2, 3].includes(quadrantOf(t)));
  // "wolf tooth on the upper left and a blind one on the right": in the same jaw; "blind one upper left" has a place of its own.
  const jawSaid = reads[at]?.clause.placings.some(({ raw }) => raw.jaw !== undefined);
  if (teeth.length === 0 && (side === undefined || jawSaid || new Set(teethOf(wolf).map((t) => quadrantOf(t) <= 2)).size !== 1))
    return reads;
  if (teeth.length === 0)
    return reads.map((read, i) =>
      i === at
        ? {
            ...read,
            made: [{ ...become(own, { place: { teeth: teethOf(wolf).map(otherSide).sort() } }, 'one of those named'), doubts: [] }],
          }
        : read,
    );
  const there = become(own, { place: { teeth: [...teeth] } }, 'one of those named');
  const rest = { ...there, doubts: [] };
  return teeth.length === teethOf(wolf).length && side === undefined
    ? reads.flatMap((read, i) =>
        i === at - 1
          ? []
          : i === at
            ? [{ ...read, made: [{ ...rest, marks: [...(before.made[0] as Made).marks, ...own.marks] }] }]
            : [read],
      )
    : reads.map((read, i) => (i === at ? { ...read, made: [rest] } : read));
};

/** "slant, long on the left": which side of the slant is long, no overlong teeth. */
export const slantLong: Rule = (reads) => {
  const slant = reads.find(({ clause }) => clause.head.condition?.id === 'slant');
  const long = reads.find(({ clause, said }) => clause.head.condition?.id === 'overlong' && (said === 'long' || said === 'high'));
  if (slant === undefined || long === undefined) return reads;
  const raw = long.clause.placings[0]?.raw;
  const where = [raw?.jaw, raw?.side].filter((word) => word !== undefined && word !== 'both').join('-');
  return reads.flatMap((read) =>
    read === long
      ? []
      : read !== slant
        ? [read]
        : [
            {
              ...read,
              made: read.made.map((made) => {
                const joined = become(made, { place: null, ...(where !== '' ? { long: where } : {}) }, 'the long side');
                return { ...joined, marks: [...joined.marks, ...(long.made[0]?.marks ?? [])] };
              }),
            },
          ],
  );
};

/** Cheek teeth are sharp by their enamel points; "points, razor sharp" says so twice. */
export const sharpCheekTeeth: Rule = (reads) => {
  const points = reads.find(({ clause }) => clause.head.condition?.id === 'sharp-enamel-points')?.made[0];
  const said = points && finding(points);
  const named = each(reads, (made) =>
    finding(made)?.condition === 'sharp' && teethOf(made.body).length > 0 && teethOf(made.body).every((t) => positionOf(t) >= 6)
      ? become(made, { condition: 'sharp-enamel-points' }, 'sharp cheek teeth')
      : made,
  );
  return said === undefined
    ? named
    : named.map((read) =>
        read.clause.head.condition?.id !== 'sharp-enamel-points'
          ? read
          : {
              ...read,
              made: read.made.map((made) => {
                const sharp = named
                  .find((other) => other.clause.head.condition?.id === 'sharp')
                  ?.made.find(({ body }) => JSON.stringify(teethOf(body)) === JSON.stringify(teethOf(made.body)));
                return sharp?.body?.kind === 'finding' && finding(made)?.surfaces === undefined && sharp.body.surfaces
                  ? become(made, { surfaces: sharp.body.surfaces }, 'said twice')
                  : made;
              }),
            },
      );
};

const saysMore: Readonly<Partial<Record<string, readonly string[]>>> = {
  missing: ['previously-extracted'],
  'retained-cap': ['loose-cap'],
  lump: ['eruption-bump'],
  swelling: ['eruption-bump', 'lampas'],
};
const nearby: ReadonlySet<string> = new Set(['eruption-bump', 'lampas']);
export const saysLess = Object.keys(saysMore);
/**
 * "three oh nine gone, taken out when he was five": why it is gone; "cap wobbling, not ready yet": which cap; "a lump there, only an eruption
 * bump": which lump, where no "and" makes two of them. Of two names for one thing the one that says more.
 */
export const twoNames: Rule = (reads, { tokens, marks }) => {
  const found = reads.flatMap(({ clause, made }) =>
    made.flatMap((one) => {
      const body = finding(one);
      return body?.presence === 'present' ? [{ one, body, at: marks[clause.head.mark]?.from ?? 0 }] : [];
    }),
  );
  const tied = (a: number, b: number): boolean => tokens.slice(Math.min(a, b), Math.max(a, b)).some(({ t }) => t === 'and');
  const named = new Map(
    found.flatMap(({ one, body, at }) => {
      const more = found.find(
        (other) =>
          saysMore[body.condition]?.includes(other.body.condition) === true &&
          JSON.stringify(other.body.place) === JSON.stringify(body.place) &&
          !(nearby.has(other.body.condition) && tied(at, other.at)),
      );
      return more ? [[one, more.one] as const] : [];
    }),
  );
  return named.size === 0
    ? reads
    : reads.map((read) => ({
        ...read,
        made: read.made
          .filter((made) => !named.has(made))
          .map((made) => {
            const less = [...named].flatMap(([one, more]) => (more === made ? one.marks : []));
            return less.length === 0 ? made : { ...made, marks: [...new Set([...made.marks, ...less])] };
          }),
      }));
};

/** "not happy with one oh eight, suspect an apical infection": what is wrong says that something is. */
export const somethingWrong: Rule = (reads) => {
  const isVague = (made: Made): boolean => {
    const body = finding(made);
    return body?.condition === 'abnormality' && body.presence === 'present';
  };
  const vague = reads.flatMap(({ made }) => made.filter(isVague));
  const sharesPlace = (a: Made, b: Made): boolean => {
    const body = finding(b);
    return (
      body !== undefined && !isVague(b) && body.presence !== 'absent' && JSON.stringify(finding(a)?.place) === JSON.stringify(body.place)
    );
  };
  const named = vague.filter((one) => reads.some(({ made }) => made.some((other) => sharesPlace(one, other))));
  return named.length === 0
    ? reads
    : reads.map((read) => ({
        ...read,
        made: read.made
          .filter((made) => !named.includes(made))
          .map((made) => {
            const own = named.filter((one) => sharesPlace(one, made));
            return own.length === 0 ? made : { ...made, marks: [...new Set([...made.marks, ...own.flatMap(({ marks }) => marks)])] };
          }),
      }));
};

/** "smelly pus from the left nostril", "discharge from both nostrils, clear": how the discharge is, no smell and nothing normal of its own. */
export const howItRuns: Rule = (reads, { marks }) => {
  const how = ({ said, clause }: Read): 'malodorous' | 'clear' | undefined =>
    clause.head.condition?.id === 'malodour' &&
    (marks[clause.head.mark]?.terms ?? []).some((t) => t.k === 'qualifier' && t.id === 'malodorous')
      ? 'malodorous'
      : said === 'clear'
        ? 'clear'
        : undefined;
  const there = (read: Read): string | undefined => {
    const body = read.made.length === 1 && read.made[0] ? finding(read.made[0]) : undefined;
    return body?.presence === 'present' && body.when === 'now' && body.place !== null ? JSON.stringify(body.place) : undefined;
  };
  const discharge = reads.find((read) => read.clause.head.condition?.id === 'discharge' && there(read) !== undefined);
  // Clear is said of a place where nothing is found, too: of the discharge only where it has no place of its own.
  const wherever = (read: Read): string | undefined =>
    how(read) === 'malodorous'
      ? there(read)
      : read.made[0] && read.clause.placings.every(({ marks: own }) => (own[0] as number) < read.clause.head.mark)
        ? JSON.stringify(finding(read.made[0])?.place)
        : undefined;
  const hows = reads.filter((read) => discharge !== undefined && how(read) && wherever(read) === there(discharge));
  if (hows.length === 0) return reads;
  return reads.flatMap((read) =>
    hows.includes(read)
      ? []
      : read !== discharge
        ? [read]
        : [
            {
              ...read,
              made: read.made.map((made) => {
                const qualifiers = [...(finding(made)?.qualifiers ?? []), ...hows.flatMap((one) => how(one) ?? [])];
                // "a bit of a smelly discharge": of the discharge.
                const { severity, severitySaid } =
                  hows.flatMap((one) => (how(one) === 'malodorous' && one.made[0] ? (finding(one.made[0]) ?? []) : []))[0] ?? {};
                const degree = { ...(severity ? { severity } : {}), ...(severitySaid ? { severitySaid } : {}) };
                const own = become(made, { ...degree, qualifiers }, 'how it runs');
                return { ...own, marks: [...own.marks, ...hows.flatMap(({ made: them }) => them.flatMap((m) => m.marks))] };
              }),
            },
          ],
  );
};

/** "wolf tooth lower right displaced": of the tooth just named, where no other place was said. */
export const displacedThere: Rule = (reads) =>
  reads.map((read, i) => {
    const [one, ...more] = read.made;
    const body = one && finding(one);
    const named = reads[i - 1]?.made.map(finding).find((other) => other && wolves.test(other.condition) && other.presence === 'present');
    const place = named?.place;
    if (!one || more.length > 0 || body?.condition !== 'displaced' || body.place !== null || !place || !('teeth' in place)) return read;
    return {
      ...read,
      made: [{ ...become(one, { place }, 'of the tooth just named'), doubts: one.doubts.filter(({ doubt }) => doubt !== 'no-place') }],
    };
  });

/** "displaced as well", right after a fracture, is how the fracture stands. */
export const displacedFracture: Rule = (reads, { context, carry }) => {
  const last = standing(context, carry.last);
  const [read] = reads;
  if (
    reads.length !== 1 ||
    read?.clause.head.condition?.id !== 'displaced' ||
    read.clause.placings.length > 0 ||
    last?.kind !== 'finding' ||
    last.condition !== 'fracture'
  )
    return reads;
  const how =
    read.clause.scopes.includes('absent') || read.clause.head.condition.strength === 'absentSay'
      ? ('undisplaced' as const)
      : ('displaced' as const);
  return [{ ...read, made: [revision(last, { qualifiers: [...(last.qualifiers ?? []), how] }, read.made[0]?.marks ?? [], {})] }];
};

/** "rostrocaudal movement normal", "overbite normal": what was named is normal, and nothing is said of the rest of the mouth. */
export const normalInName: Rule = (reads, { marks, tokens }) => {
  const at = reads.findIndex(({ clause: { head, placings } }, i) => {
    const before = reads[i - 1]?.clause.head;
    const entry = before?.condition && (conditions[before.condition.id] as ConditionEntry);
    return (
      head.condition?.id === 'abnormality' &&
      head.condition.strength === 'absentSay' &&
      placings.length === 0 &&
      (entry?.home !== undefined || entry?.group === 'bite') &&
      before?.condition?.strength === 'say' &&
      tokens[(marks[head.mark] as Mark).from - 1]?.ends !== true &&
      marks.slice(before.mark + 1, head.mark).every(isGlue)
    );
  });
  const [named, normal] = [reads[at - 1]?.made[0], reads[at]?.made[0]];
  const body = named && finding(named);
  if (named === undefined || normal === undefined || body?.presence !== 'present') return reads;
  const home = (conditions[body.condition] as ConditionEntry).home as RegionId | undefined;
  const one = home
    ? become(normal, { place: { region: home } }, 'normal by its name')
    : become(named, { presence: 'absent' }, 'normal by its name');
  return reads.flatMap((read, i) =>
    i === at - 1 ? [] : i === at ? [{ ...read, made: [{ ...one, marks: [...named.marks, ...normal.marks] }] }] : [read],
  );
};

/** "in good condition", "in good nick", of nothing named: the horse, or its mouth. */
export const whoseCondition: Rule = (reads, { text }) =>
  reads.map((read) => {
    const [own, ...more] = read.made;
    const body = own && finding(own);
    return own === undefined ||
      more.length > 0 ||
      body?.condition !== 'abnormality' ||
      body.place !== null ||
      read.clause.placings.length > 0 ||
      !/ (?:condition|nick|shape)$/.test(read.said) ||
      /\b(?:teeth|tooth|mouth)\b/.test(text)
      ? read
      : { ...read, made: [asked(own, [{ ...body, condition: 'body-condition', presence: 'present' }, body])] };
  });
