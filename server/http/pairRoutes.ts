/** The doors of the local network that stand open before a device is let in: the page with the code, and nothing else. */
import { Router, urlencoded } from 'express';
import { z } from 'zod';
import type { Guard } from './guard.ts';
import { pairPage, pairPolicy, pairStyle } from './pairPage.ts';
import type { Pairing } from './pairing.ts';
import { Refusal } from './refusal.ts';

export interface Pair {
  readonly pairing: Pairing;
  /** @returns the secret for the device's cookie */
  readonly add: (name: string) => string;
  readonly isDevice: (secret: string) => boolean;
}
const Given = z.object({ code: z.string().max(40), name: z.string().trim().min(1).max(60) });

export function pairRoutes(guard: Guard, { pairing, add }: Pair): Router {
  const router = Router();
  router.get('/pair.css', (_request, response) => {
    response.type('css').send(pairStyle);
  });
  // Under "no-referrer" a browser sends a form without its origin, and the guard takes that for another site (Fetch standard, "append a request Origin header").
  const own = { 'content-security-policy': pairPolicy, 'referrer-policy': 'same-origin' };
  router.get('/pair', (request, response) => {
    const { code } = request.query;
    response
      .set(own)
      .type('html')
      .send(pairPage(typeof code === 'string' ? code : ''));
  });
  router.post('/pair', urlencoded({ extended: false, limit: '4kb' }), (request, response) => {
    response.set(own);
    const given = Given.safeParse(request.body);
    try {
      if (!given.success) {
        response.status(400).type('html').send(pairPage('', 'Give the code and a name.'));
        return;
      }
      pairing.use(given.data.code);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      response.status(error.status).type('html').send(pairPage('', error.message));
      return;
    }
    response.set('set-cookie', guard.cookie(add(given.data.name))).redirect(303, '/');
  });
  return router;
}
