/** A recording that the program does not open itself, such as a phone's, opened by the browser where it can: as WAV, 16-bit mono at 16 kHz. */
import { sampleRate } from '../../parser/contract/sound.ts';

/** Bytes of a recording that the browser may hold open at once; decoded it is many times as large. */
const largest = 150_000_000;

/** @throws DOMException where the browser does not know this kind of sound either, or has no room for it */
export async function asWav(file: File): Promise<File> {
  if (file.size > largest) throw new DOMException('Too large to be decoded at once.', 'QuotaExceededError');
  const sound = await new OfflineAudioContext(1, 1, sampleRate).decodeAudioData(await file.arrayBuffer());
  const { length } = sound;
  const channels = Array.from({ length: sound.numberOfChannels }, (_, n) => sound.getChannelData(n));
  const bytes = new DataView(new ArrayBuffer(44 + 2 * length));
  const text = (at: number, words: string): void => [...words].forEach((c, i) => bytes.setUint8(at + i, c.charCodeAt(0)));
  // The canonical WAVE header (Microsoft and IBM 1991): RIFF, a format chunk of 16 bytes, a data chunk.
  text(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * length, true);
  text(8, 'WAVEfmt ');
  [
    [16, 16, 4],
    [20, 1, 2],
    [22, 1, 2],
    [24, sampleRate, 4],
    [28, 2 * sampleRate, 4],
    [32, 2, 2],
    [34, 16, 2],
  ].forEach(([at, value, size]) => (size === 4 ? bytes.setUint32(at!, value!, true) : bytes.setUint16(at!, value!, true)));
  text(36, 'data');
  bytes.setUint32(40, 2 * length, true);
  for (let i = 0; i < length; i += 1) {
    const mean = channels.reduce((sum, channel) => sum + channel[i]!, 0) / channels.length;
    bytes.setInt16(44 + 2 * i, Math.round(Math.max(-1, Math.min(1, mean)) * 32_767), true);
  }
  return new File([bytes.buffer as ArrayBuffer], file.name, { type: 'audio/wav' });
}
