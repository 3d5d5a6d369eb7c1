import { describe, expect, test } from 'vitest';
import { doubtKinds, type Doubt } from '../../parser/contract/doubt.ts';
import type { DraftItem } from '../../parser/contract/draft.ts';
import { Item } from '../../parser/contract/item.ts';
import { regionIds } from '../../parser/lexicon/regions.ts';
import { coverage, stations } from '../../web/live/covered.ts';
import { elapsed, headline, levelAdvice, type Known } from '../../web/live/headline.ts';
import { questionAloud, questionOf } from '../../web/live/question.ts';
import { aloud, readBack } from '../../web/live/say.ts';

const evidence = { utterance: 'u1', words: [0], rules: ['test'] };
const item = (fields: object): Item => Item.parse({ id: 'i1', evidence, ...fields });
const held = (fields: object, state: DraftItem['state'] = 'open'): DraftItem => ({ item: item(fields), state });

describe('the state in one word', () => {
  const live: Known = { phase: 'live', microphone: 'ok', hearing: 'listening', paused: false };
  test.each<[Partial<Known>, string]>([
    [{ phase: 'ready' }, 'Ready'],
    [{}, 'Listening'],
    [{ hearing: 'hearing' }, 'Hearing you'],
    [{ hearing: 'reading' }, 'Reading'],
    [{ hearing: 'getting-ready' }, 'Getting ready'],
    [{ paused: true }, 'Paused'],
    [{ hearing: 'paused' }, 'Paused'],
    [{ phase: 'finishing', microphone: 'lost' }, 'Finishing'],
  ])('%j', (known, word) => expect(headline({ ...live, ...known }).word).toBe(word));
  test('a microphone in trouble outweighs all that goes on', () => {
    for (const microphone of ['silent', 'muted', 'lost'] as const) {
      expect(headline({ ...live, microphone, paused: true, hearing: 'hearing' })).toEqual({
        word: 'I can’t hear the microphone',
        mood: 'look',
      });
    }
  });
  test('the clock', () =>
    expect([0, 59_999, 754_000, 3_723_000, -5].map(elapsed)).toEqual(['00:00', '00:59', '12:34', '01:02:03', '00:00']));
  test('the level in words', () =>
    expect([-0.2, -12, -40, -80, -Infinity].map((peak) => levelAdvice(peak).good)).toEqual([false, true, false, false, false]));
});

describe('what was covered', () => {
  const tongue = (fields: object, state?: DraftItem['state']): string =>
    coverage([held({ place: { region: 'tongue' }, ...fields }, state)]).find((s) => s.label === 'Tongue')!.state;
  test('nothing is taken as looked at that nobody spoke of', () =>
    expect(new Set(coverage([]).map((s) => s.state))).toEqual(new Set(['open'])));
  test('ruled out counts as looked at; "not examined" and what was struck do not', () => {
    expect(tongue({ kind: 'finding', condition: 'abnormality', presence: 'absent', when: 'now' })).toBe('seen');
    expect(tongue({ kind: 'not-examined' })).toBe('not-examined');
    expect(tongue({ kind: 'finding', condition: 'ulcer', presence: 'present', when: 'now' }, 'struck')).toBe('open');
  });
  test('one side of a paired place is half of it, and the other is named', () => {
    const cheek = (...items: object[]) =>
      coverage(items.map((fields) => held({ kind: 'finding', condition: 'ulcer', presence: 'present', when: 'now', ...fields }))).find(
        (s) => s.label === 'Cheeks',
      );
    expect(cheek({ place: { region: 'cheek', side: 'left' } })).toEqual({ label: 'Cheeks', state: 'half', left: 'right' });
    expect(cheek({ place: { region: 'cheek', side: 'left' } }, { place: { region: 'cheek', side: 'right' } })).toEqual({
      label: 'Cheeks',
      state: 'seen',
    });
    expect(cheek({ place: { region: 'cheek', side: 'both' } })).toEqual({ label: 'Cheeks', state: 'seen' });
    expect(
      coverage([
        held({ kind: 'finding', condition: 'ulcer', presence: 'present', when: 'now', place: { region: 'tongue', side: 'left' } }),
      ]).find((s) => s.label === 'Tongue')?.state,
    ).toBe('seen');
  });
  test('every region of the lexicon has its station, once; the teeth are in the drawing', () => {
    const drawn = ['mouth', 'incisors', 'cheek-teeth'];
    expect([...stations.flatMap((s) => s.regions)].sort()).toEqual(regionIds.filter((id) => !drawn.includes(id)).sort());
  });
});

describe('read back', () => {
  test('place, what, how much, with numbers as they are spoken', () => {
    const hook = item({
      kind: 'finding',
      condition: 'hook',
      presence: 'present',
      when: 'now',
      place: { teeth: ['106'] },
      qualifiers: ['rostral'],
      measures: [{ what: 'height', value: 4, unit: 'mm' }],
    });
    expect(readBack(hook)).toMatch(/^One oh six\. Hook, front, 4 millimetres/);
    expect(readBack(item({ kind: 'finding', condition: 'quidding', presence: 'absent', when: 'now', place: null }))).toBe('No quidding.');
  });
  test('a tooth is never read as a hundred and six, and other numbers are left alone', () => {
    expect(aloud('106 to 111, gap 309/310')).toBe('one oh six to one eleven, gap three oh nine, three ten');
    expect(aloud('36 beats, 912, 1060, 0.3 ml')).toBe('36 beats, 912, 1060, 0.3 ml');
  });
});

describe('a doubt as a question', () => {
  const doubt = (more: Partial<Doubt>): Doubt => ({
    id: 'd1',
    doubt: 'two-readings',
    words: 'oh nine',
    utterance: 'u1',
    state: 'open',
    ...more,
  });
  const readings = ['309', '209'].map((label) => ({ label, items: [] }));
  test('offers its two readings, by touch and aloud', () => {
    const { answers } = questionOf(doubt({ readings }));
    expect(answers.map((a) => [a.label, a.act])).toEqual([
      ['309', { act: 'settle', doubt: 'd1', how: 'reading', reading: 0 }],
      ['209', { act: 'settle', doubt: 'd1', how: 'reading', reading: 1 }],
    ]);
    expect(questionAloud(doubt({ readings }))).toBe('three oh nine, or two oh nine?');
  });
  test('offers up to four, by touch and aloud; more are for looking over', () => {
    const five = ['106', '206', '306', '406', '109'].map((label) => ({ label, items: [] }));
    expect(questionOf(doubt({ readings: five })).answers.map((a) => a.label)).toEqual(['106', '206', '306', '406']);
    expect(questionAloud(doubt({ readings: five.slice(0, 3) }))).toBe('one oh six, or two oh six, or three oh six?');
  });
  test('without two readings it may always stay as said, or go', () => {
    for (const kind of doubtKinds) {
      const { ask, answers } = questionOf(doubt({ doubt: kind }));
      expect(ask).not.toBe('');
      expect(answers.map((a) => a.act)).toEqual([
        { act: 'settle', doubt: 'd1', how: 'kept-as-said' },
        { act: 'settle', doubt: 'd1', how: 'struck' },
      ]);
    }
  });
  test('names the half that was understood', () => {
    expect(questionOf(doubt({ doubt: 'no-condition', place: { teeth: ['106'] } })).about).toBe('106');
    expect(questionOf(doubt({ doubt: 'no-place', condition: 'hook' })).about).toBe('Hook');
  });
});
