/** The only file that speaks HTTP. Every failure is an `ApiError` with words for a person: what happened, what is safe, what to do. */
import type { Act, ApiError, ExamRow, SearchHit } from '../parser/contract/wire.ts';
import type { Draft } from '../parser/contract/draft.ts';

export class Refused extends Error {
  constructor(readonly status: number, readonly body: ApiError & Record<string, unknown>) { super(body.message); }
}
const away: ApiError = { code: 'away', message: 'The program on this machine does not answer. What is already saved is safe. See that it is running, then try again.' };

async function ask<T>(method: string, path: string, body?: unknown): Promise<T> {
  const answer = await fetch(path, { method, ...(body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }) })
    .catch(() => { throw new Refused(0, away); });
  const text = await answer.text();
  const read = readJson(text);
  if (!answer.ok) throw new Refused(answer.status, asError(read, answer.status));
  return read as T;
}
function readJson(text: string): unknown {
  try { return JSON.parse(text); } catch { return undefined; }
}
function asError(read: unknown, status: number): ApiError & Record<string, unknown> {
  if (read && typeof read === 'object') {
    const inner = 'error' in read && read.error && typeof read.error === 'object' ? { ...read, ...read.error } : read;
    if ('message' in inner && typeof inner.message === 'string') return { code: 'refused', ...inner } as ApiError & Record<string, unknown>;
  }
  return { code: 'refused', message: `That was refused (${status}). Nothing was changed. Try again, or open the record anew.` };
}

export interface Caution { readonly id?: string; readonly say: string; readonly source?: string; readonly who?: string; readonly items?: readonly string[] }
export interface Opened { readonly draft: Draft; readonly cautions: readonly Caution[] }
export interface HorseRow { readonly name: string; readonly owner?: string | null; readonly yard?: string | null; readonly visits?: number; readonly lastAt?: string | null }

const exam = (id: string): string => `/api/exams/${encodeURIComponent(id)}`;
const horse = (name: string): string => `/api/horses/${encodeURIComponent(name)}`;

export const api = {
  exams: () => ask<ExamRow[]>('GET', '/api/exams'),
  open: (header: object) => ask<{ id: string; draft?: Draft }>('POST', '/api/exams', { header }),
  exam: (id: string) => ask<Opened>('GET', exam(id)),
  act: (id: string, act: Act) => ask<{ draft: Draft }>('POST', `${exam(id)}/acts`, act),
  confirm: (id: string, by: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/confirm`, { by }),
  amend: (id: string, reason: string, by: string) => ask<{ draft: Draft }>('POST', `${exam(id)}/amend`, { reason, by }),
  revision: (id: string, n: number) => ask<unknown>('GET', `${exam(id)}/revisions/${n}`),
  erase: (id: string, what: 'audio' | 'exam') => ask<unknown>('POST', `${exam(id)}/erase`, { what }),
  eraseHorse: (name: string) => ask<unknown>('POST', `${horse(name)}/erase`, {}),
  horses: () => ask<HorseRow[]>('GET', '/api/horses'),
  compare: (name: string) => ask<unknown>('GET', `${horse(name)}/compare`),
  due: () => ask<unknown>('GET', '/api/due'),
  search: (query: Record<string, string>) => ask<SearchHit[]>('GET', `/api/search?${new URLSearchParams(query)}`),
  soundAt: (id: string, from: number, to: number) => `${exam(id)}/sound?from=${from.toFixed(3)}&to=${to.toFixed(3)}`,
  ownerPage: (id: string) => `${exam(id)}/owner`,
  vetPage: (id: string) => `${exam(id)}/vet`,
};
