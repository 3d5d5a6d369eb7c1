/** The program on the local network, for a phone or tablet in the yard: TLS, a code to point the phone at, and a list of who was let in. */
import { randomInt } from 'node:crypto';
import { toString as qr } from 'qrcode';
import { openPairing } from '../http/pairing.ts';
import { openLanServer, type Served, type ServerOptions } from '../http/server.ts';
import { certificateFor, lanNames } from './certificate.ts';
import { openDevices } from './devices.ts';

export { openDevices, type Device } from './devices.ts';

/** @param tell shows a line to the person at this machine: the code must be seen there and nowhere else; @throws when the port is taken (`EADDRINUSE`) */
export async function openLan(dataDir: string, options: Omit<ServerOptions, 'token'>, tell: (line: string) => void): Promise<Served> {
  const { addresses, host } = lanNames();
  const tls = await certificateFor(dataDir, addresses, host, new Date());
  const devices = openDevices(dataDir);
  const pairing = openPairing(randomInt, Date.now, (code) => tell(`The next device is let in with the code ${code}.`));
  const served = await openLanServer({
    ...options, tls, hosts: [...addresses, host],
    pair: { pairing, isDevice: devices.has, add: (name) => devices.add(name, new Date().toISOString()) },
  });
  const address = `${served.address}?code=${pairing.code()}`;
  tell(await qr(address, { type: 'terminal', small: true }));
  tell(`On the local network: point a phone's camera at the square, or open ${served.address} there and give the code ${pairing.code()}.`);
  tell('The phone will warn that it does not know the certificate; this is its fingerprint (SHA-256), compare it before you go on:');
  tell(tls.print);
  tell('A code works once, for ten minutes. "npx --no-install quidnote devices" lists who was let in.');
  return served;
}
