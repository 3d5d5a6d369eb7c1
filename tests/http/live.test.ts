/** The socket, with real sockets: rubbish, damage and death half way. Layout of frames: parser/contract/wire.ts. CRC-32: zlib's own. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type WebSocket from 'ws';
import { frame, knock, next, openStage, type Stage } from './stage.ts';

let stage: Stage;
const url = (): string => stage.base.replace('http', 'ws') + '/live';
const own = (): Record<string, string> => ({ cookie: stage.cookie, origin: stage.base });
const join = async (): Promise<WebSocket> => {
  const socket = await knock(url(), own());
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  return socket;
};
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.served.close());
const sound = Buffer.from(Int16Array.from({ length: 1600 }, (_, i) => i - 800).buffer);

test.each<[string, Record<string, string>, number]>([
  ['without the cookie', { origin: 'own' }, 401],
  ['from another origin', { cookie: 'own', origin: 'http://evil.example' }, 403],
  ['without an origin', { cookie: 'own' }, 403],
  ['by another name', { cookie: 'own', origin: 'own', host: 'evil.example' }, 421],
  ['by a cross-site page', { cookie: 'own', origin: 'own', 'sec-fetch-site': 'cross-site' }, 403],
])('%s the socket is refused', async (_how, headers, status) => {
  const real = Object.fromEntries(
    Object.entries(headers).map(([name, value]) => [name, value === 'own' ? (name === 'cookie' ? stage.cookie : stage.base) : value]),
  );
  expect(await knock(url(), real)).toBe(status);
});
test('another path is no socket', async () => expect(await knock(`${url()}/x`, own())).toBe(404));

test('a whole chunk arrives as the samples that were sent, and is acknowledged by its number', async () => {
  const socket = await join();
  socket.send(frame(7, 3, sound));
  expect(await next(socket)).toEqual({ type: 'ack', epoch: 7, sequence: 3 });
  expect(stage.chunks.at(-1)).toMatchObject({ epoch: 7, sequence: 3, ownVoiceMs: 0 });
  expect([...stage.chunks.at(-1)!.samples].slice(0, 3)).toEqual([-800, -799, -798]);
  socket.close();
});
test.each<[string, Buffer]>([
  ['with a damaged sum', frame(7, 4, sound, (head) => head.writeUInt32LE(1, 16))],
  ['with a wrong length', frame(7, 4, sound, (head) => head.writeUInt32LE(10, 12))],
  ['with another head', frame(7, 4, sound, (head) => head.writeUInt32LE(0, 0))],
  ['that is only a head', frame(7, 4, sound).subarray(0, 24)],
  ['that is three bytes', Buffer.from([1, 2, 3])],
  ['of half a sample', frame(7, 4, sound.subarray(0, 3))],
])('a frame %s is not taken: the page is told, and sent off to begin again', async (_what, bytes) => {
  const before = stage.chunks.length;
  const socket = await join();
  socket.send(bytes);
  expect(await next(socket)).toMatchObject({ type: 'trouble', error: { code: 'broken-sound' } });
  expect(await next(socket)).toEqual({ closed: 4000 });
  expect(stage.chunks.length).toBe(before);
});
test.each(['rubbish', '{}', '{"type":"explode"}', '[]', '"listen"', `{"type":"said","sentence":"${'x'.repeat(2000)}"}`])(
  'text that is %s is told and changes nothing, and the line goes on',
  async (text) => {
    const before = stage.reached.length;
    const socket = await join();
    socket.send(text);
    expect(await next(socket)).toMatchObject({ type: 'trouble', error: { code: 'not-understood' } });
    socket.send(frame(9, 0, sound));
    expect(await next(socket)).toMatchObject({ type: 'ack', epoch: 9 });
    expect(stage.reached.length).toBe(before);
    socket.close();
  },
);
test('endless rubbish is closed', async () => {
  const socket = await join();
  for (let i = 0; i < 20; i += 1) socket.send('rubbish');
  let last = await next(socket);
  while ('type' in last) last = await next(socket);
  expect(last).toEqual({ closed: 1008 });
});
test('a frame of a megabyte ends that line only', async () => {
  const socket = await join();
  socket.on('error', () => undefined);
  socket.send(Buffer.alloc(1_000_000));
  expect(await next(socket)).toEqual({ closed: 1009 });
  expect((await fetch(`${stage.base}/api/exams`, { headers: { cookie: stage.cookie } })).status).toBe(200);
});
test('a line that dies half way through a frame leaves the others alive', async () => {
  const dying = await join();
  const other = await join();
  const before = stage.gone();
  (dying as unknown as { _socket: { write: (bytes: Buffer) => void } })._socket.write(Buffer.from([0x82, 0xfe, 0xff]));
  dying.terminate();
  await expect.poll(() => stage.gone(), { timeout: 10_000 }).toBe(before + 1);
  other.send(frame(11, 0, sound));
  expect(await next(other)).toMatchObject({ type: 'ack', epoch: 11 });
  other.close();
});
