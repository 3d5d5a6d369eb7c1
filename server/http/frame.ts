/** A binary frame from the page: 24 bytes of head, then 16-bit sound (layout: parser/contract/wire.ts). */
import { crc32 } from 'node:zlib';
import { sampleRate, soundMagic } from '../../parser/contract/sound.ts';
import type { Chunk } from './doors.ts';
import { refuse } from './refusal.ts';

const head = 24;
/** Ten seconds: pages send far less at a time. */
export const longestFrame = head + 2 * 10 * sampleRate;

/** @throws a refusal `broken-sound`: the page sends it again */
export function chunkOf(frame: Buffer): Chunk {
  const broken = (why: string) =>
    refuse(400, 'broken-sound', `A piece of sound came ${why} and was not taken. The page keeps it and sends it again.`);
  if (frame.length <= head || frame.readUInt32LE(0) !== soundMagic) throw broken('without its head');
  const [epoch, sequence, bytes, sum, ownVoiceMs] = [4, 8, 12, 16, 20].map((at) => frame.readUInt32LE(at)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const sound = frame.subarray(head);
  if (sound.length !== bytes || bytes % 2 !== 0) throw broken('with the wrong length');
  if (crc32(sound) !== sum) throw broken('damaged');
  return { epoch, sequence, ownVoiceMs, samples: Int16Array.from({ length: bytes / 2 }, (_, i) => sound.readInt16LE(2 * i)) };
}
