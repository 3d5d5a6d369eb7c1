/** What is said while the recogniser is still being loaded: voice activity, journal, grammar and draft are the real ones, the recogniser is scripted. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import type { FromServer } from '../../parser/contract/wire.ts';
import { openApp, type App } from '../../server/app.ts';
import { wakingEar } from '../../server/app/ear.ts';
import { toInt16 } from '../../server/audio/journal.ts';
import { readRecording } from '../../server/audio/read.ts';
import type { Line } from '../../server/http/doors.ts';
import type { Engine } from '../../server/speech/engine.ts';
import { scriptedEngine } from '../../server/speech/scripted.ts';

const rate = 16_000;
/** The first two phrases of the bundled exam, with the pause behind them. */
const seconds = 7.8;
let dir: string, app: App, line: Line, seen: FromServer[];
let wake: (engine: Engine) => void, fail: (error: Error) => void;

beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), 'quidnote-waking-'));
  app = openApp(
    dir,
    wakingEar(
      'scripted',
      inject('weights').vad,
      new Promise<Engine>((resolve, reject) => {
        wake = resolve;
        fail = reject;
      }),
    ),
  );
  seen = [];
  line = app.doors.line((message) => seen.push(message));
  await line.text({ type: 'listen' });
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

async function speak(): Promise<number> {
  const pieces: number[] = [];
  for await (const samples of readRecording('fixtures/audio/demo.ogg')) {
    for (const sample of toInt16(samples)) pieces.push(sample);
    if (pieces.length >= seconds * rate) break;
  }
  const chunks = Math.floor((seconds * rate) / (rate / 4));
  for (let n = 0; n < chunks; n += 1)
    await line.sound({
      epoch: 1,
      sequence: n,
      ownVoiceMs: 0,
      samples: Int16Array.from(pieces.slice((n * rate) / 4, ((n + 1) * rate) / 4)),
    });
  return chunks;
}
const states = () => seen.flatMap((message) => (message.type === 'hearing' ? [message.state] : []));
const draft = () => app.doors.exam(app.doors.exams()[0]!.id).draft;

test('the page is told that it is getting ready; sound is acknowledged, and read in order once it hears', async () => {
  expect(states()).toEqual(['getting-ready']);
  const chunks = await speak();
  expect(seen.filter(({ type }) => type === 'ack')).toHaveLength(chunks);
  expect(draft().utterances).toEqual([]);
  // What waits for the recogniser is said to be unread: nothing could be confirmed without it.
  expect(seen.some((message) => message.type === 'changed' && !!message.parts.unread?.length)).toBe(true);
  expect(states()).not.toContain('listening');
  wake(scriptedEngine(['hook on one oh six', 'owner is present', '', '']));
  await line.text({ type: 'stop' });
  expect(
    draft()
      .utterances.map(({ text }) => text)
      .slice(0, 2),
  ).toEqual(['hook on one oh six', 'owner is present']);
  expect(draft().unread).toEqual([]);
  expect(states()).toContain('listening');
  await app.close();
}, 60_000);

test('a recogniser that cannot be loaded loses nothing: each phrase is a question with its sound', async () => {
  await speak();
  fail(new Error('no memory'));
  await line.text({ type: 'stop' });
  expect(draft().doubts.map(({ doubt }) => doubt.doubt)).toEqual(expect.arrayContaining(['unheard']));
  expect(draft().doubts.every(({ doubt }) => doubt.at !== undefined)).toBe(true);
  await app.close();
}, 60_000);
