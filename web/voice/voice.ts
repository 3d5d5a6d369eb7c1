/** Reading back aloud, by a voice that lives on this machine. Where there is none, the screen alone says it. */
import type { Sounding } from './sounding.ts';

type VoiceLike = Pick<SpeechSynthesisVoice, 'localService' | 'lang' | 'name' | 'default'>;

/** The voice to use: local only (never one that sends words away), English, the person's own kind of English first. */
export const chooseVoice = <V extends VoiceLike>(voices: readonly V[], language: string): V | undefined => {
  const english = voices.filter((v) => v.localService && /^en([-_]|$)/i.test(v.lang));
  const own = english.filter((v) => v.lang.replace('_', '-').toLowerCase() === language.toLowerCase());
  return [...own, ...english].find((v) => v.default) ?? own[0] ?? english[0];
};

export interface Voice {
  readonly say: (sentence: string) => void;
  /** Falls silent and forgets what was still to be said. */
  readonly hush: () => void;
  readonly there: () => boolean;
}

export interface VoiceOptions {
  readonly synthesis: SpeechSynthesis | undefined;
  readonly marks: Sounding;
  readonly language: string;
  readonly now: () => number;
  /** Told each sentence as it begins. */
  readonly begins: (sentence: string) => void;
}

/** A browser may never report an end: after this long a sentence counts as said. */
const longestMs = (sentence: string): number => 2000 + 120 * sentence.length;

/** Letters said in one go: browsers fall silent in the middle of long speeches, and a long answer must be able to give way to a newer one. */
const atOnce = 160;
/** A long answer in pieces, cut where a sentence or a part of a list ends. */
export const pieces = (words: string): readonly string[] =>
  words.split(/(?<=[.;:?!,]) /).reduce<readonly string[]>((all, part) => {
    const last = all.at(-1);
    return last !== undefined && last.length + part.length < atOnce ? [...all.slice(0, -1), `${last} ${part}`] : [...all, part];
  }, []);

/** What is wanted is said one after the other; the newest takes the place of what still waits or is left of a long answer, because old news confuses wet hands. */
export const openVoice = ({ synthesis, marks, language, now, begins }: VoiceOptions): Voice => {
  let queue: readonly string[] = [];
  let speaking = false;
  const voice = (): SpeechSynthesisVoice | undefined => synthesis && chooseVoice(synthesis.getVoices(), language);
  const next = (): void => {
    const [sentence, ...rest] = queue;
    queue = rest;
    const by = voice();
    if (sentence === undefined || !synthesis || !by) {
      speaking = false;
      return;
    }
    speaking = true;
    const utterance = new SpeechSynthesisUtterance(sentence);
    utterance.voice = by;
    utterance.lang = by.lang;
    const end = marks.begin(now());
    let ended = false;
    const over = (): void => {
      if (ended) return;
      ended = true;
      clearTimeout(limit);
      end(now());
      next();
    };
    const limit = setTimeout(over, longestMs(sentence));
    utterance.onend = utterance.onerror = over;
    begins(sentence);
    synthesis.speak(utterance);
  };
  return {
    say: (sentence) => {
      if (!voice()) return;
      queue = pieces(sentence);
      if (!speaking) next();
    },
    hush: () => {
      queue = [];
      synthesis?.cancel();
    },
    there: () => voice() !== undefined,
  };
};
