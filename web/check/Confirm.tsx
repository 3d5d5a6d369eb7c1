/** The last step, always in reach: keep all that is sure, then confirm. A confirmed record is amended with a reason. */
import { useRef, useState } from 'preact/hooks';
import { api, Refused } from '../api.ts';
import { person } from '../person.ts';
import { at, busy, cautions, confirmed, draft, keepSure, questions, said, sure } from './desk.ts';

const seconds = (spans: readonly (readonly [number, number])[]): number => Math.round(spans.reduce((sum, [a, b]) => sum + b - a, 0));

export function Confirm() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [reason, setReason] = useState('');
  const [refused, setRefused] = useState<string | null>(null);
  const d = draft.value!;
  const asks = questions.value.length;
  const unread = seconds(d.unread);
  const empty = d.items.every((i) => i.state === 'struck' || i.state === 'revised');
  const blocked = asks > 0 || unread > 0 || empty;
  const whyNot = [
    asks ? `${asks} ${asks === 1 ? 'question is' : 'questions are'} still open` : '',
    unread ? `${unread} s of sound are not read yet` : '',
    empty && !asks && !unread ? 'Nothing stands in this draft yet' : '',
  ]
    .filter(Boolean)
    .join(', and ');
  const open = (): void => {
    setRefused(null);
    dialog.current?.showModal();
  };

  async function finish(event: Event): Promise<void> {
    event.preventDefault();
    busy.value = true;
    try {
      const answer = confirmed.value
        ? await api.amend(d.id, reason.trim(), person.value.trim())
        : await api.confirm(d.id, person.value.trim());
      draft.value = answer.draft ?? (await api.exam(d.id)).draft;
      said.value = draft.value.state === 'confirmed' ? 'Confirmed. The record is kept.' : 'Opened again. The record before stays as it is.';
      dialog.current?.close();
      setReason('');
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      setRefused(error.message);
      draft.value = (await api.exam(d.id)).draft;
    } finally {
      busy.value = false;
    }
  }
  const toFirst = (): void => {
    const first = questions.value[0];
    if (first) {
      at.value = first.doubt.id;
      const line = document.getElementById(`line-${first.doubt.id}`);
      line?.scrollIntoView({ block: 'center' });
      line?.focus();
    }
  };
  return (
    <div class="bar" role="region" aria-label="Keep and confirm">
      <p class="said-now small" role="status">
        {said.value}
      </p>
      {confirmed.value ? (
        <button type="button" onClick={open}>
          Amend, with a reason
        </button>
      ) : (
        <>
          {sure.value.length > 0 && (
            <button type="button" class="keep" disabled={busy.value} onClick={() => void keepSure()}>
              Keep all that is sure <span class="n">{sure.value.length}</span>
            </button>
          )}
          {asks > 0 && (
            <button type="button" class="asks" onClick={toFirst}>
              {asks} {asks === 1 ? 'question' : 'questions'}
            </button>
          )}
          <button
            type="button"
            id="confirm"
            class="main"
            aria-describedby={blocked ? 'why-not' : undefined}
            onClick={blocked ? toFirst : open}
            aria-disabled={blocked}
          >
            Confirm this record
          </button>
          {blocked && (
            <span id="why-not" class="small look">
              {whyNot}
            </span>
          )}
        </>
      )}
      <dialog ref={dialog} aria-labelledby="confirm-title">
        <form class="stack" onSubmit={(e) => void finish(e)}>
          <h2 id="confirm-title">
            {confirmed.value ? 'Amend this record' : `Confirm the record of ${d.header.horse?.name ?? 'this horse'}`}
          </h2>
          {confirmed.value ? (
            <>
              <p>The record as it was confirmed stays readable. Your change becomes a new revision, with your reason beside it.</p>
              <label class="field">
                <span class="label">Changed since, because</span>
                <input required maxLength={300} value={reason} onInput={(e) => setReason(e.currentTarget.value)} />
              </label>
            </>
          ) : (
            <p>
              {d.items.filter((i) => i.state === 'open' || i.state === 'kept').length} items become the record. It can be amended later,
              never overwritten.
            </p>
          )}
          {!confirmed.value && cautions.value.length > 0 && (
            <p class="small soft">
              {cautions.value.length} {cautions.value.length === 1 ? 'caution stands' : 'cautions stand'} with this exam; they stop nothing.
            </p>
          )}
          <label class="field">
            <span class="label">Your name</span>
            <input
              required
              maxLength={100}
              autocomplete="name"
              value={person.value}
              onInput={(e) => {
                person.value = e.currentTarget.value;
              }}
            />
          </label>
          {refused && (
            <p class="trouble" role="alert">
              {refused}
            </p>
          )}
          <div class="row">
            <button type="submit" class="main" disabled={busy.value}>
              {confirmed.value ? 'Open it again' : 'Confirm'}
            </button>
            <button type="button" class="quiet" onClick={() => dialog.current?.close()}>
              Not yet
            </button>
          </div>
        </form>
      </dialog>
    </div>
  );
}
