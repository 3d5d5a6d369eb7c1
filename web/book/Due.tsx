/** Who is due: what was said to come next, soonest first. A time that was not a number stands in its own words. */
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { link } from '../router.ts';
import { told } from '../told.ts';
import { shortDay, untilWords } from '../when.ts';

export function Due() {
  const { value, trouble } = useFetched(api.due);
  const now = Date.now();
  return (
    <section class="due" aria-labelledby="due">
      <h2 id="due">Who is due</h2>
      {trouble && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {value?.length === 0 && <p class="soft">Nobody. When a record says when to see a horse again, it stands here.</p>}
      <ul class="plain">
        {value?.map((row) => (
          <li key={`${row.exam}-${row.item.id}`}>
            <a href={link('check', row.exam)}>
              <span class="lettered who">{row.horse ?? 'No name'}</span>
              <span>{told(row.item)}</span>
              <span class="soft small">
                {[row.due ? `${shortDay(row.due)}, ${untilWords(row.due, now)}` : null, row.yard, `said on ${shortDay(row.startedAt)}`]
                  .filter(Boolean)
                  .join(' · ')}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
