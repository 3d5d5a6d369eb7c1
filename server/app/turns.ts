/** Who goes first: while the first reader hears, the second stands still. */
import type { Engine } from '../speech/engine.ts';
import type { Ear } from './ear.ts';

/** An ear for which the other holds still, from the first phrase that it is asked for until the last that it owes is answered. */
export function goesBefore(ear: Ear, other: Pick<Engine, 'hold'>): Ear {
  let owed = 0;
  const count = (change: 1 | -1): void => {
    owed += change;
    other.hold?.(owed > 0);
  };
  return {
    ...ear,
    hear: async (stretch) => {
      count(1);
      try {
        return await ear.hear(stretch);
      } finally {
        count(-1);
      }
    },
  };
}
