/** Laws of the draft, over logs drawn at random (fast-check; a failing log is printed with its seed). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Draft, DraftEvent } from '../../parser/contract/draft.ts';
import { actOn } from '../../server/session/acts.ts';
import { applyEvent, emptyDraft, foldDraft } from '../../server/session/reduce.ts';
import { stands } from '../../server/session/standing.ts';
import { by, finding, hook, itemOf, opened, said, when } from './made.ts';

const who = { by, when };
/** Few ids, so that events meet each other often. */
const utterance = fc.integer({ min: 0, max: 5 }).map((n) => `e1:${n}`);
const tooth = fc.constantFrom('106', '206', '307', '411');
const itemId = fc.oneof(
  utterance.map((u) => `${u}.0`),
  utterance.map((u) => `${u}.1`),
  fc.constantFrom('e1:typed7', 'e1:typed9'),
);
const made = fc.record({
  items: fc.array(
    fc.tuple(tooth, fc.option(itemId, { nil: undefined })).map(([t, revises]) => ({ ...hook(t), ...(revises && { revises }) })),
    { maxLength: 2 },
  ),
  commands: fc.option(
    fc.constantFrom('strike-last', 'bring-back', 'pause', 'resume', 'flag-for-veterinarian', 'read-all').map((command) => [{ command }]),
    { nil: [] },
  ),
  doubts: fc.option(
    fc
      .record({
        doubt: fc.constantFrom('unsure', 'no-place', 'two-readings'),
        item: itemId,
        readings: fc.constant([
          { label: 'a', items: [itemOf(hook('108'), 'e1:0', 7)] },
          { label: 'none', items: [] },
        ]),
      })
      .map((d) => [d]),
    { nil: [] },
  ),
  settles: fc.array(
    utterance.map((u) => `${u}.d0`),
    { maxLength: 1 },
  ),
});
const event: fc.Arbitrary<DraftEvent> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.tuple(utterance, made).map(([u, m]) => said(u, 'words spoken', m, [Number(u.slice(3)), Number(u.slice(3)) + 1])),
  },
  fc
    .array(itemId, { minLength: 1, maxLength: 2 })
    .chain((ids) =>
      fc.constantFrom<DraftEvent>({ event: 'struck', ids, ...who }, { event: 'restored', ids, ...who }, { event: 'kept', ids, ...who }),
    ),
  fc.tuple(tooth, itemId, fc.integer({ min: 0, max: 9 })).map(([t, revises, n]): DraftEvent => ({
    event: 'typed',
    item: itemOf({ ...hook(t), id: `e1:typed${n}`, revises }, revises.slice(0, 4), n),
    ...who,
  })),
  fc
    .tuple(utterance, fc.constantFrom('reading', 'kept-as-said', 'struck'), fc.integer({ min: 0, max: 1 }))
    .map(([u, how, reading]): DraftEvent => ({
      event: 'settled',
      doubt: `${u}.d0`,
      how: how as 'reading',
      ...(how === 'reading' && { reading }),
      ...who,
    })),
  utterance.map((id): DraftEvent => ({
    event: 'heard',
    phrase: { id, hypotheses: [], at: [Number(id.slice(3)), Number(id.slice(3)) + 1], reader: 'first' },
    when,
  })),
  fc.constantFrom<DraftEvent>({ event: 'confirmed', lexicon: '1', ...who }, { event: 'reopened', reason: 'because', ...who }),
  fc.constantFrom('strike-last', 'bring-back').chain((command) =>
    fc.nat(99).map((n): DraftEvent => ({
      event: 'commanded',
      command: { id: `e1:touch${n}`, command: command as 'strike-last', utterance: '', words: '' },
      ...who,
    })),
  ),
);
const log = fc.array(event, { maxLength: 25 }).map((events) => [opened(), ...events]);

describe('whatever happens', () => {
  test('every prefix of a log folds to a draft that the contract accepts, and counts its events', () => {
    fc.assert(
      fc.property(log, (events) => {
        events.reduce((draft, e, n) => {
          const next = applyEvent(draft, DraftEvent.parse(JSON.parse(JSON.stringify(e))));
          Draft.parse(next);
          expect(next.seq).toBe(n + 1);
          expect(new Set(next.items.map((i) => i.item.id)).size).toBe(next.items.length);
          return next;
        }, emptyDraft('e1'));
      }),
      { numRuns: 200 },
    );
  });
  test('folding again gives the same draft, and no draft is changed in place', () => {
    fc.assert(
      fc.property(log, event, (events, last) => {
        const draft = foldDraft('e1', events);
        const before = JSON.stringify(draft);
        applyEvent(draft, last);
        expect(JSON.stringify(draft)).toBe(before);
        expect(JSON.stringify(foldDraft('e1', events))).toBe(before);
      }),
      { numRuns: 200 },
    );
  });
  test('no phrase disappears: all that was said is in the draft, as it was heard', () => {
    fc.assert(
      fc.property(log, (events) => {
        const draft = foldDraft('e1', events);
        const heard = new Set(events.flatMap((e) => (e.event === 'said' ? [e.result.utterance.id] : [])));
        expect(new Set(draft.utterances.map((u) => u.id))).toEqual(heard);
      }),
      { numRuns: 200 },
    );
  });
});

describe('bringing back', () => {
  test('after a strike by hand is identity: every item says what it said and stands as it stood', () => {
    fc.assert(
      fc.property(log, fc.array(itemId, { minLength: 1, maxLength: 3 }), (events, ids) => {
        const draft = foldDraft('e1', events);
        const struck = draft.items.filter((i) => ids.includes(i.item.id) && stands(i)).map((i) => i.item.id);
        // Of a correction and what it corrects, one stands; a strike of both at once has no single "before".
        fc.pre(!draft.items.some((i) => struck.includes(i.item.id) && i.item.revises));
        const back = applyEvent(applyEvent(draft, { event: 'struck', ids: struck, ...who }), { event: 'restored', ids: struck, ...who });
        expect(back.items.map((i) => [i.item, i.state])).toEqual(draft.items.map((i) => [i.item, i.state]));
      }),
      { numRuns: 300 },
    );
  });
  test('by voice after "scratch that" is identity', () => {
    fc.assert(
      fc.property(log, (events) => {
        const draft = foldDraft('e1', events);
        fc.pre(draft.state === 'draft' && draft.items.some(stands));
        const struck = applyEvent(draft, said('e1:90', 'scratch that', { commands: [{ command: 'strike-last' }] }));
        const back = applyEvent(struck, said('e1:91', 'bring that back', { commands: [{ command: 'bring-back' }] }));
        const lay = (d: Draft): unknown => d.items.map((i) => [i.item.id, i.state]);
        if (JSON.stringify(lay(struck)) !== JSON.stringify(lay(draft))) expect(lay(back)).toEqual(lay(draft));
      }),
      { numRuns: 300 },
    );
  });
});

describe('hearing again', () => {
  test('never changes what a person typed, kept, struck or confirmed', () => {
    fc.assert(
      fc.property(log, utterance, made, (events, id, again) => {
        const draft = foldDraft('e1', events);
        fc.pre(draft.utterances.some((u) => u.id === id));
        const after = applyEvent(draft, said(id, 'heard again', { ...again, commands: [] }));
        const hands = (d: Draft): unknown =>
          d.items.filter((i) => i.touched || i.state === 'kept' || d.state === 'confirmed').map((i) => [i.item, i.state]);
        expect(hands(after)).toEqual(hands(draft));
      }),
      { numRuns: 300 },
    );
  });
});

describe('acts by hand', () => {
  const act = fc.oneof(
    fc.tuple(itemId, tooth).map(([id, t]) => ({ act: 'edit' as const, id, item: hook(t, 3) })),
    tooth.map((t) => ({ act: 'add' as const, item: finding('ulcer', { teeth: [t] }) })),
    tooth.map((t) => ({ act: 'add' as const, item: hook(t) })),
    itemId.map((id) => ({ act: 'strike' as const, ids: [id] })),
    itemId.map((id) => ({ act: 'restore' as const, ids: [id] })),
    fc.constant({ act: 'keep-sure' as const }),
  );
  test('give legal events or a reason, and never touch a confirmed record', () => {
    fc.assert(
      fc.property(log, act, (events, what) => {
        const draft = foldDraft('e1', events);
        const acted = actOn(draft, what, who);
        if ('error' in acted) {
          expect(acted.error.message).toMatch(/[Nn]othing/);
          return;
        }
        expect(draft.state).toBe('draft');
        for (const e of acted.events) DraftEvent.parse(e);
        Draft.parse(acted.events.reduce(applyEvent, draft));
      }),
      { numRuns: 300 },
    );
  });
});
