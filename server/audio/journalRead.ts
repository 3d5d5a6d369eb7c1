/** Reading a stretch of a journal's sound back. */
import type { FileHandle } from 'node:fs/promises';
import type { Part, Placed } from './journalRecord.ts';
import { HEAD } from './journalRecord.ts';

/** Samples of the exam that these parts hold. */
export function endOf(parts: readonly Part[]): number {
  const last = parts.at(-1);
  return last === undefined ? 0 : last.from + last.samples;
}

/** Samples in [from, to), cut to what there is; gaps are silence. */
export async function readRange(file: Pick<FileHandle, 'read'>, parts: readonly Placed[], from: number, to: number): Promise<Float32Array> {
  const start = Math.max(0, Math.floor(from)),
    end = Math.min(endOf(parts), Math.floor(to));
  const samples = new Float32Array(Math.max(0, end - start));
  for (let i = firstPart(parts, start); i < parts.length; i += 1) {
    const part = parts[i] as Placed;
    if (part.from >= end) break;
    if (part.kind !== 'sound') continue;
    const a = Math.max(start, part.from),
      b = Math.min(end, part.from + part.samples);
    const bytes = Buffer.alloc(2 * Math.max(0, b - a));
    await file.read(bytes, 0, bytes.length, part.offset + HEAD + 2 * (a - part.from));
    for (let n = 0; n < b - a; n += 1) samples[a - start + n] = bytes.readInt16LE(2 * n) / 32_768;
  }
  return samples;
}

/** Index of the part that holds a sample, by halving. */
function firstPart(parts: readonly Part[], sample: number): number {
  let low = 0,
    high = parts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const part = parts[middle] as Part;
    if (part.from + part.samples <= sample) low = middle + 1;
    else high = middle;
  }
  return low;
}
