/**
 * `npm run score`: precision, recall and F1 of the grammar by kind of item, on the gold corpus and on what is held out.
 * An item counts as right only in whole (`tests/match.ts`). The held-out phrases are never printed, only counts by topic,
 * unless QUIDNOTE_SHOW_HELD_OUT=1 is set, which only their author does. `--text` leaves out the sound, `--faults` prints the gold's faults.
 */
import { join } from 'node:path';
import { explain } from '../../parser/index.ts';
import { difference, pair, sameItem } from '../match.ts';
import { headerOf, readLines, rowsOf, type Row } from '../parser/corpus.ts';
import { demoScore } from './demo.ts';
import { addTally, emptyTally, f1, type Tally, table } from './tally.ts';

const fixtures = join(import.meta.dirname, '../../fixtures');
const kindOf = (item: unknown): string => String((item as { kind: string }).kind);

interface Scored {
  readonly kinds: Map<string, Tally>;
  readonly topics: Map<string, { phrases: number; whole: number }>;
  readonly faults: readonly string[];
}

/** Reads every case of a folder; `kinds` holds items by kind, and commands and doubts as kinds of their own. */
function score(rows: readonly Row[]): Scored {
  const kinds = new Map<string, Tally>();
  const topics = new Map<string, { phrases: number; whole: number }>();
  const faults: string[] = [];
  const count = (kind: string, part: Partial<Tally>): void => void kinds.set(kind, addTally(kinds.get(kind) ?? emptyTally, part));
  for (const row of rows) {
    const topic = topics.get(row.file) ?? { phrases: 0, whole: 0 };
    const results = readLines(
      row.lines.map(({ say }) => say),
      headerOf(row.given),
    );
    results.forEach((result, i) => {
      const expected = row.lines[i]?.expect ?? {};
      const { missing, extra } = difference(expected, result);
      if (expected.items !== 'any') {
        const { pairs, missing: lost, extra: made } = pair(expected.items ?? [], result.items, sameItem);
        pairs.forEach(([item]) => count(kindOf(item), { right: 1 }));
        lost.forEach((item) => count(kindOf(item), { missing: 1 }));
        made.forEach((item) => count(kindOf(item), { extra: 1 }));
      }
      for (const [name, wanted, got] of [
        ['command', expected.commands ?? [], result.commands],
        ['doubt', expected.doubts ?? [], result.doubts],
      ] as const) {
        const only =
          name === 'command'
            ? difference({ items: 'any', commands: wanted, doubts: [] }, { items: [], commands: got, doubts: [] })
            : difference({ items: 'any', doubts: wanted, commands: [] }, { items: [], doubts: got, commands: [] });
        count(name, { right: wanted.length - only.missing.length, missing: only.missing.length, extra: only.extra.length });
      }
      topic.phrases += 1;
      if (missing.length + extra.length === 0) topic.whole += 1;
      else
        faults.push(
          [
            `${row.file}: ${row.said}`,
            explain(result),
            ...missing.map((m) => `  missing ${m}`),
            ...extra.map((e) => `  extra   ${e}`),
          ].join('\n'),
        );
    });
    topics.set(row.file, topic);
  }
  return { kinds, topics, faults };
}

function print(title: string, { kinds, topics, faults }: Scored, show: boolean): void {
  const items = [...kinds]
    .filter(([kind]) => kind !== 'command' && kind !== 'doubt')
    .map(([, tally]) => tally)
    .reduce(addTally, emptyTally);
  const phrases = [...topics.values()].reduce((sum, t) => ({ phrases: sum.phrases + t.phrases, whole: sum.whole + t.whole }), {
    phrases: 0,
    whole: 0,
  });
  console.log(`\n${title}: ${phrases.whole} of ${phrases.phrases} phrases right in whole, item F1 ${f1(items).toFixed(4)}`);
  console.log(table([...kinds, ['all items', items] as const]));
  console.log(
    [...topics]
      .map(([file, { phrases: n, whole }]) => `  ${file.padEnd(44)} ${String(whole).padStart(4)} of ${n}`)
      .filter((line) => !/ (\d+) of \1$/.test(line))
      .join('\n'),
  );
  if (show) console.log(faults.join('\n\n'));
}

print('gold', score(rowsOf(join(fixtures, 'gold'))), process.argv.includes('--faults'));
print('held out', score(rowsOf(join(fixtures, 'held-out'))), process.env['QUIDNOTE_SHOW_HELD_OUT'] === '1');
if (!process.argv.includes('--text')) console.log(`\ndemo exam, heard by the engine\n${await demoScore(join(fixtures, 'exams'))}`);
