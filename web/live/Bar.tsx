import { useRef } from 'preact/hooks';
import { command, finish } from './sitting.ts';

/** The few things a wet glove may need: each large, and what takes leave asks once. */
export function Bar({ paused, horse }: { readonly paused: boolean; readonly horse: string }) {
  const next = useRef<HTMLDialogElement>(null);
  const end = useRef<HTMLDialogElement>(null);
  const name = useRef<HTMLInputElement>(null);
  return (
    <nav class="live-bar" aria-label="By touch">
      <button type="button" class="main" onClick={() => command(paused ? 'resume' : 'pause')}>
        {paused ? 'Carry on' : 'Pause'}
      </button>
      <button type="button" onClick={() => command('strike-last')}>
        Strike last
      </button>
      <button type="button" onClick={() => command('bring-back')}>
        Bring back
      </button>
      <button type="button" onClick={() => next.current?.showModal()}>
        Next horse
      </button>
      <button type="button" onClick={() => end.current?.showModal()}>
        Finish
      </button>
      <dialog ref={next} aria-labelledby="next-horse">
        <form method="dialog" class="stack" onSubmit={() => command('next-horse', name.current?.value.trim())}>
          <h2 id="next-horse">Next horse</h2>
          <p>{horse || 'This horse'} stays a draft, to be looked over later.</p>
          <label>
            Its name, if you like
            <input ref={name} autocomplete="off" maxLength={100} />
          </label>
          <div class="row">
            <button type="submit" class="main">
              Next horse
            </button>
            <button type="button" onClick={() => next.current?.close()}>
              Stay with {horse || 'this one'}
            </button>
          </div>
        </form>
      </dialog>
      <dialog ref={end} aria-labelledby="finish">
        <form method="dialog" class="stack" onSubmit={() => void finish()}>
          <h2 id="finish">Finish {horse || 'this exam'}?</h2>
          <p>I stop listening and read what is left. You look it over; nothing is a record until you confirm it.</p>
          <div class="row">
            <button type="submit" class="main">
              Finish
            </button>
            <button type="button" onClick={() => end.current?.close()}>
              Keep listening
            </button>
          </div>
        </form>
      </dialog>
    </nav>
  );
}
