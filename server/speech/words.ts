/** From words with log-probabilities to a hypothesis whose words have a place in time. */
import type { Hypothesis } from '../../parser/contract/word.ts';
import type { Clip } from './engine.ts';
import { RATE } from './engine.ts';

export type ScoredWord = { readonly w: string; readonly logProb: number };
export type Seconds = { readonly from: number; readonly to: number };

/**
 * Lays the words over the stretch of speech by their length in letters: an estimate good to some tenths of a
 * second, enough to play the moment back; the recogniser's graph gives no alignment.
 * @param extra log-probability that belongs to no word (the end of the sentence)
 */
export function hypothesis(scored: readonly ScoredWord[], speech: Seconds, extra = 0): Hypothesis {
  const letters = scored.map(({ w }) => w.length + 1);
  const total = letters.reduce((sum, n) => sum + n, 0);
  let before = 0;
  const words = scored.map(({ w, logProb }, i) => {
    const from = before;
    before += letters[i] ?? 0;
    return { w, logProb, at: [moment(speech, from / total), moment(speech, before / total)] as [number, number] };
  });
  return { text: scored.map(({ w }) => w).join(' '), words, logProb: scored.reduce((sum, { logProb }) => sum + logProb, extra) };
}

/** A text as its words alone. */
export const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9' ]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** Share of the loudest moment's strength below which nobody speaks yet, or any more. */
const FAINT = 0.05;
const MOMENT = RATE / 50;

/** Where in the exam the voice of a clip begins and ends, by loudness; in steady noise that is the whole clip. */
export function voiced({ samples, from }: Clip): Seconds {
  const strengths = Array.from({ length: Math.ceil(samples.length / MOMENT) }, (_, i) => {
    const moment = samples.subarray(i * MOMENT, (i + 1) * MOMENT);
    return Math.sqrt(moment.reduce((sum, sample) => sum + sample * sample, 0) / moment.length);
  });
  const least = FAINT * strengths.reduce((most, strength) => Math.max(most, strength), 0);
  const first = Math.max(
      0,
      strengths.findIndex((strength) => strength >= least),
    ),
    last = strengths.findLastIndex((strength) => strength >= least);
  return { from: (from + first * MOMENT) / RATE, to: (from + Math.min(samples.length, (last + 1) * MOMENT)) / RATE };
}

const moment = ({ from, to }: Seconds, share: number): number => Math.round((from + (to - from) * share) * 1000) / 1000;
