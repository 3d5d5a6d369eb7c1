/** The decoder with the trade adapter in it, made once from the pinned weights and kept beside them. */
import { access, readFile, readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sha256 } from '../npmPackage.ts';
import { applyAdapter } from './adapter/apply.ts';

const ADAPTER = new URL('./adapter/adapter.bin', import.meta.url);
const APPLY = new URL('./adapter/apply.ts', import.meta.url);
const FORMAT = new URL('./adapter/onnx.ts', import.meta.url);

/**
 * @param dir the folder that holds `decoder_model_merged.onnx`
 * @returns the adapted decoder's path, named by what it was made from and by what it holds: one that was cut or changed since is made
 * again, never used; undefined where the project carries no adapter
 */
export async function adaptedDecoder(dir: string): Promise<string | undefined> {
  if (!(await exists(ADAPTER))) return undefined;
  const decoderPath = join(dir, 'decoder_model_merged.onnx');
  const made = await Promise.all([readFile(decoderPath), readFile(ADAPTER), readFile(APPLY), readFile(FORMAT)]);
  const from = `decoder-trade-${short(sha256(Buffer.concat(made)))}`;
  const named = (holds: string): string => join(dir, `${from}-${short(holds)}.onnx`);
  for (const name of await readdir(dir)) {
    const path = join(dir, name);
    if (!name.startsWith(`${from}-`) || !name.endsWith('.onnx')) continue;
    if (path === named(sha256(await readFile(path)))) return path;
    await rm(path, { force: true });
  }
  const part = join(dir, `${from}.${process.pid}.part`);
  try {
    const { sha256: holds } = await applyAdapter({ decoderPath, adapterPath: fileURLToPath(ADAPTER), outPath: part });
    await rename(part, named(holds));
    return named(holds);
  } finally {
    await rm(part, { force: true });
  }
}
const short = (hash: string): string => hash.slice(0, 16);

async function exists(path: string | URL): Promise<boolean> {
  try {
    await access(path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw error;
  }
}
