/**
 * `npx tsx tests/bench/ownVoice.ts`: does it dictate to itself? Our own sentence comes out of a loudspeaker in a room and back into the microphone,
 * alone, or while a person speaks; the real ear hears it; `ownWords` says which words are ours.
 * Our voice is one synthetic voice, the person another. Reporting phrases only (odd ids). Says so when the speech data is absent.
 */
import { existsSync } from 'node:fs';
import { ownWords } from '../../server/session/ownVoice.ts';
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
const loudspeaker = (spoken: Spoken): Float32Array => under(spoken.samples, { name: 'own', room: true }, barn, spoken.id).map((s) => 0.5 * s);
const both = (a: Float32Array, b: Float32Array, shift: number): Float32Array => Float32Array.from({ length: Math.max(a.length, b.length + shift) }, (_, i) => Math.max(-1, Math.min(1, (a[i] ?? 0) + (b[i - shift] ?? 0))));
const wordsHeard = async (samples: Float32Array): Promise<string[]> => ((await engine.hear({ samples, from: 0 }, [])).hypotheses[0]?.text ?? '').split(/\s+/).filter(Boolean);

let alone = 0, leftAlone = 0, utterancesLeft = 0;
let theirWords = 0, keptTheirs = 0, ourWordsLeft = 0;
let beforeOurs = 0, beforeKept = 0;
for (const [i, own] of ours.entries()) {
  const spoken = [own.words];
  const heard = await wordsHeard(loudspeaker(own));
  const left = ownWords(spoken, heard).filter((isOurs) => !isOurs).length;
  alone += heard.length;
  leftAlone += left;
  if (left > 0) {
    utterancesLeft++;
    console.log(`  left of our own "${own.words}", heard as "${heard.join(' ')}": ${heard.filter((_, k) => !ownWords(spoken, heard)[k]).join(' ')}`);
  }
  const person = theirs[(i + 7) % theirs.length]!;
  const after = await wordsHeard(both(loudspeaker(own), person.samples, own.samples.length));
  const remaining = after.filter((_, k) => !ownWords(spoken, after)[k]);
  const truth = new Set(bareWords(person.words));
  theirWords += bareWords(person.words).length;
  keptTheirs += bareWords(remaining.join(' ')).filter((w) => truth.has(w)).length;
  ourWordsLeft += bareWords(remaining.join(' ')).filter((w) => !truth.has(w) && bareWords(own.words).includes(w)).length;
  // The person's own phrase, heard while nothing of ours sounded but our last sentence is remembered: the worst case for a wrong claim.
  const clean = await wordsHeard(person.samples);
  beforeOurs += clean.length;
  beforeKept += ownWords(spoken, clean).filter((isOurs) => !isOurs).length;
}
await engine.close();
const share = (a: number, b: number): string => `${a} of ${b} (${((100 * a) / Math.max(1, b)).toFixed(1)} %)`;
console.log(`\nOur voice alone, in a room (${ours.length} sentences): words taken for a person's ${share(leftAlone, alone)}, in ${share(utterancesLeft, ours.length)} sentences.`);
console.log(`A person right behind our voice, in one phrase: the person's words left ${share(keptTheirs, theirWords)}; words of ours left beside them ${ourWordsLeft}.`);
console.log(`A person's phrase alone, our last sentence remembered: words left theirs ${share(beforeKept, beforeOurs)}.`);
