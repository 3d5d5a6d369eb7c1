/**
 * When a reading is what was expected: sets are equal; ids, evidence and how a field came do not count; a default left out
 * equals a default written. An expectation may be wider: `"*"` fits any value of a field or none, `null` fits none, `items: "any"` leaves the
 * items open, and with them whether the phrase is asked about as `unread`, `some` names what must be among them, and `never` what must not appear. Written from the contract alone, used by the gold and the held-out cases.
 */
type Json = unknown;
type Fields = Readonly<Record<string, Json>>;
const ignored = new Set(['id', 'evidence', 'how', 'revises', 'utterance', 'at', 'why', 'source']);
const defaults: Fields = { presence: 'present', when: 'now', about: false, topUp: false, value: null };
/** Words kept beside what was understood: compared only where the expectation names them. */
const beside = ['said', 'from', 'severitySaid', 'amountSaid'];
const unordered = new Set(['surfaces', 'qualifiers', 'measures', 'teeth', 'spaces', 'rows', 'opposite', 'crest']);
const text = (value: Json): string => JSON.stringify(value) ?? '';

/** A value without what does not count: keys sorted, sets in one order. */
export function bare(value: Json): Json {
  if (Array.isArray(value)) return value.map(bare);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name, v]) => v !== undefined && !ignored.has(name) && !(name in defaults && text(defaults[name]) === text(v)))
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, v]) => [
        name,
        unordered.has(name) && Array.isArray(v) ? v.map(bare).sort((a, b) => (text(a) < text(b) ? -1 : 1)) : bare(v),
      ]),
  );
}

export const key = (value: Json): string => text(bare(value));

export interface Expected {
  readonly items?: readonly Json[] | 'any';
  readonly some?: readonly Json[];
  readonly never?: readonly Fields[];
  readonly commands?: readonly Fields[];
  readonly doubts?: readonly Fields[];
  readonly header?: Fields;
}
export interface Got {
  readonly items: readonly Json[];
  readonly commands: readonly object[];
  readonly doubts: readonly object[];
  readonly header?: object | undefined;
}
export interface Difference {
  readonly missing: readonly string[];
  readonly extra: readonly string[];
}

const isObject = (value: Json): value is Fields => value !== null && typeof value === 'object' && !Array.isArray(value);

/** Whether a reading's value is the expected one, in whole (`part` false) or in the fields that the expectation names. Both bare. */
function fits(expected: Json, got: Json, part: boolean): boolean {
  if (expected === '*') return true;
  if (expected === null) return got === undefined || got === null;
  if (Array.isArray(expected))
    return Array.isArray(got) && expected.length === got.length && expected.every((e, i) => fits(e, got[i], part));
  if (!isObject(expected) || !isObject(got)) return text(expected) === text(got);
  const more = part ? [] : Object.keys(got).filter((name) => !(name in expected) && !beside.includes(name));
  return more.length === 0 && Object.entries(expected).every(([name, e]) => fits(e, got[name], part));
}

/** A default that a pattern writes out must hold: "never present" is not "never". */
const defaultsHold = (pattern: Fields, got: Fields): boolean =>
  Object.entries(pattern).every(([name, value]) => !(name in defaults && text(defaults[name]) === text(value)) || got[name] === undefined);

/** Whether one item is the expected one. */
export const sameItem = (expected: Json, got: Json): boolean => fits(bare(expected), bare(got), false);

/** Pairs each expectation with one reading; what finds no partner on either side is told. */
export function pair<E, G>(
  expected: readonly E[],
  got: readonly G[],
  same: (e: E, g: G) => boolean,
): { readonly pairs: readonly (readonly [E, G])[]; readonly missing: readonly E[]; readonly extra: readonly G[] } {
  const left = [...got];
  const pairs: (readonly [E, G])[] = [];
  const missing = expected.filter((e) => {
    const at = left.findIndex((g) => same(e, g));
    if (at >= 0) pairs.push([e, ...left.splice(at, 1)] as unknown as readonly [E, G]);
    return at < 0;
  });
  return { pairs, missing, extra: left };
}

/** Items by their whole meaning; commands, doubts and the header by the fields that the expectation names (their kind always). */
export function difference(expected: Expected, got: Got): Difference {
  const items =
    expected.items === 'any'
      ? { missing: pair(expected.some ?? [], got.items, sameItem).missing, extra: [] }
      : pair(expected.items ?? [], got.items, sameItem);
  const never = got.items.filter((item) =>
    (expected.never ?? []).some((no) => fits(bare(no), bare(item), true) && defaultsHold(no, bare(item) as Fields)),
  );
  const commands = pair(expected.commands ?? [], got.commands, named);
  // What is open may be asked about.
  const open = expected.items === 'any' && got.items.length === 0;
  const doubts = pair(
    expected.doubts ?? [],
    open && expected.doubts === undefined ? got.doubts.filter((doubt) => (doubt as Fields)['doubt'] !== 'unread') : got.doubts,
    named,
  );
  const header = expected.header === undefined || fits(bare(expected.header), bare(got.header ?? {}), true);
  return {
    missing: [
      ...items.missing.map(key),
      ...commands.missing.map(text),
      ...doubts.missing.map(text),
      ...(header ? [] : [`header ${text(expected.header)}`]),
    ],
    extra: [
      ...[...items.extra, ...never].map(key),
      ...commands.extra.map((c) => `command ${brief(c)}`),
      ...doubts.extra.map((d) => `doubt ${brief(d)}`),
    ],
  };
}

/** Readings, targets and words are not compared: their ids and cut are the reader's own. */
const named = (expected: Fields, got: object): boolean =>
  fits(
    bare(Object.fromEntries(Object.entries(expected).filter(([name]) => !['readings', 'target', 'targets', 'words'].includes(name)))),
    bare(got),
    true,
  );

const brief = (thing: object): string =>
  ['command', 'doubt', 'rule', 'words'].flatMap((name) => (name in thing ? [String((thing as Fields)[name])] : [])).join(' | ');
