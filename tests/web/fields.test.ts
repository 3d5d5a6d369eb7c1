/** The form offers only what the record can hold: every choice it offers parses by the contract. */
import { describe, expect, test } from 'vitest';
import { Item } from '../../parser/contract/item.ts';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { scales } from '../../parser/lexicon/scales.ts';
import { blank, fieldsOf, fitted, missing } from '../../web/check/fields.ts';
import { doubtQuestions, kindLabels } from '../../web/labels.ts';
import { doubtKinds } from '../../parser/contract/doubt.ts';
import { itemWords, parts, partOf } from '../../web/words.ts';

const common = { id: 'x', evidence: { utterance: 'u', words: [], rules: [] } };
const filled: Record<string, Record<string, unknown>> = {
  finding: { condition: 'hook', presence: 'present' },
  treatment: { procedure: 'rasp', state: 'done' },
  sedation: { given: true },
  medication: { agent: 'flunixin' },
  'follow-up': { action: 'recheck' },
  'not-examined': {},
  fact: { about: 'behaviour', said: 'stood quietly' },
  note: { text: 'a note' },
};
const kinds = Object.keys(kindLabels) as (keyof typeof kindLabels)[];

describe.each(kinds)('%s', (kind) => {
  test('a new one is not filled in: what is needed is named before it can be kept', () => {
    expect(missing(blank(kind)).length > 0).toBe(Object.keys(filled[kind]!).length > 0);
    const form = { ...blank(kind), ...filled[kind] };
    expect(missing(form)).toEqual([]);
    expect(Item.safeParse({ ...common, ...form }).success).toBe(true);
  });
  test('every value it offers is legal', () => {
    for (const field of fieldsOf({ ...blank(kind), ...filled[kind] })) {
      if (field.control !== 'one' && field.control !== 'many') continue;
      for (const { value } of field.options) {
        const item = { ...common, ...blank(kind), ...filled[kind], [field.name]: field.control === 'many' ? [value] : value };
        expect(Item.safeParse(item).success, `${field.name} ${value}`).toBe(true);
      }
    }
  });
});
test('a condition brings its own scale and places, as the lexicon has them', () => {
  for (const [id, entry] of Object.entries(conditions)) {
    const fields = fieldsOf({ ...blank('finding'), condition: id });
    const grade = fields.find((f) => f.control === 'grade');
    const scale = 'scale' in entry ? (entry.scale as keyof typeof scales) : undefined;
    expect(grade?.control === 'grade' ? grade.options.map((o) => o.value) : undefined).toEqual(
      scale ? [...scales[scale].values] : undefined,
    );
  }
});
test('a grade of another scale falls away when the finding changes', () => {
  expect(fitted({ kind: 'finding', condition: 'hook', grade: { scale: 'mobility', value: '2' } }).grade).toBeUndefined();
  expect(fitted({ kind: 'finding', condition: 'mobility', grade: { scale: 'mobility', value: '2' } }).grade).toEqual({
    scale: 'mobility',
    value: '2',
  });
});
test('no id is shown raw: every condition and doubt has words, every item a part', () => {
  for (const id of Object.keys(conditions)) {
    const item = Item.parse({ ...common, kind: 'finding', condition: id, presence: 'absent', when: 'now', place: null });
    expect(itemWords(item).title).not.toMatch(/-absent|undefined/);
    expect(parts).toContain(partOf(item));
  }
  for (const kind of doubtKinds) expect(doubtQuestions[kind]).toMatch(/[.?]$/);
});
