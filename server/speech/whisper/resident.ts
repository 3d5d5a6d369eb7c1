/** The reader's process: started when first asked, watched, started again after a fall, stopped when idle, ended with us. */
import { spawn, type ChildProcess } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { z } from 'zod';
import { SecondReaderError } from './trouble.ts';

export const ReaderToken = z.object({ text: z.string(), logProb: z.number() });
export type ReaderToken = z.infer<typeof ReaderToken>;
/** Its pulse, once a second: the processor time that it has used so far, in milliseconds. */
const Beat = z.object({ worked: z.number() });
const Line = z.union([z.object({ ready: z.string() }), z.object({ tokens: z.array(ReaderToken) }), z.object({ error: z.string() }), Beat]);
type Line = z.infer<typeof Line>;
type Answer = Exclude<Line, z.infer<typeof Beat>>;

export type ResidentOptions = {
  readonly reader: string;
  readonly weights: string;
  readonly threads: number;
  /**
   * Milliseconds without any processor time used after which it counts as hung. They are counted by our own ticks, so that what starves us
   * or puts the machine to sleep does not count against it.
   */
  readonly patience?: number;
  /** Milliseconds of its own processor time for one answer, after which it counts as hung although it works. */
  readonly labour?: number;
  /** Milliseconds without a question after which it is stopped and its memory given back. */
  readonly idle?: number;
};

export type Resident = {
  /** Tokens of one clip. @throws SecondReaderError `bad-weights`, `died`, `hung` or `closed`; the next call starts it anew. */
  ask(samples: Float32Array, prompt: string): Promise<readonly ReaderToken[]>;
  /** Makes it stand still between two steps of its work, and go on. */
  hold(on: boolean): void;
  /** The process number while it runs. */
  pid(): number | undefined;
  close(): Promise<void>;
};

type Child = Omit<ChildProcess, 'stdin' | 'stdout' | 'stdio'> & {
  readonly stdin: Writable;
  readonly stdout: Readable;
  readonly stdio: readonly [Writable, Readable, null, Writable];
};
/** Looks at it during its patience. */
const TICKS = 20;
/** Less processor time than this is its pulse alone, ms. */
const LEAST = 10;

export function resident({ reader, weights, threads, patience = 60_000, labour = 300_000, idle = 300_000 }: ResidentOptions): Resident {
  let child: Child | undefined;
  let held = false;
  let hear: ((line: Line) => void) | undefined;
  let fell: ((error: SecondReaderError) => void) | undefined;
  let idleTimer: NodeJS.Timeout | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let closed = false;

  const tell = (to: Child) => to.stdio[3].write(held ? 'h' : 'g');
  /** Killed, and by the end of its channel its watch too. */
  const stop = () => {
    child?.kill('SIGKILL');
    child?.stdio[3].destroy();
    child = undefined;
  };

  /** What the process answers, or the reason why there is no answer. */
  const answer = (): Promise<Answer> =>
    new Promise<Answer>((resolve, reject) => {
      let [still, first, last] = [0, NaN, NaN];
      const end = () => clearInterval(watch);
      const hung = () => {
        end();
        stop();
        reject(
          new SecondReaderError(
            'hung',
            'The second reader stood still and was stopped. It starts again with the next phrase; the first reading stands.',
          ),
        );
      };
      const watch = setInterval(() => {
        if (!held && (still += 1) >= TICKS) hung();
      }, patience / TICKS);
      hear = (said) => {
        if (!('worked' in said)) {
          end();
          return resolve(said);
        }
        const { worked } = said;
        if (Number.isNaN(first)) first = worked;
        if (!(worked - last < LEAST)) [still, last] = [0, worked];
        if (worked - first > labour) hung();
      };
      fell = (error) => {
        end();
        reject(error);
      };
    });

  const start = async (): Promise<Child> => {
    if (child !== undefined) return child;
    const started = spawn(reader, [weights, String(threads)], { stdio: ['pipe', 'pipe', 'ignore', 'pipe'] }) as unknown as Child;
    child = started;
    // The first reader goes before: this one, its loading too, only takes what the processor has left.
    if (started.pid !== undefined) setPriority(started.pid, constants.priority.PRIORITY_LOW);
    // A write to a process that just fell is told by its exit, not by the broken pipe.
    for (const pipe of [started.stdin, started.stdio[3]]) pipe.on('error', () => undefined);
    tell(started);
    createInterface({ input: started.stdout }).on('line', (text) => {
      if (child === started) hear?.(parseLine(text));
    });
    started.on('error', (error) =>
      fell?.(
        new SecondReaderError(
          'not-installed',
          `The second reader could not be started (${error.message}). Run: npx --no-install quidnote second-reader install`,
        ),
      ),
    );
    started.on('exit', () => {
      started.stdio[3].destroy();
      // One that we ended ourselves is told already; by now another may be asked.
      if (child !== started) return;
      child = undefined;
      fell?.(
        new SecondReaderError(
          'died',
          'The second reader stopped by itself. It starts again with the next phrase; the first reading stands. If this goes on, memory is short: it wants about four times the size of its weights.',
        ),
      );
    });
    const first = await answer();
    if ('error' in first) {
      stop();
      throw new SecondReaderError(
        'bad-weights',
        `The second reader cannot use its weights (${first.error}). Install them again: npx --no-install quidnote second-reader install`,
      );
    }
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
    const answered = answer();
    running.stdin.write(Buffer.concat([head, words, Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength)]));
    const got = await answered;
    idleTimer = setTimeout(stop, idle);
    idleTimer.unref();
    if ('tokens' in got) return got.tokens;
    stop();
    throw new SecondReaderError(
      'died',
      `The second reader could not read a phrase (${'error' in got ? got.error : 'out of step'}). The first reading stands.`,
    );
  };

  return {
    ask: (samples, prompt) => {
      const mine = queue.then(() => one(samples, prompt));
      queue = mine.catch(() => undefined);
      return mine;
    },
    hold: (on) => {
      if (held !== on) {
        held = on;
        if (child) tell(child);
      }
    },
    pid: () => child?.pid,
    async close() {
      closed = true;
      clearTimeout(idleTimer);
      stop();
      await queue;
    },
  };
}

function parseLine(text: string): Line {
  try {
    return Line.parse(JSON.parse(text));
  } catch {
    return { error: 'it said something that is not its language' };
  }
}
