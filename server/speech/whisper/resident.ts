/** The reader's process: started when first asked, watched, started again after a fall, stopped when idle, ended with us. */
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import { createInterface } from 'node:readline';
import { z } from 'zod';
import { SecondReaderError } from './trouble.ts';

export const ReaderToken = z.object({ text: z.string(), logProb: z.number(), from: z.number(), to: z.number() });
export type ReaderToken = z.infer<typeof ReaderToken>;
const Line = z.union([z.object({ ready: z.string() }), z.object({ tokens: z.array(ReaderToken) }), z.object({ error: z.string() })]);
type Line = z.infer<typeof Line>;

export type ResidentOptions = {
  readonly reader: string;
  readonly weights: string;
  readonly threads: number;
  /** Milliseconds without an answer after which it counts as hung. */
  readonly patience?: number;
  /** Milliseconds without a question after which it is stopped and its memory given back. */
  readonly idle?: number;
};

export type Resident = {
  /** Tokens of one clip. @throws SecondReaderError `bad-weights`, `died`, `hung` or `closed`; the next call starts it anew. */
  ask(samples: Float32Array, prompt: string): Promise<readonly ReaderToken[]>;
  /** The process number while it runs. */
  pid(): number | undefined;
  close(): Promise<void>;
};

export function resident({ reader, weights, threads, patience = 120_000, idle = 300_000 }: ResidentOptions): Resident {
  let child: ChildProcessWithoutNullStreams | undefined;
  let hear: ((line: Line) => void) | undefined;
  let fell: ((error: SecondReaderError) => void) | undefined;
  let idleTimer: NodeJS.Timeout | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let closed = false;

  const stop = () => { child?.kill('SIGKILL'); child = undefined; };

  /** The next line of the process, or the reason why there is none. */
  const line = (): Promise<Line> => new Promise<Line>((resolve, reject) => {
    const timer = setTimeout(() => { stop(); reject(new SecondReaderError('hung', 'The second reader gave no answer and was stopped. It starts again with the next phrase; the first reading stands.')); }, patience);
    hear = (value) => { clearTimeout(timer); resolve(value); };
    fell = (error) => { clearTimeout(timer); reject(error); };
  });

  const start = async (): Promise<ChildProcessWithoutNullStreams> => {
    if (child !== undefined) return child;
    const started = spawn(reader, [weights, String(threads)], { stdio: ['pipe', 'pipe', 'pipe'] });
    child = started;
    started.stderr.resume();
    // A write to a process that just fell is told by its exit, not by the broken pipe.
    started.stdin.on('error', () => undefined);
    createInterface({ input: started.stdout }).on('line', (text) => hear?.(parseLine(text)));
    started.on('error', (error) => fell?.(new SecondReaderError('not-installed', `The second reader could not be started (${error.message}). Run: npx --no-install quidnote second-reader install`)));
    started.on('exit', () => {
      if (child === started) child = undefined;
      fell?.(new SecondReaderError('died', 'The second reader stopped by itself. It starts again with the next phrase; the first reading stands.'));
    });
    const first = await line();
    if ('error' in first) { stop(); throw new SecondReaderError('bad-weights', `The second reader cannot use its weights (${first.error}). Install them again: npx --no-install quidnote second-reader install`); }
    // The first reader goes before: this one only takes what the processor has left.
    if (started.pid !== undefined) setPriority(started.pid, constants.priority.PRIORITY_LOW);
    return started;
  };

  const one = async (samples: Float32Array, prompt: string): Promise<readonly ReaderToken[]> => {
    if (closed) throw new SecondReaderError('closed', 'The second reader is closed.');
    clearTimeout(idleTimer);
    const running = await start();
    const words = Buffer.from(prompt);
    const head = Buffer.alloc(8);
    head.writeUInt32LE(words.length, 0);
    head.writeUInt32LE(samples.length, 4);
    const answer = line();
    running.stdin.write(Buffer.concat([head, words, Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength)]));
    const got = await answer;
    idleTimer = setTimeout(stop, idle);
    idleTimer.unref();
    if ('tokens' in got) return got.tokens;
    stop();
    throw new SecondReaderError('died', `The second reader could not read a phrase (${'error' in got ? got.error : 'out of step'}). The first reading stands.`);
  };

  return {
    ask: (samples, prompt) => {
      const mine = queue.then(() => one(samples, prompt));
      queue = mine.catch(() => undefined);
      return mine;
    },
    pid: () => child?.pid,
    async close() { closed = true; clearTimeout(idleTimer); stop(); await queue; },
  };
}

function parseLine(text: string): Line {
  try {
    return Line.parse(JSON.parse(text));
  } catch {
    return { error: 'it said something that is not its language' };
  }
}
