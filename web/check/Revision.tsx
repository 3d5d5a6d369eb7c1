/** An earlier revision, read only: what stood in the record when it was confirmed. */
import type { Draft } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { api } from '../api.ts';
import { useFetched } from '../fetched.ts';
import { stands } from '../fold.ts';
import { told } from '../told.ts';

/** The server may answer with a record (plain items) or with a draft (items and their state). */
type Answer = { draft?: Draft; exam?: { items: Item[] }; items?: Item[] };
const itemsOf = (answer: Answer): readonly Item[] => answer.draft?.items.filter(stands).map((i) => i.item) ?? answer.exam?.items ?? answer.items ?? [];

export function Revision({ exam, n }: { exam: string; n: number }) {
  const { value, trouble } = useFetched(() => api.revision(exam, n), [exam, n]);
  if (trouble) return <p class="trouble" role="alert">{trouble}</p>;
  if (!value) return <p class="soft">Fetching it</p>;
  return <ul class="revision">{itemsOf(value as Answer).map((item) => <li key={item.id}>{told(item)}</li>)}</ul>;
}
