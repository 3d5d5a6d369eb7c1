/** The program on the local network, for a phone or tablet in the yard: TLS, a code to point the phone at, and a list of who was let in. */
import { toString as qr } from 'qrcode';
import { openLanServer, type Served, type ServerOptions } from '../http/server.ts';
import { certificateFor, lanNames } from './certificate.ts';
import { withCode, type Network } from './network.ts';

export { openDevices, type Device } from './devices.ts';
export { openNetwork, type Network } from './network.ts';

/** @param tell shows a line to the person at this machine: the code must be seen there and nowhere else; @throws when the port is taken (`EADDRINUSE`) */
export async function openLan(
  dataDir: string,
  network: Network,
  options: Omit<ServerOptions, 'token' | 'network'>,
  tell: (line: string) => void,
): Promise<Served> {
  const { addresses, host } = lanNames();
  const tls = await certificateFor(dataDir, addresses, host, new Date());
  const { devices, pairing } = network;
  const served = await openLanServer({
    ...options,
    tls,
    hosts: [...addresses, host],
    pair: { pairing, isDevice: devices.has, add: (name) => devices.add(name, new Date().toISOString()) },
  });
  network.answersAt(served.address, tls.print);
  tell(await qr(withCode(served.address, pairing.code()), { type: 'terminal', small: true }));
  tell(`On the local network: point a phone's camera at the square, or open ${served.address} there and give the code ${pairing.code()}.`);
  tell('The phone will warn that it does not know the certificate; this is its fingerprint (SHA-256), compare it before you go on:');
  tell(tls.print);
  tell('A code works once, for ten minutes. The page shows the same under "Settings", with the devices that were let in.');
  return served;
}
