/** For the pictures alone: serves the built page, and a socket that acknowledges sound and shows one given draft. No ear and no grammar: the tests use the real server. */
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { WebSocketServer } from 'ws';
import type { FromPage, FromServer } from '../../parser/contract/wire.ts';

const types: Readonly<Record<string, string>> = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml' };
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self'; media-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

export interface Stage { readonly address: string; readonly close: () => Promise<void> }

/** `frames` are sent once the page has joined. */
export const openStage = async (folder: string, frames: readonly FromServer[]): Promise<Stage> => {
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://stage').pathname);
    readFile(join(folder, path === '/' ? 'index.html' : path)).then(
      (body) => response.writeHead(200, { 'content-type': types[extname(path === '/' ? '.html' : path) || '.html'] ?? 'text/html', 'content-security-policy': policy }).end(body),
      () => response.writeHead(404).end(),
    );
  });
  const sockets = new WebSocketServer({ server, path: '/live' });
  sockets.on('connection', (socket) => {
    const send = (frame: FromServer): void => socket.send(JSON.stringify(frame));
    socket.on('message', (data: Buffer, binary) => {
      if (binary) return send({ type: 'ack', epoch: data.readUInt32LE(4), sequence: data.readUInt32LE(8) });
      if ((JSON.parse(data.toString()) as FromPage).type === 'listen') frames.forEach(send);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: async () => {
      sockets.clients.forEach((client) => client.terminate());
      await new Promise((resolve) => server.close(resolve));
    },
  };
};
