/** The doors of the program: one address, on this machine only. */
import express, { type ErrorRequestHandler, type RequestHandler } from 'express';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Doors } from './doors.ts';
import { headers, openGuard, type Guard } from './guard.ts';
import { openLiveSocket } from './live.ts';
import { refuse, Refusal } from './refusal.ts';
import { routes } from './routes.ts';

export interface ServerOptions {
  readonly doors: Doors;
  /** The session's secret: in the printed address once, then in a cookie. */
  readonly token: string;
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
export interface Served { readonly port: number; readonly address: string; readonly close: () => Promise<void> }

/** Resolves once it answers. @throws when the port is taken (`EADDRINUSE`) */
export async function openServer({ doors, token, page, paper, port, plainly, log }: ServerOptions): Promise<Served> {
  const door = (error: unknown): Refusal => {
    const plain = asDoorError(plainly(error));
    if (plain instanceof Refusal) return plain;
    log(`${error instanceof Error ? `${error.name} ${where(error)}` : typeof error}`);
    return refuse(500, 'trouble', 'Something went wrong in the program. What was saved is safe. Try again; if it happens again, start the program anew.');
  };
  const app = express().disable('x-powered-by').disable('etag');
  const server = createServer(app);
  server.requestTimeout = 0;
  await listen(server, port, '127.0.0.1');
  const at = (server.address() as AddressInfo).port;
  const guard = openGuard({ port: at, token });

  app.use((_request, response, next) => { response.set(headers); next(); });
  app.use(guarded(guard));
  app.get('/paper.css', (_request, response) => { response.type('css').send(paper); });
  app.use('/api', routes(doors), (_request, _response, next) => next(refuse(404, 'not-found', 'Nothing is here.')));
  app.use(express.static(page, { index: 'index.html', etag: true, cacheControl: false }));
  app.use((_request, _response, next) => next(refuse(404, 'not-found', 'Nothing is here.')));
  const failed: ErrorRequestHandler = (error, _request, response, next) => {
    const refused = door(error);
    if (response.headersSent) return next(refused);
    response.status(refused.status).json(refused.body);
  };
  app.use(failed);
  const sockets = openLiveSocket(server, { doors, plainly: door, allowed: ({ headers: sent }) => { guard.meant(sent, true); guard.signedIn(sent); } });

  return {
    port: at, address: `http://127.0.0.1:${at}/?token=${token}`,
    close: async () => {
      sockets.clients.forEach((client) => client.close(1001, 'The program stops.'));
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** The token is taken out of the address as soon as it has let the browser in. */
const guarded = (guard: Guard): RequestHandler => (request, response, next) => {
  guard.meant(request.headers);
  const { token } = request.query;
  if (request.method === 'GET' && request.path === '/' && typeof token === 'string' && guard.isToken(token)) {
    response.set('set-cookie', guard.cookie()).redirect(303, '/');
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
const where = (error: Error): string => (error.stack ?? '').split('\n').filter((line) => line.trimStart().startsWith('at ')).slice(0, 4).map((line) => line.trim()).join(' < ');

const listen = (server: Server, port: number, host: string): Promise<void> => new Promise((resolve, reject) => {
  server.once('error', reject);
  server.listen(port, host, () => { server.off('error', reject); resolve(); });
});
