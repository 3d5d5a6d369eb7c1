/** `npm start`: makes the clone ready, hears the bundled exam the first time, and serves. */
import { parseArgs } from 'node:util';
import { setUp } from './setup.mjs';

const options = { port: { type: 'string' }, data: { type: 'string' }, weights: { type: 'string' }, 'plain-ear': { type: 'boolean' }, lan: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } };
let values;
try {
  ({ values } = parseArgs({ options }));
} catch (error) {
  console.error(error.message);
}
if (!values || values.help) {
  console.error('npm start -- [--port N] [--data DIR] [--weights DIR] [--plain-ear] [--lan]');
  process.exit(values ? 0 : 2);
}
await setUp({ weights: values.weights ?? process.env.QUIDNOTE_WEIGHTS });
const { register } = await import('tsx/esm/api');
register();
const { run } = await import('./cli.ts');
process.exit(await run(['serve', '--first-run', ...process.argv.slice(2)], process.env));
