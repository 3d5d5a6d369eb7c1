/** Listening: read in half a second from three metres, touched with wet gloves or not at all. */
import { useEffect, useState } from 'preact/hooks';
import { Mouth } from '../mouth/Mouth.tsx';
import { keysOf } from '../mouth/places.ts';
import { placeOfItem } from '../mouth/marks.ts';
import { where } from '../router.ts';
import { askedNow } from '../fold.ts';
import { draft, openDoubts, standing } from '../state.ts';
import { Ask } from './Ask.tsx';
import { Bar } from './Bar.tsx';
import { elapsed, gettingReady, headline, microphoneAdvice } from './headline.ts';
import { LevelBar } from './Level.tsx';
import { sunlight } from './light.ts';
import { Ready } from './Ready.tsx';
import { Became, Earlier, touchedBy, Words } from './Said.tsx';
import { answer, device, hearing, joined, kept, leave, level, microphone, phase, running, sendLeftovers, trouble } from './sitting.ts';
import { Stations } from './Stations.tsx';
import './live.css';

export function Live() {
  useEffect(() => {
    void sendLeftovers();
    return () => void leave();
  }, []);
  const now = draft.value;
  const paused = now?.paused ?? false;
  const { word, mood } = headline({ phase: phase.value, microphone: microphone.value, hearing: hearing.value, paused });
  const last = now?.utterances.at(-1);
  const touched = now ? touchedBy(now, last, answer.value !== null) : [];
  const doubt = askedNow(openDoubts.value)?.doubt;
  const keys = [...touched.filter((i) => i.state !== 'struck').flatMap((i) => keysOf(placeOfItem(i.item))), ...keysOf(doubt?.place)];
  return (
    <main class={`live ${mood}${running.value ? ' running' : ''}`} data-mood={sunlight.value ? 'paper' : 'night'} id="main" tabIndex={-1}>
      <Top />
      <div class="live-mouth">
        <Mouth draft={now} now={running.value ? keys : []} label="The mouth so far, facing the horse" />
      </div>
      <Stations items={standing.value} />
      <section class="live-say">
        <h1 class="live-state" aria-live="polite">
          {word}
        </h1>
        {running.value && <LiveLevel />}
        {running.value && device.value && <p class="live-device">{device.value}</p>}
        <Notes />
        {phase.value === 'ready' && <Ready exam={where.value.rest[0] ?? null} />}
        {running.value && (
          <>
            <div class="live-heard">
              <Words utterance={last} />
              <Became items={touched} />
            </div>
            {answer.value && (
              <p class="live-answer" role="status">
                {answer.value.say}
              </p>
            )}
            {now && doubt && (
              <Ask key={doubt.id} exam={now.id} doubt={doubt} justSaid={doubt.utterance === last?.id} more={openDoubts.value.length - 1} />
            )}
            <Earlier
              items={standing.value
                .filter((i) => !touched.includes(i))
                .slice(-5)
                .reverse()}
            />
          </>
        )}
      </section>
      {phase.value === 'live' && <Bar paused={paused} horse={now?.header.horse?.name ?? ''} />}
    </main>
  );
}

/** On its own, because it moves twenty times a second and the rest of the page must not. */
const LiveLevel = () => <LevelBar level={level.value} />;

/** Eight short rays around a disc. */
const rays = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4)
  .map(
    (a) =>
      `M${(7.4 * Math.cos(a)).toFixed(2)} ${(7.4 * Math.sin(a)).toFixed(2)}L${(10.4 * Math.cos(a)).toFixed(2)} ${(10.4 * Math.sin(a)).toFixed(2)}`,
  )
  .join('');

/** Whose mouth, how long, and by what light. */
function Top() {
  const startedAt = draft.value?.header.startedAt;
  return (
    <div class="live-top">
      {running.value && (
        <span class="whose">
          <b>{draft.value?.header.horse?.name ?? 'No name yet'}</b>
          {startedAt && <Clock since={Date.parse(startedAt)} />}
        </span>
      )}
      <button
        type="button"
        class="sun"
        aria-pressed={sunlight.value}
        aria-label="Sunlight"
        title="Sunlight"
        onClick={() => {
          sunlight.value = !sunlight.value;
        }}
      >
        <svg viewBox="-12 -12 24 24" width="28" height="28" aria-hidden="true">
          <circle r="4.6" />
          <path d={rays} />
        </svg>
      </button>
    </div>
  );
}

function Clock({ since }: { readonly since: number }) {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    const tick = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(tick);
  }, []);
  return (
    <span role="timer" aria-label="Time so far">
      {elapsed(now - since)}
    </span>
  );
}

/** What is wrong, what is safe, what to do. */
function Notes() {
  const advice = phase.value === 'live' ? microphoneAdvice[microphone.value] : null;
  const seconds = Math.ceil(kept.value / 4);
  const waits = kept.value > 8 || (running.value && !joined.value);
  return (
    <div class="live-notes" role="status">
      {advice && <p>{advice}</p>}
      {phase.value === 'live' && hearing.value === 'getting-ready' && <p>{gettingReady}</p>}
      {waits && (
        <p>
          {joined.value ? 'Catching up' : 'The line is down'}: {seconds === 1 ? 'one second' : `${seconds} seconds`} of sound kept here,
          will be sent.
        </p>
      )}
      {trouble.value && <p role="alert">{trouble.value.message}</p>}
    </div>
  );
}
