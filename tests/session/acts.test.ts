import { describe, expect, test } from 'vitest';
import type { DraftEvent } from '../../parser/contract/draft.ts';
import type { Act } from '../../parser/contract/wire.ts';
import { actOn } from '../../server/session/acts.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { by, finding, hook, opened, said, when } from './made.ts';

const who = { by, when };
const draft = foldDraft('e1', [
  opened(),
  said('e1:0', 'one oh six hook four mil', { items: [hook('106', 4)] }, [1, 3]),
  said('e1:5', 'four ten mobility grade five', {
    items: [finding('mobility', { teeth: ['410'] })],
    doubts: [
      { doubt: 'off-scale', item: 'e1:5.0', legal: ['0', '1', '2', '3'] },
      { doubt: 'unsure', item: 'e1:5.0' },
    ],
  }),
]);
const events = (act: Act): readonly DraftEvent[] => {
  const acted = actOn(draft, act, who);
  if ('error' in acted) throw new Error(acted.error.code);
  return acted.events;
};
const refusal = (act: Act): string => {
  const acted = actOn(draft, act, who);
  return 'error' in acted ? `${acted.error.code}: ${acted.error.message}` : 'done';
};

describe('editing', () => {
  test('keeps the words and the sound it came from, with who and when; only what changed counts as typed', () => {
    const [typed] = events({ act: 'edit', id: 'e1:0.0', item: { ...hook('206', 4) } });
    expect(typed).toMatchObject({
      event: 'typed',
      item: {
        revises: 'e1:0.0',
        place: { teeth: ['206'] },
        how: { place: 'typed' },
        evidence: { utterance: 'e1:0', at: [1, 3], by, when },
      },
    });
    const after = applyEvent(draft, typed!);
    expect(after.items.map((i) => i.state)).toEqual(['revised', 'open', 'kept']);
  });
  test('what the page sends as evidence, id or way is not believed', () => {
    const [typed] = events({
      act: 'add',
      item: { ...hook('206'), id: 'e9:0', how: { place: 'spoken' }, evidence: { utterance: 'e1:0', words: [0], rules: ['place'] } },
    });
    expect(typed).toMatchObject({
      item: { id: 'e1:typed4', how: { place: 'typed', condition: 'typed' }, evidence: { utterance: '', words: [], rules: [], by } },
    });
  });
  test('an edit that changes nothing is a yes', () =>
    expect(events({ act: 'edit', id: 'e1:0.0', item: hook('106', 4) })).toEqual([{ event: 'kept', ids: ['e1:0.0'], ...who }]));
  test('a grade filled in answers the question about the grade, not the other one', () => {
    const made = events({
      act: 'edit',
      id: 'e1:5.0',
      item: finding('mobility', { teeth: ['410'] }, { grade: { scale: 'mobility', value: '3' } }),
    });
    const after = made.reduce(applyEvent, draft);
    expect(after.doubts.map((d) => [d.doubt.doubt, d.settled?.how ?? 'open'])).toEqual([
      ['off-scale', 'completed'],
      ['unsure', 'open'],
    ]);
    expect(after.doubts[1]!.doubt.item).toBe(after.items.at(-1)!.item.id);
  });
});
describe('refused, with nothing changed', () => {
  // Grades 0 to 3 of the AVDC mobility index; the legal teeth of the modified Triadan system (Floyd 1991): fixtures of the lexicon, checked in tests/outside.
  test.each<[string, Act, RegExp]>([
    [
      'a grade the scale does not have',
      { act: 'edit', id: 'e1:5.0', item: finding('mobility', { teeth: ['410'] }, { grade: { scale: 'mobility', value: '5' } }) },
      /^not-legal.*0, 1, 2, 3/,
    ],
    [
      'a grade of another scale',
      { act: 'edit', id: 'e1:0.0', item: { ...hook('106'), grade: { scale: 'mobility', value: '2' } } },
      /^not-legal/,
    ],
    ['a tooth there is not', { act: 'add', item: hook('112x') }, /^not-an-item/],
    ['an ulcer at a tooth', { act: 'add', item: finding('ulcer', { teeth: ['106'] }) }, /^not-legal/],
    ['a condition there is not', { act: 'add', item: finding('gold-tooth', { teeth: ['106'] }) }, /^not-an-item/],
    ['a hook nowhere', { act: 'add', item: finding('hook', null) }, /^not-legal/],
    [
      'an angle in millimetres',
      { act: 'add', item: { ...hook('106'), measures: [{ what: 'angle', value: 3, unit: 'mm' }] } },
      /^not-legal/,
    ],
    ['no item at all', { act: 'add', item: null }, /^not-an-item/],
    ['an item that is gone', { act: 'edit', id: 'e1:77.0', item: hook('106') }, /^not-there/],
    ['striking nothing', { act: 'strike', ids: ['nothing'] }, /^not-there/],
    ['an answer that was not offered', { act: 'settle', doubt: 'e1:5.d0', how: 'reading', reading: 3 }, /^no-such-reading/],
    ['a question that is not there', { act: 'settle', doubt: 'e1:9.d0', how: 'struck' }, /^not-open/],
  ])('%s', (_, act, said) => expect(refusal(act)).toMatch(said));
  test('anything on a confirmed record', () => {
    const confirmed = applyEvent(draft, { event: 'confirmed', lexicon: '1', ...who });
    expect(actOn(confirmed, { act: 'keep-sure' }, who)).toMatchObject({ error: { code: 'confirmed' } });
  });
});
test('all that is sure is kept in one act; what is doubted is not', () =>
  expect(events({ act: 'keep-sure' })).toEqual([{ event: 'kept', ids: ['e1:0.0'], ...who }]));
