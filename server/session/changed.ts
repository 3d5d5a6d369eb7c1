import type { Draft } from '../../parser/contract/draft.ts';
import type { FromServer } from '../../parser/contract/wire.ts';

type Parts = Extract<FromServer, { type: 'changed' }>['parts'];

/** What the page must be told: the parts that changed, or the whole draft when something left it (upserts cannot say that). Pure. */
export function changes(before: Draft, after: Draft): FromServer {
  const lists = [
    [before.utterances, after.utterances, (u: Draft['utterances'][number]) => u.id],
    [before.items, after.items, (i: Draft['items'][number]) => i.item.id],
    [before.doubts, after.doubts, (d: Draft['doubts'][number]) => d.doubt.id],
  ] as const;
  const lost =
    before.id !== after.id ||
    lists.some(([a, b, id]) => {
      const now = new Set((b as never[]).map(id));
      return (a as never[]).some((one) => !now.has(id(one)));
    });
  if (lost) return { type: 'draft', draft: after };
  const fresh = <T>(a: readonly T[], b: readonly T[]): T[] => {
    const old = new Set(a);
    return b.filter((one) => !old.has(one));
  };
  const parts: Parts = {};
  for (const name of ['utterances', 'items', 'doubts', 'commands', 'hints'] as const) {
    const part = fresh<unknown>(before[name], after[name]);
    if (part.length) Object.assign(parts, { [name]: part });
  }
  for (const name of ['header', 'gaps', 'unread', 'paused', 'state', 'revision', 'revisions'] as const)
    if (before[name] !== after[name]) Object.assign(parts, { [name]: after[name] });
  return { type: 'changed', exam: after.id, seq: after.seq, parts };
}
