/** The decoder with the trade adapter in it, made once from the pinned weights and kept beside them. */
import { access, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sha256 } from '../npmPackage.ts';
import { applyAdapter } from './adapter/apply.ts';

const ADAPTER = new URL('./adapter/adapter.bin', import.meta.url);
const APPLY = new URL('./adapter/apply.ts', import.meta.url);
const FORMAT = new URL('./adapter/onnx.ts', import.meta.url);

/**
 * @param dir the folder that holds `decoder_model_merged.onnx`
 * @returns the adapted decoder's path, named by what it was made from; undefined where the project carries no adapter
 */
export async function adaptedDecoder(dir: string): Promise<string | undefined> {
  if (!(await exists(ADAPTER))) return undefined;
  const decoderPath = join(dir, 'decoder_model_merged.onnx');
  const made = await Promise.all([readFile(decoderPath), readFile(ADAPTER), readFile(APPLY), readFile(FORMAT)]);
  const path = join(dir, `decoder-trade-${sha256(Buffer.concat(made)).slice(0, 16)}.onnx`);
  if (await exists(path)) return path;
  const part = `${path}.${process.pid}.part`;
  try {
    await applyAdapter({ decoderPath, adapterPath: fileURLToPath(ADAPTER), outPath: part });
    await rename(part, path);
  } finally {
    await rm(part, { force: true });
  }
  return path;
}

async function exists(path: string | URL): Promise<boolean> {
  try {
    await access(path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw error;
  }
}
