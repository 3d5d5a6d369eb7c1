/** Arrow keys on a drawing: the nearest place in that direction, sideways steps counting double. Pure. */
import type { PlaceKey } from './places.ts';

export type Direction = 'up' | 'down' | 'left' | 'right';
interface Spot {
  readonly key: PlaceKey;
  readonly at: { readonly x: number; readonly y: number };
}

const ways: Readonly<Record<Direction, readonly [number, number]>> = { up: [0, -1], down: [0, 1], left: [-1, 0], right: [1, 0] };

/** The key to go to; the same key where nothing lies that way. */
export function next(spots: readonly Spot[], from: PlaceKey, direction: Direction): PlaceKey {
  const here = spots.find((s) => s.key === from);
  if (!here) return from;
  const [wx, wy] = ways[direction];
  let best: PlaceKey = from;
  let least = Infinity;
  for (const spot of spots) {
    const dx = spot.at.x - here.at.x;
    const dy = spot.at.y - here.at.y;
    const ahead = dx * wx + dy * wy;
    const aside = Math.abs(dx * wy - dy * wx);
    if (ahead < 2 || aside > ahead * 2.4) continue;
    const far = ahead + aside * 2;
    if (far < least) {
      least = far;
      best = spot.key;
    }
  }
  return best;
}
