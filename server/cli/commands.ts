/** The commands that need the ear or the records. */
import { asRefusal, openApp, openBook, openEar } from '../app.ts';
import { secondIfInstalled } from '../app/second.ts';
import type { Values } from '../cli.ts';
import { dataDirOf, serve } from '../main.ts';
import type { Engine } from '../speech/engine.ts';
import { eraseFrom, exportExam, searchBook } from './book.ts';
import { devicesCommand } from './devices.ts';
import { hearFiles, keepFiles } from './hear.ts';
import { exits, tell, type Exit } from './out.ts';
import { rereadExam, secondReaderCommand } from './second.ts';

export async function runCommand(command: string, rest: readonly string[], values: Values, env: NodeJS.ProcessEnv): Promise<Exit> {
  const misuse = (why: string): Exit => {
    tell(`${why} See quidnote --help.`);
    return exits.usage;
  };
  const dir = dataDirOf(values.data, env);
  const ear = (engine?: Engine) =>
    openEar({
      plainEar: values['plain-ear'] ?? false,
      ...(engine && { engine }),
      ...(values.weights !== undefined && { weights: values.weights }),
    });
  try {
    switch (command) {
      case 'serve':
        return await serve(
          {
            data: values.data,
            port: values.port,
            weights: values.weights,
            plainEar: values['plain-ear'] ?? false,
            lan: values.lan,
            demo: values['first-run'],
          },
          env,
        );
      case 'hear': {
        if (rest.length === 0) return misuse('hear wants one or more sound files.');
        if (values.reader !== undefined && values.reader !== 'first' && values.reader !== 'second')
          return misuse('--reader wants first or second.');
        const engine = values.reader === 'second' ? await secondIfInstalled() : undefined;
        if (values.reader === 'second' && engine === undefined) {
          tell('The second reader is not installed. Run: npx --no-install quidnote second-reader install');
          return exits.notSetUp;
        }
        const opened = await ear(engine);
        if (values.keep) {
          const app = openApp(dir, opened);
          try {
            return await keepFiles(rest, app, values.json ?? false);
          } finally {
            await app.close();
          }
        }
        try {
          return await hearFiles(rest, opened, values.json ?? false);
        } finally {
          await opened.close();
        }
      }
      case 'devices':
        return devicesCommand(dir, rest, values.json ?? false);
      case 'second-reader':
        return await secondReaderCommand(rest[0], values.weights);
      case 'reread':
        return rest.length === 1
          ? await rereadExam(dir, rest[0]!, await ear(), await secondIfInstalled())
          : misuse('reread wants the id of one exam.');
      case 'search':
        return searchBook(openBook(dir, false), { ...values, ...(rest.length && { words: rest.join(' ') }) }, values.json ?? false);
      case 'export':
        return rest.length === 1
          ? exportExam(openBook(dir, false), rest[0]!)
          : misuse('export wants the id of one exam; search --json shows ids.');
      case 'erase':
        return await eraseFrom(dir, rest, values);
      case 'backup': {
        if (rest.length !== 1) return misuse('backup wants the name of one new file.');
        const book = openBook(dir, false);
        await book.backup(rest[0]!);
        book.close();
        return exits.ok;
      }
      default:
        return misuse(`There is no command "${command}".`);
    }
  } catch (error) {
    const plain = asRefusal(error);
    if (!(plain instanceof Error) || !('code' in plain)) throw error;
    tell(plain.message);
    return plain.name === 'WeightsError' ? exits.notSetUp : exits.failed;
  }
}
