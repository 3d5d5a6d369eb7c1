/** The routes of the API. A GET changes nothing; zod stands at every door. */
import { Router, json, type Request, type Response } from 'express';
import { z } from 'zod';
import { Header } from '../../parser/contract/draft.ts';
import { Act, SearchQuery } from '../../parser/contract/wire.ts';
import type { Doors } from './doors.ts';
import { refuse } from './refusal.ts';

/** Who does it, where the page does not say. */
const someone = 'practitioner';
const By = z.string().trim().min(1).max(120).default(someone);
const Id = z.string().regex(/^[0-9a-z-]{1,64}$/);
const Name = z.string().min(1).max(200);
const Seconds = z.coerce.number().min(0).max(1e6);
const Opening = z.object({ header: Header.partial().optional() });
const Confirming = z.object({ by: By });
const Amending = z.object({ reason: z.string().trim().min(1).max(1000), by: By });
const Erasing = z.object({ what: z.enum(['sound', 'audio', 'exam']).transform((what) => (what === 'exam' ? 'exam' : 'sound')) });
const Joining = z.object({ other: Id, by: By });
const Splitting = z.object({ utterance: z.string().max(200), by: By });

/** What a request holds, or a refusal that names the field. */
function taken<T extends z.ZodType>(schema: T, value: unknown): z.output<T> {
  const read = schema.safeParse(value ?? {});
  if (read.success) return read.data;
  const fields = [...new Set(read.error.issues.map(({ path }) => path.join('.')))].filter(Boolean).join(', ');
  throw refuse(400, 'not-understood', `That was not understood${fields ? ` (${fields})` : ''}. Nothing was changed.`);
}
const idOf = (request: Request): string => {
  const id = Id.safeParse(request.params['id']);
  if (!id.success) throw refuse(404, 'not-found', 'There is no such exam.');
  return id.data;
};
const nameOf = (request: Request): string => taken(Name, request.params['name']);

export function routes(doors: Doors): Router {
  const router = Router();
  const body = json({ limit: '256kb', strict: true });

  router.get('/exams', (_request, response) => {
    response.json(doors.exams());
  });
  router.post('/exams', body, (request, response) => {
    response.status(201).json(doors.open(taken(Opening, request.body).header ?? {}));
  });
  router.get('/exams/:id', (request, response) => {
    response.json(doors.exam(idOf(request)));
  });
  router.post('/exams/:id/acts', body, async (request, response) => {
    const by = By.parse((request.body as { by?: unknown } | undefined)?.by);
    response.json({ draft: await doors.act(idOf(request), taken(Act, request.body), by) });
  });
  router.post('/exams/:id/confirm', body, async (request, response) => {
    response.json({ draft: await doors.confirm(idOf(request), taken(Confirming, request.body).by) });
  });
  router.post('/exams/:id/amend', body, async (request, response) => {
    const { reason, by } = taken(Amending, request.body);
    response.json({ draft: await doors.amend(idOf(request), reason, by) });
  });
  router.get('/exams/:id/revisions/:n', (request, response) => {
    response.json(doors.revision(idOf(request), taken(z.coerce.number().int().min(1), request.params['n'])));
  });
  router.get('/exams/:id/sound', async (request, response) => {
    const { from, to } = taken(
      z.object({ from: Seconds, to: Seconds }).refine((q) => q.to > q.from),
      request.query,
    );
    response.type('audio/wav').send(await doors.sound(idOf(request), from, to));
  });
  router.post('/exams/:id/erase', body, async (request, response) => {
    await doors.erase(idOf(request), taken(Erasing, request.body).what);
    response.json({ erased: true });
  });
  router.post('/exams/:id/join', body, async (request, response) => {
    const { other, by } = taken(Joining, request.body);
    response.json({ draft: await doors.join(idOf(request), other, by) });
  });
  router.post('/exams/:id/split', body, async (request, response) => {
    const { utterance, by } = taken(Splitting, request.body);
    response.json(await doors.split(idOf(request), utterance, by));
  });
  router.post('/exams/:id/reread', async (request, response) => {
    response.json({ draft: await doors.reread(idOf(request)) });
  });
  router.get('/exams/:id/export', (request, response) => {
    const id = idOf(request);
    response.attachment(`exam-${id}.json`).json(doors.export(id));
  });
  for (const reader of ['owner', 'vet'] as const)
    router.get(`/exams/:id/${reader}`, (request, response) => {
      response.type('html').send(doors.report(idOf(request), reader));
    });

  router.get('/horses', (_request, response) => {
    response.json(doors.horses());
  });
  router.get('/horses/:name/compare', (request, response) => {
    response.json(doors.compare(nameOf(request)));
  });
  router.post('/horses/:name/erase', async (request, response) => {
    await doors.eraseHorse(nameOf(request));
    response.json({ erased: true });
  });
  router.get('/due', (_request, response) => {
    response.json(doors.due());
  });
  router.get('/search', (request, response) => {
    response.json(doors.search(taken(SearchQuery, request.query)));
  });
  router.post('/upload', (request, response) => upload(doors, request, response));
  return router;
}

/** The recording is read as it streams in; each step is a line of the answer. A page that goes away ends it. */
async function upload(doors: Doors, request: Request, response: Response): Promise<void> {
  response.type('application/x-ndjson');
  response.write(`${JSON.stringify({ stage: 'receiving' })}\n`);
  for await (const line of doors.upload(request))
    if (!response.write(`${JSON.stringify(line)}\n`) && !response.closed)
      await new Promise((resolve) => {
        response.once('drain', resolve);
        response.once('close', resolve);
      });
  response.end();
}
