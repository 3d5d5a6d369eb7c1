import { signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { noSilence, listenFor, isSilent } from '../capture/health.ts';
import { microphones, openMicrophone, type Device, type Microphone } from '../capture/microphone.ts';
import type { Level } from '../capture/pcm.ts';
import { refusal } from '../capture/refusal.ts';
import { draft } from '../state.ts';
import { readBackOn, tonesOn, voiceOn } from '../voice/choices.ts';
import { levelAdvice } from './headline.ts';
import { LevelBar } from './Level.tsx';
import { Sayings } from './Sayings.tsx';
import { interrupted, start, trouble } from './sitting.ts';

const key = 'quidnote.microphone';
const devices = signal<readonly Device[]>([]);
const chosen = signal(localStorage.getItem(key) ?? '');
const horse = signal('');
/** The trial: a level, and the loudest of the last few seconds. */
const trial = signal<{ readonly level: Level; readonly peak: number; readonly silent: boolean } | null>(null);

const choices = [
  [tonesOn, 'Short tones'],
  [voiceOn, 'Answers read aloud'],
  [readBackOn, 'Every item read back'],
] as const;
const listDevices = async (): Promise<void> => {
  if (navigator.mediaDevices) devices.value = await microphones();
};
const choose = (id: string): void => {
  chosen.value = id;
  localStorage.setItem(key, id);
};

/** Before the one tap: which horse, which microphone, and whether it hears. */
export function Ready({ exam }: { readonly exam: string | null }) {
  const stopTrial = useTrial();
  const goesOn = exam ?? interrupted.value;
  const begin = async (joins: string | null): Promise<void> => {
    await stopTrial();
    await start({ exam: joins, horse: joins ? '' : horse.value.trim(), deviceId: chosen.value || undefined });
    await listDevices();
  };
  useEffect(() => {
    void listDevices();
  }, []);
  const name = draft.value?.id === goesOn ? draft.value?.header.horse?.name : undefined;
  return (
    <div class="live-ready">
      {goesOn ? (
        <div class="begin">
          <button type="button" class="main start" onClick={() => void begin(goesOn)}>
            Carry on{name ? ` with ${name}` : ''}
          </button>
          <button type="button" onClick={() => void begin(null)}>
            Start another horse
          </button>
        </div>
      ) : (
        <>
          <label class="horse">
            Which horse? It can wait
            <input
              value={horse.value}
              maxLength={100}
              autocomplete="off"
              onInput={(e) => {
                horse.value = e.currentTarget.value;
              }}
            />
          </label>
          <button type="button" class="main start" onClick={() => void begin(null)}>
            Start listening
          </button>
        </>
      )}
      <div class="microphone">
        <label>
          Microphone
          <select value={chosen.value} onChange={(e) => choose(e.currentTarget.value)}>
            <option value="">The usual one</option>
            {devices.value
              .filter((d) => d.id && d.id !== 'default')
              .map((d) => (
                <option key={d.id} value={d.id}>
                  {d.label}
                </option>
              ))}
          </select>
        </label>
        <Trial toggle={() => (trial.value ? stopTrial() : stopTrial.begin())} />
      </div>
      <fieldset class="row">
        <legend>What may sound</legend>
        {choices.map(([choice, label]) => (
          <label key={label} class="tick">
            <input
              type="checkbox"
              checked={choice.value}
              onChange={(e) => {
                choice.value = e.currentTarget.checked;
              }}
            />
            {label}
          </label>
        ))}
      </fieldset>
      <Sayings />
    </div>
  );
}

function Trial({ toggle }: { readonly toggle: () => Promise<void> }) {
  const now = trial.value;
  const advice = now && (now.silent ? { say: 'It gives no sound: see its switch and its plug', good: false } : levelAdvice(now.peak));
  return (
    <div class="trial">
      <button type="button" aria-pressed={now !== null} onClick={() => void toggle()}>
        {now ? 'Enough' : 'Try the microphone'}
      </button>
      {now && <LevelBar level={now.level} />}
      {advice && (
        <p role="status" class={advice.good ? '' : 'look'}>
          {advice.say}
        </p>
      )}
    </div>
  );
}

/** Opens the microphone for its level alone: nothing is kept and nothing is sent. */
function useTrial() {
  const opened = useRef<{ readonly context: AudioContext; readonly microphone: Microphone } | null>(null);
  const stop = async (): Promise<void> => {
    const was = opened.current;
    opened.current = null;
    trial.value = null;
    await was?.microphone.close();
    await was?.context.close();
  };
  const begin = async (): Promise<void> => {
    const context = new AudioContext();
    let silence = noSilence;
    try {
      const microphone = await openMicrophone(context, chosen.value || undefined, {
        opened: () => undefined,
        sound: () => undefined,
        state: () => undefined,
        level: (level) => {
          silence = listenFor(silence, level, 0.05);
          if (opened.current)
            trial.value = { level, peak: Math.max(level.peak, (trial.value?.peak ?? -Infinity) - 0.6), silent: isSilent(silence) };
        },
      });
      opened.current = { context, microphone };
      trouble.value = null;
      await listDevices();
    } catch (error) {
      trouble.value = refusal(error);
      await context.close();
    }
  };
  useEffect(() => () => void stop(), []);
  return Object.assign(stop, { begin });
}
