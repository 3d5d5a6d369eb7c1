/** One item as a line; open, it shows its words, its sound and what can be done. */
import { memo } from 'preact/compat';
import { useComputed } from '@preact/signals';
import type { DraftItem } from '../../parser/contract/draft.ts';
import { lookOf, placeOfItem } from '../mouth/marks.ts';
import { Sign } from '../mouth/MarkSign.tsx';
import { placeWords } from '../mouth/names.ts';
import { itemWords } from '../words.ts';
import { at, busy, confirmed, editing, isDoubted, keep, opened, restore, soundOf, strike } from './desk.ts';
import { Edit } from './Edit.tsx';
import { Play, Said } from './Said.tsx';

const stateWords = { open: '', kept: 'Kept', struck: 'Struck', revised: 'Replaced' } as const;
const placed = (entry: DraftItem): string => {
  const place = placeOfItem(entry.item);
  if (place) return placeWords(place);
  return entry.item.kind === 'finding' || entry.item.kind === 'not-examined' ? 'Whole mouth' : '';
};

export const Line = memo(
  function Line({ entry }: { entry: DraftItem }) {
    const { item, state } = entry;
    const isAt = useComputed(() => at.value === item.id);
    const isOpen = useComputed(() => opened.value === item.id);
    const isEdited = useComputed(() => editing.value === item.id);
    const asked = useComputed(() => isDoubted(item.id));
    const look = lookOf(item);
    const { title, more } = itemWords(item);
    const place = placed(entry);
    return (
      <li class={`line is-${state}${isAt.value ? ' at' : ''}${isOpen.value ? ' unfolded' : ''}`}>
        <button
          type="button"
          class="head"
          id={`line-${item.id}`}
          aria-expanded={isOpen.value}
          onFocus={() => {
            at.value = item.id;
          }}
          onClick={() => {
            opened.value = isOpen.value ? null : item.id;
          }}
        >
          <svg class="look" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
            {/* Struck: nothing is there any more, also for who sees no line through words. */}
            {look && state !== 'struck' && (
              <g class="sign">
                <Sign look={look} x={10} y={10} r={7} />
              </g>
            )}
          </svg>
          <span class="place">{place}</span>
          <span class="what">
            <strong>{title}</strong>
            {more.length > 0 && <span class="more"> {more.join(', ')}</span>}
          </span>
          <span class="state">
            {asked.value ? (
              <span class="tag-look">Question</span>
            ) : item.how && Object.values(item.how).includes('typed') ? (
              <span class="soft">Typed</span>
            ) : null}{' '}
            {stateWords[state] && (
              <span class={state === 'kept' ? 'kept' : 'soft'}>
                {state === 'kept' && <span aria-hidden="true">✓ </span>}
                {stateWords[state]}
              </span>
            )}
          </span>
        </button>
        {isOpen.value && (
          <div class="body stack">
            <Said item={item} second={entry.second} />
            {isEdited.value ? (
              <Edit item={item} />
            ) : (
              <div class="row">
                <Play sound={soundOf(item.evidence.utterance, item.evidence.at)} />
                {!confirmed.value && state === 'open' && (
                  <button type="button" class="keep" disabled={busy.value} onClick={() => void keep(item.id)}>
                    Keep
                  </button>
                )}
                {!confirmed.value && state !== 'struck' && (
                  <button
                    type="button"
                    disabled={busy.value}
                    onClick={() => {
                      editing.value = item.id;
                    }}
                  >
                    Change
                  </button>
                )}
                {!confirmed.value && state !== 'struck' && (
                  <button type="button" disabled={busy.value} onClick={() => void strike(item.id)}>
                    Strike
                  </button>
                )}
                {!confirmed.value && state === 'struck' && (
                  <button type="button" disabled={busy.value} onClick={() => void restore([item.id])}>
                    Bring back
                  </button>
                )}
              </div>
            )}
          </div>
        )}
      </li>
    );
  },
  (a, b) => a.entry === b.entry || JSON.stringify(a.entry) === JSON.stringify(b.entry),
);
