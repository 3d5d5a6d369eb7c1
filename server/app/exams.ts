/** What a person does to exams outside of listening: look, change, confirm, join, split, hear again, erase. */
import type { Draft, DraftEvent, Header } from '../../parser/contract/draft.ts';
import { lexiconVersion } from '../../parser/index.ts';
import { toWav } from '../audio/wav.ts';
import type { Doors } from '../http/doors.ts';
import { refuse, refusal } from '../http/refusal.ts';
import type { Store } from '../records/index.ts';
import { actOn } from '../session/acts.ts';
import { whyNotConfirm } from '../session/confirmable.ts';
import { join, split } from '../session/move.ts';
import { applyEvent, foldDraft } from '../session/reduce.ts';
import { RATE } from '../speech/engine.ts';
import type { Ear } from './ear.ts';
import { eraseExam, eraseSound } from './erase.ts';
import { rehear } from './rehear.ts';
import type { Journals } from './journals.ts';
import { freshId, now } from './now.ts';
import type { Sittings } from './sittings.ts';

type Kept = 'open' | 'act' | 'confirm' | 'amend' | 'sound' | 'erase' | 'eraseHorse' | 'join' | 'split' | 'reread';
/** Longest stretch of sound played at a time, in seconds. */
const longest = 120;
export const noHeader: Header = { horse: null, owner: null, yard: null, examiner: null, startedAt: null };

export function openExams(
  store: Store,
  journals: Journals,
  sittings: Sittings,
  ear: Ear,
): Pick<Doors, Kept> & { readonly exam: (id: string) => { readonly draft: Draft } } {
  const load = sittings.draft;
  const { change } = sittings;
  const free = async (id: string): Promise<Draft> => {
    if (!(await sittings.letGo(id)))
      throw refuse(409, 'busy', 'This exam is being listened to. Nothing was changed. Finish listening first.');
    return load(id);
  };
  const both = (
    changes: readonly { readonly draft: Draft; readonly events: readonly DraftEvent[]; readonly fresh?: boolean }[],
  ): readonly Draft[] => {
    const after = changes.map(({ draft, events, fresh }) => ({
      exam: draft.id,
      events,
      draft: events.reduce(applyEvent, draft),
      ...(fresh && { fresh }),
    }));
    store.appendAll(after.filter(({ events }) => events.length > 0));
    return after.map(({ draft }) => draft);
  };
  const isDraft = (draft: Draft): Draft => {
    if (draft.state === 'confirmed')
      throw refuse(409, 'not-confirmable', 'A confirmed record is not joined or split. Nothing was changed. Amend it first.');
    return draft;
  };

  return {
    open: (given) => {
      const id = freshId();
      const when = now();
      const header: Header = { ...noHeader, startedAt: when, ...given };
      store.createExam(id, header, header.examiner ?? 'person', when);
      return { id, draft: load(id) };
    },
    exam: (id) => ({ draft: load(id) }),
    act: (id, act, by) =>
      change(id, (draft) => {
        const acted = actOn(draft, act, { by, when: now() });
        if ('error' in acted) throw refusal(409, acted.error.code, acted.error.message);
        return acted.events;
      }),
    confirm: async (id, by) => {
      // Whatever sound is not read yet is read first.
      const { sitting } = await sittings.of(id);
      await sitting.settle();
      return change(id, (draft) => {
        const obstacles = whyNotConfirm(draft);
        const doubts = draft.doubts.filter(({ doubt, settled }) => !settled && doubt.state === 'open').map(({ doubt }) => doubt);
        if (obstacles.length)
          throw refuse(
            409,
            'not-confirmable',
            draft.state === 'confirmed'
              ? 'This record is confirmed already.'
              : `Not confirmed: ${count(doubts.length, 'question')} open, ${count(draft.unread.length, 'stretch', 'stretches')} of sound unread. Nothing was lost. Settle them, then confirm.`,
            { obstacles, doubts, unread: draft.unread },
          );
        return [{ event: 'confirmed', lexicon: lexiconVersion, by, when: now() }];
      });
    },
    amend: (id, reason, by) =>
      change(id, (draft) => {
        if (draft.state !== 'confirmed') throw refuse(409, 'not-confirmable', 'This is a draft still, and can be changed as it is.');
        return [{ event: 'reopened', reason, by, when: now() }];
      }),
    sound: (id, from, to) => {
      if (store.soundErased(id)) throw refusal(410, 'erased', 'The sound of this exam was erased.');
      return journals.view(id, async (journal) => toWav(await journal.read(from * RATE, Math.min(to, from + longest) * RATE)));
    },
    erase: async (id, what) => {
      await free(id);
      for (const { journal } of store.soundElsewhere(id)) await free(journal);
      await (what === 'exam' ? eraseExam : eraseSound)(store, journals, id, now());
    },
    eraseHorse: async (name) => {
      const exams = store.examsOf(name);
      for (const id of exams) for (const exam of [id, ...store.soundElsewhere(id).map(({ journal }) => journal)]) await free(exam);
      for (const id of exams) await eraseExam(store, journals, id, now());
    },
    join: async (id, other, by) => {
      if (id === other) throw refuse(400, 'not-understood', 'An exam cannot be joined to itself.');
      const [into, from] = [isDraft(await free(id)), isDraft(await free(other))];
      const moved = join(into, from, { by, when: now() });
      return both([
        { draft: into, events: moved.into },
        { draft: from, events: moved.from },
      ])[0]!;
    },
    split: async (id, utterance, by) => {
      const draft = isDraft(await free(id));
      const fresh = freshId();
      const moved = split(draft, utterance, fresh, { startedAt: now() }, { by, when: now() });
      if (!moved) throw refusal(404, 'missing', 'That phrase is not in this exam. Nothing was changed.');
      const [left, other] = both([
        { draft, events: moved.from },
        { draft: foldDraft(fresh, []), events: moved.into, fresh: true },
      ]);
      return { draft: left!, other: other! };
    },
    reread: async (id) => {
      await free(id);
      const { sitting } = await sittings.of(id);
      await rehear(sitting.live, ear, journals);
      return load(id);
    },
  };
}
const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
