/** Puts dictated exams into a data folder before a server opens it: read by the real grammar, folded and kept by the real rooms. */
import { join } from 'node:path';
import type { Draft, DraftEvent, Header } from '../../parser/contract/draft.ts';
import type { Doubt } from '../../parser/contract/doubt.ts';
import type { Word } from '../../parser/contract/word.ts';
import { read } from '../../server/app/understand.ts';
import { openJournal } from '../../server/audio/journal.ts';
import { openBook } from '../../server/app.ts';
import { recordOf } from '../../server/app/record.ts';
import { lexiconVersion } from '../../parser/index.ts';
import { contextOf } from '../../server/session/context.ts';
import { applyEvent, foldDraft } from '../../server/session/reduce.ts';

const rate = 16000;
const perWord = 0.35;
const pause = 1.5;

export interface Dictated {
  readonly id: string;
  readonly horse: string | null;
  readonly startedAt: string;
  readonly phrases: readonly string[];
  /** When it was confirmed; a draft otherwise. */ readonly confirmedAt?: string;
  /** Questions raised after the fact, about the first phrase. */ readonly asked?: readonly Pick<
    Doubt,
    'doubt' | 'words' | 'readings' | 'why'
  >[];
}

/** A soft tone for each word, so that what is played is not silence. */
function toneOf(words: number, pitch: number): Int16Array {
  return Int16Array.from({ length: Math.round((words * perWord + pause) * rate) }, (_, i) =>
    i < words * perWord * rate ? Math.round(6000 * Math.sin((2 * Math.PI * pitch * i) / rate)) : 0,
  );
}

/** One exam: its sound in the journal, its phrases in the log. @returns the draft as it stands */
export async function dictate(folder: string, { id, horse, startedAt, phrases, confirmedAt, asked = [] }: Dictated): Promise<Draft> {
  const header: Header = { horse: horse ? { name: horse } : null, owner: 'R. Alder', yard: 'Low Meadow', examiner: 'S. Wren', startedAt };
  const store = openBook(folder, true);
  const journal = await openJournal(join(folder, 'sound', id));
  try {
    store.createExam(id, header, 'S. Wren', startedAt);
    let draft = foldDraft(id, store.events(id));
    const events: DraftEvent[] = [];
    const put = (event: DraftEvent): void => {
      events.push(event);
      draft = applyEvent(draft, event);
    };
    let clock = 0;
    for (const [n, text] of phrases.entries()) {
      const words: Word[] = text.split(' ').map((w, i) => ({ w, at: [clock + i * perWord, clock + (i + 0.9) * perWord] }));
      const at: [number, number] = [clock, clock + words.length * perWord];
      await journal.append({ epoch: 1, sequence: n, samples: toneOf(words.length, 300 + n * 20) });
      const phrase = {
        id: `${id}:${Math.round(clock * rate)}`,
        hypotheses: [{ text, words, logProb: -1 }],
        at,
        silenceBefore: n ? pause : 0,
        reader: 'scripted' as const,
      };
      put({ event: 'heard', phrase, when: startedAt });
      put({ event: 'said', result: read(phrase, contextOf(draft)), when: startedAt });
      clock = at[1] + pause;
    }
    asked.forEach((doubt, n) =>
      put({
        event: 'asked',
        when: startedAt,
        doubt: { ...doubt, id: `${id}/asked${n}`, utterance: draft.utterances[0]!.id, state: 'open' },
      }),
    );
    store.append(id, events, draft);
    if (confirmedAt) {
      const confirmed: DraftEvent = { event: 'confirmed', lexicon: lexiconVersion, by: 'S. Wren', when: confirmedAt };
      draft = applyEvent(draft, confirmed);
      store.confirm(id, [confirmed], draft, recordOf(draft));
    }
    return draft;
  } finally {
    await journal.close();
    store.close();
  }
}
