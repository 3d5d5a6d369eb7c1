import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { emptyDraft } from '../web/emptyDraft.ts';
import { launch } from './browser.ts';
import { openStage, type Stage, type TakenChunk } from './stage.ts';
import { wav } from './wav.ts';

/** What leaves a real browser's microphone. The sound it hears is computed here, so what must arrive is known. */
const rate = 48000;
const sine = (hz: number, seconds: number): number[] =>
  Array.from({ length: rate * seconds }, (_, i) => 0.25 * Math.sin((2 * Math.PI * hz * i) / rate));

let folder: string;
let browser: Browser | undefined;
let stage: Stage | undefined;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-capture-'));
  await build({ logLevel: 'error', build: { outDir: join(folder, 'page'), emptyOutDir: true } });
});
afterEach(async () => {
  await browser?.close();
  await stage?.close();
});
afterAll(() => rm(folder, { recursive: true }));

const listen = async (samples: readonly number[] | null): Promise<Page> => {
  const file = join(folder, 'microphone.wav');
  if (samples) await writeFile(file, wav(samples, rate));
  stage = await openStage(join(folder, 'page'), [
    { type: 'draft', draft: emptyDraft('x1') },
    { type: 'hearing', state: 'listening' },
  ]);
  browser = await launch(samples ? file : undefined);
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${stage.address}/#/listen`);
  await page.getByRole('button', { name: 'Start listening' }).click();
  await page.locator('.live.running').waitFor();
  return page;
};
const seconds = (chunks: readonly TakenChunk[]): number => chunks.reduce((sum, c) => sum + c.sound.length, 0) / 32000;
const until = async (holds: () => boolean): Promise<void> => {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 50));
};
/** Each chunk once, in the order of its numbers. */
const unique = (chunks: readonly TakenChunk[]): readonly TakenChunk[] => {
  const byPlace = new Map(chunks.map((c) => [`${c.epoch}.${c.sequence}`, c]));
  return [...byPlace.values()].sort((a, b) => a.epoch - b.epoch || a.sequence - b.sequence);
};
const inOrder = (chunks: readonly TakenChunk[]): boolean =>
  chunks.every(
    (c, i) => i === 0 || c.epoch > chunks[i - 1]!.epoch || (c.epoch === chunks[i - 1]!.epoch && c.sequence > chunks[i - 1]!.sequence),
  );
const samplesOf = (chunks: readonly TakenChunk[]): Float32Array => {
  const all = Buffer.concat(chunks.map((c) => c.sound));
  return Float32Array.from({ length: all.length / 2 }, (_, i) => all.readInt16LE(i * 2) / 32768);
};
/** Loudness in decibels of one pitch within some samples (Goertzel 1958: one bin of the Fourier sum). */
const loudnessAt = (hz: number, samples: Float32Array): number => {
  let [re, im] = [0, 0];
  samples.forEach((s, i) => {
    re += s * Math.cos((2 * Math.PI * hz * i) / 16000);
    im += s * Math.sin((2 * Math.PI * hz * i) / 16000);
  });
  return 20 * Math.log10((2 * Math.hypot(re, im)) / samples.length);
};

describe('the microphone of a real browser', () => {
  test('arrives whole: numbered, summed, at the loudness it was, and nothing above 8 kHz folded in', async () => {
    await listen([...sine(1000, 3), ...sine(12000, 3), ...sine(1000, 3)]);
    await until(() => seconds(stage!.taken) >= 9);
    const { taken } = stage!;
    expect(taken.every((c) => c.sumAgrees)).toBe(true);
    expect(taken.map((c) => c.sequence)).toEqual(taken.map((_, i) => i));
    expect(new Set(taken.map((c) => c.epoch)).size).toBe(1);
    const samples = samplesOf(taken);
    // A quarter of full scale is -12.04 dB. What a fold would put 12 kHz at is 16 - 12 = 4 kHz (Nyquist).
    expect(loudnessAt(1000, samples.subarray(16000, 32000))).toBeCloseTo(-12.04, 0);
    expect(loudnessAt(4000, samples.subarray(16000 * 4, 16000 * 5))).toBeLessThan(-80);
    expect(loudnessAt(1000, samples.subarray(16000 * 7, 16000 * 8))).toBeCloseTo(-12.04, 0);
  });

  test('a dropped line loses nothing: what was said meanwhile is kept, said to be kept, and comes in order', async () => {
    const page = await listen(sine(500, 20));
    await until(() => seconds(stage!.taken) >= 2);
    stage!.open(false);
    await page.getByText('The line is down').waitFor();
    await page.getByText('kept here, will be sent').waitFor();
    await page.waitForTimeout(3000);
    expect(await page.locator('.live-state').textContent()).toBe('Listening');
    const before = seconds(unique(stage!.taken));
    stage!.open(true);
    await until(() => seconds(unique(stage!.taken)) >= before + 4);
    await page.getByText('The line is down').waitFor({ state: 'detached' });
    const whole = unique(stage!.taken);
    expect(whole.map((c) => c.sequence)).toEqual(whole.map((_, i) => i));
    // No seam: a 500 Hz sine at 16 kHz never steps by more than 2 pi 500 / 16000 of its height from one sample to the next.
    const samples = samplesOf(whole).subarray(8000);
    const largestStep = samples.reduce((most, s, i) => Math.max(most, i ? Math.abs(s - samples[i - 1]!) : 0), 0);
    expect(largestStep).toBeLessThan(0.25 * ((2 * Math.PI * 500) / 16000) * 1.1);
  });

  test('a reload loses nothing that was recorded, even what the server had not acknowledged', async () => {
    const page = await listen(sine(500, 20));
    await until(() => seconds(stage!.taken) >= 1);
    stage!.acknowledges = false;
    await until(() => seconds(stage!.taken) >= 3);
    stage!.open(false);
    await page.waitForTimeout(1500);
    const kept = Number((await page.getByText('kept here, will be sent').textContent())!.match(/\d+/)![0]);
    const seen = stage!.taken.length;
    await page.reload();
    stage!.acknowledges = true;
    stage!.open(true);
    await page.getByRole('button', { name: /Carry on/ }).waitFor();
    await until(() => stage!.taken.length > seen);
    await page.getByText('kept here, will be sent').waitFor({ state: 'detached' });
    const again = stage!.taken.slice(seen);
    expect(seconds(again)).toBeGreaterThan(kept - 1);
    await page.getByRole('button', { name: /Carry on/ }).click();
    await page.locator('.live.running').waitFor();
    await until(() => new Set(stage!.taken.map((c) => c.epoch)).size === 2);
    expect(inOrder(stage!.taken.slice(seen))).toBe(true);
    const first = unique(stage!.taken).filter((c) => c.epoch === stage!.taken[0]!.epoch);
    expect(first.map((c) => c.sequence)).toEqual(first.map((_, i) => i));
  });

  test('a microphone that gives no sound is said at once, and said to be well again by the words', async () => {
    const page = await listen([...sine(500, 2), ...Array.from({ length: rate * 4 }, () => 0), ...sine(500, 6)]);
    await page.getByRole('heading', { name: 'I can’t hear the microphone' }).waitFor();
    await page.getByText('gives no sound').waitFor();
    await page.getByRole('heading', { name: 'Listening' }).waitFor();
  });

  test('a second window does not listen beside the first', async () => {
    const page = await listen(null);
    const second = await page.context().newPage();
    await second.goto(`${stage!.address}/#/listen`);
    await second.getByRole('button', { name: /Start listening|Start another horse/ }).click();
    await second.getByText('Another window on this device is already listening').waitFor();
  });
});
