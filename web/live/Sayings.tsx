/** What can be said to steer, out of the same table that the grammar listens with. */
import { shortest } from '../../parser/lexicon/shortest.ts';
import { commands } from '../labels.ts';

/** What follows the words of a command that takes more. */
const more: Readonly<Record<string, string>> = { 'next-horse': ' Juniper', note: ' …', amend: ' …' };

export function Sayings() {
  return (
    <details class="sayings">
      <summary>What can I say?</summary>
      <p>
        What you see, as you would tell a colleague: “one oh six hook front four mil”, “no ulcers”, “two ten wobbly grade two”, “see him
        again in six months”. And to steer:
      </p>
      <dl>
        {Object.entries(commands).map(([id, { label, say }]) => (
          <div key={id}>
            <dt>{label}</dt>
            <dd>
              {say.slice(0, 2).map((form, n) => (
                <span key={form}>
                  {n > 0 && ', '}“{shortest(form)}
                  {more[id]}”
                </span>
              ))}
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
