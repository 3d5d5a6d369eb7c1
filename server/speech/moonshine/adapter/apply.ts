/**
 * The trade adapter into the pinned int8 decoder: each of 60 maps W[in, out] = (q - zero) * scale gets (B A) transposed added,
 * and is quantised again with the smallest range that holds it and nought. What is written depends on nothing but the two files.
 */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { z } from 'zod';
import { readOnnx, varint, writeVarint, type OnnxFile } from './onnx.ts';

const MAGIC = 'QLR2';
const Head = z.object({
  rank: z.number().int().positive(),
  /** SHA-256 of the decoder that the adapter was trained on. */
  decoder: z.string(),
  maps: z.array(z.object({ name: z.string(), in: z.number().int().positive(), out: z.number().int().positive() })),
});
type Head = z.infer<typeof Head>;

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** @throws Error when the adapter was trained on another decoder, or either file is damaged */
export async function applyAdapter({
  decoderPath,
  adapterPath,
  outPath,
}: {
  decoderPath: string;
  adapterPath: string;
  outPath: string;
}): Promise<{ sha256: string }> {
  const [decoder, adapter] = await Promise.all([readFile(decoderPath), readFile(adapterPath)]);
  const { head, parts } = readAdapter(adapter);
  if (sha256(decoder) !== head.decoder)
    throw new Error(
      'The trade adapter was made for another version of the recogniser. Nothing was changed; retrain it, or hear without it (--plain-ear).',
    );
  const file = readOnnx(decoder);
  for (const part of parts) addTo(decoder, file, part, head.rank);
  await writeFile(outPath, decoder, { mode: 0o600 });
  return { sha256: sha256(decoder) };
}

/** Of each map A [rank, in] and B transposed [rank, out], row by row: the row's step (float16) and its numbers as whole steps (int8). */
function readAdapter(bytes: Buffer): { readonly head: Head; readonly parts: readonly Part[] } {
  if (bytes.toString('latin1', 0, 4) !== MAGIC) throw new Error('This is no trade adapter.');
  let at = 8 + bytes.readUInt32LE(4);
  const head = Head.parse(JSON.parse(bytes.toString('utf8', 8, at)));
  const size = head.maps.reduce((sum, map) => sum + head.rank * (map.in + map.out + 4), 0);
  if (bytes.length !== at + size) throw new Error('The trade adapter is cut short or too long.');
  const rows = (width: number): Float32Array => {
    const values = new Float32Array(head.rank * width);
    for (let row = 0; row < head.rank; row += 1) {
      const step = half(bytes.readUInt16LE(at));
      at += 2;
      for (let i = 0; i < width; i += 1) values[row * width + i] = step * bytes.readInt8(at++);
    }
    return values;
  };
  return { head, parts: head.maps.map((map) => ({ map, a: rows(map.in), b: rows(map.out) })) };
}

interface Part {
  readonly map: Head['maps'][number];
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** IEEE 754 binary16 to a number. */
export function half(bits: number): number {
  const sign = bits & 0x8000 ? -1 : 1;
  const exponent = (bits >> 10) & 0x1f;
  const fraction = bits & 0x3ff;
  if (exponent === 0) return sign * fraction * 2 ** -24;
  if (exponent === 31) return fraction ? NaN : sign * Infinity;
  return sign * (1 + fraction / 1024) * 2 ** (exponent - 15);
}

/** @param part a [rank, in] and b [rank, out], row by row */
function addTo(bytes: Buffer, { nodes, tensors }: OnnxFile, { map, a, b }: Part, rank: number): void {
  const node = nodes.find(({ op, name }) => op === 'MatMulInteger' && name.includes(`/${map.name}/`));
  const base = node?.inputs[1]?.replace(/_quantized$/, '');
  const [weight, scaleAt, zeroAt] = ['quantized', 'scale', 'zero_point'].map((end) => tensors.get(`${base}_${end}`));
  if (!weight || !scaleAt || !zeroAt || weight.to - weight.from !== map.in * map.out)
    throw new Error(`The recogniser has no map ${map.name} of that size.`);
  const scale = bytes.readFloatLE(scaleAt.from);
  const zero = varint(bytes, zeroAt.from).value;
  const full = new Float32Array(map.in * map.out);
  let low = 0,
    high = 0;
  for (let i = 0; i < map.in; i += 1) {
    for (let o = 0; o < map.out; o += 1) {
      let added = 0;
      for (let r = 0; r < rank; r += 1) added += (b[r * map.out + o] as number) * (a[r * map.in + i] as number);
      const value = ((bytes[weight.from + i * map.out + o] as number) - zero) * scale + added;
      full[i * map.out + o] = value;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  // A zero point that has one byte in the file can be 127 at most; then the range is widened at its top by as much as that takes.
  const most = zeroAt.to - zeroAt.from > 1 ? 255 : 127;
  const step = Math.fround(Math.max((high - low) / 255, -low / most));
  const nought = Math.min(most, Math.round(-low / step));
  bytes.writeFloatLE(step, scaleAt.from);
  writeVarint(bytes, zeroAt, nought);
  full.forEach((value, at) => {
    bytes[weight.from + at] = Math.max(0, Math.min(255, Math.round(value / step) + nought));
  });
}
