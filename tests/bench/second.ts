/**
 * `npm run bench:second`: first reader alone, second alone, both, in one run, on the report phrases (odd ids).
 * Against the grammar's own reading of the true words, so that it measures the ears. Wants the speech data (QUIDNOTE_SPEECH).
 *   --every N  each Nth phrase only    --weights FILE  a whisper.cpp weights file
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Item } from '../../parser/contract/item.ts';
import type { Hypothesis } from '../../parser/contract/word.ts';
import { emptyContext, parse, parseText, type Parsed } from '../../parser/index.ts';
import { openEar } from '../../server/app.ts';
import { openSecond, secondDir } from '../../server/app/second.ts';
import { compareReaders, type Read } from '../../server/session/readers.ts';
import { buildReader } from '../../server/speech/whisper/build.ts';
import { pair, sameItem } from '../match.ts';
import { percentile } from './hearing/measure.ts';
import { share, table, withInterval } from './hearing/report.ts';
import { phrases, type Spoken } from './hearing/sets.ts';
import { CLEAN, CONDITIONS, reportingBarn, under, type Condition } from './hearing/sound.ts';

const { values } = parseArgs({ options: { every: { type: 'string', default: '1' }, weights: { type: 'string' } } });
const speech = process.env['QUIDNOTE_SPEECH'] ?? join(import.meta.dirname, '../../../shared/speech');
const weights = values.weights ?? join(speech, 'whisper/ggml-base-q8_0.bin');
if (!existsSync(weights) || !existsSync(join(speech, 'phrases'))) {
  console.error(`Not measured: wanted ${weights} and ${join(speech, 'phrases')}. Set QUIDNOTE_SPEECH to the speech data.`);
  process.exit(1);
}

interface Count { right: number; missing: number; extra: number; silent: number; rightDoubted: number; doubts: number; ms: number[] }
const zero = (): Count => ({ right: 0, missing: 0, extra: 0, silent: 0, rightDoubted: 0, doubts: 0, ms: [] });

/** @param doubted ids of items that a person will be asked about */
function add(count: Count, truth: Parsed, items: readonly Item[], asked: boolean, doubted: ReadonlySet<string>, ms: number): void {
  const { pairs, missing, extra } = pair(truth.items, items, sameItem);
  count.right += pairs.length;
  count.missing += missing.length;
  count.extra += extra.length;
  // A finding heard wrong is one error, not a missing and an extra one.
  if (!asked) count.silent += Math.max(missing.length, extra.length);
  count.rightDoubted += pairs.filter(([, item]) => doubted.has((item as Item).id)).length;
  count.doubts += asked ? 1 : 0;
  count.ms.push(ms);
}
const reading = ({ text, items, utterance }: Parsed): Read => ({ text, items, loose: utterance.words.filter(({ as }) => as === 'leftover').length });
const ids = (doubts: Parsed['doubts']): ReadonlySet<string> => new Set(doubts.flatMap(({ item, readings }) => [...(item ? [item] : []), ...(readings?.[0]?.items.map(({ id }) => id) ?? [])]));
const read = (id: string, hypotheses: readonly Hypothesis[], reader: 'first' | 'second'): Parsed => parse({ id, reader, hypotheses, at: [0, 1] }, emptyContext());

const ear = await openEar();
const second = openSecond({ reader: await buildReader(secondDir(), console.error), weights });
const barn = await reportingBarn(speech);

async function measure(spoken: readonly Spoken[], condition: Condition): Promise<readonly (readonly [string, Count])[]> {
  const [one, two, both] = [zero(), zero(), zero()];
  for (const { id, words, samples } of spoken) {
    const sound = under(samples, condition, barn, id);
    const truth = parseText(id, words, emptyContext());
    const expected = new Set(truth.doubts.map(({ doubt }) => doubt));
    const from = performance.now();
    const firstHeard = await ear.hear({ exam: id, from: 0, samples: sound });
    const between = performance.now();
    const secondHeard = await second.hear({ samples: sound, from: 0 }, []);
    const to = performance.now();
    const first = read(id, firstHeard.hypotheses, 'first');
    const other = read(id, secondHeard.hypotheses, 'second');
    const doubts = first.doubts.filter(({ doubt }) => !expected.has(doubt));
    add(one, truth, first.items, doubts.length > 0, ids(doubts), between - from);
    const otherDoubts = other.doubts.filter(({ doubt }) => !expected.has(doubt));
    add(two, truth, other.items, otherDoubts.length > 0, ids(otherDoubts), to - between);
    const differ = secondHeard.hypotheses.length === 0 ? [] : compareReaders(first.utterance, reading(first), reading(other), `${id}/second`).doubts;
    add(both, truth, first.items, doubts.length + differ.length > 0, ids([...doubts, ...differ]), to - from);
  }
  return [['first reader', one], ['second reader', two], ['both', both]];
}

const rows: string[][] = [];
for (const voice of ['alpha', 'kumo']) {
  const { spoken } = await phrases(speech, voice, 1, Number(values.every));
  for (const condition of [CLEAN, ...CONDITIONS.filter(({ name }) => name === '10 dB')]) {
    for (const [name, c] of await measure(spoken, condition)) {
      const items = c.right + c.missing;
      rows.push([`synthetic ${voice}, ${condition.name}`, name, share(2 * c.right, 2 * c.right + c.missing + c.extra), withInterval(c.silent, items), withInterval(c.rightDoubted, c.right), String(c.doubts), String(Math.round(percentile(c.ms, 0.5))), String(Math.round(percentile(c.ms, 0.95)))]);
    }
  }
}
console.log(table(['set', 'who', 'item F1', 'silent errors', 'right items doubted', 'phrases asked about', 'ms median', 'ms p95'], rows));
await second.close();
await ear.close();
