/** Devices that were let in, in a file of the data folder: names, days and fingerprints of their secrets, never the secrets. */
import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const Device = z.object({ id: z.string(), name: z.string(), print: z.string(), pairedAt: z.string() });
export type Device = z.infer<typeof Device>;

export interface Devices {
  readonly list: () => readonly Device[];
  /** @returns the secret that lets it in */
  readonly add: (name: string, when: string) => string;
  /** False where there is no such device. */
  readonly revoke: (id: string) => boolean;
  readonly has: (secret: string) => boolean;
}

const printOf = (secret: string): string => createHash('sha256').update(secret).digest('hex');

/** Reads the file anew when it has changed: a device is out as soon as another process takes it off. */
export function openDevices(dataDir: string): Devices {
  const dir = join(dataDir, 'lan');
  const file = join(dir, 'devices.json');
  let known: { at: number; devices: readonly Device[] } = { at: -1, devices: [] };
  const list = (): readonly Device[] => {
    const at = statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
    if (at !== known.at) known = { at, devices: at === 0 ? [] : z.array(Device).parse(JSON.parse(readFileSync(file, 'utf8'))) };
    return known.devices;
  };
  const write = (devices: readonly Device[]): void => {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
    writeFileSync(`${file}.part`, JSON.stringify(devices), { mode: 0o600 });
    renameSync(`${file}.part`, file);
    known = { at: -1, devices: [] };
  };
  return {
    list,
    add: (name, when) => {
      const secret = randomBytes(32).toString('base64url');
      write([...list(), { id: randomBytes(4).toString('hex'), name, print: printOf(secret), pairedAt: when }]);
      return secret;
    },
    revoke: (id) => {
      const left = list().filter((device) => device.id !== id);
      if (left.length === list().length) return false;
      write(left);
      return true;
    },
    has: (secret) => {
      const print = printOf(secret);
      return list().some((device) => device.print === print);
    },
  };
}
