/** At the very foot: the printable pages, joining, hearing again, the keys. */
import { useRef } from 'preact/hooks';
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { momentWords } from '../when.ts';
import { busy, confirmed, draft, joinWith, reread } from './desk.ts';
import { keyTable } from './keys.ts';

export function Foot() {
  const keys = useRef<HTMLDialogElement>(null);
  const d = draft.value!;
  return (
    <footer class="foot">
      <div class="row">
        <a class="button" href={api.ownerPage(d.id)} target="_blank" rel="noreferrer">
          Page for the owner
        </a>
        <a class="button" href={api.vetPage(d.id)} target="_blank" rel="noreferrer">
          Letter to the veterinarian
        </a>
        {!confirmed.value && <span class="small soft">Both say “draft” until you confirm.</span>}
      </div>
      <div class="row rest">
        <a class="button quiet" href={api.exportOf(d.id)} download>
          Export
        </a>
        {!confirmed.value && <JoinWith />}
        {!confirmed.value && d.utterances.length > 0 && (
          <button type="button" class="quiet" disabled={busy.value} onClick={() => void reread()}>
            Hear it all again
          </button>
        )}
        <button type="button" class="quiet" id="keys" onClick={() => keys.current?.showModal()}>
          Keys
        </button>
      </div>
      <dialog ref={keys} aria-labelledby="keys-title">
        <h2 id="keys-title">Keys</h2>
        <dl class="keys">
          {keyTable.map((k) => (
            <div key={k.does}>
              <dt>{k.shown}</dt>
              <dd>{k.does}</dd>
            </div>
          ))}
        </dl>
        <form method="dialog">
          <button class="main">Close</button>
        </form>
      </dialog>
    </footer>
  );
}

/** One horse that was taken for two: what another draft heard comes here. */
function JoinWith() {
  const dialog = useRef<HTMLDialogElement>(null);
  const { value, trouble, again } = useFetched(api.exams);
  const others = (value ?? []).filter((row) => row.state === 'draft' && !row.erased && row.id !== draft.value?.id);
  return (
    <>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          again();
          dialog.current?.showModal();
        }}
      >
        Join with another draft
      </button>
      <dialog ref={dialog} aria-labelledby="join-title">
        <h2 id="join-title">Join with another draft</h2>
        <p class="soft">
          All that the other draft heard, with its items and questions, comes to this one. Nothing is lost, and it can be split again.
        </p>
        {trouble && (
          <p class="trouble" role="alert">
            {trouble}
          </p>
        )}
        {value && others.length === 0 && <p>There is no other draft.</p>}
        <ul class="plain stack">
          {others.map((row) => (
            <li key={row.id}>
              <button
                type="button"
                disabled={busy.value}
                onClick={() =>
                  void joinWith(row.id).then((done) => {
                    if (done) dialog.current?.close();
                  })
                }
              >
                {row.horse ?? 'No name yet'}, {row.startedAt ? momentWords(row.startedAt) : 'no date'}, {row.items}{' '}
                {row.items === 1 ? 'item' : 'items'}
              </button>
            </li>
          ))}
        </ul>
        <form method="dialog">
          <button class="quiet">Leave it</button>
        </form>
      </dialog>
    </>
  );
}
