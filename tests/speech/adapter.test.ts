/** The trade adapter into the pinned decoder. Half-precision values: IEEE 754-2008, binary16, as tabled in general references. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { applyAdapter, half } from '../../server/speech/moonshine/adapter/apply.ts';
import { readOnnx, varint, writeVarint } from '../../server/speech/moonshine/adapter/onnx.ts';

const adapterPath = fileURLToPath(new URL('../../server/speech/moonshine/adapter/adapter.bin', import.meta.url));
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'quidnote-adapter-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each([
  [0x3c00, 1],
  [0xc000, -2],
  [0x7bff, 65504],
  [0x0400, 2 ** -14],
  [0x0001, 2 ** -24],
  [0x3555, 0.333251953125],
  [0x7c00, Infinity],
])('binary16 %i is %d', (bits, value) => {
  expect(half(bits)).toBe(value);
});

test('a varint keeps its room, and what does not fit is refused', () => {
  const bytes = Buffer.from([0xff, 0x01, 0x7d]);
  writeVarint(bytes, { from: 0, to: 2 }, 5);
  expect(varint(bytes, 0)).toEqual({ value: 5, to: 2 });
  expect(() => writeVarint(bytes, { from: 2, to: 3 }, 200)).toThrow(RangeError);
});

test('all maps are found, the file keeps its length and its graph, and the same comes out twice', async () => {
  const decoderPath = join(inject('weights').dir, 'decoder_model_merged.onnx');
  const [one, two] = [join(folder, 'one.onnx'), join(folder, 'two.onnx')];
  const made = await applyAdapter({ decoderPath, adapterPath, outPath: one });
  expect(await applyAdapter({ decoderPath, adapterPath, outPath: two })).toEqual(made);
  const [before, after] = await Promise.all([readFile(decoderPath), readFile(one)]);
  expect(after.length).toBe(before.length);
  expect(after.equals(before)).toBe(false);
  expect(readOnnx(after).nodes).toEqual(readOnnx(before).nodes);
}, 120_000);

test('the adapter travels in the repository: three megabytes at most', async () => {
  expect((await readFile(adapterPath)).length).toBeLessThan(3_000_000);
});

test('an adapter of another decoder, or a cut one, changes nothing', async () => {
  const other = join(folder, 'other.onnx');
  await writeFile(other, 'another file');
  await expect(applyAdapter({ decoderPath: other, adapterPath, outPath: join(folder, 'no.onnx') })).rejects.toThrow('another version');
  const cut = join(folder, 'cut.bin');
  await writeFile(cut, (await readFile(adapterPath)).subarray(0, 500_000));
  await expect(applyAdapter({ decoderPath: other, adapterPath: cut, outPath: join(folder, 'no.onnx') })).rejects.toThrow('cut short');
});
