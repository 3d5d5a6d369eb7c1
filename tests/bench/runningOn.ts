/**
 * Lines of one exam that follow each other, said in one breath with a pause between them: each reads right by itself, and together they must say no
 * less and nothing else, wherever they lean. `npx tsx tests/bench/runningOn.ts [--held-out] [--joint ' and '] [--show N]`; of held-out lines counts
 * alone are printed. A label that has two teeth in one item where two items were made counts as wrong: the figure is a little too dark.
 */
import { parseArgs } from 'node:util';
import { emptyContext, parseText, type Context, type Parsed } from '../../parser/index.ts';
import { difference } from '../match.ts';
import { after, goldRoot, headerOf, rowsOf, type Row } from '../parser/corpus.ts';

const { values } = parseArgs({
  options: {
    'held-out': { type: 'boolean', default: false },
    joint: { type: 'string', default: ', ' },
    show: { type: 'string', default: '0' },
  },
});
type Line = Row['lines'][number];
/** An extraction is always asked to be confirmed: no word of the two was in doubt. */
const asked = ({ doubts }: Parsed): Parsed['doubts'] => doubts.filter(({ doubt }) => doubt !== 'irreversible');
const made = ({ expect }: Line): readonly Record<string, unknown>[] => (Array.isArray(expect?.items) ? expect.items : []);

/** Read as labelled, with items and nothing that steers, asks or takes back: two such lines may be one breath. */
function isPlain(line: Line, read: Parsed): boolean {
  const { missing, extra } = difference(line.expect ?? {}, read);
  const free = (line.expect?.commands ?? []).length + (line.expect?.doubts ?? []).length + read.commands.length + asked(read).length === 0;
  return missing.length + extra.length === 0 && free && made(line).length > 0 && !read.items.some(({ revises }) => revises);
}

const counts = { right: 0, asked: 0, silent: 0 };
const wrong: string[] = [];
for (const { lines, given } of rowsOf(values['held-out'] ? 'fixtures/held-out' : goldRoot)) {
  const before: Context[] = [{ ...emptyContext(), header: { ...emptyContext().header, ...headerOf(given) } }];
  const reads = lines.map(({ say }, i) => {
    const read = parseText(`r/${i}`, say, before[i] as Context);
    before.push(after(before[i] as Context, read));
    return read;
  });
  for (let i = 0; i + 1 < lines.length; i += 1) {
    const [one, next] = [lines[i] as Line, lines[i + 1] as Line];
    if (!isPlain(one, reads[i] as Parsed) || !isPlain(next, reads[i + 1] as Parsed)) continue;
    const together = parseText(`j/${i}`, one.say.replace(/[,. ]+$/, '') + values.joint + next.say, before[i] as Context);
    const { missing, extra } = difference({ items: [...made(one), ...made(next)] }, { ...together, doubts: asked(together) });
    const how = missing.length + extra.length === 0 ? 'right' : asked(together).length > 0 ? 'asked' : 'silent';
    counts[how] += 1;
    if (how === 'silent')
      wrong.push([`${one.say} || ${next.say}`, ...missing.map((m) => `  - ${m}`), ...extra.map((m) => `  + ${m}`)].join('\n'));
  }
}
console.log(`${counts.right} right, ${counts.asked} asked about, ${counts.silent} wrong in silence`);
if (!values['held-out']) wrong.slice(0, Number(values.show)).forEach((one) => console.log(one));
