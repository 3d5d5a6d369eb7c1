/** One live writer a journal: a lock file that names the process, and is taken over when that process is gone. */
import { link, open, readFile, rename, rm, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { AudioError } from './audioError.ts';

/** Journals that this very process holds: its own number in a lock file means nothing after a restart in a container. */
const held = new Set<string>();

/** @returns what lets go of the lock; @throws AudioError `locked` while another live process writes */
export async function takeLock(dir: string): Promise<() => Promise<void>> {
  const lock = join(dir, 'writer.lock');
  if (held.has(lock)) throw locked(process.pid);
  held.add(lock);
  try {
    while (!(await created(lock))) {
      const holder = await pidIn(lock);
      if (holder !== undefined && holder !== process.pid && alive(holder)) throw locked(holder);
      await setAside(lock, holder);
    }
  } catch (error) {
    held.delete(lock);
    throw error;
  }
  return async () => {
    await rm(lock, { force: true });
    held.delete(lock);
  };
}

const locked = (pid: number): AudioError =>
  new AudioError('locked', `This exam is being written by another part of the program (process ${pid}). Close it there first.`);

/** Whole or not at all: the number is in the file before the file has the lock's name. */
async function created(lock: string): Promise<boolean> {
  const mine = `${lock}.${process.pid}`;
  const file = await open(mine, 'w', 0o600);
  try {
    await file.writeFile(String(process.pid));
  } finally {
    await file.close();
  }
  try {
    await link(mine, lock);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  } finally {
    await unlink(mine);
  }
}

async function pidIn(lock: string): Promise<number | undefined> {
  try {
    return Number.parseInt(await readFile(lock, 'utf8'), 10) || undefined;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

/** Removes a stale lock, and only that one: if another process took over in between, its lock is put back. */
async function setAside(lock: string, stale: number | undefined): Promise<void> {
  const aside = `${lock}.stale-${process.pid}`;
  try {
    await rename(lock, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return;
    throw error;
  }
  if ((await pidIn(aside)) === stale) await unlink(aside);
  else await rename(aside, lock);
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
