/** When two readings are the same: ids, evidence and how a field came do not count; defaults left out equal defaults written. */
type Json = unknown;
const ignored = new Set(['id', 'evidence', 'how', 'revises', 'utterance', 'at', 'state?', 'why', 'source']);
const defaults: Readonly<Record<string, Json>> = { presence: 'present', when: 'now', about: false, topUp: false, value: null };

/** A value without what does not count, keys sorted. */
export function bare(value: Json): Json {
  if (Array.isArray(value)) return value.map(bare);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value)
    .filter(([key, v]) => v !== undefined && !ignored.has(key) && !(key in defaults && JSON.stringify(defaults[key]) === JSON.stringify(v)))
    .sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, v]) => [key, ['surfaces', 'qualifiers'].includes(key) && Array.isArray(v) ? [...v].sort() : bare(v)]));
}

export const key = (value: Json): string => JSON.stringify(bare(value));

export interface Expected { readonly items?: readonly Json[]; readonly commands?: readonly Record<string, Json>[]; readonly doubts?: readonly Record<string, Json>[] }
export interface Got { readonly items: readonly Json[]; readonly commands: readonly object[]; readonly doubts: readonly object[] }
export interface Difference { readonly missing: readonly string[]; readonly extra: readonly string[] }

/** Items by their whole meaning; commands and doubts by the fields that the expectation names (their kind always). */
export function difference(expected: Expected, got: Got): Difference {
  const items = setDifference((expected.items ?? []).map(key), got.items.map(key));
  const commands = named('command', expected.commands ?? [], got.commands);
  const doubts = named('doubt', expected.doubts ?? [], got.doubts);
  return { missing: [...items.missing, ...commands.missing, ...doubts.missing], extra: [...items.extra, ...commands.extra, ...doubts.extra] };
}

function setDifference(expected: readonly string[], got: readonly string[]): Difference {
  const left = [...got];
  const missing = expected.filter((e) => { const at = left.indexOf(e); if (at >= 0) left.splice(at, 1); return at < 0; });
  return { missing, extra: left };
}

function named(kind: 'command' | 'doubt', expected: readonly Record<string, Json>[], got: readonly object[]): Difference {
  const left = got.map((g) => bare(g) as Record<string, Json>);
  const missing = expected.filter((e) => {
    const wanted = Object.keys(e).filter((k) => !['readings', 'target', 'targets', 'words'].includes(k));
    const at = left.findIndex((g) => wanted.every((k) => JSON.stringify(bare(g[k])) === JSON.stringify(bare(e[k]))));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return { missing: missing.map((m) => JSON.stringify(m)), extra: left.map((g) => `${kind} ${String(g[kind])}${g['rule'] ? ` (${String(g['rule'])})` : ''}`) };
}
