/** A question answered by saying the place: with the real grammar, from words alone. */
import { describe, expect, test } from 'vitest';
import type { Draft } from '../../parser/contract/draft.ts';
import { parseText } from '../../parser/index.ts';
import { untraced } from '../../server/app/understand.ts';
import { answered, askedNow } from '../../server/session/answered.ts';
import { contextOf } from '../../server/session/context.ts';
import { applyEvent, emptyDraft } from '../../server/session/reduce.ts';
import { isOpen, stands } from '../../server/session/standing.ts';
import { askedNow as askedByPage } from '../../web/fold.ts';
import { opened, when } from './made.ts';

const spoken = (...lines: readonly string[]): Draft =>
  lines.reduce(
    (draft, line, n): Draft => {
      const result = untraced(parseText(`e1:${n}`, line, contextOf(draft)));
      return applyEvent(draft, { event: 'said', result: answered(draft, result), when });
    },
    applyEvent(emptyDraft('e1'), opened()),
  );
const standing = (draft: Draft): unknown[] =>
  draft.items.filter(stands).map(({ item }) => ('place' in item && item.place && 'teeth' in item.place ? item.place.teeth : item.kind));

describe('a place said alone', () => {
  test('right behind a question it is the answer, and nothing stays open', () => {
    const draft = spoken('left nine hook', 'three oh nine');
    expect(standing(draft)).toEqual([['309']]);
    expect(draft.doubts.filter(isOpen)).toEqual([]);
    expect(draft.utterances.at(-1)!.words.map((w) => w.as)).toEqual(['command', 'command', 'command']);
  });
  test('so is "the second one"', () => expect(standing(spoken('left nine hook', 'the second one'))).toEqual([['309']]));
  test('a place that is none of the readings is no answer', () => {
    const draft = spoken('left nine hook', 'one oh six');
    expect(draft.doubts.filter(isOpen).map((d) => d.doubt.doubt)).toEqual(['two-readings', 'no-condition']);
  });
  test('once something else was said it begins a finding of its own', () => {
    const draft = spoken('left nine hook', 'one oh six ramp', 'three oh nine');
    expect(draft.doubts.filter(isOpen).map((d) => d.doubt.doubt)).toEqual(['two-readings', 'no-condition']);
  });
  test('with a finding it is that finding', () =>
    expect(spoken('left nine hook', 'three oh nine ramp').items.filter(stands)).toHaveLength(2));
  test('an answer is taken for the question that is being asked, and for no other', () => {
    // The older question has readings, the newer has none: "the first one" is no answer to either.
    const draft = spoken('left nine hook', 'one oh six', 'the first one');
    expect(draft.doubts.filter(isOpen).map((d) => d.doubt.doubt)).toEqual(['two-readings', 'no-condition']);
    expect(draft.utterances.at(-1)!.words.map((w) => w.as)).toEqual(['leftover', 'leftover', 'leftover']);
  });
  test('page and server agree on which question that is', () => {
    for (const draft of [
      spoken('left nine hook'),
      spoken('left nine hook', 'one oh six'),
      spoken('one oh six', 'left nine hook'),
      spoken('grass'),
    ])
      expect(askedByPage(draft.doubts.filter(isOpen))).toEqual(askedNow(draft));
  });
  test('"the third one" and "the fourth one" choose among more', () => {
    const draft = spoken('left nine hook');
    const [open] = draft.doubts;
    const four = {
      ...draft,
      doubts: [
        {
          doubt: {
            ...open!.doubt,
            readings: ['209', '309', '210', '310'].map((tooth) => ({
              label: tooth,
              items: open!.doubt.readings![0]!.items.map((item) => ({ ...item, place: { teeth: [tooth] } }) as typeof item),
            })),
          },
        },
      ],
    };
    for (const [words, tooth] of [
      ['the third one', '210'],
      ['the fourth', '310'],
    ] as const) {
      const result = untraced(parseText('e1:9', words, contextOf(four)));
      expect(standing(applyEvent(four, { event: 'said', result, when }))).toEqual([[tooth]]);
    }
  });
});
