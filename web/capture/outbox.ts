/**
 * Every chunk of sound stays here, in the browser's own database, until the server has it on disk.
 * Chunks come out in the order they went in: epochs only ever grow, and sequences grow within an epoch.
 */
import type { Chunk } from './frame.ts';

/** A chunk kept, with the exam it belongs to ('' while the server has not named it yet). */
export interface Kept extends Chunk {
  readonly exam: string;
}
/** Where a chunk stands among all. */
export type Spot = readonly [epoch: number, sequence: number];

export interface Outbox {
  /** A number for a new stretch of capture, greater than any before, also after a reload or a clock set back. */
  readonly nextEpoch: (wallSeconds: number) => Promise<number>;
  readonly put: (chunk: Kept) => Promise<void>;
  /** The next chunks behind `spot` (null: from the first), in order. */
  readonly after: (spot: Spot | null, limit: number) => Promise<readonly Kept[]>;
  /** The server has this chunk, and so all of its epoch before it: sound is sent in order and synced in order. */
  readonly acknowledged: (spot: Spot) => Promise<void>;
  /** Gives chunks kept before their exam had a name that name. */
  readonly rename: (from: string, to: string) => Promise<void>;
  /** Moves the chunks of one exam, in order, to the head of a new epoch of another; tells how many. */
  readonly move: (from: string, to: string, epoch: number) => Promise<number>;
  /** How many chunks wait. */
  readonly waiting: () => Promise<number>;
  readonly close: () => void;
}

const store = 'sound';
const notes = 'notes';

const finished = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? new Error('The browser refused to keep the sound.'));
  });
const asked = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The browser could not read what it kept.'));
  });

const open = (factory: IDBFactory): Promise<IDBDatabase> => {
  const request = factory.open('quidnote-outbox', 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(store, { keyPath: ['epoch', 'sequence'] });
    request.result.createObjectStore(notes);
  };
  return asked(request);
};

/** Opens the outbox. Rejects where the browser keeps nothing (some private windows) or its disk is full. */
export const openOutbox = async (factory: IDBFactory = indexedDB): Promise<Outbox> => {
  const db = await open(factory);
  const write = (name: string, change: (objects: IDBObjectStore) => void): Promise<void> => {
    const transaction = db.transaction(name, 'readwrite', { durability: 'strict' });
    change(transaction.objectStore(name));
    return finished(transaction);
  };
  const read = <T>(ask: (objects: IDBObjectStore) => IDBRequest<T>): Promise<T> => asked(ask(db.transaction(store).objectStore(store)));
  const ofExam = (exam: string): Promise<readonly Kept[]> =>
    new Promise((resolve, reject) => {
      const found: Kept[] = [];
      const request = db.transaction(store).objectStore(store).openCursor();
      request.onerror = () => reject(request.error ?? new Error('The browser could not read what it kept.'));
      request.onsuccess = () => {
        const cursor = request.result;
        if (!cursor) return resolve(found);
        const chunk = cursor.value as Kept;
        if (chunk.exam === exam) found.push(chunk);
        cursor.continue();
      };
    });
  return {
    nextEpoch: async (wallSeconds) => {
      const transaction = db.transaction(notes, 'readwrite', { durability: 'strict' });
      const last = (await asked(transaction.objectStore(notes).get('epoch'))) as number | undefined;
      const epoch = Math.max(Math.floor(wallSeconds), (last ?? 0) + 1);
      transaction.objectStore(notes).put(epoch, 'epoch');
      await finished(transaction);
      return epoch;
    },
    put: (chunk) => write(store, (objects) => objects.put(chunk)),
    after: (spot, limit) => read((objects) => objects.getAll(spot && IDBKeyRange.lowerBound([...spot], true), limit) as IDBRequest<Kept[]>),
    acknowledged: ([epoch, sequence]) => write(store, (objects) => objects.delete(IDBKeyRange.bound([epoch, 0], [epoch, sequence]))),
    rename: async (from, to) => {
      const kept = await ofExam(from);
      await write(store, (objects) => kept.forEach((chunk) => objects.put({ ...chunk, exam: to })));
    },
    move: async (from, to, epoch) => {
      const kept = await ofExam(from);
      await write(store, (objects) =>
        kept.forEach((chunk, sequence) => {
          objects.delete([chunk.epoch, chunk.sequence]);
          objects.put({ ...chunk, exam: to, epoch, sequence });
        }),
      );
      return kept.length;
    },
    waiting: () => read((objects) => objects.count()),
    close: () => db.close(),
  };
};
