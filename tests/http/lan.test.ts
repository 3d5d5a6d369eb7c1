/**
 * The local network's door, over real TLS: no page, record or socket without a code, and out again when taken off the list.
 * Source of the rules tried: OWASP cheat sheets on authentication (one-time codes are used once, expire, and are limited) and on session management (Secure, HttpOnly, SameSite).
 */
import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, statSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import WebSocket from 'ws';
import { openPairing } from '../../server/http/pairing.ts';
import { Refusal } from '../../server/http/refusal.ts';
import { openLanServer, openServer, type Served } from '../../server/http/server.ts';
import { certificateFor } from '../../server/lan/certificate.ts';
import { openDevices, type Devices } from '../../server/lan/devices.ts';
import { openNetwork } from '../../server/lan/network.ts';
import { NetworkState } from '../../parser/contract/wire.ts';
import { doorsOf, token } from './stage.ts';

let served: Served,
  devices: Devices,
  cert: string,
  now = 1_000_000;
let dice = 0;
const renewed: string[] = [];
const dir = mkdtempSync(join(tmpdir(), 'quidnote-lan-'));
const pairing = openPairing(
  (below) => dice++ % below,
  () => now,
  (code) => renewed.push(code),
);
beforeAll(async () => {
  const tls = await certificateFor(dir, ['127.0.0.1'], 'box.local', new Date());
  cert = tls.cert;
  devices = openDevices(dir);
  served = await openLanServer({
    doors: doorsOf(),
    tls,
    hosts: ['127.0.0.1'],
    page: dir,
    paper: '',
    port: 0,
    plainly: (e) => e,
    log: (line) => {
      throw new Error(line);
    },
    pair: { pairing, isDevice: devices.has, add: (name) => devices.add(name, '2026-03-04T09:12:00Z') },
  });
});
afterAll(() => served.close());

const ask = (
  method: string,
  path: string,
  headers: Record<string, string> = {},
  body?: string,
): Promise<{ status: number; headers: Record<string, unknown>; text: string }> =>
  new Promise((resolve, reject) => {
    // The certificate itself is the only authority: this also proves that it names the address.
    const sent = request({ host: '127.0.0.1', port: served.port, method, path, ca: cert, headers }, (response) => {
      let text = '';
      response.on('data', (part: Buffer) => {
        text += part.toString();
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
const pair = (code: string, name = 'Phone', more: Record<string, string> = {}) =>
  ask('POST', '/pair', { 'content-type': 'application/x-www-form-urlencoded', ...more }, new URLSearchParams({ code, name }).toString());
const cookieOf = (answer: { headers: Record<string, unknown> }): string => String(answer.headers['set-cookie']).split(';')[0]!;
const knock = (cookie: string): Promise<WebSocket | number> =>
  new Promise((resolve, reject) => {
    const socket = new WebSocket(`wss://127.0.0.1:${served.port}/live`, {
      ca: cert,
      headers: { cookie, origin: `https://127.0.0.1:${served.port}` },
    });
    socket.on('open', () => resolve(socket));
    socket.on('unexpected-response', (_request, response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    socket.on('error', reject);
  });

test('a stranger sees the page with the code, and nothing else', async () => {
  expect((await ask('GET', '/pair?code=%22%3E%3Cscript%3E')).text).not.toContain('<script>');
  for (const path of ['/', '/api/exams', '/index.html', '/?token=undefined', '/?token=']) expect((await ask('GET', path)).status).toBe(401);
  expect(await knock('quidnote=1')).toBe(401);
});
test('looking at the page uses no code up', async () => {
  const code = pairing.code();
  await ask('GET', `/pair?code=${code}`);
  expect(pairing.code()).toBe(code);
});
test('a code lets one device in, once, with a cookie for TLS alone; another site cannot use it', async () => {
  const code = pairing.code();
  expect((await pair(code, 'Phone', { origin: 'https://evil.example' })).status).toBe(403);
  const answer = await pair(code.toLowerCase());
  expect(answer.status).toBe(303);
  expect(String(answer.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict; .*Secure/);
  expect((await ask('GET', '/api/exams', { cookie: cookieOf(answer) })).status).toBe(200);
  expect((await pair(code)).status).toBe(403);
});
test('a device that is taken off the list is out, also where it was in already', { timeout: 20_000 }, async () => {
  const cookie = cookieOf(await pair(pairing.code(), 'Tablet'));
  const socket = await knock(cookie);
  if (typeof socket === 'number') throw new Error(`refused with ${socket}`);
  const closed = new Promise((resolve) => {
    socket.on('close', resolve);
  });
  // By another process, as the command line does it.
  expect(openDevices(dir).revoke(devices.list().find(({ name }) => name === 'Tablet')!.id)).toBe(true);
  expect((await ask('GET', '/api/exams', { cookie })).status).toBe(401);
  expect(await closed).toBe(1008);
});
test('five wrong codes close the door for a minute and spoil the code that was guessed at', async () => {
  const code = pairing.code();
  for (let n = 0; n < 5; n += 1) expect((await pair('22222222')).status).toBe(403);
  expect((await pair(pairing.code())).status).toBe(429);
  now += 61_000;
  expect((await pair(code)).status).toBe(403);
  expect((await pair(pairing.code())).status).toBe(303);
  expect(renewed.length).toBeGreaterThan(0);
});
test('a code grows old in ten minutes', () => {
  const code = pairing.code();
  now += 10 * 60_000 + 1;
  expect(() => pairing.use(code)).toThrow(Refusal);
});
test('the certificate names its addresses, is kept, and is made anew for a new address; key and list are for the owner alone, and hold no secret of a device', async () => {
  expect(new X509Certificate(cert).checkIP('127.0.0.1')).toBe('127.0.0.1');
  expect((await certificateFor(dir, ['127.0.0.1'], 'box.local', new Date())).cert).toBe(cert);
  const other = await certificateFor(dir, ['127.0.0.1', '10.1.2.3'], 'box.local', new Date());
  expect(new X509Certificate(other.cert).checkIP('10.1.2.3')).toBe('10.1.2.3');
  for (const file of ['key.pem', 'devices.json']) expect(statSync(join(dir, 'lan', file)).mode & 0o777).toBe(0o600);
  const secret = devices.add('Other', '2026-03-04T09:12:00Z');
  expect(readFileSync(join(dir, 'lan', 'devices.json'), 'utf8')).not.toContain(secret);
});

test('the code and the list are shown at the machine itself; a device that was let in sees neither and takes nobody off', async () => {
  const cookie = cookieOf(await pair(pairing.code(), 'Phone of a guest'));
  const seen = await ask('GET', '/api/network', { cookie });
  expect(JSON.parse(seen.text)).toEqual({ here: false, devices: [], open: null });
  expect((await ask('POST', '/api/network/code', { cookie })).status).toBe(403);
  expect((await ask('POST', `/api/network/devices/${devices.list()[0]!.id}/revoke`, { cookie })).status).toBe(403);
});
test('at the machine: not open until it answers the network, then a square that says the address with the code, one that can be renewed', async () => {
  const home = mkdtempSync(join(tmpdir(), 'quidnote-lan-'));
  const network = openNetwork(home, () => undefined);
  const own = await openServer({
    doors: doorsOf(),
    token,
    network,
    page: home,
    paper: '',
    port: 0,
    plainly: (e) => e,
    log: (line) => {
      throw new Error(line);
    },
  });
  const at = async (path: string, method = 'GET'): Promise<{ status: number; state: NetworkState }> => {
    const answer = await fetch(`http://127.0.0.1:${own.port}/api/network${path}`, {
      method,
      headers: { cookie: `quidnote-${own.port}=${token}` },
    });
    return { status: answer.status, state: (await answer.json()) as NetworkState };
  };
  expect((await fetch(`http://127.0.0.1:${own.port}/api/network`)).status).toBe(401);
  expect((await at('')).state).toEqual({ here: true, devices: [], open: null });
  network.answersAt('https://10.1.2.3:4718/pair', 'AA:BB');
  const { open } = NetworkState.parse((await at('')).state);
  expect(open).toMatchObject({ address: 'https://10.1.2.3:4718/pair', print: 'AA:BB', code: network.pairing.code() });
  // A QR symbol of version V has 17 + 4 V squares a side, with a finder of 7 dark squares in the corner (ISO/IEC 18004).
  expect((open!.square.length - 17) % 4).toBe(0);
  expect(open!.square[0]!.slice(0, 8)).toBe('11111110');
  expect(open!.square.every((row) => row.length === open!.square.length && /^[01]+$/.test(row))).toBe(true);
  const renewedTo = (await at('/code', 'POST')).state.open!;
  expect(renewedTo.code).not.toBe(open!.code);
  expect(() => network.pairing.use(open!.code)).toThrow(Refusal);
  network.devices.add('Phone', '2026-03-04T09:12:00Z');
  const [device] = (await at('')).state.devices;
  expect(device).toMatchObject({ name: 'Phone', pairedAt: '2026-03-04T09:12:00Z' });
  expect((await at(`/devices/${device!.id}/revoke`, 'POST')).state.devices).toEqual([]);
  expect((await at(`/devices/${device!.id}/revoke`, 'POST')).status).toBe(404);
  await own.close();
});
