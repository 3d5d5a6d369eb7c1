import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { Draft } from '../../parser/contract/draft.ts';
import { readRecording } from '../../server/audio/read.ts';
import { launch, screens } from './browser.ts';
import { demoWav } from './demo.ts';
import { at, startProgram, type Program } from './program.ts';

/**
 * The whole way, with nothing standing in for anything: the program started as its user starts it, a real browser, its microphone fed
 * with the first minute of the bundled exam, the embedded ear, the grammar, the database.
 */
const seconds = 55;

let folder: string;
let program: Program;
let browser: Browser | undefined;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-page-'));
  await build({ logLevel: 'error' });
  await demoWav(join(folder, 'demo.wav'), seconds);
  program = await startProgram(join(folder, 'data'));
});
afterEach(() => browser?.close());
afterAll(async () => {
  await program?.stop();
  await rm(folder, { recursive: true, force: true });
});

/** Opens the page at the printed address, and its listening place. */
const openPage = async (wav?: string): Promise<Page> => {
  browser = await launch(wav);
  const page = await (await browser.newContext({ viewport: screens.laptop })).newPage();
  // Generous, because the checks share their two cores: nothing here measures time.
  page.setDefaultTimeout(150_000);
  await page.goto(program.address);
  await page.goto(at(program.address, '#/listen'));
  return page;
};
const begin = async (page: Page, horse: string): Promise<void> => {
  await page.getByLabel('Which horse?').fill(horse);
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.live.running').waitFor();
};
/** What the server holds, asked by the page itself. */
const draftOf = (page: Page, id: string): Promise<Draft> =>
  page.evaluate(async (exam) => ((await (await fetch(`/api/exams/${exam}`)).json()) as { draft: Draft }).draft, id);
const examId = async (page: Page): Promise<string> =>
  (await (await page.waitForFunction(() => localStorage.getItem('quidnote.sitting'))).jsonValue())!;
/** Seconds of sound that the server holds of an exam. */
const soundOn = async (page: Page, id: string): Promise<number> => {
  const wav = await (await page.context().request.get(new URL(`/api/exams/${id}/sound?from=0&to=${seconds}`, program.address).href)).body();
  return (wav.length - 44) / 2 / 16000;
};
const until = async (holds: () => Promise<boolean>): Promise<void> => {
  while (!(await holds())) await new Promise((resolve) => setTimeout(resolve, 250));
};

test(
  'an exam is spoken, shown while it is spoken, one item struck, one changed, confirmed, and found again',
  { timeout: 400_000 },
  async () => {
    const page = await openPage(join(folder, 'demo.wav'));
    await begin(page, 'Juniper');
    const id = await examId(page);
    // While it is still being spoken: the state says so, words and what they became are on the screen.
    await page.getByRole('heading', { name: 'Hearing you' }).waitFor();
    await page.locator('.live-words span.item').first().waitFor();
    await page.locator('.live-became li').first().waitFor();
    expect((await draftOf(page, id)).unread.length + (await draftOf(page, id)).utterances.length).toBeLessThan(14);
    // To the end of the sound: everything read, nothing waits. The browser's test device may swallow a little of it on a busy machine, so
    // the end is asked of the journal, whose last seconds are quiet, and not of the last phrase's clock.
    await until(async () => (await soundOn(page, id)) > seconds - 2);
    await until(async () => (await draftOf(page, id)).unread.length === 0);
    const spoken = await draftOf(page, id);
    const stands = spoken.items.filter((i) => i.state === 'open');
    expect(stands.length).toBeGreaterThanOrEqual(5);
    // Every word has its account, every item its stretch of sound (laws 1 and 6 of the house).
    for (const { words, text } of spoken.utterances) expect(words.length, text).toBeGreaterThan(0);
    for (const { item } of stands) expect(item.evidence.at, item.id).toBeDefined();

    await page.getByRole('button', { name: 'Strike last' }).click();
    await page.locator('.live-became li.struck').first().waitFor();
    await page.getByRole('button', { name: 'Bring back' }).click();
    await page.locator('.live-became li.struck').first().waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Strike last' }).click();
    await page.locator('.live-became li.struck').first().waitFor();

    await page.getByRole('button', { name: 'Finish' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Finish' }).click();
    await page.waitForURL(`**#/check/${id}`);
    await page.getByRole('heading', { name: 'Juniper' }).first().waitFor();

    // One is changed by hand: a finding gets its severity.
    const finding = (await draftOf(page, id)).items.find(
      (i) => i.state === 'open' && i.item.kind === 'finding' && i.item.presence === 'present',
    )!;
    await page.locator(`[id="line-${finding.item.id}"]`).click();
    await page.getByRole('button', { name: 'Change', exact: true }).click();
    const form = page.getByRole('form', { name: 'Change this' });
    await form.getByRole('button', { name: 'marked', exact: false }).first().click();
    await form.getByRole('button', { name: 'Put it so' }).click();
    await until(async () => (await draftOf(page, id)).items.some((i) => i.item.revises === finding.item.id));

    // Refused while a question is open; each question has its own answer.
    const confirm = page.getByRole('button', { name: 'Confirm this record' });
    const asks = page.getByRole('button', { name: /as said|Right as it is/ });
    const open = async (): Promise<number> => (await draftOf(page, id)).doubts.filter((d) => !d.settled).length;
    for (let left = await open(); left > 0; left = await open()) {
      expect(await confirm.getAttribute('aria-disabled')).toBe('true');
      await asks.first().click();
      await until(async () => (await open()) < left);
    }
    await confirm.click();
    const dialog = page.getByRole('dialog', { name: /Confirm the record/ });
    await dialog.getByRole('textbox').first().fill('A. Tester');
    await dialog.getByRole('button', { name: 'Confirm', exact: true }).click();
    await until(async () => (await draftOf(page, id)).state === 'confirmed');

    const hits = await page.evaluate(
      async () => (await (await fetch('/api/search?horse=Juniper&kind=finding')).json()) as { exam: string }[],
    );
    expect(hits.length).toBeGreaterThan(0);
    expect(new Set(hits.map((hit) => hit.exam))).toEqual(new Set([id]));
  },
);

test('pause, carry on, the next horse and back, by touch', async () => {
  const page = await openPage();
  await begin(page, 'Bramble');
  const first = await examId(page);
  await page.getByRole('button', { name: 'Pause' }).click();
  await page.getByRole('heading', { name: 'Paused' }).waitFor();
  await page.getByRole('button', { name: 'Carry on' }).click();
  await page.getByRole('heading', { name: /Listening|Reading|Hearing you/ }).waitFor();
  await page.getByRole('button', { name: 'Next horse' }).click();
  await page.getByRole('dialog').getByRole('textbox').fill('Sorrel');
  await page.getByRole('dialog').getByRole('button', { name: 'Next horse' }).click();
  await page.locator('.live-top b', { hasText: 'Sorrel' }).waitFor();
  const second = await examId(page);
  expect(second).not.toBe(first);
  // Sound goes on into the new exam's journal, with nothing stuck on the page.
  await page.waitForTimeout(3000);
  expect(await page.getByText('kept here, will be sent').count()).toBe(0);
  await page.getByRole('button', { name: 'Bring back' }).click();
  await page.locator('.live-top b', { hasText: 'Bramble' }).waitFor();
  expect(await examId(page)).toBe(first);
  await page.waitForTimeout(2000);
  expect(await page.getByText('kept here, will be sent').count()).toBe(0);
});

test(
  'the line is cut in the middle of a phrase: every second of sound is on the server afterwards, in order',
  { timeout: 200_000 },
  async () => {
    const page = await openPage(join(folder, 'demo.wav'));
    await begin(page, 'Fennel');
    const id = await examId(page);
    await page.getByRole('heading', { name: 'Hearing you' }).waitFor();
    await page.waitForTimeout(600);
    await page.context().setOffline(true);
    await page.getByText('The line is down').waitFor();
    await page.waitForTimeout(6000);
    await page.context().setOffline(false);
    await page.getByText('kept here, will be sent').waitFor({ state: 'detached' });
    await page.waitForTimeout(6000);
    const sound = await (await page.context().request.get(new URL(`/api/exams/${id}/sound?from=0&to=25`, program.address).href)).body();
    const taken = Float32Array.from({ length: (sound.length - 44) / 2 }, (_, i) => sound.readInt16LE(44 + i * 2) / 32768);
    const parts: Float32Array[] = [];
    for await (const part of readRecording(join(folder, 'demo.wav'))) parts.push(part);
    const spoken = Float32Array.from(parts.flatMap((part) => [...part]).slice(0, 40 * 16000));
    expect(taken.length).toBeGreaterThan(16000 * 12);
    // Each second of it is looked for in what was spoken. A lost chunk would move all that follows by 4000 samples, one out of order would fit nowhere.
    // The browser's test device itself slips by 10 ms (160 samples) now and then on a busy machine: the second in which it slips may fit badly.
    const found = Array.from({ length: Math.floor(taken.length / 16000) - 2 }, (_, i) => {
      const [from, near] = [(i + 1) * 16000, Math.max(0, (i - 2) * 16000)];
      const piece = taken.subarray(from, from + 16000);
      const where = near + bestShift(piece, spoken.subarray(near, near + 16000 * 7));
      return { shift: where - from, fit: likeness(piece, spoken.subarray(where, where + 16000)) };
    });
    const sure = found.filter(({ fit }) => fit > 0.9).map(({ shift }) => shift);
    const slips = sure.filter((shift, i) => i > 0 && shift !== sure[i - 1]).length;
    expect(Math.max(...sure) - Math.min(...sure)).toBeLessThan(2000);
    expect(found.length - sure.length).toBeLessThanOrEqual(slips);
  },
);

/** Correlation of two equally long stretches (Pearson, without the mean: sound has none). */
const likeness = (a: Float32Array, b: Float32Array): number => {
  let [ab, aa, bb] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    ab += a[i]! * (b[i] ?? 0);
    aa += a[i]! ** 2;
    bb += (b[i] ?? 0) ** 2;
  }
  return ab / Math.sqrt(aa * bb || 1);
};
/** Where in `whole` the stretch lies. */
const bestShift = (stretch: Float32Array, whole: Float32Array): number => {
  const coarse = (x: Float32Array): Float32Array =>
    Float32Array.from({ length: Math.floor(x.length / 8) }, (_, i) => x.subarray(i * 8, i * 8 + 8).reduce((s, v) => s + v, 0));
  const [small, large] = [coarse(stretch), coarse(whole)];
  let best = { at: 0, fit: -1 };
  for (let n = 0; n + small.length <= large.length; n++) {
    const fit = likeness(small, large.subarray(n, n + small.length));
    if (fit > best.fit) best = { at: n * 8, fit };
  }
  for (let n = Math.max(0, best.at - 16); n <= best.at + 16; n++) {
    const fit = likeness(stretch, whole.subarray(n, n + stretch.length));
    if (fit > best.fit) best = { at: n, fit };
  }
  return best.at;
};
