/** Pictures of the listening screen, to be looked at: `npx tsx tests/page/live.shots.ts [FOLDER] [SCENE...]`. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'vite';
import { launch, screens } from './browser.ts';
import { scenes } from './scenes.ts';
import { openStage } from './stage.ts';
import { wav } from './wav.ts';

const [folder = '.cache/shots', ...only] = process.argv.slice(2);
const page = join(process.cwd(), '.cache/live-page');
await mkdir(folder, { recursive: true });
await build({ logLevel: 'error', build: { outDir: page, emptyOutDir: true } });

/** The microphone that gives nothing. */
const silence = join(process.cwd(), '.cache/silence.wav');
await writeFile(silence, wav(new Float32Array(16000), 16000));

const beeping = await launch();
const silent = await launch(silence);
const shoot = async (name: string, scene: (typeof scenes)[string] | null): Promise<void> => {
  const stage = await openStage(page, scene?.frames ?? []);
  for (const [screen, viewport] of Object.entries(screens)) {
    const context = await (scene?.microphone === false ? silent : beeping).newContext({ viewport, deviceScaleFactor: 1 });
    const tab = await context.newPage();
    await tab.addInitScript(`localStorage.setItem('quidnote.sunlight', '${scene?.sunlight === true}')`);
    tab.on('console', (message) => message.type() === 'error' && process.stderr.write(`${name} ${screen}: ${message.text()}\n`));
    tab.on('pageerror', (error) => process.stderr.write(`${name} ${screen}: ${error.stack}\n`));
    await tab.goto(`${stage.address}/#/listen`);
    if (scene) {
      await tab.getByRole('button', { name: 'Start listening' }).click();
      await tab.locator('.live.running').waitFor();
      await tab.waitForTimeout(scene.microphone === false ? 2500 : 900);
    }
    await tab.screenshot({ path: join(folder, `live-${name}-${screen}.png`) });
    await context.close();
  }
  await stage.close();
};
if (only.length === 0 || only.includes('ready')) await shoot('ready', null);
for (const [name, scene] of Object.entries(scenes)) if (only.length === 0 || only.includes(name)) await shoot(name, scene);
await beeping.close();
await silent.close();
