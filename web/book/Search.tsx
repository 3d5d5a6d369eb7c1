/** Words and places, found in what was said and in what it became; a hit plays its moment. */
import type { SearchHit } from '../../parser/contract/wire.ts';
import { permanentTeeth, deciduousTeeth, supernumeraryTeeth } from '../../parser/lexicon/teeth.ts';
import { api } from '../api.ts';
import { conditionOptions } from '../check/fields.ts';
import { useFetched } from '../fetched.ts';
import { presenceLabels } from '../labels.ts';
import { link } from '../router.ts';
import { play, playing, soundTrouble } from '../sound.ts';
import { told } from '../told.ts';
import { dayWords } from '../when.ts';

const names = ['words', 'condition', 'presence', 'tooth', 'horse', 'from', 'to'] as const;

export function Search({ query }: { query: URLSearchParams }) {
  const of = (name: (typeof names)[number]): string => query.get(name) ?? '';
  function submit(event: Event): void {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const asked = new URLSearchParams(
      names.flatMap((name) => {
        const value = String(form.get(name) ?? '').trim();
        return value ? [[name, value]] : [];
      }),
    );
    location.hash = `#/book${asked.size ? `?${asked}` : ''}`;
  }
  const narrowed = names.slice(1).some((name) => of(name));
  return (
    <search>
      <form class="search" onSubmit={submit} key={query.toString()}>
        <div class="row first">
          <input
            type="search"
            name="words"
            aria-label="Words that were said"
            placeholder="Words that were said"
            maxLength={200}
            defaultValue={of('words')}
          />
          <button type="submit" class="main">
            Find
          </button>
          {query.size > 0 && (
            <a class="button quiet" href={link('book')}>
              Back to the book
            </a>
          )}
        </div>
        <details open={narrowed}>
          <summary>By finding, tooth, horse or time</summary>
          <div class="row narrow">
            <label class="field">
              <span class="label">Finding</span>
              <select name="condition">
                <option value="">Any</option>
                {[...new Set(conditionOptions.map((o) => o.group))].map((group) => (
                  <optgroup key={group} label={group ?? ''}>
                    {conditionOptions
                      .filter((o) => o.group === group)
                      .map((o) => (
                        <option key={o.value} value={o.value} selected={o.value === of('condition')}>
                          {o.label}
                        </option>
                      ))}
                  </optgroup>
                ))}
              </select>
            </label>
            <label class="field">
              <span class="label">Found, or not</span>
              <select name="presence">
                <option value="">Either</option>
                {Object.entries(presenceLabels).map(([id, label]) => (
                  <option key={id} value={id} selected={id === of('presence')}>
                    {label}
                  </option>
                ))}
              </select>
            </label>
            <label class="field">
              <span class="label">Tooth</span>
              <select name="tooth">
                <option value="">Any</option>
                {[...permanentTeeth, ...supernumeraryTeeth, ...deciduousTeeth].map((tooth) => (
                  <option key={tooth} selected={tooth === of('tooth')}>
                    {tooth}
                  </option>
                ))}
              </select>
            </label>
            <label class="field">
              <span class="label">Horse</span>
              <input name="horse" maxLength={100} defaultValue={of('horse')} />
            </label>
            <label class="field">
              <span class="label">From</span>
              <input type="date" name="from" defaultValue={of('from')} />
            </label>
            <label class="field">
              <span class="label">To</span>
              <input type="date" name="to" defaultValue={of('to')} />
            </label>
          </div>
        </details>
      </form>
      {query.size > 0 && <Hits query={query} />}
    </search>
  );
}
function Hits({ query }: { query: URLSearchParams }) {
  const { value: hits, trouble } = useFetched(() => api.search(Object.fromEntries(query)), [query.toString()]);
  if (trouble)
    return (
      <p class="trouble" role="alert">
        {trouble}
      </p>
    );
  if (!hits) return <p class="soft">Looking</p>;
  return (
    <section aria-live="polite">
      <h2>{hits.length === 0 ? 'Nothing found' : hits.length === 1 ? 'One place' : `${hits.length} places`}</h2>
      {soundTrouble.value && (
        <p class="trouble" role="status">
          {soundTrouble.value}
        </p>
      )}
      <ol class="plain hits">
        {hits.map((hit, i) => (
          <Hit key={`${hit.exam}-${hit.item?.id ?? hit.utterance}-${i}`} hit={hit} />
        ))}
      </ol>
    </section>
  );
}
function Hit({ hit }: { hit: SearchHit }) {
  const sound = hit.at && hit.audio ? api.soundAt(hit.sound ?? hit.exam, Math.max(0, hit.at[0] - 0.3), hit.at[1] + 0.4) : null;
  return (
    <li>
      {sound ? (
        <button type="button" aria-pressed={playing.value === sound} aria-label="Play the sound of these words" onClick={() => play(sound)}>
          <span aria-hidden="true">{playing.value === sound ? '■' : '▶'}</span>
        </button>
      ) : (
        <span class="no-sound soft small">no sound</span>
      )}
      <a href={link('check', hit.exam)}>
        <span>
          <strong>{hit.item ? told(hit.item) : hit.text}</strong>
        </span>
        {hit.item && hit.text && <q class="phrase">{hit.text}</q>}
        <span class="soft small">{[hit.horse ?? 'No name', dayWords(hit.startedAt)].join(', ')}</span>
      </a>
    </li>
  );
}
