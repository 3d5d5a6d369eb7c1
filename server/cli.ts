/** The command line: with main.ts, the only reader of arguments and environment. */
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { help } from './cli/help.ts';
import { exits, line, tell, type Exit } from './cli/out.ts';
import { givenHeader, parseLines } from './cli/parse.ts';
import { helpSheet } from './report/helpSheet.ts';

const options = {
  help: { type: 'boolean', short: 'h' },
  json: { type: 'boolean' },
  keep: { type: 'boolean' },
  'plain-ear': { type: 'boolean' },
  draft: { type: 'boolean' },
  given: { type: 'string' },
  reader: { type: 'string' },
  data: { type: 'string' },
  port: { type: 'string' },
  weights: { type: 'string' },
  yes: { type: 'boolean' },
  sound: { type: 'boolean' },
  condition: { type: 'string' },
  tooth: { type: 'string' },
  horse: { type: 'string' },
  presence: { type: 'string' },
  from: { type: 'string' },
  to: { type: 'string' },
  limit: { type: 'string' },
  lan: { type: 'boolean' },
  'first-run': { type: 'boolean' },
} as const satisfies ParseArgsConfig['options'];

export type Values = ReturnType<typeof parseArgs<{ readonly options: typeof options }>>['values'];

/** @returns the exit status: 0 done, 1 refused or failed, 2 not understood, 3 not set up */
export async function run(argv: readonly string[], env: NodeJS.ProcessEnv): Promise<Exit> {
  let args;
  try {
    args = parseArgs({ args: [...argv], options, allowPositionals: true });
  } catch (error) {
    tell(`${error instanceof Error ? error.message : 'Not understood.'} See quidnote --help.`);
    return exits.usage;
  }
  const {
    values,
    positionals: [command, ...rest],
  } = args;
  if (values.help || command === undefined || command === 'help') {
    line(help);
    return values.help || command === 'help' ? exits.ok : exits.usage;
  }
  const misuse = (why: string): Exit => {
    tell(`${why} See quidnote --help.`);
    return exits.usage;
  };
  if (command === 'parse') {
    const header = givenHeader(values.given);
    return header
      ? await parseLines(process.stdin, header, { json: values.json ?? false, draft: values.draft ?? false })
      : misuse('--given wants a JSON object such as {"age": 3, "sex": "mare"}.');
  }
  if (command === 'help-sheet') {
    line(helpSheet());
    return exits.ok;
  }
  // The rest needs the ear or the records, which take a moment to load.
  const { runCommand } = await import('./cli/commands.ts');
  return runCommand(command, rest, values, env);
}
