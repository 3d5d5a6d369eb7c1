/** Serving: the data folder, the ear, the doors. With cli.ts, the only reader of arguments and environment. */
import { homedir } from 'node:os';
import { join } from 'node:path';
import { exits, tell, type Exit } from './cli/out.ts';

/** `--data`, else QUIDNOTE_DATA, else the user's own data folder. */
export const dataDirOf = (given: string | undefined, env: NodeJS.ProcessEnv): string =>
  given ?? env['QUIDNOTE_DATA'] ?? join(env['XDG_DATA_HOME'] || join(homedir(), '.local', 'share'), 'quidnote');

export interface ServeOptions { readonly data: string | undefined; readonly port: string | undefined; readonly weights: string | undefined; readonly plainEar: boolean }

export async function serve(options: ServeOptions, env: NodeJS.ProcessEnv): Promise<Exit> {
  tell(`not yet ${dataDirOf(options.data, env)}`);
  return exits.failed;
}
