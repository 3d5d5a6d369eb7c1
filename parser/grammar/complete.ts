/** Whether a reading is complete: each word that tells something is in something that was made, and nothing is asked. */
import { idleWords } from '../lexicon/breaths.ts';
import { light } from '../lexicon/fillers.ts';
import { gather } from './lists.ts';
import type { ItemBody, Made } from './made.ts';
import type { Reading } from './read.ts';
import type { Mark } from './scan.ts';

const idle = new Set([...light, ...idleWords]);
/** Stands by itself: where it is said to be, or it needs no place. */
const standing = (body: ItemBody): boolean =>
  body.kind !== 'finding' || body.place !== null || (body.presence === 'absent' && body.condition !== 'abnormality');

export const bodies = ({ made }: Reading): readonly ItemBody[] => gather(made, ({ body }) => body);
const quiet = ({ body, doubts, how, revises }: Made): boolean =>
  body !== undefined &&
  revises === undefined &&
  Object.keys(how ?? {}).length === 0 &&
  doubts.every(({ doubt }) => doubt === 'irreversible');
const telling = ({ place, measure, grade, number, pulpHorn, unknown, terms }: Mark): boolean =>
  place !== undefined ||
  measure !== undefined ||
  grade !== undefined ||
  number !== undefined ||
  pulpHorn !== undefined ||
  unknown === true ||
  (terms ?? []).some(({ k }) =>
    ['condition', 'surface', 'qualifier', 'severity', 'severityKept', 'change', 'work', 'side', 'jaw', 'row'].includes(k),
  );
/** Whether what a word says is in what was made: a word that a rule took and did nothing with is lost. */
function used({ terms, measure, grade, number }: Mark, all: readonly ItemBody[]): boolean {
  const findings = gather(all, (body) => (body.kind === 'finding' ? body : undefined));
  const doses = all.some(({ kind }) => kind === 'sedation' || kind === 'medication');
  if (
    measure?.unit !== undefined &&
    all.every((body) => !('measures' in body && body.measures) && !('amountMm' in body) && !('dose' in body))
  )
    return false;
  if (grade?.announced && findings.every((body) => body.grade === undefined)) return false;
  if (number !== undefined && all.every((body) => body.kind === 'follow-up' && body.after === undefined)) return false;
  return (
    (terms ?? []).length === 0 ||
    (terms ?? []).some((t) => {
      switch (t.k) {
        case 'severity':
          return (
            findings.some(
              ({ severity, severitySaid, condition }) =>
                severity !== undefined || severitySaid !== undefined || condition === 'abnormality',
            ) || findings.length < all.length
          );
        case 'qualifier':
          return (
            findings.some(({ qualifiers, condition }) => qualifiers?.includes(t.id) || condition.includes(t.id)) ||
            findings.length < all.length
          );
        case 'change':
          return findings.some(({ change }) => change !== undefined) || findings.length < all.length;
        case 'work':
          return t.term.as === 'instrument'
            ? all.some((body) => body.kind === 'treatment' && body.instrument !== undefined)
            : t.term.as === 'route'
              ? doses
              : t.term.as === 'vet'
                ? findings.length < all.length && all.some((body) => body.kind !== 'finding' && (body.kind !== 'treatment' || 'by' in body))
                : findings.length < all.length;
        default:
          return true;
      }
    })
  );
}
/** @returns whether every word that tells something was used, every finding has its place, and nothing was asked or carried */
export const whole = (reading: Reading): boolean => {
  const taken = new Set<number>();
  for (const { marks } of reading.made) marks.forEach((m) => taken.add(m));
  const all = bodies(reading);
  // What a rule claimed is a mere stop among the marks; what it was stands in the scan, unless something was put in between.
  const said = reading.scanned.length === reading.marks.length ? reading.scanned : reading.marks;
  return (
    reading.made.length > 0 &&
    reading.made.every(quiet) &&
    all.every(standing) &&
    (reading.scanned.filter(telling).length > 1 || all.every(({ kind }) => kind !== 'finding')) &&
    reading.takenBack.length === 0 &&
    said.every(
      (mark, i) =>
        (taken.has(i) && used(mark, all)) || !telling(mark) || reading.tokens.slice(mark.from, mark.to).every(({ t }) => idle.has(t)),
    )
  );
};

/** Findings and work take their own words only: where none is left over, the phrase was read. What takes a whole sentence may have taken another's. */
export const precise = (reading: Reading): boolean => bodies(reading).every(({ kind }) => kind === 'finding' || kind === 'treatment');
export const complete = (reading: Reading): boolean => precise(reading) && whole(reading);
