/** One horse over the years: its mouth as it last stood, its visits, and each place compared. */
import { useMemo, useState } from 'preact/hooks';
import type { ExamRow } from '../../parser/contract/wire.ts';
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { standsAt } from '../mouth/marks.ts';
import { Mouth } from '../mouth/Mouth.tsx';
import { MouthKey } from '../mouth/MouthKey.tsx';
import { go, link } from '../router.ts';
import { dayWords, shortDay } from '../when.ts';
import { itemWords } from '../words.ts';
import { compareRows } from './compare.ts';
import { Erase } from './Erase.tsx';
import { standing } from './Visits.tsx';

export function HorsePage({ name }: { name: string }) {
  const comparison = useFetched(() => api.compare(name), [name]);
  const exams = useFetched(api.exams, [name]);
  const [picked, setPicked] = useState<string | null>(null);
  const visits = useMemo(() => comparison.value?.visits ?? [], [comparison.value]);
  const last = visits.at(-1);
  const shown = useMemo(() => (last ? { items: last.items.map((item) => ({ item, state: 'kept' as const })), doubts: [] } : null), [last]);
  const rows = useMemo(() => (comparison.value ? compareRows(comparison.value) : []), [comparison.value]);
  const listed = picked
    ? rows.filter((row) =>
        /^\d|^row:/.test(row.key)
          ? row.key === picked || row.key.split('-').includes(picked)
          : row.cells.flat().some((item) => standsAt(item, picked)),
      )
    : rows;
  const own = (exams.value ?? []).filter((row) => row.horse === name);
  return (
    <main class="paper book horse" id="main" tabIndex={-1}>
      <p>
        <a href={link('book')}>The book</a>
      </p>
      <h1>{name}</h1>
      {[comparison.trouble, exams.trouble].filter(Boolean).map((t) => (
        <p key={t} class="trouble" role="alert">
          {t}
        </p>
      ))}
      <div class="desk">
        <div class="look-side">
          <Mouth
            draft={shown}
            focus={picked}
            onPick={setPicked}
            label={last ? `The mouth on ${shortDay(last.startedAt)}, facing the horse` : 'The mouth, facing the horse'}
          />
          {last && <p class="soft small centre">As it stood on {dayWords(last.startedAt)}</p>}
          <MouthKey />
        </div>
        <div class="word-side">
          <section aria-labelledby="own-visits">
            <h2 id="own-visits">Visits</h2>
            <ul class="plain own">
              {own.map((row) => (
                <OwnVisit
                  key={row.id}
                  row={row}
                  again={() => {
                    exams.again();
                    comparison.again();
                  }}
                />
              ))}
            </ul>
          </section>
          <section aria-labelledby="years">
            <div class="row between">
              <h2 id="years">{picked ? 'This place over the years' : 'Over the years'}</h2>
              {picked && (
                <button type="button" onClick={() => setPicked(null)}>
                  Show everything
                </button>
              )}
            </div>
            {comparison.value && rows.length === 0 && <p class="soft">No record of this horse is confirmed yet.</p>}
            {picked && rows.length > 0 && listed.length === 0 && <p class="soft">No visit speaks of this place.</p>}
            {listed.length > 0 && (
              <div class="across" tabIndex={0} role="region" aria-label="Visits side by side">
                <table>
                  <thead>
                    <tr>
                      <th scope="col">Place</th>
                      {visits.map((v) => (
                        <th scope="col" key={v.exam}>
                          <a href={link('check', v.exam)}>{shortDay(v.startedAt)}</a>
                        </th>
                      ))}
                    </tr>
                  </thead>
                  <tbody>
                    {listed.map((row) => (
                      <tr key={row.key}>
                        <th scope="row">
                          <abbr title={row.name}>{row.label}</abbr>
                        </th>
                        {row.cells.map((items, i) => (
                          <td key={visits[i]!.exam}>
                            {items.map((item) => {
                              const { title, more } = itemWords(item);
                              return <p key={item.id}>{[title, ...more].join(', ')}</p>;
                            })}
                            {items.length === 0 && (
                              <span class="soft" aria-label="nothing said">
                                ·
                              </span>
                            )}
                          </td>
                        ))}
                      </tr>
                    ))}
                  </tbody>
                </table>
              </div>
            )}
          </section>
          <Erase
            title={`Erase everything about ${name}`}
            words={`All visits of ${name}, their records, drafts and sound, are taken off this machine. This cannot be undone. Pages already printed or sent are not touched.`}
            name={name}
            run={() => api.eraseHorse(name)}
            done={() => go('book')}
          />
        </div>
      </div>
    </main>
  );
}
function OwnVisit({ row, again }: { row: ExamRow; again: () => void }) {
  return (
    <li>
      <div class="row between">
        <a class="day" href={link('check', row.id)}>
          {dayWords(row.startedAt)}
        </a>
        <span class={row.state === 'confirmed' && !row.erased ? 'kept' : 'soft'}>
          {standing(row)}, {row.items} {row.items === 1 ? 'item' : 'items'}
        </span>
      </div>
      {!row.erased && (
        <details>
          <summary class="soft small">Pages and erasing</summary>
          <div class="row">
            <a class="button quiet" href={api.ownerPage(row.id)} target="_blank" rel="noreferrer">
              Page for the owner
            </a>
            <a class="button quiet" href={api.vetPage(row.id)} target="_blank" rel="noreferrer">
              Letter to the veterinarian
            </a>
            <Erase
              title="Erase the sound"
              words="The sound of this visit is taken off this machine. The words and the record stay; nothing can be played or read again from the sound. This cannot be undone."
              name={row.horse ?? 'erase'}
              run={() => api.erase(row.id, 'sound')}
              done={again}
            />
            <Erase
              title="Erase the visit"
              words="The record, its earlier revisions and its sound are taken off this machine. This cannot be undone."
              name={row.horse ?? 'erase'}
              run={() => api.erase(row.id, 'exam')}
              done={again}
            />
          </div>
        </details>
      )}
    </li>
  );
}
