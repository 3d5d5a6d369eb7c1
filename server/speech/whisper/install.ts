/** Installing the second reader, on an explicit command only: build it, and give it weights. */
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, open, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { buildReader, exists, noRoom, readerPath } from './build.ts';
import { SecondReaderError, isFull } from './trouble.ts';

/** The English base weights as the whisper.cpp project publishes them; checksum from `models/README.md` of its sources. */
export const published = {
  url: 'https://huggingface.co/ggerganov/whisper.cpp/resolve/main/ggml-base.en.bin',
  sha1: '137c40403d78fd54d454da0f9bd998f78703390c',
  name: 'ggml-base.en.bin',
} as const;

const Note = z.object({ weights: z.string(), sha256: z.string() });
export type Installed = { readonly reader: string; readonly weights: string };
export type Status = { readonly built: boolean; readonly weights: string | null; readonly usable: boolean };
export type Progress = (line: string, done?: number, total?: number) => void;

const noteAt = (cacheDir: string): string => join(cacheDir, 'weights.json');

/**
 * @param from a weights file of the user's own; without it the published one is downloaded (the only use of a network here)
 * @throws SecondReaderError
 */
export async function installSecondReader(
  cacheDir: string,
  options: { from?: string; onProgress: Progress; source?: { url: string; sha1: string; name: string } },
): Promise<Installed> {
  try {
    await mkdir(cacheDir, { recursive: true, mode: 0o700 });
    const reader = await buildReader(cacheDir, options.onProgress);
    const weights =
      options.from === undefined ? await download(cacheDir, options.source ?? published, options.onProgress) : resolve(options.from);
    await checkWeights(weights);
    await keepNote(cacheDir, { weights, sha256: await digest('sha256', weights) });
    options.onProgress(`The second reader is ready; its weights: ${weights}`);
    return { reader, weights };
  } catch (error) {
    throw isFull(error) ? noRoom() : error;
  }
}

/** Whole or not at all. */
async function keepNote(cacheDir: string, note: z.infer<typeof Note>): Promise<void> {
  const [path, part] = [noteAt(cacheDir), `${noteAt(cacheDir)}.part`];
  try {
    await writeFile(part, JSON.stringify(note), { mode: 0o600 });
    await rename(part, path);
  } finally {
    await rm(part, { force: true });
  }
}

/** What is installed and usable right now, or null. */
export async function secondReader(cacheDir: string): Promise<Installed | null> {
  const reader = await readerPath(cacheDir);
  const weights = await noted(cacheDir);
  return weights !== null && (await exists(reader)) && (await exists(weights)) ? { reader, weights } : null;
}

export async function secondReaderStatus(cacheDir: string): Promise<Status> {
  return {
    built: await exists(await readerPath(cacheDir)),
    weights: await noted(cacheDir),
    usable: (await secondReader(cacheDir)) !== null,
  };
}

/** Removes what we built and downloaded; a weights file of the user's own stays where it is. */
export const removeSecondReader = (cacheDir: string): Promise<void> => rm(cacheDir, { recursive: true, force: true });

async function noted(cacheDir: string): Promise<string | null> {
  const text = await readFile(noteAt(cacheDir), 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    return Note.parse(JSON.parse(text)).weights;
  } catch {
    return null; // a note that cannot be read is no note: it is installed again
  }
}

/** The ggml magic, and more than a header: a cut file is told at once, a subtler fault by the reader itself. */
async function checkWeights(path: string): Promise<void> {
  const bad = (why: string) =>
    new SecondReaderError('bad-weights', `${path} ${why}. Give the path of a whisper.cpp weights file (ggml-*.bin).`);
  const file = await open(path).catch(() => {
    throw bad('cannot be read');
  });
  try {
    const head = Buffer.alloc(4);
    await file.read(head, 0, 4, 0);
    if (head.readUInt32LE(0) !== 0x67676d6c) throw bad('is no ggml weights file');
    if ((await file.stat()).size < 10_000_000) throw bad('is too small to be whole');
  } finally {
    await file.close();
  }
}

/** Resumes a download that broke off; the finished file takes its name only when its checksum is right. */
async function download(cacheDir: string, source: { url: string; sha1: string; name: string }, onProgress: Progress): Promise<string> {
  const path = join(cacheDir, source.name);
  if (await exists(path)) return path;
  const part = `${path}.part`;
  const have = await stat(part).then(
    (s) => s.size,
    () => 0,
  );
  const answer = await fetch(source.url, have > 0 ? { headers: { range: `bytes=${have}-` } } : {}).catch((error: Error) => {
    throw new SecondReaderError(
      'download-failed',
      `The weights could not be fetched (${error.message}). Run the command again to go on where it stopped, or fetch ${source.name} elsewhere and give its path with --weights.`,
    );
  });
  // 416: the part is already whole. Any other refusal leaves the part for the next try.
  if (answer.status !== 416) {
    if (!answer.ok || answer.body === null)
      throw new SecondReaderError(
        'download-failed',
        `The weights could not be fetched (the server said ${answer.status}). Run the command again later, or give a file with --weights.`,
      );
    const resumed = answer.status === 206;
    let done = resumed ? have : 0;
    const total = done + Number(answer.headers.get('content-length') ?? 0);
    const count = new Transform({
      transform(chunk: Buffer, _encoding, next) {
        done += chunk.length;
        onProgress('Fetching the weights', done, total);
        next(null, chunk);
      },
    });
    await pipeline(
      Readable.fromWeb(answer.body as never),
      count,
      createWriteStream(part, { flags: resumed ? 'a' : 'w', mode: 0o600 }),
    ).catch((error: NodeJS.ErrnoException) => {
      if (isFull(error)) throw error;
      throw new SecondReaderError(
        'download-failed',
        `The download broke off (${error.message}); what came is kept. Run the command again: it goes on where it stopped.`,
      );
    });
  }
  if ((await digest('sha1', part)) !== source.sha1) {
    await rm(part, { force: true });
    throw new SecondReaderError(
      'bad-checksum',
      'The weights that came are not the published ones (wrong checksum) and were removed. Run the command again.',
    );
  }
  await rename(part, path);
  return path;
}

async function digest(kind: 'sha1' | 'sha256', path: string): Promise<string> {
  const hash = createHash(kind);
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}
