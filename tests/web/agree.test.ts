/** The page and the server must not disagree: what may be typed, and what was not looked at yet. Sentences drawn at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DraftItem } from '../../parser/contract/draft.ts';
import { Item, type Place } from '../../parser/contract/item.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { regionIds, regions } from '../../parser/lexicon/regions.ts';
import { permanentTeeth, rowIds } from '../../parser/lexicon/teeth.ts';
import type { PlaceKind } from '../../parser/lexicon/types.ts';
import { coverageOf } from '../../server/session/coverage.ts';
import { illegal } from '../../server/session/legal.ts';
import { emptyDraft } from '../../server/session/reduce.ts';
import { fieldsOf } from '../../web/check/fields.ts';
import { left } from '../../web/check/notLooked.ts';
import { rowWords } from '../../web/mouth/names.ts';
import { spaces } from '../../web/mouth/places.ts';

const places: Readonly<Record<PlaceKind, Place | null>> = {
  T: { teeth: ['106'] },
  S: { spaces: [['106', '107']] },
  R: { rows: ['upper-left'] },
  G: { region: 'tongue' },
  N: null,
};
const evidence = { utterance: 'u', words: [], rules: [] };

describe.each(['present', 'absent', 'suspected'] as const)('%s', (presence) => {
  test('every place and grade the form offers is taken by the server, and every place it does not offer is refused', () => {
    for (const condition of Object.keys(conditions)) {
      const form = { kind: 'finding', condition, presence, when: 'now', place: null };
      const fields = fieldsOf(form);
      const offered = fields.find((f) => f.control === 'place')!;
      for (const [kind, place] of Object.entries(places)) {
        const item = Item.parse({ ...form, place, id: 'x', evidence });
        expect(illegal(item, new Set(['place'])) === null, `${condition} ${kind}`).toBe(
          (offered as { kinds: readonly string[] }).kinds.includes(kind),
        );
      }
      for (const field of fields)
        if (field.control === 'grade')
          for (const { value } of field.options) {
            expect(
              illegal(Item.parse({ ...form, grade: { scale: field.scale, value }, id: 'x', evidence }), new Set(['grade'])),
              `${condition} ${value}`,
            ).toBeNull();
          }
    }
  });
});

const place = fc.oneof(
  fc.constant(null),
  fc.subarray([...permanentTeeth], { minLength: 1, maxLength: 12 }).map((teeth) => ({ teeth })),
  fc.constantFrom(...spaces).map(([a, b]) => ({ spaces: [[a, b]] as [string, string][] })),
  fc.subarray([...rowIds], { minLength: 1 }).map((rows) => ({ rows })),
  fc.record({
    region: fc.constantFrom(...regionIds),
    side: fc.constantFrom('left', 'right', 'both', undefined),
    jaw: fc.constantFrom('upper', 'lower', undefined),
  }),
);
const entry = fc
  .record({
    place,
    kind: fc.constantFrom('finding', 'treatment', 'not-examined', 'follow-up'),
    state: fc.constantFrom('open', 'kept', 'struck', 'revised'),
  })
  .map(({ place: at, kind, state }): DraftItem => ({
    state: state as DraftItem['state'],
    item: Item.parse({
      id: 'x',
      evidence,
      kind,
      place: at,
      ...(kind === 'finding'
        ? { condition: 'hook', presence: 'present', when: 'now' }
        : kind === 'treatment'
          ? { procedure: 'rasp', state: 'done' }
          : kind === 'follow-up'
            ? { action: 'monitor' }
            : {}),
    }),
  }));
test('the list on the screen and the spoken answer to "what is left" name the same rows, teeth and regions', () => {
  fc.assert(
    fc.property(fc.array(entry, { maxLength: 12 }), (items) => {
      const spoken = coverageOf({ ...emptyDraft('x'), items });
      const shown = left(items);
      expect(shown.map((o) => o.label)).toEqual([
        ...spoken.rows.map((r) => rowWords[r.row]),
        ...spoken.regions.map((r) => regions[r.region].label),
      ]);
      expect(shown.flatMap((o) => ('region' in o.place ? [o.detail] : []))).toEqual(spoken.regions.map((r) => r.side ?? ''));
      expect(shown.flatMap((o) => ('teeth' in o.place ? o.place.teeth : []))).toEqual(
        spoken.rows.filter((r) => !r.whole).flatMap((r) => r.teeth),
      );
    }),
    { numRuns: 400 },
  );
});
