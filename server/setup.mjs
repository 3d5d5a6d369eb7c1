/**
 * Makes a fresh clone ready, and does nothing where it is ready already. Plain JavaScript: it runs before anything is installed.
 * Tools, then packages, then the database module, then the recogniser's weights, then the page.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, realpathSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const modules = join(root, 'node_modules');
const addon = join(modules, 'better-sqlite3', 'build', 'Release', 'better_sqlite3.node');

/** What is wrong and what to do, in words; ends the program with status 3 (not set up). */
class NotSetUp extends Error {}
const say = (text) => process.stderr.write(`${text}\n`);
const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .map((dir) => join(dir, name))
    .find((file) => existsSync(file));

/** Runs a program and shows what it says. Arguments never pass a shell. */
function run(what, program, args, env = {}) {
  const { status, error } = spawnSync(program, args, { cwd: root, stdio: ['ignore', 2, 2], env: { ...process.env, ...env } });
  if (error || status !== 0)
    throw new NotSetUp(
      `${what} did not work${error ? ` (${error.message})` : ''}; what it said stands above. Nothing else was changed. Mend that, then run the same command again.`,
    );
}

/** npm's own program file: the one that runs us, else the one on the path. */
function npmFile() {
  const given = process.env.npm_execpath;
  if (given && /npm-cli\.js$/.test(given) && existsSync(given)) return given;
  const found = onPath('npm');
  if (!found) throw new NotSetUp('npm is missing. It comes with Node.js; install it, then run the same command again.');
  return realpathSync(found);
}

/** The folder that holds include/node/node.h of the running Node: headers are never fetched. */
function nodeHeaders() {
  const prefix = dirname(dirname(realpathSync(process.execPath)));
  const places = [prefix, process.env.npm_config_nodedir, process.config.variables.node_prefix].filter(Boolean);
  const found = places.find((dir) => existsSync(join(dir, 'include', 'node', 'node.h')));
  if (!found)
    throw new NotSetUp(
      `The headers of Node ${process.version} are missing (looked for include/node/node.h in ${places.join(', ')}). They come with Node's own download; on Debian and Ubuntu the package libnode-dev holds them.`,
    );
  return found;
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19))
    throw new NotSetUp(`Node ${process.versions.node} is too old. Quidnote needs Node 20.19 or later.`);
}

/** Whether the packages are those of the lock file. npm keeps its own copy of it beside them. */
function packagesAreThere() {
  const note = join(modules, '.package-lock.json');
  if (!existsSync(note)) return false;
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const present = JSON.parse(readFileSync(note, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([path, { version, optional, peer }]) => path === '' || optional || peer || present[path]?.version === version,
  );
}
function installPackages() {
  if (packagesAreThere()) return;
  say('Installing packages ...');
  run('Installing the packages', process.execPath, [
    npmFile(),
    existsSync(modules) ? 'install' : 'ci',
    '--ignore-scripts',
    '--no-audit',
    '--no-fund',
  ]);
}

function addonLoads() {
  if (!existsSync(addon)) return false;
  // In a process of its own: a module made for another Node cannot be unloaded again.
  return (
    spawnSync(process.execPath, ['-e', 'new (require("better-sqlite3"))(":memory:").close()'], { cwd: root, stdio: 'ignore' }).status === 0
  );
}
function buildAddon() {
  const stamp = join(modules, 'better-sqlite3', 'build', `made-for-${process.versions.modules}-${process.arch}`);
  if (existsSync(stamp) && existsSync(addon)) return;
  if (!addonLoads()) {
    const python = ['python3', 'python'].find(onPath);
    if (!python)
      throw new NotSetUp('Python 3 is missing; the database module is built with it. On Debian and Ubuntu: apt install python3.');
    if (!['c++', 'g++', 'clang++'].some(onPath) || !onPath('make'))
      throw new NotSetUp(
        'A C++ compiler and make are missing; the database module is built with them. On Debian and Ubuntu: apt install build-essential; on macOS: xcode-select --install.',
      );
    const gyp = createRequire(npmFile()).resolve('node-gyp/bin/node-gyp.js');
    const headers = nodeHeaders();
    say('Building the database module (a minute or two) ...');
    run(
      'Building the database module',
      process.execPath,
      [gyp, 'rebuild', '--release', '--directory', join(modules, 'better-sqlite3'), '--nodedir', headers, '--loglevel', 'error'],
      { npm_config_nodedir: headers, PYTHON: onPath(python) },
    );
    if (!addonLoads())
      throw new NotSetUp('The database module was built but does not load. Remove the folder node_modules and run the same command again.');
  }
  writeFileSync(stamp, '');
}

/** Fetches and checks the weights. @param {string | undefined} from a local copy */
async function fetchWeights(from) {
  const { register } = await import('tsx/esm/api');
  const unregister = register();
  const { ensureWeights } = await import('./speech/weights.ts');
  const { progress } = await import('./cli/progress.ts');
  try {
    await ensureWeights({ ...(from !== undefined && { from }), onProgress: progress('Fetching the recogniser') });
  } catch (error) {
    if (error?.name === 'WeightsError') throw new NotSetUp(error.message.replace('--weights DIR', '"npm start -- --weights DIR"'));
    throw error;
  } finally {
    await unregister();
  }
}

/** Of all that the page is made from: names, sizes and contents. */
function inputsOfPage() {
  const hash = createHash('sha256');
  const add = (path) => {
    if (statSync(path).isDirectory()) for (const name of readdirSync(path).sort()) add(join(path, name));
    else hash.update(path.slice(root.length)).update('\0').update(readFileSync(path));
  };
  for (const path of ['web', 'parser/contract', 'parser/lexicon', 'parser/labels.ts', 'vite.config.ts', 'package-lock.json'])
    if (existsSync(join(root, path))) add(join(root, path));
  return hash.digest('hex');
}
function buildPage() {
  const stamp = join(root, 'dist', '.made-from');
  const inputs = inputsOfPage();
  if (existsSync(join(root, 'dist', 'index.html')) && existsSync(stamp) && readFileSync(stamp, 'utf8') === inputs) return;
  say('Building the page ...');
  run('Building the page', process.execPath, [join(modules, 'vite', 'bin', 'vite.js'), 'build', '--logLevel', 'warn']);
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(stamp, inputs);
}

/** Leaves a clone ready to run. @param {{ weights?: string | false }} how a folder with the recogniser's files; false: whoever uses them fetches them */
export async function setUp({ weights } = {}) {
  try {
    checkNode();
    installPackages();
    buildAddon();
    if (weights !== false) await fetchWeights(weights);
    buildPage();
  } catch (error) {
    if (!(error instanceof NotSetUp)) throw error;
    say(`\nQuidnote is not set up yet. ${error.message}`);
    process.exit(3);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(realpathSync(process.argv[1])).href)
  await setUp({ weights: process.env.QUIDNOTE_WEIGHTS });
