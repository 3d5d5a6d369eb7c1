/** Every name of a rule that the grammar can give has words on the screen: read out of its source, and out of what it makes of all gold phrases. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { emptyContext, parseText } from '../../parser/index.ts';
import { conflictRule, gapRule, rules } from '../../parser/grammar/rules.ts';
import { doubtKinds } from '../../parser/contract/doubt.ts';
import { rulesInWords } from '../../web/check/why.ts';
import { doubtQuestions } from '../../web/labels.ts';

const files = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? files(join(folder, entry.name)) : [join(folder, entry.name)],
  );
/** What stands between an opening bracket and the one that closes it. */
const inside = (text: string, from: number, [open, close]: readonly [string, string]): string => {
  for (let at = from, depth = 1; at < text.length; at += 1) {
    depth += Number(text[at] === open) - Number(text[at] === close);
    if (depth === 0) return text.slice(from, at);
  }
  throw new Error('A bracket never closes.');
};
const written = files('parser/grammar')
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => {
    const text = readFileSync(file, 'utf8');
    const lists = [...text.matchAll(/rules: \[/g)].flatMap(({ index, 0: found }) =>
      [...inside(text, index + found.length, ['[', ']']).matchAll(/'([^']+)'/g)].map((name) => name[1]!),
    );
    const refined = [...text.matchAll(/become\(/g)].flatMap(
      ({ index, 0: found }) => /, '([^']+)'$/.exec(inside(text, index + found.length, ['(', ')']))?.[1] ?? [],
    );
    return [...lists, ...refined];
  });

test('the source of the grammar was read', () => expect(new Set(written).size).toBeGreaterThan(25));
test('each name in the source has words', () =>
  expect(
    [...new Set(written)].filter((name) => !rulesInWords[name]),
    'give these words in web/check/why.ts',
  ).toEqual([]));
test('so has each that the gold phrases bring forth', { timeout: 300_000 }, () => {
  const said = files('fixtures/gold')
    .filter((file) => file.endsWith('.json'))
    .flatMap((file) => (JSON.parse(readFileSync(file, 'utf8')) as { say?: readonly string[] }[]).flatMap(({ say }) => say ?? []));
  expect(said.length).toBeGreaterThan(500);
  const given = new Set(
    said.flatMap((text, n) => {
      const { items, trace } = parseText(`e:${n}`, text, emptyContext());
      return [...items.flatMap((item) => item.evidence.rules), ...trace.made.flatMap((made) => made.rules)];
    }),
  );
  expect(
    [...given].filter((name) => !rulesInWords[name]),
    'give these words in web/check/why.ts',
  ).toEqual([]);
});
test('a rule against anatomy, age or an earlier item says why and where that comes from', () => {
  for (const { why, source } of [...rules, conflictRule, gapRule]) {
    expect(why).toMatch(/^[A-Z].*\.$/);
    expect(source).not.toBe('');
  }
});
test('every kind of doubt is asked as a question of its own', () => {
  expect(new Set(doubtKinds.map((kind) => doubtQuestions[kind])).size).toBe(doubtKinds.length);
});
