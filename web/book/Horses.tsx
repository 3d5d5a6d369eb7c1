/** The horses by name. */
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { link } from '../router.ts';
import { shortDay } from '../when.ts';

export function Horses() {
  const { value, trouble } = useFetched(api.horses);
  if (trouble)
    return (
      <p class="trouble" role="alert">
        {trouble}
      </p>
    );
  if (!value?.length) return null;
  return (
    <section aria-labelledby="horses">
      <h2 id="horses">Horses</h2>
      <ul class="plain rows">
        {value.map((horse) => (
          <li key={horse.name}>
            <a href={link('book', 'horse', horse.name)}>
              <span class="lettered who">{horse.name}</span>
              <span class="soft">{[horse.owner, horse.yard].filter(Boolean).join(' · ')}</span>
              <span class="nowrap">
                {horse.visits} {horse.visits === 1 ? 'visit' : 'visits'}
                <span class="soft">{horse.lastAt && `, last ${shortDay(horse.lastAt)}`}</span>
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
