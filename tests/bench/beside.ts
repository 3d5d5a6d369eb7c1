/**
 * Two things in one breath with a pause between them: a finding and talk, or two findings, drawn from a corpus, each of which reads right
 * alone. Neither may change the other: `npx tsx tests/bench/beside.ts [--seed N] [--pairs N] [--show N] [--held-out]`. Pairs of the gold were read to
 * mend the grammar by; those of `--held-out` were not, and of them counts alone are printed.
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { emptyContext, parseText, type Parsed } from '../../parser/index.ts';
import { bare, difference } from '../match.ts';
import { goldRoot, rowsOf } from '../parser/corpus.ts';
import { seeded } from '../parser/seeded.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    pairs: { type: 'string', default: '1500' },
    show: { type: 'string', default: '0' },
    'held-out': { type: 'boolean', default: false },
  },
});
const known = new Set(JSON.parse(readFileSync('fixtures/known-failures.json', 'utf8')) as string[]);
const alone = rowsOf(values['held-out'] ? 'fixtures/held-out' : goldRoot).filter(
  ({ said, lines }) => lines.length === 1 && !known.has(said),
);
const read = (text: string): Parsed => parseText('b/1', text, emptyContext());
const short = (text: string, most: number): boolean => text.split(' ').length <= most && !text.includes(',');
const nothing = ({ items, doubts, commands, header }: Parsed): boolean =>
  items.length + doubts.length + commands.length === 0 && header === undefined;
const oneFinding = ({ items: [item, ...more], doubts, commands, header }: Parsed): boolean =>
  item?.kind === 'finding' && item.place !== null && more.length + doubts.length + commands.length === 0 && header === undefined;

const lines = alone.flatMap(({ lines: [line] }) => (line && short(line.say, 9) ? [line] : []));
// Only what is read as it is labelled: a finding that was lost is no talk.
const right = lines.filter(({ say, expect }) => {
  const { missing, extra } = difference(expect ?? {}, read(say));
  return missing.length + extra.length === 0;
});
const said = right.map(({ say }) => say);
const [talk, findings] = [said.filter((text) => nothing(read(text))), said.filter((text) => oneFinding(read(text)))];
const random = seeded(Number(values.seed));
const pick = (all: readonly string[]): string => all[Math.floor(random() * all.length)] as string;
const told = (...all: readonly Parsed[]): string =>
  all
    .flatMap(({ items }) => items.map((item) => JSON.stringify(bare(item))))
    .sort()
    .join();

for (const [name, others] of [
  ['talk and a finding', talk],
  ['two findings', findings],
] as const) {
  const counts = { right: 0, asked: 0, silent: 0 };
  const wrong: string[] = [];
  const of = new Map<string, { drawn: number; silent: number }>();
  for (let i = 0; i < Number(values.pairs); i += 1) {
    const other = pick(others);
    const pair = [other, pick(findings)];
    if (random() < 0.5) pair.reverse();
    const together = read(pair.join(', '));
    const same = told(together) === told(...pair.map(read)) && together.doubts.length === 0;
    counts[same ? 'right' : together.doubts.length > 0 ? 'asked' : 'silent'] += 1;
    const silent = !same && together.doubts.length === 0;
    if (silent) wrong.push(pair.join(', '));
    const { drawn, silent: before } = of.get(other) ?? { drawn: 0, silent: 0 };
    of.set(other, { drawn: drawn + 1, silent: before + Number(silent) });
  }
  // A few lines may make most of the pairs: how many there are, and how many of them are mostly wrong.
  const mostly = [...of.values()].filter(({ drawn, silent }) => silent * 2 > drawn).length;
  console.log(
    `${name}: ${counts.right} right, ${counts.asked} asked about, ${counts.silent} wrong in silence, of ${values.pairs} pairs with ${others.length} such lines, ${mostly} of them mostly wrong in silence`,
  );
  if (!values['held-out']) wrong.slice(0, Number(values.show)).forEach((text) => console.log(`  ${text}`));
}
