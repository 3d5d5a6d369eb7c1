/**
 * One record of the audio journal: a head of 36 bytes, then 16-bit little-endian samples (none for a gap).
 * The checksum covers the head and the samples, so a record that was torn or spoiled is never taken for sound.
 *
 *   0 magic "QNJ1" · 4 kind u8 · 5 zero u8[3] · 8 epoch u32 · 12 sequence u32 · 16 first sample u64 · 24 samples u32 · 28 zero u32 · 32 CRC-32
 */
import { crc32 } from 'node:zlib';

export const HEAD = 36;
const MAGIC = 0x314a_4e51;
const KINDS = ['sound', 'pause', 'lost', 'damaged'] as const;
export type PartKind = (typeof KINDS)[number];

/** A stretch of the exam: sound that is on disk, or a gap, which has its length but no sound. */
export type Part = {
  readonly kind: PartKind;
  readonly epoch: number;
  readonly sequence: number;
  readonly from: number;
  readonly samples: number;
};
/** A part and where its record begins in the file, in bytes. */
export type Placed = Part & { readonly offset: number };

export const recordBytes = ({ kind, samples }: Part): number => HEAD + (kind === 'sound' ? 2 * samples : 0);

export function encodeRecord(part: Part, sound: Int16Array = new Int16Array(0)): Buffer {
  const record = Buffer.alloc(recordBytes(part));
  record.writeUInt32LE(MAGIC, 0);
  record.writeUInt8(KINDS.indexOf(part.kind), 4);
  record.writeUInt32LE(part.epoch, 8);
  record.writeUInt32LE(part.sequence, 12);
  record.writeBigUInt64LE(BigInt(part.from), 16);
  record.writeUInt32LE(part.samples, 24);
  sound.forEach((sample, i) => record.writeInt16LE(sample, HEAD + 2 * i));
  record.writeUInt32LE(checksum(record), 32);
  return record;
}

/** @returns the part at this offset, or undefined where there is no whole, unspoilt record */
export function decodeRecord(bytes: Buffer, offset: number): Placed | undefined {
  if (offset + HEAD > bytes.length || bytes.readUInt32LE(offset) !== MAGIC) return undefined;
  const kind = KINDS[bytes.readUInt8(offset + 4)];
  if (kind === undefined) return undefined;
  const part: Placed = {
    kind,
    offset,
    epoch: bytes.readUInt32LE(offset + 8),
    sequence: bytes.readUInt32LE(offset + 12),
    from: Number(bytes.readBigUInt64LE(offset + 16)),
    samples: bytes.readUInt32LE(offset + 24),
  };
  const end = offset + recordBytes(part);
  if (end > bytes.length || bytes.readUInt32LE(offset + 32) !== checksum(bytes.subarray(offset, end))) return undefined;
  return part;
}

const checksum = (record: Buffer): number => crc32(record.subarray(HEAD), crc32(record.subarray(0, 32)));

/**
 * All parts of a journal file. A torn tail is left out; a spoilt stretch with whole records after it is a `damaged` gap.
 * @returns the parts in order and the length in bytes up to which the file is whole
 */
export function scan(bytes: Buffer): { readonly parts: readonly Placed[]; readonly whole: number } {
  const parts: Placed[] = [];
  let at = 0,
    whole = 0,
    end = 0;
  while (at < bytes.length) {
    const part = decodeRecord(bytes, at) ?? nextRecord(bytes, at + 1);
    if (part === undefined) break;
    if (part.from > end)
      parts.push({ kind: 'damaged', offset: whole, epoch: part.epoch, sequence: part.sequence, from: end, samples: part.from - end });
    parts.push(part);
    end = part.from + part.samples;
    at = whole = part.offset + recordBytes(part);
  }
  return { parts, whole };
}

function nextRecord(bytes: Buffer, from: number): Placed | undefined {
  for (let at = bytes.indexOf('QNJ1', from, 'latin1'); at >= 0; at = bytes.indexOf('QNJ1', at + 1, 'latin1')) {
    const part = decodeRecord(bytes, at);
    if (part !== undefined) return part;
  }
  return undefined;
}
