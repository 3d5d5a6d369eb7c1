/** Words of our own voice are kept out of the reading and put back, marked as leftovers, into what was heard. Pure. */
import type { ParseResult, Utterance } from '../../parser/contract/draft.ts';
import type { HeardPhrase, Hypothesis } from '../../parser/contract/word.ts';
import { ownWords } from './ownVoice.ts';

/** The phrase without what our own voice said; null when nothing was ours. */
export function withoutOwn(phrase: HeardPhrase, spoken: readonly string[]): HeardPhrase | null {
  const lists = phrase.hypotheses.map((h) => ownWords(spoken, h.words.map((w) => w.w)));
  if (!lists.some((own) => own.includes(true))) return null;
  return { ...phrase, hypotheses: phrase.hypotheses.map((h, i): Hypothesis => { const words = h.words.filter((_, k) => !lists[i]![k]); return { ...h, words, text: words.map((w) => w.w).join(' ') }; }).filter((h) => h.words.length > 0) };
}

/** An utterance that was all ours: every word a leftover, nothing asked. */
export const allOwn = (phrase: HeardPhrase, carry: unknown): ParseResult => {
  const best = phrase.hypotheses[0];
  const utterance: Utterance = { id: phrase.id, text: best?.text ?? '', words: (best?.words ?? []).map(({ w, at }) => ({ w, as: 'leftover', ...(at && { at }) })), overOwnVoice: true, reader: phrase.reader, ...(phrase.at && { at: phrase.at }), ...(phrase.silenceBefore !== undefined && { silenceBefore: phrase.silenceBefore }) };
  return { id: phrase.id, text: utterance.text, utterance, items: [], commands: [], doubts: [], hints: [], settles: [], leftovers: utterance.words.map((w) => w.w), carry };
};

/** The reading of the rest, with the whole of what was heard; evidence points at its words again. */
export function withOwn(result: ParseResult, phrase: HeardPhrase, spoken: readonly string[]): ParseResult {
  const read = result.utterance.words;
  const whole = phrase.hypotheses.find((h) => { const own = ownWords(spoken, h.words.map((w) => w.w)); return h.words.filter((_, i) => !own[i]).length === read.length; }) ?? phrase.hypotheses[0]!;
  const own = ownWords(spoken, whole.words.map((w) => w.w));
  const places = whole.words.flatMap((_, i) => (own[i] ? [] : [i]));
  const words = whole.words.map(({ w, at }, i) => { const mine = read[places.indexOf(i)]; return !own[i] && mine ? mine : { w, as: 'leftover', ...(at && { at }) }; });
  const moved = result.items.map((item) => ({ ...item, evidence: { ...item.evidence, words: item.evidence.words.map((i) => places[i] ?? i) } }));
  return { ...result, items: moved, utterance: { ...result.utterance, text: whole.text, words, overOwnVoice: true }, leftovers: [...result.leftovers, ...whole.words.filter((_, i) => own[i]).map((w) => w.w)] };
}
