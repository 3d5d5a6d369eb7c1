/** Who may come in: the right address, no other site, and the token that only this machine's screen has shown. */
import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { refuse } from './refusal.ts';

export interface Guard {
  /** Throws a refusal unless the request was meant for this address and comes from no other site. */
  readonly meant: (headers: IncomingHttpHeaders, socket?: boolean) => void;
  /** Throws a refusal unless the request carries the session's cookie. */
  readonly signedIn: (headers: IncomingHttpHeaders) => void;
  readonly isToken: (given: string) => boolean;
  /** The cookie to set for a browser that is let in: its secret. */
  readonly cookie: (secret: string) => string;
}
export interface GuardOptions {
  readonly port: number;
  /** The session's own secret; absent where only paired devices are let in. */
  readonly token?: string;
  /** Names by which this machine may be called, beside 127.0.0.1 and localhost. */
  readonly hosts?: readonly string[];
  readonly secure?: boolean;
  /** Tokens of paired devices, each let in as long as it is not revoked. */
  readonly isDevice?: (token: string) => boolean;
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
/** Takes the same time whatever is given. */
export const sameSecret = (a: string, b: string): boolean => timingSafeEqual(digest(a), digest(b));

export function openGuard({ port, token, hosts = [], secure = false, isDevice = () => false }: GuardOptions): Guard {
  const names = new Set(['127.0.0.1', 'localhost', ...hosts].map((name) => `${name}:${port}`));
  const scheme = secure ? 'https' : 'http';
  /** Cookies know no ports: two programs on one machine must not overwrite each other's. */
  const name = `quidnote-${port}`;
  const isToken = (given: string): boolean => token !== undefined && sameSecret(given, token);
  return {
    meant: ({ host, origin, 'sec-fetch-site': site }, socket = false) => {
      if (host === undefined || !names.has(host))
        throw refuse(421, 'wrong-address', 'This program answers only at the address that it printed.');
      if (origin !== undefined ? origin !== `${scheme}://${host}` : socket)
        throw refuse(403, 'other-site', 'This came from another site and was refused.');
      if (site !== undefined && site !== 'same-origin' && site !== 'none')
        throw refuse(403, 'other-site', 'This came from another site and was refused.');
    },
    signedIn: ({ cookie = '' }) => {
      const given =
        cookie
          .split(';')
          .map((one) => one.trim())
          .find((one) => one.startsWith(`${name}=`))
          ?.slice(name.length + 1) ?? '';
      if (!isToken(given) && !isDevice(given))
        throw refuse(401, 'not-signed-in', 'Open the address that the program printed when it started; it lets this browser in.');
    },
    isToken,
    // Half a year; a device's own ends when it is taken off the list.
    cookie: (secret) => `${name}=${secret}; Path=/; HttpOnly; SameSite=Strict; Max-Age=15552000${secure ? '; Secure' : ''}`,
  };
}
/** Sent with every answer. */
export const headers: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self'; media-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'permissions-policy': 'microphone=(self), camera=(), geolocation=()',
  'cache-control': 'no-store',
};
