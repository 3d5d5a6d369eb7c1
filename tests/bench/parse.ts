/**
 * How long the grammar takes for a phrase, on one core: `npx tsx tests/bench/parse.ts`, or joined as the program runs it:
 * `npx esbuild tests/bench/parse.ts --bundle --platform=node --format=esm --outfile=/tmp/parse.mjs && node /tmp/parse.mjs`, from the
 * repository's root. Median of many readings after a warm-up; of the gold phrases the mean, for a few that are hard to read weigh most.
 */
import { emptyContext, parseText } from '../../parser/index.ts';
import { sample } from '../../parser/sampler/index.ts';
import { rowsOf } from '../parser/corpus.ts';
import { seeded } from '../parser/seeded.ts';

const median = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] as number;
const timeOf = (text: string): number => {
  const from = performance.now();
  parseText('b/1', text, emptyContext());
  return (performance.now() - from) * 1000;
};

const phrase = 'hook on one oh six four mil and ramp on three eleven';
const random = seeded(7);
const drawn = Array.from({ length: 2000 }, () => sample(random).text);
drawn.forEach(timeOf);
for (let i = 0; i < 2000; i += 1) timeOf(phrase);

const twelve = Array.from({ length: 4000 }, () => timeOf(phrase));
console.log(`a phrase of ${phrase.split(' ').length} words: ${median(twelve).toFixed(0)} µs (median of ${twelve.length})`);
const perWord = drawn.map((text) => timeOf(text) / text.split(' ').length);
console.log(`drawn phrases: ${median(perWord).toFixed(1)} µs a word (median of ${perWord.length})`);
for (const times of [1, 4, 16])
  console.log(
    `${times} times the phrase: ${median(Array.from({ length: 300 }, () => timeOf(Array(times).fill(phrase).join(' ')))).toFixed(0)} µs`,
  );

const gold = rowsOf('fixtures/gold').map(({ lines: [first] }) => first?.say ?? '');
const once = gold.map(timeOf),
  again = gold.map((text, i) => Math.min(once[i] as number, timeOf(text)));
console.log(`gold phrases: ${(again.reduce((sum, time) => sum + time, 0) / gold.length).toFixed(0)} µs (mean of ${gold.length})`);
