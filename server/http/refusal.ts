/** The one kind of error that a door answers with. */
import type { ApiError } from '../../parser/contract/wire.ts';

export const doorCodes = [
  'not-signed-in',
  'wrong-address',
  'other-site',
  'not-found',
  'not-json',
  'not-understood',
  'too-large',
  'not-confirmable',
  'busy',
  'broken-sound',
  'out-of-order',
  'not-listening',
  'too-many-tries',
  'wrong-code',
  'port-taken',
  'elsewhere',
  'trouble',
] as const;
export type DoorCode = (typeof doorCodes)[number];

export class Refusal extends Error {
  override readonly name = 'Refusal';
  /** `status` of HTTP; `also` is answered beside code and message. */
  constructor(
    readonly status: number,
    readonly code: string,
    message: string,
    readonly also: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
  }
  get body(): ApiError & Record<string, unknown> {
    return { code: this.code, message: this.message, ...this.also };
  }
}
/** For the codes of the rooms behind the doors, which have unions of their own. */
export const refusal = (status: number, code: string, message: string, also?: Readonly<Record<string, unknown>>): Refusal =>
  new Refusal(status, code, message, also);
export const refuse = (status: number, code: DoorCode, message: string, also?: Readonly<Record<string, unknown>>): Refusal =>
  new Refusal(status, code, message, also);
