/** TLS of our own for the local network, made once for the names this machine goes by there. */
import { X509Certificate } from 'node:crypto';
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { join } from 'node:path';

/** IPv4 addresses on the local network, and the machine's own name there. */
export function lanNames(): { readonly addresses: readonly string[]; readonly host: string } {
  const addresses = Object.values(networkInterfaces()).flatMap((nets) =>
    (nets ?? []).filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address),
  );
  return { addresses: [...new Set(addresses)], host: `${hostname().split('.')[0]}.local`.toLowerCase() };
}

/** The certificate kept in the data folder, made anew when a name is missing from it or it ends within a month. */
export async function certificateFor(
  dataDir: string,
  addresses: readonly string[],
  host: string,
  now: Date,
): Promise<{ key: string; cert: string; print: string }> {
  const dir = join(dataDir, 'lan');
  const [keyFile, certFile] = [join(dir, 'key.pem'), join(dir, 'cert.pem')];
  const there = statSync(keyFile, { throwIfNoEntry: false }) && statSync(certFile, { throwIfNoEntry: false });
  if (there) {
    const [key, cert] = [readFileSync(keyFile, 'utf8'), readFileSync(certFile, 'utf8')];
    const read = new X509Certificate(cert);
    if (addresses.every((address) => read.checkIP(address)) && new Date(read.validTo).getTime() - now.getTime() > 30 * 86_400_000)
      return { key, cert, print: read.fingerprint256 };
  }
  const { generate } = await import('selfsigned');
  const made = await generate([{ name: 'commonName', value: 'Quidnote on this network' }], {
    keyType: 'ec',
    notBeforeDate: new Date(now.getTime() - 86_400_000),
    notAfterDate: new Date(now.getTime() + 397 * 86_400_000),
    algorithm: 'sha256',
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      { name: 'subjectAltName', altNames: [...addresses.map((ip) => ({ type: 7 as const, ip })), { type: 2 as const, value: host }] },
    ],
  });
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  writeFileSync(keyFile, made.private, { mode: 0o600 });
  writeFileSync(certFile, made.cert, { mode: 0o600 });
  return { key: made.private, cert: made.cert, print: new X509Certificate(made.cert).fingerprint256 };
}
