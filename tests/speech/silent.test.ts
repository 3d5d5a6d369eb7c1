/** Nothing leaves the machine: the models' runtime, which would report what it runs and keep a number for the machine, is silenced before it starts. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, inject, test } from 'vitest';

/** In a home of its own, with none of the variables that silence the runtime from outside (it is silent under CI of itself). */
function run(program: string): { home: string; output: string } {
  const home = mkdtempSync(join(tmpdir(), 'quidnote-silent-'));
  const silencers = ['ORT_DISABLE_TELEMETRY', 'ORT_RUNNING_UNIT_TESTS', 'CI'];
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !silencers.includes(name)));
  const { stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', '--input-type=module', '--eval', program], {
    env: { ...env, HOME: home, XDG_CACHE_HOME: join(home, '.cache') },
    encoding: 'utf8',
  });
  return { home, output: stdout + stderr };
}
const weights = inject('weights');

test.each([
  [
    'voice activity first, as the program does',
    `const { openVad } = await import('./server/audio/vad.ts');
     await (await openVad(${JSON.stringify(weights.vad)})).next(new Float32Array(512));
     console.log('ran');`,
  ],
  [
    'the recogniser alone, in its thread',
    `const { openEngine } = await import('./server/speech/moonshine/index.ts');
     const ear = await openEngine({ weightsDir: ${JSON.stringify(weights.dir)} });
     await ear.hear({ samples: new Float32Array(16000), from: 0 }, []);
     await ear.close();
     console.log('ran');`,
  ],
])('%s: no trace of a report', (_what, program) => {
  const { home, output } = run(program);
  expect(output).toContain('ran');
  // What it keeps when it does report (seen with 1.30): ~/.cache/Microsoft/DeveloperTools/.onnxruntime/{deviceid,onnxruntime.db}.
  expect(existsSync(join(home, '.cache')) ? readdirSync(join(home, '.cache')) : []).not.toContain('Microsoft');
  rmSync(home, { recursive: true, force: true });
});
