/**
 * The whole way through the real program: real voice activity, real recogniser, real grammar, real records, a real socket.
 * The sound is the beginning of the bundled demonstration; the words expected are those that were spoken, in fixtures/exams/demo.json.
 */
import { mkdtempSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type WebSocket from 'ws';
import type { Draft } from '../../parser/contract/draft.ts';
import type { ExamRow, FromServer, SearchHit } from '../../parser/contract/wire.ts';
import { asRefusal, openApp, openEar, type App } from '../../server/app.ts';
import { toInt16 } from '../../server/audio/journal.ts';
import { readRecording } from '../../server/audio/read.ts';
import { openServer, type Served } from '../../server/http/server.ts';
import { frame, knock, token } from '../http/stage.ts';

const rate = 16_000;
/** "Right, this is Juniper ..." and "Owner is present": the first two phrases, with the pause behind them. */
const seconds = 7.8;
let app: App, served: Served, dir: string, sound: Int16Array;

const headers = (): Record<string, string> => ({ cookie: `quidnote-${served.port}=${token}`, 'content-type': 'application/json' });
const base = (): string => `http://127.0.0.1:${served.port}`;
const get = async <T>(path: string): Promise<T> => (await (await fetch(base() + path, { headers: headers() })).json()) as T;
const post = async (path: string, body: unknown): Promise<{ status: number; body: Record<string, unknown> & { draft: Draft } }> => {
  const answer = await fetch(base() + path, { method: 'POST', headers: headers(), body: JSON.stringify(body) });
  return { status: answer.status, body: (await answer.json()) as never };
};
const start = async (): Promise<void> => {
  app = openApp(dir, await openEar({}));
  served = await openServer({
    doors: app.doors,
    token,
    page: dir,
    paper: '',
    port: 0,
    plainly: asRefusal,
    log: (line) => {
      throw new Error(line);
    },
  });
};
const stop = async (): Promise<void> => {
  await served.close();
  await app.close();
};

interface Page {
  readonly socket: WebSocket;
  readonly seen: FromServer[];
  readonly until: (when: (message: FromServer) => boolean) => Promise<FromServer>;
}
async function openPage(exam?: string): Promise<Page> {
  const socket = await knock(`${base().replace('http', 'ws')}/live`, { cookie: headers()['cookie']!, origin: base() });
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  const seen: FromServer[] = [];
  socket.on('message', (data) => seen.push(JSON.parse(String(data)) as FromServer));
  const until = (when: (message: FromServer) => boolean): Promise<FromServer> =>
    expect
      .poll(() => seen.find(when), { timeout: 100_000, interval: 50 })
      .toBeDefined()
      .then(() => seen.find(when)!);
  socket.send(JSON.stringify({ type: 'listen', ...(exam && { exam }) }));
  await until((m) => m.type === 'draft');
  return { socket, seen, until };
}
const chunk = rate / 5;
const send = ({ socket }: Page, epoch: number, from: number, to: number): void => {
  for (let n = from; n < to; n += 1) socket.send(frame(epoch, n, Buffer.from(sound.slice(n * chunk, (n + 1) * chunk).buffer)));
};
const acked = (page: Page, epoch: number, sequence: number): Promise<FromServer> =>
  page.until((m) => m.type === 'ack' && m.epoch === epoch && m.sequence === sequence);

beforeAll(async () => {
  dir = mkdtempSync(join(tmpdir(), 'quidnote-way-'));
  expect(inject('weights').vad).toBeTruthy();
  const pieces: number[] = [];
  for await (const samples of readRecording('fixtures/audio/demo.ogg')) {
    for (const sample of toInt16(samples)) pieces.push(sample);
    if (pieces.length >= seconds * rate) break;
  }
  sound = Int16Array.from(pieces.slice(0, seconds * rate));
  await start();
});
afterAll(stop);

const chunks = Math.floor((seconds * rate) / chunk);
const half = Math.floor(chunks / 2);
let exam = '';

test('sound sent over a socket that dies half way becomes one draft, with nothing lost or doubled', { timeout: 200_000 }, async () => {
  const first = await openPage();
  const opened = first.seen.find((m) => m.type === 'draft');
  exam = opened?.type === 'draft' ? opened.draft.id : '';
  first.socket.send(JSON.stringify({ type: 'epoch', epoch: 1000, device: 'test' }));
  send(first, 1000, 0, half);
  await acked(first, 1000, half - 1);
  first.socket.terminate();
  const second = await openPage(exam);
  second.socket.send(JSON.stringify({ type: 'epoch', epoch: 1000, device: 'test' }));
  // The page cannot know what arrived: it sends its last chunks again.
  send(second, 1000, half - 3, chunks);
  await acked(second, 1000, chunks - 1);
  second.socket.send(JSON.stringify({ type: 'stop' }));
  await second.until((m) => m.type === 'hearing' && m.state === 'stopped');
  second.socket.close();
  const { draft } = await get<{ draft: Draft }>(`/api/exams/${exam}`);
  expect(draft.utterances).toHaveLength(2);
  expect(draft.utterances[0]!.text.toLowerCase()).toContain('juniper');
  expect(draft.utterances[1]!.text.toLowerCase()).toContain('owner is present');
  // On the exam's clock: no chunk was taken twice.
  const wav = Buffer.from(await (await fetch(`${base()}/api/exams/${exam}/sound?from=0&to=60`, { headers: headers() })).arrayBuffer());
  expect((wav.length - 44) / 2).toBe(chunks * chunk);
  expect(wav.readInt16LE(44 + 2 * 20_000)).toBe(sound[20_000]);
});

test('every item plays the second of sound that it came from', async () => {
  const { draft } = await get<{ draft: Draft }>(`/api/exams/${exam}`);
  const present = draft.items.map(({ item }) => item).find((item) => item.kind === 'fact' && item.about === 'present');
  const [from, to] = present!.evidence.at!;
  expect(from).toBeGreaterThan(draft.utterances[1]!.at![0] - 0.01);
  expect(to).toBeLessThan(draft.utterances[1]!.at![1] + 0.01);
});

test('it is confirmed only when nothing is open, then found, and changed only by a reason', async () => {
  const item = { kind: 'finding', condition: 'hook', presence: 'present', when: 'now', place: { teeth: ['106'] } };
  const added = await post(`/api/exams/${exam}/acts`, { act: 'add', item });
  expect(added.body.draft.items.at(-1)).toMatchObject({ state: 'kept', item: { condition: 'hook', how: { place: 'typed' } } });
  await post(`/api/exams/${exam}/acts`, { act: 'header', header: { horse: { name: 'Juniper' } } });
  for (const { doubt, settled } of added.body.draft.doubts) {
    if (settled) continue;
    const refused = await post(`/api/exams/${exam}/confirm`, { by: 'A. Tester' });
    expect(refused.status).toBe(409);
    expect(refused.body).toMatchObject({ code: 'not-confirmable' });
    await post(`/api/exams/${exam}/acts`, { act: 'settle', doubt: doubt.id, how: 'kept-as-said' });
  }
  const confirmed = await post(`/api/exams/${exam}/confirm`, { by: 'A. Tester' });
  expect(confirmed.body.draft).toMatchObject({ state: 'confirmed', revision: 1 });
  expect((await post(`/api/exams/${exam}/acts`, { act: 'add', item })).status).toBe(409);
  expect(await get<SearchHit[]>('/api/search?tooth=106')).toMatchObject([{ exam, horse: 'Juniper' }]);
  expect(await get<SearchHit[]>('/api/search?words=present')).toMatchObject([{ exam }]);
  await post(`/api/exams/${exam}/amend`, { reason: 'It was the other side.', by: 'A. Tester' });
  const again = await post(`/api/exams/${exam}/confirm`, { by: 'A. Tester' });
  expect(again.body.draft.revisions).toMatchObject([{ revision: 1 }, { revision: 2, reason: 'It was the other side.' }]);
});

test('what a crash left unread in the journal is read at the next start', { timeout: 200_000 }, async () => {
  const page = await openPage();
  const opened = page.seen.find((m) => m.type === 'draft');
  const id = opened?.type === 'draft' ? opened.draft.id : '';
  page.socket.send(JSON.stringify({ type: 'epoch', epoch: 2000, device: 'test' }));
  // Up to a moment inside the first phrase: it is on the disk and not yet read.
  send(page, 2000, 0, 20);
  await acked(page, 2000, 19);
  page.socket.terminate();
  await stop();
  await start();
  await app.readLeftovers();
  const { draft } = await get<{ draft: Draft }>(`/api/exams/${id}`);
  expect(draft.utterances[0]!.text.toLowerCase()).toContain('juniper');
  expect(draft.unread).toEqual([]);
});

test('erased, an exam leaves a line without words and no sound', async () => {
  expect((await post(`/api/exams/${exam}/erase`, { what: 'exam' })).status).toBe(200);
  const rows = await get<ExamRow[]>('/api/exams');
  expect(rows.find(({ id }) => id === exam)).toMatchObject({ erased: true, horse: null });
  expect((await fetch(`${base()}/api/exams/${exam}/sound?from=0&to=1`, { headers: headers() })).status).toBe(410);
  expect(await get<SearchHit[]>('/api/search?tooth=106')).toEqual([]);
});

test('the data folder is for its owner alone', () => {
  expect(statSync(dir).mode & 0o777).toBe(0o700);
  expect(statSync(join(dir, 'records.sqlite')).mode & 0o777).toBe(0o600);
});
