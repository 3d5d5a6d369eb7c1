/** Settings of this device: how the page looks and sounds, who is looking over; and which other devices may come in. */
import { mood, type Mood } from '../mood.ts';
import { person } from '../person.ts';
import { readBackOn, tonesOn, voiceOn } from '../voice/choices.ts';
import { Network } from './Network.tsx';
import './settings.css';

const moods: readonly (readonly [Mood | null, string])[] = [
  [null, 'As this device has it'],
  ['paper', 'Paper'],
  ['night', 'Night'],
];

export function Settings() {
  return (
    <main class="paper" id="main" tabIndex={-1}>
      <h1>Settings</h1>
      <div class="settings">
        <div class="stack">
          <fieldset class="sheet">
            <legend>How the page looks</legend>
            <div class="row">
              {moods.map(([id, label]) => (
                <button
                  key={label}
                  type="button"
                  aria-pressed={mood.value === id}
                  onClick={() => {
                    mood.value = id;
                  }}
                >
                  {label}
                </button>
              ))}
            </div>
          </fieldset>
          <fieldset class="sheet">
            <legend>What may sound while listening</legend>
            <div class="row">
              {(
                [
                  [tonesOn, 'The four tones'],
                  [voiceOn, 'Answers aloud'],
                  [readBackOn, 'Each item read back'],
                ] as const
              ).map(([choice, label]) => (
                <button
                  key={label}
                  type="button"
                  aria-pressed={choice.value}
                  onClick={() => {
                    choice.value = !choice.value;
                  }}
                >
                  {label}
                </button>
              ))}
            </div>
          </fieldset>
          <label class="sheet stack">
            <span class="label">Your name, under records that you confirm</span>
            <input
              value={person.value}
              autocomplete="name"
              maxLength={100}
              onInput={(e) => {
                person.value = e.currentTarget.value;
              }}
            />
          </label>
        </div>
        <Network />
      </div>
    </main>
  );
}
