/** Letting a phone in: a code that works once and not for long, and what becomes of it when it is guessed at. Pure but for the clock handed in. */
import { refuse } from './refusal.ts';
import { sameSecret } from './guard.ts';

export interface Pairing {
  /** The code that works now; a new one after each use, after too many wrong tries, and when it has grown old. */
  readonly code: () => string;
  /** When the code that works now grows old, in milliseconds of the clock. */
  readonly until: () => number;
  /** Spoils the code that was shown; a new one works from now on. */
  readonly renew: () => void;
  /** Uses the code up. @throws a refusal `wrong-code` or `too-many-tries` */
  readonly use: (given: string) => void;
}

/** Without letters and digits that are taken for one another. */
const letters = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const length = 8,
  lifeMs = 10 * 60_000,
  tries = 5,
  waitMs = 60_000;

/** @param random a whole number from 0 up to, not with, its argument; @param now milliseconds; @param renewed told of each new code but the first */
export function openPairing(
  random: (below: number) => number,
  now: () => number,
  renewed: (code: string) => void = () => undefined,
): Pairing {
  const make = () => ({ code: Array.from({ length }, () => letters[random(letters.length)]).join(''), until: now() + lifeMs });
  let current = make();
  let wrong = 0,
    closedUntil = 0;
  const renew = (): void => {
    current = make();
    renewed(current.code);
  };
  const code = (): string => {
    if (now() > current.until) renew();
    return current.code;
  };
  return {
    code,
    until: () => {
      code();
      return current.until;
    },
    renew,
    use: (given) => {
      if (now() < closedUntil)
        throw refuse(429, 'too-many-tries', 'Too many wrong codes. Wait a minute, then use the new code that the program shows.');
      const right = sameSecret(given.toUpperCase().replace(/[\s-]/g, ''), code());
      if (right) {
        wrong = 0;
        renew();
        return;
      }
      if (++wrong >= tries) {
        wrong = 0;
        closedUntil = now() + waitMs;
        renew();
      }
      throw refuse(403, 'wrong-code', 'That code is not right, or was used already. Use the one that the program shows now.');
    },
  };
}
