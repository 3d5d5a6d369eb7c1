/** Beside the items, quiet: cautions with their source, and earlier revisions. */
import { useState } from 'preact/hooks';
import { momentWords } from '../when.ts';
import { cautions, draft } from './desk.ts';
import { Revision } from './Revision.tsx';

export function Cautions() {
  if (cautions.value.length === 0) return null;
  return (
    <section class="cautions small" aria-labelledby="cautions">
      <h2 id="cautions">Cautions</h2>
      <ul class="plain">
        {cautions.value.map((c) => (
          <li key={c.say}>
            {c.say}
            {c.who ? ` ${c.who}` : ''}
            {c.source && <span class="soft"> {c.source}</span>}
          </li>
        ))}
      </ul>
    </section>
  );
}
export function Revisions() {
  const [shown, setShown] = useState<number | null>(null);
  const d = draft.value!;
  if (d.revisions.length === 0) return null;
  return (
    <section class="revisions" aria-labelledby="revisions">
      <h2 id="revisions">Revisions</h2>
      <ol class="plain">
        {d.revisions.map((r) => (
          <li key={r.revision}>
            <div class="row between">
              <span>
                {r.revision}. {r.by}, {momentWords(r.when)}
                {r.reason && <span class="soft">, because {r.reason}</span>}
                {r.lexicon && <span class="soft small"> lexicon {r.lexicon}</span>}
              </span>
              <button type="button" aria-expanded={shown === r.revision} onClick={() => setShown(shown === r.revision ? null : r.revision)}>
                Read it
              </button>
            </div>
            {shown === r.revision && <Revision exam={d.id} n={r.revision} />}
          </li>
        ))}
      </ol>
    </section>
  );
}
