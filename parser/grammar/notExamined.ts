/** Said to be not seen or not felt: never the same as normal. */
import type { Made } from './made.ts';
import { resolvePlace } from './resolve.ts';
import type { WorkRule } from './work.ts';
import { findingsIn } from './has.ts';

export const notExamined: WorkRule = (marks, tokens) => {
  const cue = marks.findIndex((mark) => mark.terms?.some((t) => t.k === 'work' && t.term.as === 'notExamined'));
  const words = tokens.map(({ t }) => t);
  const bareNotSeen = words.join(' ').endsWith('not seen') && !findingsIn(marks);
  if (cue < 0 && !bareNotSeen) return [];
  const placings = marks.flatMap((mark, i) => (mark.place ? [{ raw: mark.place, marks: [i] }] : []));
  const { place } = resolvePlace(placings, { kinds: ['T', 'S', 'R', 'G'], missing: new Set() });
  if (bareNotSeen && cue < 0) return place === null ? [] : [bare(place, placings.flatMap((p) => p.marks), marks.length)];
  // "could not see any hooks": what was not seen is a finding ruled out, not a place left out.
  if (place === null || findingsIn(marks)) return [];
  const means = (marks[cue]?.terms ?? []).flatMap((t) => (t.k === 'work' && t.term.as === 'notExamined' && t.term.means ? [t.term.means] : []))[0];
  const from = Math.max(marks[cue]?.to ?? 0, ...placings.map((p) => marks[p.marks[0] as number]?.to ?? 0));
  const reason = words.slice(from).join(' ').replace(/^(because|as|since|due to)\s+/, '').replace(/^(he|she|it|the horse)\s+/, '').trim();
  return [{ body: { kind: 'not-examined', place, ...(reason !== '' ? { reason } : {}), ...(means ? { means } : {}) }, marks: marks.map((_, i) => i), rules: ['not examined'], doubts: [] }];
};

/** A bare "not seen" after a place: absent, or not looked at? Asked, never assumed. */
const bare = (place: NonNullable<ReturnType<typeof resolvePlace>['place']>, _marks: readonly number[], count: number): Made => ({
  marks: Array.from({ length: count }, (_, i) => i), rules: ['bare not seen'],
  doubts: [{ doubt: 'two-readings', place, readings: [{ label: 'missing', bodies: 'teeth' in place ? [{ kind: 'finding', condition: 'missing', presence: 'present', when: 'now', place }] : [] }, { label: 'not examined', bodies: [{ kind: 'not-examined', place }] }] }],
});
