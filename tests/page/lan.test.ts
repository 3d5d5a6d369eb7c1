/** A phone on the local network, from the square on the machine's screen to its own listening place and out again: the real program, two real browsers' worth of cookies, real TLS. */
import { mkdtemp, rm } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, screens } from './browser.ts';
import { at, startProgram, type Program } from './program.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
let folder: string, browser: Browser, program: Program;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-lan-page-'));
  await build({ logLevel: 'error' });
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  await program?.stop();
  await rm(folder, { recursive: true, force: true });
});

const settings = async (): Promise<Page> => {
  const page = await (await browser.newContext({ viewport: screens.laptop })).newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(program.address);
  await page.goto(at(program.address, '#/settings'));
  await page.getByRole('heading', { name: 'Phone or tablet in the yard' }).waitFor();
  return page;
};

test('a program that answers this machine alone says how to let a phone in', async () => {
  program = await startProgram(join(folder, 'data'));
  const page = await settings();
  await page.getByText('npm start -- --lan').waitFor();
  expect(await page.locator('.square').count()).toBe(0);
  await program.stop();
});

test('a phone is let in by the code, has its microphone, and is taken off the list', async () => {
  program = await startProgram(join(folder, 'data'), 0, ['--lan']);
  const page = await settings();
  await page.getByRole('img', { name: /Square to point a camera at/ }).waitFor();
  const code = (await page.getByLabel('Code for the next device').textContent())!.replace(' ', '');
  const address = (await page.locator('.address').textContent())!;
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.evaluate(axe);
    const { violations } = await page.evaluate(() => (window as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run());
    expect(violations.map((v) => `${v.id}: ${v.nodes[0]?.html}`)).toEqual([]);
    if (process.env.QUIDNOTE_SHOTS)
      await page.screenshot({ path: join(process.env.QUIDNOTE_SHOTS, `settings-${colorScheme}.png`), fullPage: true });
  }
  const phone = await (
    await browser.newContext({ viewport: screens.phone, ignoreHTTPSErrors: true, permissions: ['microphone'] })
  ).newPage();
  // The square holds just this address.
  await phone.goto(`${address}?code=${code}`);
  if (process.env.QUIDNOTE_SHOTS) await phone.screenshot({ path: join(process.env.QUIDNOTE_SHOTS, 'pair-phone.png') });
  await phone.getByLabel('What to call it').fill('Barn phone');
  await phone.getByRole('button', { name: 'Let in' }).click();
  await phone.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: 'Listening' }).click();
  await phone.getByRole('button', { name: 'Start listening' }).click();
  await phone.locator('.live.running').waitFor();
  // A code works once: the machine shows another by itself, and who came in.
  await expect
    .poll(async () => (await page.getByLabel('Code for the next device').textContent())!.replace(' ', ''), { timeout: 20_000 })
    .not.toBe(code);
  await page.getByText('Barn phone').waitFor();
  if (process.env.QUIDNOTE_SHOTS) await page.screenshot({ path: join(process.env.QUIDNOTE_SHOTS, 'settings-let-in.png'), fullPage: true });
  await page.getByRole('button', { name: 'Take Barn phone off the list' }).click();
  await page.getByRole('button', { name: 'Yes, take Barn phone off' }).click();
  await page.getByText('No device was let in yet.').waitFor();
  // Out at once, also where it was listening; what it goes on hearing it keeps and says so.
  await phone.getByText('The line is down').waitFor({ timeout: 20_000 });
  expect((await phone.context().request.get(new URL('/api/exams', address).href)).status()).toBe(401);
});

test('a phone that was let in is told where the list is', async () => {
  const page = await settings();
  const code = (await page.getByLabel('Code for the next device').textContent())!.replace(' ', '');
  const address = (await page.locator('.address').textContent())!;
  const phone = await (await browser.newContext({ viewport: screens.phone, ignoreHTTPSErrors: true })).newPage();
  await phone.goto(`${address}?code=${code}`);
  await phone.getByRole('button', { name: 'Let in' }).click();
  await phone.getByRole('link', { name: 'Settings' }).click();
  await phone.getByText('shown at the machine on which the program runs').waitFor();
  expect(await phone.locator('.square, output').count()).toBe(0);
});
