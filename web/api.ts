/** The only file that speaks HTTP. Every failure is an `ApiError` with words for a person: what happened, what is safe, what to do. */
import type {
  Act,
  ApiError,
  Caution,
  Comparison,
  DueRow,
  ExamRow,
  HorseRow,
  NetworkState,
  SearchHit,
  UploadLine,
} from '../parser/contract/wire.ts';
import type { Draft } from '../parser/contract/draft.ts';
import type { Exam } from '../parser/contract/record.ts';

export class Refused extends Error {
  constructor(
    readonly status: number,
    readonly body: ApiError & Record<string, unknown>,
  ) {
    super(body.message);
  }
}
const away: ApiError = {
  code: 'away',
  message: 'The program on this machine does not answer. What is already saved is safe. See that it is running, then try again.',
};

async function ask<T>(method: string, path: string, body?: unknown): Promise<T> {
  const answer = await fetch(path, {
    method,
    ...(body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  }).catch(() => {
    throw new Refused(0, away);
  });
  const text = await answer.text();
  const read = readJson(text);
  if (!answer.ok) throw new Refused(answer.status, asError(read, answer.status));
  return read as T;
}
function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
function asError(read: unknown, status: number): ApiError & Record<string, unknown> {
  if (read && typeof read === 'object') {
    const inner = 'error' in read && read.error && typeof read.error === 'object' ? { ...read, ...read.error } : read;
    if ('message' in inner && typeof inner.message === 'string') return { code: 'refused', ...inner } as ApiError & Record<string, unknown>;
  }
  return { code: 'refused', message: `That was refused (${status}). Nothing was changed. Try again, or open the record anew.` };
}

export interface Opened {
  readonly draft: Draft;
  readonly cautions: readonly Caution[];
}

/** Reads a stream line by line as it comes. */
async function lines(body: ReadableStream<Uint8Array>, each: (line: string) => void): Promise<void> {
  const reader = body.pipeThrough(new TextDecoderStream() as unknown as ReadableWritablePair<string, Uint8Array>).getReader();
  let rest = '';
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const all = (rest + part.value).split('\n');
    rest = all.pop() ?? '';
    all.filter(Boolean).forEach(each);
  }
  if (rest.trim()) each(rest);
}

const exam = (id: string): string => `/api/exams/${encodeURIComponent(id)}`;
const horse = (name: string): string => `/api/horses/${encodeURIComponent(name)}`;

export const api = {
  exams: () => ask<ExamRow[]>('GET', '/api/exams'),
  open: (header: object) => ask<{ id: string; draft?: Draft }>('POST', '/api/exams', { header }),
  exam: (id: string) => ask<Opened>('GET', exam(id)),
  act: (id: string, act: Act, by = '') => ask<{ draft: Draft }>('POST', `${exam(id)}/acts`, by ? { ...act, by } : act),
  confirm: (id: string, by: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/confirm`, { by }),
  amend: (id: string, reason: string, by: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/amend`, { reason, by }),
  revision: (id: string, n: number) => ask<Exam>('GET', `${exam(id)}/revisions/${n}`),
  erase: (id: string, what: 'sound' | 'exam') => ask<unknown>('POST', `${exam(id)}/erase`, { what }),
  /** What `other` heard goes to this draft. */
  join: (id: string, other: string, by: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/join`, { other, ...(by && { by }) }),
  /** From this phrase on it is another horse's. */
  split: (id: string, utterance: string, by: string) =>
    ask<{ draft: Draft; other: Draft }>('POST', `${exam(id)}/split`, { utterance, ...(by && { by }) }),
  /** Hears all of its sound again; what a person touched stays as it is. */
  reread: (id: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/reread`, {}),
  eraseHorse: (name: string) => ask<unknown>('POST', `${horse(name)}/erase`, {}),
  horses: () => ask<HorseRow[]>('GET', '/api/horses'),
  compare: (name: string) => ask<Comparison>('GET', `${horse(name)}/compare`),
  due: () => ask<DueRow[]>('GET', '/api/due'),
  search: (query: Record<string, string>) => ask<SearchHit[]>('GET', `/api/search?${new URLSearchParams(query)}`),
  /** Sends a recording as it is; `each` is told how far the reading is, line by line. */
  upload: async (file: File, each: (line: UploadLine) => void): Promise<void> => {
    const answer = await fetch(`/api/upload?name=${encodeURIComponent(file.name)}`, {
      method: 'POST',
      headers: { 'content-type': file.type || 'application/octet-stream' },
      body: file,
    }).catch(() => {
      throw new Refused(0, away);
    });
    if (!answer.ok || !answer.body) throw new Refused(answer.status, asError(readJson(await answer.text()), answer.status));
    await lines(answer.body, (line) => {
      const read = readJson(line);
      if (read && typeof read === 'object') each(read as UploadLine);
    });
  },
  network: () => ask<NetworkState>('GET', '/api/network'),
  newCode: () => ask<NetworkState>('POST', '/api/network/code', {}),
  /** The device is out at once, also where it is listening. */
  takeOff: (device: string) => ask<NetworkState>('POST', `/api/network/devices/${encodeURIComponent(device)}/revoke`, {}),
  soundAt: (id: string, from: number, to: number) => `${exam(id)}/sound?from=${from.toFixed(3)}&to=${to.toFixed(3)}`,
  exportOf: (id: string) => `${exam(id)}/export`,
  ownerPage: (id: string) => `${exam(id)}/owner`,
  vetPage: (id: string) => `${exam(id)}/vet`,
};
