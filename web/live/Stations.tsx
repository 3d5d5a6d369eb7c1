import type { DraftItem } from '../../parser/contract/draft.ts';
import { coverage, type Station } from './covered.ts';

const words: Readonly<Record<Station['state'], string>> = {
  seen: 'spoken of',
  half: 'one side spoken of',
  'not-examined': 'not examined',
  open: 'not looked at yet',
};

/** The places that are no teeth: filled once spoken of, empty until then, so that what was left out is seen at a glance. */
export function Stations({ items }: { readonly items: readonly DraftItem[] }) {
  return (
    <ul class="live-stations plain" aria-label="Outside and soft parts">
      {coverage(items).map(({ label, state, left }) => (
        <li key={label} class={state}>
          {label}
          {left && <span class="other"> {left} not yet</span>}
          <span class="out-of-sight">: {words[state]}</span>
        </li>
      ))}
    </ul>
  );
}
