/** What cannot be undone is asked twice: in words, and by typing the name. */
import { useRef, useState } from 'preact/hooks';
import { Refused } from '../api.ts';

export function Erase({
  title,
  words,
  name,
  run,
  done,
}: {
  title: string;
  words: string;
  name: string;
  run: () => Promise<unknown>;
  done: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [typed, setTyped] = useState('');
  const [trouble, setTrouble] = useState<string | null>(null);
  async function erase(event: Event): Promise<void> {
    event.preventDefault();
    try {
      await run();
      dialog.current?.close();
      done();
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      setTrouble(error.message);
    }
  }
  return (
    <>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          setTyped('');
          setTrouble(null);
          dialog.current?.showModal();
        }}
      >
        {title}
      </button>
      <dialog ref={dialog} aria-label={title}>
        <form class="stack" onSubmit={(e) => void erase(e)}>
          <h2>{title}</h2>
          <p>{words}</p>
          <label class="field">
            <span class="label">Type {name} to go on</span>
            <input value={typed} autocomplete="off" onInput={(e) => setTyped(e.currentTarget.value)} />
          </label>
          {trouble && (
            <p class="trouble" role="alert">
              {trouble}
            </p>
          )}
          <div class="row">
            <button type="submit" class="danger" disabled={typed.trim() !== name}>
              {title}
            </button>
            <button type="button" class="quiet" onClick={() => dialog.current?.close()}>
              Leave it
            </button>
          </div>
        </form>
      </dialog>
    </>
  );
}
