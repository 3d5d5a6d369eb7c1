import { describe, expect, test } from 'vitest';
import { Draft, type DraftEvent } from '../../parser/contract/draft.ts';
import { whyNotConfirm } from '../../server/session/confirmable.ts';
import { contextOf } from '../../server/session/context.ts';
import { join, split } from '../../server/session/move.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';
import { by, finding, hook, itemOf, opened, said, when } from './made.ts';

const who = { by, when };
const fold = (...events: DraftEvent[]): Draft => foldDraft('e1', [opened(), ...events]);
const states = (draft: Draft): string[] => draft.items.map((i) => `${i.item.id} ${i.state}`);
const one = said('e1:0', 'one oh six hook four mil', { items: [hook('106', 4)] }, [1, 3]);
const two = said('e1:5', 'two oh six hook', { items: [hook('206')] }, [5, 6]);
const strikeLast = said('e1:7', 'scratch that', { commands: [{ command: 'strike-last' }] });
const bringBack = said('e1:8', 'bring that back', { commands: [{ command: 'bring-back' }] });
const amended = said('e1:6', 'no three mil', {
  items: [{ ...hook('206', 3), revises: 'e1:5.0' }],
  commands: [{ command: 'amend', target: 'e1:5.0', was: {}, now: {} }],
});

describe('commands', () => {
  test('strike-last takes back the last utterance that made something, and bring-back is its undo', () => {
    const talk = said('e1:6', 'mind the gate');
    expect(states(fold(one, two, talk, strikeLast))).toEqual(['e1:0.0 open', 'e1:5.0 struck']);
    const back = fold(one, two, talk, strikeLast, bringBack);
    expect(back.items).toEqual(fold(one, two).items);
    expect(back.commands[0]!.targets).toEqual(['e1:5.0']);
  });
  test('twice struck, twice brought back, the latest first', () => {
    const again = said('e1:9', 'scratch that', { commands: [{ command: 'strike-last' }] });
    const backAgain = said('e1:11', 'bring that back', { commands: [{ command: 'bring-back' }] });
    const both = fold(one, two, strikeLast, again);
    expect(states(both)).toEqual(['e1:0.0 struck', 'e1:5.0 struck']);
    expect(states(applyEvent(both, bringBack))).toEqual(['e1:0.0 open', 'e1:5.0 struck']);
    expect(states(applyEvent(applyEvent(both, bringBack), backAgain))).toEqual(['e1:0.0 open', 'e1:5.0 open']);
  });
  test('a correction leaves the old item visible; striking the correction, or bringing back, lets the old one stand', () => {
    expect(states(fold(two, amended))).toEqual(['e1:5.0 revised', 'e1:6.0 open']);
    expect(states(fold(two, amended, strikeLast))).toEqual(['e1:5.0 open', 'e1:6.0 struck']);
    expect(states(fold(two, amended, strikeLast, bringBack))).toEqual(['e1:5.0 revised', 'e1:6.0 open']);
    expect(states(fold(two, amended, bringBack))).toEqual(['e1:5.0 open', 'e1:6.0 struck']);
  });
  test('what another correction replaced as well does not stand again beside it', () => {
    const typed: DraftEvent = {
      event: 'typed',
      item: itemOf({ ...hook('206', 5), revises: 'e1:5.0', id: 'e1:typed0' }, 'e1:5', 9),
      ...who,
    };
    const again = said('e1:9', 'scratch that', { commands: [{ command: 'strike-last', targets: ['e1:6.0'] }] });
    expect(states(fold(two, amended, strikeLast, typed, bringBack, again))).toEqual(['e1:5.0 revised', 'e1:6.0 struck', 'e1:typed0 kept']);
  });
  test('a person who strikes a correction at the check screen removes the finding: the old one does not come back by itself', () => {
    expect(states(fold(two, amended, { event: 'struck', ids: ['e1:6.0'], ...who }))).toEqual(['e1:5.0 revised', 'e1:6.0 struck']);
  });
  test('an answer settles the question with the reading picked', () => {
    const asked = said('e1:9', 'left nine hook', {
      doubts: [
        {
          doubt: 'two-readings',
          readings: [
            { label: '209', items: [itemOf(hook('209'), 'e1:9', 1)] },
            { label: '309', items: [itemOf(hook('309'), 'e1:9', 2)] },
          ],
        },
      ],
    });
    const answered = fold(asked, said('e1:12', 'the second one', { commands: [{ command: 'answer', doubt: 'e1:9.d0', reading: 1 }] }));
    expect(answered.items.map((i) => i.item)).toMatchObject([{ place: { teeth: ['309'] } }]);
    expect(answered.doubts[0]!.settled).toMatchObject({ how: 'reading', reading: 1, by: 'voice' });
    expect(whyNotConfirm(answered)).toEqual([]);
  });
  test('pause and resume', () => {
    const paused = fold(said('e1:1', 'stop listening', { commands: [{ command: 'pause' }] }));
    expect(paused.paused).toBe(true);
    expect(applyEvent(paused, said('e1:2', 'start listening', { commands: [{ command: 'resume' }] })).paused).toBe(false);
  });
  test('a command by touch does the same', () => {
    expect(
      states(fold(one, { event: 'commanded', command: { id: 'e1:touch3', command: 'strike-last', utterance: '', words: '' }, ...who })),
    ).toEqual(['e1:0.0 struck']);
  });
});

describe('questions', () => {
  const half = said('e1:0', 'one oh six', { doubts: [{ doubt: 'no-condition', place: { teeth: ['106'] } }] });
  test('half a finding is settled by the phrase that completes it', () => {
    expect(whyNotConfirm(fold(half))).toMatchObject([{ why: 'doubt', doubt: 'e1:0.d0' }]);
    const whole = fold(half, said('e1:3', 'hook', { items: [hook('106')], settles: ['e1:0.d0'] }));
    expect(whole.doubts[0]!.settled?.how).toBe('completed');
    expect(whyNotConfirm(whole)).toEqual([]);
  });
  test('striking an item settles what was asked about it; bringing it back asks again', () => {
    const doubted = said('e1:0', 'three eleven tall', {
      items: [finding('overlong', { teeth: ['311'] })],
      doubts: [{ doubt: 'unsure', item: 'e1:0.0' }],
    });
    const struck = fold(doubted, { event: 'struck', ids: ['e1:0.0'], ...who });
    expect(whyNotConfirm(struck)).toEqual([]);
    expect(whyNotConfirm(applyEvent(struck, { event: 'restored', ids: ['e1:0.0'], ...who }))).toHaveLength(1);
  });
  test('a reading picked by hand replaces the doubted item, which stays visible; the same reading keeps it', () => {
    const doubted = said('e1:0', 'three eleven tall', {
      items: [finding('overlong', { teeth: ['311'] })],
      doubts: [
        {
          doubt: 'unsure',
          item: 'e1:0.0',
          readings: [
            { label: '311', items: [itemOf(finding('overlong', { teeth: ['311'] }), 'e1:0', 0)] },
            { label: '211', items: [itemOf(finding('overlong', { teeth: ['211'] }), 'e1:0', 0)] },
          ],
        },
      ],
    });
    expect(states(fold(doubted, { event: 'settled', doubt: 'e1:0.d0', how: 'reading', reading: 0, ...who }))).toEqual(['e1:0.0 kept']);
    const other = fold(doubted, { event: 'settled', doubt: 'e1:0.d0', how: 'reading', reading: 1, ...who });
    expect(states(other)).toEqual(['e1:0.0 revised', 'e1:0.d0.1.0 kept']);
    expect(other.items[1]!.item).toMatchObject({ place: { teeth: ['211'] }, revises: 'e1:0.0' });
  });
  test('sound heard but not read blocks; so does nothing else', () => {
    const heard: DraftEvent = { event: 'heard', phrase: { id: 'e1:0', hypotheses: [], at: [1, 3], reader: 'first' }, when };
    expect(whyNotConfirm(fold(heard))).toEqual([{ why: 'unread', at: [1, 3] }]);
    expect(whyNotConfirm(fold(heard, one))).toEqual([]);
  });
});

describe('hearing the same sound again', () => {
  const again = (...items: Record<string, unknown>[]): DraftEvent => said('e1:0', 'one oh six look', { items }, [1, 3]);
  test('what nobody touched is read anew, in its place', () => {
    const draft = fold(one, two, again(hook('107')));
    expect(draft.items.map((i) => [i.item.id, i.state, 'place' in i.item && i.item.place])).toEqual([
      ['e1:0.0', 'open', { teeth: ['107'] }],
      ['e1:5.0', 'open', { teeth: ['206'] }],
    ]);
  });
  test('the same again changes nothing', () => {
    expect({ ...fold(one, two, again(hook('106', 4))), seq: 0 }).toEqual({ ...fold(one, two), seq: 0 });
  });
  test.each<[string, DraftEvent]>([
    ['kept', { event: 'kept', ids: ['e1:0.0'], ...who }],
    ['struck', { event: 'struck', ids: ['e1:0.0'], ...who }],
    ['edited', { event: 'typed', item: itemOf({ ...hook('206'), revises: 'e1:0.0', id: 'e1:typed3' }, 'e1:0', 9), ...who }],
    ['confirmed', { event: 'confirmed', lexicon: '1', ...who }],
  ])('what a person %s stays as it is, and the difference is asked once', (_, act) => {
    const before = fold(one, act);
    const after = applyEvent(before, again(hook('107')));
    expect(after.items).toEqual(before.items);
    expect(after.doubts).toMatchObject([
      {
        doubt: {
          doubt: 'readers-differ',
          rule: 'heard-again',
          readings: [{ label: 'As it stands' }, { items: [{ place: { teeth: ['107'] } }] }],
        },
      },
    ]);
    expect(applyEvent(after, again(hook('107'))).doubts).toHaveLength(1);
  });
  test('the question is answered by hand: as heard again', () => {
    const asked = fold(one, { event: 'kept', ids: ['e1:0.0'], ...who }, again(hook('107')));
    const answered = applyEvent(asked, { event: 'settled', doubt: asked.doubts[0]!.doubt.id, how: 'reading', reading: 1, ...who });
    expect(answered.items.map((i) => [i.state, 'place' in i.item && i.item.place])).toEqual([
      ['revised', { teeth: ['106'] }],
      ['kept', { teeth: ['107'] }],
    ]);
    const kept = applyEvent(asked, { event: 'settled', doubt: asked.doubts[0]!.doubt.id, how: 'reading', reading: 0, ...who });
    expect(states(kept)).toEqual(['e1:0.0 kept']);
  });
});

describe('header, confirming, amending', () => {
  test('speech fills the header, but not over what was typed', () => {
    const spoken = said('e1:0', 'nine year old mare', { header: { horse: { age: { value: 9, unit: 'year' }, sex: 'mare' } } });
    expect(fold(spoken).header.horse).toEqual({ name: 'Juniper', age: { value: 9, unit: 'year' }, sex: 'mare' });
    // A horse that has its name keeps it.
    expect(fold(said('e1:1', 'this is biscuit a six year old cob', { header: { horse: { name: 'Biscuit' } } })).header.horse).toMatchObject(
      { name: 'Juniper' },
    );
    expect(fold({ event: 'header', header: { horse: { sex: 'gelding' } }, ...who }, spoken).header.horse).toMatchObject({
      sex: 'gelding',
      age: { value: 9 },
    });
  });
  test('confirming keeps what stands; amending opens a new revision with its reason, the old one stays listed', () => {
    const confirmed = fold(one, { event: 'confirmed', lexicon: '1', ...who });
    expect([confirmed.state, confirmed.revision, ...states(confirmed)]).toEqual(['confirmed', 1, 'e1:0.0 kept']);
    const again = [
      { event: 'reopened', reason: 'wrong side', ...who },
      { event: 'confirmed', lexicon: '2', ...who },
    ] as const;
    expect(again.reduce<Draft>(applyEvent, confirmed).revisions).toMatchObject([
      { revision: 1 },
      { revision: 2, reason: 'wrong side', lexicon: '2' },
    ]);
  });
  test('the context of the next phrase is what stands and what is open', () => {
    const context = contextOf(fold(one, two, strikeLast));
    expect(context.items.map((i) => i.id)).toEqual(['e1:0.0']);
    expect(context.carry).toEqual({ last: 'e1:7' });
  });
});

describe('two drafts', () => {
  test('split at a phrase, and joined again: nothing is lost, and each phrase still knows where its sound is', () => {
    const whole = fold(one, two, amended);
    const parts = split(whole, 'e1:5', 'e2', { horse: { name: 'Teasel' } }, who)!;
    const first = parts.from.reduce(applyEvent, whole);
    const second = foldDraft('e2', parts.into);
    expect([states(first), states(second)]).toEqual([['e1:0.0 open'], ['e1:5.0 revised', 'e1:6.0 open']]);
    expect(second.header).toMatchObject({ horse: { name: 'Teasel' }, yard: 'Low Meadow' });
    expect(second.utterances.map((u) => u.sound)).toEqual(['e1', 'e1']);
    const back = join(first, second, who);
    const joined = back.into.reduce(applyEvent, first);
    expect({ ...joined, seq: 0, carry: 0 }).toEqual({ ...whole, seq: 0, carry: 0 });
    expect(back.from.reduce(applyEvent, second)).toMatchObject({ items: [], utterances: [], commands: [] });
    const between = split(whole, 'e1:6', 'e3', {}, who)!;
    const left = between.from.reduce(applyEvent, whole);
    expect(states(left)).toEqual(['e1:0.0 open', 'e1:5.0 open']);
    expect(states(join(left, foldDraft('e3', between.into), who).into.reduce(applyEvent, left))).toEqual(states(whole));
    expect(split(whole, 'nowhere', 'e2', {}, who)).toBeNull();
  });
});
test('the fold is a legal draft by the contract', () => expect(() => Draft.parse(fold(one, two, amended, strikeLast))).not.toThrow());
