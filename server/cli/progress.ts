import type { WeightsProgress } from '../speech/weights.ts';

/** Shows how far a long step is: one line that is written over on a terminal, a line every tenth elsewhere. */
export function progress(what: string): (progress: WeightsProgress) => void {
  let told = -1;
  return ({ label, doneBytes, totalBytes }) => {
    const tenth = Math.floor((10 * doneBytes) / Math.max(1, totalBytes));
    if (tenth === told) return;
    told = tenth;
    const text = `${what}: ${label}, ${(doneBytes / 1e6).toFixed(0)} of ${(totalBytes / 1e6).toFixed(0)} MB`;
    process.stderr.write(process.stderr.isTTY ? `\r\x1b[2K${text}${tenth >= 10 ? '\n' : ''}` : `${text}\n`);
  };
}
