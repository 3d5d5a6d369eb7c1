/** Serving: the data folder, the ear, the doors. With cli.ts, the only reader of arguments and environment. */
import { randomBytes } from 'node:crypto';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { asRefusal, openApp, paperStyle, wakeEar } from './app.ts';
import { secondIfInstalled } from './app/second.ts';
import { hearDemo, isDemoHeard } from './cli/demo.ts';
import { exits, line, tell, type Exit } from './cli/out.ts';
import { progress } from './cli/progress.ts';
import { refuse } from './http/refusal.ts';
import { openServer, type Served } from './http/server.ts';
import { openLan, openNetwork } from './lan/index.ts';

const here = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));
const usualPort = 4717;

/** `--data`, else QUIDNOTE_DATA, else the user's own data folder. */
export const dataDirOf = (given: string | undefined, env: NodeJS.ProcessEnv): string =>
  given ?? (env['QUIDNOTE_DATA'] || join(env['XDG_DATA_HOME'] || join(homedir(), '.local', 'share'), 'quidnote'));

export interface ServeOptions {
  readonly data?: string | undefined;
  readonly port?: string | undefined;
  readonly weights?: string | undefined;
  readonly plainEar?: boolean | undefined;
  /** Also answer the local network, to devices that were let in. */
  readonly lan?: boolean | undefined;
  /** Hear the bundled exam first, if it was not heard yet. */
  readonly demo?: boolean | undefined;
}

/** Serves until it is told to stop (SIGINT, SIGTERM). */
export async function serve(
  { data, port, weights, plainEar = false, lan = false, demo = false }: ServeOptions,
  env: NodeJS.ProcessEnv,
): Promise<Exit> {
  const wanted = port === undefined ? null : Number(port);
  if (wanted !== null && !(Number.isInteger(wanted) && wanted >= 0 && wanted < 65536)) {
    tell('--port wants a number from 0 to 65535.');
    return exits.usage;
  }
  if (!existsSync(here('dist/index.html'))) {
    tell('The page is not built yet. Run "npm start" once; it builds what is missing.');
    return exits.notSetUp;
  }
  const dir = dataDirOf(data, env);
  const ear = await wakeEar({ plainEar, onProgress: progress('Fetching the recogniser'), ...(weights !== undefined && { weights }) });
  const demoDir = join(dir, 'demo');
  // The demonstration's own folder, opened to be looked at, wants no second one inside.
  if (demo && !isDemoHeard(dir) && !isDemoHeard(demoDir) && existsSync(here('fixtures/audio/demo.ogg'))) {
    line('First run: hearing the bundled exam, the way a voice is heard.\n');
    await hearDemo(demoDir, here('fixtures/audio/demo.ogg'), ear);
    line(`It is kept apart from your records: npm start -- --data ${demoDir} shows it.\n`);
  }
  const second = await secondIfInstalled();
  const token = await secretOf(dir);
  const app = openApp(dir, ear, {
    second,
    onSecondTrouble: (error) => tell(error instanceof Error ? error.message : 'The second reader failed; the first reading stands.'),
  });
  const options = { doors: app.doors, page: here('dist'), paper: paperStyle, plainly: asRefusal, log: tell };
  const network = openNetwork(dir, (code) => line(`The next device is let in with the code ${code}.`));
  const told = Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')]);
  const served = await bound(wanted, (port) => openServer({ ...options, token, network, port }));
  const onLan = lan
    ? await bound(wanted === 0 ? 0 : null, (port) => openLan(dir, network, { ...options, port }, line), served.port + 1)
    : null;
  line(`Quidnote is here. Your records: ${dir}`);
  line(`Open ${served.address}`);
  line('Ctrl+C stops it; what was said is on the disk at every moment.');
  const hearing = Promise.resolve(ear.waking).then(() => line(`It hears, with ${ear.name}${second ? ' and a second reader' : ''}.`));
  app
    .readLeftovers()
    .catch((error: unknown) =>
      tell(
        `Sound of an earlier exam could not be read yet (${error instanceof Error ? error.name : 'trouble'}). It is kept; open that exam to try again.`,
      ),
    );
  try {
    // An ear that cannot be loaded ends the program, and says why.
    await Promise.race([told, hearing.then(() => told)]);
    return exits.ok;
  } finally {
    await onLan?.close();
    await served.close();
    await app.close();
  }
}

/** The port that was asked for and no other; else the usual one, or the next that is free. */
async function bound(wanted: number | null, open: (port: number) => Promise<Served>, usual = usualPort): Promise<Served> {
  for (let port = wanted ?? usual; ; port += 1) {
    try {
      return await open(port);
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')) throw error;
      if (wanted !== null || port >= usual + 20)
        throw refuse(409, 'port-taken', `Port ${port} is taken by another program. Nothing was changed. Choose another with --port N.`);
    }
  }
}

/** Lets a browser in again after a restart, so that sound it still holds can be sent. Take the file away to shut all browsers out. */
async function secretOf(dir: string): Promise<string> {
  const file = join(dir, 'session');
  await mkdir(dir, { recursive: true, mode: 0o700 });
  const known = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '';
    throw error;
  });
  if (/^[\w-]{43}$/.test(known)) return known;
  const secret = randomBytes(32).toString('base64url');
  await writeFile(file, secret, { mode: 0o600 });
  return secret;
}
