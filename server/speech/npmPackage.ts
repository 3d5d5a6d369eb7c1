/** Takes single files out of a published npm package, without installing it or what it depends on. */
import { createRequire } from 'node:module';
import { createHash } from 'node:crypto';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';

export type Pinned = {
  readonly name: string;
  readonly version: string;
  /** As published; npm's fetcher refuses any other bytes. */
  readonly integrity: string;
  /** Bytes of the packed package, for progress. */
  readonly bytes: number;
};

/**
 * Reads the named files of a pinned package through npm's own fetcher and cache, with the user's own npm settings.
 * @returns the files by their path in the package
 * @throws what npm's fetcher throws (no network, integrity mismatch)
 */
export async function filesOfPackage(
  pinned: Pinned,
  paths: readonly string[],
  onBytes: (done: number) => void,
): Promise<ReadonlyMap<string, Buffer>> {
  // Much to load, and needed once.
  const [{ default: pacote }, { Parser }] = await Promise.all([import('pacote'), import('tar')]);
  const options = { ...(await npmSettings()), integrity: pinned.integrity };
  const found = new Map<string, Buffer>();
  await pacote.tarball.stream(
    `${pinned.name}@${pinned.version}`,
    async (stream) => {
      found.clear();
      let done = 0;
      stream.on('data', (chunk: Buffer) => onBytes((done += chunk.length)));
      const parser = new Parser({
        filter: (path) => paths.includes(path.replace(/^package\//, '')),
        onReadEntry: (entry) => {
          const parts: Buffer[] = [];
          entry.on('data', (part: Buffer) => parts.push(part));
          entry.on('end', () => found.set(entry.path.replace(/^package\//, ''), Buffer.concat(parts)));
        },
      });
      await pipeline(
        stream,
        new Writable({
          write: (chunk: Buffer, _encoding, next) => {
            if (parser.write(chunk)) next();
            else parser.once('drain', () => next());
          },
          final: (next) => {
            parser.once('end', () => next());
            parser.end();
          },
        }),
      );
    },
    options,
  );
  return found;
}

export const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** The registry, cache, proxy and credentials that npm itself would use here; npm's loader has no types. */
async function npmSettings(): Promise<Record<string, unknown>> {
  const require = createRequire(import.meta.url);
  const Config = require('@npmcli/config');
  const { definitions, shorthands, flatten, nerfDarts } = require('@npmcli/config/lib/definitions');
  const npmPath = process.env['npm_execpath'] ?? process.cwd();
  const config = new Config({ npmPath, definitions, shorthands, flatten, nerfDarts, argv: [], warn: false });
  await config.load();
  return config.flat;
}
