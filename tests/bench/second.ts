/**
 * `npm run bench:second`: first reader alone, second alone, both, in one run, on the report phrases (odd ids). Each phrase is heard
 * by the first reader twice, in changing order: alone, and while the second works on it too, as the program lets it (app/turns.ts).
 * Against the grammar's own reading of the true words, so that it measures the ears. Wants the speech data (QUIDNOTE_SPEECH).
 *   --every N  each Nth phrase only (2: some ten minutes of a quiet machine)    --weights FILE  a whisper.cpp weights file
 *   --fit      on even phrases and the tuning half of the noise instead: what AGREEMENT and OTHER_WORDS (session/readers.ts) would give, and nothing else
 */
import { existsSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Item } from '../../parser/contract/item.ts';
import type { Hypothesis } from '../../parser/contract/word.ts';
import { emptyContext, parse, parseText, type Parsed } from '../../parser/index.ts';
import { openEar } from '../../server/app.ts';
import { promptWords, secondDir } from '../../server/app/second.ts';
import { goesBefore } from '../../server/app/turns.ts';
import { compareReaders, OTHER_WORDS, readOf } from '../../server/session/readers.ts';
import { buildReader } from '../../server/speech/whisper/build.ts';
import { openSecondReader } from '../../server/speech/whisper/index.ts';
import { pair, sameItem } from '../match.ts';
import { percentile } from './hearing/measure.ts';
import { share, table, withInterval } from './hearing/report.ts';
import { phrases, type Spoken } from './hearing/sets.ts';
import { barnOf, CLEAN, CONDITIONS, reportingBarn, under, type Condition } from './hearing/sound.ts';

const { values } = parseArgs({
  options: { every: { type: 'string', default: '2' }, weights: { type: 'string' }, fit: { type: 'boolean', default: false } },
});
const speech = process.env['QUIDNOTE_SPEECH'] ?? join(import.meta.dirname, '../../../shared/speech');
const weights = values.weights ?? join(speech, 'whisper/ggml-base-q8_0.bin');
if (!existsSync(weights) || !existsSync(join(speech, 'phrases'))) {
  console.error(`Not measured: wanted ${weights} and ${join(speech, 'phrases')}. Set QUIDNOTE_SPEECH to the speech data.`);
  process.exit(1);
}

interface Count {
  right: number;
  missing: number;
  extra: number;
  silent: number;
  rightDoubted: number;
  doubts: number;
  ms: number[];
}
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
const ids = (doubts: Parsed['doubts']): ReadonlySet<string> =>
  new Set(doubts.flatMap(({ item, readings }) => [...(item ? [item] : []), ...(readings?.[0]?.items.map(({ id }) => id) ?? [])]));
const read = (id: string, hypotheses: readonly Hypothesis[], reader: 'first' | 'second'): Parsed =>
  parse({ id, reader, hypotheses, at: [0, 1] }, emptyContext());

const ear = await openEar();
const second = openSecondReader({ reader: await buildReader(secondDir(), console.error), weights, tradeWords: promptWords });
const before = goesBefore(ear, second);
const barn = await reportingBarn(speech);

const timed = async <T>(work: () => Promise<T>): Promise<{ made: T; ms: number }> => {
  const from = performance.now();
  const made = await work();
  return { made, ms: performance.now() - from };
};
/** Milliseconds of the first reader beside a second that works, over all sets. */
const beside: number[] = [];
const alone: number[] = [];

async function measure(spoken: readonly Spoken[], condition: Condition): Promise<readonly (readonly [string, Count])[]> {
  const [one, two, both] = [zero(), zero(), zero()];
  for (const [n, { id, words, samples }] of spoken.entries()) {
    const sound = under(samples, condition, barn, id);
    const truth = parseText(id, words, emptyContext());
    const expected = new Set(truth.doubts.map(({ doubt }) => doubt));
    const byItself = () => timed(() => ear.hear({ exam: id, from: 0, samples: sound }));
    /** The second has begun when the first is asked; what it stood still for the first is not its own time. */
    const together = async () => {
      const other = timed(() => second.hear({ samples: sound, from: 0 }, []));
      await new Promise((resolve) => {
        setTimeout(resolve, 100);
      });
      const { ms } = await timed(() => before.hear({ exam: id, from: 0, samples: sound }));
      beside.push(ms);
      const { made, ms: all } = await other;
      return { made, ms: all - ms };
    };
    const early = n % 2 === 0 ? await byItself() : undefined;
    const { made: secondHeard, ms: secondMs } = await together();
    const { made: firstHeard, ms: firstMs } = early ?? (await byItself());
    alone.push(firstMs);
    const first = read(id, firstHeard.hypotheses, 'first');
    const other = read(id, secondHeard.hypotheses, 'second');
    const doubts = first.doubts.filter(({ doubt }) => !expected.has(doubt));
    add(one, truth, first.items, doubts.length > 0, ids(doubts), firstMs);
    const otherDoubts = other.doubts.filter(({ doubt }) => !expected.has(doubt));
    add(two, truth, other.items, otherDoubts.length > 0, ids(otherDoubts), secondMs);
    const differ =
      secondHeard.hypotheses.length === 0
        ? []
        : compareReaders(first.utterance, readOf(first, firstHeard.hypotheses[0]), readOf(other, secondHeard.hypotheses[0]), `${id}/second`)
            .doubts;
    add(both, truth, first.items, doubts.length + differ.length > 0, ids([...doubts, ...differ]), firstMs + secondMs);
  }
  return [
    ['first reader', one],
    ['second reader', two],
    ['both', both],
  ];
}

const sum = (counts: readonly Count[]): Count =>
  counts.reduce(
    (a, b) => ({
      right: a.right + b.right,
      missing: a.missing + b.missing,
      extra: a.extra + b.extra,
      silent: a.silent + b.silent,
      rightDoubted: a.rightDoubted + b.rightDoubted,
      doubts: a.doubts + b.doubts,
      ms: [...a.ms, ...b.ms],
    }),
    zero(),
  );
const row = (set: string, who: string, c: Count): string[] => [
  set,
  who,
  share(2 * c.right, 2 * c.right + c.missing + c.extra),
  String(Math.max(c.missing, c.extra)),
  withInterval(c.silent, c.right + c.missing),
  withInterval(c.rightDoubted, c.right),
  String(c.doubts),
  String(Math.round(percentile(c.ms, 0.5))),
  String(Math.round(percentile(c.ms, 0.95))),
];

/** Thresholds that OTHER_WORDS might have had. */
const thresholds = [OTHER_WORDS, 0.3, 0.1, 0, -0.1, -0.2, -0.3, -0.5, -0.8];
/**
 * How much likelier a right item of the first is to be heard the same by the second than a wrong one, smoothed by one either way;
 * and of what neither reader asks about otherwise, what each threshold would ask about.
 */
async function fit(): Promise<void> {
  const tuning = await barnOf(speech, 'tunes');
  const { spoken } = await phrases(speech, 'alpha', 0, Number(values.every));
  const [right, wrong] = [
    { agreed: 0, of: 0 },
    { agreed: 0, of: 0 },
  ];
  /** Phrases that are asked about by their words or not at all: log-odds, errors, right items. */
  const open: { readonly misheard: number; readonly errors: number; readonly rights: number }[] = [];
  for (const condition of CONDITIONS.filter(({ name }) => name === '10 dB' || name === '5 dB'))
    for (const { id, words, samples } of spoken) {
      const sound = under(samples, condition, tuning, id);
      const truth = parseText(id, words, emptyContext());
      const firstHeard = await ear.hear({ exam: id, from: 0, samples: sound });
      const secondHeard = await second.hear({ samples: sound, from: 0 }, []);
      const first = read(id, firstHeard.hypotheses, 'first');
      const other = read(id, secondHeard.hypotheses, 'second');
      const { agreed, alone, doubts, misheard } =
        secondHeard.hypotheses.length === 0
          ? { agreed: [], alone: [], doubts: [], misheard: -Infinity }
          : compareReaders(
              first.utterance,
              readOf(first, firstHeard.hypotheses[0]),
              readOf(other, secondHeard.hypotheses[0]),
              `${id}/second`,
            );
      const { pairs, missing, extra } = pair(truth.items, first.items, sameItem);
      const expected = new Set(truth.doubts.map(({ doubt }) => doubt));
      const asked = first.doubts.some(({ doubt }) => !expected.has(doubt)) || doubts.some(({ why }) => why === undefined);
      const errors = Math.max(missing.length, extra.length);
      if (!asked) open.push({ misheard: alone.length > 0 ? misheard : -Infinity, errors, rights: pairs.length });
      const rights = new Set(pairs.map(([, item]) => (item as Item).id));
      for (const item of first.items) {
        const count = rights.has(item.id) ? right : wrong;
        count.of += 1;
        if (agreed.includes(item.id)) count.agreed += 1;
      }
    }
  const likely = ({ agreed, of }: { agreed: number; of: number }): number => (agreed + 1) / (of + 2);
  console.log(
    `Heard the same by both: ${right.agreed} of ${right.of} right items, ${wrong.agreed} of ${wrong.of} wrong ones; ${(likely(right) / likely(wrong)).toFixed(2)} times as likely.`,
  );
  const total = (key: 'errors' | 'rights', above: number): number =>
    open.reduce((sum, phrase) => sum + (phrase.misheard > above ? phrase[key] : 0), 0);
  console.log(
    table(
      ['OTHER_WORDS', 'silent errors asked about', 'right items asked about'],
      thresholds.map((at) => [
        String(at),
        `${total('errors', at)} of ${open.reduce((sum, { errors }) => sum + errors, 0)}`,
        withInterval(total('rights', at), right.of),
      ]),
    ),
  );
}
if (values.fit) {
  await fit();
  await second.close();
  await ear.close();
  process.exit(0);
}

const rows: string[][] = [];
const all = new Map<string, Count[]>();
for (const voice of ['kumo', 'gongitsune', 'alpha']) {
  const { spoken } = await phrases(speech, voice, 1, Number(values.every));
  for (const condition of [CLEAN, ...CONDITIONS.filter(({ name }) => name === '10 dB')]) {
    for (const [name, c] of await measure(spoken, condition)) {
      rows.push(row(`synthetic ${voice}, ${condition.name}`, name, c));
      all.set(name, [...(all.get(name) ?? []), c]);
    }
  }
}
for (const [name, counts] of all) rows.push(row('all', name, sum(counts)));
console.log(
  table(
    ['set', 'who', 'item F1', 'wrong items', 'silent errors', 'right items doubted', 'phrases asked about', 'ms median', 'ms p95'],
    rows,
  ),
);
const [first, both] = ['first reader', 'both'].map((name) => sum(all.get(name) ?? [])) as [Count, Count];
const more = (both.rightDoubted - first.rightDoubted) / both.right;
const [p95, p95Beside] = [percentile(alone, 0.95), percentile(beside, 0.95)];
const verdict = (met: boolean): string => (met ? 'met' : 'MISSED');
console.log(`Silent errors of both: ${both.silent} of the first's ${first.silent} (mark: at most half): ${verdict(both.silent * 2 <= first.silent)}.
Right items doubted besides: ${(100 * more).toFixed(1)} % (mark: at most 6 %): ${verdict(more <= 0.06)}.
The first reader's p95: ${Math.round(p95)} ms alone, ${Math.round(p95Beside)} ms while the second works, ${(p95Beside / p95).toFixed(2)} times (mark: at most 1.1): ${verdict(p95Beside <= 1.1 * p95)}; medians ${Math.round(percentile(alone, 0.5))} and ${Math.round(percentile(beside, 0.5))} ms.
${availableParallelism()} processors; load average over the last 15 minutes ${loadavg()[2]?.toFixed(1)} (above that, the times are those of a busy machine).`);
await second.close();
await ear.close();
