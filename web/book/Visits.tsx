/** The visits, newest first: drafts that wait and records that are kept. */
import { useState } from 'preact/hooks';
import type { ExamRow } from '../../parser/contract/wire.ts';
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { link } from '../router.ts';
import { dayWords } from '../when.ts';

const first = 12;
export function Visits() {
  const { value, trouble } = useFetched(api.exams);
  const [all, setAll] = useState(false);
  const rows = [...(value ?? [])].sort((a, b) => (b.startedAt ?? '').localeCompare(a.startedAt ?? ''));
  return (
    <section aria-labelledby="visits">
      <h2 id="visits">Visits</h2>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {value && rows.length === 0 && (
        <p class="soft">
          No visit yet. Start with <a href={link('listen')}>Listening</a>, or add a recording.
        </p>
      )}
      <ul class="plain rows">
        {rows.slice(0, all ? undefined : first).map((row) => (
          <VisitRow key={row.id} row={row} />
        ))}
      </ul>
      {rows.length > first && !all && (
        <button type="button" class="quiet" onClick={() => setAll(true)}>
          Show all {rows.length}
        </button>
      )}
    </section>
  );
}
/** How a visit stands, in a word or two. */
export const standing = (row: ExamRow): string =>
  row.erased ? 'Erased' : row.state === 'confirmed' ? (row.revision > 1 ? `Kept, revision ${row.revision}` : 'Kept') : 'Draft';

function VisitRow({ row }: { row: ExamRow }) {
  const inside = (
    <>
      <span class="lettered who">{row.horse ?? 'No name yet'}</span>
      <span class="soft">{[dayWords(row.startedAt), row.yard].filter(Boolean).join(' · ')}</span>
      <span class="nowrap">
        {row.doubts > 0 && (
          <span class="tag-look">
            {row.doubts} {row.doubts === 1 ? 'question' : 'questions'}
          </span>
        )}{' '}
        <span class={row.state === 'confirmed' && !row.erased ? 'kept' : 'soft'}>
          {row.state === 'confirmed' && !row.erased && <span aria-hidden="true">✓ </span>}
          {standing(row)}
        </span>
      </span>
    </>
  );
  return <li>{row.erased ? <div class="gone">{inside}</div> : <a href={link('check', row.id)}>{inside}</a>}</li>;
}
