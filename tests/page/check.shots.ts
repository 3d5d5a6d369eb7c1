/** Pictures of looking over and the book, to be looked at: `npx tsx tests/page/check.shots.ts [FOLDER] [SCENE...]`. An invented exam; no server. */
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { launch, screens } from './browser.ts';
import { bookAnswers, sampleCautions } from './book.sample.ts';
import { sampleDraft } from './check.sample.ts';
import { openStage } from './stage.ts';

interface Scene {
  readonly at: string;
  readonly draft?: ReturnType<typeof sampleDraft>;
  readonly dark?: boolean;
  readonly act?: (page: Page) => Promise<void>;
}
const check = '#/check/exam-juniper';
const scenes: Readonly<Record<string, Scene>> = {
  'check-empty': { at: check, draft: sampleDraft(0) },
  'check-mid': { at: check, draft: sampleDraft(10) },
  'check-doubts': { at: check, draft: sampleDraft() },
  'check-night': {
    at: check,
    draft: sampleDraft(),
    dark: true,
    act: async (page) => {
      await page.locator('li.line .head').nth(4).click();
    },
  },
  'check-tooth': {
    at: check,
    draft: sampleDraft(),
    act: async (page) => {
      await page.locator('[data-key="106"] .outline').click();
    },
  },
  'check-change': {
    at: check,
    draft: sampleDraft(),
    act: async (page) => {
      await page.locator('li.line .head').nth(4).click();
      await page.keyboard.press('e');
      await page.locator('.edit').scrollIntoViewIfNeeded();
    },
  },
  'check-confirmed': { at: check, draft: sampleDraft(undefined, 'confirmed') },
  'check-foot': {
    at: check,
    draft: sampleDraft(),
    act: async (page) => {
      await page.locator('.cautions').scrollIntoViewIfNeeded();
    },
  },
  'check-waiting': { at: '#/check' },
  book: { at: '#/book' },
  'book-search': { at: '#/book?words=hook&tooth=106' },
  'book-horse': { at: '#/book/horse/Juniper' },
  settings: { at: '#/settings' },
  'settings-night': { at: '#/settings', dark: true },
  'book-night': { at: '#/book', dark: true },
};

const [folder = '.cache/shots', ...only] = process.argv.slice(2);
await mkdir(folder, { recursive: true });
const built = join(process.cwd(), '.cache/shots-page');
await build({ logLevel: 'error', build: { outDir: built, emptyOutDir: true } });
const stage = await openStage(built, []);
const browser = await launch();
for (const [name, scene] of Object.entries(scenes).filter(([name]) => only.length === 0 || only.includes(name))) {
  for (const [screen, viewport] of Object.entries(screens)) {
    const context = await browser.newContext({
      viewport,
      colorScheme: scene.dark ? 'dark' : 'light',
      reducedMotion: 'reduce',
      hasTouch: screen !== 'laptop',
      locale: 'en-GB',
    });
    const page = await context.newPage();
    page.on('console', (message) => message.type() === 'error' && process.stderr.write(`${name} ${screen}: ${message.text()}\n`));
    page.on('pageerror', (error) => process.stderr.write(`${name} ${screen}: ${error.stack}\n`));
    await page.route('**/api/**', (route) => {
      const answer = bookAnswers[new URL(route.request().url()).pathname];
      return route.fulfill({ json: answer ?? { draft: scene.draft, cautions: scene.draft?.items.length ? sampleCautions : [] } });
    });
    await page.goto(`${stage.address}/${scene.at}`);
    await page.locator('h1').waitFor();
    await page.waitForTimeout(200);
    await scene.act?.(page);
    await page.waitForTimeout(150);
    await page.screenshot({ path: join(folder, `${name}-${screen}.png`) });
    await context.close();
  }
}
await browser.close();
await stage.close();
