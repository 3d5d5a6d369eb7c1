/** Why there is no microphone, in words: what happened, what is safe, what to do. */
import type { ApiError } from '../../parser/contract/wire.ts';

const words: Readonly<Record<string, ApiError>> = {
  NotAllowedError: {
    code: 'not-allowed',
    message:
      'The browser may not use the microphone. Nothing was recorded. Allow the microphone beside the address above, then start again.',
  },
  NotFoundError: {
    code: 'no-microphone',
    message: 'There is no microphone. Nothing was recorded. Plug one in or switch it on, then start again.',
  },
  OverconstrainedError: {
    code: 'no-microphone',
    message: 'The microphone you chose is not there. Nothing was recorded. Choose another, or plug it in, then start again.',
  },
  NotReadableError: {
    code: 'busy-microphone',
    message: 'Another program holds the microphone. Nothing was recorded. Close that program, then start again.',
  },
  InsecureContext: {
    code: 'not-secure',
    message:
      'The browser gives no microphone to this address. Nothing was recorded. Open the page on the machine itself, or over the paired https address.',
  },
  Elsewhere: {
    code: 'elsewhere',
    message: 'Another window on this device is already listening. Nothing was lost. Go on in that one, or close it and start here.',
  },
};

/** From the browser's error to ours. */
export const refusal = (error: unknown): ApiError => {
  const name = error instanceof Error ? error.name : '';
  return (
    words[name] ?? {
      code: 'no-microphone',
      message: 'The microphone could not be opened. What was recorded before is safe. Try again, or choose another microphone.',
    }
  );
};

/** An error of ours with one of the names above. */
export const named = (name: 'InsecureContext' | 'Elsewhere'): Error => Object.assign(new Error(words[name]!.message), { name });
