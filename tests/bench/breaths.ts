/**
 * Two things said in one breath with no pause between, as a hurried speaker does: pairs of gold phrases, each of which reads right
 * alone, drawn with a fixed seed and joined without marks. Right: just the items of both. Asked: a question was raised. Silent: neither.
 * `npx tsx tests/bench/breaths.ts [SEED] [PAIRS]`; `--show` prints the silent ones; `--held-out` takes the phrases that nobody read, and prints counts alone.
 */
import { join } from 'node:path';
import { difference } from '../match.ts';
import { goldRoot, readLines, rowsOf, type Row } from '../parser/corpus.ts';
import { seeded } from '../parser/seeded.ts';

interface Expected {
  readonly kind: string;
  readonly place?: unknown;
}
const bare = (said: string): string =>
  said
    .replace(/[,.;:!?—]+(?=\s|$)/g, '')
    .replace(/\s+/g, ' ')
    .trim();
const itemsOf = ({ lines }: Row): readonly Expected[] => {
  const items = lines[0]?.expect.items;
  return Array.isArray(items) ? (items as readonly Expected[]) : [];
};
/** One or two items that lean on nothing: no question, no command, no note or fact in the speaker's own words. */
const plain = (row: Row): boolean => {
  const { doubts = [], commands = [], header, never } = row.lines[0]?.expect ?? {};
  const items = itemsOf(row);
  return (
    row.lines.length === 1 &&
    row.given === undefined &&
    !row.file.startsWith('sounds') &&
    !row.file.startsWith('run-on') &&
    items.length > 0 &&
    items.length < 3 &&
    doubts.length + commands.length === 0 &&
    header === undefined &&
    never === undefined &&
    items.every(({ kind, place }) => kind !== 'note' && kind !== 'fact' && place !== null) &&
    row.said.split(' ').length <= 9
  );
};
const read = (text: string, items: readonly Expected[]): { readonly right: boolean; readonly asked: boolean } => {
  const [parsed] = readLines([text]);
  if (parsed === undefined) throw new Error('Nothing was read.');
  const { missing, extra } = difference({ items }, parsed);
  return { right: missing.length + extra.length === 0, asked: parsed.doubts.length > 0 };
};

const [seed = '5', pairs = '1500'] = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unread = process.argv.includes('--held-out');
const pool = rowsOf(unread ? join(goldRoot, '../held-out') : goldRoot).filter(
  (row) => plain(row) && read(bare(row.said), itemsOf(row)).right,
);
const random = seeded(Number(seed));
const drawn = (): Row => pool[Math.floor(random() * pool.length)] as Row;
const seen = Array.from({ length: Number(pairs) }, () => {
  const a = drawn(),
    b = drawn();
  return { said: `${a.said} | ${b.said}`, ...read(bare(`${a.said} ${b.said}`), [...itemsOf(a), ...itemsOf(b)]) };
});
const silent = seen.filter(({ right, asked }) => !right && !asked);
if (process.argv.includes('--show') && !unread) silent.forEach(({ said }) => console.log(said));
console.log(
  `${seen.length} pairs of ${pool.length} phrases in one breath: ${seen.filter(({ right }) => right).length} right, ${seen.filter(({ right, asked }) => !right && asked).length} asked, ${silent.length} wrong in silence`,
);
