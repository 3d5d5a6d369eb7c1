/** An earlier revision, read only: what stood in the record when it was confirmed. */
import { useEffect, useState } from 'preact/hooks';
import type { Draft } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { api, Refused } from '../api.ts';
import { stands } from '../fold.ts';
import { told } from './Questions.tsx';

/** The server may answer with a record (plain items) or with a draft (items and their state). */
type Answer = { draft?: Draft; exam?: { items: Item[] }; items?: Item[] };
const itemsOf = (answer: Answer): readonly Item[] => answer.draft?.items.filter(stands).map((i) => i.item) ?? answer.exam?.items ?? answer.items ?? [];

export function Revision({ exam, n }: { exam: string; n: number }) {
  const [items, setItems] = useState<readonly Item[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    api.revision(exam, n).then((answer) => setItems(itemsOf(answer as Answer)), (error: unknown) => { if (error instanceof Refused) setTrouble(error.message); else throw error; });
  }, [exam, n]);
  if (trouble) return <p class="trouble" role="alert">{trouble}</p>;
  if (!items) return <p class="soft">Reading</p>;
  return <ul class="revision">{items.map((item) => <li key={item.id}>{told(item)}</li>)}</ul>;
}
