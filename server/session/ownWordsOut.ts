/** Words of our own voice are kept out of the reading and put back, marked as leftovers, into what was heard. Pure. */
import type { Doubt } from '../../parser/contract/doubt.ts';
import type { ParseResult, Utterance } from '../../parser/contract/draft.ts';
import type { HeardPhrase, Hypothesis } from '../../parser/contract/word.ts';
import { ownWords } from './ownVoice.ts';

/** Sentences that our own voice said lately, and whether it sounded throughout the phrase. */
export interface OwnVoice {
  readonly spoken: readonly string[];
  readonly inside: boolean;
}
const ownOf = ({ spoken, inside }: OwnVoice, { words }: Hypothesis): readonly boolean[] =>
  ownWords(
    spoken,
    words.map((w) => w.w),
    inside,
  );

/** The phrase without what our own voice said; null when nothing was ours. No hypothesis is left when all of it was. */
export function withoutOwn(phrase: HeardPhrase, voice: OwnVoice): HeardPhrase | null {
  const lists = phrase.hypotheses.map((h) => ownOf(voice, h));
  if (!lists.some((own) => own.includes(true))) return null;
  const rest = phrase.hypotheses.map((h, i): Hypothesis => {
    const words = h.words.filter((_, k) => !lists[i]![k]);
    return { ...h, words, text: words.map((w) => w.w).join(' ') };
  });
  // What a weaker hypothesis holds beyond the best is our own voice, misheard otherwise.
  const most = rest[0]?.words.length ?? 0;
  return { ...phrase, hypotheses: rest.filter(({ words }) => words.length > 0 && words.length <= most) };
}

/** An utterance that was all ours: every word a leftover, nothing asked. */
export const allOwn = (phrase: HeardPhrase, carry: unknown): ParseResult => {
  const best = phrase.hypotheses[0];
  const utterance: Utterance = {
    id: phrase.id,
    text: best?.text ?? '',
    words: (best?.words ?? []).map(({ w, at }) => ({ w, as: 'leftover', ...(at && { at }) })),
    overOwnVoice: true,
    reader: phrase.reader,
    ...(phrase.at && { at: phrase.at }),
    ...(phrase.silenceBefore !== undefined && { silenceBefore: phrase.silenceBefore }),
  };
  return {
    id: phrase.id,
    text: utterance.text,
    utterance,
    items: [],
    commands: [],
    doubts: [],
    hints: [],
    settles: [],
    leftovers: utterance.words.map((w) => w.w),
    carry,
  };
};

/** The reading of the rest, with the whole of what was heard; evidence points at its words again. */
export function withOwn(result: ParseResult, phrase: HeardPhrase, voice: OwnVoice): ParseResult {
  const read = result.utterance.words;
  const whole =
    phrase.hypotheses.find((h) => {
      const own = ownOf(voice, h);
      return h.words.filter((_, i) => !own[i]).length === read.length;
    }) ?? phrase.hypotheses[0]!;
  const own = ownOf(voice, whole);
  const places = whole.words.flatMap((_, i) => (own[i] ? [] : [i]));
  const words = whole.words.map(({ w, at }, i) => {
    const mine = read[places.indexOf(i)];
    return !own[i] && mine ? mine : { w, as: 'leftover', ...(at && { at }) };
  });
  const moved = result.items.map((item) => ({
    ...item,
    evidence: { ...item.evidence, words: item.evidence.words.map((i) => places[i] ?? i) },
  }));
  return {
    ...result,
    items: moved,
    utterance: { ...result.utterance, text: whole.text, words, overOwnVoice: true },
    leftovers: [...result.leftovers, ...whole.words.filter((_, i) => own[i]).map((w) => w.w)],
  };
}

/** Two voices at once are heard badly: what was read from a phrase wholly inside our own voice is asked about before it counts. */
export function overOwn(result: ParseResult, { inside }: OwnVoice): ParseResult {
  const asked = new Set(result.doubts.map(({ item }) => item));
  const doubts = inside
    ? result.items
        .filter(({ id }) => !asked.has(id))
        .map(({ id }, n): Doubt => ({
          id: `${result.id}/over${n + 1}`,
          doubt: 'unsure',
          words: result.text,
          utterance: result.id,
          item: id,
          state: 'open',
          why: 'It was said while this program was speaking.',
          ...(result.utterance.at && { at: result.utterance.at }),
        }))
    : [];
  return { ...result, doubts: [...result.doubts, ...doubts], utterance: { ...result.utterance, overOwnVoice: true } };
}
