/** What was not looked at yet, as a list; "not examined" is one tap away and is never the same as normal. */
import { computed } from '@preact/signals';
import type { Place } from '../../parser/contract/item.ts';
import { hintsLeft, left } from './notLooked.ts';
import { act, busy, confirmed, draft, picked } from './desk.ts';
import { keysOf } from '../mouth/places.ts';

const open = computed(() => left(draft.value?.items ?? []));
const hints = computed(() => hintsLeft(draft.value?.hints ?? [], draft.value?.items ?? []));
/** Puts a place down as not examined: said by a person, with their name and the time. */
export const notExamined = (place: Place): Promise<boolean> =>
  act({ act: 'add', item: { kind: 'not-examined', place } }, 'Put down as not examined.');

export function Left() {
  if (open.value.length === 0) return null;
  return (
    <section class="left" aria-labelledby="left">
      <h2 id="left">Not looked at yet</h2>
      <ul class="plain">
        {hints.value.map(({ id, say, place }) => (
          <li key={id} class="row">
            <button
              type="button"
              class="quiet name"
              onClick={() => {
                picked.value = keysOf(place)[0] ?? null;
              }}
            >
              {say}
            </button>
          </li>
        ))}
        {open.value.map(({ label, detail, place }) => (
          <li key={label} class="row between">
            <button
              type="button"
              class="quiet name"
              onClick={() => {
                picked.value = keysOf(place)[0] ?? null;
              }}
            >
              {label}
              {detail && <span class="soft">{detail}</span>}
            </button>
            {!confirmed.value && (
              <button type="button" disabled={busy.value} aria-label={`${label}: not examined`} onClick={() => void notExamined(place)}>
                Not examined
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
