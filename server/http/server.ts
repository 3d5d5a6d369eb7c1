/** The doors of the program: one address on this machine only, and, when asked for, one on the local network. */
import express, { type ErrorRequestHandler, type Express, type RequestHandler } from 'express';
import { createServer, type Server } from 'node:http';
import { createServer as createSecureServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import type { Doors } from './doors.ts';
import { headers, openGuard, type Guard } from './guard.ts';
import { openLiveSocket } from './live.ts';
import { networkRoutes, type NetworkDoor } from './network.ts';
import { pairRoutes, type Pair } from './pairRoutes.ts';
import { refuse, Refusal } from './refusal.ts';
import { routes } from './routes.ts';

export interface ServerOptions {
  readonly doors: Doors;
  /** The session's secret: in the printed address once, then in a cookie. */
  readonly token: string;
  /** Devices of the local network, shown at this machine. */
  readonly network?: NetworkDoor;
  /** The built page. */
  readonly page: string;
  /** Style sheet of the reports. */
  readonly paper: string;
  readonly port: number;
  /** What an error of the rooms behind is called at the door; an error that it does not know comes back as it is. */
  readonly plainly: (error: unknown) => unknown;
  /** Told of errors that nobody foresaw: its kind and where, never words. */
  readonly log: (line: string) => void;
}
export interface Served {
  readonly port: number;
  readonly address: string;
  readonly close: () => Promise<void>;
}
/** For the local network: TLS of our own, the names this machine goes by there, and how devices are let in. */
export interface LanOptions extends Omit<ServerOptions, 'token' | 'network'> {
  readonly tls: { readonly key: string; readonly cert: string };
  readonly hosts: readonly string[];
  readonly pair: Pair;
}

/** Resolves once it answers, on 127.0.0.1 alone. @throws when the port is taken (`EADDRINUSE`) */
export async function openServer(options: ServerOptions): Promise<Served> {
  const app = express();
  const server = createServer(app);
  const port = await listen(server, options.port, '127.0.0.1');
  return furnish(app, server, openGuard({ port, token: options.token }), options, `http://127.0.0.1:${port}/?token=${options.token}`, port);
}

/** Answers the local network over TLS, to paired devices only. @throws when the port is taken (`EADDRINUSE`) */
export async function openLanServer(options: LanOptions): Promise<Served> {
  const { tls, hosts, pair } = options;
  const app = express();
  const server = createSecureServer({ ...tls, minVersion: 'TLSv1.2' }, app);
  const port = await listen(server, options.port, '0.0.0.0');
  const guard = openGuard({ port, hosts, secure: true, isDevice: pair.isDevice });
  return furnish(app, server, guard, options, `https://${hosts[0] ?? '127.0.0.1'}:${port}/pair`, port, pairRoutes(guard, pair));
}

function furnish(
  app: Express,
  server: Server,
  guard: Guard,
  { doors, page, paper, plainly, log, network }: Omit<ServerOptions, 'token'>,
  address: string,
  port: number,
  before?: RequestHandler,
): Served {
  const door = (error: unknown): Refusal => {
    const plain = asDoorError(plainly(error));
    if (plain instanceof Refusal) return plain;
    log(`${error instanceof Error ? `${error.name} ${where(error)}` : typeof error}`);
    return refuse(
      500,
      'trouble',
      'Something went wrong in the program. What was saved is safe. Try again; if it happens again, start the program anew.',
    );
  };
  // A recording may take longer to send than any limit.
  server.requestTimeout = 0;
  app.disable('x-powered-by').disable('etag');
  app.use((_request, response, next) => {
    response.set(headers);
    next();
  });
  app.use(({ headers: sent }, _response, next) => {
    guard.meant(sent);
    next();
  });
  if (before) app.use(before);
  app.use(letIn(guard));
  app.get('/paper.css', (_request, response) => {
    response.type('css').send(paper);
  });
  app.use('/api/network', networkRoutes(network));
  app.use('/api', routes(doors), (_request, _response, next) => next(refuse(404, 'not-found', 'Nothing is here.')));
  app.use(express.static(page, { index: 'index.html', etag: true, cacheControl: false }));
  app.use((_request, _response, next) => next(refuse(404, 'not-found', 'Nothing is here.')));
  const failed: ErrorRequestHandler = (error, _request, response, next) => {
    const refused = door(error);
    if (response.headersSent) return next(refused);
    response.status(refused.status).json(refused.body);
  };
  app.use(failed);
  const sockets = openLiveSocket(server, {
    doors,
    plainly: door,
    allowed: ({ headers: sent }) => {
      guard.meant(sent, true);
      guard.signedIn(sent);
    },
  });
  return {
    port,
    address,
    close: async () => {
      sockets.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** The token is taken out of the address as soon as it has let the browser in. */
const letIn =
  (guard: Guard): RequestHandler =>
  (request, response, next) => {
    const { token } = request.query;
    if (request.method === 'GET' && request.path === '/' && typeof token === 'string' && guard.isToken(token)) {
      response.set('set-cookie', guard.cookie(token)).redirect(303, '/');
      return;
    }
    guard.signedIn(request.headers);
    next();
  };

/** Errors of the framework itself, such as a body that is too large or is no JSON. */
function asDoorError(error: unknown): unknown {
  if (!(error instanceof Error) || !('type' in error)) return error;
  if (error.type === 'entity.too.large') return refuse(413, 'too-large', 'That is more than is taken here at once. Nothing was changed.');
  return refuse(400, 'not-json', 'That was not understood: it is no JSON. Nothing was changed.');
}
/** The place in our own code, without the message, which may hold what was typed. */
const where = (error: Error): string =>
  (error.stack ?? '')
    .split('\n')
    .filter((line) => line.trimStart().startsWith('at '))
    .slice(0, 4)
    .map((line) => line.trim())
    .join(' < ');

/** @returns the port */
const listen = (server: Server, port: number, host: string): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
