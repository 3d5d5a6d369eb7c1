/** The sheet promises nothing that is not heard: what it prints is read by the grammar as what it stands beside. */
import { expect, test } from 'vitest';
import { helpSheet } from '../../server/report/helpSheet.ts';
import { commands } from '../../parser/lexicon/commands.ts';
import { conditions, type ConditionId } from '../../parser/lexicon/conditions.ts';
import { procedures } from '../../parser/lexicon/procedures.ts';
import { shortest } from '../../parser/lexicon/shortest.ts';
import type { ConditionEntry } from '../../parser/lexicon/types.ts';
import { escaped } from '../../server/report/html.ts';
import { parseText, emptyContext } from '../../parser/index.ts';

const page = helpSheet();

test('every finding, command and work of the lexicon is on it, in plain words', () => {
  for (const { label } of [...Object.values(conditions), ...Object.values(commands)]) expect(page).toContain(`<dt>${escaped(label)}</dt>`);
  for (const { label } of Object.values(procedures)) expect(page).toContain(escaped(label.toLowerCase()));
  for (const [, said] of page.matchAll(/<dd>([^<]*)<\/dd>/g)) expect(said).not.toMatch(/[[\]|]/);
  expect(page).not.toMatch(/<script|https?:/);
});

test("a finding's first form, at a place of its kind, is read as that finding", () => {
  const at = {
    T: ['on one oh six', 'on four oh four'],
    S: ['between three oh nine and three ten'],
    R: ['on the upper left'],
    G: [''],
    N: [''],
  };
  const read = (entry: ConditionEntry): readonly string[] =>
    [...entry.places, 'N' as const]
      .flatMap((kind) => at[kind])
      .flatMap((place) =>
        parseText('h/1', `${shortest((entry.say[0] ?? entry.withPlace?.[0]) as string)} ${place}`.trim(), emptyContext()).items.map(
          (item) => (item.kind === 'finding' ? item.condition : item.kind),
        ),
      );
  const unread = (Object.entries(conditions) as [ConditionId, ConditionEntry][]).filter(([id, entry]) => !read(entry).includes(id));
  expect(unread.map(([id]) => id)).toEqual([]);
});
