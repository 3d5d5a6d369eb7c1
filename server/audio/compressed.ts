/** FLAC, Ogg (Vorbis, Opus) and MP3, through WebAssembly decoders; nothing native, nothing on the path. */
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import { MPEGDecoder } from 'mpg123-decoder';
import { OggOpusDecoder } from 'ogg-opus-decoder';
import { AudioError } from './audioError.ts';
import type { Bytes } from './bytes.ts';
import type { Decoded, Notice } from './decoded.ts';

type Output = { channelData: Float32Array[]; samplesDecoded: number; sampleRate: number; errors: readonly unknown[] };
type Decoder = { ready: Promise<void>; decode(bytes: Uint8Array): Output | Promise<Output>; flush?(): Promise<Output>; free(): void };

export const COMPRESSED = {
  FLAC: (): Decoder => new FLACDecoder(),
  'Ogg Vorbis': (): Decoder => new OggVorbisDecoder(),
  'Ogg Opus': (): Decoder => new OggOpusDecoder(),
  MP3: (): Decoder => new MPEGDecoder(),
} as const;

export type CompressedFormat = keyof typeof COMPRESSED;

export async function* readCompressed(format: CompressedFormat, bytes: Bytes, notice: (notice: Notice) => void): AsyncGenerator<Decoded> {
  const decoder = COMPRESSED[format]();
  await decoder.ready;
  let samples = 0,
    errors = 0;
  const taken = (output: Output): Decoded => {
    samples += output.samplesDecoded;
    errors += output.errors.length;
    return { channelData: output.channelData.map((channel) => channel.subarray(0, output.samplesDecoded)), rate: output.sampleRate };
  };
  try {
    for await (const piece of bytes.rest()) yield taken(await decoder.decode(piece));
    if (decoder.flush !== undefined) yield taken(await decoder.flush());
  } catch (error) {
    // The decoders throw on bytes that they cannot make sense of; what came before was heard.
    if (samples === 0)
      throw new AudioError(
        'damaged',
        `This file begins like ${format}, but its sound cannot be decoded. Copy it again from the recorder.`,
        { cause: error },
      );
    errors += 1;
  } finally {
    decoder.free();
  }
  if (samples === 0)
    throw new AudioError('damaged', `This file begins like ${format}, but no sound came out of it. Copy it again from the recorder.`);
  if (errors > 0) notice({ code: 'damaged', message: 'Parts of the file could not be decoded; the rest was read.' });
}
