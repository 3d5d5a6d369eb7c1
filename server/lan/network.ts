/** Who may come in over the local network: the list on disk, the code for the next device, and where it is to be used. */
import { randomInt } from 'node:crypto';
import { create } from 'qrcode';
import type { NetworkDoor } from '../http/network.ts';
import { openPairing, type Pairing } from '../http/pairing.ts';
import { openDevices, type Devices } from './devices.ts';

export interface Network extends NetworkDoor {
  readonly devices: Devices;
  readonly pairing: Pairing;
  /** From now on the program answers at this address, with the certificate of this fingerprint. */
  readonly answersAt: (address: string, print: string) => void;
}

/** The dark and light squares of a text, row by row (ISO/IEC 18004, made by `qrcode`). */
export function squareOf(text: string): string[] {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_, column) => (data[row * size + column] ? '1' : '0')).join(''),
  );
}
/** Where a device is let in with a code. */
export const withCode = (address: string, code: string): string => `${address}?code=${code}`;

/** @param renewed told of each new code but the first */
export function openNetwork(dataDir: string, renewed: (code: string) => void): Network {
  const devices = openDevices(dataDir);
  const pairing = openPairing(randomInt, Date.now, (code) => {
    if (at) renewed(code);
  });
  let at: { readonly address: string; readonly print: string } | null = null;
  return {
    devices,
    pairing,
    answersAt: (address, print) => {
      at = { address, print };
    },
    renew: pairing.renew,
    revoke: devices.revoke,
    state: () => ({
      here: true,
      devices: devices.list().map(({ id, name, pairedAt }) => ({ id, name, pairedAt })),
      open: at && {
        ...at,
        code: pairing.code(),
        until: new Date(pairing.until()).toISOString(),
        square: squareOf(withCode(at.address, pairing.code())),
      },
    }),
  };
}
