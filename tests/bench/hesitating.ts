/**
 * Lines that read right, said once more with one pause somewhere inside, as by a speaker who looks for a word: the pause may change nothing.
 * `npx tsx tests/bench/hesitating.ts [--seed N] [--show N] [--held-out]`; where nobody ends (`mayEnd`) the ear writes no pause, and none is tried.
 * What ends a thing for one may be hesitation for another ("no hooks, ramp on three eleven"), so not every change is a fault: the figure is a little too dark.
 */
import { parseArgs } from 'node:util';
import { emptyContext, mayEnd, parseText, type Context } from '../../parser/index.ts';
import { difference } from '../match.ts';
import { after, goldRoot, headerOf, rowsOf } from '../parser/corpus.ts';
import { seeded } from '../parser/seeded.ts';

const { values } = parseArgs({
  options: {
    seed: { type: 'string', default: '1' },
    show: { type: 'string', default: '0' },
    'held-out': { type: 'boolean', default: false },
  },
});
const random = seeded(Number(values.seed));
const drawn = <T>(all: readonly T[]): T | undefined => all[Math.floor(random() * all.length)];
const asked = (doubts: readonly { readonly doubt: string }[]): number => doubts.filter(({ doubt }) => doubt !== 'irreversible').length;
const plain = (word: string): string => word.toLowerCase().replace(/[^\p{L}\p{N}']/gu, '');

const counts = { same: 0, asked: 0, silent: 0 };
const changed: string[] = [];
for (const { lines, given } of rowsOf(values['held-out'] ? 'fixtures/held-out' : goldRoot)) {
  let context: Context = emptyContext(headerOf(given));
  for (const [i, { say, expect }] of lines.entries()) {
    const before = context;
    const read = parseText(`h/${i}`, say, before);
    context = after(before, read);
    const { missing, extra } = difference(expect, read);
    const words = say.split(/\s+/);
    if (missing.length + extra.length > 0 || words.length < 4) continue;
    const said = words.map(plain);
    const at = drawn(words.flatMap((word, k) => (k + 1 < words.length && !/[,.;:!?]$/.test(word) && mayEnd(said, k + 1) ? [k] : [])));
    if (at === undefined) continue;
    const paused = words.map((word, k) => (k === at ? `${word},` : word)).join(' ');
    const again = parseText(`h/${i}`, paused, before);
    const now = difference(expect, again);
    const how = now.missing.length + now.extra.length === 0 ? 'same' : asked(again.doubts) > asked(read.doubts) ? 'asked' : 'silent';
    counts[how] += 1;
    if (how === 'silent') changed.push([paused, ...now.missing.map((m) => `  - ${m}`), ...now.extra.map((m) => `  + ${m}`)].join('\n'));
  }
}
console.log(`${counts.same} the same, ${counts.asked} asked about, ${counts.silent} changed in silence`);
if (!values['held-out']) for (let n = Number(values.show); n > 0; n -= 1) console.log(drawn(changed) ?? '');
