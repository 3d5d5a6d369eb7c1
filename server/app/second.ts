/** The second reader where it is installed, told the trade's words. */
import { join } from 'node:path';
import { conditions } from '../../parser/lexicon/conditions.ts';
import { procedures } from '../../parser/lexicon/procedures.ts';
import type { Engine } from '../speech/engine.ts';
import { defaultCacheDir } from '../speech/weights.ts';
import { openSecondReader } from '../speech/whisper/index.ts';
import { secondReader, type Installed } from '../speech/whisper/install.ts';

export { installSecondReader, removeSecondReader, secondReaderStatus } from '../speech/whisper/install.ts';
export { SecondReaderError } from '../speech/whisper/trouble.ts';

export const secondDir = (): string => join(defaultCacheDir(), 'second-reader');

/** Numbers first, said as the trade says them, then findings and work in the lexicon's order; the prompt cuts what does not fit. */
export const promptWords: readonly string[] = [
  'one oh six',
  'two oh seven',
  'three ten',
  'four eleven',
  'four millimetres',
  ...[...Object.values(conditions), ...Object.values(procedures)].map(({ label }) => label.toLowerCase()),
];

export const openSecond = (installed: Installed): Engine => openSecondReader({ ...installed, tradeWords: promptWords });

/** Undefined where it is not installed: then there is one reader, and the program works. */
export async function secondIfInstalled(): Promise<Engine | undefined> {
  const installed = await secondReader(secondDir());
  return installed ? openSecond(installed) : undefined;
}
