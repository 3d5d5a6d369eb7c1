/**
 * For pictures, and for what leaves the microphone: serves the built page, and a socket that shows a given draft, takes sound and
 * acknowledges it, or not. No ear and no grammar: whatever is heard and read is tried against the real server.
 */
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { crc32 } from 'node:zlib';
import { WebSocketServer } from 'ws';
import type { FromPage, FromServer } from '../../parser/contract/wire.ts';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self'; media-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

export interface TakenChunk {
  readonly epoch: number;
  readonly sequence: number;
  readonly sound: Buffer;
  readonly sumAgrees: boolean;
  readonly ownVoiceMs: number;
}
export interface Stage {
  readonly address: string;
  /** Every chunk that came, in order, also those that were not acknowledged. */
  readonly taken: readonly TakenChunk[];
  /** While false, sound is taken but not acknowledged. */
  acknowledges: boolean;
  /** While false, nobody is let in; setting it so cuts who is there. */
  readonly open: (open: boolean) => void;
  readonly close: () => Promise<void>;
}

/** `frames` are sent once the page has joined. */
export const openStage = async (folder: string, frames: readonly FromServer[]): Promise<Stage> => {
  const taken: TakenChunk[] = [];
  let isOpen = true;
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://stage').pathname);
    const file = path === '/' ? '/index.html' : path;
    readFile(join(folder, file)).then(
      (body) =>
        response.writeHead(200, { 'content-type': types[extname(file)] ?? 'text/plain', 'content-security-policy': policy }).end(body),
      () => response.writeHead(404).end(),
    );
  });
  const sockets = new WebSocketServer({ noServer: true });
  server.on('upgrade', (request, socket, head) => {
    if (isOpen) sockets.handleUpgrade(request, socket, head, (client) => sockets.emit('connection', client, request));
    else socket.destroy();
  });
  sockets.on('connection', (socket) => {
    const send = (frame: FromServer): void => socket.send(JSON.stringify(frame));
    socket.on('message', (data: Buffer, binary) => {
      if (!binary) return (JSON.parse(data.toString()) as FromPage).type === 'listen' ? frames.forEach(send) : undefined;
      const [epoch, sequence, bytes, sum, ownVoiceMs] = [4, 8, 12, 16, 20].map((at) => data.readUInt32LE(at)) as [
        number,
        number,
        number,
        number,
        number,
      ];
      const sound = data.subarray(24);
      // Node's own CRC-32 (zlib's), not ours.
      taken.push({ epoch, sequence, sound, sumAgrees: sound.length === bytes && crc32(sound) === sum, ownVoiceMs });
      if (stage.acknowledges) send({ type: 'ack', epoch, sequence });
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const stage: Stage = {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    taken,
    acknowledges: true,
    open: (open) => {
      isOpen = open;
      if (!open) sockets.clients.forEach((client) => client.terminate());
    },
    close: async () => {
      sockets.clients.forEach((client) => client.terminate());
      await new Promise((resolve) => server.close(resolve));
    },
  };
  return stage;
};
