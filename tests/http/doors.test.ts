/** Who may come in. Sources: RFC 6455 section 10.2 (Origin), W3C Fetch Metadata, OWASP cheat sheets on CSRF and on DNS rebinding (the Host header). */
import { request } from 'node:http';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStage, token, type Stage } from './stage.ts';

let stage: Stage;
beforeAll(async () => {
  stage = await openStage();
});
afterAll(() => stage.served.close());

interface Answer {
  readonly status: number;
  readonly headers: Record<string, unknown>;
  readonly text: string;
}
/** Plain node:http, so that every header can be forged. */
const ask = (method: string, path: string, headers: Record<string, string> = {}, body?: string): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port: stage.served.port, method, path, headers }, (response) => {
      let text = '';
      response.on('data', (part: Buffer) => {
        text += part.toString();
      });
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    sent.on('error', reject);
    sent.end(body);
  });
const signed = (more: Record<string, string> = {}): Record<string, string> => ({ cookie: stage.cookie, ...more });
const json = { 'content-type': 'application/json' };

test('the token in the address is taken once for a strict cookie and leaves the address', async () => {
  const answer = await ask('GET', `/?token=${token}`);
  expect(answer.status).toBe(303);
  expect(answer.headers['location']).toBe('/');
  expect(String(answer.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict/);
});
test.each(['/', '/index.html', '/api/exams', '/api/horses', '/api/exams/e1', '/paper.css', '/api/nothing'])(
  'without the cookie %s tells nothing',
  async (path) => {
    const answer = await ask('GET', path);
    expect(answer.status).toBe(401);
    expect(JSON.parse(answer.text)).toMatchObject({ code: 'not-signed-in' });
  },
);
test.each([`x${token}`, token.slice(1), '', 'undefined'])(
  'a wrong token (%s) is refused in the address and in the cookie',
  async (wrong) => {
    expect((await ask('GET', `/?token=${wrong}`)).status).toBe(401);
    expect((await ask('GET', '/api/exams', { cookie: `quidnote-${stage.served.port}=${wrong}` })).status).toBe(401);
  },
);
test.each(['evil.example', 'evil.example:80', '127.0.0.1', '127.0.0.1.evil.example:4717'])(
  'asked for as %s it answers nobody, cookie or not',
  async (host) => {
    expect((await ask('GET', '/api/exams', signed({ host }))).status).toBe(421);
    expect((await ask('GET', `/?token=${token}`, { host })).status).toBe(421);
  },
);
test.each(['http://evil.example', 'null', 'http://127.0.0.1:1', 'https://127.0.0.1'])(
  'from origin %s nothing is read, written or told',
  async (origin) => {
    const before = stage.reached.length;
    expect((await ask('GET', '/api/exams', signed({ origin }))).status).toBe(403);
    expect((await ask('POST', '/api/exams', signed({ origin, ...json }), '{}')).status).toBe(403);
    expect(stage.reached.length).toBe(before);
  },
);
test.each(['cross-site', 'same-site'])('a browser that says %s is refused', async (site) => {
  expect((await ask('GET', '/api/exams', signed({ 'sec-fetch-site': site }))).status).toBe(403);
  expect((await ask('POST', '/api/exams/e1/erase', signed({ 'sec-fetch-site': site, ...json }), '{"what":"exam"}')).status).toBe(403);
});
test('from its own page it answers', async () => {
  const own = signed({ origin: stage.base, 'sec-fetch-site': 'same-origin' });
  expect((await ask('GET', '/api/exams', own)).status).toBe(200);
  expect((await ask('POST', '/api/exams', { ...own, ...json }, '{}')).status).toBe(201);
});
test('every answer, also a refusal, forbids inline script, sniffing, framing and reading from elsewhere', async () => {
  for (const answer of [
    await ask('GET', '/', signed()),
    await ask('GET', '/'),
    await ask('GET', '/api/exams', signed({ origin: 'http://evil.example' })),
  ]) {
    const policy = String(answer.headers['content-security-policy']);
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
    expect(answer.headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'cross-origin-resource-policy': 'same-origin' });
    expect(answer.headers['x-powered-by']).toBeUndefined();
  }
});
test('what changes something cannot be done by GET', async () => {
  for (const path of ['acts', 'confirm', 'amend', 'erase', 'join', 'split', 'reread'])
    expect((await ask('GET', `/api/exams/e1/${path}`, signed())).status).toBe(404);
  expect(stage.reached.some((what) => /^(act|confirm|amend|erase|join|split|reread)/.test(what))).toBe(false);
});
test.each([
  ['not json', '{', 'not-json'],
  ['the wrong shape', '{"act":"explode"}', 'not-understood'],
  ['nothing', '', 'not-understood'],
  ['a list', '[]', 'not-understood'],
])('a body that is %s is refused in words and reaches nothing', async (_what, body, code) => {
  const before = stage.reached.length;
  const answer = await ask('POST', '/api/exams/e1/acts', signed(json), body);
  expect(answer.status).toBe(400);
  expect(JSON.parse(answer.text)).toMatchObject({ code });
  expect(stage.reached.length).toBe(before);
});
test('a body sent as a form is not read: another site could send it', async () => {
  expect((await ask('POST', '/api/exams/e1/erase', signed({ 'content-type': 'text/plain' }), '{"what":"exam"}')).status).toBe(400);
});
test('a body of a megabyte is refused', async () => {
  expect(
    (await ask('POST', '/api/exams/e1/acts', signed(json), JSON.stringify({ act: 'strike', ids: ['x'.repeat(1_000_000)] }))).status,
  ).toBe(413);
});
test.each(['..%2F..%2Fetc', 'E1', 'a%00b', `${'x'.repeat(70)}`])('an exam id like %s is never looked up', async (id) => {
  const before = stage.reached.length;
  expect((await ask('GET', `/api/exams/${id}`, signed())).status).toBe(404);
  expect((await ask('GET', `/api/exams/${id}/sound?from=0&to=1`, signed())).status).toBe(404);
  expect(stage.reached.length).toBe(before);
});
test.each(['from=0', 'from=2&to=1', 'from=-1&to=1', 'from=0&to=NaN', 'from=0&to=1e9'])(
  'sound asked for as %s is refused',
  async (query) => {
    expect((await ask('GET', `/api/exams/e1/sound?${query}`, signed())).status).toBe(400);
  },
);
test('a recording of any length streams in, and the answer comes line by line', async () => {
  const answer = await ask('POST', '/api/upload', signed({ 'content-type': 'audio/wav' }), 'x'.repeat(3_000_000));
  expect(answer.status).toBe(200);
  expect(
    answer.text
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as unknown),
  ).toEqual([{ stage: 'receiving' }, { stage: 'ready', done: 3_000_000, exams: ['e1'] }]);
});
test('an error that nobody foresaw is told without what was typed, on the page and in the log', async () => {
  const broken = await openStage({
    horses: () => {
      throw new Error('secret words');
    },
  });
  const answer = await fetch(`${broken.base}/api/horses`, { headers: { cookie: broken.cookie } });
  expect(answer.status).toBe(500);
  expect(await answer.text()).not.toContain('secret');
  expect(broken.logged.join()).not.toContain('secret');
  expect(broken.logged).toHaveLength(1);
  await broken.served.close();
});
test('the address that is printed is of this machine only', () => {
  expect(stage.served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?token=/);
});
