#!/usr/bin/env node
/** `quidnote` on the command line: checks that the program is set up, then hands over to cli.ts. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = new URL('.', import.meta.url);
const has = (name) => existsSync(fileURLToPath(new URL(`../node_modules/${name}`, here)));
if (!has('esbuild') || !has('better-sqlite3/build/Release/better_sqlite3.node')) {
  console.error(`Quidnote is not set up yet. Run "npm start" once in ${fileURLToPath(new URL('..', here))}, then try again.`);
  process.exit(3);
}
const { program } = await import('./program.mjs');
const { run } = await program();
process.exitCode = await run(process.argv.slice(2), process.env);
