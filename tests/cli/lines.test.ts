/** The command line as a program would use it: what it prints and how it ends. The line format is the project's own contract. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Item } from '../../parser/contract/item.ts';

const empty = mkdtempSync(join(tmpdir(), 'quidnote-cli-'));
const run = (args: readonly string[], input = ''): { status: number | null; out: string; err: string } => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['server/quidnote.mjs', ...args], {
    input,
    encoding: 'utf8',
    env: { ...process.env, QUIDNOTE_DATA: empty },
  });
  return { status, out: stdout, err: stderr };
};
type Line = {
  id: string;
  text: string;
  items: unknown[];
  commands: { command: string }[];
  doubts: unknown[];
  words: { w: string; as: string }[];
};

test('parse writes one object a line, in one exam until an empty line, with every word accounted for', () => {
  const { status, out } = run(['parse', '--json'], 'hook on one oh six\nthree mil\n\nthree mil\n');
  expect(status).toBe(0);
  const lines = out
    .trim()
    .split('\n')
    .map((text) => JSON.parse(text) as Line);
  expect(lines.map(({ text }) => text)).toEqual(['hook on one oh six', 'three mil', 'three mil']);
  for (const line of lines) {
    for (const key of ['id', 'text', 'items', 'commands', 'doubts', 'hints', 'settles', 'leftovers', 'words'])
      expect(line).toHaveProperty(key);
    line.items.forEach((item) => expect(Item.safeParse(item).success).toBe(true));
    expect(line.words.map(({ w }) => w).join(' ')).toBe(line.text);
  }
  expect(lines[0]!.items).toMatchObject([{ condition: 'hook', place: { teeth: ['106'] } }]);
  // A size alone amends the item before it; in a new exam there is none.
  expect(lines[1]!.commands.map(({ command }) => command)).toContain('amend');
  expect(lines[2]!.commands).toEqual([]);
  expect(lines[2]!.id.split(':')[0]).not.toBe(lines[0]!.id.split(':')[0]);
});
test('parse --draft prints the exam folded from its lines', () => {
  const { status, out } = run(['parse', '--draft', '--given', '{"age": 9, "name": "Juniper"}'], 'hook on one oh six\nscratch that\n');
  expect(status).toBe(0);
  expect(JSON.parse(out)).toMatchObject({
    header: { horse: { name: 'Juniper', age: { value: 9, unit: 'year' } } },
    items: [{ state: 'struck' }],
  });
});
test.each([
  [['--nonsense']],
  [['nonsense']],
  [[]],
  [['hear']],
  [['parse', '--given', '{']],
  [['parse', '--given', '{"age":"old"}']],
  [['export']],
  [['erase']],
])('%j is not understood: status 2, and help is pointed at', (args) => {
  const { status, err, out } = run(args);
  expect(status).toBe(2);
  expect(err + out).toMatch(/quidnote/);
});
test('what cannot be done says why, with status 1, and changes nothing', () => {
  expect(run(['search', 'hook'])).toMatchObject({ status: 1, err: expect.stringContaining('no records') });
  expect(run(['erase', 'x'])).toMatchObject({ status: 1, err: expect.stringContaining('Nothing was erased') });
});
test('files that are no recordings are told one by one, and the others are still tried', () => {
  const [text, nothing] = [join(empty, 'a.wav'), join(empty, 'b.wav')];
  writeFileSync(text, 'these are only words, and no sound at all');
  writeFileSync(nothing, '');
  const { status, err } = run(['hear', text, nothing, join(empty, 'missing.wav')]);
  expect(status).toBe(1);
  expect(
    err
      .trim()
      .split('\n')
      .filter((line) => line.includes('.wav:')),
  ).toHaveLength(3);
});
test('--help tells every command and every exit status', () => {
  const { status, out } = run(['--help']);
  expect(status).toBe(0);
  for (const word of ['serve', 'hear', 'parse', 'search', 'export', 'erase', 'backup', 'Exit status']) expect(out).toContain(word);
});
