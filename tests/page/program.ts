/** The program itself, started as its user starts it: `quidnote serve`, on a free port, with a data folder of its own. */
import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

export interface Program {
  /** The address it printed, with its key. */
  readonly address: string;
  readonly stop: () => Promise<void>;
  /** Takes it away without a word, as a crash or a flat battery would. */
  readonly kill: () => Promise<void>;
}

/** Starts it. `port` 0 takes any free one. Rejects with what it printed when it ends before it serves. */
export const startProgram = async (data: string, port = 0, more: readonly string[] = []): Promise<Program> => {
  const child = spawn(process.execPath, [join(root, 'server/quidnote.mjs'), 'serve', '--port', String(port), '--data', data, ...more], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let printed = '';
  const address = await new Promise<string>((resolve, reject) => {
    const take = (piece: Buffer): void => {
      printed += piece.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+\/\?token=\S+/.exec(printed);
      if (found) resolve(found[0]);
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.on('exit', (status) => reject(new Error(`quidnote serve ended with ${status} before it served:\n${printed}`)));
  });
  return { address, stop: () => end(child, 'SIGTERM'), kill: () => end(child, 'SIGKILL') };
};

const end = (child: ChildProcess, signal: NodeJS.Signals): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.on('exit', () => resolve());
    child.kill(signal);
  });

/** The same address at another place of the page. */
export const at = (address: string, place: string): string => {
  const url = new URL(address);
  url.hash = place;
  return url.href;
};
