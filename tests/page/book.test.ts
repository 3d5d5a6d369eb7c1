/** The book, in a real browser against the real program: found, heard, compared, due, taken in, erased. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { openScene, type Scene } from './check.scene.ts';
import { demoWav } from './demo.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const visits = [
  {
    id: 'year-one',
    horse: 'Juniper',
    startedAt: '2025-03-01T09:12:00+00:00',
    phrases: ['one oh six hook front three millimetres', 'two ten mobility grade one', 'see him again in three months'],
    confirmedAt: '2025-03-01T09:40:00+00:00',
  },
  {
    id: 'year-two',
    horse: 'Juniper',
    startedAt: '2026-03-04T09:12:00+00:00',
    phrases: ['one oh six hook front four millimetres', 'three oh nine three ten diastema', 'see him again in six months'],
    confirmedAt: '2026-03-04T09:40:00+00:00',
  },
  { id: 'waiting', horse: 'Bramble', startedAt: '2026-03-05T09:12:00+00:00', phrases: ['mobility grade five four ten'] },
];
let scene: Scene;
beforeAll(async () => {
  scene = await openScene(visits);
}, 180_000);
afterEach(() => scene?.clear());
afterAll(() => scene?.close());

test('drafts that wait and records that are kept stand in the book, the newest first', async () => {
  const { page, complaints } = await scene.tab('#/book');
  await page.locator('.rows a').first().waitFor();
  const rows = await page.locator('section[aria-labelledby="visits"] .rows a').allTextContents();
  expect(rows.map((r) => /Juniper|Bramble/.exec(r)![0])).toEqual(['Bramble', 'Juniper', 'Juniper']);
  expect(rows[0]).toMatch(/1 question.*Draft/);
  expect(rows[1]).toMatch(/Kept/);
  expect(complaints).toEqual([]);
});
test('words that were said are found, with what they became, and the moment plays', async () => {
  const { page } = await scene.tab('#/book');
  await page.getByLabel('Words that were said').fill('hook');
  await page.getByRole('button', { name: 'Find' }).click();
  await page.locator('.hits li').first().waitFor();
  expect(await page.locator('.hits li').count()).toBeGreaterThanOrEqual(2);
  expect(await page.locator('.hits li', { hasText: '106: Hook, front, 4 mm high' }).count()).toBe(1);
  const [sound] = await Promise.all([
    page.waitForResponse((r) => r.url().includes('/sound?')),
    page.locator('.hits li', { hasText: '4 mm high' }).getByRole('button').click(),
  ]);
  expect([sound.status(), sound.headers()['content-type'], new URL(sound.url()).pathname]).toEqual([
    200,
    'audio/wav',
    '/api/exams/year-two/sound',
  ]);
});
test('a search by tooth and finding is an address of its own, and going back leads to the book', async () => {
  const { page } = await scene.tab('#/book?condition=mobility&tooth=210');
  await page.locator('.hits li', { hasText: '210: Mobility, grade 1' }).waitFor();
  expect(await page.locator('.hits li').count()).toBe(1);
  await page.getByRole('link', { name: 'Back to the book' }).click();
  await page.locator('section[aria-labelledby="visits"]').waitFor();
});
test('who is due: six months after the last visit; what an earlier visit asked for is past when the horse was seen again', async () => {
  const { page } = await scene.tab('#/book');
  await page.locator('.due a').first().waitFor();
  expect(await page.locator('.due a').allTextContents()).toEqual([expect.stringMatching(/Juniper.*See again, in 6 months.*4 Sept? 2026/)]);
});
test('each place over the years stands in a row, a column for each visit; a touched tooth leaves its own', async () => {
  const { page, complaints } = await scene.tab('#/book/horse/Juniper');
  await page.locator('table').waitFor();
  expect(await page.locator('thead th').allTextContents()).toEqual(['Place', '1 Mar 2025', '4 Mar 2026']);
  const row = await page
    .locator('tbody tr', { has: page.getByText('106', { exact: true }) })
    .locator('td')
    .allTextContents();
  expect(row).toEqual(['Hook, front, 3 mm high', 'Hook, front, 4 mm high']);
  await page.locator('[data-key="210"]').focus();
  await expect.poll(() => page.locator('tbody tr').count()).toBe(1);
  expect(complaints).toEqual([]);
});
test('a file that is no recording is refused in words; nothing is put in the book', async () => {
  const { page, ask } = await scene.tab('#/book');
  const before = ((await ask('/api/exams')).body as unknown[]).length;
  const folder = await mkdtemp(join(tmpdir(), 'quidnote-upload-'));
  await writeFile(join(folder, 'letter.wav'), 'this is no sound');
  await page.locator('input[type=file]').setInputFiles(join(folder, 'letter.wav'));
  await page.locator('.upload .trouble').waitFor();
  expect(await page.locator('.upload .trouble').textContent()).toMatch(/\w+.*\./);
  expect(((await ask('/api/exams')).body as unknown[]).length).toBe(before);
  await rm(folder, { recursive: true });
});
test(
  'a recording is read on this machine: how far it is, what was amiss with it, and the draft that it became',
  { timeout: 300_000 },
  async () => {
    const { page, draft, complaints } = await scene.tab('#/book');
    page.setDefaultTimeout(200_000);
    const folder = await mkdtemp(join(tmpdir(), 'quidnote-upload-'));
    // The first seconds of the bundled exam ("Right, this is Juniper", fixtures/exams/demo.json); its file ends before its header says.
    const file = join(folder, 'barn.wav');
    await demoWav(file, 12);
    const whole = await readFile(file);
    await writeFile(file, whole.subarray(0, whole.length - 32_000));
    await page.locator('input[type=file]').setInputFiles(file);
    await page.getByText(/barn\.wav: Reading, 0:\d\d so far/).waitFor();
    expect(await page.getByRole('button', { name: 'Add a recording' }).isDisabled()).toBe(true);
    await page.getByText('barn.wav: Ready to look over').waitFor();
    expect(await page.locator('.upload .notice').allTextContents()).toEqual([
      'The file ends before its header says; what is there was read.',
    ]);
    await page.getByRole('link', { name: 'Look it over' }).click();
    await page.locator('.check h1').waitFor();
    const id = new URL(page.url()).hash.split('/').at(-1)!;
    const { utterances, unread, header } = await draft(id);
    expect(utterances[0]!.text.toLowerCase()).toContain('juniper');
    expect(header.horse).toMatchObject({ name: 'Juniper', sex: 'gelding' });
    expect(unread).toEqual([]);
    expect(complaints).toEqual([]);
    await rm(folder, { recursive: true });
  },
);
test(
  'a recording of a kind that the program does not open is opened by the browser; one that neither can is refused in words',
  { timeout: 300_000 },
  async () => {
    const { page, draft } = await scene.tab('#/book');
    page.setDefaultTimeout(200_000);
    const folder = await mkdtemp(join(tmpdir(), 'quidnote-upload-'));
    await demoWav(join(folder, 'barn.wav'), 6);
    // The browser's own recorder makes a WebM file of the sound, as a phone's page would.
    const webm = await page.evaluate(
      async (wav) => {
        const context = new AudioContext();
        const sound = await context.decodeAudioData(Uint8Array.from(atob(wav), (c) => c.charCodeAt(0)).buffer);
        const [source, out] = [new AudioBufferSourceNode(context, { buffer: sound }), context.createMediaStreamDestination()];
        source.connect(out);
        const recorder = new MediaRecorder(out.stream, { mimeType: 'audio/webm' });
        const parts: Blob[] = [];
        recorder.ondataavailable = ({ data }) => parts.push(data);
        recorder.start();
        source.start();
        await new Promise((done) => {
          source.onended = done;
        });
        await new Promise((done) => {
          recorder.onstop = done;
          recorder.stop();
        });
        const bytes = new Uint8Array(await new Blob(parts).arrayBuffer());
        let text = '';
        for (const byte of bytes) text += String.fromCharCode(byte);
        return btoa(text);
      },
      (await readFile(join(folder, 'barn.wav'))).toString('base64'),
    );
    await writeFile(join(folder, 'phone.webm'), Buffer.from(webm, 'base64'));
    await page.locator('input[type=file]').setInputFiles(join(folder, 'phone.webm'));
    await page.getByText('phone.webm: Ready to look over').waitFor();
    await page.getByRole('link', { name: 'Look it over' }).click();
    await page.locator('.check h1').waitFor();
    expect((await draft(new URL(page.url()).hash.split('/').at(-1)!)).utterances[0]!.text.toLowerCase()).toContain('juniper');
    await page.goBack();
    await writeFile(join(folder, 'old.amr'), '#!AMR\nnothing that can be played');
    await page.locator('input[type=file]').setInputFiles(join(folder, 'old.amr'));
    await page.getByText('Neither the program nor this browser can open this kind of recording').waitFor();
    await rm(folder, { recursive: true });
  },
);
test.each(['light', 'dark'] as const)('%s: axe finds nothing wrong in the book, a search, a horse, the settings', async (colorScheme) => {
  const { page } = await scene.tab('#/book', { colorScheme });
  await page.evaluate(axe);
  for (const [place, sign] of [
    ['#/book', '.due a'],
    ['#/book?words=hook', '.hits li'],
    ['#/book/horse/Juniper', 'table'],
    ['#/settings', 'fieldset'],
    ['#/check', '.exam-list a'],
  ] as const) {
    await page.evaluate((hash) => {
      location.hash = hash;
    }, place);
    await page.locator(sign).first().waitFor();
    const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run());
    expect(violations.map((v) => `${place} ${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
  }
});
test('erasing is asked twice; the sound goes first, then all of a horse', async () => {
  const { page, ask } = await scene.tab('#/book/horse/Juniper');
  // Recordings that name the horse stand beside it: the visit of the second year is meant.
  const visit = page.locator('.own li', { has: page.locator('a[href*="year-two"]') });
  await visit.getByText('Pages and erasing').click();
  await visit.getByRole('button', { name: 'Erase the sound' }).click();
  const dialog = page.locator('dialog[open]');
  expect(await dialog.getByRole('button', { name: 'Erase the sound' }).isDisabled()).toBe(true);
  await dialog.getByLabel('Type Juniper to go on').fill('Juniper');
  await dialog.getByRole('button', { name: 'Erase the sound' }).click();
  await expect.poll(async () => (await ask('/api/exams/year-two/sound?from=0&to=1')).status).toBe(410);
  expect((await ask('/api/exams/year-two')).status).toBe(200);
  await page.getByRole('button', { name: 'Erase everything about Juniper' }).click();
  await page.locator('dialog[open]').getByLabel('Type Juniper to go on').fill('Juniper');
  await page.locator('dialog[open]').getByRole('button', { name: 'Erase everything about Juniper' }).click();
  await page.waitForFunction(() => location.hash === '#/book');
  const rows = (await ask('/api/exams')).body as { id: string; erased: boolean; horse: string | null }[];
  expect(rows.filter((r) => r.erased).length).toBeGreaterThanOrEqual(2);
  expect(rows.some((r) => r.horse === 'Juniper')).toBe(false);
});
