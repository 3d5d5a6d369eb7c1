import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Draft, DraftItem, Utterance } from '../../parser/contract/draft.ts';
import { keysOf } from '../mouth/places.ts';
import { placeOfItem } from '../mouth/marks.ts';
import { placeWords } from '../mouth/names.ts';
import { itemWords } from '../words.ts';
import { fly } from './fly.ts';

/** The last words, each as it was taken: what became something stands bright, the rest is quieter, what is doubted is underlined. */
export function Words({ utterance }: { readonly utterance: Utterance | undefined }) {
  if (!utterance) return <p class="live-words soft">Say what you see. I write it down.</p>;
  if (utterance.words.length === 0) return <p class="live-words soft">{utterance.text || 'A voice, but no words'}</p>;
  return (
    <p class="live-words">
      {utterance.words.map(({ w, as }, i) => (
        <span key={i} class={as.split(':')[0]}>
          {w}{' '}
        </span>
      ))}
    </p>
  );
}

/** Items that the last phrase, or a command by touch just answered, made, corrected, struck or brought back. */
export const touchedBy = (draft: Draft, utterance: Utterance | undefined, justAnswered: boolean): readonly DraftItem[] => {
  const last = draft.commands.at(-1);
  const commands = draft.commands.filter((c) => (utterance && c.utterance === utterance.id) || (justAnswered && c === last));
  const targets = new Set(commands.flatMap((c) => c.targets ?? []));
  return draft.items.filter(
    ({ item, state }) => (utterance && item.evidence.utterance === utterance.id && state !== 'revised') || targets.has(item.id),
  );
};

/** What the last words became. */
export function Became({ items }: { readonly items: readonly DraftItem[] }) {
  return (
    <ul class="live-became plain">
      {items.map((i) => (
        <One key={`${i.item.id} ${i.state}`} {...i} />
      ))}
    </ul>
  );
}

function One({ item, state }: DraftItem) {
  const line = useRef<HTMLLIElement>(null);
  const place = placeOfItem(item);
  const { title, more } = itemWords(item);
  useLayoutEffect(() => {
    if (line.current && state !== 'struck') fly(line.current, keysOf(placeOfItem(item)).slice(0, 12));
  }, []);
  return (
    <li ref={line} class={state}>
      {place && <b>{placeWords(place)}</b>} <span>{title}</span>
      {more.length > 0 && <span class="more"> {more.join(', ')}</span>}
      {state === 'struck' && <em> Struck</em>}
    </li>
  );
}

/** What came before, newest first: where there is room to spare. */
export function Earlier({ items }: { readonly items: readonly DraftItem[] }) {
  if (items.length === 0) return null;
  return (
    <section class="live-earlier" aria-label="Before that">
      <ol class="plain" reversed>
        {items.map(({ item }) => {
          const place = placeOfItem(item);
          const { title, more } = itemWords(item);
          return (
            <li key={item.id}>
              {place && <b>{placeWords(place)}</b>} {[title, ...more].join(', ')}
            </li>
          );
        })}
      </ol>
    </section>
  );
}
