/** The real doors on a real port, with a scripted book behind them that notes what reached it. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import WebSocket from 'ws';
import type { FromServer } from '../../parser/contract/wire.ts';
import type { Chunk, Doors } from '../../server/http/doors.ts';
import { openServer, type Served } from '../../server/http/server.ts';
import { emptyDraft } from '../web/emptyDraft.ts';

export const token = 'T'.repeat(43);
export interface Stage {
  readonly served: Served;
  readonly reached: string[];
  readonly chunks: Chunk[];
  readonly logged: string[];
  readonly gone: () => number;
  readonly base: string;
  readonly cookie: string;
}

interface Reached {
  readonly reached: string[];
  readonly chunks: Chunk[];
  gone: number;
}
/** Doors that note what reached them. */
export function doorsOf(noted: Reached = { reached: [], chunks: [], gone: 0 }): Doors {
  const draft = emptyDraft('e1');
  const note =
    <T>(name: string, value: T) =>
    (...args: unknown[]): T => {
      noted.reached.push([name, ...args.filter((a) => typeof a !== 'object').map(String)].join(' '));
      return value;
    };
  return {
    exams: note('exams', []),
    open: note('open', { id: 'e1', draft }),
    exam: note('exam', { draft, cautions: [] }),
    act: note('act', Promise.resolve(draft)),
    confirm: note('confirm', Promise.resolve(draft)),
    amend: note('amend', Promise.resolve(draft)),
    revision: note('revision', {} as never),
    sound: note('sound', Promise.resolve(Buffer.alloc(44))),
    erase: note('erase', Promise.resolve()),
    eraseHorse: note('eraseHorse', Promise.resolve()),
    join: note('join', Promise.resolve(draft)),
    split: note('split', Promise.resolve({ draft, other: draft })),
    reread: note('reread', Promise.resolve(draft)),
    horses: note('horses', []),
    compare: note('compare', { horse: 'x', visits: [] }),
    due: note('due', []),
    search: note('search', []),
    upload: async function* (sound) {
      let bytes = 0;
      for await (const part of sound) bytes += (part as Buffer).length;
      yield { stage: 'ready' as const, done: bytes, exams: ['e1'] };
    },
    report: note('report', '<!doctype html>'),
    export: note('export', {} as never),
    line: (send: (message: FromServer) => void) => ({
      text: async (message) => {
        noted.reached.push(`line ${message.type}`);
      },
      sound: async (chunk) => {
        noted.chunks.push(chunk);
        send({ type: 'ack', epoch: chunk.epoch, sequence: chunk.sequence });
      },
      gone: () => {
        noted.gone += 1;
      },
    }),
  };
}

export async function openStage(over: Partial<Doors> = {}): Promise<Stage> {
  const page = mkdtempSync(join(tmpdir(), 'quidnote-page-'));
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>page</title>');
  const noted: Reached = { reached: [], chunks: [], gone: 0 };
  const logged: string[] = [];
  const served = await openServer({
    doors: { ...doorsOf(noted), ...over },
    token,
    page,
    paper: 'p{}',
    port: 0,
    plainly: (error) => error,
    log: (line) => logged.push(line),
  });
  return {
    served,
    reached: noted.reached,
    chunks: noted.chunks,
    logged,
    gone: () => noted.gone,
    base: `http://127.0.0.1:${served.port}`,
    cookie: `quidnote-${served.port}=${token}`,
  };
}

/** A frame by the layout of parser/contract/wire.ts, written out here byte by byte. */
export function frame(epoch: number, sequence: number, sound: Buffer, change: (head: Buffer) => void = () => undefined): Buffer {
  const head = Buffer.alloc(24);
  head.write('1NDQ', 0, 'latin1');
  [epoch, sequence, sound.length, crc32(sound), 0].forEach((value, i) => head.writeUInt32LE(value, 4 + 4 * i));
  change(head);
  return Buffer.concat([head, sound]);
}

/** Opens a socket; resolves with it, or with the status that it was refused with. */
export const knock = (url: string, headers: Record<string, string>): Promise<WebSocket | number> =>
  new Promise((resolve, reject) => {
    const socket = new WebSocket(url, { headers });
    socket.on('open', () => resolve(socket));
    socket.on('unexpected-response', (_request, response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    socket.on('error', reject);
  });
/** The next message of a socket, or how it was closed. */
export const next = (socket: WebSocket): Promise<FromServer | { closed: number }> =>
  new Promise((resolve) => {
    const message = (data: WebSocket.RawData): void => {
      socket.off('close', closed);
      resolve(JSON.parse(String(data)) as FromServer);
    };
    const closed = (code: number): void => {
      socket.off('message', message);
      resolve({ closed: code });
    };
    socket.once('message', message);
    socket.once('close', closed);
  });
