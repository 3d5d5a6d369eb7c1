/** Words as an ear gives them: what `hear` hands to `parse`. */
import { z } from 'zod';

/** Seconds since the exam's start: [from, to]. Samples of the journal / 16000. */
export const Span = z.tuple([z.number().min(0), z.number().min(0)]);
export type Span = z.infer<typeof Span>;

export const Word = z.object({
  w: z.string(),
  at: Span.optional(),
  /** Natural log-probability given by the ear, with no bias in it. */
  logProb: z.number().optional(),
});
export type Word = z.infer<typeof Word>;

export const Hypothesis = z.object({
  text: z.string(),
  words: z.array(Word).readonly(),
  /** Natural log-probability of the whole text, acoustic only. */
  logProb: z.number(),
});
export type Hypothesis = z.infer<typeof Hypothesis>;

/** One phrase as heard (or typed on a line): the input of `parse`. */
export const HeardPhrase = z.object({
  /** Utterance id: exam id + first sample; in `parse` lines exam id + line number. */
  id: z.string(),
  /** Best first; empty when speech was heard but no words came. */
  hypotheses: z.array(Hypothesis).readonly(),
  at: Span.optional(),
  /** Seconds of silence before the phrase; absent in `parse` lines, where nothing is a long pause. */
  silenceBefore: z.number().min(0).optional(),
  /** Which ear heard it. */
  reader: z.enum(['first', 'second', 'typed', 'scripted']).default('first'),
});
export type HeardPhrase = z.infer<typeof HeardPhrase>;
