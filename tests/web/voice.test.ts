import { describe, expect, test } from 'vitest';
import { sounding } from '../../web/voice/sounding.ts';
import { toneLasts, tones, type Tone } from '../../web/voice/tones.ts';
import { FromPage } from '../../parser/contract/wire.ts';
import { chooseVoice, pieces } from '../../web/voice/voice.ts';

describe('our four tones', () => {
  const all = Object.keys(tones) as Tone[];
  test('are low, short and rise, stay or fall as they should', () => {
    for (const tone of all) {
      expect(toneLasts(tone)).toBeLessThan(0.7);
      for (const { hz } of tones[tone]) expect(hz).toBeLessThan(900);
    }
    const pitches = (tone: Tone): number[] => tones[tone].map((n) => n.hz);
    const [up, same, down] = [pitches('understood'), pitches('done'), pitches('trouble')];
    expect(up[1]).toBeGreaterThan(up[0]!);
    expect(same[1]).toBe(same[0]);
    expect(down[0]! > down[1]! && down[1]! > down[2]!).toBe(true);
    expect(pitches('unsure')).toHaveLength(1);
  });
  // Equal temperament, ISO 16: 440 Hz times the twelfth root of two to the number of half steps.
  test('are tuned to the equal-tempered scale', () => {
    for (const note of all.flatMap((tone) => tones[tone])) {
      const halfSteps = 12 * Math.log2(note.hz / 440);
      expect(Math.abs(halfSteps - Math.round(halfSteps))).toBeLessThan(0.01);
    }
  });
});

describe('our own sound in a chunk', () => {
  test('is counted once, with the room that rings after it', () => {
    const marks = sounding();
    marks.begin(1000)(1200);
    marks.begin(1100)(1300);
    expect(marks.within(500, 900)).toBe(0);
    expect(marks.within(900, 1150)).toBe(150);
    expect(marks.within(1000, 3000)).toBe(700);
    expect(marks.within(1650, 1900)).toBe(50);
  });
  test('goes on until it is said to end', () => {
    const marks = sounding();
    const end = marks.begin(1000);
    expect(marks.within(9000, 9250)).toBe(250);
    end(9100);
    expect(marks.within(9400, 9650)).toBe(100);
  });
});

describe('the voice that reads back', () => {
  const voice = (name: string, lang: string, localService: boolean, preset = false) => ({ name, lang, localService, default: preset });
  test('is never one that sends words away', () => {
    expect(chooseVoice([voice('far', 'en-GB', false, true)], 'en-GB')).toBeUndefined();
    expect(chooseVoice([voice('far', 'en-GB', false, true), voice('near', 'en-US', true)], 'en-GB')?.name).toBe('near');
  });
  test('speaks the language of the trade, in the accent of the person where there is one', () => {
    const voices = [voice('de', 'de-DE', true, true), voice('us', 'en-US', true), voice('gb', 'en_GB', true)];
    expect(chooseVoice(voices, 'en-GB')?.name).toBe('gb');
    expect(chooseVoice(voices, 'en-IE')?.name).toBe('us');
    expect(chooseVoice([voices[0]!], 'de-DE')).toBeUndefined();
  });
});

describe('a long answer', () => {
  const all = Array.from({ length: 60 }, (_, n) => `One oh six. Hook, front, ${n} millimetres high.`).join(' ');
  test('is said in pieces that the server takes as our own words, and no word is lost between them', () => {
    expect(pieces(all).join(' ')).toBe(all);
    for (const sentence of pieces(all)) {
      expect(sentence.length).toBeLessThan(200);
      expect(FromPage.safeParse({ type: 'said', sentence }).success).toBe(true);
    }
  });
  test('a short one is said in one go', () => expect(pieces('One oh six. Hook, front. Four millimetres.')).toHaveLength(1));
});
