/** The socket: every frame is checked, and whatever comes, the process and the other pages go on. */
import type { IncomingMessage, Server } from 'node:http';
import type { Duplex } from 'node:stream';
import { WebSocketServer, type RawData, type WebSocket } from 'ws';
import { FromPage, type FromServer } from '../../parser/contract/wire.ts';
import type { Doors } from './doors.ts';
import { chunkOf, longestFrame } from './frame.ts';
import { refuse, type Refusal } from './refusal.ts';

/** Rubbish frames from one page after which its line is closed. */
const patience = 20;
/** The page should come back and send from its first kept chunk: closed on purpose (RFC 6455, 4000-4999 are ours). */
const again = 4000;
const lookEveryMs = 2000;

export interface LiveOptions {
  readonly doors: Doors;
  readonly allowed: (request: IncomingMessage) => void;
  readonly plainly: (error: unknown) => Refusal;
}

/** @returns what closes all lines */
export function openLiveSocket(server: Server, { doors, allowed, plainly }: LiveOptions): { readonly close: () => void } {
  const sockets = new WebSocketServer({ noServer: true, maxPayload: longestFrame, perMessageDeflate: false });
  const came = new WeakMap<WebSocket, IncomingMessage>();
  server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
    try {
      if (new URL(request.url ?? '/', 'http://here').pathname !== '/live') throw refuse(404, 'not-found', 'Nothing is here.');
      allowed(request);
    } catch (error) {
      const { status, body } = plainly(error);
      const text = JSON.stringify(body);
      socket.end(
        `HTTP/1.1 ${status} Refused\r\ncontent-type: application/json\r\ncontent-length: ${Buffer.byteLength(text)}\r\nconnection: close\r\n\r\n${text}`,
      );
      return;
    }
    sockets.handleUpgrade(request, socket, head, (client) => {
      came.set(client, request);
      attend(client, doors, plainly);
    });
  });
  // Who was taken off the list meanwhile is shown out.
  const look = setInterval(
    () =>
      sockets.clients.forEach((client) => {
        try {
          allowed(came.get(client)!);
        } catch {
          client.close(1008, 'not-signed-in');
        }
      }),
    lookEveryMs,
  );
  look.unref();
  return {
    close: () => {
      clearInterval(look);
      sockets.clients.forEach((client) => client.close(1001, 'The program stops.'));
    },
  };
}

function attend(client: WebSocket, doors: Doors, plainly: LiveOptions['plainly']): void {
  const send = (message: FromServer): void => {
    if (client.readyState === client.OPEN) client.send(JSON.stringify(message));
  };
  const line = doors.line(send);
  let rubbish = 0;
  const trouble = (error: unknown): void => {
    const { code, message } = plainly(error);
    send({ type: 'trouble', error: { code, message } });
    if (code === 'broken-sound' || code === 'out-of-order') client.close(again, code);
    else if (code === 'not-understood' && ++rubbish >= patience) client.close(1008, code);
  };
  /** Text is answered in turn; sound goes on to the disk at once, and behind the text that came before it. */
  let turn: Promise<unknown> = Promise.resolve();
  client.on('message', (data: RawData, binary) => {
    const frame = Buffer.isBuffer(data) ? data : Array.isArray(data) ? Buffer.concat(data) : Buffer.from(data);
    try {
      if (binary) {
        const chunk = chunkOf(frame);
        turn = turn.then(() => {
          line.sound(chunk).catch(trouble);
        });
      } else {
        const message = read(frame);
        turn = turn.then(() => line.text(message)).catch(trouble);
      }
    } catch (error) {
      trouble(error);
    }
  });
  client.on('error', () => client.terminate());
  client.on('close', () => {
    void turn.then(line.gone);
  });
}

function read(frame: Buffer): FromPage {
  let value: unknown;
  try {
    value = JSON.parse(frame.toString('utf8'));
  } catch {
    value = undefined;
  }
  const message = FromPage.safeParse(value);
  if (!message.success)
    throw refuse(400, 'not-understood', 'The page said something that is not understood here. Nothing was changed. Load the page again.');
  return message.data;
}
