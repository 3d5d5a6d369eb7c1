/** The gold corpus: what is said gives exactly this, nothing missing, nothing extra, every word accounted for. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { explain } from '../../parser/index.ts';
import { difference } from '../match.ts';
import { goldRoot, headerOf, readLines, rowsOf } from './corpus.ts';
import { sound } from './sound.ts';

const known = new Set(JSON.parse(readFileSync(join(goldRoot, '../known-failures.json'), 'utf8')) as string[]);
const rows = rowsOf(goldRoot);

function faultsOf(row: (typeof rows)[number]): string | undefined {
  const results = readLines(
    row.lines.map(({ say }) => say),
    headerOf(row.given),
  );
  const faults = results.flatMap((result, i) => {
    const { missing, extra } = difference(row.lines[i]?.expect ?? {}, result);
    const unaccounted = result.utterance.words.filter(({ as }) => !/^(item:|doubt:|command$|filler$|leftover$)/.test(as)).map(({ w }) => w);
    const unsound = sound(result);
    return missing.length + extra.length + unaccounted.length + unsound.length === 0
      ? []
      : [[explain(result), ...unsound, ...missing.map((m) => `  missing ${m}`), ...extra.map((e) => `  extra   ${e}`)].join('\n')];
  });
  return faults.length === 0 ? undefined : faults.join('\n');
}

describe('gold', () => {
  test('no phrase stands twice in the corpus', () => {
    const alone = rows.filter(({ lines }) => lines.length === 1).map(({ said }) => said);
    expect(alone.filter((said, i) => alone.indexOf(said) !== i)).toEqual([]);
  });
  test.each(rows.filter(({ said }) => !known.has(said)).map((row) => [row.file, row.said, row] as const))('%s: %s', (_file, _said, row) => {
    expect.assert(faultsOf(row) === undefined, faultsOf(row) ?? '');
  });
  test('a known failure still fails; one that passes leaves the list', () => {
    expect(
      rows
        .filter(({ said }) => known.has(said))
        .filter((row) => faultsOf(row) === undefined)
        .map(({ said }) => said),
    ).toEqual([]);
    expect([...known].filter((said) => !rows.some((row) => row.said === said))).toEqual([]);
  });
});
