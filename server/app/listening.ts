/**
 * A stream of sound becomes phrases of the live session. The stream has a clock of its own that only goes on;
 * marks say where in which exam's journal each stretch of it lies, so that a change of horse cuts no word.
 */
import type { DraftEvent } from '../../parser/contract/draft.ts';
import type { HeardPhrase, Span } from '../../parser/contract/word.ts';
import type { FromServer, HearingState } from '../../parser/contract/wire.ts';
import type { Live } from '../session/live.ts';
import type { OwnVoice } from '../session/ownWordsOut.ts';
import { idOf, spanOf, type Ear, type Phrase, type Segmenter, type Stretch } from './ear.ts';

export interface Listening {
  /** Sound at sample `at` of an exam's journal; `ownVoiceMs` of it is our own voice. Resolves when what ended in it is queued. */
  readonly push: (samples: Float32Array, exam: string, at: number, ownVoiceMs?: number) => Promise<void>;
  /** Sound that never came, in samples: what was being said ends there. */
  readonly skip: (samples: number) => Promise<void>;
  /** Our own voice begins to say this. */
  readonly said: (sentence: string) => void;
  /** What a page that joins is told. */
  readonly state: () => HearingState;
  /** Ends what is being said. */
  readonly flush: () => Promise<void>;
}

interface Mark {
  readonly stream: number;
  readonly exam: string;
  readonly at: number;
}
/** What the ear failed at stays in the draft as a question: nothing spoken disappears. */
const unreadable = (utterance: string, at: Span, when: string): DraftEvent => ({
  event: 'asked',
  when,
  doubt: {
    id: `${utterance}/failed`,
    doubt: 'unheard',
    words: '',
    utterance,
    at,
    state: 'open',
    why: 'This could not be read when it was said. Play it, or hear the sound again.',
  },
});
/** Samples of our own voice remembered: a sentence older than this is over. */
const remembered = 30 * 16_000;
/** Samples of a phrase that may lie outside our own voice and be its echo, not a person's word. */
const unmarked = 0.3 * 16_000;

export function openListening(
  live: Live,
  ear: Ear,
  segmenter: Segmenter,
  publish: (message: FromServer) => void,
  now: () => string,
): Listening {
  /** Samples handed to the segmenter so far. */
  let stream = 0;
  let marks: readonly Mark[] = [];
  let sentences: readonly { readonly at: number; readonly sentence: string }[] = [];
  let own: readonly (readonly [number, number])[] = [];
  let speaking = false;
  /** Phrases that are being heard or wait for it. */
  let busy = 0;
  let begun: { readonly phrase: Phrase; readonly exam: string; readonly heard: Promise<HeardPhrase> } | undefined;
  let waking = ear.waking !== undefined;
  const state = (): HearingState => (speaking ? 'hearing' : live.draft().paused ? 'paused' : waking ? 'getting-ready' : 'listening');

  const markOf = (sample: number): Mark | undefined => marks.findLast((mark) => mark.stream <= sample) ?? marks[0];
  /** Our voice counts as sounding throughout when all but so little of the phrase, in samples, lies in chunks that bear its mark. */
  const ownVoiceIn = ({ from, to }: Phrase): OwnVoice => {
    const marked = own.reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, to) - Math.max(a, from)), 0);
    const spoken = marked > 0 ? sentences.filter(({ at }) => at < to && at > from - remembered).map(({ sentence }) => sentence) : [];
    return { spoken, inside: to - from - marked <= unmarked };
  };
  const stretchOf = (phrase: Phrase): (Stretch & { readonly silenceBefore: number }) | undefined => {
    const mark = markOf(phrase.from);
    if (!mark) return undefined;
    const { samples, silenceBefore } = phrase;
    const shift = mark.at - mark.stream;
    const pauses = phrase.pauses.map(([from, to]): Span => [from + shift, to + shift]);
    return { exam: mark.exam, from: phrase.from + shift, samples, pauses, silenceBefore };
  };
  /** Hearing begins while the pause still has to show whether the phrase is over, unless the ear has other work: then it would only be in the way. */
  const lookAhead = (): void => {
    const phrase = segmenter.soon();
    const stretch = phrase && phrase !== begun?.phrase && busy === 0 && !waking ? stretchOf(phrase) : undefined;
    if (!phrase || !stretch) return;
    const heard = ear.hear(stretch);
    heard.catch(() => undefined); // told to whoever queues the phrase
    begun = { phrase, exam: stretch.exam, heard };
  };
  const queue = (phrase: Phrase): void => {
    const stretch = stretchOf(phrase);
    if (!stretch) return;
    const { exam, from, samples } = stretch;
    const at = spanOf(from, samples.length);
    const heard = begun?.phrase === phrase && begun.exam === exam ? begun.heard : undefined;
    begun = undefined;
    busy += 1;
    live
      .phrase(() => heard ?? ear.hear(stretch), { at, journal: exam, ownVoice: ownVoiceIn(phrase) })
      .catch(() => live.change(() => [unreadable(idOf(exam, from), at, now())]))
      .finally(() => {
        busy -= 1;
      });
  };
  const tell = (): void => {
    const before = speaking;
    speaking = segmenter.state().speaking;
    if (before !== speaking) publish({ type: 'hearing', state: state() });
  };
  const awake = (): void => {
    waking = false;
    publish({ type: 'hearing', state: state() });
  };
  ear.waking?.then(awake, () => undefined);
  const take = (phrases: readonly Phrase[]): void => {
    phrases.forEach(queue);
    tell();
  };

  return {
    state,
    push: async (samples, exam, at, ownVoiceMs = 0) => {
      const last = marks.at(-1);
      if (!last || last.exam !== exam || last.at + (stream - last.stream) !== at) marks = [...marks.slice(-99), { stream, exam, at }];
      if (ownVoiceMs > 0) own = [...own.slice(-999), [stream, stream + samples.length]];
      stream += samples.length;
      take(await segmenter.push(samples));
      lookAhead();
    },
    skip: async (samples) => {
      stream += samples;
      take(await segmenter.skip(samples));
    },
    said: (sentence) => {
      sentences = [...sentences.slice(-99), { at: stream, sentence }];
    },
    flush: async () => take(await segmenter.flush()),
  };
}
