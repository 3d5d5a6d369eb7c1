/** Every phrase, also the talk that became nothing, and every gap; from any of them another horse may begin. */
import { useState } from 'preact/hooks';
import { go } from '../router.ts';
import { busy, confirmed, draft, soundOf, splitAt } from './desk.ts';
import { Phrase, Play } from './Said.tsx';

export function AllSaid() {
  const [open, setOpen] = useState(false);
  const d = draft.value!;
  const rows = [...d.utterances.map((u) => ({ at: u.at?.[0] ?? 0, u })), ...d.gaps.map((g) => ({ at: g.at[0], g }))].sort(
    (a, b) => a.at - b.at,
  );
  const gapWords: Readonly<Record<string, string>> = {
    pause: 'Paused',
    lost: 'Sound lost',
    microphone: 'The microphone was away',
    erased: 'Sound erased',
  };
  return (
    <details class="all-said" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>All that was said ({d.utterances.length})</summary>
      {open && (
        <ol class="plain">
          {rows.map((row, i) =>
            'u' in row ? (
              <li key={row.u.id}>
                <Play sound={soundOf(row.u.id)} />
                <span>
                  {row.u.words.length ? <Phrase said={row.u} /> : <em class="soft">Speech without words</em>}
                  {row.u.words.every((w) => w.as === 'leftover' || w.as === 'filler') && (
                    <span class="soft small"> talk, kept with the exam, not part of the record</span>
                  )}
                </span>
                {i > 0 && !confirmed.value && <SplitHere phrase={row.u.id} />}
              </li>
            ) : (
              <li key={`gap-${row.at}`} class="soft">
                <em>
                  {gapWords[row.g.why] ?? row.g.why}, {Math.round(row.g.at[1] - row.g.at[0])} s
                </em>
              </li>
            ),
          )}
        </ol>
      )}
    </details>
  );
}
/** Another horse was begun without saying so: from here on it is a draft of its own. */
function SplitHere({ phrase }: { phrase: string }) {
  const [sure, setSure] = useState(false);
  if (!sure)
    return (
      <button type="button" class="quiet small split" onClick={() => setSure(true)}>
        Another horse from here
      </button>
    );
  return (
    <button
      type="button"
      class="small split"
      disabled={busy.value}
      onClick={() =>
        void splitAt(phrase).then((id) => {
          if (id) go('check', id);
        })
      }
    >
      Yes, split here
    </button>
  );
}
