/** Hearing begins while the pause still decides: real voice activity, a real session; the ear is a fake that notes what it is asked. */
import { expect, inject, test } from 'vitest';
import type { Ear, Stretch } from '../../server/app/ear.ts';
import { openListening } from '../../server/app/listening.ts';
import { readRecording } from '../../server/audio/read.ts';
import { openSegmenter, type Phrase } from '../../server/audio/segment.ts';
import { openLive } from '../../server/session/live.ts';
import { emptyDraft } from '../../server/session/reduce.ts';
import { result, when } from '../session/made.ts';
import { JFK_PATH } from '../speech/jfk.ts';

const rate = 16_000;
const piece = rate / 4;

async function spoken(): Promise<Float32Array> {
  const parts: number[] = [];
  for await (const part of readRecording(JFK_PATH)) parts.push(...part);
  return Float32Array.from(parts);
}
async function phrasesOf(samples: Float32Array): Promise<Phrase[]> {
  const segmenter = await openSegmenter(inject('weights').vad);
  return [...(await segmenter.push(samples)), ...(await segmenter.flush())];
}

/** What happened, in order: a stretch asked of the ear, a phrase that ended, an utterance in the draft; each by its samples [from, to). */
async function listen(samples: Float32Array): Promise<string[]> {
  const log: string[] = [];
  const name = ({ from, samples: own }: Pick<Stretch, 'from' | 'samples'>): string => `${from}-${from + own.length}`;
  const ear: Pick<Ear, 'name' | 'hear'> = {
    name: 'fake',
    hear: async (stretch) => {
      log.push(`asked ${name(stretch)}`);
      return {
        id: name(stretch),
        at: [stretch.from / rate, (stretch.from + stretch.samples.length) / rate],
        reader: 'first',
        hypotheses: [],
      };
    },
  };
  const live = openLive(
    {
      read: (phrase) => {
        log.push(`read ${phrase.id}`);
        return result(phrase.id, 'words', {}, phrase.at as [number, number]);
      },
      append: () => undefined,
      load: () => {
        throw new Error('no other exam');
      },
      publish: () => undefined,
      now: () => when,
      freshId: () => 'e2',
      tick: () => 0,
      say: () => '',
      trouble: () => ({ code: 'not-read', message: '' }),
    },
    emptyDraft('e1'),
  );
  const segmenter = await openSegmenter(inject('weights').vad);
  const listening = openListening(
    live,
    ear as Ear,
    {
      ...segmenter,
      push: async (sound) => {
        const phrases = await segmenter.push(sound);
        phrases.forEach((phrase) => log.push(`ended ${name(phrase)}`));
        return phrases;
      },
    },
    () => undefined,
    () => when,
  );
  for (let at = 0; at < samples.length; at += piece) {
    await listening.push(samples.slice(at, at + piece), 'e1', at);
    await live.idle();
  }
  await listening.flush();
  await live.idle();
  return log;
}

test('each phrase of a speech is asked of the ear once, before it is known to be over', async () => {
  const samples = await spoken();
  const log = await listen(samples);
  const phrases = await phrasesOf(samples);
  // The last one ends with the recording, which no pause foretold.
  for (const { from, to } of phrases.slice(0, -1)) {
    const own = log.filter((line) => line.endsWith(`${from}-${to}`));
    expect(own).toEqual([`asked ${from}-${to}`, `ended ${from}-${to}`, `read ${from}-${to}`]);
  }
  expect(log.filter((line) => line.startsWith('read'))).toEqual(phrases.map(({ from, to }) => `read ${from}-${to}`));
});

test('a speaker who goes on after half a second is read as one phrase; what was heard of its first part is dropped', async () => {
  const samples = await spoken();
  const [first, second] = (await phrasesOf(samples)) as [Phrase, Phrase];
  const voice = ({ speech: [from, to] }: Phrase): Float32Array => samples.slice(from, to);
  const silence = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * rate));
  const parts = [silence(0.5), voice(first), silence(0.5), voice(second), silence(1.5)];
  const joined = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  parts.reduce((at, part) => {
    joined.set(part, at);
    return at + part.length;
  }, 0);
  const log = await listen(joined);
  const [whole, ...others] = (await phrasesOf(joined)) as [Phrase];
  expect(others).toEqual([]);
  expect(log.filter((line) => line.startsWith('read'))).toEqual([`read ${whole.from}-${whole.to}`]);
  const asked = log.filter((line) => line.startsWith('asked'));
  expect(asked).toHaveLength(2);
  expect(asked[0]).not.toBe(asked[1]);
});
