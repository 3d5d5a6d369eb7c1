/** Hearing again, from the journal: phrases known already by their own stretch, and sound that was never read. */
import type { Span } from '../../parser/contract/word.ts';
import { AudioError } from '../audio/audioError.ts';
import type { Live } from '../session/live.ts';
import { RATE } from '../speech/engine.ts';
import type { Ear } from './ear.ts';
import { openListening } from './listening.ts';
import type { Journals } from './journals.ts';
import { now } from './now.ts';

const readAtOnce = 10 * RATE;

/** Every phrase once more; what a person touched is never changed by it, only asked about. */
export async function rehear(live: Live, ear: Ear, journals: Journals): Promise<void> {
  const draft = live.draft();
  for (const utterance of draft.utterances) {
    const { at, sound: exam = draft.id, silenceBefore } = utterance;
    if (!at || utterance.overOwnVoice) continue;
    const samples = await journals.view(exam, (journal) => journal.read(at[0] * RATE, at[1] * RATE));
    const from = Math.round(at[0] * RATE);
    await live.phrase(
      async () => ({
        ...(await ear.hear({ exam, from, samples, ...(silenceBefore !== undefined && { silenceBefore }) })),
        id: utterance.id,
      }),
      { at, journal: exam },
    );
  }
}

/** The end of the exam's own sound that was never listened to: what a crash left unread. Null when there is none. */
export async function unreadTail(draft: ReturnType<Live['draft']>, journals: Journals): Promise<Span | null> {
  const read = draft.utterances.filter((u) => !u.sound).reduce((end, u) => Math.max(end, u.at?.[1] ?? 0), draft.listenedTo ?? 0);
  const length = await journals.view(draft.id, async (journal) => journal.length() / RATE).catch(noSound);
  return length - read > 0.3 ? [read, length] : null;
}

const noSound = (error: unknown): number => {
  if (error instanceof AudioError && (error.code === 'missing' || error.code === 'erased')) return 0;
  throw error;
};

/** Reads sound that is in the journal and was never read, and keeps how far it listened: silence is not listened to at every start. */
export async function readTail(live: Live, [from, to]: Span, ear: Ear, journals: Journals): Promise<void> {
  const exam = live.draft().id;
  const [start, end] = [Math.round(from * RATE), Math.round(to * RATE)];
  const listening = openListening(live, ear, await ear.segmenter(), () => undefined, now);
  await journals.view(exam, async (journal) => {
    for (const part of journal.parts()) {
      const [a, b] = [Math.max(start, part.from), Math.min(end, part.from + part.samples)];
      if (part.kind !== 'sound') {
        if (b > a) await listening.skip(b - a);
        continue;
      }
      for (let at = a; at < b; at += readAtOnce) await listening.push(await journal.read(at, Math.min(at + readAtOnce, b)), exam, at);
    }
  });
  await listening.flush();
  await live.idle();
  await live.change(() => [{ event: 'listened', to, when: now() }]);
}
