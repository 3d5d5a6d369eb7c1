/** `npm start`: makes the clone ready, hears the bundled exam the first time, and serves. */
import { parseArgs } from 'node:util';
import { setUp } from './setup.mjs';

const options = {
  port: { type: 'string' },
  data: { type: 'string' },
  weights: { type: 'string' },
  'plain-ear': { type: 'boolean' },
  lan: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
};
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
// The weights are looked after by the program itself, where they are used.
await setUp({ weights: false });
const { program } = await import('./program.mjs');
const { run } = await program();
const from = values.weights === undefined && process.env.QUIDNOTE_WEIGHTS ? ['--weights', process.env.QUIDNOTE_WEIGHTS] : [];
process.exit(await run(['serve', '--first-run', ...from, ...process.argv.slice(2)], process.env));
