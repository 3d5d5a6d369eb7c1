import { soundMagic } from '../../parser/contract/sound.ts';
import { crc32 } from './crc32.ts';

/** A stretch of sound on its way to the server: 16-bit little-endian mono PCM at 16 kHz. */
export interface Chunk {
  readonly epoch: number;
  readonly sequence: number;
  readonly sound: Uint8Array;
  /** Milliseconds of our own voice or tone within it. */
  readonly ownVoiceMs: number;
}

/** Bytes of the header that stands before the sound (layout in the contract, `wire.ts`). */
export const headerBytes = 24;

/** One binary frame of the socket: header, then the sound. */
export const frame = ({ epoch, sequence, sound, ownVoiceMs }: Chunk): Uint8Array<ArrayBuffer> => {
  const bytes = new Uint8Array(headerBytes + sound.length);
  const header = new DataView(bytes.buffer);
  [soundMagic, epoch, sequence, sound.length, crc32(sound), Math.round(ownVoiceMs)].forEach((value, i) =>
    header.setUint32(i * 4, value, true),
  );
  bytes.set(sound, headerBytes);
  return bytes;
};
