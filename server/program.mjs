/**
 * The program as one file of plain JavaScript in `.cache/`, made again when a source has changed: reading some two hundred files of
 * TypeScript took half of the time of every start.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const made = join(root, '.cache', 'program');

/** Of all that the file is made from: where the sources lie, what they hold, and how they are joined. */
function inputs() {
  const hash = createHash('sha256').update(root);
  const files = ['server', 'parser'].flatMap((room) => readdirSync(join(root, room), { recursive: true, withFileTypes: true }));
  for (const path of files
    .filter((file) => file.isFile() && file.name.endsWith('.ts'))
    .map((file) => join(file.parentPath, file.name))
    .sort())
    hash.update(`\0${path}\0`).update(readFileSync(path));
  return hash
    .update(readFileSync(fileURLToPath(import.meta.url)))
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')
    .slice(0, 32);
}

/** What lies beside a source (the adapter, the reader's own source, threads) is still found there. */
const ownPlaces = {
  name: 'own-places',
  setup: ({ onLoad }) =>
    onLoad({ filter: /\.ts$/ }, ({ path }) => ({
      loader: 'ts',
      contents: readFileSync(path, 'utf8').replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)),
    })),
};

async function joined() {
  const { build } = await import('esbuild');
  const {
    outputFiles: [file],
  } = await build({
    entryPoints: [join(root, 'server', 'cli.ts')],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    logLevel: 'silent',
    plugins: [ownPlaces],
  });
  return file.contents;
}

/** cli.ts, ready to run. */
export async function program() {
  const file = join(made, `${inputs()}.mjs`);
  if (!existsSync(file)) {
    try {
      mkdirSync(made, { recursive: true });
      const part = `${file}.${process.pid}.part`;
      try {
        writeFileSync(part, await joined());
        renameSync(part, file);
      } finally {
        rmSync(part, { force: true });
      }
      for (const old of readdirSync(made)) if (join(made, old) !== file && old.endsWith('.mjs')) rmSync(join(made, old), { force: true });
    } catch (error) {
      if (!['EACCES', 'EPERM', 'EROFS', 'ENOSPC', 'EDQUOT', 'EFBIG'].includes(error.code)) throw error;
      // Where nothing can be written here, the sources are run as they are, only later.
      (await import('tsx/esm/api')).register();
      return import('./cli.ts');
    }
  }
  return import(pathToFileURL(file).href);
}
