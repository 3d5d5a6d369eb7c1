import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, screens } from './browser.ts';
import { scenes } from './scenes.ts';
import { openStage } from './stage.ts';

/** The rules of WCAG 2.2 A and AA that axe-core (Deque) can check by machine; the large words also against AAA contrast. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

let folder: string;
let browser: Browser;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-axe-'));
  await build({ logLevel: 'error', build: { outDir: folder, emptyOutDir: true } });
  browser = await launch();
});
afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true });
});

interface Found {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly any: readonly { readonly message: string }[] }[];
}
const look = async (sunlight: boolean, scene: string | null, screen: keyof typeof screens): Promise<readonly string[]> => {
  const stage = await openStage(folder, scene ? scenes[scene]!.frames : []);
  const context = await browser.newContext({ viewport: screens[screen] });
  const page = await context.newPage();
  await page.addInitScript(`localStorage.setItem('quidnote.sunlight', '${sunlight}')`);
  await page.goto(`${stage.address}/#/listen`);
  if (scene) {
    await page.getByRole('button', { name: 'Start listening' }).click();
    await page.locator('.live.running').waitFor();
    await page.waitForTimeout(500);
  } else await page.getByText('What can I say?').click();
  await page.evaluate(axe.source);
  const found = await page.evaluate(async (tags) => {
    const engine = (window as unknown as { axe: { run: (options: object) => Promise<{ violations: Found[] }> } }).axe;
    return (await engine.run({ runOnly: tags, rules: { 'color-contrast-enhanced': { enabled: true } } })).violations;
  }, rules);
  await context.close();
  await stage.close();
  return found.flatMap(({ id, nodes }) => nodes.map((n) => `${id}: ${n.html.slice(0, 120)} ${n.any[0]?.message ?? ''}`));
};

const cases = [false, true].flatMap((sunlight) =>
  [null, 'mid-exam', 'doubt', 'doubt-of-four', 'struck', 'paused'].map(
    (scene) => [scene ?? 'ready', sunlight ? 'sunlight' : 'night', sunlight, scene] as const,
  ),
);
test.each(cases)('the listening screen, %s, %s: no barrier that a machine can find', async (_name, _light, sunlight, scene) => {
  expect(await look(sunlight, scene, 'phone')).toEqual([]);
});
test('nor on a laptop', async () => expect(await look(false, 'doubt', 'laptop')).toEqual([]));
