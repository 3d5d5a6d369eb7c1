/** The list of devices and the code for the next one: at the machine itself, and nowhere else. */
import { Router } from 'express';
import type { NetworkState } from '../../parser/contract/wire.ts';
import { refuse } from './refusal.ts';

export interface NetworkDoor {
  readonly state: () => NetworkState;
  /** The code shown so far lets nobody in any more. */
  readonly renew: () => void;
  /** False where there is no such device. */
  readonly revoke: (id: string) => boolean;
}

/** @param door absent where the local network itself asks: a device that was let in sees no code and takes nobody off the list */
export function networkRoutes(door?: NetworkDoor): Router {
  const router = Router();
  const here = (): NetworkDoor => {
    if (!door) throw refuse(403, 'elsewhere', 'This is done at the machine on which the program runs. Nothing was changed.');
    return door;
  };
  router.get('/', (_request, response) => {
    response.json(door?.state() ?? ({ here: false, devices: [], open: null } satisfies NetworkState));
  });
  router.post('/code', (_request, response) => {
    here().renew();
    response.json(here().state());
  });
  router.post('/devices/:id/revoke', (request, response) => {
    if (!here().revoke(String(request.params['id'])))
      throw refuse(404, 'not-found', 'That device is not on the list any more. Nothing was changed.');
    response.json(here().state());
  });
  return router;
}
