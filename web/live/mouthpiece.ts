/** What the program itself says and sounds: one tone for what just happened, and a sentence where one is wanted. */
import type { Draft } from '../../parser/contract/draft.ts';
import type { FromServer } from '../../parser/contract/wire.ts';
import { askedNow, isOpen, stands } from '../fold.ts';
import { readBackOn, tonesOn, voiceOn } from '../voice/choices.ts';
import { sounding } from '../voice/sounding.ts';
import { playTone, toneLasts, type Tone } from '../voice/tones.ts';
import { openVoice } from '../voice/voice.ts';
import { questionAloud } from './question.ts';
import { aloud, readBack } from './say.ts';

export interface Mouthpiece {
  readonly tone: (tone: Tone) => void;
  /** Answers a frame: `before` is the draft as it was. */
  readonly heard: (frame: FromServer, before: Draft | null) => void;
  /** Milliseconds of our own sound in the last quarter of a second. */
  readonly lately: () => number;
}

/** Of several tones due at once the weightiest sounds. */
const weight: readonly Tone[] = ['understood', 'done', 'unsure', 'trouble'];
const gatherMs = 60;
const chunkMs = 250;
/** A chunk reaches the page a little after its last sample. */
const lateMs = 60;

/** Opens our voice in an audio context that a tap has started. `said` is told each sentence as it begins. */
export const openMouthpiece = (context: AudioContext, said: (sentence: string) => void): Mouthpiece => {
  const now = (): number => performance.now();
  const marks = sounding();
  const voice = openVoice({ synthesis: window.speechSynthesis, marks, language: navigator.language, now, begins: said });
  let due: Tone | null = null;
  const tone = (wanted: Tone): void => {
    if (!tonesOn.value) return;
    if (due === null) setTimeout(play, gatherMs);
    if (due === null || weight.indexOf(wanted) > weight.indexOf(due)) due = wanted;
  };
  const play = (): void => {
    if (!due) return;
    const end = marks.begin(now());
    playTone(context, due);
    setTimeout(() => end(now()), toneLasts(due) * 1000);
    due = null;
  };
  const say = (sentence: string): void => {
    if (voiceOn.value) voice.say(sentence);
  };
  const heard = (frame: FromServer, before: Draft | null): void => {
    if (frame.type === 'answer') {
      tone(frame.tone);
      say(aloud(frame.say));
    }
    if (frame.type !== 'changed') return;
    const newDoubts = (frame.parts.doubts ?? []).filter((d) => isOpen(d) && !before?.doubts.some((old) => old.doubt.id === d.doubt.id));
    const newItems = (frame.parts.items ?? []).filter((i) => stands(i) && !before?.items.some((old) => old.item.id === i.item.id));
    if (newDoubts.length > 0) {
      tone('unsure');
      say(questionAloud(askedNow(newDoubts)!.doubt));
    } else if (newItems.length > 0) {
      tone('understood');
      if (readBackOn.value) say(newItems.map((i) => readBack(i.item)).join(' '));
    }
  };
  return { tone, heard, lately: () => marks.within(now() - chunkMs - lateMs, now()) };
};
