/** What can be said to steer, out of the same table that the grammar listens with. */
import { commands } from '../labels.ts';

/** A spoken form at its shortest, with its first choices taken: "finish [(this|the)] exam" as "finish exam". Innermost brackets go first. */
export function sample(form: string): string {
  const less = form
    .replace(/(?<=\w)\(s\)/g, '')
    .replace(/\[[^[\]()]*\]/g, '')
    .replace(/\(([^()[\]|]*)(?:\|[^()[\]]*)?\)/g, '$1');
  return less === form ? form.replace(/ +/g, ' ').trim() : sample(less);
}
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
                  {n > 0 && ', '}“{sample(form)}
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
