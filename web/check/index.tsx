/** Looking over: the drafts that wait, or the one that was chosen. */
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { link } from '../router.ts';
import { Desk } from './Desk.tsx';
import { dayWords } from '../when.ts';
import './check.css';

export function Check({ id }: { id?: string | undefined }) {
  return id ? <Desk id={id} /> : <Waiting />;
}
function Waiting() {
  const { value: rows, trouble } = useFetched(api.exams);
  const drafts = rows?.filter((row) => row.state === 'draft' && !row.erased) ?? [];
  return (
    <main class="paper waiting" id="main" tabIndex={-1}>
      <h1>Looking over</h1>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {rows && drafts.length === 0 && <p class="soft">No draft waits. What you dictate next will be here to look over.</p>}
      <ul class="plain exam-list">
        {drafts.map((row) => (
          <li key={row.id}>
            <a href={link('check', row.id)}>
              <span class="lettered who">{row.horse ?? 'No name yet'}</span>
              <span class="soft">{[dayWords(row.startedAt), row.yard].filter(Boolean).join(' · ')}</span>
              <span>
                {row.items} {row.items === 1 ? 'item' : 'items'}
                {row.doubts > 0 && (
                  <span class="tag-look">
                    {row.doubts} {row.doubts === 1 ? 'question' : 'questions'}
                  </span>
                )}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </main>
  );
}
