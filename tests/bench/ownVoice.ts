/**
 * `npx tsx tests/bench/ownVoice.ts`: does it dictate to itself? Our own sentence comes out of a loudspeaker in a room and back into the microphone,
 * alone, with a person speaking over it, or right behind it; the real ear hears it with all its rivals, the session takes our words out, the real grammar
 * reads the rest: what is left, and what becomes items.
 * Our voice is one synthetic voice, the person another. Reporting phrases only (odd ids). Says so when the speech data is absent.
 */
import { existsSync } from 'node:fs';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { emptyContext, parse } from '../../parser/index.ts';
import { withoutOwn } from '../../server/session/ownWordsOut.ts';
import { openEngine } from '../../server/speech/moonshine/index.ts';
import { ensureWeights } from '../../server/speech/weights.ts';
import { bareWords } from './hearing/measure.ts';
import { phrases, type Spoken } from './hearing/sets.ts';
import { reportingBarn, under } from './hearing/sound.ts';

const speech = process.env['QUIDNOTE_SPEECH'] ?? new URL('../../../shared/speech', import.meta.url).pathname;
if (!existsSync(speech)) throw new Error(`The speech data is not at ${speech}: nothing was measured. Name its place in QUIDNOTE_SPEECH.`);

const every = 6;
const barn = await reportingBarn(speech);
const ours = (await phrases(speech, 'alpha', 1, every)).spoken;
const theirs = (await phrases(speech, 'kumo', 1, every)).spoken;
const { dir } = await ensureWeights();
const engine = await openEngine({ weightsDir: dir });

/** The loudspeaker stands further away than the mouth. */
const loudspeaker = (spoken: Spoken): Float32Array =>
  under(spoken.samples, { name: 'own', room: true }, barn, spoken.id).map((s) => 0.5 * s);
const both = (a: Float32Array, b: Float32Array, shift: number): Float32Array =>
  Float32Array.from({ length: Math.max(a.length, b.length + shift) }, (_, i) =>
    Math.max(-1, Math.min(1, (a[i] ?? 0) + (b[i - shift] ?? 0))),
  );

const heardIn = async (samples: Float32Array): Promise<HeardPhrase> => ({
  id: 'bench:1',
  reader: 'first',
  hypotheses: (await engine.hear({ samples, from: 0 }, [])).hypotheses,
});
interface Left {
  readonly words: readonly string[];
  readonly items: number;
}
/** What the live session would make of it. */
const leftOf = (phrase: HeardPhrase, spoken: string, inside: boolean): Left => {
  const rest = withoutOwn(phrase, { spoken: [spoken], inside }) ?? phrase;
  return {
    words: (rest.hypotheses[0]?.words ?? []).map(({ w }) => w),
    items: rest.hypotheses.length ? parse(rest, emptyContext()).items.length : 0,
  };
};
const truthIn = (left: Left, words: string): number => {
  const truth = new Set(bareWords(words));
  return bareWords(left.words.join(' ')).filter((w) => truth.has(w)).length;
};

let heardAlone = 0,
  leftAlone = 0,
  itemsAlone = 0,
  sentencesLeft = 0;
let overWords = 0,
  overKept = 0,
  overItems = 0,
  overPhrases = 0;
let behindWords = 0,
  behindKept = 0,
  behindOurs = 0,
  behindItems = 0;
let cleanWords = 0,
  cleanKept = 0;
for (const [i, own] of ours.entries()) {
  const person = theirs[(i + 7) % theirs.length]!;
  const ownSound = loudspeaker(own);

  const alone = await heardIn(ownSound);
  const left = leftOf(alone, own.words, true);
  heardAlone += alone.hypotheses[0]?.words.length ?? 0;
  leftAlone += left.words.length;
  itemsAlone += left.items;
  if (left.words.length > 0) {
    sentencesLeft++;
    console.log(`  left of our own "${own.words}", heard as "${alone.hypotheses[0]!.text}": ${left.words.join(' ')}`);
  }
  if (person.samples.length <= ownSound.length) {
    const over = leftOf(
      await heardIn(both(ownSound, person.samples, Math.floor((ownSound.length - person.samples.length) / 2))),
      own.words,
      true,
    );
    overPhrases++;
    overWords += bareWords(person.words).length;
    overKept += truthIn(over, person.words);
    overItems += over.items;
  }
  const behind = leftOf(await heardIn(both(ownSound, person.samples, own.samples.length)), own.words, false);
  behindWords += bareWords(person.words).length;
  behindKept += truthIn(behind, person.words);
  behindItems += behind.items;
  const truth = new Set(bareWords(person.words));
  behindOurs += bareWords(behind.words.join(' ')).filter((w) => !truth.has(w) && bareWords(own.words).includes(w)).length;
  // The person's own phrase, heard while nothing of ours sounded but our last sentence is remembered: the worst case for a wrong claim.
  const clean = await heardIn(person.samples);
  cleanWords += clean.hypotheses[0]?.words.length ?? 0;
  cleanKept += leftOf(clean, own.words, false).words.length;
}
await engine.close();
const share = (a: number, b: number): string => `${a} of ${b} (${((100 * a) / Math.max(1, b)).toFixed(1)} %)`;
console.log(
  `\nOur voice alone, in a room (${ours.length} sentences): words taken for a person's ${share(leftAlone, heardAlone)}, in ${share(sentencesLeft, ours.length)} sentences; items made of them: ${itemsAlone}.`,
);
console.log(
  `A person over our voice, wholly inside it (${overPhrases} phrases): the person's words left ${share(overKept, overWords)}; items ${overItems}.`,
);
console.log(
  `A person right behind our voice, in one phrase: the person's words left ${share(behindKept, behindWords)}; words of ours left beside them ${behindOurs}; items ${behindItems}.`,
);
console.log(`A person's phrase alone, our last sentence remembered: words left theirs ${share(cleanKept, cleanWords)}.`);
