/** "rasped and balanced", "it moves, mobility grade one", "pocket on the inside of four oh nine, probes to eight mil": one thing said twice, or in two halves, is one. */
import type { ItemBody, Made } from './made.ts';
import { within as inRow, type RawPlace } from './places.ts';
import type { Mark } from './scan.ts';

/** "the lowers", "the lower left" */
const isRow = (mark: Mark | undefined): boolean =>
  mark?.place?.jaw !== undefined && (mark.place.plural === true || mark.place.side !== undefined);

const isIn = (row: RawPlace, body: ItemBody | undefined): boolean => {
  const place = body && 'place' in body ? body.place : null;
  const teeth = !place ? [] : 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces.flat() : [];
  return teeth.length === 0 || teeth.every((tooth) => inRow(row, [tooth]));
};

/** What may be asked about one of the two, and is then asked of the one that stays. */
const mayDoubt: ReadonlySet<string> = new Set(['no-place', 'irreversible', 'off-scale']);

/** Whether one body says nothing that the other does not say; a place left unsaid is the other's. */
const within = (small: ItemBody, large: ItemBody): boolean =>
  small.kind === large.kind &&
  Object.entries(small).every(
    ([name, value]) =>
      equal(value, (large as unknown as Record<string, unknown>)[name]) || (name === 'place' && value === null && 'condition' in small),
  );
const equal = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));
/** "pocket on the inside of four oh nine, probes to eight mil": one finding in two names, neither of which contradicts the other. */
const completes = (a: ItemBody, b: ItemBody): boolean =>
  (a.kind === 'treatment' &&
    b.kind === 'treatment' &&
    a.procedure === 'extract' &&
    b.procedure === 'extract' &&
    a.state === b.state &&
    JSON.stringify(a.place) === JSON.stringify(b.place) &&
    Object.entries(b).every(([name, value]) => !(name in a) || equal((a as unknown as Record<string, unknown>)[name], value))) ||
  (a.kind === 'finding' &&
    b.kind === 'finding' &&
    a.condition === b.condition &&
    a.presence === 'present' &&
    b.presence === 'present' &&
    a.place !== null &&
    JSON.stringify(a.place) === JSON.stringify(b.place) &&
    Object.entries(b).every(
      ([name, value]) => !(name in a) || JSON.stringify((a as unknown as Record<string, unknown>)[name]) === JSON.stringify(value),
    ));
/** "rasped and balanced", "it moves, mobility grade one" are one thing said twice: what says more stays. */
export const once = (made: readonly Made[], marks: readonly Mark[]): readonly Made[] =>
  made.reduce<readonly Made[]>((done, one) => {
    // "hooks on the lowers, and on one oh six too": of the lowers it was not said which, and one oh six is none of them.
    const elsewhere = ({ body, marks: own }: Made, other: Made): boolean =>
      body?.kind === 'finding' && body.place === null && own.some((m) => isRow(marks[m]) && !isIn(marks[m]?.place as RawPlace, other.body));
    const apart = (a: Made, b: Made): boolean => elsewhere(a, b) || elsewhere(b, a);
    const quiet = ({ doubts }: Made): boolean => doubts.every(({ doubt }) => mayDoubt.has(doubt));
    const twin =
      one.body && !one.revises && quiet(one)
        ? done.findIndex(
            (m) =>
              m.body !== undefined &&
              !m.revises &&
              quiet(m) &&
              !apart(m, one) &&
              (within(m.body, one.body as ItemBody) || within(one.body as ItemBody, m.body)),
          )
        : -1;
    const half =
      twin < 0 && one.body && !one.revises && quiet(one)
        ? done.findIndex((m) => m.body !== undefined && !m.revises && quiet(m) && completes(m.body, one.body as ItemBody))
        : -1;
    // "should have taken the cap off" is asked about once.
    const asked =
      one.body === undefined && one.doubts.length > 0
        ? done.findIndex((m) => m.body === undefined && JSON.stringify(m.doubts) === JSON.stringify(one.doubts))
        : -1;
    if (asked >= 0) return done.map((m, i) => (i === asked ? { ...m, marks: [...new Set([...m.marks, ...one.marks])] } : m));
    if (half >= 0)
      return done.map((m, i) =>
        i === half
          ? {
              ...m,
              body: { ...one.body, ...m.body } as ItemBody,
              marks: [...new Set([...m.marks, ...one.marks])],
              how: { ...one.how, ...m.how },
            }
          : m,
      );
    if (twin < 0) return [...done, one];
    return done.map((m, i) => {
      if (i !== twin) return m;
      const [fuller, other] = within(m.body as ItemBody, one.body as ItemBody) ? [one, m] : [m, one];
      const offScale = other.doubts.filter(({ doubt }) => doubt === 'off-scale' && !fuller.doubts.some((own) => own.doubt === doubt));
      return { ...fuller, marks: [...new Set([...m.marks, ...one.marks])], doubts: [...fuller.doubts, ...offScale] };
    });
  }, []);
