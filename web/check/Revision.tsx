/** An earlier revision, read only: what stood in the record when it was confirmed. */
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { told } from '../told.ts';

export function Revision({ exam, n }: { exam: string; n: number }) {
  const { value, trouble } = useFetched(() => api.revision(exam, n), [exam, n]);
  if (trouble)
    return (
      <p class="trouble" role="alert">
        {trouble}
      </p>
    );
  if (!value) return <p class="soft">Fetching it</p>;
  return (
    <ul class="revision">
      {value.items.map((item) => (
        <li key={item.id}>{told(item)}</li>
      ))}
    </ul>
  );
}
