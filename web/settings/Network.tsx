/** A phone or tablet in the yard: how the next one is let in, and who is in. The code is shown at the machine itself and nowhere else. */
import { useEffect, useState } from 'preact/hooks';
import type { NetworkState } from '../../parser/contract/wire.ts';
import { api, Refused } from '../api.ts';
import { shortDay } from '../when.ts';
import { Square } from './Square.tsx';

/** A code grows old and a device comes in while this is looked at. */
const lookEveryMs = 3000;

export function Network() {
  const [state, setState] = useState<NetworkState | null>(null);
  const [trouble, setTrouble] = useState('');
  const ask = (question: () => Promise<NetworkState>): Promise<void> =>
    question().then(
      (now) => {
        setState(now);
        setTrouble('');
      },
      (error: unknown) => {
        if (!(error instanceof Refused)) throw error;
        setTrouble(error.message);
      },
    );
  useEffect(() => {
    void ask(api.network);
    const look = setInterval(() => {
      if (document.visibilityState === 'visible') void ask(api.network);
    }, lookEveryMs);
    return () => clearInterval(look);
  }, []);
  return (
    <section class="sheet stack network" aria-labelledby="network">
      <h2 id="network">Phone or tablet in the yard</h2>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {state && !state.here && (
        <p>
          This device was let in over the local network. Codes, and the list of who was let in, are shown at the machine on which the
          program runs.
        </p>
      )}
      {state?.here && !state.open && (
        <p>
          The program answers this machine alone. To use a phone or tablet on the same network, stop it and start it with{' '}
          <code>npm start -- --lan</code>. A browser gives its microphone over an encrypted line only; started so, the program has one.
        </p>
      )}
      {state?.open && <LetIn {...state.open} another={() => void ask(api.newCode)} />}
      {state?.here && <Devices devices={state.devices} takeOff={(id) => void ask(() => api.takeOff(id))} />}
    </section>
  );
}

type Open = NonNullable<NetworkState['open']>;
function LetIn({ address, code, until, print, square, another }: Open & { readonly another: () => void }) {
  return (
    <div class="let-in">
      <Square rows={square} label={`Square to point a camera at: ${address} with the code`} />
      <ol>
        <li>
          Point the camera of the phone at the square. Or open <b class="address">{address}</b> there.
        </li>
        <li>
          It warns that it does not know the certificate. Compare its fingerprint, then go on.
          <details>
            <summary>Fingerprint (SHA-256)</summary>
            <code class="print">{print}</code>
          </details>
        </li>
        <li>
          Give this code and a name for the device.
          <p class="code">
            <output aria-label="Code for the next device">
              {code.slice(0, 4)} {code.slice(4)}
            </output>
          </p>
          <p class="row soft small">
            It works once, until {new Date(until).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })}.{' '}
            <button type="button" class="quiet" onClick={another}>
              Another code
            </button>
          </p>
        </li>
      </ol>
    </div>
  );
}

function Devices({ devices, takeOff }: { readonly devices: NetworkState['devices']; readonly takeOff: (id: string) => void }) {
  const [sure, setSure] = useState('');
  if (devices.length === 0) return <p class="soft">No device was let in yet.</p>;
  return (
    <>
      <h3>Let in</h3>
      <ul class="plain devices">
        {devices.map(({ id, name, pairedAt }) => (
          <li key={id} class="row between">
            <span>
              <b>{name}</b> <span class="soft">since {shortDay(pairedAt)}</span>
            </span>
            {sure === id ? (
              <button type="button" class="danger" onClick={() => takeOff(id)}>
                Yes, take {name} off
              </button>
            ) : (
              <button type="button" aria-label={`Take ${name} off the list`} onClick={() => setSure(id)}>
                Take off the list
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}
